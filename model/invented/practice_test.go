package invented_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/invented"
	"chargehand/model/session"
)

// Practice stands an hour into its main burn, now, with a charge nearly due and
// nothing wrong; the charge that comes next is a whole one.
func TestPracticeBegins(t *testing.T) {
	now := time.Date(2027, 1, 2, 3, 4, 5, 0, time.UTC)
	light, lit, acts, err := invented.Practice(now)
	if err != nil {
		t.Fatal(err)
	}
	if !light.Practice || light.Invented || light.UID != "" {
		t.Errorf("light %+v", light)
	}
	es := []entry.Entry{{Version: entry.Version, Stream: "p", Seq: 1, Happened: lit, Kept: now, Boot: "b", Mono: time.Hour, Event: light}}
	for i, a := range acts {
		es = append(es, entry.Entry{Version: entry.Version, Stream: "p", Seq: uint64(i + 2), Happened: a.Happened, Kept: now, Boot: "b", Mono: time.Hour, Event: a.Event})
	}
	s := session.Open("p", es).Tick(entry.Stamp{Wall: now, Boot: "b", Mono: time.Hour})
	r := s.Reading()
	if !s.Running() || r.Phase != entry.MainBurn || !r.Wall(r.At).Equal(now) {
		t.Errorf("running %v, %s, at %v", s.Running(), r.Phase, r.Wall(r.At))
	}
	if in := r.At - r.Since; in < time.Hour || in > 70*time.Minute {
		t.Errorf("main burn for %v", in)
	}
	if !r.HasDue || len(r.Next) != 2 || len(r.Charges) != 6 {
		t.Errorf("due %v, next %v, %d charges", r.HasDue, r.Next, len(r.Charges))
	}
	left := r.Due.Next.From + time.Duration(r.Due.Next.Minutes.P50*float64(time.Minute)) - r.At
	if left < time.Minute || left > 5*time.Minute {
		t.Errorf("next charge in %v", left)
	}
	for _, w := range s.Standing() {
		t.Errorf("%s stands", w.Rule)
	}
	if !r.Figure(figure.StackHeight).Known() || len(r.Zones) == 0 {
		t.Error("nothing to see in the shaft")
	}
}
