package solve_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/solve"
)

// outcome is what the solver made of one published smelt: how far its shaft stood
// from the level at the charges from the fifth on, the hottest place of the burning
// zone and the hottest top gas there, and how many things it said that the plain
// rules do not.
type outcome struct {
	mean, worst  float64 // cm
	burning, top float64 // Celsius
	notes        int
	seen         int // charges at which shaft and level could be compared
}

func (o outcome) String() string {
	if o.seen == 0 {
		return fmt.Sprintf("none,none,%.0f,%.0f,%d", o.burning, o.top, o.notes)
	}
	return fmt.Sprintf("%.1f,%.1f,%.0f,%.0f,%d", o.mean, o.worst, o.burning, o.top, o.notes)
}

func outcomeOf(tb testing.TB, log publishedSmelt) (o outcome) {
	tb.Helper()
	entries := published(tb, log.name, log.furnace, log.measures...)
	var v solve.Solver
	charges := 0
	for _, ch := range fold.Fold(entries, fold.All, fold.End(entries)).Charges {
		if charges++; charges < 5 {
			continue
		}
		before := fold.Trace(entries, fold.All, ch.At-5*time.Second)
		for _, l := range v.Solve(&before).Profile {
			o.burning = max(o.burning, celsius(l.Middle))
		}
		c := fold.Trace(entries, fold.All, ch.At)
		s := v.Solve(&c)
		if level, ok := c.LevelThen(ch.At); ok && s.Status == solve.Computes {
			apart := 100 * math.Abs(level.Height-s.Height)
			o.mean, o.worst = o.mean+apart, max(o.worst, apart)
			o.seen++
		}
		o.top = max(o.top, celsius(s.TopGas.Temperature))
	}
	o.mean /= float64(max(1, o.seen))
	c := fold.Trace(entries, fold.All, fold.End(entries)-time.Second)
	type key struct {
		rule  rule.ID
		onset time.Duration
	}
	notes := map[key]bool{}
	for _, w := range rule.WalkSolved(c, new(solve.Solver).Solve(&c).Samples()) {
		notes[key{w.Rule, w.Onset}] = true
	}
	for _, w := range rule.Walk(c) {
		delete(notes, key{w.Rule, w.Onset})
	}
	o.notes = len(notes)
	return o
}

// The published smelts by the solver of the first version, whose numbers stand in
// testdata/before.csv as this table gave them there, and by this one.
//
//	go test -run TestReportBeforeAndAfter -v ./model/solve
func TestReportBeforeAndAfter(t *testing.T) {
	raw, err := os.ReadFile("testdata/before.csv")
	if err != nil {
		t.Fatal(err)
	}
	was := map[string]string{}
	for line := range strings.Lines(string(raw)) {
		if name, rest, ok := strings.Cut(strings.TrimSpace(line), ","); ok && !strings.HasPrefix(line, "#") {
			was[name] = rest
		}
	}
	t.Log("log: cm from the level (mean, worst), C hottest in the burning zone, C hottest top gas, notes of the solver's")
	for _, log := range publishedSmelts {
		o := outcomeOf(t, log)
		if was[log.name] == "" {
			t.Errorf("log %s has no line of before", log.name)
		}
		t.Logf("log %s: before %s; after %s", log.name, was[log.name], o)
		if o.worst > 5 || o.notes > 2 {
			t.Errorf("log %s: %s", log.name, o)
		}
	}
}
