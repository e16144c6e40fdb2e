package rule

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

// never is when something happened that has not.
const never = -1 << 62

// sight is the last look at one place, and when.
type sight struct {
	word string
	at   time.Duration
}

// moment is what the rules see at one point of the grid: nothing that happened
// later.
type moment struct {
	at   time.Duration
	c    *fold.Course
	last time.Duration // when the last line happened

	trail []solve.Glance // what the shaft solver saw, if it was asked

	// How much of the course lies behind: how many of each.
	lines, turns, charges, blasts, dips, weighings, glances int

	phase       entry.Phase
	paused      bool
	lastOre     bool
	firstOre    time.Duration
	recipe      entry.Recipe
	done        int // charges since the recipe
	plans       []plan
	stores      stores
	paces       []pace
	peep, flame sight
	sound, slag sight
	topGas      sight
	fire        entry.Maybe[entry.Celsius] // last temperature in the peep
	fireAt      time.Duration
	fill        time.Duration
	blastOff    time.Duration // when the blast last went off
	blastOn     time.Duration // when the blast last came on again
	unblown     time.Duration // how long the blast was off since the last charge, up to when it last came on
	blastSet    time.Duration // when it last became another
	rod, tap    time.Duration
	poke, jump  time.Duration
	jumped      entry.ClockJump
	presses     []pressed
	factor      meterFactor
}

func newMoment(c *fold.Course) *moment {
	unseen := sight{at: never}
	return &moment{
		c: c, phase: entry.Preheat, recipe: entry.Recipe{Next: c.Light.Recipe}, stores: newStores(c.Light.Lots),
		paces: paces(c), peep: unseen, flame: unseen, sound: unseen, slag: unseen, topGas: unseen,
		firstOre: never, fireAt: never, fill: never, blastOff: never, blastOn: never, blastSet: never, rod: never, tap: never, poke: never, jump: never,
	}
}

// next is when the next line happens.
func (m *moment) next() (time.Duration, bool) {
	if m.lines == len(m.c.Lines) {
		return 0, false
	}
	return m.c.Lines[m.lines].At, true
}

// advance goes on to a later moment.
func (m *moment) advance(at time.Duration) {
	m.at = at
	for m.lines < len(m.c.Lines) && m.c.Lines[m.lines].At <= at {
		l := m.c.Lines[m.lines]
		m.lines++
		m.last = l.At
		m.take(l)
		for m.turns < len(m.c.Turns) && m.c.Turns[m.turns].At <= l.At {
			m.phase = m.c.Turns[m.turns].Phase
			m.turns++
		}
	}
	for m.dips < len(m.c.Dips) && m.c.Dips[m.dips].At <= at {
		m.dips++
	}
	for m.glances < len(m.trail) && m.trail[m.glances].At <= at {
		m.glances++
	}
	for m.weighings < len(m.c.Weighings) && m.c.Weighings[m.weighings].At <= at {
		m.weighings++
	}
}

// take lets one line happen.
func (m *moment) take(l fold.Line) {
	switch ev := l.Event.(type) {
	case entry.Fill:
		m.fill = l.At
		m.stores.use(m.c, ev.Parts, l.At)
	case entry.Charge:
		m.charge(l, ev)
	case entry.Recipe:
		m.recipe, m.done = ev, 0
	case entry.Blast:
		m.blow(l.At)
		m.press(l.At, ev)
	case entry.Pause:
		m.paused = true
	case entry.Resume:
		m.paused = false
	case entry.LastOre:
		m.lastOre = true
	case entry.Rod:
		m.rod = l.At
	case entry.Tap:
		m.tap = l.At
	case entry.Poke:
		m.poke = l.At
	case entry.Look:
		m.look(l.At, ev)
	case entry.Temperature:
		if ev.Where == entry.WherePeep {
			m.fire, m.fireAt = entry.Some(ev.Degrees), l.At
		}
	case entry.LotStored:
		m.stores.put(ev.Lot)
	case entry.Weigh:
		if ev.What == entry.WeighLot && !ev.Closed {
			m.stores.weigh(ev)
		}
	case entry.ClockJump:
		m.jump, m.jumped = l.At, ev
	}
}

// charge lets a charge happen: of charcoal, or of ore on its own.
func (m *moment) charge(l fold.Line, ev entry.Charge) {
	m.stores.use(m.c, ev.Parts, l.At)
	if m.firstOre == never && ev.Parts.Holds(entry.Ore) {
		m.firstOre = l.At
	}
	if m.charges < len(m.c.Charges) && m.c.Charges[m.charges].Seq == l.Seq() {
		m.plans = append(m.plans, m.planned(l.At))
		m.charges++
		m.unblown = 0
		m.done++
		m.factor.judge(m.c, m.charges)
	}
}

func (m *moment) blow(at time.Duration) {
	before, _ := m.blast()
	wasOff := m.off()
	m.blasts++
	now, _ := m.blast()
	switch {
	case !wasOff && m.off():
		m.blastOff = at
	case wasOff && !m.off():
		m.blastOn = at
		m.unblown += at - max(m.blastOff, m.lastCharge())
	}
	if wasOff != m.off() || otherBlast(before, now) {
		m.blastSet = at
	}
}

func (m *moment) look(at time.Duration, ev entry.Look) {
	seen := sight{ev.Sees, at}
	switch ev.At {
	case entry.AtPeep:
		m.peep = seen
	case entry.AtFlame:
		m.flame = seen
	case entry.AtSound:
		m.sound = seen
	case entry.AtSlag:
		m.slag = seen
	case entry.AtTopGas:
		m.topGas = seen
	}
}

// blast is the blast as last observed, and whether it ever was.
func (m *moment) blast() (fold.Blast, bool) {
	if m.blasts == 0 {
		return fold.Blast{}, false
	}
	return m.c.Blast[m.blasts-1], true
}

// off tells whether the blast is known to be off.
func (m *moment) off() bool {
	b, ok := m.blast()
	return ok && b.Off
}

// charging tells whether charges go in: the main burn, with ore or without.
func (m *moment) charging() bool { return m.phase == entry.MainBurn || m.phase == entry.OreOff }

// lastCharge is when charcoal was last charged.
func (m *moment) lastCharge() time.Duration {
	if m.charges == 0 {
		return never
	}
	return m.c.Charges[m.charges-1].At
}

// within tells whether something happened no longer ago than so much.
func (m *moment) within(at, d time.Duration) bool { return at != never && m.at-at < d }

// stale is how long a sign stands when nobody says more of it: by then two
// charges have gone in and it tells of another fire (common practice).
const stale = 30 * time.Minute

// stands tells whether a sight says one of these words, not long ago and with
// none of the remedies taken since.
func (m *moment) stands(s sight, remedy time.Duration, words ...string) bool {
	if !m.within(s.at, stale) || remedy >= s.at {
		return false
	}
	for _, w := range words {
		if s.word == w {
			return true
		}
	}
	return false
}
