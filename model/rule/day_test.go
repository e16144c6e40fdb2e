package rule_test

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/solve"
)

// day is an invented smelt, keyed minute by minute on one machine. The fire is
// lit at minute 0.
type day struct {
	entries []entry.Entry
	last    float64 // minute of the last entry
}

var lit = entry.Wall(time.Date(2026, 5, 9, 8, 0, 0, 0, time.UTC))

func clock(minute float64) time.Duration { return time.Duration(minute * float64(time.Minute)) }

func cm(v float64) entry.Maybe[entry.Centimetre] { return entry.Some(entry.Centimetre(v)) }

func newDay(l entry.Light) *day {
	if l.Furnace.Bore == cm(0) || !l.Furnace.Bore.Known {
		l.Furnace = entry.Furnace{Name: "invented", Bore: cm(25), Stack: cm(50), Rim: cm(55)}
	}
	d := &day{}
	d.key(0, l)
	return d
}

// key takes an event down at the minute at which it happens.
func (d *day) key(minute float64, ev entry.Event) uint64 { return d.late(minute, minute, ev) }

// late takes an event down some time after it happened.
func (d *day) late(minute, happened float64, ev entry.Event) uint64 {
	seq := uint64(len(d.entries) + 1)
	d.entries = append(d.entries, entry.Entry{
		Version: entry.Version, Stream: "s", Seq: seq, Kept: lit.Add(clock(minute)), Boot: "one",
		Mono: clock(minute), Happened: lit.Add(clock(happened)), Event: ev,
	})
	d.last = max(d.last, minute)
	return seq
}

// with keys further events and gives the day back.
func (d *day) with(minute float64, evs ...entry.Event) *day {
	for _, ev := range evs {
		d.key(minute, ev)
	}
	return d
}

// walk is every warning from light to a minute, as known by all entries.
func (d *day) walk(minute float64) []rule.Warning { return d.walkKnown(fold.All, clock(minute)) }

// walkSolved is walk with what the shaft solver saw.
func (d *day) walkSolved(minute float64, seen []solve.Sample) []rule.Warning {
	return rule.WalkSolved(fold.Trace(d.entries, fold.All, clock(minute)), seen)
}

func (d *day) walkKnown(known uint64, at time.Duration) []rule.Warning {
	return rule.Walk(fold.Trace(d.entries, known, at))
}

func coal(kg float64) entry.Part {
	return entry.Part{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(kg))}
}

func ore(kg float64) entry.Part {
	return entry.Part{What: entry.Ore, Mass: entry.Some(entry.Kilogram(kg))}
}

func buckets(n float64) entry.Part {
	return entry.Part{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(n))}
}

func charge(ps ...entry.Part) entry.Charge { return entry.Charge{Parts: ps} }

func look(at entry.LookAt, sees string) entry.Look { return entry.Look{At: at, Sees: sees} }

func blast(lMin float64) entry.Blast {
	return entry.Blast{Volume: entry.Some(entry.LitrePerMinute(lMin))}
}

// bucketOf is a measure of charcoal weighed before the day.
func bucketOf(kg float64) entry.Measure {
	return entry.Measure{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(kg))}
}

// steady is a smelt filled at minute 10, its top alight, and charged every ten
// minutes from minute 20 to minute 90 with 1.9 kg of charcoal and 1 kg of ore.
func steady() *day { return steadyOf(entry.Light{}, coal(1.9), ore(1)) }

func steadyOf(l entry.Light, parts ...entry.Part) *day {
	d := newDay(l).with(10, entry.Fill{Parts: entry.Parts{coal(5)}}).with(10.5, look(entry.AtTopGas, entry.TopGasAlight))
	for at := 20.0; at <= 90; at += 10 {
		d.key(at, charge(parts...))
	}
	return d
}
