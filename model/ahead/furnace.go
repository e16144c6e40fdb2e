package ahead

import (
	"maps"
	"math"
	"math/rand/v2"

	"chargehand/model/entry"
	"chargehand/physics/shaft"
)

// Furnaces is how many plausible furnaces are asked.
const Furnaces = 10

// oreSpread is how far off the iron share of the ore may be, either way (published: one analogue ore of 51 to 55 % by three
// assays, Markewitz 2016 to 2021).
const oreSpread = 0.03

// furnace is one plausible furnace: named numbers of the solver, and what its ore holds over its assay.
type furnace struct {
	calibration map[string]float64
	ore         float64
}

// plausible are ten furnaces spread evenly over the ranges of the numbers that are calibrated: of each number every tenth of
// its range comes once, in an order of its own (a Latin square). They are the same for every smelt, so that the same entries
// give the same answer.
var plausible = func() (all [Furnaces]furnace) {
	r := rand.New(rand.NewPCG(1, 1)) // any: fixed
	for i := range all {
		all[i].calibration = map[string]float64{}
	}
	tenths := func(put func(i int, share float64)) {
		for i, k := range r.Perm(Furnaces) {
			put(i, (float64(k)+0.5)/Furnaces)
		}
	}
	for _, row := range shaft.ParamTable {
		if row.Fixed {
			continue
		}
		tenths(func(i int, share float64) {
			all[i].calibration[row.Name] = between(row.Low, row.Default, row.High, share)
		})
	}
	tenths(func(i int, share float64) { all[i].ore = oreSpread * (2*share - 1) })
	return all
}()

// As is a smelt's entries as they would have been on the nth of the plausible furnaces, n from 0 to [Furnaces] less one: for a
// plan, which has no session yet.
func As(n int, entries []entry.Entry) []entry.Entry { return plausible[n].as(entries) }

// between goes from the low end by the usual value to the high one.
func between(low, usual, high, share float64) float64 {
	if share < 0.5 {
		return low + (usual-low)*2*share
	}
	return usual + (high-usual)*(2*share-1)
}

// as is a smelt's entries as they would have been on the furnace: only what the light took down of the numbers of the solver
// and of the ore is another.
func (f furnace) as(entries []entry.Entry) []entry.Entry {
	other := func(l entry.Light) entry.Light {
		by := maps.Clone(l.Calibration)
		if by == nil {
			by = map[string]float64{}
		}
		for name, v := range f.calibration {
			if _, own := by[name]; !own { // what was learnt of this furnace stands
				by[name] = v
			}
		}
		l.Calibration = by
		lots := make([]entry.Lot, len(l.Lots))
		for i, lot := range l.Lots {
			if lot.What == entry.Ore && lot.Iron.Known {
				lot.Iron.Value = entry.Share(math.Max(0.05, math.Min(0.69, float64(lot.Iron.Value)+f.ore)))
			}
			lots[i] = lot
		}
		l.Lots = lots
		return l
	}
	all := make([]entry.Entry, len(entries), len(entries)+16)
	for i, e := range entries {
		switch ev := e.Event.(type) {
		case entry.Light:
			e.Event = other(ev)
		case entry.Amend:
			if l, ok := ev.Event.(entry.Light); ok {
				ev.Event = other(l)
				e.Event = ev
			}
		}
		all[i] = e
	}
	return all
}
