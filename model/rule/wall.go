package rule

import (
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// hole is a place where the wall gave, and nobody has said that it is patched.
type hole struct {
	seen entry.WallSeen
	at   time.Duration
}

// wall takes down what was seen of it: a crack is no hole yet; a patch shuts those at its
// place, and one without a place all of them.
func (m *moment) wall(at time.Duration, ev entry.WallSeen) {
	switch ev.What {
	case entry.WallBurnThrough, entry.WallSlump:
		m.holes = append(m.holes, hole{ev, at})
	case entry.WallCrack:
		m.cracks = append(m.cracks, hole{ev, at})
	case entry.WallPatched:
		shut := func(h hole) bool { return ev.Where == "" || h.seen.Where == ev.Where }
		m.holes = slices.DeleteFunc(slices.Clone(m.holes), shut)
		m.cracks = slices.DeleteFunc(slices.Clone(m.cracks), shut)
	}
}

// wallOpen: the wall gave while there is fire behind it. Of several holes the last is told.
func wallOpen(m *moment) (Evidence, bool) {
	if len(m.holes) == 0 || m.phase.Over() {
		return nil, false
	}
	return m.given(m.holes[len(m.holes)-1]), true
}

// given is where the wall gave, as evidence.
func (m *moment) given(h hole) Evidence {
	place := h.seen.Where
	if place == "" {
		place = "place not said"
	}
	return Evidence{word("what", string(h.seen.What)), word("where", place), minutes("ago", m.at-h.at)}
}

// wallCracked: clay cracks in every furnace, but from the main burn on a crack may let the blast out, and nothing tells so
// sooner. Of several the last is told, for as long as it takes to see whether the burn is slower for it.
func wallCracked(m *moment) (Evidence, bool) {
	if len(m.cracks) == 0 || !m.charging() {
		return nil, false
	}
	h := m.cracks[len(m.cracks)-1]
	return m.given(h), m.at-h.at < crackStands
}

// crackStands is for how long a crack is told of: some four charges (common practice).
const crackStands = time.Hour

// lets tells whether a crack lets the blast out for sure: the burden burns slower since than nine in ten of such intervals
// did before, or the fire was seen or read too cold. One in ten is little for a burn alone, and much beside a crack.
func lets(m *moment, onset time.Duration, _ bool) bool {
	if _, cold := m.cold(); cold {
		return true
	}
	first := m.charges
	for first > 0 && m.c.Charges[first-1].At > onset {
		first--
	}
	if first == 0 || first == m.charges {
		return false
	}
	before, sum, n := m.paces.All()[first-1], 0.0, 0.0
	for i := first; i < m.charges; i++ {
		if p := m.paces.All()[i]; p.clean && p.epoch == before.epoch {
			sum, n = sum+math.Log(p.minutes)-before.level, n+1
		}
	}
	return n > 0 && before.own >= fewestOwn && sum/n > physics.Z90*before.sd/math.Sqrt(n)
}
