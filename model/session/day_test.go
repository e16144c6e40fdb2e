package session

import (
	"fmt"
	"time"

	"pgregory.net/rapid"

	"chargehand/model/entry"
)

// day keys a random smelt the way a person and a machine do: in order, on a
// wall clock that may be stepped, over restarts of a machine, with late
// entries, strikes and amendments of earlier ones.
type day struct {
	t       *rapid.T
	entries []entry.Entry
	passed  time.Duration // true time since light
	drift   time.Duration // how wrong the wall clock is
	boot    int
	booted  time.Duration // true time at which this start began
}

var start = entry.Wall(time.Date(2026, 5, 9, 22, 40, 0, 0, time.FixedZone("", 7200)))

func randomDay(t *rapid.T) []entry.Entry {
	d := &day{t: t, booted: -time.Hour}
	f := entry.Furnace{Name: "invented", OreUnder: rapid.Bool().Draw(t, "ore under")}
	if rapid.Bool().Draw(t, "measured") {
		f.Bore, f.Stack, f.Rim = entry.Some(entry.Centimetre(25)), entry.Some(entry.Centimetre(50)), entry.Some(entry.Centimetre(55))
	}
	d.key(entry.Light{UID: "u", Furnace: f, Measures: []entry.Measure{
		{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8)), Guessed: true}, {Name: "scoop", What: entry.Ore}}})
	for range rapid.IntRange(0, 60).Draw(t, "acts") {
		d.passed += time.Duration(rapid.IntRange(1, 1200).Draw(t, "seconds")) * time.Second
		switch rapid.IntRange(0, 19).Draw(t, "turn") {
		case 0:
			d.drift += time.Duration(rapid.IntRange(-3600, 3600).Draw(t, "step")) * time.Second
			d.key(entry.ClockJump{ByMs: d.drift.Milliseconds()})
		case 1:
			d.boot++
			d.booted = d.passed - time.Duration(rapid.IntRange(1, 300).Draw(t, "boot"))*time.Second
		case 2, 3:
			d.key(entry.Strike{Target: d.target()})
		case 4, 5:
			a := entry.Amend{Target: d.target(), Event: d.event()}
			if rapid.Bool().Draw(t, "timed") {
				a.Happened = d.wall().Add(-time.Duration(rapid.IntRange(0, 3000).Draw(t, "ago")) * time.Second)
			}
			d.key(a)
		case 6:
			d.key(entry.ClockJump{Right: d.wall().Add(time.Duration(rapid.IntRange(-3600, 3600).Draw(t, "right")) * time.Second)})
		default:
			d.key(d.event())
		}
	}
	return d.entries
}

func (d *day) wall() time.Time { return entry.Wall(start.Add(d.passed + d.drift)) }

func (d *day) target() entry.Ref {
	return entry.Ref{Seq: uint64(rapid.IntRange(1, len(d.entries)).Draw(d.t, "target"))}
}

func (d *day) key(ev entry.Event) {
	e := entry.Entry{
		Version: entry.Version, Stream: "s", Seq: uint64(len(d.entries) + 1), Kept: d.wall(), Happened: d.wall(),
		Boot: fmt.Sprint("boot ", d.boot), Mono: d.passed - d.booted, Event: ev,
	}
	if len(d.entries) > 0 && rapid.IntRange(0, 5).Draw(d.t, "late") == 0 {
		e.Happened = e.Happened.Add(-time.Duration(rapid.IntRange(1, 2400).Draw(d.t, "by")) * time.Second)
	}
	d.entries = append(d.entries, e)
}

func (d *day) event() entry.Event {
	t := d.t
	quantity := func() float64 { return float64(rapid.IntRange(0, 40).Draw(t, "amount")) / 10 }
	switch rapid.IntRange(0, 13).Draw(t, "event") {
	case 0:
		return entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(3))}}}
	case 1:
		return entry.Dip{BelowRim: entry.Some(entry.Centimetre(quantity() * 10))}
	case 2:
		return entry.Poke{}
	case 3:
		return entry.Blast{Volume: entry.Some(entry.LitrePerMinute(quantity() * 300))}
	case 4:
		return entry.Weigh{What: entry.WeighMeasure, Name: rapid.SampledFrom([]string{"bucket", "scoop"}).Draw(t, "measure"), Mass: entry.Kilogram(quantity()),
			FromNow: rapid.Bool().Draw(t, "from now"), Why: rapid.SampledFrom([]entry.Reweighed{"", entry.Wetter, entry.Fuller}).Draw(t, "why")}
	case 5:
		return entry.OreHeld{Again: rapid.Bool().Draw(t, "again")}
	case 6:
		return entry.Level{Charge: d.target(), Remark: rapid.SampledFrom([]entry.LevelRemark{entry.NotToMark, entry.Heaped}).Draw(t, "remark")}
	case 7:
		return entry.Recipe{Next: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))}}}
	case 8:
		return entry.Charge{Parts: entry.Parts{{What: entry.Ore, Measure: "scoop", Count: entry.Some(entry.Count(quantity()))}}}
	case 9:
		return entry.BurnDown{}
	}
	return entry.Charge{Parts: entry.Parts{
		{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))},
		{What: entry.Ore, Mass: entry.Some(entry.Kilogram(quantity()))},
	}}
}
