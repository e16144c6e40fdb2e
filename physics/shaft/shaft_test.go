package shaft

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"chargehand/physics"
)

// dayShaft is an invented furnace ready to smelt: bore 25, stack 60 cm, embers and a fill.
func dayShaft(tb testing.TB, params Params, grid Grid) Shaft {
	tb.Helper()
	s, err := New(grid, Geometry{Bore: physics.Cylinder(0.25, 0.7), Stack: 0.6, WallBottom: 0.06, WallTop: 0.05}, params, physics.StandardAir())
	must(tb, err)
	fuel := standardFuel(tb)
	must(tb, s.PreheatWall(0, 850, 450))
	must(tb, s.Embers(0, 1200, Portion{fuel, 1}))
	must(tb, s.Charge(0, Portion{fuel, 4}))
	must(tb, s.SetBlast(0, litresAMinute(tb, 700)))
	return s
}

// runDay charges 1.8 kg every twelve and a half minutes, with ore from the seventh on, and calls look every 5 s.
func runDay(tb testing.TB, s *Shaft, hours, ore float64, look func(seconds float64)) {
	tb.Helper()
	fuel, lot := standardFuel(tb), standardOre(tb)
	const every = 750.0
	for second := 0.0; second < hours*3600; second += Step {
		if n := second / every; n == math.Floor(n) {
			mass := ore
			if n < 6 {
				mass = 0
			}
			must(tb, s.Charge(second, Portion{fuel, 1.8}, Portion{lot, mass}))
		}
		s.AdvanceTo(second + Step)
		if look != nil {
			look(second + Step)
		}
	}
}

// Atoms to 1e-9 and heat to 1e-9 (asked: 0.1 %) at every step; temperatures, flows and heights that can be.
func TestShaftInvariantsAtEveryStep(t *testing.T) {
	s := dayShaft(t, DefaultParams(), Fine)
	var profile []Layer
	worst := 0.0
	runDay(t, &s, 6, 1.5, func(second float64) {
		checkBalance(t, &s)
		worst = math.Max(worst, math.Abs(s.HeatImbalance()))
		profile = s.AppendProfile(profile[:0])
		checkProfile(t, &s, profile)
	})
	t.Logf("heat off by %.1e at most; hearth %+v", worst, s.Hearth())
}

func checkProfile(tb testing.TB, s *Shaft, profile []Layer) {
	tb.Helper()
	const coldest, hottest = 250.0, 2773.0
	z := 0.0
	for i, l := range profile {
		raw := &s.layers[i]
		ok := l.Bottom == z && l.Top >= l.Bottom && l.Middle > coldest && l.Middle < hottest && l.Gas > coldest && l.Gas < hottest
		for _, v := range raw.n {
			ok = ok && v >= -1e-12
		}
		for _, v := range raw.gas {
			ok = ok && v >= -1e-12
		}
		if !ok {
			tb.Fatalf("at %.0f s layer %d cannot be: %+v", s.Time(), i, l)
		}
		z = l.Top
	}
	for _, row := range s.wallT {
		for _, k := range row {
			if !(k > coldest && k < hottest) {
				tb.Fatalf("at %.0f s the wall is at %g K", s.Time(), k)
			}
		}
	}
	if h := s.Hearth(); !(h.Temperature > coldest && h.Temperature < hottest) {
		tb.Fatalf("at %.0f s the hearth is at %g K", s.Time(), h.Temperature)
	}
}

// Whatever a crew does in whatever order: never a NaN, never a broken balance, and through it all empty and cold again.
func TestShaftTakesAnything(t *testing.T) {
	for seed := range uint64(4) {
		random := rand.New(rand.NewPCG(seed, 4))
		s, err := New(Fine, Geometry{Bore: physics.Bore{Bottom: 0.30, Top: 0.24, Height: 0.7}, Stack: 0.6, WallBottom: 0.06, WallTop: 0.03}, DefaultParams(), physics.StandardAir())
		must(t, err)
		fuel, ore := standardFuel(t), standardOre(t)
		wet, err := CharcoalLot(physics.Charcoal{Moisture: 0.5, Carbon: 0.7, Ash: 0.05}, physics.DefaultBed(), 2*DefaultLump)
		must(t, err)
		bog, err := OreLot(OreAssay{Mineral: physics.Goethite, Iron: 0.45, Calcite: 0.05, Moisture: 0.3}, physics.DefaultBed())
		must(t, err)
		slag, err := SlagLot(physics.Oxides{FeO: 0.6, SiO2: 0.3, Al2O3: 0.1}, physics.DefaultBed())
		must(t, err)
		lots := []Lot{fuel, wet, ore, bog, slag, fuel}
		at := 0.0
		must(t, s.Embers(0, 1200, Portion{fuel, 2}))
		var profile []Layer
		for range 150 {
			at += math.Round(random.Float64()*500000) / 1000
			switch k := random.IntN(14); k {
			case 0:
				must(t, s.SetBlast(at, Blast{Temperature: 290}))
			case 1, 2, 3:
				b := litresAMinute(t, 1500*random.Float64())
				b.Flow.H2O = 0.02 * random.Float64()
				must(t, s.SetBlast(at, b))
			case 4:
				must(t, s.Tap(at, random.Float64()))
			case 5:
				must(t, s.Poke(at, math.Min(0.05, s.StackHeight()/4)))
			case 6:
				must(t, s.SetGeometry(at, Geometry{Bore: physics.Bore{Bottom: 0.30 + 0.05*random.Float64(), Top: 0.24, Height: 0.7}, Stack: 0.6, WallBottom: 0.04, WallTop: 0.03}))
			default:
				if s.StackHeight() > 0.8 { // more than heaped: nobody does that twice
					continue
				}
				must(t, s.Charge(at, Portion{lots[random.IntN(len(lots))], 3 * random.Float64()}, Portion{lots[random.IntN(len(lots))], 2 * random.Float64()}))
			}
			checkBalance(t, &s)
			profile = s.AppendProfile(profile[:0])
			checkProfile(t, &s, profile)
		}
		must(t, s.SetBlast(at, litresAMinute(t, 900)))
		s.AdvanceTo(at + 12*3600) // burns out
		checkBalance(t, &s)
		must(t, s.TakeBloom(at+12*3600))
		must(t, s.SetBlast(at+12*3600, Blast{Temperature: 288}))
		s.AdvanceTo(at + 60*3600)
		checkBalance(t, &s)
		profile = s.AppendProfile(profile[:0])
		checkProfile(t, &s, profile)
		if h := s.Hearth(); h.Temperature > 400 {
			t.Errorf("seed %d: the hearth is still at %.0f K two days after", seed, h.Temperature)
		}
		for i, l := range profile { // a fire that went out leaves charcoal, cold
			if l.Middle > 400 {
				t.Errorf("seed %d: layer %d is still at %.0f K", seed, i, l.Middle)
			}
		}
	}
}

// Looking at a shaft, however often, changes nothing; nor does copying it; a cut falls where an event is, not a look.
func TestShaftDependsOnEventsAlone(t *testing.T) {
	run := func(looks bool) Shaft {
		s := dayShaft(t, DefaultParams(), Fine)
		fuel := standardFuel(t)
		for i := range 12 {
			at := 601.237 * float64(i)
			if looks {
				for x := s.Time(); x < at; x += 1.7 {
					s.AdvanceTo(x)
				}
				ahead := s
				ahead.AdvanceTo(at + 300)
			}
			must(t, s.Charge(at, Portion{fuel, 1.8}))
		}
		s.AdvanceTo(9000)
		return s
	}
	a, b := run(false), run(true)
	b.wall = a.wall // two furnaces built alike
	if a != b {
		t.Error("the shaft that was looked at differs")
	}
}

func TestShaftCloneIsIndependent(t *testing.T) {
	s := dayShaft(t, DefaultParams(), Fine)
	s.AdvanceTo(600)
	kept := s.Clone()
	ahead := s.Clone()
	ahead.AdvanceTo(3600)
	if s != kept {
		t.Error("running a copy changed the original")
	}
	if ahead.Time() != 3600 || s.Time() != 600 {
		t.Errorf("times %g and %g", ahead.Time(), s.Time())
	}
}

func TestShaftGrid(t *testing.T) {
	s := dayShaft(t, DefaultParams(), Fine)
	s.AdvanceTo(12.4)
	if s.Time() != 10 {
		t.Errorf("looked at 12.4 s it stands at %g, not on the last grid point", s.Time())
	}
	must(t, s.SetBlast(12.4, Blast{Temperature: 288}))
	if s.Time() != 12.4 {
		t.Errorf("an event at 12.4 s leaves it at %g", s.Time())
	}
	s.AdvanceTo(14.9)
	if s.Time() != 12.4 {
		t.Errorf("before the next grid point it moved to %g", s.Time())
	}
	s.AdvanceTo(15)
	if s.Time() != 15 {
		t.Errorf("grid point after a cut: %g", s.Time())
	}
	if err := s.Charge(14, Portion{standardFuel(t), 1}); !errors.Is(err, ErrPast) {
		t.Errorf("an event in the past gave %v", err)
	}
	if err := s.Charge(math.NaN(), Portion{standardFuel(t), 1}); err == nil {
		t.Error("an event at no time was taken")
	}
}

// Nothing is allocated while stepping.
func TestShaftStepsWithoutAllocating(t *testing.T) {
	s := dayShaft(t, DefaultParams(), Fine)
	fuel := standardFuel(t)
	portions := []Portion{{fuel, 0.3}}
	if n := testing.AllocsPerRun(20, func() {
		must(t, s.Charge(s.Time(), portions...))
		s.AdvanceTo(s.Time() + 60)
	}); n != 0 {
		t.Errorf("%g allocations in a minute's steps with a charge", n)
	}
}

func TestShaftRefusesNonsense(t *testing.T) {
	good := Geometry{Bore: physics.Cylinder(0.25, 0.7), Stack: 0.6, WallBottom: 0.06, WallTop: 0.05}
	bad := good
	bad.Stack = 5
	if _, err := New(Fine, bad, DefaultParams(), physics.StandardAir()); err == nil {
		t.Error("a stack of 5 m was taken")
	}
	p := DefaultParams()
	p.RacewayHeight = math.NaN()
	if _, err := New(Fine, good, p, physics.StandardAir()); err == nil {
		t.Error("an undefined raceway was taken")
	}
	if _, err := OreLot(OreAssay{Mineral: physics.Hematite, Iron: 0.8}, physics.DefaultBed()); err == nil {
		t.Error("hematite of 80 % iron was taken")
	}
	if _, err := OreLot(OreAssay{Mineral: physics.Hematite, Iron: 0.6, Others: physics.Oxides{SiO2: 0.4}}, physics.DefaultBed()); err == nil {
		t.Error("an assay of 126 % was taken")
	}
	if _, err := OreLot(OreAssay{Mineral: physics.Siderite, Iron: 0.4}, physics.DefaultBed()); err == nil {
		t.Error("raw siderite was taken")
	}
	s := dayShaft(t, DefaultParams(), Fine)
	before := s
	if err := s.SetBlast(10, Blast{Flow: physics.AirFlow{O2: math.Inf(1)}, Temperature: 290}); err == nil || s != before {
		t.Error("an endless blast was taken, or moved the shaft")
	}
	if err := s.Charge(10, Portion{standardFuel(t), -1}); err == nil || s != before {
		t.Error("a negative charge was taken, or moved the shaft")
	}
}

// The table of named numbers is complete and its defaults lie in their ranges.
func TestShaftParamTable(t *testing.T) {
	seen := map[string]bool{}
	fields := map[*float64]bool{}
	var p Params
	for _, row := range ParamTable {
		if row.Default < row.Low || row.Default > row.High || row.Meaning == "" || row.Source == "" || row.Unit == "" || seen[row.Name] || fields[row.field(&p)] {
			t.Errorf("row %q: %+v", row.Name, row)
		}
		seen[row.Name], fields[row.field(&p)] = true, true
	}
	must(t, DefaultParams().Validate())
	if got := ParamTable[0].With(DefaultParams(), 0.7); ParamTable[0].Value(got) != 0.7 || got.AirFactor != 0.7 {
		t.Error("With and Value disagree")
	}
}
