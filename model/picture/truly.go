package picture

import (
	"math"

	"chargehand/model/figure"
	"chargehand/physics"
)

// Truly draws a furnace whose state is known in the frame of another picture of it: the burden up to so many cm over the tuyere,
// the heat in C at its top, before the tuyere and in the hearth, the slag so many cm under the tuyere, a bloom of so many kg. Its
// layers are those of the other picture, sunk or raised with the burden.
func (p Picture) Truly(stackCm, topC, peepC, hearthC, slagCm, bloomKg float64) Picture {
	was := p.Burden
	p.Burden, p.BurdenKnown = stackCm, true
	slices := p.Slices
	p.Slices = nil
	for _, s := range slices {
		if was > 0 {
			k := stackCm / was
			s.Top, s.Bottom, s.OreTop, s.OreBottom = k*s.Top, k*s.Bottom, k*s.OreTop, k*s.OreBottom
		}
		p.Slices = append(p.Slices, s)
	}
	if len(p.Slices) == 0 && stackCm > 0 {
		p.Slices = []Slice{{Top: stackCm, OreTop: stackCm, OreBottom: stackCm}}
	}
	p.Labels, p.Heats = nil, nil
	const thin = 1.0 // cm
	for _, z := range []figure.Zone{{Top: stackCm, Bottom: stackCm - thin, Degrees: topC}, {Top: thin, Bottom: -thin, Degrees: peepC}} {
		p.Labels = append(p.Labels, Label{z})
		p.Heats = append(p.Heats, Glow{Top: z.Top, Bottom: z.Bottom, Heat: HeatOf(z.Degrees), Wall: HeatOf(z.Degrees)})
	}
	p.Hearth = physics.Band{P10: hearthC, P50: hearthC, P90: hearthC}
	p.Bath = p.Floor
	if !math.IsNaN(slagCm) {
		p.Bath = math.Max(p.Floor, math.Min(0, -slagCm))
	}
	p.Bloom = bloomHeight(figure.Figure{Band: physics.Band{P10: bloomKg, P50: bloomKg, P90: bloomKg}, Basis: figure.Measured}, p.Bore)
	return p
}
