package logcsv

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
)

// What was doubted when it was keyed, and kept all the same, says so in the note of its
// row, beside what is noted there.
func TestWhatWasDoubtedSaysSo(t *testing.T) {
	at := time.Date(2026, 5, 9, 12, 0, 0, 0, time.UTC)
	var b strings.Builder
	lost, err := Write(&b, []entry.Entry{
		{Seq: 1, Happened: at, Event: entry.Light{}},
		{Seq: 2, Happened: at, Event: entry.Blast{Volume: entry.Some(entry.LitrePerMinute(3600))}, Sure: "blast_jumps", Group: "g"},
		{Seq: 3, Happened: at, Event: entry.Note{Text: "new blower"}, Group: "g"},
		{Seq: 4, Happened: at.Add(time.Minute), Event: entry.Dip{AboveTuyere: entry.Some(entry.Centimetre(90))}, Sure: "above_rim below_floor"},
	})
	if err != nil || lost != (Lost{}) {
		t.Errorf("%v, lost %+v", err, lost)
	}
	for _, want := range []string{"3600", "sure: blast jumps", "new blower", "sure: above rim, below floor"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
}
