package shaft

import (
	"testing"
	"unsafe"

	"chargehand/physics"
)

// benchSmelt is an invented day: bore 25 cm, stack 70 cm, 700 l/min, sixty charges of 1.8 kg of charcoal ten minutes apart,
// ore from the second hour. Some 60 layers stand in the shaft.
func benchSmelt(tb testing.TB, grid Grid, upTo float64) Shaft {
	tb.Helper()
	p := DefaultParams()
	p.AirFactor = 1.01
	geometry := Geometry{Bore: physics.Cylinder(0.25, 0.80), Stack: 0.70, WallBottom: 0.07, WallTop: 0.05}
	s, err := New(grid, geometry, p, physics.StandardAir())
	must(tb, err)
	fuel, ore := standardFuel(tb), standardOre(tb)
	must(tb, s.PreheatWall(0, 900, 450))
	must(tb, s.Embers(0, 1200, Portion{fuel, 1}))
	must(tb, s.SetBlast(0, litresAMinute(tb, 700)))
	must(tb, s.Charge(0, Portion{fuel, 5.6}))
	for i := range 60 {
		at := float64(i) * 600
		if at > upTo {
			return s
		}
		portions := [2]Portion{{fuel, 1.8}, {ore, 1.5}}
		if i < 6 {
			portions[1].Mass = 0
		}
		must(tb, s.Charge(at, portions[:]...))
	}
	s.AdvanceTo(upTo)
	return s
}

// A smelt of ten hours re-solved from its events.
func BenchmarkShaftTenHours(b *testing.B) {
	b.ReportAllocs()
	layers := 0
	for range b.N {
		s := benchSmelt(b, Fine, 36000)
		layers = s.count
	}
	b.ReportMetric(float64(layers), "layers")
}

// The same ten hours on the coarse grid: what one furnace of an ensemble costs.
func BenchmarkShaftTenHoursCoarse(b *testing.B) {
	for range b.N {
		benchSmelt(b, Coarse, 36000)
	}
}

// What an ensemble costs: twenty furnaces through ten hours each.
func BenchmarkShaftTwentyFurnaces(b *testing.B) {
	for range b.N {
		for range 20 {
			benchSmelt(b, Coarse, 36000)
		}
	}
}

// One step of the live screen.
func BenchmarkShaftStep(b *testing.B) {
	s := benchSmelt(b, Fine, 5*3600)
	b.ReportAllocs()
	b.ResetTimer()
	for range b.N {
		copied := s
		copied.AdvanceTo(copied.Time() + Step)
	}
}

// A copy run one hour ahead on the coarse grid, with a charge every ten minutes.
func BenchmarkShaftHourAhead(b *testing.B) {
	s := benchSmelt(b, Fine, 5*3600)
	fuel, ore := standardFuel(b), standardOre(b)
	b.ReportAllocs()
	b.ResetTimer()
	for range b.N {
		ahead := s.On(Coarse)
		for i := range 6 {
			must(b, ahead.Charge(s.Time()+float64(i)*600, Portion{fuel, 1.8}, Portion{ore, 1.5}))
		}
		ahead.AdvanceTo(s.Time() + 3600)
	}
}

// cloned keeps the copy in use, or the compiler leaves it out.
var cloned Shaft

func BenchmarkShaftClone(b *testing.B) {
	s := benchSmelt(b, Fine, 3600)
	b.SetBytes(int64(unsafe.Sizeof(s)))
	for b.Loop() {
		cloned = s.Clone()
	}
}
