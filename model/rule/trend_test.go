package rule_test

import (
	"testing"
	"time"

	"chargehand/model/rule"
	"chargehand/model/solve"
	"chargehand/model/words"
)

// A hearth falls for ten minutes from minute 60 on and warms again: while the warning
// stands its figures run on, and its title says which way it goes.
func TestATitleFollowsTheTrend(t *testing.T) {
	gs := seen(100, 60, 100, func(g *solve.Sample) {
		i := int(g.At/time.Minute) - 60
		g.Hearth = about(1340 - 20*float64(max(0, min(i, 14, 40-i))))
	})
	for _, c := range []struct {
		minute          float64
		title, evidence string
	}{
		{69, "hearth cools?", "about 1150 °C (1000 to 1250) in the hearth, 180 K below its last hour"},
		{84.5, "hearth cooler?", "about 1050 °C (900 to 1150) in the hearth, 280 K below its last hour"},
		{90, "hearth warms again", "about 1150 °C (1000 to 1250) in the hearth, 200 K below its last hour"},
	} {
		ws := rule.Active(steady().with(91, blast(700)).with(93, charge(coal(1.9), ore(1))).walkSolved(c.minute, gs))
		var title, evidence string
		for _, w := range ws {
			if w.Rule == rule.HearthCools {
				title, evidence, _ = words.Units{}.Warning(w)
			}
		}
		if title != c.title || evidence != c.evidence {
			t.Errorf("at minute %v: %q, %q", c.minute, title, evidence)
		}
	}
}
