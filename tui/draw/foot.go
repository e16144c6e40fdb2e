package draw

import (
	"github.com/charmbracelet/x/ansi"

	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Answer is what the last key did, and how safe it is.
type Answer struct {
	Text  string
	State AnswerState
}

// AnswerState is what became of an answer's entry.
type AnswerState int

// The states of an answer.
const (
	Said    AnswerState = iota // there is nothing to keep
	Working                    // handed over
	IsKept                     // safe
	Unsafe                     // NOT safe
	Refused                    // the key did nothing; the text says why
)

// Ask is a question, or a field being filled in.
type Ask struct {
	Label string
	Value func(width int) string // what is typed, for cell.Grid.Lay; nil where nothing is
	Hint  string
}

// KeyHint is a key and what it does.
type KeyHint struct{ Key, Does string }

// Foot paints the last two rows of a screen: what the last key did, or what is
// being asked, and the keys that make sense now. What there is to say of a key while
// something is asked stands beside the question or, where both have no room, below it
// in place of the keys: neither is cut for the other.
func (p Pen) Foot(g cell.Grid, answer Answer, ask *Ask, keys []KeyHint, help KeyHint) {
	w, _ := g.Size()
	first, second := g.Sub(cell.Rect{W: w, H: 1}), g.Sub(cell.Rect{Y: 1, W: w, H: 1})
	switch {
	case ask == nil:
		p.answer(first, answer)
	case p.ask(first, *ask, answer):
		p.answer(second, answer)
		return
	}
	p.keys(second, keys, help)
}

func (p Pen) answer(g cell.Grid, a Answer) {
	if a.Text == "" {
		return
	}
	w, _ := g.Size()
	tail, style := "", p.Style(theme.Strong)
	switch a.State {
	case IsKept:
		tail = " " + p.M.Dot + " " + modelwords.KeptWord + " " + p.M.Kept
	case Working:
		tail = " " + p.M.Dot + " " + modelwords.Keeping + p.M.Waiting
	case Unsafe:
		tail, style = " "+p.M.Dot+" "+modelwords.NotKept+" ", p.Style(theme.Act)
		g.Fill(g.Bounds(), ' ', style)
		a.Text = p.M.Act + " " + a.Text
	case Refused:
		style = p.Style(theme.Text)
		a.Text = p.M.Refused + " " + a.Text
	}
	text := g.Cut(a.Text, w-2-g.Width(tail))
	x := 1 + g.Text(1, 0, text, style)
	if a.State != Unsafe {
		style = p.Style(theme.Quiet)
	}
	g.Text(x, 0, tail, style)
}

// Columns that a field leaves to its hint, and keeps in any case.
const leastHint, leastValue = 24, 12

// ask paints a question over the whole width, so that nobody overlooks that one
// is open. What there is to say of the last key stands in place of the hint: an
// act keyed into an open list must not be taken for booked. It tells whether that has
// no room beside the question.
func (p Pen) ask(g cell.Grid, a Ask, said Answer) (below bool) {
	band := p.Style(theme.Picked)
	g.Fill(g.Bounds(), ' ', band)
	w, _ := g.Size()
	hint, label := a.Hint, a.Label
	switch {
	case said.State == Refused:
		hint = p.M.Refused + " " + said.Text
	case said.State == Said && said.Text != "":
		hint = said.Text
	}
	value := max(w-g.Width(p.M.Ask+"  "+label)-1-leastHint, leastValue)
	if hint != a.Hint {
		need := g.Width(p.M.Ask+"  "+label+hint) + 5
		if a.Value != nil {
			need += min(ansi.StringWidth(a.Value(w)), leastValue)
		}
		switch below = need > w; {
		case !below:
			value = leastValue
		case a.Hint == said.Text:
			hint = ""
		default:
			hint = a.Hint
		}
	}
	x := 1 + g.Text(1, 0, p.M.Ask+" "+label+" ", band)
	if a.Value != nil {
		value := a.Value(value)
		g.Sub(cell.Rect{X: x, W: w - x - 1, H: 1}).Lay(value, p.Style(theme.Text))
		x += ansi.StringWidth(value)
	}
	if below || hint == a.Hint {
		hint = InParts(g, hint, w-x-3, 1)
	}
	g.TextIn(cell.Rect{X: x + 2, W: w - x - 3, H: 1}, hint, band)
	return below
}

// keys writes as many whole hints as fit, and always the last.
func (p Pen) keys(g cell.Grid, keys []KeyHint, help KeyHint) {
	w, _ := g.Size()
	end := w - 1
	if help.Key != "" {
		end -= g.Width(help.Key + " " + help.Does)
		p.hint(g, end, help)
		end -= 2
	}
	x := 1
	for _, k := range keys {
		if x+g.Width(k.Key+" "+k.Does) > end {
			return
		}
		x += p.hint(g, x, k) + 3
	}
}

func (p Pen) hint(g cell.Grid, x int, k KeyHint) int {
	n := g.Text(x, 0, k.Key, p.Style(theme.Now))
	return n + g.Text(x+n, 0, " "+k.Does, p.Style(theme.Quiet))
}
