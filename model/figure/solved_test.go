package figure

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
	"chargehand/physics"
)

// worked is an invented smelt of three hours with ore, read and solved.
func worked(f entry.Furnace, blast float64) (*Reading, solve.Solution) {
	rows := []entry.Event{
		entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(5))}}},
		entry.Blast{Volume: entry.Some(entry.LitrePerMinute(blast))}, wait(15),
	}
	for i := range 14 {
		rows = append(rows, load(1.8, []float64{0, 1.5}[min(1, i/5)]), wait(12))
	}
	c := fold.Trace(smelt(f, rows...), fold.All, 3*time.Hour)
	return From(c.State), new(solve.Solver).Solve(&c)
}

var usualShaft = entry.Furnace{
	Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(50)), TuyereBase: entry.Some(entry.Centimetre(25)),
}

func TestASolutionFillsTheFigures(t *testing.T) {
	read, s := worked(usualShaft, 600)
	r := WithSolution(read, s)
	if r.Solver != Solved || r.Status != solve.Computes {
		t.Fatalf("solver %d, lack %d", r.Solver, r.Status)
	}
	// Wide windows from published furnaces of this kind: hearth and low shaft 1135
	// to 1450 C (30 Oct 2021; Passy-les-Tours 2014), slag 31 to 58 % iron (early
	// slags, from memory) but glassier ones exist, top gas below
	// the hearth. Less than all carbon leaves as CO2, less than all as CO.
	for name, window := range map[Name][2]float64{
		HearthTemperature: {1135, 1450}, TopGasTemperature: {150, 1100}, TopGasCO: {50, 100}, SlagIron: {20, 62},
		AirFactor: {0.4, 1.25}, SlagMass: {0.5, 15},
		// FeO-SiO2 melts between its lowest ternary point, 1083 C, and 1371 C, the
		// melting of wustite (Schairer & Yagi 1952, Bowen & Schairer 1932, both from
		// memory); fayalite has an index of 1.
		SlagMelts: {1083, 1371}, SlagStiffness: {0.02, 10}, ReducibleIron: {0.3, 4},
	} {
		f := r.Figure(name)
		if !f.Known() || f.P50 < window[0] || f.P50 > window[1] || f.P10 > f.P50 || f.P50 > f.P90 {
			t.Errorf("%s is %+v, want within %v", name.Key(), f, window)
		}
	}
	// The solver gives the course of the ore, not the mass of the bloom.
	if end := r.Figure(BloomEnd); end != read.Figure(BloomEnd) {
		t.Errorf("the solver changed the bloom to come from %+v to %+v", read.Figure(BloomEnd), end)
	}
	down, so, end := r.Figure(OreComeDown), r.Figure(BloomSoFar), r.Figure(BloomEnd)
	if down.P10 > down.P50 || down.P50 <= 0 || down.P90 > 100 || math.Abs(so.P50-end.P50*down.P50/100) > 1e-9 {
		t.Errorf("%+v %% of the ore is down, bloom so far %+v of %+v", down, so, end)
	}
	if g := r.Running; math.Abs(g.Runs+g.Creeps+g.Not-1) > 1e-9 {
		t.Errorf("how the slag runs: %+v", g)
	}
	if r.Figure(SlagBelowTuyere).Known() {
		t.Error("a level of slag that nobody weighed")
	}
	read.SlagWeighed = entry.Some(1.0)
	if below := WithSolution(read, s).Figure(SlagBelowTuyere); below.Basis != Guessed || below.P50 >= 25 || below.P10 > below.P50 {
		t.Errorf("slag below the tuyere %+v", below)
	}
	// Sauder, quoted 2006: more silica makes a slag sticky steeply.
	for i, p := range r.Poorer[1:] {
		if before := r.Poorer[i]; !(p.Ferrous > before.Ferrous && p.Stiffness < before.Stiffness) {
			t.Errorf("slag with %.0f %% FeO %.3f Pa s, with %.0f %% %.3f", before.Ferrous, before.Stiffness, p.Ferrous, p.Stiffness)
		}
	}
	if c := r.Carbon; c.Low > c.High {
		t.Errorf("carbon %+v", c)
	}
	if r.Figure(SlagMass).Basis != Guessed {
		t.Error("the slag of an ore nobody assayed is a guess")
	}
}

// The solved zones tile the burden as the reading has it; low down, where the
// fire is steady, the wall is cooler than the middle.
func TestSolvedZonesTileTheBurden(t *testing.T) {
	read, s := worked(usualShaft, 600)
	r := WithSolution(read, s)
	top := r.Figure(StackHeight).P50
	for i, z := range r.Zones {
		if math.Abs(z.Top-top) > 1e-9 || z.Bottom >= z.Top {
			t.Errorf("zone %d from %.1f to %.1f under %.1f", i, z.Top, z.Bottom, top)
		}
		top = z.Bottom
		if z.Basis != Estimated || !z.WallSide.Known {
			t.Errorf("zone %d: %+v", i, z)
		}
		if z.What >= SlagRuns && !(float64(z.WallSide.Value) < z.Degrees) {
			t.Errorf("zone %d: %.0f C at the wall, %.0f in the middle", i, z.WallSide.Value, z.Degrees)
		}
		if z.Degrees < 0 || z.Degrees > 1600 {
			t.Errorf("zone %d: %.0f C", i, z.Degrees)
		}
	}
	if math.Abs(top) > 1e-9 || len(r.Zones) < 3 {
		t.Errorf("%d zones end at %v", len(r.Zones), top)
	}
}

// Figures of other entries or of a while ago are never passed for current ones.
func TestStaleIsSaid(t *testing.T) {
	read, s := worked(usualShaft, 600)
	late, other, early := read.copied(), s, s
	late.At += fresh
	other.Known++
	early.Asked = read.At + time.Second
	for name, got := range map[string]*Reading{
		"late": WithSolution(late, s), "other entries": WithSolution(read, other), "of later": WithSolution(read, early),
	} {
		if got.Solver != Resolving {
			t.Errorf("%s: solver %d", name, got.Solver)
		}
	}
	soon := read.copied()
	soon.At += fresh - time.Second
	if got := WithSolution(soon, s); got.Solver != Solved {
		t.Errorf("a step later: solver %d", got.Solver)
	}
}

// What the solver does not know leaves the figures unknown and the zones the
// guess that they were.
func TestWithoutAirNothingIsMadeUp(t *testing.T) {
	f := usualShaft
	rows := []entry.Event{entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(5))}}}, wait(20), load(2, 0)}
	c := fold.Trace(smelt(f, rows...), fold.All, time.Hour)
	r := WithSolution(From(c.State), new(solve.Solver).Solve(&c))
	if r.Status != solve.NoAir || r.Figure(HearthTemperature).Known() || r.Figure(BloomEnd).Known() {
		t.Errorf("lack %d, hearth %+v", r.Status, r.Figure(HearthTemperature))
	}
	if len(r.Zones) == 0 || r.Zones[0].Basis != Guessed {
		t.Errorf("zones %+v", r.Zones)
	}
}

func TestUsualSizesMakeAGuess(t *testing.T) {
	r := WithSolution(worked(entry.Furnace{}, 700))
	if f := r.Figure(HearthTemperature); f.Basis != Guessed {
		t.Errorf("hearth %+v", f)
	}
	read, s := worked(entry.Furnace{}, 700)
	read.SlagWeighed = entry.Some(1.0)
	if WithSolution(read, s).Figure(SlagBelowTuyere).Known() {
		t.Error("a tuyere of unknown height has no slag below it")
	}
}

// A 20 mm tuyere takes 931 Pa of 600 l/min: its jet of 31.8 m/s has a speed head
// of 621 Pa at 1.2250 kg/m3 (ISO 2533, 15 C), and half as much again for the
// entrance; a burning shaft takes 100 to 1000 Pa per m of bed (assumed,
// computed by Ergun's equation).
func TestWhatHoldsAgainstTheBlast(t *testing.T) {
	f := usualShaft
	f.TuyereBore = entry.Some(entry.Millimetre(20))
	rows := []entry.Event{
		entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(5))}}},
		entry.Blast{Volume: entry.Some(entry.LitrePerMinute(600))}, wait(15), load(1.8, 0), wait(12), load(1.8, 0), wait(5),
		entry.Blast{Pressure: entry.Some(entry.Pascal(1200))}, wait(1), load(1.8, 0),
	}
	c := fold.Trace(smelt(f, rows...), fold.All, 35*time.Minute)
	r := WithSolution(From(c.State), new(solve.Solver).Solve(&c))
	read, usual := r.Figure(BackPressure), r.Figure(BackPressureUsual)
	if read.P50 != 1200 || read.Basis != Measured {
		t.Errorf("read %+v", read)
	}
	tuyere := 1.5 * 1.2250 * math.Pow(0.01/(math.Pi/4*0.02*0.02), 2) / 2
	height := r.Figure(StackHeight).P50 / 100
	if bed := usual.P50 - tuyere; usual.Basis != Guessed || bed < 100*height || bed > 1000*height {
		t.Errorf("usual %+v, of which the tuyere %.0f Pa and %.2f m of bed %.0f Pa", usual, tuyere, height, bed)
	}
	f.TuyereBore = entry.None[entry.Millimetre]()
	c = fold.Trace(smelt(f, rows...), fold.All, 35*time.Minute)
	if r := WithSolution(From(c.State), new(solve.Solver).Solve(&c)); r.Figure(BackPressureUsual).Known() || !r.Figure(BackPressure).Known() {
		t.Error("a tuyere of unknown bore has a usual pressure")
	}
}

// Without ore there is no bloom to speak of, not one of nought.
func TestWithoutOreThereIsNoBloom(t *testing.T) {
	rows := []entry.Event{
		entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(5))}}},
		entry.Blast{Volume: entry.Some(entry.LitrePerMinute(600))}, wait(15), load(2, 0), wait(12), load(2, 0),
	}
	c := fold.Trace(smelt(usualShaft, rows...), fold.All, 40*time.Minute)
	r := WithSolution(From(c.State), new(solve.Solver).Solve(&c))
	if !r.Figure(HearthTemperature).Known() || r.Figure(BloomEnd).Known() || r.Figure(BloomSoFar).Known() {
		t.Errorf("hearth %+v, bloom %+v", r.Figure(HearthTemperature), r.Figure(BloomEnd))
	}
}

// Equal parts of CO and CO2 are half, by hand; twice or half of the CO are two
// thirds and a third.
func TestCarbonGas(t *testing.T) {
	b := carbonGas(0.1, 0.1)
	want := physics.Band{P10: 100.0 / 3, P50: 50, P90: 200.0 / 3}
	if math.Abs(b.P10-want.P10) > 1e-9 || math.Abs(b.P50-want.P50) > 1e-9 || math.Abs(b.P90-want.P90) > 1e-9 {
		t.Errorf("%+v, want %+v", b, want)
	}
}

// A bloom that is out leaves what it should weigh, to lay beside the scales, and
// no fire.
func TestAnEndedSmeltKeepsItsBloom(t *testing.T) {
	read, s := worked(usualShaft, 600)
	before := WithSolution(read, s)
	s.Status = solve.IsOver
	r := WithSolution(read, s)
	if r.Figure(BloomSoFar) != before.Figure(BloomSoFar) || !r.Figure(BloomSoFar).Known() || r.Figure(HearthTemperature).Known() {
		t.Errorf("bloom %+v, hearth %+v", r.Figure(BloomSoFar), r.Figure(HearthTemperature))
	}
	r.At += 100 * fresh
	if got := WithSolution(r, s); got.Solver != Solved {
		t.Errorf("solver %d long after the end", got.Solver)
	}
}

// Where no ore has come nothing of it is roasted, reduced or melted: neither in
// the guess nor as solved, before the first ore nor below it.
func TestWithoutOreCharcoalGetsHot(t *testing.T) {
	rows := []entry.Event{
		entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(5))}}},
		entry.Blast{Volume: entry.Some(entry.LitrePerMinute(600))}, wait(15), load(1.8, 0), wait(12), load(1.8, 0), wait(10), load(1.8, 1), wait(3), load(1.8, 1),
	}
	ofOre := map[Process]bool{Roasting: true, RedToBlack: true, LosesOxygen: true, IronForms: true, SlagRuns: true}
	for minute, some := range map[time.Duration]bool{30: false, 41: true} {
		c := fold.Trace(smelt(usualShaft, rows...), fold.All, minute*time.Minute)
		read := From(c.State)
		for name, r := range map[string]*Reading{"guessed": read, "solved": WithSolution(read, new(solve.Solver).Solve(&c))} {
			top, met := r.Figure(StackHeight).P50, false
			for _, z := range r.Zones {
				if math.Abs(z.Top-top) > 1e-9 || z.Bottom >= z.Top {
					t.Errorf("%s at %d min: a zone from %.1f to %.1f cm under %.1f", name, minute, z.Top, z.Bottom, top)
				}
				top, met = z.Bottom, met || z.What == Heating
				if ofOre[z.What] && (!some || z.Bottom < r.firstOre()-1e-9) {
					t.Errorf("%s at %d min: process %d at %.1f to %.1f cm, ore from %.1f", name, minute, z.What, z.Bottom, z.Top, r.firstOre())
				}
			}
			if !met {
				t.Errorf("%s at %d min: nothing gets hot in %+v", name, minute, r.Zones)
			}
		}
	}
}

// Slag counts as known from its first weighing in this smelt on, tapped or out of
// the furnace; a tap that nobody weighed says nothing of how much there is.
func TestSlagIsKnownOnceItWasWeighed(t *testing.T) {
	for name, c := range map[string]struct {
		event entry.Event
		want  bool
	}{
		"a tap":               {entry.Tap{}, false},
		"a weighed tap":       {entry.Tap{Mass: entry.Some(entry.Kilogram(2))}, true},
		"slag on the scales":  {entry.Weigh{What: entry.WeighSlag, Mass: 3}, true},
		"bloom on the scales": {entry.Weigh{What: entry.WeighBloom, Mass: 3}, false},
	} {
		r := From(fold.Trace(smelt(usualShaft, c.event), fold.All, time.Hour).State)
		if r.SlagWeighed.Known != c.want {
			t.Errorf("%s: %v", name, r.SlagWeighed.Known)
		}
	}
}

// Zones have a spread about their temperature, solved or guessed.
func TestZonesHaveASpread(t *testing.T) {
	read, s := worked(usualShaft, 600)
	for name, zs := range map[string][]Zone{"guessed": read.Zones, "solved": WithSolution(read, s).Zones} {
		for _, z := range zs {
			if z.Spread.P10 > z.Degrees || z.Spread.P90 < z.Degrees || z.Spread.P90-z.Spread.P10 < 100 {
				t.Errorf("%s: %+v", name, z)
			}
		}
	}
}

// What was keyed since the solver last looked is not asked for.
func TestWhatWasKeyedIsNotAskedFor(t *testing.T) {
	rows := []entry.Event{entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(5))}}}, wait(1)}
	solved := func(at time.Duration, rows ...entry.Event) solve.Solution {
		c := fold.Trace(smelt(usualShaft, rows...), fold.All, at)
		s := new(solve.Solver).Solve(&c)
		s.Known = 2
		return s
	}
	read := func(rows ...entry.Event) *Reading {
		c := fold.Trace(smelt(usualShaft, rows...), fold.All, 2*time.Minute)
		return From(c.State)
	}
	blown := append(rows[:len(rows):len(rows)], entry.Blast{Volume: entry.Some(entry.LitrePerMinute(600))})
	for name, c := range map[string]struct {
		r    *Reading
		s    solve.Solution
		want solve.Status
	}{
		"the blast was keyed since":    {read(blown...), solved(time.Minute, rows...), solve.Begins},
		"the blast is not known":       {read(rows...), solved(time.Minute, rows...), solve.NoAir},
		"the fill was keyed since":     {read(rows...), solved(0), solve.Begins},
		"nothing was filled in so far": {read(), solved(0), solve.NoFire},
	} {
		if r := WithSolution(c.r, c.s); r.Status != c.want {
			t.Errorf("%s: status %d, want %d", name, r.Status, c.want)
		}
	}
}

// Nobody's slag holds more iron than was charged: its band ends there.
func TestSlagHoldsNoMoreIronThanWasCharged(t *testing.T) {
	read, s := worked(usualShaft, 700)
	s.Hearth.Slag = physics.Oxides{FeO: 9, SiO2: 6}
	s.Totals.OreIron = 10 * physics.Wustite.IronShare() // all of it as FeO is 10 kg
	if got := WithSolution(read, s).Figure(SlagMass).Band; math.Abs(got.P90-16) > 1e-9 || got.P50 != 15 || got.P10 >= got.P50 {
		t.Errorf("slag of 15 kg from ore that gives 16 at most: %+v", got)
	}
}
