package chart

import (
	"math"
	"time"

	"chargehand/tui/cell"
	"chargehand/tui/glow"
	"chargehand/tui/theme"
)

// Day is a smelt from light to its end, as a day out of doors: the ground glows
// as the hearth did, the sun stands where it stood.
type Day struct {
	Lit       time.Time // wall time of light, in the smelt's own offset
	Undated   bool      // the hours are not known: there is no sun
	Span, Now time.Duration
	Hearth    []Heat // in order of time; none where it was not reckoned
	Charges   []Charge
	Taps      []time.Duration
	Warnings  []Alarm
	Phases    []Phase // in order
	Rise, Set float64 // hours of the day when the sun rises and sets; 0, 0 for 6 and 18
}

// Heat is how hot the hearth was at a moment, in Celsius.
type Heat struct {
	At      time.Duration
	Celsius float64
}

// Charge is one charge, with ore or charcoal alone.
type Charge struct {
	At  time.Duration
	Ore bool
}

// Alarm is a warning that came, and whether it asked for an act or was a note only.
type Alarm struct {
	At        time.Duration
	Act, Note bool
}

// Marks are the signs under the ground: a charge, a tap, a note, a warning, an act,
// and where one stands.
type Marks struct{ Charge, Tap, Note, Warning, Act, Here rune }

// MarksOf are those of a theme.
func MarksOf(th theme.Theme) Marks {
	if th.ASCII {
		return Marks{'\'', 'v', 'o', '*', '!', '|'}
	}
	return Marks{'▀', '▼', '◦', '◆', '!', '│'}
}

// Phase is when a phase began, and its word.
type Phase struct {
	At   time.Duration
	Word string
}

// DayRows is how many rows the day takes in all: sky, ground, marks and hours;
// without the sky it takes three.
const DayRows, GroundRows = 6, 3

// Draw draws the day on g: as many rows of sky as are left above ground, marks
// and hours.
func (d Day) Draw(g cell.Grid, th theme.Theme) {
	w, h := g.Size()
	if w < 20 || h < GroundRows || d.Span <= 0 {
		return
	}
	t := track{Day: d, g: g, th: th, from: 1, wide: w - 2, ground: h - GroundRows}
	t.glow()
	t.marks()
	t.hours(t.ground + 2)
	if t.ground > 0 {
		t.sky()
	}
}

// Ground draws the hearth, and under it the hours, without the sky and without what
// happened: two rows.
func (d Day) Ground(g cell.Grid, th theme.Theme) {
	w, h := g.Size()
	if w < 20 || h < 2 || d.Span <= 0 {
		return
	}
	t := track{Day: d, g: g, th: th, from: 1, wide: w - 2}
	t.glow()
	t.hours(1)
}

// Column is the column of a moment when the day is drawn w columns wide.
func (d Day) Column(at time.Duration, w int) int {
	return track{Day: d, from: 1, wide: w - 2}.at(at)
}

// track is the day while it is drawn.
type track struct {
	Day
	g          cell.Grid
	th         theme.Theme
	from, wide int
	ground     int // its row; above it is sky
}

func (t track) at(d time.Duration) int {
	return t.from + min(max(int(float64(d)/float64(t.Span)*float64(t.wide)), 0), t.wide-1)
}

func (t track) when(x int) time.Duration {
	return time.Duration((float64(x-t.from) + 0.5) / float64(t.wide) * float64(t.Span))
}

// heat is how hot the hearth was, and whether it is known: of the last word
// before, if it is not too old.
func (t track) heat(at time.Duration) (float64, bool) {
	lo, hi := 0, len(t.Hearth)
	for lo < hi {
		if m := (lo + hi) / 2; t.Hearth[m].At <= at {
			lo = m + 1
		} else {
			hi = m
		}
	}
	if lo == 0 || at-t.Hearth[lo-1].At > 10*time.Minute {
		return 0, false
	}
	return t.Hearth[lo-1].Celsius, true
}

// glow draws the ground: the hearth by its heat, what is still to come at half
// strength, a line where nothing is known.
func (t track) glow() {
	y, now := t.ground, t.at(t.Now)
	for x := t.from; x < t.from+t.wide; x++ {
		c, known := t.heat(t.when(x))
		switch {
		case !known && t.th.ASCII:
			t.g.Set(x, y, '-', t.th.Style(theme.Frame))
		case !known:
			t.g.Set(x, y, '▁', t.th.Style(theme.Frame))
		default:
			t.warm(x, y, c, x > now)
		}
	}
}

// warm draws one column of the ground.
func (t track) warm(x, y int, celsius float64, ahead bool) {
	s := cell.Style{Paper: t.th.Style(theme.Text).Paper}
	switch {
	case t.th.ASCII:
		t.g.Set(x, y, glow.ASCII(celsius), s)
	case t.th.Profile == theme.True:
		c := glow.At(celsius)
		if ahead {
			r, g, b := t.th.PageRGB()
			c = glow.Mix(c, glow.Colour{R: r, G: g, B: b}, 0.5)
		}
		s.Ink = cell.Full(c.R, c.G, c.B)
		t.g.Set(x, y, '▄', s)
	case t.th.Profile == theme.Fixed256:
		s.Ink = cell.Index(glow.Index(celsius))
		t.g.Set(x, y, lower(ahead), s)
	case t.th.Profile == theme.Base16:
		f := glow.Sixteen(celsius)
		s.Ink = cell.Basic(f.Ink)
		t.g.Set(x, y, lower(ahead), s)
	default:
		t.g.Set(x, y, glow.Ink(celsius, x, 0), s)
	}
}

// Warm draws a lower half row as hot as it is.
func Warm(g cell.Grid, th theme.Theme, x, y int, celsius float64) {
	track{g: g, th: th}.warm(x, y, celsius, false)
}

// lower is half a row, or less for what is still to come.
func lower(ahead bool) rune {
	if ahead {
		return '▂'
	}
	return '▄'
}

// marks draws charges, taps and warnings under the ground and where one stands.
func (t track) marks() {
	y := t.ground + 1
	m := MarksOf(t.th)
	for _, w := range t.Warnings {
		if w.Note {
			t.g.Set(t.at(w.At), y, m.Note, t.th.Style(theme.Quiet))
		}
	}
	for _, c := range t.Charges {
		role := theme.Bar
		if c.Ore {
			role = theme.OreBar
		}
		mark := m.Charge
		if c.Ore && (t.th.Profile == theme.None || t.th.ASCII) {
			mark = t.sign('█', '"')
		}
		t.g.Set(t.at(c.At), y, mark, t.th.Style(role))
	}
	for _, at := range t.Taps {
		t.g.Set(t.at(at), y, m.Tap, t.th.Style(theme.Strong))
	}
	for _, w := range t.Warnings {
		switch {
		case w.Act:
			t.g.Set(t.at(w.At), y, m.Act, t.th.Style(theme.Act).With(cell.Bold))
		case !w.Note:
			t.g.Set(t.at(w.At), y, m.Warning, t.th.Style(theme.Warn))
		}
	}
	t.g.Set(t.at(t.Now), y, m.Here, t.th.Style(theme.Strong))
}

func (t track) sign(c, ascii rune) rune {
	if t.th.ASCII {
		return ascii
	}
	return c
}

// hours writes the hour and word of each phase where it began; where two stand
// too close the first stays, and where there is room the full hours between.
func (t track) hours(y int) {
	end := t.from
	said := func(ph Phase) string {
		if t.Undated {
			return ph.Word
		}
		return t.Lit.Add(ph.At).Format("15:04") + " " + ph.Word
	}
	last := t.from + t.wide // where the end of the day is written: that always is
	if n := len(t.Phases); n > 0 {
		last = min(t.at(t.Phases[n-1].At), last-t.g.Width(said(t.Phases[n-1])))
	}
	for i, ph := range t.Phases {
		text := said(ph)
		x, w := t.at(ph.At), t.g.Width(text)
		if i == len(t.Phases)-1 {
			x = last
		} else if x+w+1 > last {
			continue
		}
		if x < end || x+w > t.from+t.wide {
			continue
		}
		if i+2 < len(t.Phases) && t.at(t.Phases[i+1].At) < x+w+1 { // the longer one after it says more
			continue
		}
		role := theme.Quiet
		if ph.At <= t.Now && (i+1 == len(t.Phases) || t.Phases[i+1].At > t.Now) {
			role = theme.Strong
		}
		end = x + t.g.Text(x, y, text, t.th.Style(role)) + 2
	}
}

// sky draws the path of the sun in dots, the sun where it stood and its plumb
// line to the day.
func (t track) sky() {
	x := t.at(t.Now)
	if t.Undated {
		t.clock(x, t.ground-1)
		return
	}
	dot := t.sign('·', '.')
	for col := t.from; col < t.from+t.wide; col += 3 {
		if up, y := t.sun(t.when(col)); up && (col < x-4 || col > x+4) {
			t.g.Set(col, y, dot, t.th.Style(theme.Frame))
		}
	}
	up, y := t.sun(t.Now)
	if !up {
		t.clock(x, t.ground-1)
		return
	}
	s := t.th.Style(theme.Strong)
	switch {
	case t.th.ASCII || t.ground < 3:
		t.g.Set(x, y, t.sign('●', 'O'), s)
	default:
		t.disc(x, min(y, t.ground-2), s)
		y = min(y, t.ground-2) + 1
	}
	for row := y + 1; row < t.ground; row++ {
		t.g.Set(x, row, t.sign('│', '|'), t.th.Style(theme.Frame))
	}
	t.clock(x, min(y, t.ground-1))
}

// disc is the sun: full on a dark page, a ring on a light one.
func (t track) disc(x, y int, s cell.Style) {
	rows := [2]string{"▄███▄", "▀███▀"}
	if t.th.Light {
		rows = [2]string{"▄▀▀▀▄", "▀▄▄▄▀"}
	}
	for i, row := range rows {
		for j, c := range []rune(row) {
			t.g.Set(x-2+j, y+i, c, s)
		}
	}
}

// clock writes the time of day beside where one stands.
func (t track) clock(x, y int) {
	text := t.Lit.Add(t.Now).Format("15:04")
	if t.Undated {
		text = "+" + t.Now.Truncate(time.Minute).String()
	}
	at := x + 4
	if at+len(text) > t.from+t.wide {
		at = x - 3 - len(text)
	}
	t.g.Text(at, y, text, t.th.Style(theme.Strong))
}

// sun is the row of the sun at a moment, and whether it is up. It goes from
// sunrise to sunset as a bow; where neither is known, from 6 to 18.
func (t track) sun(at time.Duration) (up bool, row int) {
	rise, set := t.Rise, t.Set
	if set <= rise {
		rise, set = 6, 18
	}
	wall := t.Lit.Add(at)
	hour := float64(wall.Hour()) + float64(wall.Minute())/60
	if hour <= rise || hour >= set {
		return false, 0
	}
	height := math.Sin(math.Pi * (hour - rise) / (set - rise))
	return true, min(max(int(math.Round((1-height)*float64(t.ground-1))), 0), t.ground-1)
}
