package draw

import (
	"math"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/letter"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// HeadView is what is said of the next charge besides the reading.
type HeadView struct {
	Due    *forecast.Due // without one the digits count up
	Key    string        // books the charge as shown, "" where none can be booked
	Adding *Adding       // the open measure
	Past   bool          // it is no charge of now
}

// nowRole is the role of what happens now, or happened once.
func (v HeadView) nowRole() theme.Role {
	if v.Past {
		return theme.Past
	}
	return theme.Now
}

// Minutes paints the largest thing on the screen: whole minutes to the next
// charge or, as long as nothing forecasts it, since the last. What they are stands
// over them, between what and what under them.
func (p Pen) Minutes(g cell.Grid, r *figure.Reading, v HeadView, d letter.Digits) {
	w, h := g.Size()
	t := TimedBy(r, v.Due)
	caption, style := p.Style(theme.Quiet), p.Style(v.nowRole())
	if t.Late {
		caption, style = p.Style(theme.Look), p.Style(theme.Strong)
	}
	x := 2
	if r.Paused {
		x += g.Text(x, 0, modelwords.WorkPaused+", ", p.Style(theme.Look))
	}
	number, small := wholeMinutes(t)
	label := t.Label
	if t.Minutes {
		label = modelwords.NextChargeIn
		if v.Past {
			label = words.WasToNext
		}
	}
	g.TextIn(cell.Rect{X: x, W: w - x, H: 1}, label, caption)
	for d.Width(number) > w-3 && d.W > 3 {
		d.W--
	}
	d.Draw(g, 2, 1, number, style, p.Theme.ASCII)
	rows := (d.H + 1) / 2
	if end := 3 + d.Width(number); end+len(small) <= w {
		g.Text(end, rows, small, style)
	} else if rows+1 < h {
		g.Text(2, rows+1, small, style)
	}
	if t.Doubt != "" { // that the time may be wrong says more than the time
		g.Wrap(cell.Rect{X: 2, Y: max(h-2, rows+1), W: w - 2, H: 2}, t.Doubt, p.Style(theme.Strong))
		return
	}
	below := fitting(g, w-2, strings.TrimSuffix(t.Below, " min"), t.Brief...)
	if h > rows+2 && p.besideCharge(h) {
		g.TextIn(cell.Rect{X: 2, Y: h - 1, W: w - 2, H: 1}, below, p.Style(theme.Strong))
		return
	}
	g.TextIn(cell.Rect{X: 2, Y: rows + 1, W: w - 2, H: 1}, below, p.Style(theme.Strong))
	if since := r.Figure(figure.SinceCharge); since.Known() && t.Minutes {
		g.TextIn(cell.Rect{X: 2, Y: rows + 2, W: w - 2, H: 1}, sinceCharge(since), p.Style(theme.Quiet))
	}
}

// besideCharge tells whether the clock of the charge stands beside the minutes.
func (Pen) besideCharge(h int) bool { return h > 9 }

// sinceCharge is how long ago the last charge went in. It moves on by ten seconds:
// a row that changes every second is sent every second.
func sinceCharge(since figure.Figure) string {
	return modelwords.LastAgo(modelwords.Stopwatch(time.Duration(since.P50 * float64(time.Second)).Truncate(10 * time.Second)))
}

// wholeMinutes is the number that is drawn large of what the timer says, and what
// stands beside it.
func wholeMinutes(t Timed) (number, small string) {
	if t.Minutes {
		return t.Digits, modelwords.MinutesShort
	}
	if h, m, hours := strings.Cut(t.Digits, "h"); hours {
		return h, "h " + m
	}
	m, _, _ := strings.Cut(t.Digits, ":")
	return m, modelwords.MinutesShort
}

// clock draws how the time since the last charge stands to when the next is due, on
// row y from x on, and says how long ago that was.
func (p Pen) clock(g cell.Grid, x, y int, r *figure.Reading, v HeadView) {
	w, _ := g.Size()
	since := r.Figure(figure.SinceCharge)
	if !since.Known() || y < 0 {
		return
	}
	minutes := since.P50 / 60
	x += g.Text(x, y, sinceCharge(since), p.Style(theme.Quiet))
	b := chart.Ranged{Low: "0", At: minutes, To: math.Ceil(2*r.Usual.Minutes()/5) * 5}
	if v.Due != nil {
		m := v.Due.Next.Minutes
		b.Good, b.GoodFrom, b.Until = true, m.P10, m.P90
		b.To = math.Max(math.Ceil(m.P90*1.3/5)*5, 5)
		b.Outside = minutes > m.P90
	}
	b.High = strconv.Itoa(int(b.To)) + " " + modelwords.MinutesShort
	if track := min(w-x-5-len(b.High), 40); track >= 6 {
		b.Draw(g, p.Theme, x+4, y, track)
	}
}

// lotName is a lot as people call it: parts name those of the house by a uid, whose names
// stand in the light.
func lotName(r *figure.Reading, lot string) string {
	if !entry.UID(lot).Valid() {
		return lot
	}
	for _, l := range r.Light.Lots {
		if string(l.ID()) == lot {
			return l.Name
		}
	}
	return ""
}

// part is a part of a charge as it is drawn large.
type chargePart struct {
	number, word string
	unit         string // of what is not counted: its word is that and what it is of
	weight       string // with the material
	bare, brief  string // without it; the same where there is less room
	what         string
}

// chargeParts are the parts of the next charge, or of the open measure.
func (p Pen) chargeParts(r *figure.Reading, v HeadView) []chargePart {
	if v.Adding != nil {
		return []chargePart{{number: modelwords.Number(v.Adding.Count, 2), word: v.Adding.What}}
	}
	var all []chargePart
	called := map[string]int{}
	for _, part := range r.Next {
		called[part.Measure]++
	}
	for _, part := range r.Next {
		c := chargePart{number: p.countOf(part), word: p.whatOf(part), weight: p.Weight(part, true), bare: p.Weight(part, false), brief: p.bareWeight(part, false), what: modelwords.Material(part.What)}
		if !part.Count.Known {
			c.unit = p.Units.Name("kg")
		}
		if part.Mass.Known() && part.Mass.Basis == figure.Guessed {
			c.brief = words.About(c.brief)
		}
		if part.Count.Known && called[part.Measure] > 1 {
			c.word += " " + modelwords.Material(part.What)
		}
		if name := lotName(r, part.Lot); name != "" && name != c.what && part.What == entry.Ore {
			c.weight = strings.TrimPrefix(c.weight+", "+name, ", ")
		}
		all = append(all, c)
	}
	return all
}

// chargeCaption says what the large letters are, or why there is no charge. It
// tells whether there is one.
func (p Pen) chargeCaption(g cell.Grid, r *figure.Reading, v HeadView, long bool) bool {
	if over, why := NoMore(r); over {
		g.Text(1, 0, why, p.Style(theme.Quiet))
		return false
	}
	x, quiet := 1, p.Style(theme.Quiet)
	switch {
	case v.Adding != nil:
		g.Text(x, 0, modelwords.OpenMeasure, quiet)
		return true
	case len(r.Next) == 0:
		g.Text(x, 0, modelwords.NextCharge+" ", quiet)
		g.Text(x, 2, modelwords.NextIsUnset, p.Style(theme.Strong))
		return false
	}
	if long || v.Key == "" {
		x += g.Text(x, 0, modelwords.NextCharge, quiet) + 1
	}
	if v.Key != "" {
		x += g.Text(x, 0, v.Key, p.Style(theme.Now))
		x += g.Text(x, 0, " "+words.BooksIt, quiet)
	}
	if w, _ := g.Size(); v.Due != nil && long {
		for _, says := range third(r, v.Due) {
			if x+2+g.Width(says) <= w-1 {
				g.TextRight(w-1, 0, says, quiet)
				break
			}
		}
	}
	return true
}

// style is how the charge is drawn.
func (p Pen) chargeStyle(v HeadView) cell.Style {
	switch {
	case v.Adding != nil:
		return p.Style(theme.Now)
	case v.Past:
		return p.Style(theme.Past)
	}
	return p.Style(theme.Strong)
}

// Charge paints what the next charge is in letters of 3.5 rows, as high as the
// minutes beside it, with the weight of each part under it.
func (p Pen) Charge(g cell.Grid, r *figure.Reading, v HeadView) {
	w, h := g.Size()
	style := p.chargeStyle(v)
	if p.chargeCaption(g, r, v, true) {
		y, parts := 1, p.chargeParts(r, v)
		if 1+5*len(parts) > h {
			y, parts = p.chargeInWords(g, h-1, parts, style), nil
		}
		for _, c := range parts {
			nw, _ := letter.Small.Size(c.number)
			letter.Small.Text(g, 1, y, c.number, style, p.Theme.ASCII)
			x := max(8, nw+3)
			p.word(g, cell.Rect{X: x, Y: y, W: w - x - 1, H: 4}, c.word, letter.Small, style)
			g.TextIn(cell.Rect{X: x, Y: y + 4, W: w - x - 1, H: 1}, c.weight, p.Style(theme.Text))
			y += 5
		}
		if why := OreNote(r); why != "" && y < h-1 {
			g.Text(8, y, why, p.Style(theme.Strong))
		}
	}
	p.clock(g, 1, h-1, r, v)
}

// word draws a word in letters where it fits and the face has it, else in bold.
func (p Pen) word(g cell.Grid, r cell.Rect, word string, s letter.Scale, style cell.Style) {
	text, all := letter.Capitals(word)
	if tw, _ := s.Size(text); all && tw <= r.W {
		s.Text(g, r.X, r.Y, text, style, p.Theme.ASCII)
		return
	}
	g.TextIn(cell.Rect{X: r.X, Y: r.Y + r.H/2, W: r.W, H: 1}, word, style.With(cell.Bold))
}

// LargeCharge paints it with its numbers in digits of seven rows.
func (p Pen) LargeCharge(g cell.Grid, r *figure.Reading, v HeadView) {
	w, h := g.Size()
	style := p.chargeStyle(v)
	if p.chargeCaption(g, r, v, true) {
		d, y, parts := letter.Digits{W: 10, H: 14}, 1, p.chargeParts(r, v)
		if 8*len(parts) > h-1 {
			y, parts = p.chargeInWords(g, h-1, parts, style), nil
		}
		for _, c := range parts {
			d.Draw(g, 1, y, c.number, style, p.Theme.ASCII)
			x := max(16, d.Width(c.number)+4)
			g.TextIn(cell.Rect{X: x, Y: y + 1, W: w - x - 1, H: 1}, c.weight, p.Style(theme.Text))
			p.word(g, cell.Rect{X: x, Y: y + 3, W: w - x - 1, H: 4}, c.word, letter.Small, style)
			y += 8
		}
		if why := OreNote(r); why != "" && y < h-1 {
			g.Text(16, y, why, p.Style(theme.Strong))
		}
	}
	p.clock(g, 1, h-1, r, v)
}

// SmallCharge paints it with its numbers in letters and its words beside them.
func (p Pen) SmallCharge(g cell.Grid, r *figure.Reading, v HeadView) {
	w, h := g.Size()
	style := p.chargeStyle(v)
	if p.chargeCaption(g, r, v, false) {
		half, parts := 2, p.chargeParts(r, v)
		if !p.smallFits(w, h, parts) {
			p.chargeInWords(g, h, parts, style)
			parts = nil
		}
		for _, c := range parts {
			nw, _ := letter.Small.Size(c.number)
			y := (half + 1) / 2
			x, word := max(8, nw+3), strings.ToUpper(c.beside())
			switch narrow, wide := 2+narrowDigits.Width(c.number), c.besideWide(g); {
			case wide <= w-x:
				letter.Small.At(g, 1, half, c.number, style, p.Theme.ASCII)
			case wide <= w-narrow: // a number of more figures
				x = narrow
				narrowDigits.Draw(g, 1, y, c.number, style, p.Theme.ASCII)
			default: // of many: its word stands below it
				letter.Small.At(g, 1, half, c.number, style, p.Theme.ASCII)
				g.TextIn(cell.Rect{X: 1, Y: y + 4, W: w - 1, H: 1}, strings.ToUpper(c.word), style)
				half += 10
				continue
			}
			g.TextIn(cell.Rect{X: x, Y: y + 1, W: w - x, H: 1}, word, style)
			if c.unit != "" {
				g.TextIn(cell.Rect{X: x, Y: y + 2, W: w - x, H: 1}, c.what, p.Style(theme.Text))
				half += 8
				continue
			}
			g.TextIn(cell.Rect{X: x, Y: y + 2, W: w - x, H: 1}, fitting(g, w-x, c.bare, c.brief), p.Style(theme.Text))
			if y+3 < h && c.bare != "" {
				g.TextIn(cell.Rect{X: x, Y: y + 3, W: w - x, H: 1}, c.what, p.Style(theme.Quiet))
			}
			half += 8
		}
		if why := OreNote(r); why != "" && len(r.Next) < 2 {
			g.TextIn(cell.Rect{X: 1, Y: 6, W: w - 1, H: 1}, why, p.Style(theme.Strong))
		}
	}
}

// beside is the word that stands beside the number, besideWide how wide that is with what
// stands under it.
func (c chargePart) beside() string {
	if c.unit != "" {
		return c.unit
	}
	return c.word
}

func (c chargePart) besideWide(g cell.Grid) int {
	if c.unit != "" {
		return max(g.Width(c.unit), g.Width(c.what))
	}
	return g.Width(c.word)
}

// narrowDigits are digits of 3.5 rows that leave a word its room beside "3.5".
var narrowDigits = letter.Digits{W: 4, H: 7}

// smallFits tells whether all parts of a charge have room with their numbers in letters.
func (p Pen) smallFits(w, h int, parts []chargePart) bool {
	g, half := cell.New(0, 0, p.Theme.ASCII), 2
	for _, c := range parts {
		nw, _ := letter.Small.Size(c.number)
		if half+6 >= 2*h || 1+nw > w {
			return false
		}
		if half += 8; c.besideWide(g) > w-max(8, nw+3) && c.besideWide(g) > w-2-narrowDigits.Width(c.number) {
			if half += 2; half > 2*h { // its word would have no row
				return false
			}
		}
	}
	return true
}

// chargeInWords writes the parts of a charge in words within so many rows, and gives the next. Each of them stands there however
// little room there is: the key books them all.
func (p Pen) chargeInWords(g cell.Grid, rows int, parts []chargePart, style cell.Style) (y int) {
	w, _ := g.Size()
	each := min(max((rows-1)/max(len(parts), 1), 1), 4)
	for i, c := range parts {
		y = 1 + i*each
		if each > 2 {
			y++
		}
		g.TextIn(cell.Rect{X: 1, Y: y, W: w - 1, H: 1}, c.number+" "+strings.ToUpper(c.word), style.With(cell.Bold))
		if under := fitting(g, w-1, c.weight, c.bare, c.brief); each > 1 && under != "" {
			g.TextIn(cell.Rect{X: 1, Y: y + 1, W: w - 1, H: 1}, under, p.Style(theme.Text))
		}
	}
	return 1 + len(parts)*each
}
