package rule

import (
	"time"

	"chargehand/model/entry"
)

// A fire that was bright and is no more, before there is ore that makes a cold hearth matter or beside it: what stands before the
// blast burns away under a burden that hangs, charcoal is damp, or less air gets in. One look is now and then told a shade
// wrong, so that a shade less counts from the third time on, and two at once.
const (
	// shadesDown is how many shades at once are a fire that fell; brighterFor is for how long before it was brighter.
	shadesDown, brighterFor = 2, time.Hour
	// looksDown is how many looks in a row a shade darker than as many before them are one.
	looksDown = 3
)

// fires are the looks into the peep that told a shade, the last first, of the fire that burns since the last fill or stop of
// the blast.
func (m *moment) fires() (all []sight) {
	for i := m.c.Lines.Len() - 1; i >= 0; i-- {
		l := m.c.Lines.At(i)
		if m.at-l.At > stale+2*brighterFor {
			break
		}
		switch ev := l.Event.(type) {
		case entry.Fill:
			return all
		case entry.Blast:
			if ev.Off() {
				return all
			}
		case entry.Look:
			if ev.At == entry.AtPeep && shade[ev.Sees] > 0 {
				all = append(all, sight{ev.Sees, l.At})
			}
		}
	}
	return all
}

// shade orders the colours of the fire, 1 the darkest. A dim or dark peep tells of the tuyere.
var shade = map[string]int{entry.PeepRed: 1, entry.PeepOrange: 2, entry.PeepYellow: 3, entry.PeepWhite: 4}

// fell tells from what the fire has fallen to what it was last seen as, and how many times in a row it was seen two shades down.
func (m *moment) fell() (before sight, times int, is bool) {
	fires := m.fires()
	for from := 1; from < len(fires); from++ { // the looks up to that one are all two shades down from one before them
		brightest := fires[from]
		for _, f := range fires[from:] {
			if fires[from-1].at-f.at <= brighterFor && shade[f.word] > shade[brightest.word] {
				brightest = f
			}
		}
		if shade[brightest.word]-shade[fires[from-1].word] < shadesDown {
			break
		}
		before, times = brightest, from
	}
	if times > 0 {
		return before, times, true
	}
	if len(fires) < 2*looksDown || fires[0].at-fires[2*looksDown-1].at > 2*brighterFor {
		return sight{}, 0, false
	}
	now, then := 0, len(shade)
	for i := range looksDown {
		now, then = max(now, shade[fires[i].word]), min(then, shade[fires[looksDown+i].word])
	}
	return fires[looksDown], 0, now < then
}

// fireFell: the fire before the tuyere is darker than it was. Where ore goes in the rules of a cold hearth tell of it.
func fireFell(m *moment) (Evidence, bool) {
	if !m.charging() || m.off() || m.readLast() || !m.stands(m.peep, max(m.poke, m.rod), entry.PeepYellow, entry.PeepOrange, entry.PeepRed) {
		return nil, false
	}
	for _, told := range []func(*moment) (Evidence, bool){hearthCold, oreEarly, dampHearth} {
		if _, is := told(m); is {
			return nil, false
		}
	}
	before, _, is := m.fell()
	return Evidence{word("seen", m.peep.word), word("before", before.word), minutes("apart", m.peep.at-before.at)}, is
}

// fellForSure: it was seen so twice.
func fellForSure(m *moment, _ time.Duration, _ bool) bool {
	_, times, _ := m.fell()
	return times > 1
}

// slagUnseen: nobody has said for long how the slag runs. A white fire says nothing of the hearth under it, which lags behind it
// for hours; what is known of that then rests on the model alone, and only a look can tell. It is asked once until somebody says.
func slagUnseen(m *moment) (Evidence, bool) {
	g, ok := m.sample()
	if !ok || !m.charging() || m.off() || !g.Ore || g.Slag < leastBath {
		return nil, false
	}
	silent := m.at - max(m.slag.at, m.tap, m.blastOn, m.slagFrom)
	return Evidence{minutes("since", silent), spread("hearth", inCelsius(g.Hearth), Degrees)}, m.slagFrom != never && silent >= slagStands && silent-slagStands < recently
}
