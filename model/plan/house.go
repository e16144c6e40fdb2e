package plan

import (
	"cmp"
	"math"
	"slices"

	"chargehand/model/account"
	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/house"
	"chargehand/model/learn"
	"chargehand/model/solve"
	"chargehand/physics"
)

// FromHouse is the ask with what the house knows: a furnace, a lot of ore, nil for none of
// its own, what is left, and what own smelts taught.
func (a Ask) FromHouse(h house.State, f *house.Furnace, ore *house.Lot, l learn.Lessons) Ask {
	if f != nil {
		a.Furnace, a.Built = f.Last().Furnace, true
		if a.Blast.IsZero() {
			a.Blast = BlowerOf(a.Furnace)
		}
	}
	if ore != nil {
		a.Ore = oreOf(*ore)
	}
	if m, known := MeasureFor(h, entry.Charcoal); known && m.Mass.Known {
		moisture := Moisture(h, entry.LotCharcoal)
		a.Bucket, a.Moisture = float64(m.Mass.Value)/(1+moisture), moisture
	}
	a.Yields, a.Billets, a.Failures, a.Smelts = l.Yields, l.Billets, l.Failures, l.Smelts
	a.Left = leftIn(h, ore)
	if l, ok := MostOf(h, entry.LotIronSlag); ok && !a.Seed.Known && l.Left.Known() && l.Left.Kg >= leastSeed {
		a.Seed = entry.Some(math.Round(10*min(l.Left.Kg, usualSeed)) / 10)
	}
	return a
}

// usualSeed is the iron-rich slag that goes in before the ore where there is some, kg: 1.5 to 3
// at published smelts (2016 to 2021, Markewitz). Less than leastSeed is not worth it.
const (
	usualSeed = 2.0
	leastSeed = 0.5
)

// mostCharged is the heaviest measure that goes into a shaft by hand, kg: sacks and barrows are for fetching
// (assumed; charges of published logs are of 0.9 to 4.5 kg charcoal, of bags up to 11 kg only at one large furnace).
const mostCharged = 6

// MeasureFor is the measure of the house in which a material goes in: the first named that is not too heavy for it.
func MeasureFor(h house.State, w entry.What) (entry.Measure, bool) {
	for _, m := range h.Measures {
		if m.What == w && (!m.Mass.Known || m.Mass.Value <= mostCharged) {
			return m, true
		}
	}
	return entry.Measure{}, false
}

// Moisture is that of the lot of a material of which most is left, on the dry mass.
func Moisture(h house.State, m entry.Material) float64 {
	l, ok := MostOf(h, m)
	if !ok || !l.Moisture.Known {
		return 0
	}
	return float64(l.Moisture.Value)
}

// MostOf is the lot of a material that one would charge from: roasted ore before other,
// then the one of which most is left.
func MostOf(h house.State, m entry.Material) (house.Lot, bool) {
	var of []house.Lot
	for _, l := range h.Lots {
		if l.Of() == m && !l.Fines() && (!l.Left.Known() || l.Left.Kg > 0.05) {
			of = append(of, l)
		}
	}
	if len(of) == 0 {
		return house.Lot{}, false
	}
	return slices.MaxFunc(of, func(a, b house.Lot) int {
		if a.Roasted() != b.Roasted() {
			if a.Roasted() {
				return 1
			}
			return -1
		}
		return cmp.Compare(a.Left.Kg, b.Left.Kg)
	}), true
}

// metalOfBloom is the share of metal in a bloom, 0.6 to 0.9 (rules for accounts:
// common practice of the published smelts).
const metalOfBloom = 0.75

// oreOf is what is known of a lot of ore: what its assay lets it give at most, by a
// slag as poor in iron as published ones are.
func oreOf(l house.Lot) Ore {
	o := Ore{}
	if l.Moisture.Known {
		o.Moisture = float64(l.Moisture.Value)
	}
	if n := len(l.Assays); n > 0 {
		a := doubt.AssayOf(l.Assays[n-1], false)
		if iron := account.OfDry(l.Assays[n-1], l.Moisture).Iron; iron.Known() {
			o.Iron = iron.Value
		}
		if iron, ok := a.IronToBeHad(); ok {
			o.Most, o.Assay = max(iron.P90/100/metalOfBloom, 1e-6), &a
		}
	}
	return o
}

// leftIn is what there is of what a plan takes, dry, where it is known.
func leftIn(h house.State, ore *house.Lot) map[Need]float64 {
	all := map[Need]float64{}
	for need, m := range map[Need]entry.Material{NeedCharcoal: entry.LotCharcoal, NeedWood: entry.LotWood, NeedClay: entry.LotClay} {
		if left, _, any := Chargeable(h, m); any && left.Known() {
			all[need] = left.Kg
		}
	}
	asDug := ore != nil && AsDug(*ore)
	if ore != nil && (ore.Roasted() || asDug) {
		if raw, any := rawLeft(h); any {
			all[NeedOreRaw] = raw
		}
	}
	switch {
	case asDug: // what is needed is roasted
		all[NeedOreRoasted] = 0
	case ore != nil && ore.Left.Known():
		all[NeedOreRoasted] = ore.Left.Kg
	case ore == nil:
		if left, _, any := h.Left(entry.LotOre); any && left.Known() {
			all[NeedOreRoasted] = left.Kg
		}
	}
	return all
}

// AsDug tells whether a lot is ore as it came from the ground, still to be roasted: what was
// bought or given may have been.
func AsDug(l house.Lot) bool {
	return l.Of() == entry.LotOre && !l.Roasted() && slices.ContainsFunc(l.Changes, func(c house.Change) bool { return c.Does == entry.Dug && !c.Took })
}

// rawLeft is what is left of ore that is still to be roasted, kg dry, where all of it is known.
func rawLeft(h house.State) (kg float64, any bool) {
	for _, l := range h.Lots {
		if l.Of() != entry.LotOre || l.Roasted() || l.Fines() {
			continue
		}
		if !l.Left.Known() {
			return 0, false
		}
		kg, any = kg+max(l.Left.Kg, 0), true
	}
	return kg, any
}

// Names under which a kept plan promises its figures. The ore is that of the figure of the
// fire (model/fold).
const (
	PromisedOre      = "ore_planned"
	PromisedCharcoal = "charcoal"
	PromisedHours    = fold.PromisedHours
	PromisedChance   = "chance"
)

// Kept is the plan as the house keeps it, with the way of this name taken, charged from
// the lots and in the measures of the house, so far as it has them.
func (p Plan) Kept(h house.State, taken string) entry.Plan {
	e := entry.Plan{Wanted: entry.Wanted{What: p.What, Mass: entry.Some(entry.Kilogram(p.Kg))}, Sure: entry.Some(entry.Share(p.Sure)), Taken: taken, Forge: p.Forge,
		Needs: map[string]entry.Estimate{}, Promised: map[string]entry.Estimate{}, Solver: solve.Version}
	in := charging{ore: entry.Part{What: entry.Ore}, charcoal: entry.Part{What: entry.Charcoal}, slag: entry.Part{What: entry.SeedSlag}, wet: p.Ore.Moisture, damp: p.Moisture}
	for _, of := range []struct {
		m    entry.Material
		what entry.What
		part *entry.Part
		each *float64
	}{{entry.LotOre, entry.Ore, &in.ore, &in.scoop}, {entry.LotCharcoal, entry.Charcoal, &in.charcoal, &in.bucket}} {
		if l, ok := MostOf(h, of.m); ok {
			of.part.Lot = string(l.ID)
			e.Lots = append(e.Lots, l.ID)
		}
		if m, ok := MeasureFor(h, of.what); ok && m.Mass.Known {
			of.part.Measure, *of.each = m.Name, float64(m.Mass.Value)
			e.Measures = append(e.Measures, m.ID())
		}
	}
	if l, ok := MostOf(h, entry.LotIronSlag); ok && p.Seed.Value > 0 {
		in.slag.Lot = string(l.ID)
		e.Lots = append(e.Lots, l.ID)
	}
	for _, w := range p.Ways {
		c := entry.ChargingPlan{Name: w.Name}
		for _, s := range w.Steps {
			c.Steps = append(c.Steps, in.step(s))
		}
		e.Plans = append(e.Plans, c)
		if w.Name == taken {
			hours := p.Hours(w)
			e.Promised[PromisedOre] = point(w.Ore, "kg", entry.BasisEstimated)
			e.Promised[PromisedCharcoal] = point(w.Charcoal, "kg", p.Basis)
			e.Promised[PromisedHours] = band(hours, "h", p.Basis)
		}
	}
	if o, ok := p.Offer(); ok {
		e.Promised[PromisedChance] = point(o.Chance, "", entry.BasisEstimated)
	}
	for _, n := range p.Needs {
		switch {
		case !n.Known:
			e.Needs[string(n.Need)] = entry.Estimate{Unit: n.Unit, Basis: entry.BasisUnknown}
		case n.Point:
			e.Needs[string(n.Need)] = point(n.Band.P50, n.Unit, n.Basis)
		default:
			e.Needs[string(n.Need)] = band(n.Band, n.Unit, n.Basis)
		}
	}
	return e
}

func point(v float64, unit string, b entry.Basis) entry.Estimate {
	return entry.Estimate{P50: entry.Some(entry.Number(v)), Unit: unit, Basis: b}
}

func band(v physics.Band, unit string, b entry.Basis) entry.Estimate {
	return entry.Estimate{P10: entry.Some(entry.Number(v.P10)), P50: entry.Some(entry.Number(v.P50)), P90: entry.Some(entry.Number(v.P90)), Unit: unit, Basis: b}
}

// charging is how a way to charge is keyed: lots, measures, and how wet they are.
type charging struct {
	ore, charcoal entry.Part
	slag          entry.Part // iron-rich, by weight
	scoop, bucket float64    // kg in a measure as it lies; 0 for by weight
	wet, damp     float64    // moisture on the dry mass
}

func (c charging) step(s Step) entry.RecipeStep {
	r := entry.RecipeStep{Does: s.Does, Charges: s.Charges}
	if s.Charges > 0 {
		r.Every = entry.Some(entry.Minute(math.Round(s.Minutes*10) / 10))
	} else {
		r.Lasts = entry.Some(entry.Minute(s.Minutes))
	}
	if s.Charcoal > 0 {
		r.Parts = append(r.Parts, Measured(c.charcoal, s.Charcoal*(1+c.damp), c.bucket, s.Charges))
	}
	if s.Slag > 0 {
		r.Parts = append(r.Parts, Measured(c.slag, s.Slag, 0, s.Charges))
	}
	if s.Ore > 0 {
		r.Parts = append(r.Parts, Measured(c.ore, s.Ore*(1+c.wet), c.scoop, s.Charges))
	}
	return r
}

// Measured is a part of so many kg as it lies, in a measure of so many kg each: whole measures, of ore half ones too, where
// that comes within a tenth of the weight, or a quarter of what so few charges bring in as what is left at the end;
// else, and where each is 0, by weight.
func Measured(p entry.Part, kg, each float64, charges int) entry.Part {
	step, off := 1.0, 0.1
	if charges <= 2 && p.What == entry.Ore { // nobody weighs for one or two, and it adds up to little
		off = 0.25
	}
	if p.What == entry.Ore {
		step = 0.5
	}
	if each > 0 {
		if n := math.Round(kg/each/step) * step; n > 0 && math.Abs(n*each-kg) <= off*kg {
			p.Count = entry.Some(entry.Count(n))
			return p
		}
		p.Measure = ""
	}
	p.Mass = entry.Some(entry.Kilogram(math.Round(kg*100) / 100))
	return p
}

// Ramp are the charges of the way that was taken of a kept plan, from the first after the
// fill on: what a fire is charged by.
func Ramp(p entry.Plan) (steps []entry.RecipeStep) {
	for _, w := range p.Plans {
		if w.Name != p.Taken {
			continue
		}
		for _, s := range w.Steps {
			if s.Does != entry.StepFill && s.Charges > 0 {
				steps = append(steps, s)
			}
		}
	}
	return steps
}
