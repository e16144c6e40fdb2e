package rule

import (
	"math"
	"time"

	"chargehand/model/entry"
)

const (
	// answering is how long somebody who saw a sign and said so has the rod, the hook or a light in hand (assumed: a tuyere is
	// rodded and an arch opened within a minute or two).
	answering = 3 * time.Minute
	// lighting is the same of the gas over the top: a torch stands by, and unlit gas is poison (common practice).
	lighting = time.Minute
	// comesBack is within what time after it was answered a sign is the same trouble again, which the remedy did not mend
	// (assumed: about a charge; a tuyere of 2005 was rodded five times in 33 minutes).
	comesBack = 15 * time.Minute
)

// unanswered: what somebody saw still stands when they should have seen to it, or it has come back.
func unanswered(m *moment, onset time.Duration, back bool) bool {
	return back || m.at-onset >= answering
}

// dimForSure: a dim peep that stands or comes back is one. A blast that is heard weak is easily misheard beside a fire that
// roars as it likes, and the rod that answers it tells nothing of that: it was heard weak each time that somebody listened since,
// and beside a peep that is seen as bright as ever so often that all of it is hardly misheard.
func dimForSure(m *moment, onset time.Duration, back bool) bool {
	times := 2
	if m.peep.at >= m.sound.at && m.bright() {
		times = misheard
	}
	if m.stands(m.peep, m.rod, entry.PeepDim) || m.weak >= times {
		return unanswered(m, onset, back)
	}
	return m.at-onset >= answering
}

// misheard is how many times in a row a blast is heard weak by chance on some day or other, at the least: of some twenty-five times
// that somebody listens, each told wrong one time in fifteen or so, two in a row are on one day in ten, three on one in a hundred
// (assumed, as for the shade of a fire).
const misheard = 3

// bright tells whether the peep was last seen white or yellow, or with drops.
func (m *moment) bright() bool {
	return m.peep.word == entry.PeepDrops || shade[m.peep.word] >= shade[entry.PeepYellow]
}

// unlit: nobody lights it, or it goes out again.
func unlit(m *moment, onset time.Duration, back bool) bool { return back || m.at-onset >= lighting }

// stiffForSure: one look at slag is easily told wrong, and nothing mends stiff slag within minutes. It was seen so twice in a
// row, or the fire was seen or read too cold for it, or the hearth falls by what the solver says.
func stiffForSure(m *moment, _ time.Duration, _ bool) bool {
	if m.stiff >= 2 {
		return true
	}
	if _, cold := m.cold(); cold {
		return true
	}
	fall, known := m.fallen()
	return known && fall > ownFall && m.trend(hearthOf) == falling
}

// coldForSure: one look in ten or so is told a shade wrong, and ore is not held for that: a fire between white and yellow is seen
// white, and orange by the next look that is. It was read, or seen so twice in a row, or seen red, which no one look is told wrong
// by; or the slag was seen stiff, or the hearth falls by what the solver says.
func coldForSure(m *moment, _ time.Duration, _ bool) bool {
	if m.readLast() || m.peep.word == entry.PeepRed || m.cool >= 2 {
		return true
	}
	if seenStiff(m) {
		return true
	}
	fall, known := m.fallen()
	return known && fall > ownFall && m.trend(hearthOf) == falling
}

// slagStands is for how long a sight of the slag stands: it is looked at when it is tapped or hooked out, every half an hour or
// so, and half as often as the peep (common practice).
const slagStands = 2 * stale

// slagSeen takes a sight of the slag.
func (m *moment) slagSeen(s sight) {
	if m.slag = s; s.word != entry.SlagStiff {
		m.stiff = 0
		return
	}
	m.stiff++
}

// bucketTakes is how fast nobody lifts, carries and tips two buckets one after the other (common practice): what was keyed
// faster was keyed twice, or by two people. What came later may as well be a second bucket for which there was room.
const bucketTakes = time.Minute

func twoAtOnce(m *moment, _ time.Duration, _ bool) bool {
	n := m.charges
	return n >= 2 && m.c.Charges[n-1].At-m.c.Charges[n-2].At < bucketTakes
}

// weighedOff: of ordinary weighings one in ten lies outside of what two fillings differ, and several are made in a day; of what
// lies outside of 99 in 100 it is sure.
func weighedOff(m *moment, _ time.Duration, _ bool) bool {
	w := m.c.Weighings[m.weighings-1]
	return math.Abs(math.Log(float64(w.Weigh.Mass/w.Believed.Value))) > z99*w.RelSD
}
