package logcsv

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
)

// A rehearsal has a clock of its own that begins in the year 2000, and no day. Its log
// counts its days from its first row, is read back, and is a rehearsal still.
func TestARehearsalComesBackAsOne(t *testing.T) {
	at := time.Date(2000, 1, 1, 22, 0, 0, 0, time.UTC)
	var b strings.Builder
	if _, err := Write(&b, []entry.Entry{
		{Seq: 1, Happened: at, Event: entry.Light{Undated: true, Rehearsal: true}},
		{Seq: 2, Happened: at.Add(time.Hour), Event: entry.Blast{Volume: entry.Some(entry.LitrePerMinute(500))}},
		{Seq: 3, Happened: at.Add(28 * time.Hour), Event: entry.Tap{}},
	}); err != nil {
		t.Fatal(err)
	}
	es, err := Read(strings.NewReader(b.String()), Options{Name: "rehearsal.csv"})
	if err != nil {
		t.Fatalf("%v\n%s", err, b.String())
	}
	light, last := es[0].Event.(entry.Light), es[len(es)-1]
	if took := last.Happened.Sub(es[0].Happened); !light.Rehearsal || !light.Undated || took != 28*time.Hour {
		t.Errorf("%+v, the last row after %v\n%s", light, took, b.String())
	}
}
