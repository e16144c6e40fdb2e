package why_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/ahead"
	"chargehand/model/entry"
	"chargehand/model/rehearse"
	"chargehand/model/session"
	model "chargehand/model/why"
	"chargehand/physics"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/why"
	"chargehand/tui/words"
)

// at is the screen of a smelt, as it looks before anything is told.
func at(es []entry.Entry) *screen.Shared {
	return &screen.Shared{W: 120, H: 36, Theme: theme.Theme{}, Smelt: session.Open(es[0].Stream, es), Now: rehearse.Moment(rehearse.SecondsOf(es[len(es)-1]))}
}

// told is the screen after so many furnaces were asked.
func told(t *testing.T, sh *screen.Shared, furnaces int) screen.Screen {
	t.Helper()
	var s screen.Screen
	s, e := why.New().Entered(sh, nil)
	for range furnaces + 1 {
		run, ok := screen.First[screen.Run](e)
		if !ok {
			t.Fatal("nothing is asked")
		}
		s, e, _ = s.(screen.Receiver).Receive(sh, run.Cmd())
	}
	return s
}

func shown(s screen.Screen, sh *screen.Shared, w, h int) string {
	sh.W, sh.H = w, h
	g := sh.Theme.Grid(w, h)
	s.Paint(g, sh)
	return g.String()
}

// worked is a rehearsal that the crew worked alone.
func worked(t *testing.T) []entry.Entry {
	t.Helper()
	d, err := rehearse.Run(11, []rehearse.Mishap{"blower-dying"}, rehearse.Options{By: rehearse.Zones})
	if err != nil {
		t.Fatal(err)
	}
	return d.Entries
}

// invented is an opinion as it could be, of a smelt that went cold.
func invented() (model.Opinion, []rehearse.Truly) {
	band := func(p10, p50, p90 float64) physics.Band { return physics.Band{P10: p10, P50: p50, P90: p90} }
	one := func(n model.Name, cold, left, shift physics.Band, better, worse int) model.Outcome {
		return model.Outcome{Choice: model.Choice{Name: n, Off: 22 * time.Minute}, ColdChange: cold, LeftMore: left, Shift: shift, Better: better, Worse: worse}
	}
	no := physics.Band{}
	was := model.Outcome{Choice: model.Choice{Name: model.AsWas}, Cold: band(0.4, 1.3, 2.2), Left: band(5, 12, 21)}
	return model.Opinion{Asked: ahead.Furnaces, Outcomes: []model.Outcome{
			was, one(model.MoreBlast, band(-1.6, -1.1, -0.2), band(-9, -4, 1), band(12, 24, 31), 9, 0), one(model.LessBlast, band(0.3, 0.9, 1.5), band(2, 6, 11), band(-40, -28, -14), 0, 10),
			one(model.LessOre, band(-0.5, -0.3, 0), band(-4, -2, 0), band(2, 5, 9), 7, 0), one(model.EvenOre, no, no, no, 0, 0),
			one(model.NeverOff, band(-0.9, -0.6, -0.3), band(-2, -1, 0), band(5, 9, 14), 10, 0),
		}}, []rehearse.Truly{
			{Name: model.AsWas, Cold: 1.9, Left: 8, Bloom: 1.5}, {Name: model.MoreBlast, Cold: 2.2, Left: 7, Bloom: 1.4}, {Name: model.LessBlast, Cold: 2.4, Left: 31, Lost: true},
			{Name: model.LessOre, Cold: 1.8, Left: 7}, {Mishap: "blower-dying", Cold: 0.2, Left: 2, Bloom: 3.25},
		}
}

// What a golden holds was looked at as a picture before it was kept; the figures in it are invented.
func TestGoldenScreen(t *testing.T) {
	sh := at(worked(t))
	opinion, truly := invented()
	s := why.Invented(told(t, sh, 0).(why.Screen), opinion, truly)
	for _, size := range [][2]int{desk.Small, desk.Usual, desk.Large} {
		t.Run(fmt.Sprintf("why_%dx%d", size[0], size[1]), func(t *testing.T) {
			golden.RequireEqual(t, []byte(shown(s, sh, size[0], size[1])))
		})
	}
}

// Of a rehearsal whose seal is open the model's opinion stands beside what is true, and what only the furnace knows is marked as
// not the model's; before it is open nothing of the truth is there.
func TestBesideTheTruthOnceItIsOpened(t *testing.T) {
	es := worked(t)
	sh := at(es)
	s := told(t, sh, 1)
	was, small := shown(s, sh, 80, 24), sh
	small.W, small.H = 80, 24
	down, _ := s.Update(small, screen.Pressed{Key: tea.KeyMsg{Type: tea.KeyDown}})
	if shown(down, sh, 80, 24) == was {
		t.Errorf("what does not fit is not scrolled to:\n%s", was)
	}
	if by, _ := s.Update(sh, screen.Pressed{Key: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'n'}}}); !strings.Contains(shown(by, sh, 80, 24), words.WhyByLeft) {
		t.Errorf("ranked otherwise:\n%s", shown(by, sh, 80, 24))
	}
	for _, want := range []string{"without: blower dying", words.WhyNotModel, words.WhyInTruth, words.WhyAsked(1, ahead.Furnaces)} {
		if text := shown(s, sh, 200, 60); !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	sealed := es[:len(es)-1]
	sh = at(sealed)
	if text := shown(told(t, sh, 1), sh, 200, 60); strings.Contains(text, "truth") || strings.Contains(text, "blower") {
		t.Errorf("sealed, and told:\n%s", text)
	}
}

// While it burns it is not asked; what comes back of another smelt is not taken for this one's.
func TestOnlyOfASmeltThatIsOver(t *testing.T) {
	es := worked(t)
	burning := at(es[:len(es)/2])
	s, e := why.New().Entered(burning, nil)
	if e != nil || s.Listed(burning) != "" || !strings.Contains(shown(s, burning, 120, 36), "q at the fire") {
		t.Errorf("asked while it burns:\n%s", shown(s, burning, 120, 36))
	}
	over := at(es)
	over.Now.Mono += time.Minute
	s, e = why.New().Entered(over, nil)
	run, _ := screen.First[screen.Run](e)
	other := at(append([]entry.Entry(nil), es...))
	other.Smelt = session.Open("another", es)
	if s, e, taken := s.(screen.Receiver).Receive(other, run.Cmd()); !taken || e != nil || strings.Contains(shown(s, over, 120, 36), "more blast") {
		t.Error("the answer of another smelt is taken")
	}
	if _, e := s.(screen.Enterer).Entered(over, nil); e != nil {
		t.Error("asked twice")
	}
}

// Without ore there is nothing to ask, and no share of it is told.
func TestWithoutOreThereIsNoWhy(t *testing.T) {
	es := worked(t)
	for i, e := range es {
		if c, ok := e.Event.(entry.Charge); ok {
			c.Parts = slices.DeleteFunc(slices.Clone(c.Parts), func(p entry.Part) bool { return p.What == entry.Ore })
			es[i].Event = c
		}
	}
	sh := at(es)
	s := told(t, sh, 0)
	if got := shown(s, sh, 120, 36); !strings.Contains(got, "No ore was in it") || strings.Contains(got, "%") {
		t.Errorf("shows:\n%s", got)
	}
	if more := s.(why.Screen).Asks(); more {
		t.Error("furnaces are asked all the same")
	}
}
