package picture

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/physics"
)

// Filling is the charcoal that fills a furnace from its floor to the mark.
type Filling struct {
	Mass     physics.Band         // kg, dry, over the published range of how densely charcoal lies
	Measures entry.Maybe[float64] // how many of the measure that it is; unknown without a weight
	Each     float64              // cm that a measure fills; 0 without a weight
	Area     float64              // cm2, the bore at the tuyere
}

// mostLayers bounds how many measures are told apart in the picture.
const mostLayers = 40

// Filled draws a furnace before it is lit, full of charcoal to the mark, each
// measure a layer numbered from the floor up.
func Filled(l entry.Light) (Picture, Filling) {
	p := From(&figure.Reading{Light: l})
	p.Burden, p.BurdenKnown, p.BlastOn = p.Mark, true, false
	bore := physics.Bore{Bottom: p.Bore / 100, Top: p.BoreTop / 100, Height: p.Mark / 100}
	floor, mark := p.Floor/100, p.Mark/100
	kg := bore.VolumeBetween(floor, mark) * physics.DefaultCharcoalBulk
	f := Filling{Mass: physics.LogNormal(kg, physics.CharcoalBulkRelSD), Area: bore.Area(0) * 1e4}
	each := 0.0
	for _, m := range l.Measures {
		if m.What == entry.Charcoal && m.Mass.Positive() {
			each = float64(m.Mass.Value) / physics.DefaultCharcoalBulk
			f.Measures = entry.Some(kg / float64(m.Mass.Value))
			f.Each = 100 * bore.Thickness(0, each)
			break
		}
	}
	if each <= 0 || f.Measures.Value > mostLayers {
		p.Slices = []Slice{{Top: p.Mark, Bottom: p.Floor, OreTop: p.Mark, OreBottom: p.Mark}}
		return p, f
	}
	for n, low := 1, floor; low < mark-1e-6; n++ {
		top := min(low+bore.Thickness(low, each), mark)
		p.Slices = append([]Slice{{Top: 100 * top, Bottom: 100 * low, Charge: n, OreTop: 100 * top, OreBottom: 100 * top}}, p.Slices...)
		low = top
	}
	return p, f
}
