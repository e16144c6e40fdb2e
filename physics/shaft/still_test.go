package shaft

import (
	"math"
	"testing"
)

// How much iron of the ore is still in the burden, and what the range of each named number does to that: the mean of the fourth hour
// of an even main burn (1.2 l/min per cm2, 1.5 kg of ore a charge), as the change of its logarithm; all of them together as independent
// of each other. Beside it the same as the height above the tuyere at which the ore comes down: under as much burden, as rich as
// that of the last charges, there is none. It stays where it is while the burden sinks, so the band of the ore that has come down
// rests on that height (figure.OreComeDown). A fire too cold for slag to run is the low end of drip: its ore then sinks with the
// charcoal alone, as if it came down below the tuyere.
//
//	go test -run TestReportOreStillInTheBurden -v ./physics/shaft
func TestReportOreStillInTheBurden(t *testing.T) {
	if !testing.Verbose() {
		t.Skip("a report, printed with -v")
	}
	still := func(p Params) (kg, front, scatter float64) {
		s, charge := hotFurnace(t, 1.2, p)
		n, square := 0.0, 0.0
		for second := 0.0; second < 4*3600; second += 5 {
			charge(&s, second)
			s.AdvanceTo(second + 5)
			if second < 3*3600 || math.Mod(second, 60) != 0 {
				continue
			}
			all, rich, thick := 0.0, 0.0, 0.0
			layers := s.AppendProfile(nil)
			top := layers[len(layers)-1].Top
			for _, l := range layers {
				all += l.Ore.Sum()
				if l.Top > top-0.15 { // a charge
					rich, thick = rich+l.Ore.Sum(), thick+l.Top-l.Bottom
				}
			}
			height := top - all*thick/rich
			kg, front, square, n = kg+all, front+height, square+height*height, n+1
		}
		return kg / n, front / n, math.Sqrt(max(0, square/n-front*front/n/n))
	}
	usual, front, scatter := still(DefaultParams())
	t.Logf("%.2f kg of iron on the mean; ore comes down at %.1f cm, %.1f about that as the burden sinks", usual, 100*front, 100*scatter)
	var less, more, lower, higher float64
	for _, row := range ParamTable {
		if row.Name == "air_factor" {
			continue // told by the intervals
		}
		lowKg, low, _ := still(row.With(DefaultParams(), row.Low))
		highKg, high, _ := still(row.With(DefaultParams(), row.High))
		a, b := math.Log(lowKg/usual), math.Log(highKg/usual)
		t.Logf("%-16s %+.2f, %+5.1f cm at %g; %+.2f, %+5.1f cm at %g", row.Name, a, 100*(low-front), row.Low, b, 100*(high-front), row.High)
		sum := func(of *float64, v float64) { *of = math.Hypot(*of, v) }
		sum(&less, min(a, b, 0))
		sum(&more, max(a, b, 0))
		sum(&lower, min(low, high, front)-front)
		sum(&higher, max(low, high, front)-front)
	}
	t.Logf("together %+.2f and %+.2f, %+.1f and %+.1f cm", -less, more, -100*lower, 100*higher)
}
