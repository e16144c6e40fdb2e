package shelf_test

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	modelshelf "chargehand/model/shelf"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/shelf"
	"chargehand/tui/words"
)

func three() *screen.Shared {
	line := func(id, furnace string, bloom, charcoal float64) modelshelf.Summary {
		return modelshelf.Summary{ID: id, Furnace: furnace, Phase: entry.Extracted, Ore: entry.Some(entry.Kilogram(20)), OreDry: entry.Some(entry.Kilogram(20)),
			Bloom: entry.Some(entry.Kilogram(bloom)), BloomLoose: entry.Some(entry.Kilogram(bloom)), Charcoal: entry.Some(entry.Kilogram(charcoal))}
	}
	sh := &screen.Shared{}
	sh.W, sh.H = 120, 36
	sh.Shelf.Known = true
	sh.Shelf.Lines = []modelshelf.Summary{line("c", "Otter Bank", 3, 60), line("b", "Reed Hollow", 6, 90), line("a", "Reed Hollow", 4, 40), {ID: "u", Furnace: "Reed Hollow", Phase: entry.Extracted}}
	return sh
}

func names(s screen.Screen, sh *screen.Shared) string {
	g := sh.Theme.Grid(sh.W, sh.H)
	s.Paint(g, sh)
	var got []string
	for _, row := range strings.Split(g.String(), "\n") {
		if strings.Contains(row, words.ShelfMeasured) {
			break // what stands below is of the picked one
		}
		for _, kg := range []string{" 3 kg", " 6 kg", " 4 kg"} {
			if strings.Contains(row, kg) {
				got = append(got, strings.TrimSpace(kg[:2]))
			}
		}
	}
	return strings.Join(got, " ")
}

func press(t *testing.T, s screen.Screen, sh *screen.Shared, keys ...string) screen.Screen {
	t.Helper()
	for _, k := range keys {
		s, _ = s.Update(sh, screen.Pressed{Key: desk.KeyMsg(k)})
	}
	return s
}

// Each press of the key goes on to the next order, and what is not known stands last.
func TestSmeltsAreSorted(t *testing.T) {
	sh := three()
	var s screen.Screen = shelf.New()
	for i, want := range []string{"3 6 4", "6 4 3", "4 6 3", "3 6 4"} {
		if got := names(s, sh); got != want {
			t.Errorf("after %d presses: %s, want %s", i, got, want)
		}
		s = press(t, s, sh, "o")
	}
}

// What is typed is looked for in name, day, furnace and ore as it is typed; enter keeps
// what was found, esc shows all again.
func TestSmeltsAreFound(t *testing.T) {
	sh := three()
	s := press(t, shelf.New(), sh, "i", "r", "e", "e", "d")
	if got := names(s, sh); got != "6 4" || !s.(shelf.Screen).Typing() {
		t.Errorf("typing: %s", got)
	}
	s = press(t, s, sh, "enter", "o") // letters are keys again
	if got := names(s, sh); got != "6 4" || s.(shelf.Screen).Typing() {
		t.Errorf("kept and sorted: %s", got)
	}
	s, back := s.(shelf.Screen).Back()
	if got := names(s, sh); got != "3 6 4" || !back {
		t.Errorf("all again: %s", got)
	}
	if _, back := s.(shelf.Screen).Back(); back {
		t.Error("there is nothing more to go back from")
	}
	s = press(t, s, sh, "i", "x", "y")
	g := sh.Theme.Grid(sh.W, sh.H)
	s.Paint(g, sh)
	if !strings.Contains(g.String(), "no smelt has all of these words") {
		t.Error("it does not say that nothing was found")
	}
	if _, e := s.Update(sh, screen.Pressed{Key: tea.KeyMsg{Type: tea.KeyUp}}); e == nil {
		t.Error("a key that does nothing says nothing")
	}
}

// Two to four smelts are marked and compared; k again takes a mark off.
func TestSmeltsAreMarked(t *testing.T) {
	sh := three()
	var s screen.Screen = shelf.New()
	if _, e := s.Update(sh, screen.Pressed{Key: desk.KeyMsg("m")}); e == nil {
		t.Error("nothing is marked, and it compares")
	}
	s = press(t, s, sh, "k", "down", "k", "down", "k", "k")
	_, e := s.Update(sh, screen.Pressed{Key: desk.KeyMsg("m")})
	to, ok := screen.First[screen.Go](e)
	got, _ := to.With.(screen.Compares)
	if !ok || to.To != screen.Compare || strings.Join(got, " ") != "c b" {
		t.Errorf("%+v", e)
	}
}

// A key in a list of a thousand smelts, sorted and searched.
func BenchmarkAThousandSmelts(b *testing.B) {
	sh := three()
	for i := range 1000 {
		l := sh.Shelf.Lines[i%3]
		l.ID, l.Tried = fmt.Sprintf("%s%d", l.ID, i), "ore rising slower"
		sh.Shelf.Lines = append(sh.Shelf.Lines, l)
	}
	var s screen.Screen = shelf.New()
	s, _ = s.Update(sh, screen.Pressed{Key: desk.KeyMsg("o")})
	s, _ = s.Update(sh, screen.Pressed{Key: desk.KeyMsg("i")})
	for b.Loop() {
		for _, k := range []string{"r", "backspace"} {
			s, _ = s.Update(sh, screen.Pressed{Key: desk.KeyMsg(k)})
			g := sh.Theme.Grid(sh.W, sh.H)
			s.Paint(g, sh)
		}
	}
}

// What was measured of the picked smelt stands beside what the others have, where rows are left:
// of one other its figure, of several from where to where; what nobody else has is said so.
func TestThePickedSmeltStandsBesideTheOthers(t *testing.T) {
	sh := three()
	g := sh.Theme.Grid(sh.W, sh.H)
	shelf.New().Paint(g, sh)
	p := g.String()
	for _, says := range []string{words.ShelfMeasured, "4 kg to 6 kg in 2 others"} {
		if !strings.Contains(p, says) {
			t.Errorf("it does not say %q:\n%s", says, p)
		}
	}
	sh.Shelf.Lines = sh.Shelf.Lines[:1]
	g = sh.Theme.Grid(sh.W, sh.H)
	shelf.New().Paint(g, sh)
	if p := g.String(); !strings.Contains(p, words.ShelfMeasuredAlone) || strings.Contains(p, words.NoOtherMeasured) {
		t.Errorf("alone:\n%s", p)
	}
}
