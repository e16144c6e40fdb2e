package rule

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

const (
	// dampFor is how long charcoal that was weighed damp is watched for what it does to
	// the hearth: about the time that a charge takes to come down (common practice).
	dampFor = 2 * time.Hour
	// fellBy is by how much a reading in the peep must be lower to count as fallen, C: twice
	// what such a reading errs by.
	fellBy = 50
)

// damp is charcoal that was weighed wetter, with how the fire looked until then.
type damp struct {
	at      time.Duration
	measure string
	is, was float64 // kg
	peep    sight
	fire    entry.Maybe[entry.Celsius]
	ore     float64
}

// dampens takes a weighing of a measure: wetter, or another charcoal that ends it.
func (m *moment) dampens(at time.Duration, w entry.Weigh) {
	if w.What != entry.WeighMeasure {
		return
	}
	if w.Why != entry.Wetter {
		if w.Name == m.damp.measure && w.Why == entry.Other {
			m.damp = damp{at: never}
		}
		return
	}
	m.damp = damp{at: at, measure: w.Name, is: float64(w.Mass), peep: m.peep, fire: m.fire, ore: m.oreOfNext(at)}
	if n := len(m.c.Weighings); n > 0 {
		m.damp.was = float64(m.c.Weighings[n-1].Believed.Value)
	}
	if m.damp.is <= m.damp.was { // drier
		m.damp = damp{at: never}
	}
}

// oreOfNext is the ore of the next charge as planned, kg.
func (m *moment) oreOfNext(at time.Duration) float64 {
	return m.c.MassOf(fold.Planned(m.recipe, m.done), entry.Ore, at).Kg
}

// charcoalDamp: told while somebody may still do something about the rest of it.
func charcoalDamp(m *moment) (Evidence, bool) {
	d := m.damp
	if !m.within(d.at, recently) || d.was <= 0 {
		return nil, false
	}
	return Evidence{word("measure", d.measure), number("weighed", d.is, Kilograms), number("believed", d.was, Kilograms), number("more", 100*(d.is/d.was-1), Percent)}, true
}

func charcoalDried(m *moment, w Warning) bool {
	return m.at-w.Onset >= recently || m.damp.at == never
}

// dampHearth: the peep is darker than before the damp charcoal, or reads lower, and no
// less ore goes in yet.
func dampHearth(m *moment) (Evidence, bool) {
	d := m.damp
	if !m.charging() || m.lastOre || !m.within(d.at, dampFor) || m.oreOfNext(m.at) < d.ore-0.01 {
		return nil, false
	}
	if m.fireAt > d.at && d.fire.Known && float64(d.fire.Value-m.fire.Value) >= fellBy {
		return Evidence{number("seen", float64(m.fire.Value), Degrees), number("before", float64(d.fire.Value), Degrees)}, true
	}
	now, before := brightness[m.peep.word], brightness[d.peep.word]
	if m.peep.at <= d.at || now == 0 || before == 0 || now >= before {
		return nil, false
	}
	return Evidence{word("seen", m.peep.word), word("before", d.peep.word)}, true
}

// brightness orders what is seen in the peep, 1 the darkest. Drops say nothing of it.
var brightness = map[string]int{
	entry.PeepDark: 1, entry.PeepDim: 2, entry.PeepRed: 2, entry.PeepOrange: 3, entry.PeepYellow: 4, entry.PeepWhite: 5,
}
