//go:build unix

package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// care stands for the caution that a deed may bring with the next second: it is read, and
// put away.
const care = ""

// wholeWay is a smelt of the test's own from digging to a finished piece: what is keyed, and
// what each line leads to.
var wholeWay = []struct{ keys, leads string }{
	// The week before: ore dug and roasted, charcoal, measures, an assay.
	{"v t", "Nothing here yet"}, {"n 1 d r e e d enter 6 0 enter 3 0 enter", "dug: 60 kg reed"}, {care, ""},
	{"o r enter n r o a s t enter 4 0 enter 2 enter", "roasted"}, {care, ""}, {"a i 4 8 enter i r", "assay, Fe 48 %, roasted"},
	{"n 2 b a l d e r enter 4 4 enter 1 2 enter", "44 kg alder"}, {care, ""},
	{"k a 1 b u c k e t enter 1 . 8 enter", "bucket"}, {"k a 2 s c o o p enter . 5 enter", "measure scoop"},
	// The furnace, dried once, and a plan with what is tried.
	{"v u", "No furnace here yet"}, {"n O l d enter 2 5 enter 2 5 enter 5 0 enter 6 0 enter 1 5 enter 5 enter 2 0 enter 2 0 enter", "furnace Old"}, {care, ""}, {"i 1 enter d r y enter n o enter", "small fires only"}, {care, ""},
	{"v p", "wanted: a bloom"}, {"w b 2 enter", "a bloom of 2 kg"}, {"n 3 enter", "wanted"}, {"p d r i e r enter", "tried this time: drier"}, {"right left enter", "plan taken"},
	// The day.
	{"l", "your initials"}, {"pgdown up M K pgdown enter", "the fire is lit"}, {"b 4 0 0 enter", "blast, 400 l/min"},
	{"hour", ""}, {"o i", "fill"}, {"f", "fill: 1 bucket"}, {"min f", "fill: 1 bucket"}, {"min f", "fill: 1 bucket"}, {"o m", "main burn"},
	{"ten c", "charge 1"}, {"ten c", "charge 2"}, {"ten c", "charge 3"}, {"ten c", "charge 4"}, {"ten c", "charge 5"}, {"ten c", "charge 6"}, {"ten c", "charge 7"}, {"ten c", "charge 8"},
	{"min t", "tap"}, {"ten c", "charge 9"}, {"ten c", "charge 10"}, {"o l", "last ore"}, {"ten f", "charcoal"}, {"o b", "burn"}, {"ten ten ten o 8 p", "from the top"},
	{"hour w b 2 . 1 enter k", "2.1 kg"}, {"o k y", "one line for next time"}, {"r o d space s o o n e r enter", "for next time: rod sooner"},
	// The days after: weighed, sampled, answered by the lab.
	{"v c", "iron out"}, {"w g 3 . 5 enter p", "slag of the tap 3.5 kg"}, {"w g 4 enter k", "slag of the furnace 4 kg"}, {"w k 2 enter", "charcoal left"}, {"w a . 5 enter", "wall lost"},
	{"p l enter", "1-S1"}, {"v t", "what there is"}, {"i 1 - S 1 enter i 4 0 enter i x", "1-S1"},
	// The forge: compacted, a billet, a knife that is given away.
	{"v g", "bloom"}, {"enter 1 enter 4 enter 1 . 5 enter 2 enter 6 enter 1 . 6 enter pgdown enter", "consolidate"},
	{"up down enter 3 enter 3 enter 1 enter down tab 1 . 2 enter 2 pgdown enter", "billet 1 1.2 kg"}, {"up down enter 5 enter 6 enter 2 enter down tab . 3 enter 3 pgdown enter", "finished 1 0.3 kg"},
	{"e p l t i p enter", "rays"}, {"o h T i l d a enter", "given"},
}

// spends are the keys that move the clock on.
var spends = map[string]string{"min": aMinute, "ten": tenMinutes, "hour": anHour}

// A smelt of one's own, from digging to a finished piece, keyed at a terminal into an empty
// book, reported, taken out as a package, taken into another empty book and reported again:
// the two reports are the same to the byte, but for their last line, which says what printed
// them and when.
func TestTheWholeWayAndBack(t *testing.T) {
	if testing.Short() {
		t.Skip("not with -short: a whole smelt at a terminal")
	}
	t.Parallel()
	dir, other := t.TempDir(), t.TempDir()
	s := openWithClock(t, dir, 120, 36)
	s.Shows("look at one")
	for _, line := range wholeWay {
		if line.keys == care {
			time.Sleep(1200 * time.Millisecond)
			if strings.Contains(s.Screen(), "take care") {
				s.Press(bytesOf("esc"))
				s.Until("no caution", func(screen string) bool { return !strings.Contains(screen, "take care") })
			}
			continue
		}
		for _, k := range strings.Fields(line.keys) { // one by one: many at once are a paste
			if on, is := spends[k]; is {
				k = on
			} else {
				k = bytesOf(k)
			}
			s.Press(k)
			s.Drained()
		}
		s.Shows(line.leads)
		s.Drained()
		time.Sleep(settling / 2)
	}
	s.Press(bytesOf("ctrl+c"))
	if code := s.Exit(); code != exitWell {
		t.Fatalf("exit code %d\n%s", code, s.Screen())
	}
	run := func(home string, args ...string) string {
		t.Helper()
		out, err := binaryCommand(t, home, args...).CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %v\n%s", args, err, out)
		}
		return string(out)
	}
	id := onlySmelt(t, dir)
	folder := filepath.Join(dir, "package")
	run(dir, "export", id, "--package", folder)
	run(other, "import", folder)
	printed := regexp.MustCompile(`<p>[^<]*</p></footer>`)
	report := func(home string) string {
		run(home, "report", id, "--out", "report.html")
		page, err := os.ReadFile(filepath.Join(home, "report.html"))
		if err != nil {
			t.Fatal(err)
		}
		if !printed.Match(page) {
			t.Fatal("the report has no last line")
		}
		return printed.ReplaceAllString(string(page), "")
	}
	was, is := report(dir), report(other)
	if was != is {
		a, b := strings.Split(was, "\n"), strings.Split(is, "\n")
		for i := range min(len(a), len(b)) {
			if a[i] != b[i] {
				t.Fatalf("line %d of the reports differs\nwas %.400s\nis  %.400s", i+1, a[i], b[i])
			}
		}
		t.Fatalf("the reports have %d and %d lines", len(a), len(b))
	}
	for _, says := range []string{"tried this time", "drier", "rod sooner", "slag of the tap 3.5 kg", "billet", "finished", "1-S1", "planned"} {
		if !strings.Contains(was, says) {
			t.Errorf("the report does not say %q", says)
		}
	}
	if strings.Contains(was, "Tilda") || strings.Contains(was, dir) {
		t.Error("the report names a person or a path")
	}
	for _, args := range [][]string{{"account", id, "--json"}, {"export", id, "--json"}} {
		if a, b := run(dir, args...), run(other, args...); a != b {
			t.Errorf("%v differs:\n%.300s\n%.300s", args, a, b)
		}
	}
}
