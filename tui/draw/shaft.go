package draw

import (
	"strconv"
	"strings"

	"chargehand/model/figure"
	"chargehand/model/picture"
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/cell"
	"chargehand/tui/shaft"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// shaftColumns says where the parts of the shaft picture stand.
type shaftColumns struct {
	scale int // column just after the numbers of the scale
	body  int // first column of the furnace, its walls included
	wide  int // columns of it
	wall  int // columns of a wall
	load  int // the numbers of the charges
	curve int // the curve of temperatures, 0 for none
	words int
	short bool
}

// CurveColumns is how wide the curve of temperatures is.
const CurveColumns = 22

func shaftParts(w int, bare bool) shaftColumns {
	switch {
	case bare && w >= 60:
		return shaftColumns{scale: 3, body: 6, wide: 54, wall: 5}
	case bare && w >= 34:
		return shaftColumns{scale: 3, body: 5, wide: 24, wall: 3}
	case w < 45:
		return shaftColumns{scale: 3, body: 5, wide: 16, wall: 1, load: 22, words: 25, short: true}
	case w < 90:
		return shaftColumns{scale: 3, body: 5, wide: 24, wall: 3, load: 31, words: 34}
	}
	return shaftColumns{scale: 3, body: 6, wide: 40, wall: 5, load: 49, curve: 58, words: 83}
}

// shaftView is the picture of the shaft while it is painted.
type shaftView struct {
	Pen
	g       cell.Grid
	pic     picture.Picture
	place   shaft.Place
	first   int // row of the top of the picture
	rows    int
	words   int // first column of the words
	taken   []bool
	parts   shaftColumns
	formula bool // what happens is said as chemistry
}

// ShaftView is what is to be shown of a shaft.
type ShaftView struct {
	Formula bool // what happens is said as chemistry
	Past    bool // it is no furnace of now
	Bare    bool // the furnace and its scale alone
}

// Shaft paints the shaft with its scale on the left and what happens at each
// height on the right, in plain words or as chemistry.
func (p Pen) Shaft(g cell.Grid, pic picture.Picture, v ShaftView) {
	w, h := g.Size()
	if w < 24 || h < 8 {
		return
	}
	s := shaftView{Pen: p, g: g, pic: pic, first: 1, rows: h - 1, parts: shaftParts(w, v.Bare), formula: v.Formula}
	if pic.Usual && !v.Bare {
		s.rows--
		g.TextIn(cell.Rect{X: 1, Y: h - 1, W: w - 2, H: 1}, modelwords.UsualSizes, p.Style(theme.Quiet))
	}
	s.words = s.parts.words
	s.place = shaft.Fit(pic, cell.Rect{X: s.parts.body, Y: s.first, W: s.parts.wide, H: s.rows}, s.parts.wall)
	s.taken = make([]bool, h+1)
	shaft.Paint(g, p.Theme, s.place, shaft.View{Pic: pic, Past: v.Past})
	shaft.Scale(g, p.Theme, p.Units, s.place, s.parts.scale, pic.Floor) // over the pipe, which reaches that far
	if v.Bare {
		return
	}
	if s.parts.curve > 0 && !v.Formula {
		shaft.Curve(g, p.Theme, s.place, shaft.View{Pic: pic}, s.parts.curve, CurveColumns)
	}
	s.mark()
	s.numbers()
	s.labels()
}

func (s *shaftView) row(cm float64) int { return s.place.Row(cm) }

// heatUnit is the unit of what the picture says beside heights.
const heatUnit = "°C"

// mark names the charging mark.
func (s *shaftView) mark() {
	row := s.row(s.pic.Mark)
	s.g.Text(s.words, row, modelwords.MarkWord, s.Style(theme.Strong))
	s.taken[row] = true
}

// numbers writes the number of each charge beside the top of its layer, outside
// the wall: nothing is written on the glow.
func (s *shaftView) numbers() {
	before := s.first - 1
	for _, slice := range s.pic.Slices {
		row := s.row(slice.Top - s.place.PerRow/2)
		if slice.Charge == 0 || row <= before || slice.Top-slice.Bottom < s.place.PerRow/4 {
			continue
		}
		before = row
		s.g.TextRight(s.parts.load+2, row, strconv.Itoa(slice.Charge), s.Style(theme.Strong))
	}
}

// farthestLabel is how many rows a label may stand above its own height before
// it says more wrong than right.
const farthestLabel = 2

// labels writes what happens at each height and how hot it is: from the tuyere
// up, where it matters most, each at its height or the next free row above.
func (s *shaftView) labels() {
	w, _ := s.g.Size()
	end := w - 1
	s.header(end)
	below := s.first + s.rows
	if !s.formula {
		below = s.hearth(end)
	}
	for i := len(s.pic.Labels) - 1; i >= 0; i-- {
		l := s.pic.Labels[i]
		own := s.row(l.At())
		if s.formula {
			row := min(own, below-1)
			for row >= s.first && s.taken[row] {
				row--
			}
			if row < s.first || own-row > farthestLabel {
				continue
			}
			below = s.reaction(end, row, below, l)
			continue
		}
		below = s.placed(end, own, below, modelwords.Process(l.What), l.Zone)
	}
	if s.formula {
		s.hearth(end)
	}
}

// placed writes one name at its height or a little above, with its temperature
// under it, or where there is one row beside it; without one where it has no room for
// its spread, or it would read as measured. It returns the first row taken.
func (s *shaftView) placed(end, own, below int, name string, z figure.Zone) int {
	for _, rows := range []int{2, 1} {
		for row := min(own, below-rows); row >= s.first && own-row <= farthestLabel; row-- {
			if s.taken[row] || rows == 2 && s.taken[row+1] {
				continue
			}
			s.g.TextIn(cell.Rect{X: s.words, Y: row, W: end - s.words, H: 1}, name, s.Style(theme.Strong))
			if rows == 2 {
				s.g.TextIn(cell.Rect{X: s.words, Y: row + 1, W: end - s.words, H: 1}, s.about(z), s.Style(theme.Quiet))
			} else if hot := s.roughly(z.AtTheWall()); s.words+s.g.Width(name)+1+s.g.Width(hot) <= end {
				s.g.TextRight(end, row, hot, s.Style(theme.Quiet))
			}
			return row
		}
	}
	return below
}

// about is how hot a zone is at the wall with the spread, both to fifty degrees: it
// is known no better.
func (s *shaftView) about(z figure.Zone) string {
	text := s.roughly(z.AtTheWall())
	if s.parts.short { // it stands over all of them
		return text
	}
	return words.Wall(text)
}

// roughly is a temperature with its spread, without its unit where there is little
// room.
func (s *shaftView) roughly(celsius float64, spread physics.Band) string {
	if spread.P90 <= spread.P10 {
		spread.P10, spread.P90 = celsius, celsius
	}
	text := s.Units.Roughly(spread.P10, celsius, spread.P90)
	if s.parts.short || s.formula { // it stands over all of them
		text = strings.Replace(text, " "+s.Units.Name(heatUnit), "", 1)
	}
	return text
}

// hearth writes how hot the hearth is, below the tuyere, and what is known of what
// lies in it. It returns the first row taken.
func (s *shaftView) hearth(end int) int {
	below := s.first + s.rows
	row := min(s.row(s.pic.Floor*0.6), below-2)
	if row <= s.row(0) || s.taken[row] {
		return below
	}
	line := func(y int, text string, r theme.Role) {
		s.g.TextIn(cell.Rect{X: s.words, Y: y, W: end - s.words, H: 1}, text, s.Style(r))
	}
	switch {
	case !s.pic.Hearth.IsZero() && s.formula:
		s.bathChemistry(end)
	case !s.pic.Hearth.IsZero():
		name := words.HearthIs
		if s.pic.Bath > s.pic.Floor {
			name = words.SlagAndBloom
		}
		line(row, name, theme.Strong)
		line(row+1, s.roughly(s.pic.Hearth.P50, s.pic.Hearth), theme.Quiet)
		y := row + 2
		add := func(texts ...string) { // all of them or none
			if y+len(texts) > s.first+s.rows {
				return
			}
			for i, text := range texts {
				line(y+i, text, theme.Quiet)
			}
			y += len(texts)
		}
		if s.pic.Running != (physics.Running{}) {
			word, chance := modelwords.RunsShort(s.pic.Running)
			add(word+":", chance)
		}
		if needs := modelwords.LevelNeeds(s.pic.NoLevel); len(needs) > 0 && s.pic.Bath <= s.pic.Floor {
			add(s.g.Rowed(words.LevelUnknown+": "+strings.Join(needs, ", "), end-s.words)...)
		}
	case s.pic.Bath <= s.pic.Floor:
		line(row, modelwords.HearthUnknown, theme.Quiet)
	}
	return row
}

// header says what the words are, and on what they rest: of all of them the
// weakest.
func (s *shaftView) header(end int) {
	basis := figure.Measured
	for _, l := range s.pic.Labels {
		basis = basis.Weaker(l.Basis)
	}
	rests := ""
	switch {
	case s.pic.Stale:
		rests = modelwords.BeingWorkedOut
	case len(s.pic.Labels) > 0:
		rests = modelwords.Basis(basis)
	}
	if s.formula {
		s.g.Text(s.parts.scale+1, 0, words.ChemistryHead, s.Style(theme.Now))
	} else if !s.parts.short {
		s.g.Text(s.parts.load, 0, words.ChargeWord, s.Style(theme.Quiet))
		if s.parts.curve > 0 && len(s.pic.Labels) > 0 {
			s.g.Text(s.parts.curve, 0, words.CurveHead, s.Style(theme.Quiet))
		}
	}
	s.g.TextRight(end, 0, s.heading(end, rests), s.Style(theme.Quiet))
}

// heading says of what the temperatures are and on what they rest, as much of it
// as there is room for. Where there is plenty each says itself that it is of the
// wall.
func (s *shaftView) heading(end int, rests string) string {
	unit := s.Units.Name(heatUnit)
	if len(s.pic.Labels) == 0 {
		return unit
	}
	from, wall := s.words, unit
	switch {
	case s.formula:
		from, wall = s.parts.scale+2+s.g.Width(words.ChemistryHead), words.AtTheWall(unit)
	case s.parts.short:
		from, wall = s.parts.scale+1, words.AtTheWall(unit)
	}
	said := []string{wall + ", " + rests, unit + ", " + rests, wall, unit}
	switch {
	case s.pic.Doubted:
		said = []string{wall + ", " + words.MeterNotBelieved, unit + ", " + words.MeterNotBelieved, words.MeterNotBelieved, words.MeterDoubted}
	case s.pic.BeyondReadings && !s.pic.Stale:
		guess := words.AboveIsAGuess(s.Units.Coarse(figure.HottestRead))
		said = []string{wall + ", " + guess, unit + ", " + guess, guess, unit + ", " + words.Guessed, words.Guessed}
	case s.pic.Stale:
		said = []string{wall + ", " + rests, unit + ", " + rests, unit + s.M.Waiting}
	}
	for _, text := range said {
		if s.g.Width(text) <= end-from {
			return text
		}
	}
	return said[len(said)-1]
}
