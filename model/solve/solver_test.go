package solve_test

import (
	"reflect"
	"testing"
	"time"

	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
	"chargehand/physics/shaft"
)

var light = time.Date(2026, 5, 9, 8, 0, 0, 0, time.UTC)

// day is an invented smelt on its way.
type day struct {
	entries []entry.Entry
	now     time.Duration
}

func newDay(f entry.Furnace) *day {
	d := &day{}
	return d.key(entry.Light{Furnace: f, Measures: []entry.Measure{{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}}})
}

func (d *day) wait(by time.Duration) *day { d.now += by; return d }

func (d *day) key(ev entry.Event) *day { return d.late(0, ev) }

// late is an entry of something that happened a while ago.
func (d *day) late(by time.Duration, ev entry.Event) *day {
	d.entries = append(d.entries, entry.Entry{
		Version: entry.Version, Stream: "s", Seq: uint64(len(d.entries) + 1), Boot: "b", Mono: d.now,
		Happened: light.Add(d.now - by), Kept: light.Add(d.now), Event: ev,
	})
	return d
}

func (d *day) solve(v *solve.Solver, at time.Duration) solve.Solution {
	c := fold.Trace(d.entries, fold.All, at)
	return v.Solve(&c)
}

func (d *day) fresh(at time.Duration) solve.Solution { return d.solve(new(solve.Solver), at) }

func buckets(n float64) entry.Part {
	return entry.Part{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(n))}
}

func ore(kg float64) entry.Part {
	return entry.Part{What: entry.Ore, Mass: entry.Some(entry.Kilogram(kg))}
}

func charge(parts ...entry.Part) entry.Charge { return entry.Charge{Parts: parts} }

func blast(lMin float64) entry.Blast {
	return entry.Blast{Volume: entry.Some(entry.LitrePerMinute(lMin))}
}

// steady is an invented smelt: a fill, then a bucket every so often, ore from the
// sixth.
func steady(charges int, every time.Duration) *day {
	d := newDay(norse).key(entry.Fill{Parts: entry.Parts{buckets(3)}}).wait(time.Minute).key(blast(600)).wait(15 * time.Minute)
	for i := range charges {
		kg := 1.5
		if i < 6 {
			kg = 0
		}
		d.key(charge(buckets(1), ore(kg))).wait(every)
	}
	return d
}

// any draws something that may happen, often at an odd moment.
func (d *day) any(t *rapid.T) entry.Event {
	seq := func() entry.Ref {
		return entry.Ref{Seq: uint64(rapid.IntRange(min(4, len(d.entries)), len(d.entries)).Draw(t, "target"))}
	}
	kg := func() float64 { return float64(rapid.IntRange(0, 30).Draw(t, "kg")) / 10 }
	switch rapid.IntRange(0, 15).Draw(t, "event") {
	case 0:
		return entry.Strike{Target: seq()}
	case 1:
		return entry.Amend{Target: seq(), Event: charge(buckets(2), ore(kg()))}
	case 2:
		return entry.Amend{Target: seq(), Event: nil, Happened: light.Add(d.now - time.Duration(rapid.IntRange(0, 3000).Draw(t, "ago"))*time.Second)}
	case 3:
		return blast(float64(rapid.IntRange(3, 9).Draw(t, "blast")) * 100)
	case 4:
		return entry.Blast{Gate: rapid.SampledFrom([]string{"8", "9"}).Draw(t, "gate")}
	case 5:
		return entry.Poke{}
	case 6:
		return entry.Tap{}
	case 7:
		return entry.Arch{Open: rapid.Bool().Draw(t, "open")}
	case 8:
		return entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: entry.Kilogram(1 + kg()), FromNow: rapid.Bool().Draw(t, "from now")}
	case 9:
		return entry.Temperature{Degrees: entry.Celsius(10 * kg()), Where: fold.WhereOutside}
	case 10:
		return charge(ore(kg()))
	case 11:
		return charge(entry.Part{What: entry.Charcoal}, entry.Part{What: entry.Ore})
	}
	return charge(buckets(1), ore(kg()))
}

// The same entries give the same shaft, bit for bit: followed live through late
// entries, strikes and amendments, solved afresh, or looked back at.
func TestASolutionDependsOnTheEntriesAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := newDay(norse).key(blast(600)).key(entry.Fill{Parts: entry.Parts{buckets(3)}})
		grid := rapid.SampledFrom([]shaft.Grid{shaft.Fine, shaft.Coarse}).Draw(t, "grid")
		live := solve.Solver{Grid: grid}
		fresh := func(at time.Duration) solve.Solution { return d.solve(&solve.Solver{Grid: grid}, at) }
		acts := rapid.IntRange(1, 16).Draw(t, "acts")
		for range acts {
			d.wait(time.Duration(rapid.IntRange(1, 360_000).Draw(t, "milliseconds")) * time.Millisecond)
			d.late(time.Duration(max(0, rapid.IntRange(-2000, 1200).Draw(t, "late")))*time.Second, d.any(t))
			d.solve(&live, d.now)
		}
		same := func(how string, got, want solve.Solution) {
			t.Helper()
			if !reflect.DeepEqual(got, want) {
				t.Fatalf("%s: %+v\nwant %+v", how, got, want)
			}
		}
		want := fresh(d.now)
		same("live", d.solve(&live, d.now), want)
		back := time.Duration(rapid.Int64Range(0, int64(d.now)).Draw(t, "back"))
		same("looked back", d.solve(&live, back), fresh(back))
		same("and forward again", d.solve(&live, d.now), want)
	})
}

// On any day the figures are numbers, and the account of each element and of
// heat closes where there is one.
func TestASolutionIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := newDay(entry.Furnace{})
		for range rapid.IntRange(1, 16).Draw(t, "acts") {
			d.wait(time.Duration(rapid.IntRange(1, 360).Draw(t, "seconds")) * time.Second).key(d.any(t))
		}
		s := d.fresh(d.now)
		if s.At > d.now {
			t.Fatalf("the state is of %v, asked for %v", s.At, d.now)
		}
		top := 0.0
		for _, l := range s.Profile {
			if l.Bottom != top || !(l.Middle > 200 && l.Middle < 2800) || !(l.WallSide > 200 && l.WallSide < 2800) {
				t.Fatalf("%+v over %v", l, top)
			}
			top = l.Top
		}
		if iron := s.Hearth.Iron; !(iron >= 0) || !(s.Hearth.Slag.Sum() >= 0) {
			t.Fatalf("hearth %+v", s.Hearth)
		}
	})
}

// A strike one hour back leaves no trace of what it struck.
func TestAStrikeLeavesNoTrace(t *testing.T) {
	d := steady(20, 12*time.Minute)
	var v solve.Solver
	d.solve(&v, d.now)
	extra := *d
	extra.entries = extra.entries[:len(d.entries):len(d.entries)]
	extra.late(time.Hour, charge(buckets(3), ore(9)))
	with := extra.solve(&v, d.now)
	if reflect.DeepEqual(with, d.fresh(d.now)) {
		t.Fatal("three buckets more change nothing")
	}
	extra.key(entry.Strike{Target: entry.Ref{Seq: extra.entries[len(extra.entries)-1].Seq}})
	got, want := extra.solve(&v, d.now), d.fresh(d.now)
	got.Known = want.Known
	if !reflect.DeepEqual(got, want) {
		t.Errorf("after the strike %+v\nwant %+v", got, want)
	}
}

// The numbers that light took down hold for the smelt; one that cannot be does
// not.
func TestCalibrationHolds(t *testing.T) {
	at := func(by map[string]float64) solve.Solution {
		d := newDay(norse)
		l := d.entries[0].Event.(entry.Light)
		l.Calibration = by
		d.entries[0].Event = l
		d.key(blast(600)).key(entry.Fill{Parts: entry.Parts{buckets(3)}}).wait(20 * time.Minute)
		return d.fresh(d.now)
	}
	usual := at(nil)
	if hot := at(map[string]float64{"air_factor": 1.1}); !(hot.Hearth.Temperature > usual.Hearth.Temperature) || hot.AirFactor.P50 <= usual.AirFactor.P50 {
		t.Errorf("hearth %.0f K with more air, %.0f with the usual", hot.Hearth.Temperature, usual.Hearth.Temperature)
	}
	if odd := at(map[string]float64{"air_factor": -3, "no such number": 1}); !reflect.DeepEqual(odd, usual) {
		t.Error("a number that cannot be changes the furnace")
	}
}
