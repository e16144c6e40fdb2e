package learn_test

import (
	"fmt"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/learn"
	"chargehand/model/shelf"
)

func day(n int) time.Time { return time.Date(2026, 5, n, 8, 0, 0, 0, time.UTC) }

func kg(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }

// over is a smelt of 20 kg of ore of a day; a bloom of nothing is none.
func over(n int, mix string, bloom float64) shelf.Summary {
	s := shelf.Summary{UID: fmt.Sprint(n), Lit: day(n), Phase: entry.Closed, Mix: mix, OreDry: kg(20), NoBloom: bloom == 0}
	if bloom > 0 {
		s.BloomLoose = kg(bloom)
	}
	return s
}

// A smelt learns from those lit before it: yields from those on the same mix, the
// chance of none from all of them, and nothing from itself, from later ones, from
// practice and from what names no mix.
func TestWhatTheHouseTeaches(t *testing.T) {
	practice, compacted, undated := over(3, "reed", 8), over(4, "reed", 0), over(5, "reed", 8)
	practice.Practice, undated.Undated = true, true
	compacted.NoBloom, compacted.BloomCompacted = false, kg(3)
	h := learn.HistoryOf([]shelf.Summary{
		over(9, "reed", 9), over(1, "Reed", 4), over(2, "reed", 5), practice, compacted, undated, over(6, "heath", 2), over(7, "reed", 0), over(8, "", 7),
	})
	l := h.About("10", day(9), "reed")
	if len(l.Yields) != 2 || l.Yields[0] != 0.20 || l.Yields[1] != 0.25 {
		t.Errorf("yields %v", l.Yields)
	}
	if len(l.Compacted) != 1 || l.Compacted[0] != 0.15 {
		t.Errorf("compacted %v", l.Compacted)
	}
	if l.Smelts != 5 || l.Failures != 1 {
		t.Errorf("%d of %d failed", l.Failures, l.Smelts)
	}
	for what, l := range map[string]learn.Lessons{
		"itself":       h.About("1", day(1).Add(time.Second), "reed"),
		"the first":    h.About("0", day(1), "reed"),
		"nobody's mix": {Yields: h.About("10", day(9), "").Yields},
	} {
		if len(l.Yields) > 0 || l.Smelts > 0 {
			t.Errorf("%s learns %+v", what, l)
		}
	}
	if l := (learn.History{}).About("1", day(9), "reed"); len(l.Yields) > 0 || l.Smelts > 0 {
		t.Errorf("nothing teaches %+v", l)
	}
}

// What a reading asks of the history of a thousand smelts.
func BenchmarkAbout(b *testing.B) {
	var all []shelf.Summary
	for i := range 1000 {
		s := over(1, []string{"reed", "heath", "A6 C4"}[i%3], 4)
		s.UID, s.Lit = fmt.Sprint(i), day(1).Add(time.Duration(i)*time.Hour)
		all = append(all, s)
	}
	h := learn.HistoryOf(all)
	for b.Loop() {
		h.About("x", day(300), "reed")
	}
}
