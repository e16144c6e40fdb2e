package tui

import (
	"strconv"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
	"chargehand/tui/theme"
)

// shelf is the list of the smelts, newest first, then an invented one to look
// at. Practice is set aside: the last line leads to it, and back from it.
type shelf struct {
	at    int
	aside bool // shows the practice
}

// shelfKeys are the keys of the shelf.
type shelfKeys struct {
	moveKeys
	Open, Replay key.Binding
}

var shelfMap = shelfKeys{moveKeys: move, Open: bind(words.DoOpen, "enter"), Replay: bind(words.DoReplayIt, "r")}

func (k shelfKeys) all() []key.Binding {
	return append([]key.Binding{k.Open, k.Replay}, k.moveKeys.all()...)
}

func (shelf) name() screenID { return shelfScreen }
func (shelf) keys() keymap   { return shelfMap }

func (shelf) hints(shared) []paint.KeyHint {
	return hints(shelfMap.Open, shelfMap.Replay, shelfMap.Up, shelfMap.Down, global.Views, global.Back)
}

// lines of the shelf. The one without a smelt turns to the other list.
func (s shelf) lines(sh shared) []SmeltLine {
	var shown, aside []SmeltLine
	for _, l := range sh.shelf {
		switch {
		case l.ID == sh.running.ID():
			shown = append(shown, lineOf(sh.running))
		case l.Practice:
			aside = append(aside, l)
		default:
			shown = append(shown, l)
		}
	}
	if s.aside {
		return append(aside, SmeltLine{})
	}
	if sh.demo != nil {
		shown = append(shown, *sh.demo)
	}
	if len(aside) > 0 {
		shown = append(shown, SmeltLine{})
	}
	return shown
}

// turns says what the line without a smelt leads to.
func (s shelf) turns() string {
	if s.aside {
		return words.ShelfBack
	}
	return words.ShelfPractice
}

func (s shelf) update(sh shared, p Pressed) (screen, step) {
	t := typedOf(p.Key)
	ls := s.lines(sh)
	at := min(s.at, max(len(ls)-1, 0))
	if to, ok := shelfMap.moved(t, at, len(ls), max(1, shelfRows(sh.h)-1)); ok {
		s.at = max(to, 0)
		return s, step{}
	}
	switch {
	case !key.Matches(t, shelfMap.Open, shelfMap.Replay):
		return s, refused(words.NoAct(keyLabel(string(t))))
	case len(ls) == 0:
		return s, refused(words.ShelfBare)
	}
	l := ls[at]
	if l.ID == "" {
		return shelf{aside: !s.aside}, step{}
	}
	open := func(shared) step { return step{open: l.ID, replays: key.Matches(t, shelfMap.Replay)} }
	if l.unfinished() && l.ID != sh.running.ID() {
		return s, leavingRunning(sh, open)
	}
	return s, open(sh)
}

func shelfRows(h int) int { return max(1, h-paint.TopRows-paint.FootRows-1) }

func (s shelf) paint(g cell.Grid, sh shared) {
	th := sh.theme
	ls := s.lines(sh)
	top(g, sh, words.DoShelf, s.holds(ls))
	body := bodyOf(g)
	if len(ls) == 0 {
		g.Wrap(cell.Rect{X: 2, Y: body.Y + 1, W: body.W - 4, H: 2}, words.ShelfBare, th.Style(theme.Text))
		return
	}
	columns := shelfColumns(body.W, th.Units)
	head, list := body.CutTop(1)
	for _, c := range columns {
		c.write(g.Sub(head), c.head, th.Style(theme.Quiet))
	}
	at := min(s.at, len(ls)-1)
	first := firstShown(at, len(ls), list.H)
	for y := 0; y < list.H && first+y < len(ls); y++ {
		row := g.Sub(cell.Rect{X: 0, Y: list.Y + y, W: list.W, H: 1})
		style := th.Style(theme.Text)
		if first+y == at {
			style = th.Style(theme.Picked)
			row.Fill(row.Bounds(), ' ', style)
			row.Text(0, 0, th.Marks().Picked, style)
		}
		if ls[first+y].ID == "" {
			row.Text(2, 0, s.turns(), style)
			continue
		}
		for _, c := range columns {
			c.write(row, c.text(ls[first+y]), style)
		}
	}
}

// holds says how many smelts the list has.
func (s shelf) holds(ls []SmeltLine) string {
	n := 0
	for _, l := range ls {
		if l.ID != "" {
			n++
		}
	}
	if s.aside {
		return words.PracticeHolds(n)
	}
	return words.ShelfHolds(n)
}

// lineOf is the line of a smelt as it stands.
func lineOf(s session.Session) SmeltLine {
	r, l := s.Reading(), s.Light()
	return SmeltLine{
		ID: s.ID(), UID: l.UID, Furnace: l.Furnace.Name, Lit: r.Lit, Undated: l.Undated, Phase: s.Phase(), Charges: len(r.Charges),
		Charcoal: known(r.Figure(figure.CharcoalCharged)), Ore: known(r.Figure(figure.OreCharged)),
		Bloom:    entry.Maybe[entry.Kilogram]{Value: entry.Kilogram(r.Bloom.Value), Known: r.Bloom.Known},
		Practice: l.Practice, Imported: l.Imported, Invented: l.Invented,
	}
}

// column is one column of the shelf.
type column struct {
	head  string
	x, w  int
	right bool
	text  func(SmeltLine) string
}

func (c column) write(g cell.Grid, text string, s cell.Style) {
	text = g.Cut(text, c.w)
	if c.right {
		g.TextRight(c.x+c.w, 0, text, s)
		return
	}
	g.Text(c.x, 0, text, s)
}

// shelfColumns are the columns that fit, the ones that matter most first to
// stay: which smelt, what is special about it, what came of it.
func shelfColumns(w int, u words.Units) []column {
	cs := []column{
		{head: words.ShelfSmelt, w: 30, text: func(l SmeltLine) string { return l.ID }},
		{head: words.ShelfMarks, w: 20, text: markOf},
		{head: words.ShelfBloom, w: 10, right: true, text: func(l SmeltLine) string { return kgOrNothing(u, l.Bloom) }},
		{head: words.ShelfPhase, w: 11, text: func(l SmeltLine) string { return words.Phase(l.Phase) }},
		{head: words.ShelfCharges, w: 8, right: true, text: func(l SmeltLine) string { return strconv.Itoa(l.Charges) }},
		{head: words.ShelfOre, w: 9, right: true, text: func(l SmeltLine) string { return kgOrNothing(u, l.Ore) }},
		{head: words.ShelfCharcoal, w: 9, right: true, text: func(l SmeltLine) string { return kgOrNothing(u, l.Charcoal) }},
		{head: words.ShelfFurnace, w: 30, text: func(l SmeltLine) string { return l.Furnace }},
	}
	if w < 60 {
		cs[0].w, cs[1].w = 24, 11
	}
	x := 2
	for i, c := range cs {
		if x+c.w > w-1 {
			return cs[:i]
		}
		cs[i].x = x
		x += c.w + 2
	}
	return cs
}

func kgOrNothing(u words.Units, m entry.Maybe[entry.Kilogram]) string {
	if !m.Known {
		return ""
	}
	return u.Kg(m.Value)
}

// markOf says what is special about a smelt.
func markOf(l SmeltLine) string {
	switch {
	case l.Invented:
		return words.MarkInvented
	case l.Imported && l.Undated:
		return words.MarkUndated
	case l.Imported:
		return words.MarkImported
	case l.unfinished():
		return words.MarkUnfinished
	}
	return ""
}
