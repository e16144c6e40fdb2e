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
	lining, wall, radiation                     float64
}

// hotHours runs a bore of 25 cm with the burden kept to 50 cm at a blast in l/min per cm2 for four hours, looks at the last of
// them, then burns it down from 25 to 12 cm.
func hotHours(tb testing.TB, perArea float64, p Params) (h heats) {
	tb.Helper()
	s, err := New(Fine, Geometry{Bore: physics.Cylinder(0.25, 0.60), Stack: 0.50, WallBottom: 0.06, WallTop: 0.05}, p, physics.Air{Temperature: physics.FromCelsius(15), Pressure: physics.StandardPressure, RelativeHumidity: 0.6})
	must(tb, err)
	fuel, ore := standardFuel(tb), standardOre(tb)
	must(tb, s.PreheatWall(0, 760, 430))
	must(tb, s.Embers(0, 1200, Portion{fuel, 1.2}))
	must(tb, s.Charge(0, Portion{fuel, 3.8}))
	must(tb, s.SetBlast(0, litresAMinute(tb, perArea*490.9)))
	n, tops := 0, 0
	look := func(m, w *float64) {
		for _, l := range s.AppendProfile(nil) {
			*m, *w = max(*m, middle(l)), max(*w, wallSide(l))
		}
	}
	for second := 0.0; second < 4*3600; second += 5 {
		if s.StackHeight() < 0.50-0.15 {
			n++
			parts := []Portion{{fuel, 1.8}}
			if n > 6 {
				parts = append(parts, Portion{ore, 1.5})
			}
			must(tb, s.Charge(second, parts...))
		}
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
	h.lining, h.wall, h.radiation = l.LiningLoss*kilowatts, l.WallLoss*kilowatts, l.TopLoss*kilowatts
	return h
}

// The hottest place of a furnace of this kind was read at 1350 to 1450 C (under the tuyere, Passy-les-Tours 2014,
// passylestours.fr; probes fail near 1350 at 800 l/min in a bore of 25 cm, DARC 9 Oct 2011, darkcompanyca.blogspot.com
// 2011/10). At blasts of 1.2 to 1.8 l/min per cm2 the model's hottest place, between its wall side and its middle, is there.
// Half the blast leaves it colder than 1300, more than twice does not take it past 1550: the lining melts first. In a burn-down
// at high blast over 12 cm of stack it is at most 100 K hotter than in the main burn.
func TestHottestPlaceIsWhereProbesReadIt(t *testing.T) {
	for _, perArea := range []float64{0.6, 1.2, 1.5, 1.8, 2.8} {
		h := hotHours(t, perArea, DefaultParams())
		t.Logf("%.1f l/min per cm2: hottest %4.0f C in the middle, %4.0f at the wall side, top gas %4.0f; burn-down %4.0f, %4.0f; lining %.1f kW, wall %.1f, top %.1f",
			perArea, h.middle, h.wallSide, h.top, h.downMiddle, h.downWall, h.lining, h.wall, h.radiation)
		switch {
		case perArea < 1 && h.middle > 1300, perArea > 2 && h.middle > 1550,
			perArea > 1 && perArea < 2 && (h.middle < 1350 || h.wallSide > 1450 || h.middle > 1500), h.downMiddle > h.middle+100:
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

// What could take the heat at a blast over any published probe: the hottest places at 2.8 l/min per cm2 with each number at the
// ends of its range. As it is, 1460 C at the wall side and 1517 in the middle, 1554 and 1604 in the burn-down, where the published
// hottest places are 1350 to 1450 at less blast; nobody published a reading at such a one. Wall, ground, open top, slag and ore
// take 30 K at the most. What takes 30 to 55 is how gas meets charcoal, none of it measured: more contact, pores that mix
// over a longer way, a raceway half as high again; and less air than was metered. In the burn-down the top radiates
// 30 K more without any flame. The probes at 1.2 to 1.6 l/min per cm2 do not tell these apart, so none was moved for it: such a
// temperature is a guess, and its band goes down to the readings (BeyondReadings).
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
