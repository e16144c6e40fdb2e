//go:build unix

package main

import (
	"slices"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rehearse"
)

// The keys that set the pace of a rehearsal; see tui/pace.go.
const (
	holds  = "\x1bOQ" // F2
	faster = "\x1bOS" // F4
)

// practiceIn is where rehearsals are kept in a person's home.
func practiceIn(dir string) string { return practicePath(bookIn(dir)) }

// onlyRehearsal reads the only smelt in there.
func onlyRehearsal(t *testing.T, dir string) []entry.Entry {
	t.Helper()
	out := says(t, dir, "smelts", "--book", practiceIn(dir))
	id := ""
	for _, word := range strings.Fields(out) {
		if strings.HasPrefix(word, "rehearsal-") {
			id = word
		}
	}
	return readSmelt(t, practiceIn(dir), id)
}

// A person who has never seen the program practises: one key leads into the main burn of a smelt, its first ore in, whose ore somebody
// ends early. In the middle the power goes, and the rehearsal goes on where it stood, to the bloom, the opened seal and why.
// Nothing of it is in the person's book.
func TestPracticeFromTheFirstKeyToTheBloom(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.Shows("practise")
	s.Does("p", "not kept with your smelts: c charges", "main burn")
	s.Until("a minute a second, or what slowed it down since", func(picture string) bool {
		return strings.Contains(picture, "practice, a minute a second") || strings.Contains(picture, "practice, slowed")
	})
	s.hurries()
	s.rehearses(1)
	s.Kill()
	before := onlyRehearsal(t, dir)

	s = openTerminal(t, dir, 120, 36)
	s.Shows("practise")
	s.Does("p", "practice, held")
	again := onlyRehearsal(t, dir)
	if len(again) < len(before) || !slices.EqualFunc(again[:len(before)], before, func(a, b entry.Entry) bool { return a.Seq == b.Seq && a.Prev == b.Prev }) {
		t.Errorf("%d entries before the power went, %d after it", len(before), len(again))
	}
	s.Press(holds)
	s.Until("it goes on", func(picture string) bool {
		return strings.Contains(picture, "practice, ") && !strings.Contains(picture, "practice, held")
	})
	s.hurries()
	s.Does("ol", "last ore")
	s.rehearses(1000)
	s.Shows("opened: what was sealed at lighting", "what happened", "believed", "what you did")
	s.Does("w", "the model's opinion")
	s.Does("\x03", "leave")
	s.Does("y", "practise")
	s.Press("q")
	if code := s.Exit(); code != exitWell {
		t.Errorf("exit code %d", code)
	}
	s.Restored()
	if out := says(t, dir, "smelts"); strings.Contains(out, "rehearsal") {
		t.Errorf("the person's own book holds it:\n%s", out)
	}
	entries := onlyRehearsal(t, dir)
	at := func(k entry.Kind) int {
		return slices.IndexFunc(entries, func(e entry.Entry) bool { return e.Kind() == k })
	}
	if at(entry.KindSealed) != 1 || at(entry.KindExtract) < len(before) || at(entry.KindOpened) < at(entry.KindExtract) {
		t.Errorf("sealed with entry %d, pulled with %d, opened with %d; %d stood in the book when the power went", at(entry.KindSealed), at(entry.KindExtract), at(entry.KindOpened), len(before))
	}
	live, err := rehearse.Resume(entries)
	if err != nil {
		t.Fatal(err)
	}
	if is, last := live.Seconds(), rehearse.SecondsOf(entries[len(entries)-1]); is != last-1 || !live.Pulled() {
		t.Errorf("the furnace stands at %v s, the last entry at %v; pulled %v", is, last, live.Pulled())
	}
}

// A whole rehearsal by its keys, from the wood fire to the bloom: the seal stands directly after light and is opened after the
// bloom, every stamp is of the rehearsal's own clock, and its end is told.
func TestARehearsalFromTheFirstKeyToTheBloom(t *testing.T) {
	if testing.Short() {
		t.Skip("not with -short: a day of eight hours at 600 times")
	}
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36, "rehearse", "--furnace-number", "40", "--mishap", "none")
	s.Shows("practice, ") // a caution may have slowed it by now
	s.hurries()
	s.Until("the wood fire has burned an hour", s.reading(func(picture string) bool { return strings.Contains(picture, "preheat 1 h") }))
	s.Does("f", "fill: 1 bucket")
	for range 4 {
		time.Sleep(1200 * time.Millisecond) // two keys at once are a leaning glove
		s.Press("f")
	}
	s.Does("b", "l/min")
	s.Does("720\r", "blast, 720 l/min")
	s.rehearses(3)
	for range 3 {
		s.Does("\x1b[A", "next")
	}
	s.rehearses(1000)
	s.Shows("opened: what was sealed at lighting", "what happened", "believed", "what you did", "nothing of this is kept with your smelts")
	s.Press("x")
	if code := s.Exit(); code != exitWell {
		t.Errorf("exit code %d", code)
	}
	s.Restored()
	entries := onlyRehearsal(t, dir)
	if entries[1].Kind() != entry.KindSealed {
		t.Errorf("the seal is not directly after light: %s", entries[1].Kind())
	}
	opened := slices.IndexFunc(entries, func(e entry.Entry) bool { return e.Kind() == entry.KindOpened })
	pulled := slices.IndexFunc(entries, func(e entry.Entry) bool { return e.Kind() == entry.KindExtract })
	if pulled < 0 || opened < pulled {
		t.Errorf("the bloom came out with entry %d, the seal was opened with %d", pulled, opened)
	}
	for i, e := range entries {
		if e.Boot != entries[0].Boot || e.Mono%time.Second != 0 || i > 0 && e.Mono < entries[i-1].Mono || e.Kept.Year() != 2000 {
			t.Errorf("entry %d is not of the rehearsal's own clock: %s %v %v", e.Seq, e.Boot, e.Mono, e.Kept)
		}
	}
}

// reading puts the cautions away that come until something is so.
func (s *terminal) reading(so func(picture string) bool) func(picture string) bool {
	var pressed time.Time
	return func(picture string) bool {
		if strings.Contains(picture, "slowed: read") && time.Since(pressed) > time.Second { // twice at once is a leaning glove
			s.Press(faster)
			pressed = time.Now()
		}
		return so(picture)
	}
}

// hurries has the clock run 600 times as fast, unless something asks for an answer before that shows.
func (s *terminal) hurries() {
	s.t.Helper()
	s.Press(faster)
	s.Until("600 times as fast", s.reading(func(picture string) bool {
		return strings.Contains(picture, "practice, 600 times") || strings.Contains(picture, "practice, slowed") && !strings.Contains(picture, "slowed: read")
	}))
}

// rehearses keys what the screen asks for: so many charges, or all to the end.
func (s *terminal) rehearses(charges int) {
	s.t.Helper()
	charged := func() {
		s.Press("c")
		s.Until("the charge is in", func(picture string) bool { return !strings.Contains(picture, "slowed: room for a bucket") })
	}
	for n := 0; n < charges; {
		asked := ""
		s.Until("a charge is due, or the end", func(picture string) bool {
			for _, a := range []struct{ says, asks string }{
				{"opened: what was sealed", "end"}, {"c over the last ore", "burn down"}, {"slowed: all ore is in", "last ore"},
				{"slowed: burned down", "pull"}, {"slowed: room for a bucket", "charge"}, {"slowed: read", "read"}, {"practice, slowed", "look"},
			} {
				if strings.Contains(picture, a.says) {
					asked = a.asks
					return true
				}
			}
			return false
		})
		switch asked {
		case "end":
			return
		case "charge":
			charged()
			n++
		case "last ore":
			s.Does("ol", "last ore")
			charged()
		case "burn down":
			charged()
			s.Does("ob", "burning down for")
		case "pull":
			s.Does("o", "other acts")
			time.Sleep(500 * time.Millisecond) // twice at once is a leaning glove
			s.Does("o", "from the top")
			s.Press("p")
			s.Until("the bloom is out", func(picture string) bool { return !strings.Contains(picture, "practice, slowed") })
		case "read":
			s.Press(faster)
			s.Until("the caution is put away", func(picture string) bool { return !strings.Contains(picture, "slowed: read") })
		case "look":
			s.Press("lp")
			s.Until("what is seen there, or what comes first", func(picture string) bool {
				return strings.Contains(picture, "you see") || !strings.Contains(picture, "slowed: F4 goes on")
			})
			if picture := s.Screen(); strings.Contains(picture, "peep: dim") || strings.Contains(picture, "peep: dark") {
				s.Does("r", "rodded")
			}
			s.Until("it goes on, or has room for a bucket", func(picture string) bool {
				return !strings.Contains(picture, "slowed: F4 goes on")
			})
		}
	}
}
