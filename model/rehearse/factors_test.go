package rehearse

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/physics/shaft"
)

// No setting of the adviser's own factors makes it the furnace that answers: over three furnaces none of them holds level,
// hearth and ore come down within the bands nearly always. Each factor that is calibrated is tried at both ends of its range,
// beside the usual ones.
func TestNoFactorsReproduceTheTruth(t *testing.T) {
	const nearly = 0.95
	type setting struct {
		name string
		v    float64
	}
	settings := []setting{{}}
	for _, row := range shaft.ParamTable {
		if !row.Fixed {
			settings = append(settings, setting{row.Name, row.Low}, setting{row.Name, row.High})
		}
	}
	in, of := make([]int, len(settings)), make([]int, len(settings))
	for n := int64(1); n <= 3; n++ {
		c := newCrew(n, 1, nil)
		if err := c.work(); err != nil {
			t.Fatal(err)
		}
		for i, s := range settings {
			d := Day{Number: n, Entries: append([]entry.Entry(nil), c.entries...), Inside: map[figure.Name]Of{}}
			if s.name != "" {
				light := d.Entries[0].Event.(entry.Light)
				light.Calibration = map[string]float64{s.name: s.v}
				d.Entries[0].Event = light
			}
			d.judge(c)
			for _, f := range []figure.Name{figure.StackHeight, figure.HearthTemperature, figure.OreComeDown} {
				in[i], of[i] = in[i]+d.Inside[f].In, of[i]+d.Inside[f].Of
			}
		}
	}
	for i, s := range settings {
		t.Logf("%s %g: %d of %d", s.name, s.v, in[i], of[i])
		if of[i] == 0 || float64(in[i]) > nearly*float64(of[i]) {
			t.Errorf("with %s at %g the adviser holds %d of %d: it is the furnace that answers", s.name, s.v, in[i], of[i])
		}
	}
}
