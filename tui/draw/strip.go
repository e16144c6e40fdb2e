package draw

import (
	modelwords "chargehand/model/words"
	"math"
	"strconv"

	"chargehand/model/figure"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// Strip paints the day at a glance: a bar a charge, the minutes it took upwards
// and its ore downwards, the last one still growing. The numbers of the charges
// part the two, so that they are told apart without colour.
func (p Pen) Strip(g cell.Grid, r figure.Reading) {
	w, h := g.Size()
	if h < 4 {
		return
	}
	p.Line(g)
	const gutter = 13
	up := (h - 1) / 2
	s := strip{Pen: p, g: g, x: gutter, axis: 1 + up, up: up, down: h - 2 - up}
	g.Text(1, 1, modelwords.StripMinutes, p.Style(theme.Quiet))
	g.Text(1, s.axis, modelwords.StripCharge, p.Style(theme.Quiet))
	g.Text(1, s.axis+1, modelwords.StripOre, p.Style(theme.Quiet))
	if len(r.Charges) == 0 {
		g.TextIn(cell.Rect{X: gutter, Y: s.axis, W: w - gutter - 1, H: 1}, modelwords.StripNone, p.Style(theme.Quiet))
		return
	}
	room := w - gutter - 2
	s.slot = min(max(room/(len(r.Charges)+1), 2), 6)
	shown := r.Charges[max(0, len(r.Charges)+1-room/s.slot):]
	s.scales(r, shown)
	g.TextRight(gutter-1, 1, strconv.Itoa(int(s.most)), p.Style(theme.Quiet))
	if s.ore > 0 {
		g.TextRight(gutter-1, s.axis+1, p.Units.Value(s.ore, "kg", 1), p.Style(theme.Quiet))
	}
	for i, c := range shown {
		s.charge(i, c)
	}
	if since := r.Figure(figure.SinceCharge); since.Known() && running(r) {
		s.rise(len(shown), since.P50/60, p.Style(theme.Now))
		g.Text(s.x+len(shown)*s.slot, s.axis, modelwords.StripNow, p.Style(theme.Now))
	}
}

// running tells whether charges still go in.
func running(r figure.Reading) bool {
	over, _ := NoMore(r)
	return !over
}

// strip is the strip while it is painted.
type strip struct {
	Pen
	g          cell.Grid
	x, axis    int     // first column of the bars; row of the charges' numbers
	up, down   int     // rows of each
	slot       int     // columns a charge
	most       float64 // minutes at the full height
	ore        float64 // kg at the full depth
	lastNumber int     // column just past the last number written
}

// scales sets both scales from what is shown. One long gap must not flatten
// the day, so minutes end at two and a half times the usual.
func (s *strip) scales(r figure.Reading, cs []figure.Charge) {
	for _, c := range cs {
		s.most = math.Max(s.most, c.Minutes)
		if c.Ore.Known() {
			s.ore = math.Max(s.ore, c.Ore.P50)
		}
	}
	if r.Usual > 0 {
		s.most = math.Min(s.most, 2.5*r.Usual.Minutes())
	}
	s.most = math.Max(math.Ceil(s.most/5)*5, 5)
}

func (s *strip) charge(i int, c figure.Charge) {
	s.rise(i, c.Minutes, s.Style(theme.Text))
	if c.Ore.Known() && s.ore > 0 {
		s.hang(i, c.Ore.P50/s.ore)
	}
	if x := s.x + i*s.slot; x >= s.lastNumber && (c.Number%5 == 0 || i == 0) {
		s.lastNumber = x + s.g.Text(x, s.axis, strconv.Itoa(c.Number), s.Style(theme.Quiet)) + 1
	}
}

// rise draws minutes upwards, in eighths of a cell.
func (s *strip) rise(i int, minutes float64, style cell.Style) {
	steps := len(s.M.Eighths) - 1
	eighths := int(math.Round(math.Min(minutes/s.most, 1) * float64(s.up*steps)))
	for row := range s.up {
		s.across(i, s.axis-1-row, s.M.Eighths[min(max(eighths-row*steps, 0), steps)], style)
	}
	if minutes > s.most {
		s.across(i, s.axis-s.up, s.M.Beyond, style)
	}
}

// hang draws a share of the full depth downwards, in halves of a cell.
func (s *strip) hang(i int, share float64) {
	halves := int(math.Round(share * float64(2*s.down)))
	if share > 0 {
		halves = max(halves, 1)
	}
	for row := range s.down {
		switch {
		case halves >= 2*row+2:
			s.across(i, s.axis+1+row, s.M.HangFull, s.Style(theme.Quiet))
		case halves == 2*row+1:
			s.across(i, s.axis+1+row, s.M.Hang, s.Style(theme.Quiet))
		}
	}
}

// across fills a slot's cells in a row and leaves its gap.
func (s *strip) across(i, y int, c rune, style cell.Style) {
	if c == ' ' {
		return
	}
	for x := range max(s.slot-1, 1) {
		s.g.Set(s.x+i*s.slot+x, y, c, style)
	}
}
