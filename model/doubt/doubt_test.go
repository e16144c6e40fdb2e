package doubt_test

import (
	"testing"

	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/words"
)

func cm(v entry.Centimetre) entry.Maybe[entry.Centimetre] { return entry.Some(v) }

// smelt is a furnace of 25 cm, its rim 60 cm over the tuyere, the floor 15 cm under it,
// with 10 kg of ore in and 700 l/min blowing.
func smelt() *figure.Reading {
	r := &figure.Reading{
		Light:    entry.Light{Furnace: entry.Furnace{Bore: cm(25), Stack: cm(50), Rim: cm(60), TuyereBase: cm(15)}},
		Phase:    entry.MainBurn,
		Blast:    entry.Blast{Volume: entry.Some(entry.LitrePerMinute(700))},
		Measures: []entry.Measure{{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.9))}},
	}
	for n := range r.Figures {
		r.Figures[n].Basis = figure.Unknown
	}
	ore := &r.Figures[figure.OreCharged]
	ore.P10, ore.P50, ore.P90, ore.Basis = 9.5, 10, 10.5, figure.Measured
	return r
}

func blast(v entry.LitrePerMinute) entry.Blast { return entry.Blast{Volume: entry.Some(v)} }

// Each doubt is raised by what cannot be, and not by the most that can; words stand for
// each, and what is unknown is not doubted.
func TestEachDoubt(t *testing.T) {
	first := smelt()
	first.Blast = entry.Blast{}
	kg := func(c, o entry.Kilogram) entry.Charge {
		return entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(c)}, {What: entry.Ore, Mass: entry.Some(o)}}}
	}
	weigh := func(w entry.Weighed, kg entry.Kilogram) entry.Weigh { return entry.Weigh{What: w, Mass: kg} }
	bucket := func(kg entry.Kilogram) entry.Weigh {
		return entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: kg}
	}
	furnace := func(bore, stack entry.Centimetre) entry.Light {
		return entry.Light{Furnace: entry.Furnace{Bore: cm(bore), Stack: cm(stack)}}
	}
	tuyere := func(mm entry.Millimetre) entry.Light {
		return entry.Light{Furnace: entry.Furnace{TuyereBore: entry.Some(mm)}}
	}
	tested := map[doubt.Name]bool{}
	for _, c := range []struct {
		name     doubt.Name
		of       *figure.Reading
		bad, can entry.Event
	}{
		{doubt.BelowFloor, smelt(), entry.Dip{BelowRim: cm(76)}, entry.Dip{BelowRim: cm(60)}},
		{doubt.BelowTuyere, smelt(), entry.Dip{BelowRim: cm(61)}, entry.Dip{BelowRim: cm(60)}},
		{doubt.AboveRim, smelt(), entry.Dip{AboveTuyere: cm(61)}, entry.Dip{AboveTuyere: cm(60)}},
		{doubt.BlastJumps, smelt(), blast(3500), blast(3400)},
		{doubt.BlastJumps, smelt(), blast(70), blast(71)},
		{doubt.BlastForBore, first, blast(10), blast(120)},    // 0.02 l/min per cm2
		{doubt.BlastForBore, first, blast(6000), blast(2000)}, // 12 l/min per cm2
		{doubt.MoreThanOre, smelt(), weigh(entry.WeighBloom, 13), weigh(entry.WeighBloom, 8)},
		{doubt.MoreThanOre, smelt(), weigh(entry.WeighFragments, 13), weigh(entry.WeighFragments, 8)},
		{doubt.SlagOverOre, smelt(), weigh(entry.WeighSlag, 22), weigh(entry.WeighSlag, 15)},
		{doubt.SlagOverOre, smelt(), entry.Tap{Mass: entry.Some(entry.Kilogram(22))}, entry.Tap{}},
		{doubt.WeighsNothing, smelt(), weigh(entry.WeighBloom, 0), entry.Weigh{What: entry.WeighBloom, Closed: true}},
		{doubt.MeasureJumps, smelt(), bucket(19), bucket(2.5)},
		{doubt.MeasureJumps, smelt(), bucket(0.19), bucket(0.9)},
		{doubt.TooHeavyToLift, smelt(), bucket(100), bucket(2)},
		{doubt.TooHeavyToLift, &figure.Reading{}, entry.Light{Measures: []entry.Measure{{Name: "bucket", Mass: entry.Some(entry.Kilogram(100))}}}, furnace(25, 50)},
		{doubt.MoreThanShaft, smelt(), kg(57.6, 1), kg(5.76, 1)},
		{doubt.MoreThanShaft, smelt(), entry.Fill{Parts: kg(57.6, 0).Parts[:1]}, entry.Fill{Parts: kg(5.76, 0).Parts[:1]}},
		{doubt.OreOverCharcoal, smelt(), kg(1.9, 15), kg(1.9, 4)},
		{doubt.OreOverCharcoal, smelt(), entry.Recipe{Next: kg(1.9, 15).Parts}, entry.Recipe{Next: kg(1.9, 4).Parts}},
		{doubt.HotterThanFire, smelt(), entry.Temperature{Degrees: 1701}, entry.Temperature{Degrees: 1600}},
		{doubt.ColderThanGlow, smelt(), entry.Temperature{Degrees: 118, Where: entry.WherePeep}, entry.Temperature{Degrees: 118, Where: entry.WhereTop}},
		{doubt.ColderThanGlow, smelt(), entry.Temperature{Degrees: 1, Where: entry.WherePeep}, entry.Temperature{Degrees: 800, Where: entry.WherePeep}},
		{doubt.AirOutside, smelt(), entry.Weather{Air: entry.Some(entry.Celsius(80))}, entry.Weather{Air: entry.Some(entry.Celsius(31)), Rain: "none"}},
		{doubt.AirOutside, smelt(), entry.Temperature{Degrees: -60, Where: "outside"}, entry.Temperature{Degrees: 900, Where: entry.WherePeep}},
		{doubt.TuyereTooFar, smelt(), entry.Tuyere{Proud: cm(25)}, entry.Tuyere{Proud: cm(5)}},
		{doubt.TuyereTooWide, smelt(), entry.Tuyere{Bore: entry.Some(entry.Millimetre(250))}, entry.Tuyere{Bore: entry.Some(entry.Millimetre(25))}},
		{doubt.FurnaceSize, &figure.Reading{}, furnace(2.5, 50), furnace(20, 35)},
		{doubt.FurnaceSize, &figure.Reading{}, furnace(25, 500), furnace(40, 110)},
		{doubt.FurnaceSize, &figure.Reading{}, tuyere(2.5), tuyere(20)}, // typed in cm
	} {
		tested[c.name] = true
		found := false
		for _, d := range doubt.Of(c.bad, c.of) {
			found = found || d.Name == c.name
			if said := (words.Units{}).Doubt(d); len(said) < 10 || len(said) > 55 {
				t.Errorf("%s: %q", d.Name, said)
			}
		}
		if !found {
			t.Errorf("%s: %+v is not doubted: %v", c.name, c.bad, doubt.Of(c.bad, c.of))
		}
		if a := doubt.Of(entry.Amend{Target: entry.Ref{Seq: 1}, Event: c.bad}, c.of); len(a) == 0 {
			t.Errorf("%s: changed to %+v it is not doubted", c.name, c.bad)
		}
		if ds := doubt.Of(c.can, c.of); len(ds) != 0 {
			t.Errorf("%s: %+v is doubted: %v", c.name, c.can, ds)
		}
		if words.KeptThough(string(c.name)) == "sure: "+string(c.name) {
			t.Errorf("no words for %s", c.name)
		}
	}
	for _, row := range doubt.Table {
		if !tested[row.Name] {
			t.Errorf("%s is not tested", row.Name)
		}
	}
	blank := new(figure.Reading)
	for n := range blank.Figures {
		blank.Figures[n].Basis = figure.Unknown
	}
	for _, ev := range []entry.Event{entry.Dip{BelowRim: cm(300)}, blast(9000), weigh(entry.WeighBloom, 60), bucket(40), kg(57.6, 1), nil} {
		if ds := doubt.Of(ev, blank); len(ds) > 0 {
			t.Errorf("%+v is doubted though nothing is known: %v", ev, ds)
		}
	}
	if ds := doubt.Of(entry.Dip{BelowRim: cm(61)}, &figure.Reading{Light: smelt().Light, Phase: entry.BurnsDown}); len(ds) > 0 {
		t.Errorf("in the burn-down the burden sinks below the tuyere: %v", ds)
	}
}

func TestNamesInTheFrame(t *testing.T) {
	names := []doubt.Name{doubt.MeasureJumps, doubt.TooHeavyToLift}
	if got := doubt.Split(doubt.Join(names)); len(got) != 2 || got[0] != names[0] || got[1] != names[1] {
		t.Errorf("%v", got)
	}
	if said := words.KeptThough(doubt.Join(names)); said != "sure: a measure far from what it weighed, a measure too heavy to lift" {
		t.Errorf("%q", said)
	}
	if said := words.KeptThough("of_a_newer_version"); said != "sure: of a newer version" {
		t.Errorf("%q", said)
	}
	if words.KeptThough("") != "" {
		t.Error("a mark without a doubt")
	}
}
