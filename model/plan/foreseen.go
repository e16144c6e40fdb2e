package plan

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// Foreseen is what the shaft solver makes of a way to charge: its own opinion, from
// the first ore to the burn-down. It is zero where the solver does not run.
type Foreseen struct {
	Hearth physics.Band // K, the middle of the time
	Stiff  float64      // chance that the slag does not run at the end of the ore
	Known  bool         // the furnace and the blast are such that the solver runs
	Fears  []Fear
}

// What the solver may fear of a way to charge.
const (
	FearHearth Fear = "cold hearth" // below what the slag needs
	FearStiff  Fear = "stiff slag"
	FearCast   Fear = "cast iron"
)

// Where what the solver says is feared: below the melting of fayalite and a margin
// (1178 C, Bowen and Schairer 1932, and 25 K), a slag more likely stiff than not,
// and the carbon of iron that begins to melt beside it (2.1 %, the iron-carbon
// diagram of any handbook).
const (
	coldHearth = 1178 + 25 + 273.15
	stiffFrom  = 0.5
	castFrom   = 0.021
)

// Foresee solves a way to charge, on the coarse grid. It takes about a tenth of a
// second. The blast is the one keyed, or what is advised for the bore.
func (p Plan) Foresee(w Charging) Foreseen {
	entries, ore, end := p.entries(w)
	c := fold.Trace(entries, fold.All, end)
	v := solve.Solver{Grid: shaft.Coarse}
	s := v.Solve(&c)
	var f Foreseen
	var hearths []physics.Band
	last, carbon := solve.Sample{}, 0.0
	for _, one := range s.Samples() {
		if one.At >= ore && one.At <= end {
			hearths = append(hearths, one.Hearth)
			last, carbon = one, max(carbon, one.Carbon.P50)
		}
	}
	if len(hearths) == 0 || s.Status != solve.Computes {
		return f
	}
	slices.SortFunc(hearths, func(a, b physics.Band) int {
		switch {
		case a.P50 < b.P50:
			return -1
		case a.P50 > b.P50:
			return 1
		}
		return 0
	})
	f.Known, f.Hearth, f.Stiff = true, hearths[len(hearths)/2], last.Stands
	if f.Hearth.P50 < coldHearth {
		f.Fears = append(f.Fears, FearHearth)
	}
	if f.Stiff > stiffFrom {
		f.Fears = append(f.Fears, FearStiff)
	}
	if carbon > castFrom {
		f.Fears = append(f.Fears, FearCast)
	}
	return f
}

// entries are those of a smelt that goes as planned, to the end of its last charge,
// and when ore first went in.
func (p Plan) entries(w Charging) (es []entry.Entry, ore, end time.Duration) {
	const stream = "plan"
	lit := time.Date(2000, 1, 1, 8, 0, 0, 0, time.UTC) // any: the solver knows only what has passed since
	at := time.Duration(0)
	add := func(ev entry.Event) {
		t := lit.Add(at)
		es = append(es, entry.Entry{Version: entry.Version, Stream: stream, Seq: uint64(len(es) + 1), Happened: t, Kept: t, Boot: "plan", Mono: at, Event: ev})
	}
	f := p.Furnace
	f.Bore = entry.Some(entry.Centimetre(cm(f.Bore, 25)))
	f.Stack = entry.Some(entry.Centimetre(cm(f.Stack, 50)))
	f.TuyereBase = entry.Some(entry.Centimetre(cm(f.TuyereBase, 15)))
	blast := p.Blast.P50
	if !(blast > 0) {
		blast = p.Shaft.Advised.P50
	}
	charcoal := entry.Lot{Name: "charcoal", What: entry.Charcoal, Moisture: entry.Some(entry.Share(0))}
	lot := entry.Lot{Name: "ore", What: entry.Ore, Moisture: entry.Some(entry.Share(0))}
	add(entry.Light{Furnace: f, Lots: []entry.Lot{charcoal, lot}, Solver: solve.Version})
	part := func(what entry.What, kg float64) entry.Part {
		return entry.Part{What: what, Mass: entry.Some(entry.Kilogram(kg))}
	}
	at += time.Second
	for i, s := range w.Steps {
		if s.Charges == 0 {
			break
		}
		if i == 1 {
			add(entry.Blast{Volume: entry.Some(entry.LitrePerMinute(blast))})
		}
		for range s.Charges {
			parts := entry.Parts{part(entry.Charcoal, s.Charcoal)}
			switch {
			case i == 0:
				add(entry.Fill{Parts: parts})
			case s.Ore > 0:
				if ore == 0 {
					ore = at
				}
				add(entry.Charge{Parts: append(parts, part(entry.Ore, s.Ore))})
			default:
				add(entry.Charge{Parts: parts})
			}
			at += time.Duration(s.Minutes * float64(time.Minute))
		}
	}
	return es, ore, at
}
