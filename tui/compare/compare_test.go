package compare_test

import (
	"fmt"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/entry"
	modelshelf "chargehand/model/shelf"
	"chargehand/tui/compare"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// kept are the entries of smelts by stream. Invented.
type kept map[string][]entry.Entry

func (k kept) Entries(id string) ([]entry.Entry, []entry.Gap, error) { return k[id], nil, nil }

// own is a house of so many smelts of one furnace, each with its own pace and ore.
func own(n int) (kept, *screen.Shared) {
	book := kept{}
	sh := &screen.Shared{}
	sh.Shelf.Known = true
	kg := func(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }
	for i := range n {
		id := fmt.Sprintf("2026-%02d-09-reedhollow-a", i+1)
		at := time.Date(2026, time.Month(i+1), 9, 8, 0, 0, 0, time.UTC)
		var es []entry.Entry
		add := func(ev entry.Event) {
			es = append(es, entry.Entry{Version: 1, Stream: id, Seq: uint64(len(es) + 1), Happened: at, Event: ev})
		}
		tried := ""
		if i == 1 {
			tried = "more air, ore faster"
		}
		add(entry.Light{UID: id, Furnace: entry.Furnace{Name: "Reed Hollow"}, Lots: []entry.Lot{{Name: "pond", What: entry.Ore, Mix: "pond meadow", Moisture: entry.Some(entry.Share(0))}}, Trying: tried})
		at = at.Add(90 * time.Minute)
		add(entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: kg(6)}}})
		add(entry.Blast{Volume: entry.Some(entry.LitrePerMinute(700 + 12*i*i))})
		pace := time.Duration(13-i) * time.Minute
		for c := range 20 {
			at = at.Add(pace)
			if i == 0 && c == 14 {
				at = at.Add(9 * time.Minute)
			}
			parts := entry.Parts{{What: entry.Charcoal, Mass: kg(1.9)}}
			if c > 3 && c < 19 {
				parts = append(parts, entry.Part{What: entry.Ore, Lot: "pond", Mass: kg([]float64{0.5, 1, 1.5, 2}[min((c-4)*(i+1)/4, 3)])})
			}
			add(entry.Charge{Parts: parts})
		}
		at = at.Add(pace)
		add(entry.BurnDown{})
		at = at.Add(31 * time.Minute)
		add(entry.Extract{From: "top"})
		add(entry.Weigh{What: entry.WeighBloom, Mass: entry.Kilogram(5 - 0.4*float64(i))})
		book[id] = es
		sh.Shelf.Lines = append([]modelshelf.Summary{modelshelf.Of(id, es)}, sh.Shelf.Lines...)
	}
	return book, sh
}

// opened is the comparison of the newest smelts, read.
func opened(t testing.TB, n, chosen int, w, h int, th theme.Theme) (screen.Screen, *screen.Shared) {
	t.Helper()
	book, sh := own(n)
	sh.W, sh.H, sh.Theme = w, h, th
	var ids screen.Compares
	for _, l := range sh.Shelf.Lines[:chosen] {
		ids = append(ids, l.ID)
	}
	s, e := compare.New(book).Entered(sh, ids)
	run, ok := screen.First[screen.Run](e)
	if !ok {
		t.Fatal("nothing is read")
	}
	next, _, taken := s.(screen.Receiver).Receive(sh, run.Cmd())
	if !taken {
		t.Fatal("what was read is not taken")
	}
	return next, sh
}

func painted(s screen.Screen, sh *screen.Shared) string {
	g := sh.Theme.Grid(sh.W, sh.H)
	s.Paint(g, sh)
	return g.String()
}

// What a golden holds was looked at as a picture before it was kept.
func TestPictures(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for name, th := range map[string]theme.Theme{"mono": {}, "ascii": {ASCII: true}} {
			for _, c := range [][2]int{{6, 4}, {3, 2}} {
				t.Run(fmt.Sprintf("%s_%dof%d_%dx%d", name, c[1], c[0], size[0], size[1]), func(t *testing.T) {
					s, sh := opened(t, c[0], c[1], size[0], size[1], th)
					golden.RequireEqual(t, painted(s, sh))
				})
			}
		}
	}
}

// The arrows choose a smelt, enter opens it in the past.
func TestEnterOpensTheChosen(t *testing.T) {
	s, sh := opened(t, 6, 3, 120, 36, theme.Theme{})
	s, _ = s.Update(sh, screen.Pressed{Key: tea.KeyMsg{Type: tea.KeyDown}})
	_, e := s.Update(sh, screen.Pressed{Key: tea.KeyMsg{Type: tea.KeyEnter}})
	if o, ok := screen.First[screen.Open](e); !ok || o.Smelt != sh.Shelf.Lines[1].ID || o.On != screen.Replay {
		t.Errorf("%+v", e)
	}
}

// A frame of four compared.
func BenchmarkFrameOfFour(b *testing.B) {
	s, sh := opened(b, 6, 4, 200, 60, theme.Theme{Profile: theme.Fixed256})
	for b.Loop() {
		g := sh.Theme.Grid(sh.W, sh.H)
		s.Paint(g, sh)
		_ = g.String()
	}
}

// The four read anew, as when the screen is entered.
func BenchmarkFourRead(b *testing.B) {
	book, sh := own(6)
	var ids screen.Compares
	for _, l := range sh.Shelf.Lines[:4] {
		ids = append(ids, l.ID)
	}
	for b.Loop() {
		_, e := compare.New(book).Entered(sh, ids)
		run, _ := screen.First[screen.Run](e)
		run.Cmd()
	}
}
