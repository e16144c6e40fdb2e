package rule_test

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/rule"
)

// The blower dies and the smelt is given up: the last warning goes with it, also
// for a clock that stands at the very end, and no new one comes.
func TestNothingIsWarnedOfOnceTheSmeltIsOver(t *testing.T) {
	const extracted = 93.1
	d := steady().with(91, entry.Blast{State: entry.BlastOff}).with(extracted, entry.Extract{None: true}, entry.PhaseSet{Phase: entry.Closed})
	d.with(94, look(entry.AtPeep, entry.PeepDark), entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 3})
	for _, minute := range []float64{extracted, 93.5, 120} {
		ws := d.walk(minute)
		if len(ws) != 1 || ws[0].Rule != rule.BlastLost || ws[0].Raised() || ws[0].Cleared < clock(extracted) || ws[0].Cleared > clock(extracted)+rule.Grid {
			t.Errorf("at minute %g: %+v", minute, ws)
		}
	}
	if ws := d.walk(extracted - 0.1); len(rule.Active(ws)) != 1 {
		t.Errorf("before the end: %+v", ws)
	}
}
