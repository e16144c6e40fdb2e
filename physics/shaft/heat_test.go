package shaft

import (
	"fmt"
	"math"
	"testing"

	"chargehand/physics"
)

// heats is how hot it got: C at the hottest middle and wall side, of the top gas on the mean, the same in the burn-down, and
// where the heat went, kW.
type heats struct {
	middle, wallSide, top, downMiddle, downWall float64
	lining, wall, radiation, ground             float64
}

// hotFurnace is a bore of 25 cm at a blast in l/min per cm2, just filled, and what charges it when its burden of 50 cm has sunk.
func hotFurnace(tb testing.TB, perArea float64, p Params) (s Shaft, charge func(s *Shaft, second float64)) {
	tb.Helper()
	s, err := New(Fine, Geometry{Bore: physics.Cylinder(0.25, 0.60), Stack: 0.50, WallBottom: 0.06, WallTop: 0.05}, p, physics.Air{Temperature: physics.FromCelsius(15), Pressure: physics.StandardPressure, RelativeHumidity: physics.UsualHumidity})
	must(tb, err)
	fuel, ore := standardFuel(tb), standardOre(tb)
	must(tb, s.PreheatWall(0, 760, 430))
	must(tb, s.Embers(0, 1200, Portion{fuel, 1.2}))
	must(tb, s.Charge(0, Portion{fuel, 3.8}))
	must(tb, s.SetBlast(0, litresAMinute(tb, perArea*490.9)))
	n := 0
	return s, func(s *Shaft, second float64) {
		if s.StackHeight() < 0.50-0.15 {
			n++
			parts := []Portion{{fuel, 1.8}}
			if n > 6 {
				parts = append(parts, Portion{ore, 1.5})
			}
			must(tb, s.Charge(second, parts...))
		}
	}
}

// hotHours runs a bore of 25 cm with the burden kept to 50 cm at a blast in l/min per cm2 for four hours, looks at the last of
// them, then burns it down from 25 to 12 cm.
func hotHours(tb testing.TB, perArea float64, p Params) (h heats) {
	tb.Helper()
	s, charge := hotFurnace(tb, perArea, p)
	tops := 0
	look := func(m, w *float64) {
		for _, l := range s.AppendProfile(nil) {
			*m, *w = max(*m, middle(l)), max(*w, wallSide(l))
		}
	}
	for second := 0.0; second < 4*3600; second += 5 {
		charge(&s, second)
		s.AdvanceTo(second + 5)
		if second > 3*3600 {
			look(&h.middle, &h.wallSide)
			h.top += physics.ToCelsius(s.TopGas().Temperature)
			tops++
		}
	}
	for s.StackHeight() > 0.12 {
		s.AdvanceTo(s.Time() + 5)
		if s.StackHeight() < 0.25 {
			look(&h.downMiddle, &h.downWall)
		}
	}
	checkBalance(tb, &s)
	l, kilowatts := s.Ledger(), 1/s.Time()/1000
	h.top /= float64(tops)
	h.lining, h.wall, h.radiation, h.ground = l.LiningLoss*kilowatts, l.WallLoss*kilowatts, l.TopLoss*kilowatts, l.GroundLoss*kilowatts
	return h
}

// The hottest place of a furnace of this kind was read at 1350 to 1450 C: under the tuyere, Passy-les-Tours 2014 (passylestours.fr), its
// blast not told; and a probe 10 cm over a tuyere failed near 1350 at 800 l/min in a bore of 25 cm, 1.6 l/min per cm2 (DARC, 9 Oct
// 2011). At that blast the model's hottest mean is there. Half the blast leaves it colder than 1300. At more than twice that of
// ordinary smelts its wall side, where probes stand, is not hotter than the hottest reading, and its mean not past 1500: the lining
// melts first. In a burn-down at high blast over 12 cm of stack it is at most 110 K hotter than in the main burn: a fire as shallow as
// a forge's, whose carbon dioxide is not reduced again on its way.
func TestHottestPlaceIsWhereProbesReadIt(t *testing.T) {
	const ofProbe = 1.6
	for _, perArea := range []float64{0.6, 1.2, ofProbe, 1.8, 2.8} {
		h := hotHours(t, perArea, DefaultParams())
		t.Logf("%.1f l/min per cm2: hottest %4.0f C in the middle, %4.0f at the wall side, top gas %4.0f; burn-down %4.0f, %4.0f; lining %.1f kW, wall %.1f, hearth %.1f, top %.1f",
			perArea, h.middle, h.wallSide, h.top, h.downMiddle, h.downWall, h.lining, h.wall, h.ground, h.radiation)
		switch {
		case perArea < 1 && h.middle > 1300, perArea == ofProbe && h.middle < HottestReadLow,
			h.wallSide > HottestReadHigh, h.middle > 1500, h.downMiddle > h.middle+110:
			t.Errorf("%.1f l/min per cm2: %+v", perArea, h)
		}
	}
}

// A lot of large lumps does not burn hotter than any furnace.
func TestLargeLumps(t *testing.T) {
	for lump, want := range map[float64]float64{0.005: 0.012, 0.017: 0.017, 0.030: 0.022, 0.1: 0.022} {
		if got := BedLump(lump); math.Abs(got-want) > 1e-3 {
			t.Errorf("%.0f mm acts as %.1f, want %.1f", 1000*lump, 1000*got, 1000*want)
		}
	}
}

// What else could take the heat at a blast over any published probe: the hottest places at 2.8 l/min per cm2 with each number at the
// ends of its range. Two terms were missing, each with a published basis, and were found by what they do at ordinary blasts too:
// water in the blast (an ordinary day's air; burning to CO with all its carbon comes to 1222 C dry and 1144 with 10 g of water a kg, NASA CEA2)
// and the wall round the hearth (a probe 10 cm under a tuyere read 328 C where the model without it had 870). With both the hottest
// places are 1473 C in the middle and 1425 at the wall side, 1569 and 1524 in the burn-down, where they were 1517 and 1460, 1604 and
// 1554; published are 1350 to 1450 at less blast, and nobody published a reading at such a one. Wall, ground, open top, slag and ore at
// the ends of their ranges take 30 K more at the most. What takes 30 to 50 is how gas meets charcoal, none of it measured: more contact, pores
// that mix over a longer way, a raceway half as high again; and less air than was metered. In the burn-down the top radiates
// 30 K more without any flame. The probes at 1.2 to 1.6 l/min per cm2 do not tell these apart, so none was moved for it: a
// temperature over all readings is a guess, and its band goes down to them (BeyondReadings).
//
//	go test -run TestReportHighBlast -v ./physics/shaft
func TestReportHighBlast(t *testing.T) {
	if !testing.Verbose() {
		t.Skip("a report, printed with -v")
	}
	const perArea = 2.8
	line := func(name string, h heats) {
		t.Logf("%-22s hottest %4.0f C in the middle, %4.0f at the wall side; burn-down %4.0f, %4.0f; lining %.1f kW, wall %.1f, top %.1f",
			name, h.middle, h.wallSide, h.downMiddle, h.downWall, h.lining, h.wall, h.radiation)
	}
	line("as it is", hotHours(t, perArea, DefaultParams()))
	for _, row := range ParamTable {
		for _, v := range []float64{row.Low, row.High} {
			line(fmt.Sprintf("%s %g", row.Name, v), hotHours(t, perArea, row.With(DefaultParams(), v)))
		}
	}
}

// Where the heat goes: the account of the fourth hour of a main burn at several blasts, kW, and what the fire is like. Made is the burning of carbon to the
// CO and CO2 that leave. Ore is what its oxygen costs, water what that of blast and charcoal costs that leaves as hydrogen; stored is
// the rest: wall, ground and burden that still warm, slag and iron that come down hot.
//
//	go test -run TestReportHeatBalance -v ./physics/shaft
func TestReportHeatBalance(t *testing.T) {
	if !testing.Verbose() {
		t.Skip("a report, printed with -v")
	}
	// J/mol, published: CODATA 1989; hematite, JANAF 1998 (from memory).
	const co, co2, steam, oreOxygen = 110.53e3, 393.51e3, 241.83e3, 824.2e3 / 3
	for _, perArea := range []float64{0.6, 1.2, 1.6, 2.0, 2.8} {
		s, charge := hotFurnace(t, perArea, DefaultParams())
		var made, gas, water, unburned, seconds float64
		var before Ledger
		oxygen, hottest, volatiles, charges := 0.0, 0.0, 0.0, int32(0)
		fuel := standardFuel(t)
		unspent := func() (mol float64) {
			for i := range s.count {
				mol += s.layers[i].n[solidVolatiles]
			}
			return mol
		}
		for second := 0.0; second < 4*3600; second += 5 {
			charge(&s, second)
			s.AdvanceTo(second + 5)
			if second == 3*3600 {
				before, oxygen, volatiles, charges = s.Ledger(), s.Totals().OxygenFromOre, unspent(), s.charges
			}
			if second < 3*3600 {
				continue
			}
			seconds += 5
			g := s.TopGas()
			warm, _ := s.table.gasEnthalpy(&s.topGas.n, g.Temperature)
			cold, _ := s.table.gasEnthalpy(&s.topGas.n, s.ambient.Temperature)
			gas += (warm - cold) * 5
			made += g.Moles * (g.CO*co + g.CO2*co2) * 5
			water += g.Moles * g.H2 * steam * 5
			unburned += g.Moles * g.O2 * 5
			for _, l := range s.AppendProfile(nil) {
				hottest = max(hottest, middle(l))
			}
		}
		l := s.Ledger()
		ore := (s.Totals().OxygenFromOre - oxygen) / physics.MolarMassO * oreOxygen
		// What the volatiles gave off is neither burned carbon nor water taken apart.
		volatiles += float64(s.charges-charges)*1.8*fuel.perKg[solidVolatiles] - unspent()
		made, water = made-volatiles*volatileCO*co, water-volatiles*volatileH2*steam
		kw := func(j float64) float64 { return j / seconds / 1000 }
		wall, ground, top, lining := l.WallLoss-before.WallLoss, l.GroundLoss-before.GroundLoss, l.TopLoss-before.TopLoss, l.LiningLoss-before.LiningLoss
		t.Logf("%.1f l/min per cm2: made %4.1f kW; top gas %4.1f, wall %3.1f, hearth %3.1f, top %3.1f, lining %3.1f, ore %3.1f, water %3.1f, stored %4.1f; air not burned %.1f %%; hottest %.0f C",
			perArea, kw(made), kw(gas), kw(wall), kw(ground), kw(top), kw(lining), kw(ore), kw(water), kw(made-gas-wall-ground-top-lining-ore-water), 100*unburned/seconds/(s.blast.Flow.O2*s.params.AirFactor), hottest)
	}
}
