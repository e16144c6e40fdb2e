package light

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	"chargehand/model/plan"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// ofHouse are the furnaces of the house to light, the one that was asked for first, each
// with the lots and measures that there are and, where one was made for it and not lit
// yet, its plan. What a smelt takes of them is a copy.
func ofHouse(sh *screen.Shared, with any) []screen.Starter {
	h := sh.House()
	fs := slices.Clone(h.Furnaces)
	slices.Reverse(fs) // the one built last is the likeliest
	wanted, _ := with.(screen.InFurnace)
	slices.SortStableFunc(fs, func(a, b house.Furnace) int {
		switch {
		case a.ID == entry.UID(wanted):
			return -1
		case b.ID == entry.UID(wanted):
			return 1
		}
		return 0
	})
	var all []screen.Starter
	for _, f := range fs[:min(len(fs), most)] {
		last := f.Last().Furnace
		s := inStock(h, screen.Starter{Name: words.OfHouse(last.Name), Furnace: last, Measures: screen.Starters()[0].Measures, Recipe: screen.Starters()[0].Recipe})
		all = append(all, planned(h, s, f.ID))
	}
	return all
}

// stocked are the usual furnaces with the lots and measures of the house. Where no furnace
// is keyed a plan is reckoned with the first of them, which so has it.
func stocked(sh *screen.Shared, usual []screen.Starter) []screen.Starter {
	h := sh.House()
	all := slices.Clone(usual)
	for i, s := range all {
		all[i] = inStock(h, s)
	}
	if len(h.Furnaces) == 0 && len(all) > 0 {
		all[0] = planned(h, all[0], "")
	}
	return all
}

// planned is a starter with the plan that was made for its furnace, if there is one.
func planned(h house.State, s screen.Starter, furnace entry.UID) screen.Starter {
	p, ok := planFor(h, furnace)
	if !ok {
		return s
	}
	s.Name = words.OfHousePlanned(s.Furnace.Name, p.Name)
	s.Plan = &entry.PlanTaken{UID: p.UID, Name: p.Name, Wanted: p.Wanted, Sure: p.Sure, Promised: p.Promised}
	s.Ramp, s.Trying = plan.Ramp(p.Plan), p.Trying
	return s
}

// inStock is a starter charged from what the house has, in its measures.
func inStock(h house.State, s screen.Starter) screen.Starter {
	s.Recipe, s.Measures = slices.Clone(s.Recipe), slices.Clone(s.Measures)
	for _, of := range []struct {
		what entry.What
		m    entry.Material
	}{{entry.Charcoal, entry.LotCharcoal}, {entry.Ore, entry.LotOre}} {
		m, named := plan.MeasureFor(h, of.what)
		for i := range s.Measures {
			if named && s.Measures[i].What == of.what {
				was := s.Measures[i].Name
				s.Measures[i] = m
				for j := range s.Recipe {
					if s.Recipe[j].Measure == was {
						s.Recipe[j].Measure = m.Name
					}
				}
			}
		}
		l, any := plan.MostOf(h, of.m)
		if !any {
			continue
		}
		s.Lots = append(slices.Clone(s.Lots), lot.Snapshot(l))
		for j := range s.Recipe {
			if s.Recipe[j].What == of.what {
				s.Recipe[j].Lot = string(l.ID)
			}
		}
	}
	return s
}

// planFor is the last plan made for a furnace, or for none, if it waits for its fire.
func planFor(h house.State, furnace entry.UID) (house.Plan, bool) {
	for _, p := range slices.Backward(h.Plans) {
		if p.Taken != "" && (p.Furnace == "" || p.Furnace == string(furnace)) {
			return p, p.Lit == ""
		}
	}
	return house.Plan{}, false
}

// ramp are the charges of the plan that a fire is lit by, in the measures and from the lots
// as the form has them. A plan made before there were measures goes by weight: hands count,
// so it is counted now in those that were weighed.
func (f Screen) ramp(l entry.Light) []entry.RecipeStep {
	steps := slices.Clone(f.starters[f.starter].Ramp)
	first := map[entry.What]entry.Part{}
	for _, p := range l.Recipe {
		if _, met := first[p.What]; !met {
			first[p.What] = p
		}
	}
	each := map[string]float64{}
	for _, m := range l.Measures {
		if m.Mass.Known && !m.Guessed {
			each[m.Name] = float64(m.Mass.Value)
		}
	}
	for i := range steps {
		parts := steps[i].Parts
		steps[i].Parts = slices.Clone(parts)
		for j, p := range parts {
			as := first[p.What]
			if p.Measure != "" && as.Measure != "" {
				steps[i].Parts[j].Measure = as.Measure
			}
			if p.Mass.Known && !p.Count.Known && each[as.Measure] > 0 {
				p.Measure, p.Mass = as.Measure, entry.None[entry.Kilogram]()
				steps[i].Parts[j] = plan.Measured(p, float64(parts[j].Mass.Value), each[as.Measure], steps[i].Charges)
			}
			if as.Lot != "" {
				steps[i].Parts[j].Lot = as.Lot
			}
		}
	}
	return steps
}
