package rule

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

const (
	// lowShare is the share of the stack below which the burden is low.
	// Common practice is to keep the shaft full.
	lowShare = 0.5
	// farOff is how many standard deviations a dip lies off what was expected
	// before the burden did something else than sink.
	farOff = z99
	// slipAfter is for how long a slip belongs to the hang-up before it.
	slipAfter = 20 * time.Minute
)

// stackLow: the burden is low by somebody's word: a charge that did not reach
// the mark, or a dip well below where it had to be by then. One that is low for
// want of a charge is told as the late charge that it is; in a short shaft each
// bucket takes it down to half, and a dip that finds it there is no news.
func stackLow(m *moment) (Evidence, bool) {
	if !m.charging() || m.charges == 0 || !m.c.HasLevel || m.lastOre {
		return nil, false
	}
	short := m.c.Charges[m.charges-1].Remark == entry.NotToMark
	if d, ok := m.dip(); !short && (!ok || d.At < m.lastCharge() || !dropped(d)) {
		return nil, false
	}
	stack := float64(m.c.Light.Furnace.Stack.Value) / 100
	l, ok := m.c.LevelThen(m.at)
	if !ok || l.Band().P90 >= lowShare*stack {
		return nil, false
	}
	b := l.Band().Scale(100)
	return Evidence{
		number("height", b.P50, Centimetres), number("low", b.P10, Centimetres), number("high", b.P90, Centimetres),
		number("mark", 100*stack, Centimetres),
	}, true
}

// stackFilled: the burden stands well above that again.
func stackFilled(m *moment, _ Warning) bool {
	stack := float64(m.c.Light.Furnace.Stack.Value) / 100
	l, ok := m.c.LevelThen(m.at)
	return !ok || !m.charging() || l.Height > lowShare*stack+physics.MarkSD
}

// dip is the last dip.
func (m *moment) dip() (fold.Dipped, bool) {
	if m.dips == 0 {
		return fold.Dipped{}, false
	}
	return m.c.Dips[m.dips-1], true
}

// hangs tells whether a dip found the burden well above where it had to be.
func hangs(d fold.Dipped) bool { return d.Height-d.Expected.Height > farOff*doubt(d) }

// dropped tells whether a dip found it well below.
func dropped(d fold.Dipped) bool { return d.Expected.Height-d.Height > farOff*doubt(d) }

// doubt is that of a usual day: on an uneven one a burden hangs as easily as it is misjudged.
func doubt(d fold.Dipped) float64 { return math.Hypot(d.Expected.SD()/d.Uneven, physics.DipSD) }

// hangUp: the burden does not sink as fast as it burns: a hollow forms below.
func hangUp(m *moment) (Evidence, bool) {
	d, ok := m.dip()
	if !ok || !m.charging() || !m.standing(d) || !hangs(d) {
		return nil, false
	}
	return dipEvidence(d), true
}

// standing tells whether nothing went over a dip since: no charge, no poke, and
// not too long.
func (m *moment) standing(d fold.Dipped) bool {
	return m.lastCharge() < d.At && m.poke < d.At && m.within(d.At, stale)
}

func dipEvidence(d fold.Dipped) Evidence {
	b := d.Expected.Band().Scale(100)
	return Evidence{
		number("height", 100*d.Height, Centimetres), number("expected", b.P50, Centimetres),
		number("low", b.P10, Centimetres), number("high", b.P90, Centimetres),
	}
}

// slip: after a hang-up the burden lies well below where it had to be: it came
// down at once, and cold burden with it.
func slip(m *moment) (Evidence, bool) {
	d, ok := m.dip()
	if !ok || m.dips < 2 || !m.charging() || !m.standing(d) || !dropped(d) {
		return nil, false
	}
	for _, before := range m.c.Dips[:m.dips-1] {
		if d.At-before.At < slipAfter && hangs(before) && m.poke < before.At {
			return dipEvidence(d), true
		}
	}
	return nil, false
}
