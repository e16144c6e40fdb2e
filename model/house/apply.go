package house

import (
	"slices"
	"time"

	"chargehand/model/entry"
)

// apply takes one line in. Kinds of a smelt, of the journal and of a newer
// version say nothing of the house.
func (f *folder) apply(l line) {
	switch ev := l.ev.(type) {
	case nil:
		f.used(l)
	case entry.LotStored:
		f.stored(l, ev.Lot)
	case entry.Deed:
		f.deed(l, ev)
	case entry.Assay:
		if ev.Lot != "" {
			lot := f.at(ev.Lot)
			lot.Assays = append(lot.Assays, ev)
		}
		if ev.Sample != "" {
			f.Samples[ev.Sample] = ev
		}
	case entry.SampleResult:
		f.Samples[ev.Sample] = ev.Assay
	case entry.MeasureNamed:
		f.met[ev.Measure.ID()] = true
	case entry.FurnaceBuilt:
		f.built(l, ev)
	case entry.Drying:
		if i := f.furnace(ev.Furnace); i >= 0 {
			f.Furnaces[i].Dryings = append(f.Furnaces[i].Dryings, Drying{l.at, ev})
		}
	case entry.Plan:
		var p *Plan
		f.Plans, p = known(f.Plans, func(p Plan) bool { return p.ID() == ev.ID() })
		p.Plan, p.Said = ev, l.at
	case entry.PlanTicked:
		for i, p := range f.Plans {
			if p.ID() == ev.Plan {
				if p.Done == nil {
					f.Plans[i].Done = map[string]bool{}
				}
				f.Plans[i].Done[ev.Item] = ev.Done
			}
		}
	case entry.Setting:
		f.Settings[ev.Name] = ev.Value
	case entry.Learnt:
		var learnt *entry.Learnt
		f.Learnt, learnt = known(f.Learnt, func(o entry.Learnt) bool { return o.Of == ev.Of })
		*learnt = ev
	case entry.Lesson:
		f.Lessons = append(f.Lessons, ev)
	case entry.Remind:
		f.Reminders = Reminded(f.Reminders, ev)
	case entry.WallWords:
		f.WallWords = ev
	case entry.Draft:
		drafted(f.Drafts, Drafted{ev, l.at})
	case entry.Mapping:
		f.Mappings[ev.Name] = ev
	default:
		f.forged(l)
	}
}

// lit notes which plans no longer wait for their fire: a smelt was lit by them, or another way
// in their furnace since they were made (in any, where they name none).
func (f *folder) lit(uses []Use, at time.Time) {
	for _, u := range uses {
		for i, p := range f.Plans {
			since := u.Lit.After(p.Said) && !u.Lit.After(at) && (p.Furnace == "" || p.Furnace == string(u.Furnace))
			if since || u.Plan != "" && u.Plan == p.ID() && !u.Lit.After(at) {
				f.Plans[i].Lit = u.Smelt
			}
		}
	}
}

// used takes from a lot what a smelt used, or counts it.
func (f *folder) used(l line) {
	t := l.taken
	i := f.placeOf(t.Lot)
	if i < 0 {
		return // of a lot that is none of the house's
	}
	c := Change{At: l.at, Smelt: l.smelt, Dry: t.Dry}
	if t.Count {
		f.Lots[i].count(c)
		return
	}
	f.Lots[i].take(c)
}

// stored describes a lot, and counts it where a mass is said.
func (f *folder) stored(l line, described entry.Lot) {
	lot := f.at(described.ID())
	if described.Moisture.Known && !lot.Moisture.Known {
		lot.lay(described, l.at)
	}
	lot.Lot, lot.damp = described, described.Moisture.Known
	if described.Assay != nil {
		lot.Assays = append(lot.Assays, *described.Assay)
	}
	m := f.weight(entry.Amount{Mass: described.Mass, Stacked: described.Stacked}, described)
	if m.Known() {
		lot.count(Change{At: l.at, Seq: l.seq, Kg: m.Kg, Dry: dried(m, moistureOf(described)), guessed: !described.Moisture.Known})
	}
}

// deed takes from lots and gives to lots; counted again it sets them.
func (f *folder) deed(l line, d entry.Deed) {
	do := func(as []entry.Amount, change func(*Lot, Change), sign float64) {
		for _, a := range as {
			if a.Lot == "" { // of nothing that is kept
				continue
			}
			lot := f.at(a.Lot)
			lot.Volume += sign * float64(a.Stacked.Value)
			if d.Does == entry.CountedAgain {
				lot.Volume = float64(a.Stacked.Value)
			}
			c := Change{At: l.at, Seq: l.seq, Does: d.Does, Dry: f.dry(lot, a), guessed: !a.Moisture.Known && !lot.Moisture.Known}
			if as := f.weight(a, lot.Lot); as.Known() {
				c.Kg = as.Kg
			}
			change(lot, c)
		}
	}
	taken, given := (*Lot).take, (*Lot).give
	if d.Does == entry.CountedAgain {
		taken, given = (*Lot).count, (*Lot).count
	}
	do(d.In, taken, -1)
	do(d.Fuel, taken, -1)
	do(d.Out, given, 1)
	f.cameBack(l, d)
	if f.ofRoasted(d) {
		for _, a := range d.Out {
			if a.Lot != "" {
				f.at(a.Lot).roasted = true
			}
		}
	}
}

// cameBack takes out of what came and went what a deed took from a lot and gave back to it: ore that
// was sieved is what came before, less what fell through.
func (f *folder) cameBack(l line, d entry.Deed) {
	if d.Does == entry.CountedAgain {
		return
	}
	for _, a := range d.Out {
		if a.Lot == "" || !slices.ContainsFunc(d.In, func(in entry.Amount) bool { return in.Lot == a.Lot }) {
			continue
		}
		lot := f.at(a.Lot)
		took, gave := 0.0, 0.0
		for _, c := range lot.Changes {
			switch {
			case c.Seq != l.seq || c.Smelt != "" || !c.Dry.Known():
			case c.Took:
				took -= c.Dry.Kg
			default:
				gave += c.Dry.Kg
			}
		}
		back := min(took, gave)
		lot.Came.Kg, lot.Went.Kg = lot.Came.Kg-back, lot.Went.Kg-back
	}
}

// ofRoasted tells whether what a deed gives is roasted ore: it roasts, or all the ore that it takes was roasted.
func (f *folder) ofRoasted(d entry.Deed) bool {
	if d.Does == entry.Roasted {
		return true
	}
	ore := false
	for _, a := range d.In {
		i := f.placeOf(a.Lot)
		if i < 0 || f.Lots[i].Of() != entry.LotOre {
			continue
		}
		if ore = true; !f.Lots[i].Roasted() {
			return false
		}
	}
	return ore
}

// dry is the dry mass of an amount, by the moisture said with it, else by the
// lot's. A lot that was described without one takes over what is said of it.
func (f *folder) dry(lot *Lot, a entry.Amount) Mass {
	if a.Moisture.Known && !lot.damp {
		lot.Moisture = a.Moisture
	}
	m := f.weight(a, lot.Lot)
	if a.Moisture.Known {
		return dried(m, float64(a.Moisture.Value))
	}
	return dried(m, moistureOf(lot.Lot))
}

func (f *folder) built(l line, ev entry.FurnaceBuilt) {
	v := Version{From: l.at, Seq: l.seq, Why: ev.Why, Furnace: ev.Furnace}
	if i := f.furnace(ev.Furnace.ID()); i >= 0 {
		f.Furnaces[i].Versions = append(f.Furnaces[i].Versions, v)
		return
	}
	f.Furnaces = append(f.Furnaces, Furnace{ID: ev.Furnace.ID(), Versions: []Version{v}})
}
