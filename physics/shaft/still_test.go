package shaft

import (
	"math"
	"testing"
)

// How much iron of the ore is still in the burden, and what the range of each named number does to that: the mean of the fourth hour
// of an even main burn (1.2 l/min per cm2, 1.5 kg of ore a charge), as the change of its logarithm; all of them together as independent
// of each other. The band of the ore that has come down rests on it (figure.OreComeDown). A fire too cold for slag to run is
// the low end of drip: its ore then sinks with the charcoal alone.
//
//	go test -run TestReportOreStillInTheBurden -v ./physics/shaft
func TestReportOreStillInTheBurden(t *testing.T) {
	if !testing.Verbose() {
		t.Skip("a report, printed with -v")
	}
	still := func(p Params) (kg float64) {
		s, charge := hotFurnace(t, 1.2, p)
		n := 0.0
		for second := 0.0; second < 4*3600; second += 5 {
			charge(&s, second)
			s.AdvanceTo(second + 5)
			if second < 3*3600 || math.Mod(second, 60) != 0 {
				continue
			}
			for _, l := range s.AppendProfile(nil) {
				kg += l.Ore.Sum()
			}
			n++
		}
		return kg / n
	}
	usual := still(DefaultParams())
	t.Logf("%.2f kg of iron on the mean", usual)
	down, up := 0.0, 0.0
	for _, row := range ParamTable {
		if row.Name == "air_factor" {
			continue // told by the intervals
		}
		a, b := math.Log(still(row.With(DefaultParams(), row.Low))/usual), math.Log(still(row.With(DefaultParams(), row.High))/usual)
		t.Logf("%-16s %+.2f at %g, %+.2f at %g", row.Name, a, row.Low, b, row.High)
		less, more := min(a, b, 0), max(a, b, 0)
		down, up = down+less*less, up+more*more
	}
	t.Logf("together %+.2f and %+.2f", -math.Sqrt(down), math.Sqrt(up))
}
