package rule

import (
	"math"
	"time"

	"chargehand/model/solve"
	"chargehand/physics"
)

// What the model of the shaft says and nobody has seen yet. It is one
// dimension's word, so these are notes and no more; the look or the act comes
// with the sign (a gurgle, a dim peep, a temperature) by the rule of that sign,
// and while that one stands the note keeps quiet.
const (
	// hotTop is a top gas, in C, that no charge of the last hotFor has cooled
	// below; coolTop is one that is as it should be. Two shafts of half a metre
	// at 650 to 800 l/min read 660 and 715 C at the top (9 Oct 2011, 30 Oct
	// 2021).
	hotTop, coolTop = 800, 700
	hotFor          = 20 * time.Minute

	// stiffSlag and runningSlag are chances that the slag does not run (assumed).
	// Where that is even the remedy is worth its price; of a slag that runs, or of
	// which it is not known when it melts, nothing is said.
	stiffSlag, runningSlag = 0.5, 0.3
	// leastBath in kg is enough slag to stand in the way.
	leastBath = 1.0

	// nearTuyere in m is how near the slag stands even by the low estimate of
	// its depth; clearOf is how far below it has to be by the middle one.
	nearTuyere, clearOf = 0.02, 0.06

	// highCarbon is where steel becomes brittle under the hammer, with a margin
	// that lies far outside of what ordinary smelts are reckoned at.
	highCarbon, lowCarbon = 0.010, 0.007
)

// glance is what the solver said last, if it is of now.
func (m *moment) glance() (solve.Glance, bool) {
	if m.glances == 0 {
		return solve.Glance{}, false
	}
	g := m.trail[m.glances-1]
	return g, m.at-g.At < solve.Blind
}

// topHot: fresh charges do not cool the gas any more.
func topHot(m *moment) (Evidence, bool) {
	coolest, long := math.Inf(1), false
	for i := m.glances - 1; i >= 0 && !long; i-- {
		if m.trail[i].Top == 0 {
			return nil, false
		}
		coolest, long = min(coolest, physics.ToCelsius(m.trail[i].Top)), m.at-m.trail[i].At >= hotFor
	}
	if _, now := m.glance(); !now || !long || !m.charging() || coolest < hotTop {
		return nil, false
	}
	return Evidence{number("top", coolest, Degrees), minutes("for", hotFor), number("most", hotTop, Degrees)}, true
}

func topCool(m *moment, _ Warning) bool {
	g, ok := m.glance()
	return !ok || !m.charging() || g.Top == 0 || physics.ToCelsius(g.Top) < coolTop
}

// hearthCools: slag will freeze, and the peep has not shown it.
func hearthCools(m *moment) (Evidence, bool) {
	g, ok := m.glance()
	if _, seen := hearthCold(m); seen || !ok || !m.charging() || m.firstOre == never {
		return nil, false
	}
	c := physics.ToCelsius(g.Hearth)
	return Evidence{number("hearth", c, Degrees), number("least", coldBelow, Degrees)}, c < coldBelow
}

func hearthWarms(m *moment, _ Warning) bool {
	g, ok := m.glance()
	_, seen := hearthCold(m)
	return seen || !ok || !m.charging() || physics.ToCelsius(g.Hearth) >= warmAbove
}

// slagStiffens: by its make-up and heat the slag hardly runs.
func slagStiffens(m *moment) (Evidence, bool) {
	g, ok := m.glance()
	if _, seen := slagThick(m); seen || !ok || !m.charging() || !g.Ore || g.Slag < leastBath {
		return nil, false
	}
	return Evidence{number("hearth", physics.ToCelsius(g.Hearth), Degrees), number("iron", 100*g.Iron, Percent)}, g.Stands >= stiffSlag
}

func slagRunsAgain(m *moment, _ Warning) bool {
	g, ok := m.glance()
	_, seen := slagThick(m)
	return seen || !ok || !m.charging() || g.Stands < runningSlag || g.Slag < leastBath
}

// slagRises: even by the low estimate the slag has come up to the tuyere.
func slagRises(m *moment) (Evidence, bool) {
	g, ok := m.glance()
	base := m.c.Light.Furnace.TuyereBase
	_, heard := slagNear(m)
	_, seen := slagAt(m)
	if heard || seen || !ok || !m.charging() || !g.Ore || !base.Positive() || g.Bath.IsZero() {
		return nil, false
	}
	below := float64(base.Value)/100 - g.Bath.P10
	return Evidence{number("slag", g.Slag, Kilograms)}, below < nearTuyere
}

func slagSinks(m *moment, _ Warning) bool {
	g, ok := m.glance()
	_, heard := slagNear(m)
	_, seen := slagAt(m)
	return heard || seen || !ok || !m.charging() || g.Bath.IsZero() || float64(m.c.Light.Furnace.TuyereBase.Value)/100-g.Bath.P50 > clearOf
}

// carbonRises: the iron takes up carbon.
func carbonRises(m *moment) (Evidence, bool) {
	g, ok := m.glance()
	if _, seen := carbonHigh(m); seen || !ok || !m.charging() || !g.Ore {
		return nil, false
	}
	return Evidence{number("carbon", 100*g.Carbon, Count)}, g.Carbon > highCarbon
}

func carbonFalls(m *moment, _ Warning) bool {
	g, ok := m.glance()
	_, seen := carbonHigh(m)
	return seen || !ok || !m.charging() || g.Carbon < lowCarbon
}
