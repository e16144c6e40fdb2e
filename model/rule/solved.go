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

// sample is what the solver said last, if it is of now.
func (m *moment) sample() (solve.Sample, bool) {
	if m.samples == 0 {
		return solve.Sample{}, false
	}
	g := m.history[m.samples-1]
	return g, m.at-g.At < solve.Blind
}

// How a temperature of the solver's goes.
const (
	rising  = "rising"
	steady  = "steady"
	falling = "falling"
)

const (
	// trendOver is over how long, and trendBy in K by how much a temperature goes up or
	// down that is not steady: a charge moves it by as much (assumed).
	trendOver, trendBy = 10 * time.Minute, 10.0
	// ownHour is what the hearth is held against, of which half must have been seen;
	// ownFall in K is how far below the middle of it it is a note, and nearAgain when it
	// is one no more (assumed).
	ownHour            = time.Hour
	ownFall, nearAgain = 80.0, 40.0
)

func hearthOf(g solve.Sample) float64 { return g.Hearth.P50 }
func topOf(g solve.Sample) float64    { return g.Top.P50 }

// trend is how one temperature has gone over the last minutes; steady where that was
// not seen.
func (m *moment) trend(of func(solve.Sample) float64) string {
	g, ok := m.sample()
	if !ok {
		return steady
	}
	for i := m.samples - 1; i >= 0 && m.at-m.history[i].At <= trendOver+solve.Blind; i-- {
		if before := m.history[i]; g.At-before.At >= trendOver && of(before) > 0 {
			switch by := of(g) - of(before); {
			case by > trendBy:
				return rising
			case by < -trendBy:
				return falling
			}
			return steady
		}
	}
	return steady
}

// inCelsius is a band of K.
func inCelsius(b physics.Band) physics.Band {
	return physics.Band{P10: physics.ToCelsius(b.P10), P50: physics.ToCelsius(b.P50), P90: physics.ToCelsius(b.P90)}
}

// topHot: fresh charges do not cool the gas any more, by nine chances in ten: the low
// end of the band stays over the limit. What rests on a blast whose meter is not
// believed is not told.
func topHot(m *moment) (Evidence, bool) {
	g, now := m.sample()
	if !now || g.Top.IsZero() {
		return nil, false
	}
	e := Evidence{spread("top", inCelsius(g.Top), Degrees), minutes("for", hotFor), number("most", hotTop, Degrees), word("trend", m.trend(topOf))}
	if !m.charging() || m.factor.odd {
		return e, false
	}
	coolest, long := math.Inf(1), false
	for i := m.samples - 1; i >= 0 && !long; i-- {
		if m.history[i].Top.IsZero() {
			return e, false
		}
		coolest, long = min(coolest, physics.ToCelsius(m.history[i].Top.P10)), m.at-m.history[i].At >= hotFor
	}
	return e, long && coolest >= hotTop
}

func topCool(m *moment, _ Warning) bool {
	g, ok := m.sample()
	return !ok || !m.charging() || m.factor.odd || g.Top.IsZero() || physics.ToCelsius(g.Top.P10) < coolTop
}

// readHot is that somebody read the top gas as hot as that.
func readHot(m *moment) bool { return m.within(m.topAt, stale) && m.top.Value >= hotTop }

// hearthCools: the hearth has fallen far below this smelt's own hour and falls on, and
// nobody has seen it yet. A blast that is off is told as that.
func hearthCools(m *moment) (Evidence, bool) {
	g, ok := m.sample()
	fall, known := m.fallen()
	if !ok || !known {
		return nil, false
	}
	trend := m.trend(hearthOf)
	_, seen := hearthCold(m)
	e := Evidence{spread("hearth", inCelsius(g.Hearth), Degrees), number("fall", fall, Kelvin), word("trend", trend)}
	return e, !seen && m.charging() && !m.off() && !m.factor.odd && m.firstOre != never && fall > ownFall && trend == falling
}

func hearthWarms(m *moment, _ Warning) bool {
	_, ok := m.sample()
	_, seen := hearthCold(m)
	fall, known := m.fallen()
	return seen || !ok || !known || !m.charging() || m.off() || m.factor.odd || fall < nearAgain
}

// fallen is how far the hearth is below the middle of this smelt's own hour, K.
func (m *moment) fallen() (float64, bool) {
	var hour []float64
	for i := m.samples - 1; i >= 0 && m.at-m.history[i].At <= ownHour; i-- {
		hour = append(hour, m.history[i].Hearth.P50)
	}
	if time.Duration(2*len(hour))*time.Minute < ownHour {
		return 0, false
	}
	return median(hour) - hour[0], true
}

// slagStiffens: by its make-up and heat the slag hardly runs.
func slagStiffens(m *moment) (Evidence, bool) {
	g, ok := m.sample()
	if _, seen := slagThick(m); seen || !ok || !m.charging() || m.off() || !g.Ore || g.Slag < leastBath {
		return nil, false
	}
	return Evidence{spread("hearth", inCelsius(g.Hearth), Degrees), number("iron", 100*g.Iron, Percent)}, g.Stands >= stiffSlag
}

func slagRunsAgain(m *moment, _ Warning) bool {
	g, ok := m.sample()
	_, seen := slagThick(m)
	return seen || !ok || !m.charging() || m.off() || g.Stands < runningSlag || g.Slag < leastBath
}

// slagRises: even by the low estimate the slag has come up to the tuyere. Before any
// was weighed no level is told.
func slagRises(m *moment) (Evidence, bool) {
	g, ok := m.sample()
	base := m.c.Light.Furnace.TuyereBase
	_, heard := slagNear(m)
	_, seen := slagAt(m)
	if heard || seen || !ok || !m.charging() || !g.Ore || !m.slagWeighed || !base.Positive() || g.Bath.IsZero() {
		return nil, false
	}
	below := float64(base.Value)/100 - g.Bath.P10
	return Evidence{number("slag", g.Slag, Kilograms)}, below < nearTuyere
}

func slagSinks(m *moment, _ Warning) bool {
	g, ok := m.sample()
	_, heard := slagNear(m)
	_, seen := slagAt(m)
	return heard || seen || !ok || !m.charging() || g.Bath.IsZero() || float64(m.c.Light.Furnace.TuyereBase.Value)/100-g.Bath.P50 > clearOf
}

// carbonRises: the iron takes up carbon.
func carbonRises(m *moment) (Evidence, bool) {
	g, ok := m.sample()
	if _, seen := carbonHigh(m); seen || !ok || !m.charging() || !g.Ore {
		return nil, false
	}
	protects := "does not protect"
	if g.Soft {
		protects = "protects"
	}
	return Evidence{spread("carbon", g.Carbon, CarbonShare), word("protects", protects)}, g.Carbon.P50 > highCarbon
}

func carbonFalls(m *moment, _ Warning) bool {
	g, ok := m.sample()
	_, seen := carbonHigh(m)
	return seen || !ok || !m.charging() || g.Carbon.P50 < lowCarbon
}
