package shaft

import (
	"math"
	"testing"

	"chargehand/physics"
)

// Limiting cases with known answers, taken on the parts of the step that the shaft itself uses.

// bareShaft is a straight shaft of pure dry carbon without walls, ground or sky: no heat leaves it but with the gas.
func bareShaft(tb testing.TB, layers int, thickness, kelvin float64) Shaft {
	tb.Helper()
	p := DefaultParams()
	p.TopEmissivity, p.BypassShare, p.AirFactor = 0, 0, 1
	s, err := New(Grid{Step, thickness}, Geometry{Bore: physics.Cylinder(0.25, 1.2), Stack: 1.2, WallBottom: 0.05, WallTop: 0.05}, p, physics.StandardAir())
	must(tb, err)
	insulated := *s.wall
	for i := range insulated.ring {
		insulated.ring[i].innerArea = 0
	}
	s.wall = &insulated
	carbon := pureCarbon(tb)
	must(tb, s.Embers(0, kelvin, Portion{carbon, 200 * s.wall.areaAt(0) * thickness * float64(layers)}))
	if s.count != layers {
		tb.Fatalf("%d layers, want %d", s.count, layers)
	}
	return s
}

func pureCarbon(tb testing.TB) Lot {
	tb.Helper()
	lot, err := CharcoalLot(physics.Charcoal{Carbon: 1}, physics.DefaultBed(), DefaultLump)
	must(tb, err)
	return lot
}

func nitrogen(moles, kelvin float64, t *propertyTable) gasStream {
	g := gasStream{temperature: kelvin}
	g.n[gasN2] = moles
	g.heat, _ = t.gasEnthalpy(&g.n, kelvin)
	return g
}

// passAll takes a gas through every layer without any blast.
func (s *Shaft) passAll(g *gasStream, dt float64) {
	var w work
	s.layOut(&w)
	for i := range s.count {
		s.passLayer(&w, i, &s.layers[i], g, &airShare{}, 0, dt)
	}
}

// Counter-current exchanger: effectiveness (1-exp(-N(1-C)))/(1-C exp(-N(1-C))) (Kays & London; from memory, checked against
// the values N 1, 2, 3 at C 0.5: 0.564733, 0.774600, 0.874425 and C 1: N/(1+N)). Inert gas through a bed that sinks a layer
// at a time; both streams warm so little that their heat capacities stay put.
func TestShaftIsACounterCurrentExchanger(t *testing.T) {
	effectiveness := func(n, c float64) float64 {
		if c == 1 {
			return n / (1 + n)
		}
		e := math.Exp(-n * (1 - c))
		return (1 - e) / (1 - c*e)
	}
	for _, v := range []struct{ n, c, want float64 }{{1, 0.375, 0.581449}, {2, 0.5, 0.774600}, {3, 0.5, 0.874425}, {2, 0.25, 0.822766}, {2, 1, 2.0 / 3}} {
		if got := effectiveness(v.n, v.c); math.Abs(got-v.want) > 1e-6 {
			t.Fatalf("formula: N %g C %g gives %.6f, published %.6f", v.n, v.c, got, v.want)
		}
	}
	for _, c := range []struct {
		layers    int
		thickness float64
		moles     float64
		period    int // steps of 5 s a layer takes to sink by its thickness
	}{{20, 0.01, 0.6, 6}, {40, 0.01, 0.9, 3}, {10, 0.02, 0.6, 6}} {
		s := bareShaft(t, c.layers, c.thickness, 300)
		cold := s.layers[0]
		var out, leaving, transfer float64
		cycles := 6 * c.layers
		for cycle := range cycles {
			for range c.period {
				g := nitrogen(c.moles, 340, s.table)
				s.passAll(&g, Step)
				if cycle >= cycles-20 {
					out += g.temperature / float64(20*c.period)
				}
			}
			if cycle >= cycles-20 {
				leaving += s.layers[0].temperature / 20
			}
			copy(s.layers[:s.count-1], s.layers[1:s.count])
			s.layers[s.count-1] = cold
		}
		g := nitrogen(c.moles, 320, s.table)
		_, gasCapacity := s.table.gasEnthalpy(&g.n, 320)
		row, _ := tableRow(320)
		_, rise := s.table.solidEnthalpy(&cold.n, row)
		solidCapacity := rise / tableStep / (float64(c.period) * Step)
		film := s.table.transportAt(320)
		re := math.Pow(c.moles*gasMolarMass[gasN2]/s.wall.areaAt(0)*cold.lump, 0.6) * film.viscosityPower
		transfer = wakaoNusselt(re) * film.conductivity / cold.lump * 6 * (1 - charcoalVoid) / cold.lump * cold.volume() * float64(c.layers)
		least, most := min(gasCapacity, solidCapacity), max(gasCapacity, solidCapacity)
		want := effectiveness(transfer/least, least/most)
		got := gasCapacity * (340 - out) / (least * 40)
		solidSide := solidCapacity * (leaving - 300) / (least * 40)
		if math.Abs(got-want) > 0.02 || math.Abs(solidSide-want) > 0.06 {
			t.Errorf("N %.2f C %.2f: effectiveness %.4f by the gas, %.4f by the solid at the last layer's mean, formula %.4f",
				transfer/least, least/most, got, solidSide, want)
		}
	}
}

// schumannJ is J(x, y) = 1 - exp(-y) int_0^x exp(-u) I0(2 sqrt(y u)) du, by its series' integral.
func schumannJ(x, y float64) float64 {
	sum := 0.0
	const parts = 4000
	for i := range parts {
		u := (float64(i) + 0.5) * x / parts
		z := 2 * math.Sqrt(y*u)
		term, bessel := 1.0, 1.0 // exp-scaled would be safer, but z stays below 30 here
		for k := 1.0; k < 120; k++ {
			term *= z * z / 4 / (k * k)
			bessel += term
		}
		sum += math.Exp(-u-y) * bessel * x / parts
	}
	return 1 - sum
}

// Schumann 1929 (J. Franklin Inst. 208:405): hot gas into a cold bed at rest; the bed's temperature at distance and time is
// 1 - J(time, distance) in transfer units.
func TestShaftWarmsLikeSchumann(t *testing.T) {
	s := bareShaft(t, 60, 0.005, 300)
	const moles, hot = 0.6, 330.0
	for range 60 {
		g := nitrogen(moles, hot, s.table)
		s.passAll(&g, 2)
	}
	l := &s.layers[0]
	g := nitrogen(moles, 315, s.table)
	_, gasCapacity := s.table.gasEnthalpy(&g.n, 315)
	row, _ := tableRow(315)
	_, rise := s.table.solidEnthalpy(&l.n, row)
	film := s.table.transportAt(315)
	re := math.Pow(moles*gasMolarMass[gasN2]/s.wall.areaAt(0)*l.lump, 0.6) * film.viscosityPower
	perLayer := wakaoNusselt(re) * film.conductivity / l.lump * 6 * (1 - charcoalVoid) / l.lump * l.volume()
	time := perLayer * 120 / (rise / tableStep)
	for _, i := range []int{2, 8, 15, 25, 40} {
		distance := perLayer / gasCapacity * (float64(i) + 0.5)
		want := 1 - schumannJ(time, distance)
		got := (s.layers[i].temperature - 300) / (hot - 300)
		if math.Abs(got-want) > 0.015 {
			t.Errorf("layer %d (%.2f, %.2f transfer units): %.4f, Schumann %.4f", i, distance, time, got, want)
		}
	}
}

// Dry air burned on endless carbon at 25 C without losses: the gas leaves at 1221.9 C (NASA CEA2, combustion table), whatever
// happens in between. Fed a little at every step, run until steady.
func TestAdiabaticShaft(t *testing.T) {
	s := bareShaft(t, 60, 0.01, 1200)
	carbon := pureCarbon(t)
	air := physics.Air{Temperature: 298.15, Pressure: physics.StandardPressure}
	flow, err := air.Flow(physics.FromLitresPerMinute(700))
	must(t, err)
	s.ambient = air
	must(t, s.SetBlast(0, Blast{flow, air.Temperature}))
	heat, moles, sunk := 0.0, 0.0, 0.0
	for second := 0.0; second < 6*3600; second += Step {
		s.AdvanceTo(second + Step)
		if s.StackHeight() < 0.60 {
			must(t, s.Charge(s.Time(), Portion{carbon, 0.1}))
		}
		// The ground is the one sink left: what it takes counts as carried by the gas.
		if second == 3*3600 {
			sunk = -s.intoGround()
		}
		if second > 3*3600 {
			h := 0.0
			for i, n := range s.topGas.n {
				h += n * s.table.gas[11][i] // 310 K: sensible heat is counted from there
			}
			heat += s.topGas.heat - h
			moles += s.topGas.moles()
		}
	}
	heat += (sunk + s.intoGround()) / Step
	g := s.topGas
	low, high := 500.0, 2500.0
	for range 60 {
		mid := (low + high) / 2
		h := 0.0
		slope, _ := s.table.gasEnthalpy(&g.n, mid)
		for i, n := range g.n {
			h += n * s.table.gas[11][i]
		}
		if (slope-h)/g.moles() < heat/moles {
			low = mid
		} else {
			high = mid
		}
	}
	if got := physics.ToCelsius(low); math.Abs(got-1221.9) > 8 {
		t.Errorf("top gas carries the heat of %.1f C, CEA 1221.9", got)
	}
	if share := g.n[gasCO2] / (g.n[gasCO] + g.n[gasCO2]); share > 0.005 {
		t.Errorf("CO2 is %.4f of the carbon gas over endless carbon", share)
	}
}

// intoGround gives the J that the ground holds and has passed on.
func (s *Shaft) intoGround() float64 {
	sum := s.ledger.GroundLoss
	for _, t := range s.hearth.ground {
		sum += wallCapacity * groundDepth * s.wall.areaAt(0) * t
	}
	return sum
}

// A gas on hot carbon for long comes to the Boudouard line: table boudouard_air_1atm.
func TestLongBedReachesBoudouard(t *testing.T) {
	for _, celsius := range []float64{750, 800, 900, 1000} {
		kelvin := physics.FromCelsius(celsius)
		s := bareShaft(t, 90, 0.01, kelvin)
		s.ambient.Pressure = physics.StandardPressure
		g := nitrogen(0.0079, kelvin, s.table) // a little, to give it time
		g.n[gasCO2] = 0.0021
		var w work
		w.nusselt = 2
		for range 40 {
			for i := range s.count {
				s.react(&w, &s.layers[i], &g, &airShare{}, 0.01, 1e-6)
			}
		}
		got := g.n[gasCO] / (g.n[gasCO] + g.n[gasCO2])
		if want := producerGasShare(kelvin); math.Abs(got-want) > 0.01 {
			t.Errorf("%g C: CO share %.4f, in balance with carbon %.4f", celsius, got, want)
		}
	}
}

// Ore in a great stream of gas ends at the oxide the boundaries allow: at 900 C they stand at 21.5 and 67.9 % CO, 17.7 and
// 62.4 % hydrogen (Frost 1991, table baur_glaessner_frost), at 500 C magnetite meets iron at 45.6 % CO.
func TestOreStopsAtItsBoundary(t *testing.T) {
	for _, c := range []struct {
		celsius  float64
		share    float64
		hydrogen bool
		want     float64 // oxygen per iron
	}{
		{900, 0.18, false, 4.0 / 3}, {900, 0.26, false, 1}, {900, 0.64, false, 1}, {900, 0.72, false, 0},
		{900, 0.15, true, 4.0 / 3}, {900, 0.21, true, 1}, {900, 0.59, true, 1}, {900, 0.66, true, 0},
		{500, 0.40, false, 4.0 / 3}, {500, 0.55, false, 0},
	} {
		kelvin := physics.FromCelsius(c.celsius)
		p := DefaultParams()
		s, err := New(Fine, Geometry{Bore: physics.Cylinder(0.25, 1), Stack: 0.5, WallBottom: 0.05, WallTop: 0.05}, p, physics.StandardAir())
		must(t, err)
		ore, err := OreLot(OreAssay{Mineral: physics.Hematite, Iron: 0.69}, physics.DefaultBed())
		must(t, err)
		must(t, s.Embers(0, kelvin, Portion{ore, 0.1}))
		l := &s.layers[0]
		var w work
		w.nusselt = 10
		for range 40000 {
			g := nitrogen(0.6, kelvin, s.table)
			if c.hydrogen {
				g.n[gasH2], g.n[gasH2O] = 0.4*c.share, 0.4*(1-c.share)
			} else {
				g.n[gasCO], g.n[gasCO2] = 0.4*c.share, 0.4*(1-c.share)
			}
			l.temperature = kelvin
			s.react(&w, l, &g, &airShare{}, 0.01, 60)
		}
		stage := oreStageOf(&l.n)
		if got := stage.OxygenPerIron(); math.Abs(got-c.want) > 0.05 {
			t.Errorf("%g C, %.0f %% (hydrogen %v): %.3f oxygen per iron, want %.3f", c.celsius, 100*c.share, c.hydrogen, got, c.want)
		}
	}
}

// Iron goes back to wustite in a gas above its boundary.
func TestIronReoxidises(t *testing.T) {
	s, err := New(Fine, Geometry{Bore: physics.Cylinder(0.25, 1), Stack: 0.5, WallBottom: 0.05, WallTop: 0.05}, DefaultParams(), physics.StandardAir())
	must(t, err)
	iron, err := FragmentLot(physics.DefaultBed())
	must(t, err)
	must(t, s.Embers(0, 1200, Portion{iron, 0.1}))
	l := &s.layers[0]
	var w work
	w.nusselt = 10
	for range 40000 {
		g := nitrogen(0.6, 1200, s.table)
		g.n[gasCO], g.n[gasCO2] = 0.2, 0.2
		l.temperature = 1200
		s.react(&w, l, &g, &airShare{}, 0.01, Step)
	}
	if got := oreStageOf(&l.n); got.Wustite < 0.95*got.Sum() {
		t.Errorf("half CO at 927 C left %+v; the boundary is at 69 %%", got)
	}
}

// Steady conduction through a hollow cylinder, q = 2 pi k L dT/ln(r2/r1), and the outer loss in series (textbook).
func TestWallConductsLikeACylinder(t *testing.T) {
	p := DefaultParams()
	s, err := New(Fine, Geometry{Bore: physics.Cylinder(0.25, 0.6), Stack: 0.5, WallBottom: 0.07, WallTop: 0.07}, p, physics.StandardAir())
	must(t, err)
	var w work
	const watts = 150.0
	w.height = 1 // nothing bare
	for i := range w.wallHeat {
		w.wallHeat[i] = watts
	}
	for range 20000 {
		s.stepWall(&w, 60)
	}
	air := s.ambient.Temperature
	outer := air + watts/(outerLoss*2*math.Pi*(0.125+0.07)*ringHeight)
	cell := 0.07 / wallNodes
	for k := range wallNodes {
		r := 0.125 + cell*(float64(k)+0.5)
		want := outer + watts*math.Log((0.125+0.07)/r)/(2*math.Pi*p.WallConductivity*ringHeight)
		if got := s.wallT[3][k]; math.Abs(got-want) > 0.5 {
			t.Errorf("node %d: %.2f K, hollow cylinder %.2f", k, got, want)
		}
	}
}

// A thick plane wall under an even flux q warms as 2q sqrt(at/pi)/k exp(-x2/4at) - qx/k erfc(x/2 sqrt(at)) (Carslaw & Jaeger
// 1959, 2.9). A wide bore stands for the plane.
func TestWallWarmsLikeAHalfSpace(t *testing.T) {
	p := DefaultParams()
	s, err := New(Fine, Geometry{Bore: physics.Cylinder(2, 0.6), Stack: 0.5, WallBottom: 0.03, WallTop: 0.03}, p, physics.StandardAir())
	must(t, err)
	var w work
	w.height = 1
	const flux, seconds = 5000.0, 90.0
	for i := range w.wallHeat {
		w.wallHeat[i] = flux * s.wall.ring[0].innerArea
	}
	for range 90 {
		s.stepWall(&w, seconds/90)
	}
	k, a := p.WallConductivity, p.WallConductivity/wallCapacity
	for node := range 3 {
		x := 0.03 / wallNodes * (float64(node) + 0.5)
		want := 2*flux*math.Sqrt(a*seconds/math.Pi)/k*math.Exp(-x*x/(4*a*seconds)) - flux*x/k*math.Erfc(x/(2*math.Sqrt(a*seconds)))
		if got := s.wallT[3][node] - s.ambient.Temperature; math.Abs(got-want) > 0.06*want+0.5 {
			t.Errorf("node %d: %.2f K warmer, half space %.2f", node, got, want)
		}
	}
}

// Wakao & Kaguei 1982 at Pr 0.7 (values computed from the published equation by another program).
func TestWakaoNusselt(t *testing.T) {
	for re, want := range map[float64]float64{20: 7.8935, 50: 12.2127, 100: 17.4796, 200: 25.4626, 500: 42.6575, 1000: 63.6253} {
		if got := wakaoNusselt(math.Pow(re, 0.6)); math.Abs(got-want) > 1e-3 {
			t.Errorf("Re %g: %.4f, want %.4f", re, got, want)
		}
	}
}

// producerGasShare gives CO/(CO+CO2) in balance with carbon of the gas that dry air makes on carbon at one atmosphere.
func producerGasShare(kelvin float64) float64 {
	const inert = (1 - physics.DryAirO2) / physics.DryAirO2
	k, share := physics.BoudouardConstant(kelvin), 0.5
	for range 60 { // contracts fast: the sum of CO and CO2 depends weakly on the share
		p := physics.StandardPressure / physics.Bar / (1 + inert*(2-share)/2)
		share = 2 * k / (k + math.Sqrt(k*(k+4*p))) // x^2 p = K (1 - x)
	}
	return share
}
