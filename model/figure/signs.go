package figure

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

// Signs are what somebody saw last that tells of the hearth's heat. A solver that nothing contradicts is believed as far as its
// band goes; one sight of slag that stands says more of a hearth than its sums.
type Signs struct {
	Slag  string // entry.SlagStiff or entry.SlagRuns; empty where it was not seen for long, or as something else
	Times int    // how often in a row, at the most seenMost
	Peep  string // a colour of the peep; empty likewise
}

const (
	// slagSeen and peepSeen are for how long a sight stands (common practice: slag is seen when it is tapped or hooked out).
	slagSeen, peepSeen = time.Hour, 30 * time.Minute
	// seenWrong is how many looks are told wrong (assumed: one in ten); so many of the same in a row are so much the less
	// likely all wrong, up to seenMost of them.
	seenWrong, seenMost = 0.1, 3
	// colourOff is how far a heat told by its colour is off, K (common practice: a shade is some 100 K wide).
	colourOff = 60.0
)

// upTo is up to what heat, in C, the peep shows a colour (heat colours as smiths tell them; from memory, unverified). A
// hearth is no hotter than the fire over it that heats it. White says nothing: a hearth lags behind its fire for hours.
var upTo = map[string]float64{entry.PeepYellow: 1250, entry.PeepOrange: 1050, entry.PeepRed: 900}

// signs are those of a state.
func signs(s fold.State) Signs {
	var g Signs
	peep, slag := false, false
	for i := s.Lines.Len() - 1; i >= 0 && !(peep && slag); i-- {
		l := s.Lines.At(i)
		ago := s.At - l.At
		if ago >= slagSeen {
			break
		}
		look, ok := l.Event.(entry.Look)
		switch {
		case !ok:
		case look.At == entry.AtPeep && !peep:
			if peep = true; ago < peepSeen && upTo[look.Sees] > 0 {
				g.Peep = look.Sees
			}
		case look.At == entry.AtSlag && !slag:
			switch {
			case look.Sees != entry.SlagStiff && look.Sees != entry.SlagRuns, g.Slag != "" && look.Sees != g.Slag:
				slag = true
			default:
				g.Slag = look.Sees
				g.Times++
				slag = g.Times == seenMost
			}
		}
	}
	return g
}

// Hearth is a band of the hearth's heat, K, with what the signs say of it: of the heats of the band, each counts as far as the
// signs are likely at it.
func (g Signs) Hearth(heat physics.Band, slag physics.Oxides) physics.Band {
	if g == (Signs{}) || !(heat.P90 > heat.P10) {
		return heat
	}
	const steps = 400
	down, up := math.Max(1, (heat.P50-heat.P10)/physics.Z90), math.Max(1, (heat.P90-heat.P50)/physics.Z90)
	var at, sum [steps + 1]float64
	for i := range at {
		z := 8*float64(i)/steps - 4
		sd := up
		if z < 0 {
			sd = down
		}
		at[i] = heat.P50 + z*sd
		sum[i] = math.Exp(-z*z/2) * g.likely(at[i], slag)
		if i > 0 {
			sum[i] += sum[i-1]
		}
	}
	quantile := func(share float64) float64 {
		want := share * sum[steps]
		for i := range sum {
			if sum[i] >= want {
				return at[i]
			}
		}
		return at[steps]
	}
	return physics.Band{P10: quantile(0.1), P50: quantile(0.5), P90: quantile(0.9)}
}

// likely is how likely the signs are over a hearth of some K.
func (g Signs) likely(kelvin float64, slag physics.Oxides) float64 {
	p := 1.0
	if g.Slag != "" {
		stiff := below(kelvin, physics.FromCelsius(physics.SlagFreezes), colourOff)
		if r := slag.Running(physics.Exact(kelvin)); r != (physics.Running{}) {
			stiff = r.Not + r.Creeps/2 // it is called either while it creeps
		}
		if g.Slag == entry.SlagRuns {
			stiff = 1 - stiff
		}
		wrong := math.Pow(seenWrong, float64(g.Times))
		p *= wrong + math.Pow(1-seenWrong, float64(g.Times))*stiff
	}
	if g.Peep != "" {
		p *= seenWrong + (1-seenWrong)*below(kelvin, physics.FromCelsius(upTo[g.Peep]), colourOff)
	}
	return p
}

// below is the chance that a heat lies below another one, known to some K.
func below(kelvin, than, sd float64) float64 { return math.Erfc((kelvin-than)/sd/math.Sqrt2) / 2 }
