package stores

import (
	"chargehand/model/entry"
	plans "chargehand/model/plan"
	"chargehand/tui/screen"
)

// held is what is left of a material dry, held against what the plan that waits for its fire
// needs.
type held struct {
	material entry.Material
	left     float64
	unready  float64 // of it what roasting will take, where the need is of roasted ore and other ore is there too
	known    bool
	short    float64 // lots below nothing
	lies     float64 // what it weighs as it lies
	need     float64 // 0 where no plan says, or only by a guess
}

// spare is what there is beyond the need, less than nothing where it is too little.
func (h held) spare() float64 { return h.left - h.unready - h.need }

// needs are the names of what a plan needs, of the materials that are held against it.
// What rests on a guess alone is not.
var needs = map[entry.Material]string{entry.LotOre: "ore_roasted", entry.LotCharcoal: "charcoal"}

// holding is how it stands with ore and charcoal.
func holding(sh *screen.Shared) []held {
	h := sh.House()
	p, planned := h.Waiting()
	of, _ := plans.MostOf(h, entry.LotOre)
	roasted := of.Roasted()
	var all []held
	for _, m := range []entry.Material{entry.LotOre, entry.LotCharcoal} {
		left, short, any := plans.Chargeable(h, m)
		one := held{material: m, left: left.Kg, known: any && left.Known(), short: short}
		for _, l := range h.Lots {
			if l.Of() == m && !l.Fines() && l.Left.Known() && l.Left.Kg > 0 {
				one.lies += l.Weight(l.Left.Kg)
				if m == entry.LotOre && !l.Roasted() && (roasted || planned && plans.AsDug(l)) {
					one.unready += (1 - plans.RoastedOfRaw.P50) * l.Left.Kg
				}
			}
		}
		if need := p.Needs[needs[m]]; planned && need.P50.Known && need.Basis != entry.BasisGuessed {
			one.need = float64(need.P50.Value)
		}
		if any || one.need > 0 {
			all = append(all, one)
		}
	}
	return all
}
