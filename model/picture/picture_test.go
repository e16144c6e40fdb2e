package picture

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/physics"
)

func known(v float64) figure.Figure {
	return figure.Figure{Band: physics.Exact(v), Basis: figure.Estimated}
}

// reading is invented: a furnace that tapers from 30 to 20 cm, two charges and
// the fill in it.
func reading() *figure.Reading {
	r := new(figure.Reading)
	for n := range r.Figures {
		r.Figures[n].Basis = figure.Unknown
	}
	r.Light.Furnace = entry.Furnace{
		Bore: entry.Some(entry.Centimetre(30)), BoreTop: entry.Some(entry.Centimetre(20)), Stack: entry.Some(entry.Centimetre(60)),
		TuyereBase: entry.Some(entry.Centimetre(12)), TuyereAngle: entry.Some(entry.Degree(22)), TuyereRight: true,
	}
	r.Figures[figure.StackHeight] = known(55)
	r.Layers = []figure.Layer{
		{Charge: 2, Top: 55, Bottom: 45, Charcoal: known(1.8), Ore: known(1.8)},
		{Charge: 1, Top: 45, Bottom: 35, Charcoal: known(1.8), Ore: known(0)},
		{Top: 35, Bottom: 0, Charcoal: known(6), Ore: known(0), Age: time.Hour},
	}
	r.Zones = []figure.Zone{
		{What: figure.Drying, Top: 55, Bottom: 40, Degrees: 100, Basis: figure.Guessed},
		{What: figure.Burning, Top: 40, Bottom: 0, Degrees: 1350, Basis: figure.Guessed},
	}
	return r
}

func TestFromTakesTheFurnaceAsBuilt(t *testing.T) {
	p := From(reading())
	if p.Mark != 60 || p.Floor != -12 || p.Usual || p.Angle != 22 || !p.TuyereRight || p.Burden != 55 || !p.BurdenKnown || p.BlastOn {
		t.Errorf("got %+v", p)
	}
	if p.Top <= p.Mark || p.Top <= p.Burden {
		t.Errorf("top %v leaves out the mark or the burden", p.Top)
	}
	for cm, bore := range map[float64]float64{-12: 30, 0: 30, 30: 25, 60: 20, 70: 20} {
		if got := p.BoreAt(cm); math.Abs(got-bore) > 1e-12 {
			t.Errorf("bore at %v cm: %v, want %v", cm, got, bore)
		}
	}
}

// The arch stands on the floor; where its height is not known there is none.
func TestTheArchStandsOnTheFloor(t *testing.T) {
	r := reading()
	if p := From(r); p.Arch != p.Floor {
		t.Errorf("an arch of %v cm that nobody keyed", p.Arch-p.Floor)
	}
	r.Light.Furnace.ArchHigh = entry.Some(entry.Centimetre(15))
	if p := From(r); p.Arch != 3 {
		t.Errorf("15 cm over a floor at -12 end at %v, want 3", p.Arch)
	}
}

func TestSlicesStandOnEachOtherAndHoldTheirOre(t *testing.T) {
	p := From(reading())
	for cm := 0.5; cm < 55; cm++ {
		s, ok := p.SliceAt(cm)
		if !ok || cm > s.Top || cm <= s.Bottom {
			t.Fatalf("at %v cm: %+v, %v", cm, s, ok)
		}
	}
	if _, ok := p.SliceAt(56); ok {
		t.Error("something stands above the burden")
	}
	// Equal masses: of 1.29 l of ore and 7.5 l of charcoal the ore is 0.146, of a
	// layer of 10 cm 1.46 cm (by hand).
	if s := p.Slices[0]; s.OreTop != 55 || math.Abs(s.OreBottom-53.54) > 0.01 {
		t.Errorf("ore of charge 2 from %v to %v", s.OreTop, s.OreBottom)
	}
	if s := p.Slices[1]; s.OreTop != s.OreBottom {
		t.Errorf("charge 1 holds no ore, drawn from %v to %v", s.OreTop, s.OreBottom)
	}
}

func TestHeatFollowsTheZones(t *testing.T) {
	p := From(reading())
	for cm, want := range map[float64]Heat{50: Cold, 20: White, 58: Cold} {
		if got := p.HeatAt(cm); got != want {
			t.Errorf("at %v cm: %v, want %v", cm, got, want)
		}
	}
	for c, before := 0.0, Cold; c < 1600; c += 5 {
		h := HeatOf(c)
		if h < before || h > before+1 {
			t.Fatalf("at %v C the glow jumps from %v to %v", c, before, h)
		}
		before = h
	}
}

func TestUsualSizesAreSaidToBe(t *testing.T) {
	p := From(&figure.Reading{})
	if !p.Usual || p.Bore <= 0 || p.BoreTop != p.Bore || p.Mark <= 0 || p.Floor >= 0 || p.Top <= p.Mark {
		t.Errorf("got %+v", p)
	}
}

// A bath stands below the tuyere by what the figure says, never below the floor;
// a bloom of 4.5 kg in a bore of 30 cm, a litre over a disc of 18 cm, stands 3.9
// cm high (by hand).
func TestBathAndBloomComeFromTheFigures(t *testing.T) {
	r := reading()
	if p := From(r); p.Bath != p.Floor || p.Bloom != 0 {
		t.Errorf("without figures: bath at %v, bloom %v high", p.Bath, p.Bloom)
	}
	r.Figures[figure.SlagBelowTuyere], r.Figures[figure.BloomSoFar] = known(7), known(4.5)
	r.Figures[figure.HearthTemperature], r.Solver = known(1340), figure.Resolving
	if p := From(r); !p.Stale || p.Hearth.P50 != 1340 {
		t.Errorf("hearth %v, stale %v", p.Hearth, p.Stale)
	}
	if p := From(r); p.Bath != -7 || math.Abs(p.Bloom-3.93) > 0.01 {
		t.Errorf("bath at %v, bloom %v high", p.Bath, p.Bloom)
	}
	r.Figures[figure.SlagBelowTuyere] = known(40)
	if p := From(r); p.Bath != p.Floor {
		t.Errorf("bath at %v, floor at %v", p.Bath, p.Floor)
	}
}

// A bloom that is out is not drawn in the furnace, nor blast into an open one.
func TestAnOpenFurnaceIsEmpty(t *testing.T) {
	r := reading()
	r.Figures[figure.BloomSoFar], r.Blast = known(4.5), entry.Blast{Volume: entry.Some(entry.LitrePerMinute(700))}
	if p := From(r); p.Bloom == 0 || !p.BlastOn {
		t.Fatalf("at work: %+v", p)
	}
	r.Phase = entry.Extracted
	if p := From(r); p.Bloom != 0 || p.BlastOn {
		t.Errorf("bloom %v high, blast %v", p.Bloom, p.BlastOn)
	}
}

func TestTheWallSideGlowsByItself(t *testing.T) {
	r := reading()
	r.Zones[1].WallSide = entry.Some(entry.Celsius(1000))
	p := From(r)
	if p.Heats[1].Heat != White || p.Heats[1].Wall != Orange || p.Heats[0].Wall != p.Heats[0].Heat {
		t.Errorf("got %+v", p.Heats)
	}
}

// Burned down to the tuyere, the furnace is not empty: what lies below is not known, until
// the bloom is out.
func TestABurdenThatHasSunkToTheTuyere(t *testing.T) {
	r := reading()
	if From(r).Sunk {
		t.Error("layers stand in it")
	}
	r.Layers, r.Figures[figure.StackHeight] = nil, known(0)
	if !From(r).Sunk {
		t.Error("nothing is known of the hearth")
	}
	r.Phase = entry.Extracted
	if From(r).Sunk {
		t.Error("the bloom is out")
	}
	r = reading()
	r.Layers, r.Figures[figure.StackHeight] = nil, figure.Figure{Basis: figure.Unknown}
	if From(r).Sunk {
		t.Error("nothing was ever put in")
	}
}
