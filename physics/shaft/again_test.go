package shaft

import (
	"math"
	"testing"

	"chargehand/physics"
)

// rested is the furnace of 30 Nov 2016 so many hours after a smelt in it; negative for new.
func rested(t *testing.T, wall, hours float64, left ...Portion) Shaft {
	t.Helper()
	g := Geometry{Bore: physics.Cylinder(0.25, 0.50), Stack: 0.50, WallBottom: wall, WallTop: wall}
	s, err := New(Fine, g, DefaultParams(), physics.StandardAir())
	must(t, err)
	if hours >= 0 {
		must(t, s.LitAgain(hours*3600, left...))
	}
	return s
}

// What is taken for a worked wall is what the published smelts end with here.
func TestAWorkedWall(t *testing.T) {
	for name, p := range map[string]publishedSmelt{"30 Nov 2016": smelt2016(t, 1), "30 Oct 2021": smelt2021(t, 0.85, 0.85)} {
		s := p.replay(t).shaft
		low, high := s.wallT[0][0], s.wallT[int(p.geometry.Stack/ringHeight)-1][0]
		t.Logf("%s: %.0f K at the tuyere, %.0f at the mark; ground %.0f", name, low, high, s.hearth.ground)
		if math.Abs(low-workedBottom) > 60 || math.Abs(high-workedTop) > 60 || math.Abs(s.hearth.ground[groundNodes-1]-workedFloor) > 60 {
			t.Errorf("%s ends with %.0f and %.0f K, worked are %.0f and %.0f", name, low, high, workedBottom, workedTop)
		}
		// Steady: the heat that enters a ring leaves it.
		outer, inner := 0.0, 0.0
		for i := range 15 {
			r := &s.wall.ring[i]
			outer += r.link[wallNodes-1] * (s.wallT[i][wallNodes-1] - s.ambient.Temperature)
			inner += r.link[0] * (s.wallT[i][0] - s.wallT[i][1])
		}
		if d := inner / outer; d < 0.75 || d > 1.25 {
			t.Errorf("%s: %.0f W in and %.0f W out of the lower wall", name, inner, outer)
		}
	}
}

// The longer the rest the less is left, and after a week nothing.
func TestAWallColdAfterAWeekIsAsNew(t *testing.T) {
	last := math.Inf(1)
	for _, hours := range []float64{0, 1.0 / 3, 1, 3, 8, 20, 72} {
		s := rested(t, 0.06, hours)
		if q := s.WallHeat(); q >= last || q < 0 {
			t.Errorf("after %.1f h the wall holds %.3g J, before that %.3g", hours, q, last)
		} else {
			t.Logf("after %4.1f h: %5.0f K at the tuyere, %4.0f at the mark, %6.2f MJ in the wall, floor %4.0f K", hours, s.WallAt(0), s.WallAt(0.49), q/1e6, s.hearth.ground[groundNodes-1])
			last = q
		}
	}
	week, fresh := rested(t, 0.06, 7*24), rested(t, 0.06, -1)
	for i := range week.wallT {
		for k := range week.wallT[i] {
			if d := week.wallT[i][k] - fresh.wallT[i][k]; math.Abs(d) > 0.5 && i < week.wall.rings {
				t.Fatalf("ring %d node %d is %.2f K warmer than new", i, k, d)
			}
		}
	}
	for k, g := range week.hearth.ground {
		if d := g - fresh.hearth.ground[k]; math.Abs(d) > 0.5 {
			t.Errorf("ground %d is %.2f K warmer than new", k, d)
		}
	}
}

// The time in which a wall loses its heat comes of its thickness and conductivity: a thick one keeps it longer. Once the
// profile is the slowest one the loss is exponential, with the root of a slab with losses on both sides (Carslaw & Jaeger
// 1959, 3.11: tan(a) = a(Bi1+Bi2)/(a2-Bi1 Bi2), rate = a2 k/(c L2)).
func TestAWallCoolsAsASlabDoes(t *testing.T) {
	p := DefaultParams()
	rate := func(wall float64) float64 { // 1/s, of a wide bore, where the wall is a slab
		bore := 1.8
		s, err := New(Fine, Geometry{Bore: physics.Cylinder(bore, 0.6), Stack: 0.5, WallBottom: wall, WallTop: wall}, p, physics.StandardAir())
		must(t, err)
		must(t, s.LitAgain(6*3600))
		early := s.wallT[5][2] - s.ambient.Temperature
		s, err = New(Fine, s.geometry, p, physics.StandardAir())
		must(t, err)
		must(t, s.LitAgain(7*3600))
		return math.Log(early/(s.wallT[5][2]-s.ambient.Temperature)) / 3600
	}
	slab := func(wall float64) float64 {
		inner, outer := bareExchange*wall/p.WallConductivity, outerLoss*wall/p.WallConductivity
		a, step := 1e-6, 1e-4
		for f := func(a float64) float64 { return (a*a-inner*outer)*math.Sin(a) - a*(inner+outer)*math.Cos(a) }; f(a) < 0; a += step {
		}
		return a * a * p.WallConductivity / (wallCapacity * wall * wall)
	}
	for _, wall := range []float64{0.06, 0.12, 0.2} {
		got, want := rate(wall), slab(wall)
		t.Logf("%.0f cm: loses its heat in %.1f h, a slab in %.1f", 100*wall, 1/got/3600, 1/want/3600)
		if math.Abs(got/want-1) > 0.12 {
			t.Errorf("%.0f cm: %.3g /s, a slab %.3g", 100*wall, got, want)
		}
	}
}

// A furnace lit again 20 minutes later takes less heat into its wall and is hotter for the same charcoal and air.
func TestAWarmFurnaceTakesLessHeat(t *testing.T) {
	run := func(hours float64) (s Shaft, intoWall float64) {
		s = rested(t, 0.06, hours)
		fuel := standardFuel(t)
		must(t, s.PreheatWall(0, 760, 430))
		must(t, s.Embers(0, 1200, Portion{fuel, 1.2}))
		must(t, s.Charge(0, Portion{fuel, 7}))
		must(t, s.SetBlast(0, litresAMinute(t, 450)))
		before := s.WallHeat() + s.ledger.WallLoss
		s.AdvanceTo(20 * 60)
		checkBalance(t, &s)
		return s, s.WallHeat() + s.ledger.WallLoss - before
	}
	cold, intoCold := run(-1)
	warm, intoWarm := run(1.0 / 3)
	week, intoWeek := run(7 * 24)
	coldTop, warmTop := cold.TopGas().Temperature, warm.TopGas().Temperature
	t.Logf("into the wall %.2f MJ new, %.2f MJ after 20 min, %.2f after a week; top gas %.0f, %.0f, %.0f K", intoCold/1e6, intoWarm/1e6, intoWeek/1e6, coldTop, warmTop, week.TopGas().Temperature)
	if intoWarm > 0.95*intoCold || warmTop <= coldTop || warm.WallAt(0.3) <= cold.WallAt(0.3) {
		t.Errorf("warm takes %.3g J and cold %.3g; top gas %.0f and %.0f K", intoWarm, intoCold, warmTop, coldTop)
	}
	if math.Abs(intoWeek/intoCold-1) > 0.005 {
		t.Errorf("after a week %.4g J, new %.4g", intoWeek, intoCold)
	}
}

// What was left in lies on the hearth, and everything balances.
func TestWhatWasLeftInLiesOnTheHearth(t *testing.T) {
	slag, err := SlagLot(physics.Oxides{FeO: 0.6, SiO2: 0.3, Al2O3: 0.1}, physics.DefaultBed())
	must(t, err)
	s := rested(t, 0.06, 1, Portion{slag, 4})
	if m := s.Hearth().Slag.Sum(); math.Abs(m-4) > 1e-6 {
		t.Errorf("%.3f kg of slag on the hearth", m)
	}
	checkBalance(t, &s)
	must(t, s.SetBlast(0, litresAMinute(t, 300)))
	s.AdvanceTo(600)
	checkBalance(t, &s)
	if err := s.LitAgain(60); err == nil {
		t.Error("a furnace at work is lit again")
	}
	if err := func() error { n := rested(t, 0.06, -1); return n.LitAgain(-1) }(); err == nil {
		t.Error("a rest below nothing")
	}
}
