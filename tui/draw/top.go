package draw

import (
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Rows of the top and of the foot, on every screen.
const (
	TopRows  = 2
	FootRows = 2
)

// TopView is the line at the top of every screen.
type TopView struct {
	Title   string
	Briefer []string // for where the title has no room, the longest first
	Phase   string   // with how long it has been going on
	Clock   string
	By      string
	Kept    int
	Keeping int
	NotKept int
	Trouble string // why entries are not kept, and what to do
	NoBook  bool   // what is shown is in no book, so there is nothing to keep
	Past    string // says that this is not now, when it is not
	Tag     string // says that it counts for nothing: practice, invented
	Lost    string // says which of its entries are lost
}

// Top paints the top two rows of a screen: what is open and how safe its
// entries are, and a line. While entries are not kept the line is a bar that
// says so. On the line stands also which entries of the smelt are lost.
func (p Pen) Top(g cell.Grid, v TopView) {
	w, _ := g.Size()
	right := g.Sub(cell.Rect{W: w - 1, H: 1})
	x := w - 1
	if v.By != "" && w >= 100 {
		x -= right.TextRight(x, 0, modelwords.ByWhom(v.By), p.Style(theme.Quiet)) + 3
	}
	x -= p.Safety(right, x, v) + 3
	clock := x
	if x > w/2 {
		clock -= right.TextRight(x, 0, v.Clock, p.Style(theme.Text))
	}
	says := g.Width(v.Phase)
	if v.Past != "" {
		says += g.Width(v.Past) + 4
	}
	if v.Tag != "" {
		says += g.Width(v.Tag) + 4
	}
	title := ""
	if room := clock - 5 - says; room >= 8 || says == 0 { // the phase says more than half a title
		title = g.Cut(fitting(g, room, v.Title, v.Briefer...), room)
	}
	from := 1
	if title != "" {
		from += g.Text(1, 0, title, p.Style(theme.Strong)) + 2
	}
	if v.Tag != "" {
		from += g.Text(from, 0, " "+v.Tag+" ", p.Style(theme.Tag)) + 2
	}
	if w >= 100 && v.Past == "" {
		from = max(from, (clock-2+from-says)/2)
	}
	if v.Past != "" {
		from += g.Text(from, 0, " "+g.Cut(v.Past, clock-from-4)+" ", p.Style(theme.Tag)) + 2
	}
	g.Text(from, 0, g.Cut(v.Phase, clock-from-2), p.Style(theme.Text))
	p.Line(g.Sub(cell.Rect{Y: 1, W: w, H: 1}))
	if v.Lost != "" {
		g.TextIn(cell.Rect{X: 2, Y: 1, W: w - 4, H: 1}, " "+p.M.Look+" "+v.Lost+" ", p.Style(theme.Look))
	}
	if v.NotKept > 0 {
		bar := cell.Rect{Y: 1, W: w, H: 1}
		g.Fill(bar, ' ', p.Style(theme.Act))
		text := p.M.Act + " " + modelwords.EntriesNotKept(v.NotKept)
		if v.Trouble != "" {
			text += ": " + v.Trouble
		}
		g.TextIn(bar.Inset(1, 0), text, p.Style(theme.Act))
	}
}

// Safety writes how safe the log is, ending before x.
func (p Pen) Safety(g cell.Grid, x int, v TopView) int {
	switch {
	case v.NotKept > 0:
		return g.TextRight(x, 0, " "+p.M.Act+" "+modelwords.EntriesNotKept(v.NotKept)+" ", p.Style(theme.Act))
	case v.NoBook:
		return g.TextRight(x, 0, modelwords.InNoBook, p.Style(theme.Quiet))
	case v.Keeping > 0:
		return g.TextRight(x, 0, modelwords.EntriesKept(v.Kept)+p.M.Waiting, p.Style(theme.Quiet))
	}
	return g.TextRight(x, 0, modelwords.EntriesKept(v.Kept)+" "+p.M.Kept, p.Style(theme.Quiet))
}
