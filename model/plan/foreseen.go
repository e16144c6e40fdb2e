package plan

import (
	"cmp"
	"maps"
	"math"
	"reflect"
	"slices"
	"time"

	"chargehand/model/ahead"
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
	Over   Over // how it is in other plausible furnaces, so far as they were asked
}

// Over is what became of a way to charge in several plausible furnaces.
type Over struct {
	Hearths []float64    // K, the middle of the time in each
	Afraid  map[Fear]int // in how many of them the solver fears something
}

// BandFurnaces is in how many plausible furnaces a way is solved for its band.
const BandFurnaces = 8

// Whole tells whether all of them were asked.
func (o Over) Whole() bool { return len(o.Hearths) >= BandFurnaces }

// Hearth is the hearth in them, K: the second of the least and of the most for its ends
// where all eight were asked, which are an eighth and seven eighths of them.
func (o Over) Hearth() physics.Band {
	n := len(o.Hearths)
	if n == 0 {
		return physics.Band{}
	}
	all := slices.Sorted(slices.Values(o.Hearths))
	in := min(1, (n-1)/2)
	return physics.Band{P10: all[in], P50: (all[(n-1)/2] + all[n/2]) / 2, P90: all[n-1-in]}
}

// Band is the hearth with all that is not known of it, K: how far off the solver was at
// published probes, and how the plausible furnaces differ, so far as they were asked.
func (f Foreseen) Band() physics.Band {
	o := f.Over.Hearth()
	if o.IsZero() {
		return f.Hearth
	}
	return physics.Band{
		P10: f.Hearth.P50 - math.Hypot(f.Hearth.P50-f.Hearth.P10, math.Max(f.Hearth.P50-o.P10, 0)), P50: f.Hearth.P50,
		P90: f.Hearth.P50 + math.Hypot(f.Hearth.P90-f.Hearth.P50, math.Max(o.P90-f.Hearth.P50, 0)),
	}
}

// What the solver may fear of a way to charge.
const (
	FearHearth Fear = "cold hearth" // below what the slag needs
	FearStiff  Fear = "stiff slag"
	FearCast   Fear = "cast iron"
)

// stiffFrom is from when on a slag is feared: it is more likely stiff than not.
const stiffFrom = 0.5

// Foresee solves a way to charge, on the coarse grid. It takes about a tenth of a
// second. The blast is the one keyed, or what is advised for the bore.
func (p Plan) Foresee(w Charging) Foreseen {
	entries, ore, end := p.entries(w)
	return foreseen(entries, ore, end)
}

// SolvedAs tells whether the solver would say the same of both plans: their ways, furnaces,
// blasts and ores are the same.
func (p Plan) SolvedAs(o Plan) bool {
	return reflect.DeepEqual(p.Ways, o.Ways) && reflect.DeepEqual(p.Furnace, o.Furnace) && p.Blast == o.Blast && p.Ore.Iron == o.Ore.Iron
}

// Widen solves a way once more, in the next of the plausible furnaces, and counts it in.
// It takes as long as Foresee; where that gave nothing, or all were asked, it changes nothing.
func (p Plan) Widen(w Charging, f Foreseen) Foreseen {
	n := len(f.Over.Hearths)
	if !f.Known || n >= BandFurnaces {
		return f
	}
	entries, ore, end := p.entries(w)
	one := foreseen(ahead.As(n, entries), ore, end)
	hearth := one.Hearth.P50
	if !one.Known { // too cold to run is no answer: the middle stands for it
		hearth = f.Hearth.P50
	}
	f.Over.Hearths = append(slices.Clone(f.Over.Hearths), hearth)
	f.Over.Afraid = maps.Clone(f.Over.Afraid)
	if f.Over.Afraid == nil {
		f.Over.Afraid = map[Fear]int{}
	}
	for _, fear := range one.Fears {
		f.Over.Afraid[fear]++
	}
	return f
}

// foreseen is what the solver makes of entries, from the first ore to the end.
func foreseen(entries []entry.Entry, ore, end time.Duration) Foreseen {
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
	slices.SortFunc(hearths, func(a, b physics.Band) int { return cmp.Compare(a.P50, b.P50) })
	f.Known, f.Hearth, f.Stiff = true, hearths[len(hearths)/2], last.Stands
	if physics.ToCelsius(f.Hearth.P50) < physics.SlagFreezes {
		f.Fears = append(f.Fears, FearHearth)
	}
	if f.Stiff > stiffFrom {
		f.Fears = append(f.Fears, FearStiff)
	}
	if carbon > physics.CastFrom {
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
	if p.Ore.Iron > 0 {
		lot.Iron = entry.Some(entry.Share(p.Ore.Iron))
	}
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
			case s.Slag > 0:
				add(entry.Charge{Parts: append(parts, part(entry.SeedSlag, s.Slag))})
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
