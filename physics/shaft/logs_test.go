package shaft

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"chargehand/physics"
)

// A published smelt replayed: the blast by the clock, the charges laid as their crew laid them, each as soon as it fits under
// the mark. Times in minutes since the charcoal fill.
type publishedSmelt struct {
	geometry   Geometry
	params     Params
	wall       [2]float64 // K inside at tuyere and mark after the preheat
	embers     float64    // kg at 1200 K
	fill       []Portion
	charge     func(number int) []Portion // from 1
	blast      []blastChange
	until      float64
	stopCharge int // after this many charges the crew stops
}

type blastChange struct{ minute, lMin, factor float64 }

type replayedSmelt struct {
	shaft   Shaft
	charged []float64 // minutes
	at      map[float64][]Layer
}

// replay runs the smelt with a grid and layers of its own; profiles are kept for the minutes asked for.
func (p publishedSmelt) replay(tb testing.TB, profiles ...float64) replayedSmelt {
	tb.Helper()
	s, err := New(Fine, p.geometry, p.params, physics.Air{Temperature: physics.FromCelsius(20), Pressure: physics.StandardPressure})
	must(tb, err)
	fuel := standardFuel(tb)
	must(tb, s.PreheatWall(0, p.wall[0], p.wall[1]))
	must(tb, s.Embers(0, 1200, Portion{fuel, p.embers}))
	must(tb, s.Charge(0, p.fill...))
	r := replayedSmelt{at: map[float64][]Layer{}}
	next := 0
	for minute := 0.0; minute < p.until; minute += 1.0 / 12 {
		for next < len(p.blast) && p.blast[next].minute <= minute {
			params := p.params
			params.AirFactor = p.blast[next].factor
			must(tb, s.SetParams(s.Time(), params))
			must(tb, s.SetBlast(s.Time(), litresAMinute(tb, p.blast[next].lMin)))
			next++
		}
		if n := len(r.charged) + 1; n <= p.stopCharge {
			portions := p.charge(n)
			room := 0.0
			for _, portion := range portions {
				room += portion.Mass * (portion.Lot.fuelVolume + portion.Lot.stoneVolume)
			}
			if s.StackHeight()+room/p.geometry.Bore.Area(p.geometry.Stack) <= p.geometry.Stack {
				must(tb, s.Charge(s.Time(), portions...))
				r.charged = append(r.charged, minute)
			}
		}
		s.AdvanceTo((minute + 1.0/12) * 60)
		checkBalance(tb, &s)
		for _, m := range profiles {
			if math.Abs(minute-m) < 1.0/24 {
				r.at[m] = s.AppendProfile(nil)
			}
		}
	}
	r.shaft = s
	return r
}

// interval gives the mean minutes between the charges laid within a window.
func (r replayedSmelt) interval(from, to float64) float64 {
	var in []float64
	for _, m := range r.charged {
		if m >= from && m <= to {
			in = append(in, m)
		}
	}
	if len(in) < 2 {
		return math.NaN()
	}
	return (in[len(in)-1] - in[0]) / float64(len(in)-1)
}

// layerAt reads a profile at a height, straight between the middles of layers.
func layerAt(profile []Layer, height float64, read func(Layer) float64) float64 {
	for i := 0; i+1 < len(profile); i++ {
		a, b := (profile[i].Bottom+profile[i].Top)/2, (profile[i+1].Bottom+profile[i+1].Top)/2
		if height <= b || i+2 == len(profile) {
			x := math.Max(0, math.Min(1, (height-a)/(b-a)))
			return read(profile[i])*(1-x) + read(profile[i+1])*x
		}
	}
	return math.NaN()
}

func wallSide(l Layer) float64 { return physics.ToCelsius(l.WallSide) }
func middle(l Layer) float64   { return physics.ToCelsius(l.Middle) }

func checkBalance(tb testing.TB, s *Shaft) {
	for e := range ElementCount {
		if d := s.Imbalance(e); !(math.Abs(d) < 1e-9) {
			tb.Fatalf("at %.0f s element %d is off by %.2g of what went in", s.Time(), e, d)
		}
	}
	if d := s.HeatImbalance(); !(math.Abs(d) < 1e-9) {
		tb.Fatalf("at %.0f s heat is off by %.2g of the heat burned", s.Time(), d)
	}
}

// 30 Oct 2021 (warehamforge.ca data page of that day; charges_2021-10-30.csv): bore 28, stack 50, wall 6 to 3 cm, 1.9 kg a
// charge, 655 then about 798 l/min. Embers and wall are assumed, air factors fitted to the intervals.
func smelt2021(tb testing.TB, before, after float64) publishedSmelt {
	fuel, ore := standardFuel(tb), standardOre(tb)
	slag, err := SlagLot(physics.Oxides{FeO: 0.65, SiO2: 0.25, Al2O3: 0.06, CaO: 0.04}, physics.DefaultBed())
	must(tb, err)
	return publishedSmelt{
		geometry: Geometry{Bore: physics.Cylinder(0.28, 0.62), Stack: 0.50, WallBottom: 0.06, WallTop: 0.03},
		params:   DefaultParams(), wall: [2]float64{718, 403}, embers: 1.2,
		fill: []Portion{{fuel, 3.8}},
		charge: func(n int) []Portion {
			switch {
			case n >= 13:
				return []Portion{{fuel, 1.9}, {ore, 1}}
			case n >= 11:
				return []Portion{{fuel, 1.9}, {slag, 0.75}}
			}
			return []Portion{{fuel, 1.9}}
		},
		blast: []blastChange{{0, 655, before}, {79, 500, before}, {92, 798, after}},
		until: 205, stopCharge: 100,
	}
}

// 30 Nov 2016 (warehamforge.ca data page of that day; charges_2016-11-30.csv): bore 25, stack 50 cm, 1.92 kg a charge, 6.5 kg
// of limonite, then 25.2 kg of an analogue of 61 % iron with 13 % water (100:87), 400 to 465 l/min. Wall thickness and the
// limonite's assay are not on the page: 5 cm, and 40 % iron so that 16.0 kg of iron went in (assumed).
func smelt2016(tb testing.TB, factor float64) publishedSmelt {
	fuel := standardFuel(tb)
	limonite, err := OreLot(OreAssay{Mineral: physics.Goethite, Iron: 0.40}, physics.DefaultBed())
	must(tb, err)
	analogue, err := OreLot(OreAssay{Mineral: physics.Hematite, Iron: 0.61, Moisture: 0.149}, physics.DefaultBed())
	must(tb, err)
	ramp := []float64{0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1.5, 1.5, 1.5, 1.5, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2.7, 0}
	return publishedSmelt{
		geometry: Geometry{Bore: physics.Cylinder(0.25, 0.50), Stack: 0.50, WallBottom: 0.06, WallTop: 0.05},
		params:   DefaultParams(), wall: [2]float64{800, 450}, embers: 1.2,
		fill: []Portion{{fuel, 2.9}},
		charge: func(n int) []Portion {
			ore := Portion{analogue, ramp[min(n, len(ramp))-1]}
			if n <= 12 {
				ore.Lot = limonite
			}
			return []Portion{{fuel, 1.92}, ore}
		},
		blast: []blastChange{{0, 400, factor}, {79, 446, factor}, {106, 459, factor}, {150, 465, factor}},
		until: 480, stopCharge: 26,
	}
}

// The published smelts against the model, printed with -v; nothing here is gated but that it runs and balances.
//
//	go test -run TestReportPublishedSmelts -v ./physics/shaft
func TestReportPublishedSmelts(t *testing.T) {
	if testing.Short() {
		t.Skip("a report, not made with -short")
	}
	heights := []float64{0.02, 0.10, 0.20, 0.30, 0.40, 0.48}
	row := func(profile []Layer, read func(Layer) float64) string {
		var b strings.Builder
		for i, h := range heights {
			if i > 0 {
				b.WriteString("/")
			}
			fmt.Fprintf(&b, "%.0f", layerAt(profile, h, read))
		}
		return b.String()
	}
	for _, factors := range [][2]float64{{0.93, 0.66}, {0.93, 0.93}} {
		s := smelt2021(t, factors[0], factors[1])
		r := s.replay(t, 15, 22, 55, 101)
		t.Logf("30 Oct 2021, air factor %.2f / %.2f: interval %.1f min at 655 l/min (measured 13.2), %.1f at 798 (14.7)",
			factors[0], factors[1], r.interval(20, 79), r.interval(95, 205))
		measured := map[float64]string{15: "A 1170/930/780/550/320/250", 22: "B 1180/1030/1190/800/780/610",
			55: "A 1135/1040/840/800/650/460", 101: "A 1210/1190/1190/1000/905/715"}
		for _, m := range []float64{15, 22, 55, 101} {
			t.Logf("  %3.0f min, heights assumed 2/10/20/30/40/48 cm: measured %s, wall side %s, middle %s",
				m, measured[m], row(r.at[m], wallSide), row(r.at[m], middle))
		}
		g := r.shaft.TopGas()
		t.Logf("  at 205 min: top gas %.0f C, CO/CO2 %.1f; hearth %.0f C", physics.ToCelsius(g.Temperature), g.CO/g.CO2, physics.ToCelsius(r.shaft.Hearth().Temperature))
	}
	for _, factor := range []float64{1.15, 1.0} {
		s := smelt2016(t, factor)
		r := s.replay(t, 300)
		h := r.shaft.Hearth()
		inShaft := 0.0
		for _, l := range r.shaft.AppendProfile(nil) {
			inShaft += l.Ore.Metal
		}
		t.Logf("30 Nov 2016, air factor %.2f: interval %.1f min (measured 14.5), with ore %.1f (14.2); iron %.1f kg in the hearth and %.1f in the shaft of %.1f charged (bloom 7.8 kg, 6.6-7.0 kg metal assumed); carbon %.2f %%; slag %.1f kg with %.1f FeO, reducible iron index %.2f (fayalite 1)",
			factor, r.interval(30, 400), r.interval(122, 400), h.Iron, inShaft, r.shaft.Totals().OreIron, 100*h.Carbon/h.Iron, h.Slag.Sum(), h.Slag.FeO, h.Slag.ReducibleIronIndex())
		t.Logf("  300 min: middle %s, hearth %.0f C", row(r.at[300], middle), physics.ToCelsius(h.Temperature))
	}
	oct := smelt2021(t, 0.85, 0.85)
	var means [5]float64
	oct.geometry = Geometry{Bore: physics.Cylinder(0.25, 0.60), Stack: 0.50, WallBottom: 0.10, WallTop: 0.10}
	oct.blast = []blastChange{{0, 800, 0.85}}
	var minutes []float64
	for m := 120.0; m < 180; m++ {
		minutes = append(minutes, m)
	}
	r := oct.replay(t, minutes...)
	for _, m := range minutes {
		for i, h := range []float64{0.10, 0.20, 0.30, 0.40} {
			means[i] += layerAt(r.at[m], h, middle) / float64(len(minutes))
		}
		means[4] += physics.ToCelsius(r.at[m][len(r.at[m])-1].Gas) / float64(len(minutes))
	}
	t.Logf("9 Oct 2011 (darkcompanyca.blogspot.com 2011/10, 800 l/min, bore 25, wall 10 cm; nothing fitted, stack and charges assumed as 2021): +10/20/30/40 cm and top gas measured >1350/1195/1189/1014/660, mean of an hour %.0f/%.0f/%.0f/%.0f/%.0f C",
		means[0], means[1], means[2], means[3], means[4])
}

// What each named number does over its range to the smelt of 30 Nov 2016 (air factor 1.15 but where it is the number moved):
// change of the middle of the shaft at 3, 20 and 40 cm (mean of an hour), of the interval and of the iron. For setting bands.
//
//	go test -run TestReportSensitivity -v ./physics/shaft
func TestReportSensitivity(t *testing.T) {
	if !testing.Verbose() {
		t.Skip("a report, printed with -v")
	}
	type outcome struct {
		bed      [3]float64
		interval float64
		iron     float64
	}
	run := func(p Params, factor float64) (o outcome) {
		smelt := smelt2016(t, factor)
		smelt.params = p
		var minutes []float64
		for m := 270.0; m < 330; m += 2 {
			minutes = append(minutes, m)
		}
		r := smelt.replay(t, minutes...)
		for _, m := range minutes {
			for i, h := range []float64{0.03, 0.20, 0.40} {
				o.bed[i] += layerAt(r.at[m], h, middle) / float64(len(minutes))
			}
		}
		o.interval, o.iron = r.interval(122, 400), r.shaft.Hearth().Iron
		return o
	}
	base := run(DefaultParams(), 1.15)
	t.Logf("%-16s %5s %6.0f %6.0f %6.0f C %6.1f min %5.1f kg", "default", "", base.bed[0], base.bed[1], base.bed[2], base.interval, base.iron)
	for _, row := range ParamTable {
		for _, value := range []float64{row.Low, row.High} {
			factor := 1.15
			if row.Name == "air_factor" {
				factor = value
			}
			o := run(row.With(DefaultParams(), value), factor)
			t.Logf("%-16s %5.3g %+6.0f %+6.0f %+6.0f K %+6.1f min %+5.1f kg", row.Name, value,
				o.bed[0]-base.bed[0], o.bed[1]-base.bed[1], o.bed[2]-base.bed[2], o.interval-base.interval, o.iron-base.iron)
		}
	}
}
