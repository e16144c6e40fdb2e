//go:build unix

package main

import (
	"flag"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/persist"
)

// go test ./cmd/chargehand -run Killed -kills 200 -killseed 7
var (
	kills    = flag.Int("kills", 12, "how often TestKilledWhileTyping kills the program")
	killSeed = flag.Uint64("killseed", 20260509, "seed of its keys and moments")
)

// keystrokes are what a hand types at the fire: acts, scoops, arrows, fields,
// and keys that do nothing there. None leaves the screen.
var keystrokes = [][]string{
	{"c"}, {"c"}, {"0"}, {"s"}, {"s"}, {"d"}, {"f"}, {"t"}, {"r"}, {"p"}, {"g"}, {"j"}, {"u"}, {"m"}, {"k"}, {"x"}, {"z"},
	{"\x1b[A"}, {"\x1b[B"}, {"\x1b[C"}, {"\x1b[D"},
	{"n", "g", "r", "e", "y", "\r"}, {"b", "4", "5", "0", "\r"}, {"i", "1", "2", ",", "5", "\r"}, {"l", "p", "w"},
	{"w", "m", "1", "2", ".", "1", "\r", "w"}, {"e", "1", "2", "0", "0", "\r", "p"},
}

// names are those of the keys that a terminal sends as more than themselves.
var names = map[string]string{"\x1b[A": "up", "\x1b[B": "down", "\x1b[C": "right", "\x1b[D": "left", "\r": "enter"}

// The program is killed while keys are typed, over and over, on one book. What
// the screen had called kept is there each time; the journal holds the keys as
// they were typed, up to somewhere behind the last kept one; book and twins
// agree once the program has opened them again.
func TestKilledWhileTyping(t *testing.T) {
	t.Parallel()
	chance := rand.New(rand.NewPCG(*killSeed, 1))
	dir := t.TempDir()
	smelt, there := "", 0 // how many entries there were before
	for round := range *kills {
		s := openTerminal(t, dir, 120, 36)
		typed := []string{"y"}
		if smelt == "" {
			s.lights()
			s.Until("the smelt is kept", func(screen string) bool { return claimed(screen) > 0 }) // else there may be none yet
		} else {
			s.Shows("go on with", smelt)
			s.Does("g", "this is "+smelt)
			typed = nil
		}
		for range chance.IntN(40) {
			for _, k := range keystrokes[chance.IntN(len(keystrokes))] {
				s.Press(k)
				name := k
				if n, special := names[k]; special {
					name = n
				}
				typed = append(typed, name)
				pause(time.Duration(chance.IntN(4000)) * time.Microsecond)
			}
		}
		said := claimed(s.Screen())
		s.Kill()

		if smelt == "" {
			smelt = onlySmelt(t, dir)
		}
		found := readSmelt(t, bookIn(dir), smelt)
		mended(t, dir)
		entries := readSmelt(t, bookIn(dir), smelt)
		if min(len(found), len(entries)) < max(said, there) {
			t.Fatalf("kill %d: the screen had said kept %d, there were %d before; %d were found, %d are there once mended",
				round+1, said, there, len(found), len(entries))
		}
		keys := keysOf(entries[there:])
		if len(keys) > len(typed) || !slices.Equal(keys, typed[:len(keys)]) {
			t.Fatalf("kill %d: the book has the keys %v, typed were %v", round+1, keys, typed)
		}
		t.Logf("kill %d: typed %d keys, kept %d entries by the screen, %d by the book", round+1, len(typed), said, len(entries))
		there = len(entries)
	}
	charges := slices.DeleteFunc(readSmelt(t, bookIn(dir), smelt), func(e entry.Entry) bool { return e.Kind() != entry.KindCharge })
	if len(charges) < *kills/4 {
		t.Errorf("%d charges in %d rounds: hardly anything was typed", len(charges), *kills)
	}
}

// claimed is how many entries of the smelt the screen calls kept, whether or
// not others wait.
func claimed(screen string) int {
	m := regexp.MustCompile(`kept (\d+)`).FindStringSubmatch(screen)
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(m[1])
	return n
}

// mended opens the book as the program does, which puts right what the kill
// left apart, and then checks that book and twins agree.
func mended(t *testing.T, dir string) {
	t.Helper()
	book, err := persist.Open(bookIn(dir), persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	report, err := persist.Check(bookIn(dir), persist.Options{Summarise: shelf.Of})
	if err != nil || !report.OK() {
		t.Fatalf("check: %v, %v", err, report.Findings)
	}
}

// pause is the time between two keys of a hand, or between the last one and
// the power cut: a part of what is tried, not a wait for something to come.
func pause(d time.Duration) { time.Sleep(d) }
