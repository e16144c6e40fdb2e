package rehearsal

import (
	"chargehand/model/picture"
	"chargehand/model/rehearse"
	"chargehand/tui/cell"
	"chargehand/tui/shaft"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Of the two hearths beside the sentences: columns of each, and how far over the tuyere they are drawn, cm.
const (
	hearthWide = 16
	hearthOver = 16.0
	wall       = 2
	apart      = 4 // columns between them, for the tuyere of the second
)

// pictured is the width of both, with what parts them from the sentences; none where there is no room.
func (p painter) pictured(rows int) int {
	if w, h := p.g.Size(); w < 110 || h < 28 || rows < 7 || len(p.d.Shafts) == 0 {
		return 0
	}
	return 2*(hearthWide+apart) + 2
}

// shaftNow is the furnace at the moment walked to, else before it was pulled.
func (p painter) shaftNow() (rehearse.Shaft, bool) {
	at := p.at
	if at == 0 {
		at = p.d.Over
	}
	return p.d.ShaftAt(at)
}

// hearths are the hearth as it truly was beside as it was believed, each with its heat.
func (p painter) hearths(y, rows int) {
	s, ok := p.shaftNow()
	if !ok {
		return
	}
	for i, one := range []struct {
		pic     picture.Picture
		caption string
	}{{s.True, words.HearthTrue(p.sh.Units, s)}, {s.Believed, words.HearthBelieved(p.sh.Units, s)}} {
		x := 2 + i*(hearthWide+apart)
		p.g.TextIn(cell.Rect{X: x, Y: y, W: hearthWide + 1, H: 1}, one.caption, p.style(theme.Quiet))
		pic := one.pic
		pic.Top = hearthOver
		shaft.Paint(p.g, p.sh.Theme, shaft.Fit(pic, cell.Rect{X: x, Y: y + 1, W: hearthWide, H: rows - 1}, wall), shaft.View{Pic: pic, Past: true})
	}
}

// shafts are the whole furnace as it truly was beside as it was believed, each with its figures, in place of the lanes.
func (p painter) shafts(g cell.Grid) {
	w, h := g.Size()
	s, ok := p.shaftNow()
	if !ok {
		g.TextIn(cell.Rect{X: 2, W: w - 4, H: 1}, words.NoShaft, p.style(theme.Quiet))
		return
	}
	half := w / 2
	wide := min(half/2, max(14, h))
	for i, one := range []struct {
		pic   picture.Picture
		head  string
		lines []string
	}{{s.True, words.ShaftTrue(p.d, s), words.TrueFigures(p.sh.Units, s)}, {s.Believed, words.ShaftBelieved, words.BelievedFigures(p.sh.Units, s)}} {
		x := 2 + i*half
		g.TextIn(cell.Rect{X: x, W: half - 3, H: 1}, one.head, p.style(theme.Strong))
		pic := one.pic
		pic.Top = max(s.True.Top, s.Believed.Top) // both at one scale
		shaft.Paint(g, p.sh.Theme, shaft.Fit(pic, cell.Rect{X: x, Y: 1, W: wide, H: h - 1}, wall), shaft.View{Pic: pic, Past: true})
		y := 2
		for _, line := range one.lines {
			y += g.Wrap(cell.Rect{X: x + wide + 2, Y: y, W: half - wide - 4, H: h - y}, line, p.style(theme.Text))
		}
	}
}
