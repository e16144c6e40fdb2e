package paint

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Decision paints Fire with the decision card in the place of the figures and
// the log, in a small window of the timer too: extract, wait or give up, and
// what the figures say for each. It decides nothing and sets none of them above
// the others.
func Decision(g cell.Grid, th theme.Theme, r figure.Reading, v FireView) {
	w, h := g.Size()
	if w < MinW || h < MinH {
		TooSmall(g, th)
		return
	}
	p, l := with(th), LayoutOf(w, h)
	p.top(g.Sub(l.Top), p.topOf(r, v, w >= 100))
	p.shaft(g.Sub(l.Shaft), picture.From(r), v.Chemistry)
	card := cell.Rect{X: l.Timer.X, Y: l.Timer.Y, W: w - l.Timer.X, H: l.Foot.Y - l.Timer.Y}
	if head := l.head(); card.H-head.H >= decisionRows {
		p.head(g, l, r, v)
		_, card = card.CutTop(head.H)
		p.line(g.Sub(card))
		_, card = card.CutTop(1)
	}
	if l.Lined {
		g.Fill(cell.Rect{X: l.Timer.X, Y: l.Timer.Y, W: 1, H: l.Foot.Y - l.Timer.Y}, p.m.VLine, p.style(theme.Frame))
	}
	p.decision(g.Sub(cell.Rect{X: card.X + 2, Y: card.Y, W: card.W - 3, H: card.H}), r, v)
}

// decisionRows is how much room the card wants before the timer may stand too.
const decisionRows = 18

// way is one of the things that can be done, and what speaks for it.
type way struct {
	key, name string
	reasons   []string
}

// says is one reason, and which way it speaks for.
type says struct {
	reason string
	way    int
}

// Places of the ways.
const (
	toExtract = iota
	toWait
	toGiveUp
)

// ways weighs nothing: it puts each figure where it speaks.
func (p painter) ways(r figure.Reading, v FireView) [3]way {
	ws := [3]way{
		{key: v.Decide.Extract, name: words.DecideExtract}, {key: v.Decide.Wait, name: words.DecideWait}, {key: v.Decide.GiveUp, name: words.DecideGiveUp},
	}
	reasons := []says{byTime(r), p.byStack(r)}
	reasons = append(reasons, p.byOre(r)...)
	reasons = append(reasons, byFlame(v))
	if r.BlastOff && r.Phase != entry.BurnsDown {
		reasons = append(reasons, says{words.BlastOffFor(r.At - r.BlastAt), toGiveUp})
	}
	for _, w := range v.Warnings {
		if w.Grade == rule.Note || w.Rule == rule.BlastLost && r.BlastOff {
			continue
		}
		title, evidence, _ := p.u.Warning(w)
		reasons = append(reasons, says{words.Warned(title, evidence), toGiveUp})
	}
	for _, s := range reasons {
		ws[s.way].reasons = append(ws[s.way].reasons, s.reason)
	}
	return ws
}

func byTime(r figure.Reading) says {
	if r.Phase != entry.BurnsDown {
		return says{words.NotBurningDown, toWait}
	}
	lasted := r.At - r.Since
	reason := words.BurnDownFor(lasted, figure.BurnDownLeast, figure.BurnDownMost)
	if lasted.Minutes() < figure.BurnDownLeast {
		return says{reason, toWait}
	}
	return says{reason, toExtract}
}

func (p painter) byStack(r figure.Reading) says {
	f := r.Figure(figure.StackHeight)
	if !f.Known() {
		return says{words.StackUnseen, toWait}
	}
	reason := p.u.BurdenAt(f.P50, words.Basis(f.Basis))
	if f.P50 > figure.DownTo {
		return says{reason, toWait}
	}
	return says{reason, toExtract}
}

// byOre is where the last ore is, how long ago it went in, and whether there
// is enough of it for a bloom.
func (p painter) byOre(r figure.Reading) []says {
	at, charge, in := r.LastOreIn()
	if !in {
		return []says{{words.NoOreForBloom, toGiveUp}}
	}
	ago := words.LastOreAgo(r.At - at)
	var said []says
	standing := false
	for _, l := range r.Layers {
		if l.Charge == charge && l.Bottom > figure.DownTo {
			standing = true
			said = append(said, says{p.u.OreStands(charge, l.Bottom) + ", " + ago, toWait})
		}
	}
	switch {
	case standing:
	case r.Layers != nil:
		said = append(said, says{words.OreAllThrough + ", " + ago, toExtract})
	default:
		said = append(said, says{ago, toWait})
	}
	if f := r.Figure(figure.OreCharged); f.Known() {
		if ore := entry.Kilogram(f.P50); ore < figure.LeastOre {
			return append(said, says{p.u.OreFew(ore, figure.LeastOre), toGiveUp})
		}
		said = append(said, says{p.u.OreEnough(entry.Kilogram(f.P50), figure.LeastOre), toExtract})
	}
	return said
}

// byFlame is what the flame over the top says: pale while ore uses the gas,
// bright and yellow again when it is used up (Wealden Iron Research Group).
func byFlame(v FireView) says {
	if v.Flame == nil {
		return says{words.FlameUnseen, toWait}
	}
	switch v.Flame.Sees {
	case entry.FlameYellow:
		return says{words.FlameUsedUp, toExtract}
	case entry.FlamePale:
		return says{words.FlameWorks, toWait}
	case entry.FlameNone:
		return says{words.FlameGone, toExtract}
	}
	return says{words.CardFlame + " " + v.Flame.Sees, toWait}
}

// decision paints the three ways: side by side where they have the room, else
// one below the other. Each has the same room.
func (p painter) decision(g cell.Grid, r figure.Reading, v FireView) {
	w, h := g.Size()
	if h < 3 {
		return
	}
	body := g.Bounds()
	if h >= 10 {
		g.TextIn(cell.Rect{W: w, H: 1}, words.DecideHead, p.style(theme.Strong))
		if x := g.Width(words.DecideHead) + 2; x+g.Width(words.DecideNote) <= w {
			g.Text(x, 0, words.DecideNote, p.style(theme.Quiet))
		}
		_, body = body.CutTop(2)
	}
	three := p.ways(r, v)
	for i, one := range three {
		var part cell.Rect
		left := len(three) - i
		if w >= 100 {
			part, body = body.CutLeft((body.W + left - 1) / left)
			part.W -= 2
		} else {
			part, body = body.CutTop((body.H + left - 1) / left)
		}
		p.way(g.Sub(part), one)
	}
}

func (p painter) way(g cell.Grid, one way) {
	w, h := g.Size()
	x := 0
	if one.key != "" {
		p.keyBox(g, 0, 0, one.key)
		x = g.Width(one.key) + 3
	}
	x += g.Text(x, 0, one.name, p.style(theme.Strong)) + 1
	if x < w {
		p.line(g.Sub(cell.Rect{X: x, W: w - x, H: 1}))
	}
	y := 1
	if len(one.reasons) == 0 {
		g.TextIn(cell.Rect{X: 2, Y: 1, W: w - 2, H: 1}, words.DecideNothing, p.style(theme.Quiet))
	}
	for i, reason := range one.reasons {
		if y >= h {
			return
		}
		spare := h - y - (len(one.reasons) - i - 1) // rows that the others can do without
		g.Text(0, y, p.m.Dot, p.style(theme.Quiet))
		y += g.Wrap(cell.Rect{X: 2, Y: y, W: w - 2, H: max(min(spare, h-y), 1)}, reason, p.style(theme.Text))
	}
}
