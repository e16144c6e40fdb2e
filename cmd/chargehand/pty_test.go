//go:build unix

package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"chargehand/model/entry"
)

// said runs a subcommand of the built program in a person's home and gives
// what it wrote to each side, and its exit code.
func said(t testing.TB, dir string, args ...string) (out, complaint string, code int) {
	t.Helper()
	cmd := binaryCommand(t, dir, args...)
	var o, e strings.Builder
	cmd.Stdout, cmd.Stderr = &o, &e
	if err := cmd.Run(); err != nil {
		if _, ok := err.(*exec.ExitError); !ok {
			t.Fatal(err)
		}
	}
	return o.String(), e.String(), cmd.ProcessState.ExitCode()
}

// says is what a subcommand writes when all goes well.
func says(t testing.TB, dir string, args ...string) string {
	t.Helper()
	out, complaint, code := said(t, dir, args...)
	if code != exitWell {
		t.Fatalf("%v: exit code %d, %s%s", args, code, out, complaint)
	}
	return out
}

// bookIn is where the book stands in a person's home.
func bookIn(dir string) string { return filepath.Join(dir, "chargehand", "book.db") }

// onlySmelt is the name of the only smelt in the book.
func onlySmelt(t testing.TB, dir string) string {
	t.Helper()
	var list []listed
	for range 20 { // its summary is made beside the writer
		if err := json.Unmarshal([]byte(says(t, dir, "smelts", "--json")), &list); err != nil {
			t.Fatal(err)
		}
		if len(list) == 1 {
			return list[0].ID
		}
		time.Sleep(250 * time.Millisecond)
	}
	t.Fatalf("the shelf holds %v, want one smelt", list)
	return ""
}

// killedAtRest kills a program that was left alone for more than a second: by then what was typed is in the book. A kill amid
// a flush leaves the twin ahead of the book, which check would rightly tell.
func (s *terminal) killedAtRest() {
	s.t.Helper()
	s.Drained()
	time.Sleep(2500 * time.Millisecond)
	s.Kill()
}

var keptMark = regexp.MustCompile(`kept (\d+) ✓`)

// kept is how many entries of the smelt the screen calls kept; none while some
// wait.
func kept(screen string) (int, bool) {
	m := keptMark.FindStringSubmatch(screen)
	if m == nil {
		return 0, false
	}
	n, err := strconv.Atoi(m[1])
	return n, err == nil
}

// allKept waits until everything is kept, and gives how many entries that is. The answer
// to a key is drawn before its entry is on the disk, so whoever kills the program or reads
// its book from outside asks this first.
func (s *terminal) allKept() (n int) {
	s.t.Helper()
	s.Until("all kept", func(screen string) (all bool) { n, all = kept(screen); return all })
	return n
}

// The program asks the terminal nothing before its first frame, so a terminal
// that answers nothing cannot hold it up: no colour (OSC 10, 11), no cursor, no
// device report (CSI n, c). (xterm control sequences, ctlseqs.)
func TestFirstFrameAsksNothing(t *testing.T) {
	t.Parallel()
	s := openTerminal(t, t.TempDir(), 120, 36)
	s.Shows("practise", "run a smelt", "look at one", "kept 0 ✓")
	asked := regexp.MustCompile("\x1b\\][0-9]+;\\?|\x1b\\[[?>=]?[0-9]*[nc]").Find(s.Written())
	if asked != nil {
		t.Errorf("the terminal was asked %q", asked)
	}
	s.Press("q")
	if code := s.Exit(); code != exitWell {
		t.Errorf("exit code %d", code)
	}
	s.Restored()
}

// A smelt is lit and worked, with a charge crossed out, one entered late and
// the bucket weighed again. Then the power fails. Nothing is gone.
func TestPowerCut(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.lights()
	s.Does("f", "fill: 1 bucket")
	s.Does("c", "charge 1: 1 bucket")
	s.Does("s", "1 scoop of ore, to charge 1")
	s.Does("d", "half a scoop of ore, to charge 1")
	s.Does("c", "charge 2: 1 bucket")
	s.Does("s", "1 scoop of ore, to charge 2")
	s.Does("0", "charge 3: 1 bucket") // the number pad
	s.Does("c", "charge 4: 1 bucket")
	s.Does("f", "charge 5: 1 bucket")
	s.Does("u", "crossed out: charge 5")
	s.Does("oe", "when was it")
	s.Does("0\r", "what was at")
	s.Does("c", "buckets of charcoal")
	s.Does("0.5\r", "scoops of ore")
	s.Does("3\r", "entered late, at ")
	s.Does("wm", "which measure")
	s.Does("1", "weight of bucket")
	s.Does("2.25\r", "since when")
	s.Does("w", "weighed: bucket 2.25 kg, for the whole smelt; wetter or fuller: v, b, a")

	n := s.allKept()
	id := onlySmelt(t, dir) // all of this while the first one holds the book
	before := stateIn(t, dir, id)
	if _, complaint, code := said(t, dir, "check"); code != exitFailed || !strings.Contains(complaint, "in use") {
		t.Errorf("check of a held book: exit code %d, %s", code, complaint)
	}
	s.Kill()

	if diff := cmp.Diff(before, stateIn(t, dir, id), rounding); diff != "" {
		t.Errorf("- before the power cut, + after:\n%s", diff)
	}
	again := openTerminal(t, dir, 120, 36)
	again.Shows("go on with", id, "5 charges")
	again.Does("g", "this is "+id)
	if now, ok := kept(again.Screen()); ok && now < n {
		t.Errorf("%d entries were called kept, %d are there", n, now)
	}
	if diff := cmp.Diff(before, stateIn(t, dir, id), rounding); diff != "" {
		t.Errorf("- before the power cut, + gone on with:\n%s", diff)
	}
	again.Does("c", "charge 6: 1 bucket 2.25 kg")
	again.Signal(syscall.SIGTERM)
	if code := again.Exit(); code != exitWell {
		t.Errorf("exit code %d", code)
	}
	worked(t, readSmelt(t, bookIn(dir), id), before)
	says(t, dir, "check")
}

// stateIn is what state says of a smelt an hour after light, but for the number
// of the last entry: the program itself writes down which cautions and warnings
// it shows, as time goes by.
func stateIn(t testing.TB, dir, id string) stateJSON {
	t.Helper()
	var s stateJSON
	if err := json.Unmarshal([]byte(says(t, dir, "state", id, "--json", "--at", "+1h")), &s); err != nil {
		t.Fatal(err)
	}
	s.Known = 0
	return s
}

// rounding is how far two states of the same acts may lie apart: entries of the
// journal's own between them cut the burden's fall into other steps, which
// round otherwise.
var rounding = cmpopts.EquateApprox(1e-9, 1e-9)

// worked holds the day above against what state said of it: a fill of one
// bucket of 2.25 kg, five charges of which one is half a bucket, and scoops of
// 0.5 kg: 2 with each full charge but the last, 2.5 by hand, 3 with the late one.
func worked(t *testing.T, entries []entry.Entry, state stateJSON) {
	t.Helper()
	kinds := map[entry.Kind]int{}
	for _, e := range entries {
		kinds[e.Kind()]++
	}
	for kind, want := range map[entry.Kind]int{
		entry.KindLight: 1, entry.KindFill: 1, entry.KindCharge: 10, entry.KindStrike: 1, entry.KindWeigh: 1,
	} {
		if kinds[kind] != want {
			t.Errorf("%d entries of %s, want %d", kinds[kind], kind, want)
		}
	}
	for name, want := range map[string]number{"charcoal_charged": 5.5 * 2.25, "ore_charged": (4*2 + 2.5 + 3) * 0.5} {
		if got := state.Figures[name].P50; got == nil || *got != want {
			t.Errorf("%s: %s, want %g", name, asText(state.Figures[name]), want)
		}
	}
}

// What was typed last is in the book when the terminal goes, or the machine
// goes down: acts, and letters in an open field too.
func TestGoingDownKeepsTheLastKeys(t *testing.T) {
	t.Parallel()
	for name, end := range map[string]func(*terminal){
		"hang-up":   func(s *terminal) { s.HangUp() },
		"SIGHUP":    func(s *terminal) { s.Signal(syscall.SIGHUP) },
		"SIGTERM":   func(s *terminal) { s.Signal(syscall.SIGTERM) },
		"interrupt": func(s *terminal) { s.Signal(os.Interrupt) },
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			s := openTerminal(t, dir, 120, 36)
			s.lights()
			s.Does("c", "charge 1")
			s.Does("t", "tapped slag")
			s.Does("n", "? note")
			s.Does("grey", "note grey")
			end(s)
			if code := s.Exit(); code != exitWell {
				t.Errorf("exit code %d", code)
			}
			if name != "hang-up" {
				s.Restored()
			}
			entries := readSmelt(t, bookIn(dir), onlySmelt(t, dir))
			if got, want := keysOf(entries), []string{"y", "c", "t", "n", "g", "r", "e", "y"}; !slices.Equal(got, want) {
				t.Errorf("the book has the keys %v, typed were %v", got, want)
			}
			says(t, dir, "check")
		})
	}
}

// keysOf are the keys of a smelt's journal, in their order.
func keysOf(entries []entry.Entry) []string {
	var keys []string
	for _, e := range entries {
		if ev, ok := e.Event.(entry.Keys); ok {
			for _, p := range ev.Pressed {
				keys = append(keys, p.Key)
			}
		} else if e.Key != "" {
			keys = append(keys, e.Key)
		}
	}
	return keys
}

// A smaller window is filled anew, to its edges and no farther.
func TestResize(t *testing.T) {
	t.Parallel()
	s := openTerminal(t, t.TempDir(), 120, 36)
	s.lights()
	s.Shows("kept ")
	for _, size := range [][2]int{{80, 24}, {200, 60}, {80, 24}} {
		columns, rows := size[0], size[1]
		s.Resize(columns, rows)
		s.Until("a frame of the new size", func(screen string) bool {
			lines := strings.Split(screen, "\n")
			return len(lines) == rows && keptMark.MatchString(lines[0]) && len([]rune(lines[0])) == columns-1 &&
				strings.HasSuffix(lines[rows-1], "h help") && strings.Contains(screen, "since it was lit")
		})
	}
}

// A second program on the same book says so in one line, and touches nothing.
func TestSecondScreen(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.lights()
	second := openTerminal(t, dir, 120, 36)
	second.Shows("book.db is in use: the program is probably running")
	if code := second.Exit(); code != exitFailed {
		t.Errorf("exit code %d", code)
	}
	second.Restored()
	s.Does("f", "fill: 1 bucket", "· kept ✓")
	s.Does("c", "charge 1", "· kept ✓")
}

// Leaving a running smelt asks, and then leaves with a good end.
func TestLeaving(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.lights()
	s.Does("\x03", "goes on at the next start")
	s.Does("n", "nothing done")
	s.Does("\x03", "goes on at the next start")
	s.Press("y")
	if code := s.Exit(); code != exitWell {
		t.Errorf("exit code %d", code)
	}
	s.Restored()
	says(t, dir, "check")
}
