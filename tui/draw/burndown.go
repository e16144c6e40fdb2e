package draw

import (
	"math"
	"time"

	"chargehand/model/figure"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/letter"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// BurnDownRows is how tall the card is when all of it stands.
const BurnDownRows = 12

// besideLeast is how many columns the facts need beside the digits.
const besideLeast = 18

// Ending is what the end of a burn-down is judged by besides the reading.
type Ending struct {
	Flame  *Sight // the last look at the flame; nil when nobody has looked
	Ready  []bool // which of words.ReadyChecks are ticked off; nil where nobody ticks
	Closer string // who closes the smelt, "" while nobody is named
}

// Sight is what was seen, and when on the smelt's clock.
type Sight struct {
	Sees string
	At   time.Duration
}

// fact is a name and what is known of it.
type fact struct {
	name, says string
	known      bool
	brief      string // where that has no room, "" for the same
}

// downFacts are what the end of a burn-down is judged by, the weightiest first.
func (p Pen) downFacts(r *figure.Reading, e Ending) []fact {
	ore := fact{words.CardLastOre, words.CardNoOre, false, ""}
	if at, _, in := r.LastOreIn(); in {
		ore = fact{words.CardLastOre, words.AgoMin(r.At - at), true, modelwords.Lasted(r.At - at)}
	}
	stack := fact{words.CardStack, words.CardUnknown, false, words.CardUnknownBrief}
	if f := r.Figure(figure.StackHeight); f.Known() && !r.StackLost() {
		stack = fact{words.CardStack, modelwords.Apart(f, modelwords.AboveTuyere(p.InUnit(f, 0, figure.StackHeight))), true, p.InUnit(f, 0, figure.StackHeight)}
	}
	flame := fact{words.CardFlame, words.CardNoFlame, false, words.CardNoFlameBrief}
	if e.Flame != nil {
		flame = fact{words.CardFlame, words.SeenAt(e.Flame.Sees, r.Wall(e.Flame.At)), true, ""}
	}
	closes := fact{words.CardCloses, words.CardNobody, false, words.CardNobodyBrief}
	if e.Closer != "" {
		closes = fact{words.CardCloses, e.Closer, true, ""}
	}
	return []fact{ore, stack, flame, closes}
}

// BurnDown paints how long it has been burning down in digits, the usual beside
// them as a bar, what the end is judged by, and what must be ready for it.
func (p Pen) BurnDown(g cell.Grid, r *figure.Reading, e Ending) {
	w, h := g.Size()
	if w < 20 || h < 2 {
		return
	}
	t := TimedBy(r, nil)
	x := 2
	if r.Paused {
		x += g.Text(x, 0, modelwords.WorkPaused+", ", p.Style(theme.Look))
	}
	label := t.Label
	number, small := wholeMinutes(t)
	d, large := downDigits(w, h)
	if large && small == modelwords.MinutesShort {
		label, small = label+", "+small, ""
	}
	g.Text(x, 0, g.Cut(label, w-x), p.Style(theme.Quiet))
	below, beside := 1+DigitRows(1), DigitColumns(1)+4
	if large {
		below, beside = 1+(d.H+1)/2, 2+d.Width("88")+2
		d.Draw(g, 2, 1, number, p.Style(theme.Now), p.Theme.ASCII)
		g.Text(3+d.Width(number), below-1, small, p.Style(theme.Now))
	} else {
		p.Big(g, 2, 1, t.Digits, 1, p.Style(theme.Now))
	}
	facts, checks := p.downFacts(r, e), len(words.ReadyChecks)
	y := below
	if w-beside-1 < besideLeast {
		y += p.usual(g.Sub(cell.Rect{X: 2, Y: below, W: w - 3, H: 1}), t.Lasted)
	} else {
		y = 1 + p.usual(g.Sub(cell.Rect{X: beside, Y: 1, W: w - beside - 1, H: min(h, below) - 1}), t.Lasted)
		for len(facts) > 0 && y < below {
			p.fact(g.Sub(cell.Rect{X: beside, Y: y, W: w - beside - 1, H: 1}), facts[0])
			facts, y = facts[1:], y+1
		}
		if len(facts) == 0 && h-below < checks && h-y >= checks { // under the digits there is no room for them
			if h-y > checks {
				y++
			}
			p.Ready(g.Sub(cell.Rect{X: beside, Y: y, W: w - beside - 1, H: h - y}), e.Ready)
			return
		}
		y = below
	}
	if len(facts)+1+checks < h-y {
		y++
	}
	y = p.facts(g, y, facts)
	p.Ready(g.Sub(cell.Rect{X: 2, Y: y, W: w - 3, H: h - y}), e.Ready)
}

// downDigits are the digits of the minutes, as large as leaves the facts their place
// beside them; false where there is only room for the smallest.
func downDigits(w, h int) (letter.Digits, bool) {
	switch {
	case w >= 90 && h >= 17:
		return letter.Digits{W: 20, H: 30}, true
	case w >= 66 && h >= 12:
		return letter.Digits{W: 11, H: 18}, true
	case w >= 40 && h >= 12:
		return letter.Digits{W: 7, H: 12}, true
	}
	return letter.Digits{}, false
}

// Facts writes what the end is judged by from the top of g and returns the rows it
// took.
func (p Pen) Facts(g cell.Grid, r *figure.Reading, e Ending) int {
	return p.facts(g, 0, p.downFacts(r, e))
}

// facts writes one in a row, or two where they fit, and returns the next free
// row.
func (p Pen) facts(g cell.Grid, y int, facts []fact) int {
	w, _ := g.Size()
	across := 1
	if w >= 72 {
		across = 2
	}
	for i, f := range facts {
		p.fact(g.Sub(cell.Rect{X: 2 + i%across*(w/across), Y: y + i/across, W: w/across - 3, H: 1}), f)
	}
	return y + (len(facts)+across-1)/across
}

// usual writes the usual length and, where there is room, how the time stands
// to it, in words or drawn; it returns the rows it took.
func (p Pen) usual(g cell.Grid, lasted time.Duration) int {
	w, h := g.Size()
	text := words.UsualBurnDown(figure.BurnDownLeast, figure.BurnDownMost)
	stands := words.BurnDownStands(lasted, figure.BurnDownLeast, figure.BurnDownMost)
	x := g.Text(0, 0, g.Cut(text, w), p.Style(theme.Text)) + 2
	if x+g.Width(stands) <= w {
		g.Text(x, 0, stands, p.Style(theme.Strong))
	}
	if h < 3 {
		return 1
	}
	p.bar(g.Sub(cell.Rect{Y: 1, W: w, H: 1}), 0, min(w, 46), bar{
		to: 1.4 * figure.BurnDownMost, good: true, from: figure.BurnDownLeast, until: figure.BurnDownMost, at: math.Floor(lasted.Minutes()),
	})
	return 2
}

func (p Pen) fact(g cell.Grid, f fact) {
	w, _ := g.Size()
	x := g.Text(0, 0, f.name, p.Style(theme.Quiet)) + 1
	if w >= 30 {
		x = max(x, 12)
	}
	style := p.Style(theme.Strong)
	if !f.known {
		style = p.Style(theme.Text)
	}
	g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, fitting(g, w-x, f.says, firstOf(f.brief, f.says)), style)
}

// Ready lists the tools and people that must be ready: one a row when there is
// room, else running on.
func (p Pen) Ready(g cell.Grid, ticked []bool) {
	w, h := g.Size()
	if h < 1 {
		return
	}
	from := 7
	if w < 41 { // the boxes say what they are
		from = 0
	} else {
		g.Text(0, 0, words.CardReady, p.Style(theme.Quiet))
	}
	x, y := from, 0
	for i, check := range words.ReadyChecks {
		style, mark := p.Style(theme.Text), p.M.Dot
		if ticked != nil {
			mark = p.M.Open
			if i < len(ticked) && ticked[i] {
				style, mark = p.Style(theme.Quiet), p.M.Ticked
			}
		}
		wide := g.Width(mark + " " + check)
		if x > from && (h >= len(words.ReadyChecks) || x+wide > w) {
			x, y = from, y+1
		}
		if y >= h {
			return
		}
		g.TextIn(cell.Rect{X: x, Y: y, W: w - x, H: 1}, mark+" "+check, style)
		x += wide + 2
	}
}
