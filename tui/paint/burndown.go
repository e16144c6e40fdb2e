package paint

import (
	"math"
	"time"

	"chargehand/model/figure"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// burnDownRows is how tall the card is when all of it stands.
const burnDownRows = 12

// besideLeast is how many columns the facts need beside the digits.
const besideLeast = 18

// BurnDown paints the burn-down card on all of g.
func BurnDown(g cell.Grid, th theme.Theme, r figure.Reading, v FireView) {
	with(th).burnDown(g, r, v)
}

// fact is a name and what is known of it.
type fact struct {
	name, says string
	known      bool
}

// downFacts are what the end of a burn-down is judged by, the weightiest first.
func (p painter) downFacts(r figure.Reading, v FireView) []fact {
	ore := fact{words.CardLastOre, words.CardNoOre, false}
	if at, _, in := r.LastOreIn(); in {
		ore = fact{words.CardLastOre, words.AgoMin(r.At - at), true}
	}
	stack := fact{words.CardStack, words.CardUnknown, false}
	if f := r.Figure(figure.StackHeight); f.Known() {
		stack = fact{words.CardStack, words.AboveTuyere(p.inUnit(f, 0, figure.StackHeight)), true}
	}
	flame := fact{words.CardFlame, words.CardNoFlame, false}
	if v.Flame != nil {
		flame = fact{words.CardFlame, words.SeenAt(v.Flame.Sees, r.Wall(v.Flame.At)), true}
	}
	closes := fact{words.CardCloses, words.CardNobody, false}
	if v.Closer != "" {
		closes = fact{words.CardCloses, v.Closer, true}
	}
	return []fact{ore, stack, flame, closes}
}

// burnDown paints how long it has been burning down in digits, the usual beside
// them as a bar, what the end is judged by, and what must be ready for it.
func (p painter) burnDown(g cell.Grid, r figure.Reading, v FireView) {
	w, h := g.Size()
	if w < 20 || h < 2 {
		return
	}
	t := timedBy(r, nil)
	x := 2
	if r.Paused {
		x += g.Text(x, 0, words.WorkPaused+", ", p.style(theme.Look))
	}
	g.Text(x, 0, g.Cut(t.label, w-x), p.style(theme.Quiet))
	scale := 1
	for n := 5; n > 1; n-- {
		if digitColumns(n) <= w-36 && digitRows(n) <= h/2 {
			scale = n
			break
		}
	}
	p.big(g, 2, 1, t.digits, scale, p.style(theme.Now))
	below, beside := 1+digitRows(scale), digitColumns(scale)+4
	facts := p.downFacts(r, v)
	y := below
	if w-beside-1 < besideLeast {
		y += p.usual(g.Sub(cell.Rect{X: 2, Y: below, W: w - 3, H: 1}), t.lasted)
	} else {
		y = 1 + p.usual(g.Sub(cell.Rect{X: beside, Y: 1, W: w - beside - 1, H: min(h, below) - 1}), t.lasted)
		for len(facts) > 0 && y < below {
			p.fact(g.Sub(cell.Rect{X: beside, Y: y, W: w - beside - 1, H: 1}), facts[0])
			facts, y = facts[1:], y+1
		}
		y = below
	}
	if len(facts)+1+len(words.ReadyChecks) < h-y {
		y++
	}
	y = p.facts(g, y, facts)
	p.ready(g.Sub(cell.Rect{X: 2, Y: y, W: w - 3, H: h - y}), v.Ready)
}

// facts writes one in a row, or two where they fit, and returns the next free
// row.
func (p painter) facts(g cell.Grid, y int, facts []fact) int {
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
func (p painter) usual(g cell.Grid, lasted time.Duration) int {
	w, h := g.Size()
	text := words.UsualBurnDown(figure.BurnDownLeast, figure.BurnDownMost)
	stands := words.BurnDownStands(lasted, figure.BurnDownLeast, figure.BurnDownMost)
	x := g.Text(0, 0, g.Cut(text, w), p.style(theme.Text)) + 2
	if x+g.Width(stands) <= w {
		g.Text(x, 0, stands, p.style(theme.Strong))
	}
	if h < 3 {
		return 1
	}
	p.bar(g.Sub(cell.Rect{Y: 1, W: w, H: 1}), 0, min(w, 46), bar{
		to: 1.4 * figure.BurnDownMost, good: true, from: figure.BurnDownLeast, until: figure.BurnDownMost, at: math.Floor(lasted.Minutes()),
	})
	return 2
}

func (p painter) fact(g cell.Grid, f fact) {
	w, _ := g.Size()
	x := g.Text(0, 0, f.name, p.style(theme.Quiet)) + 1
	if w >= 30 {
		x = max(x, 12)
	}
	style := p.style(theme.Strong)
	if !f.known {
		style = p.style(theme.Text)
	}
	g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, f.says, style)
}

// ready lists the tools and people that must be ready: one a row when there is
// room, else running on.
func (p painter) ready(g cell.Grid, ticked []bool) {
	w, h := g.Size()
	if h < 1 {
		return
	}
	g.Text(0, 0, words.CardReady, p.style(theme.Quiet))
	const from = 7
	x, y := from, 0
	for i, check := range words.ReadyChecks {
		style, mark := p.style(theme.Text), p.m.Dot
		if ticked != nil {
			mark = p.m.Open
			if i < len(ticked) && ticked[i] {
				style, mark = p.style(theme.Quiet), p.m.Ticked
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
