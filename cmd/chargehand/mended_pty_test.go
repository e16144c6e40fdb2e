//go:build unix

package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
)

// lit is the program with a fire lit and the main burn begun.
func lit(t *testing.T, dir string, open func(testing.TB, string, int, int, ...string) *terminal) *terminal {
	t.Helper()
	s := open(t, dir, 120, 36)
	s.lights()
	s.Does("om", "main burn begins", "kept")
	return s
}

// counts is how often each kind stands among entries.
func counts(es []entry.Entry) map[entry.Kind]int {
	n := map[entry.Kind]int{}
	for _, e := range es {
		n[e.Kind()]++
	}
	return n
}

// namedOnce fails when one act stands there twice.
func namedOnce(t *testing.T, es []entry.Entry) {
	t.Helper()
	seen := map[string]uint64{}
	for _, e := range es {
		if other, twice := seen[e.Local]; twice && e.Local != "" {
			t.Errorf("entries %d and %d are one: %s", other, e.Seq, e.Local)
		}
		seen[e.Local] = e.Seq
	}
}

// A stream that cannot be kept where it stood keeps no other waiting: a folder stands where
// the twin of the house was, and every act of the smelt is kept as before, in its order.
// What goes to the house meanwhile is there too, once the book was opened again.
func TestAStreamThatIsStuckHoldsUpNoOther(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := lit(t, dir, openTerminal)
	s.Does("vl", "kept") // the house has a twin
	s.allKept()          // and none is made anew once it is moved
	house := filepath.Join(bookIn(dir)+".twins", entry.House+".jsonl")
	folder := filepath.Join(dir, "folder")
	if err := os.MkdirAll(filepath.Join(folder, "in the way"), 0o700); err != nil {
		t.Fatal(err)
	}
	for _, move := range [][2]string{{house, house + ".moved"}, {folder, house}} {
		if err := os.Rename(move[0], move[1]); err != nil {
			t.Fatal(err)
		}
	}
	keys := []string{"t", "r", "p", "t", "r", "p"}
	for _, k := range keys {
		before := claimed(s.Screen())
		s.Press("vl") // a setting, which goes to the house
		s.Press(k)
		s.Until("one more kept", func(screen string) bool { n, all := kept(screen); return all && n > before })
		time.Sleep(settling)
	}
	id := onlySmelt(t, dir)
	s.Kill()
	if err := os.RemoveAll(house); err != nil {
		t.Fatal(err)
	}
	again := openTerminal(t, dir, 120, 36)
	again.Shows("go on with", id)
	again.Does("g", "this is "+id)
	again.Kill()
	var order []string
	es := readSmelt(t, bookIn(dir), id)
	namedOnce(t, es)
	for _, e := range es {
		switch e.Kind() {
		case entry.KindTap, entry.KindRod, entry.KindPoke:
			order = append(order, e.Key)
		}
	}
	if strings.Join(order, "") != strings.Join(keys, "") {
		t.Errorf("kept as %v, keyed %v", order, keys)
	}
	if n := counts(readSmelt(t, bookIn(dir), entry.House))[entry.KindSetting]; n != 1+len(keys) {
		t.Errorf("%d settings are in the house, %d were keyed", n, 1+len(keys))
	}
}

// A smelt that is read anew while its acts are on their way to the book counts none of them
// twice: acts keyed in one breath with the key that opens it, with those that leave it and
// come back, and then the power fails. Each stands in the book once.
func TestASmeltReadAnewCountsEachActOnce(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := lit(t, dir, openTerminal)
	id := onlySmelt(t, dir)
	for n := 1; n <= 8; n++ {
		s.Does("tvbvf", "c charge ")
		s.Does("rvs", "2 smelts")
		s.Does("\r", "c charge ")
		s.Does("n", "? note")
		s.Does(fmt.Sprint("seen ", n, "\r"), fmt.Sprint("note: seen ", n))
		s.allKept()
		before := counts(readSmelt(t, bookIn(dir), id))
		if before[entry.KindTap] != n || before[entry.KindRod] != n || before[entry.KindNote] != n {
			t.Fatalf("round %d: %v", n, before)
		}
		s.Kill()
		s = openTerminal(t, dir, 120, 36)
		s.Shows("go on with", id)
		s.Does("g", "this is "+id)
		if after := counts(readSmelt(t, bookIn(dir), id)); after[entry.KindTap] != n || after[entry.KindRod] != n || after[entry.KindNote] != n {
			t.Fatalf("round %d, opened again: %v", n, after)
		}
	}
	s.killedAtRest()
	namedOnce(t, readSmelt(t, bookIn(dir), id))
	var state stateJSON
	if err := json.Unmarshal([]byte(says(t, dir, "state", id, "--json")), &state); err != nil {
		t.Fatal(err)
	}
	says(t, dir, "check")
}

// A job of the solver that breaks down is told, stops neither the keys nor what is kept,
// and the next one brings the figures.
func TestASolverThatBreaksDownStopsNothing(t *testing.T) {
	t.Parallel()
	path, err := binaryWithFault()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	s := lit(t, dir, func(t testing.TB, dir string, columns, rows int, args ...string) *terminal {
		cmd := binaryCommand(t, dir, args...)
		cmd.Path, cmd.Args[0] = path, path
		return open(t, cmd, dir, columns, rows)
	})
	s.Does("f", "charge 1")
	s.Does("b700\r", "700 l/min")
	broke := false
	for n := 2; n <= 7; n++ {
		s.Press(tenMinutes)
		s.Does("c", fmt.Sprintf("charge %d", n))
		time.Sleep(1200 * time.Millisecond)
		broke = broke || strings.Contains(s.Screen(), "sums broke down")
	}
	if !broke {
		t.Errorf("nothing is said of the job that broke down:\n%s", s.Screen())
	}
	s.Until("heat in the shaft", func(screen string) bool { return strings.Contains(screen, "±250") })
	s.allKept()
	if told, _ := filepath.Glob(filepath.Join(filepath.Dir(bookIn(dir)), "*crash*")); len(told) == 0 {
		t.Error("the crash is not written down")
	}
	id := onlySmelt(t, dir)
	s.Kill()
	if n := counts(readSmelt(t, bookIn(dir), id))[entry.KindCharge]; n != 7 {
		t.Errorf("%d charges are kept, 7 were keyed", n)
	}
	says(t, dir, "check")
}

// Readers beside a program that writes as fast as keys come: each answers, in good order and
// with nothing to complain of, and sees no less than the one before. What needs the book
// for itself says so at once.
func TestReadersBesideAProgramThatWrites(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := lit(t, dir, openTerminal)
	s.Does("c", "charge 1", "kept")
	id := onlySmelt(t, dir)
	stop, done := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(done)
		for i := 0; ; i++ {
			select {
			case <-stop:
				return
			case <-time.After(120 * time.Millisecond):
				_, _ = s.WriteString([]string{"s", "d", "t", "r", "p", "\x1b[A"}[i%6])
			}
		}
	}()
	last := uint64(0)
	for range 12 {
		var state stateJSON
		for _, args := range [][]string{{"state", id, "--json"}, {"smelts"}, {"export", id, "--json"}} {
			out, complaint, code := said(t, dir, args...)
			if code != exitWell || complaint != "" || out == "" {
				t.Errorf("%v beside the program: exit code %d, %q", args, code, complaint)
			}
			if args[0] == "state" {
				if err := json.Unmarshal([]byte(out), &state); err != nil {
					t.Errorf("%v: %s", err, out)
				}
			}
		}
		if state.Known < last {
			t.Errorf("a reader knew entry %d, the next one only %d", last, state.Known)
		}
		last = state.Known
		if _, complaint, code := said(t, dir, "check"); code != exitFailed || strings.Count(complaint, "\n") != 1 || !strings.Contains(complaint, "is in use") {
			t.Errorf("check of a held book: exit code %d, %q", code, complaint)
		}
	}
	close(stop)
	<-done
	s.allKept()
	s.killedAtRest()
	es := readSmelt(t, bookIn(dir), id)
	namedOnce(t, es)
	if end := es[len(es)-1].Seq; last < 20 || last > end {
		t.Errorf("readers came to entry %d, the smelt has %d", last, end)
	}
	says(t, dir, "check")
}
