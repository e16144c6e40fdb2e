package session

import (
	"testing"
	"time"

	"chargehand/model/invented"
	"chargehand/model/solve"
)

// The invented smelt has most to see after its charge of 14:36, the last but one
// with ore: 6 of 10.5 minutes on, in the middle of its last ore.
func TestMostToSee(t *testing.T) {
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	s := Open(invented.ID, es, ToLookAt)
	at := s.MostToSee()
	if got := s.Reading().Wall(at).Format("15:04:05"); got != "14:42:18" {
		t.Errorf("most to see at %s", got)
	}
	if s.At() != at {
		t.Errorf("to look at, it stands at %v, want %v", s.At(), at)
	}
	empty := Open("x", es[:3])
	if at := empty.MostToSee(); at != empty.End() {
		t.Errorf("without charges %v, end %v", at, empty.End())
	}
}

// The hearth is told minute by minute once the solver has spoken, in order.
func TestHearths(t *testing.T) {
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	s := Open(invented.ID, es, ToLookAt)
	if len(s.Hearths()) != 0 {
		t.Error("hearths before anything was solved")
	}
	j, _ := s.Job()
	hs := s.Solved(j.Run(new(solve.Solver))).Hearths()
	before := time.Duration(-1)
	for _, h := range hs {
		if h.At <= before || h.Celsius < 0 || h.Celsius > 1700 {
			t.Fatalf("%+v after %v", h, before)
		}
		before = h.At
	}
	if len(hs) < 60 {
		t.Errorf("%d minutes", len(hs))
	}
}
