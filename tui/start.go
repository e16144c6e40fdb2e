package tui

import (
	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
	"chargehand/tui/theme"
)

// start is the first screen: three plain lines, and before them the smelt that
// was not finished, when there is one.
type start struct {
	at    int
	waits bool // for the shelf, to go on with the smelt that it says was not finished
}

// startKeys are the keys of the start screen; the number of a line chooses it
// too.
type startKeys struct {
	GoOn, Practise, Smelt, Look, Choose, Quit, Up, Down key.Binding
}

var startMap = startKeys{
	GoOn:     bind(words.DoGoOn, "g"),
	Practise: bind(words.DoPractise, "p"),
	Smelt:    bind(words.DoSmelt, "r"),
	Look:     bind(words.DoLookAt, "l"),
	Choose:   bind(words.DoChoose, "enter"),
	Quit:     bind(words.DoQuit, "q"),
	Up:       bind(words.DoUp, "up"),
	Down:     bind(words.DoDown, "down"),
}

func (k startKeys) all() []key.Binding {
	return []key.Binding{k.GoOn, k.Practise, k.Smelt, k.Look, k.Choose, k.Up, k.Down, k.Quit}
}
func (k startKeys) repeating() []key.Binding { return []key.Binding{k.Up, k.Down} }

func (start) name() screenID        { return startScreen }
func (start) keys() keymap          { return startMap }
func (start) entered(shared) screen { return start{} }

// startLine is one line to choose.
type startLine struct {
	key    key.Binding
	detail string
	then   func(shared) step
}

// lines of the start screen, the unfinished smelt first.
func (start) lines(sh shared) []startLine {
	var ls []startLine
	if id, detail := unfinished(sh); id != "" {
		ls = append(ls, startLine{startMap.GoOn, detail, func(shared) step { return step{open: id} }})
	}
	return append(ls,
		startLine{startMap.Practise, words.PractiseIs, func(sh shared) step {
			return leavingRunning(sh, func(sh shared) step { l := practice(sh.usual); return step{light: &l, say: sayLit} })
		}},
		startLine{startMap.Smelt, words.SmeltIs, func(sh shared) step {
			return leavingRunning(sh, func(shared) step { return step{to: lightScreen} })
		}},
		startLine{startMap.Look, words.LookIs, func(shared) step { return step{to: shelfScreen} }})
}

// unfinished is the smelt to go on with: the one at work, else the newest that
// was not finished, a practice last.
func unfinished(sh shared) (id, detail string) {
	if s := sh.running; s.Is() {
		return s.ID(), words.UnfinishedIs(s.ID(), s.Reading().Phase, len(s.Reading().Charges))
	}
	var spare *SmeltLine
	for i, l := range sh.shelf {
		switch {
		case !l.unfinished():
			continue
		case !l.Practice:
			return l.ID, words.UnfinishedIs(l.ID, l.Phase, l.Charges)
		case spare == nil:
			spare = &sh.shelf[i]
		}
	}
	if spare != nil {
		return spare.ID, words.UnfinishedIs(spare.ID, spare.Phase, spare.Charges)
	}
	return "", ""
}

// leavingRunning asks before another smelt takes the place of the one at work.
func leavingRunning(sh shared, then func(shared) step) step {
	if !sh.running.Is() {
		return then(sh)
	}
	return step{ask: question(words.LeaveFor(sh.running.ID()), then)}
}

// practice is the light of a practice smelt, which asks nothing.
func practice(s Starter) entry.Light {
	return entry.Light{Furnace: s.Furnace, Measures: s.Measures, Recipe: s.Recipe, Practice: true}
}

// sayLit says which smelt has begun.
func sayLit(sh shared) string { return words.Lit(sh.smelt.ID()) }

func (s start) update(sh shared, p Pressed) (screen, step) {
	t := typedOf(p.Key)
	ls := s.lines(sh)
	s.waits = false
	if !sh.shelfKnown && !sh.running.Is() { // which line comes first is not known yet
		switch {
		case key.Matches(t, startMap.GoOn):
			return start{at: s.at, waits: true}, said(words.ShelfBeingRead)
		case key.Matches(t, startMap.Choose), digit(t) != "":
			return s, refused(words.ShelfBeingRead)
		}
	}
	if d := digit(t); d != "" && int(d[0]-'1') < len(ls) && d != "0" {
		return s, ls[d[0]-'1'].then(sh)
	}
	switch k := startMap; {
	case key.Matches(t, k.Up):
		return start{at: max(s.at-1, 0)}, step{}
	case key.Matches(t, k.Down):
		return start{at: min(s.at+1, len(ls)-1)}, step{}
	case key.Matches(t, k.Choose):
		return s, ls[min(s.at, len(ls)-1)].then(sh)
	case key.Matches(t, k.Quit):
		return s, leave(sh)
	}
	for _, l := range ls {
		if key.Matches(t, l.key) {
			return s, l.then(sh)
		}
	}
	return s, refused(words.NoAct(keyLabel(string(t))))
}

func (s start) hints(sh shared) []paint.KeyHint {
	var hs []paint.KeyHint
	for _, l := range s.lines(sh) {
		hs = append(hs, hint(l.key))
	}
	return append(hs, hint(startMap.Quit), hint(global.Views))
}

func (s start) paint(g cell.Grid, sh shared) {
	th := sh.theme
	top(g, sh, words.ProgramName, words.ProgramIs)
	body := bodyOf(g)
	ls := s.lines(sh)
	pitch := 3
	if body.H < len(ls)*3 {
		pitch = 2
	}
	y := body.Y + max((body.H-len(ls)*pitch)/3, 0)
	x := max(2, (body.W-60)/2)
	for i, l := range ls {
		style, mark := th.Style(theme.Strong), " "
		if i == min(s.at, len(ls)-1) {
			mark = th.Marks().Picked
		}
		g.Text(x, y, mark, th.Style(theme.Now))
		n := x + 2 + g.Text(x+2, y, l.key.Help().Key, th.Style(theme.Now))
		g.Text(n+2, y, l.key.Help().Desc, style)
		g.TextIn(cell.Rect{X: n + 2, Y: y + 1, W: body.W - n - 3, H: 1}, l.detail, th.Style(theme.Quiet))
		y += pitch
	}
}

// bodyOf is what a screen has between its top line and its foot.
func bodyOf(g cell.Grid) cell.Rect {
	_, rest := g.Bounds().CutTop(paint.TopRows)
	_, rest = rest.CutBottom(paint.FootRows)
	return rest
}

// topOf is what the top line of a screen other than Fire says.
func topOf(sh shared, title, phase string) paint.TopView {
	return paint.TopView{
		Title: title, Phase: phase, Clock: sh.now.Wall.Format(words.Clock), By: sh.by,
		Kept: sh.tally.kept, Keeping: sh.tally.keeping, NotKept: sh.tally.notKept, Trouble: sh.tally.trouble,
	}
}

// top paints that line.
func top(g cell.Grid, sh shared, title, phase string) {
	rows, _ := g.Bounds().CutTop(paint.TopRows)
	paint.TopLine(g.Sub(rows), sh.theme, topOf(sh, title, phase))
}
