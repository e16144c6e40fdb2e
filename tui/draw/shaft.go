package draw

import (
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/words"
	"math"
	"strconv"
	"strings"

	"chargehand/model/figure"
	"chargehand/model/picture"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// shaftColumnsOf says where the parts of the shaft picture stand.
type shaftColumnsOf struct {
	scale  int // columns of the centimetre scale
	beside int // columns on the side of the tuyere
	widest int // widest bore, in cells
	gap    int // between the far wall and the words
	short  bool
}

func shaftParts(w int) shaftColumnsOf {
	switch {
	case w < 40:
		return shaftColumnsOf{scale: 3, beside: 2, widest: 7, gap: 1, short: true}
	case w < 60:
		return shaftColumnsOf{scale: 4, beside: 3, widest: 14, gap: 1}
	}
	return shaftColumnsOf{scale: 5, beside: 6, widest: 34, gap: 2}
}

// shaft is the picture of the shaft while it is painted: rows are heights, to
// scale, and so are columns as long as the bore fits.
type shaft struct {
	Pen
	g       cell.Grid
	pic     picture.Picture
	perRow  float64 // cm a row
	perCell float64 // cm a column
	middle  int     // column of the axis
	first   int     // row of the top of the picture
	rows    int
	words   int // first column of the words
	taken   []bool
	parts   shaftColumnsOf
	formula bool // what happens is said as chemistry
}

// Shaft paints the shaft with its scale on the left and what happens at each
// height on the right, in plain words or as chemistry.
func (p Pen) Shaft(g cell.Grid, pic picture.Picture, formula bool) {
	w, h := g.Size()
	if w < 24 || h < 8 {
		return
	}
	s := shaft{Pen: p, g: g, pic: pic, first: 1, rows: h - 1, parts: shaftParts(w), formula: formula}
	if pic.Usual {
		s.rows--
		g.TextIn(cell.Rect{X: 1, Y: h - 1, W: w - 1, H: 1}, modelwords.UsualSizes, p.Style(theme.Quiet))
	}
	s.perRow = (pic.Top - pic.Floor) / float64(s.rows-1)
	s.perCell = math.Max(s.perRow/2, math.Max(pic.Bore, pic.BoreTop)/float64(s.parts.widest))
	left, right := s.parts.beside, s.parts.gap
	if pic.TuyereRight {
		left, right = right, left
	}
	s.middle = s.parts.scale + left + 1 + s.parts.widest/2
	s.words = s.middle + (s.parts.widest+1)/2 + 1 + right
	s.taken = make([]bool, h)

	s.scale()
	s.inside()
	s.walls()
	s.mark()
	s.numbers()
	s.tuyere()
	s.labels()
}

// row is where a height stands; cm is the height of the middle of a row.
func (s *shaft) row(cm float64) int {
	return s.first + min(max(int((s.pic.Top-cm)/s.perRow), 0), s.rows-1)
}

func (s *shaft) cm(row int) float64 {
	return s.pic.Top - (float64(row-s.first)+0.5)*s.perRow
}

// span is the first and the last column inside the walls at a row.
func (s *shaft) span(row int) (from, to int) {
	n := max(int(math.Round(s.pic.BoreAt(s.cm(row))/s.perCell)), 5)
	from = s.middle - n/2
	return from, from + n - 1
}

// heightUnit is the unit of heights in the picture, heatUnit that of what it
// says beside them.
const heightUnit, heatUnit = "cm", "°C"

// scale draws the scale.
func (s *shaft) scale() {
	s.g.TextRight(s.parts.scale, 0, s.Units.Name(heightUnit), s.Style(theme.Quiet))
	step := 5.0
	for s.Units.Metric(step, heightUnit) > 10 { // inches stand half as close
		step /= 2
	}
	step = math.Floor(step)
	for s.Units.Metric(step, heightUnit)/s.perRow < 1.9 {
		step *= 2
	}
	floor, top := s.Units.Shown(s.pic.Floor, heightUnit), s.Units.Shown(s.pic.Top, heightUnit)
	for h := math.Ceil(floor/step) * step; h <= top; h += step {
		style := s.Style(theme.Quiet)
		if h == 0 {
			style = s.Style(theme.Strong)
		}
		s.g.TextRight(s.parts.scale, s.row(s.Units.Metric(h, heightUnit)), strconv.Itoa(int(h)), style)
	}
}

// inside fills the shaft: glow as shading, ore as grains in it.
func (s *shaft) inside() {
	dark := s.Style(theme.Number)
	for row := s.first; row < s.first+s.rows; row++ {
		from, to := s.span(row)
		cm := s.cm(row)
		slice, stands := s.pic.SliceAt(cm)
		heat := int(s.pic.HeatAt(cm))
		glow, glowing := s.M.Glow[heat], s.Style(theme.Glow(heat))
		ore := stands && s.hasOre(row, slice)
		every := 2
		if heat >= int(picture.Red) {
			every = 3 // or the grains would hide the glow
		}
		for x := from; x <= to; x++ {
			side := (x + row) & 1
			grain := ore && (x+row)%every == 0
			switch {
			case cm < s.pic.Bath:
				s.g.Set(x, row, s.M.Bath, s.Style(theme.Slag))
			case !stands:
				s.g.Set(x, row, ' ', dark)
			case grain:
				s.g.Set(x, row, s.M.Grain, s.Style(theme.Ore))
			default:
				s.g.Set(x, row, glow[side], glowing)
			}
		}
		if s.pic.Bloom > 0 && cm < s.pic.Floor+s.pic.Bloom {
			third := (to - from + 1) / 3
			s.g.Fill(cell.Rect{X: from + third, Y: row, W: to - from + 1 - 2*third, H: 1}, s.M.Bloom, s.Style(theme.Bloom))
		}
	}
}

// hasOre tells whether the ore of a slice reaches into a row.
func (s *shaft) hasOre(row int, slice picture.Slice) bool {
	cm := s.cm(row)
	if slice.OreTop <= slice.OreBottom {
		return false
	}
	if cm > slice.OreBottom {
		return true
	}
	return row == s.row(slice.Top) // a thin one still shows
}

// walls draws the clay from the rim to the floor.
func (s *shaft) walls() {
	clay := s.Style(theme.Clay)
	last := s.first + s.rows - 1
	for row := s.first; row <= last; row++ {
		from, to := s.span(row)
		s.g.Set(from-1, row, s.M.Wall, clay)
		s.g.Set(to+1, row, s.M.Wall, clay)
	}
	from, to := s.span(last)
	s.g.Fill(cell.Rect{X: from, Y: last, W: to - from + 1, H: 1}, s.M.Floor, clay)
	s.g.Set(from-1, last, s.M.CornerLeft, clay)
	s.g.Set(to+1, last, s.M.CornerRight, clay)
}

// mark draws the charging mark: across the empty shaft, or on the wall where
// burden stands there.
func (s *shaft) mark() {
	row := s.row(s.pic.Mark)
	from, to := s.span(row)
	if _, stands := s.pic.SliceAt(s.cm(row)); !stands {
		s.g.Fill(cell.Rect{X: from, Y: row, W: to - from + 1, H: 1}, s.M.Fine, s.Style(theme.Number))
	}
	s.g.Fill(cell.Rect{X: to + 2, Y: row, W: max(s.words-to-2, 0), H: 1}, s.M.Fine, s.Style(theme.Text))
	s.g.Text(s.words, row, modelwords.MarkWord, s.Style(theme.Text))
	s.taken[row] = true
}

// numbers writes the number of each charge at the top of its layer, as many as
// have room.
func (s *shaft) numbers() {
	before := s.first - 1
	for _, slice := range s.pic.Slices {
		row := s.row(slice.Top)
		if slice.Charge == 0 || row <= before || slice.Top-slice.Bottom < s.perRow/4 {
			continue
		}
		before = row
		if s.perRow > 4.5 {
			before++ // close lines of numbers are hard to read
		}
		text := " " + strconv.Itoa(slice.Charge) + " "
		s.g.Text(s.middle-len(text)/2, row, text, s.Style(theme.Number))
	}
}

// farthestLabel is how many rows a label may stand above its own height before
// it says more wrong than right.
const farthestLabel = 2

// labels writes what happens at each height and how hot it is: from the tuyere
// up, where it matters most, each at its height or the next free row above.
func (s *shaft) labels() {
	w, _ := s.g.Size()
	end := w - 1
	s.header(end)
	below := s.first + s.rows
	for i := len(s.pic.Labels) - 1; i >= 0; i-- {
		l := s.pic.Labels[i]
		own := s.row(l.At())
		row := min(own, below-1)
		for row >= s.first && s.taken[row] {
			row--
		}
		if row < s.first || own-row > farthestLabel {
			continue
		}
		if s.formula {
			below = s.reaction(end, row, below, l)
			continue
		}
		below = row
		name := modelwords.Process(l.What)
		if s.parts.short {
			name = modelwords.ProcessShort(l.What)
		}
		s.label(end, row, name, l.Degrees)
	}
	s.hearth(end)
}

// hearth writes how hot the hearth is, below the tuyere.
func (s *shaft) hearth(end int) {
	row := s.row(s.pic.Floor / 2)
	switch {
	case row <= s.row(0) || s.taken[row]:
	case s.pic.Hearth.Known:
		if s.formula {
			s.bathChemistry(end)
			return
		}
		s.label(end, row, modelwords.HearthWord, float64(s.pic.Hearth.Value))
		for i, text := range s.slag() {
			if row+1+i < s.first+s.rows {
				s.g.TextIn(cell.Rect{X: s.words, Y: row + 1 + i, W: end - s.words, H: 1}, text, s.Style(theme.Quiet))
			}
		}
	case s.pic.Bath <= s.pic.Floor:
		s.g.TextIn(cell.Rect{X: s.words, Y: row, W: end - s.words, H: 1}, modelwords.HearthUnknown, s.Style(theme.Quiet))
	}
}

// slag says how it runs, and how likely that is; of a bath of which nothing more
// is known, that it is a guess.
func (s *shaft) slag() []string {
	if s.pic.Running != (physics.Running{}) {
		word, chance := modelwords.RunsShort(s.pic.Running)
		return []string{word, chance}
	}
	if s.pic.Bath > s.pic.Floor {
		return []string{modelwords.SlagIsGuess}
	}
	return nil
}

// label writes one name with its temperature.
func (s *shaft) label(end, row int, name string, degrees float64) {
	hot := s.hot(degrees)
	s.g.TextRight(end, row, hot, s.Style(theme.Text))
	s.g.TextIn(cell.Rect{X: s.words, Y: row, W: end - len(hot) - 1 - s.words, H: 1}, name, s.Style(theme.Text))
}

// hot is a temperature to ten degrees.
func (s *shaft) hot(degrees float64) string {
	return strconv.Itoa(int(math.Round(s.Units.Shown(degrees, heatUnit)/10)) * 10)
}

// header says what the words and the figures are, and on what they rest: of
// all of them the weakest.
func (s *shaft) header(end int) {
	basis := figure.Measured
	for _, l := range s.pic.Labels {
		basis = basis.Weaker(l.Basis)
	}
	unit, rests := s.Units.Name(heatUnit), ""
	switch {
	case s.pic.Stale:
		rests = modelwords.BeingWorkedOut
	case len(s.pic.Labels) > 0:
		rests = modelwords.Basis(basis)
	}
	x := s.parts.scale + 1
	if s.formula {
		x += s.g.Text(x, 0, words.ChemistryHead, s.Style(theme.Now)) + 1
	}
	if s.g.Width(unit+" "+rests) > end-x {
		rests = s.M.Waiting
	}
	s.g.TextRight(end, 0, strings.TrimSpace(unit+" "+rests), s.Style(theme.Quiet))
}
