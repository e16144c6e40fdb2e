package fire

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// paintDecision paints Fire with the decision card in the place of the figures
// and the log, in a small window of the timer too: extract, wait or give up, and
// what the figures say for each. It decides nothing and sets none of them above
// the others.
func paintDecision(g cell.Grid, p pen, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	l := scene.LayoutOf(w, h)
	scene.Top(g.Sub(l.Top), p.Pen, r, v, w >= 100)
	p.Shaft(g.Sub(l.Shaft), picture.From(r), draw.ShaftView{Formula: v.Chemistry})
	card := cell.Rect{X: l.Timer.X, Y: l.Timer.Y, W: w - l.Timer.X, H: l.Foot.Y - l.Timer.Y}
	if head := l.Head(); card.H-head.H >= decisionRows {
		scene.Head(g, p.Pen, l, r, v)
		_, card = card.CutTop(head.H)
		p.Line(g.Sub(card))
		_, card = card.CutTop(1)
	}
	if l.Lined {
		g.Fill(cell.Rect{X: l.Timer.X, Y: l.Timer.Y, W: 1, H: l.Foot.Y - l.Timer.Y}, p.M.VLine, p.Style(theme.Frame))
	}
	p.decision(g.Sub(cell.Rect{X: card.X + 2, Y: card.Y, W: card.W - 3, H: card.H}), r, v)
}

// decisionRows is how much room the card wants before the timer may stand too.
const decisionRows = 18

// decideKeys are named by the card: those that extract and that say there is no
// bloom elsewhere too. They lie apart from each other and from the charge keys.
var decideKeys = struct{ extract, wait, giveUp string }{extract: "o", wait: "w", giveUp: "n"}

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
func (p pen) ways(r *figure.Reading, v scene.View) [3]way {
	ws := [3]way{
		{key: decideKeys.extract, name: words.DecideExtract}, {key: decideKeys.wait, name: words.DecideWait}, {key: decideKeys.giveUp, name: words.DecideGiveUp},
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
		title, evidence, _ := p.Units.Warning(w)
		reasons = append(reasons, says{modelwords.Warned(title, evidence), toGiveUp})
	}
	for _, s := range reasons {
		ws[s.way].reasons = append(ws[s.way].reasons, s.reason)
	}
	return ws
}

func byTime(r *figure.Reading) says {
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

func (p pen) byStack(r *figure.Reading) says {
	f := r.Figure(figure.StackHeight)
	if !f.Known() || r.StackLost() {
		return says{words.StackUnseen, toWait}
	}
	reason := words.BurdenAt(p.Units, f.P50, modelwords.Basis(f.Basis))
	if f.P50 > figure.DownTo {
		return says{reason, toWait}
	}
	return says{reason, toExtract}
}

// byOre is where the last ore is, how long ago it went in, and whether there
// is enough of it for a bloom.
func (p pen) byOre(r *figure.Reading) []says {
	at, charge, in := r.LastOreIn()
	if !in {
		return []says{{words.NoOreForBloom, toGiveUp}}
	}
	ago := words.LastOreAgo(r.At - at)
	var said []says
	standing := false
	for _, l := range r.Layers {
		if l.Charge == charge && l.Top > figure.DownTo { // it lies on its charcoal
			standing = true
			said = append(said, says{words.OreStands(p.Units, charge, l.Top) + ", " + ago, toWait})
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
			return append(said, says{words.OreFew(p.Units, ore, figure.LeastOre), toGiveUp})
		}
		said = append(said, says{words.OreEnough(p.Units, entry.Kilogram(f.P50), figure.LeastOre), toExtract})
	}
	return said
}

// byFlame is what the flame over the top says: pale while ore uses the gas,
// bright and yellow again when it is used up (Wealden Iron Research Group).
func byFlame(v scene.View) says {
	if v.Ending.Flame == nil {
		return says{words.FlameUnseen, toWait}
	}
	switch v.Ending.Flame.Sees {
	case entry.FlameYellow:
		return says{words.FlameUsedUp, toExtract}
	case entry.FlamePale:
		return says{words.FlameWorks, toWait}
	case entry.FlameNone:
		return says{words.FlameGone, toExtract}
	}
	return says{words.CardFlame + " " + v.Ending.Flame.Sees, toWait}
}

// decision paints the three ways: side by side where they have the room, else
// one below the other. Each has the same room.
func (p pen) decision(g cell.Grid, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	if h < 3 {
		return
	}
	body := g.Bounds()
	if h >= 10 {
		g.TextIn(cell.Rect{W: w, H: 1}, words.DecideHead, p.Style(theme.Strong))
		if x := g.Width(words.DecideHead) + 2; x+g.Width(words.DecideNote) <= w {
			g.Text(x, 0, words.DecideNote, p.Style(theme.Quiet))
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

func (p pen) way(g cell.Grid, one way) {
	w, h := g.Size()
	x := 0
	if one.key != "" {
		p.KeyBox(g, 0, 0, one.key)
		x = g.Width(one.key) + 3
	}
	x += g.Text(x, 0, one.name, p.Style(theme.Strong)) + 1
	if x < w {
		p.Line(g.Sub(cell.Rect{X: x, W: w - x, H: 1}))
	}
	y := 1
	if len(one.reasons) == 0 {
		g.TextIn(cell.Rect{X: 2, Y: 1, W: w - 2, H: 1}, words.DecideNothing, p.Style(theme.Quiet))
	}
	for i, reason := range one.reasons {
		if y >= h {
			return
		}
		spare := h - y - (len(one.reasons) - i - 1) // rows that the others can do without
		g.Text(0, y, p.M.Dot, p.Style(theme.Quiet))
		y += g.Wrap(cell.Rect{X: 2, Y: y, W: w - 2, H: max(min(spare, h-y), 1)}, reason, p.Style(theme.Text))
	}
}
