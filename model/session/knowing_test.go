package session_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
)

// Log 03 took 31.7 kg of ore, 13 % of it water, and made 7.8 kg of bloom. Two hours
// after the first ore most of it is still to come: the past that is known in full foretells
// the bloom of all of it, and what was known then of the ore in so far.
func TestTheKnownPastForetellsOfAllItsOre(t *testing.T) {
	es := logcsvtest.Read(t, "03", logcsv.Options{})
	s := session.Open("03", es)
	at := 5*time.Hour + 30*time.Minute
	then := s.AsOf(fold.All, at)
	known := then.Knowing(s.AsOf(fold.All, s.End()).Reading())
	a, b := then.Reading(), known.Reading()
	if ore, _ := a.OreToCome(); ore.P50 > 10 || words.OreOf(a) != "from the ore in so far" {
		t.Errorf("as it was: of %.1f kg, %q", ore.P50, words.OreOf(a))
	}
	if ore, _ := b.OreToCome(); ore.P50 < 27 || ore.P50 > 32 || words.OreOf(b) != "from all the ore it took" {
		t.Errorf("as it is known: of %.1f kg, %q", ore.P50, words.OreOf(b))
	}
	if end := b.Figure(figure.BloomEnd); end.P10 > 7.8 || end.P90 < 7.8 {
		t.Errorf("%v", end)
	}
	if over := s.Knowing(b).Reading(); over.OreTaken.P50 > 0 && over.Phase == entry.Closed {
		t.Error("of a smelt that is over something is foretold")
	}
}
