package draw

import (
	"math"

	"chargehand/model/figure"
	"chargehand/model/pace"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Strip paints the day at a sample: a bar a charge, the minutes it took upwards
// and its ore downwards, the last one still growing. The numbers of the charges
// part the two, so that they are told apart without colour.
func (p Pen) Strip(g cell.Grid, r *figure.Reading) {
	w, h := g.Size()
	if h < 4 {
		return
	}
	p.Line(g)
	room := g.Sub(cell.Rect{X: 1, Y: 1, W: w - 2, H: h - 1})
	if len(r.Charges) == 0 {
		room.TextIn(cell.Rect{Y: (h - 1) / 2, W: w - 2, H: 1}, modelwords.StripNone, p.Style(theme.Quiet))
		return
	}
	s := chart.Strip{
		Minutes: modelwords.StripMinutes, Charge: modelwords.StripCharge, OreWord: modelwords.StripOre, NowWord: modelwords.StripNow,
		UsualWord: words.StripUsual,
	}
	for _, c := range r.Charges {
		b := chart.Bar{Number: c.Number, Minutes: c.Minutes, Slow: r.Usual > 0 && c.Minutes > pace.SlowShare*r.Usual.Minutes()}
		if c.Ore.Known() {
			b.Ore = c.Ore.P50
		}
		s.Most, s.Ore = math.Max(s.Most, b.Minutes), math.Max(s.Ore, b.Ore)
		s.Bars = append(s.Bars, b)
	}
	if r.Usual > 0 { // one long gap must not flatten the day
		s.Usual = r.Usual.Minutes()
		s.Most = math.Min(s.Most, 1.6*s.Usual)
	}
	s.Most = math.Max(math.Ceil(s.Most/5)*5, 5)
	if s.Ore > 0 {
		s.OreMost = p.Units.Value(s.Ore, "kg", 1)
	}
	if since := r.Figure(figure.SinceCharge); since.Known() && running(r) {
		s.Bars = append(s.Bars, chart.Bar{Number: len(r.Charges) + 1, Minutes: math.Floor(since.P50 / 60), Now: true})
		s.Ahead = 6
	}
	s.Draw(room, p.Theme)
}

// running tells whether charges still go in.
func running(r *figure.Reading) bool {
	over, _ := NoMore(r)
	return !over
}
