package shaft

import (
	"math"

	"chargehand/model/picture"
)

// knot is the heat at one height: in the middle of the shaft, how much less at the
// wall, and how much less or more it may be, in K.
type knot struct{ cm, middle, fall, less, more float64 }

// Heat is the temperature everywhere in the shaft, as far as it is known.
type Heat struct {
	knots []knot // from the top
	blast bool
	bore  float64
	side  float64 // where the tuyere ends: -1 the left wall, 1 the right
	floor float64
	top   float64 // of the burden, cm
}

// HeatOf takes the temperatures of a picture: those of its zones, each in the
// middle of its stretch, straight between them, and of the hearth below.
func HeatOf(p picture.Picture) Heat {
	h := Heat{blast: p.BlastOn, bore: p.Bore, side: tipAt, floor: p.Floor, top: p.Burden}
	if p.TuyereRight {
		h.side = -tipAt
	}
	for _, l := range p.Labels {
		k := knot{cm: steady(l.At(), steadyCM), middle: steady(l.Degrees, steadyK), fall: usualFall(l.Degrees)}
		if l.Spread.P90 > 0 {
			k.less, k.more = l.Degrees-l.Spread.P10, l.Spread.P90-l.Degrees
		}
		if l.WallSide.Known {
			k.fall = math.Max(steady(l.Degrees-float64(l.WallSide.Value), steadyK), 0)
		}
		h.knots = append(h.knots, k)
	}
	if n := len(h.knots); n > 0 && !p.Hearth.IsZero() {
		hot := steady(p.Hearth.P50, steadyK)
		h.knots = append(h.knots, knot{cm: p.Floor / 2, middle: hot, fall: usualFall(hot), less: h.knots[n-1].less, more: h.knots[n-1].more})
	}
	return h
}

// A glow must not move by itself: temperatures and heights go on in steps, or some
// cell of every row would change every second.
const steadyK, steadyCM = 20.0, 1.0

func steady(v, step float64) float64 { return math.Round(v/step) * step }

// tipAt is where the air leaves the tuyere across the shaft, -1 the left wall to
// 1 the right.
const tipAt = -0.35

// usualFall is how much cooler the wall side is drawn where that is not solved,
// in K: drawing, no figure.
func usualFall(celsius float64) float64 { return math.Min(60+0.2*celsius, 290) }

// Known tells whether any heat is known.
func (h Heat) Known() bool { return len(h.knots) > 0 }

// Middle is the temperature in Celsius on the axis at a height and the fall to
// the wall in K.
func (h Heat) Middle(cm float64) (celsius, fall float64) {
	n := len(h.knots)
	if n == 0 {
		return 20, 0
	}
	if first := h.knots[0]; cm >= first.cm {
		return h.above(first, cm), first.fall
	}
	for i := 1; i < n; i++ {
		if a, b := h.knots[i-1], h.knots[i]; cm >= b.cm {
			s := (a.cm - cm) / math.Max(a.cm-b.cm, 1e-9)
			return a.middle + s*(b.middle-a.middle), a.fall + s*(b.fall-a.fall)
		}
	}
	return h.knots[n-1].middle, h.knots[n-1].fall
}

// Spread is how hot it is at a height at the least and at the most, in Celsius.
func (h Heat) Spread(cm float64) (low, high float64) {
	middle, _ := h.Middle(cm)
	n := len(h.knots)
	near := h.knots[n-1]
	for i, k := range h.knots {
		if cm >= k.cm {
			near = k
			if i > 0 {
				a := h.knots[i-1]
				s := (a.cm - cm) / math.Max(a.cm-k.cm, 1e-9)
				near.less, near.more = a.less+s*(k.less-a.less), a.more+s*(k.more-a.more)
			}
			break
		}
	}
	return math.Max(middle-near.less, 20), middle + near.more
}

// above goes on upwards from the first knot as steeply as below it, to no colder
// than fresh charcoal.
func (h Heat) above(first knot, cm float64) float64 {
	if len(h.knots) < 2 {
		return first.middle
	}
	next := h.knots[1]
	slope := (first.middle - next.middle) / math.Max(first.cm-next.cm, 1e-9)
	return math.Max(first.middle+math.Min(slope, 0)*(cm-first.cm), math.Min(first.middle, 60))
}

// across is how the fall to the wall runs over the columns of a row, 0 in the
// middle and 1 at the wall, and where each stands, -1 to 1.
func across(n int) (falls, at []float64) {
	falls, at = make([]float64, n), make([]float64, n)
	for i := range n {
		x := (2*float64(i) + 1 - float64(n)) / float64(n)
		at[i], falls[i] = x, math.Pow(math.Abs(x), 2.4)
	}
	return falls, at
}

// bump is how much hotter it is drawn before the tuyere, in K: by column and by
// height, to be multiplied. It is drawing, no figure.
const bump = 95.0

func (h Heat) bumpAcross(at []float64) []float64 {
	out := make([]float64, len(at))
	if !h.blast {
		return out
	}
	for i, x := range at {
		d := (x - h.side) / 0.45
		out[i] = bump * math.Exp(-d*d)
	}
	return out
}

func (h Heat) bumpAt(cm float64) float64 {
	if cm < -20 || cm > 20 {
		return 0
	}
	d := (cm + 0.5) / 4.5
	return math.Exp(-d * d)
}
