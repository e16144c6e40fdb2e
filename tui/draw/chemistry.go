package draw

import (
	"slices"
	"strings"

	"chargehand/model/picture"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// reaction writes what happens at a height as chemistry, as much of it as there
// is room for between the top of its zone and what stands below: the balanced
// equation before its brief form, then the gas, what else goes on there, and
// the wall. It returns the first row it took; row is where a single one stands.
func (s *shaftView) reaction(end, row, below int, l picture.Label) int {
	top := min(row, s.row(l.Top))
	for y := row; y > top; y-- {
		if s.taken[y-1] {
			top = y
		}
	}
	hot := s.roughly(l.AtTheWall())
	lines := s.chemistry(end, s.g.Width(hot), below-top, l)
	beside := s.words+s.g.Width(lines[0].text)+1+s.g.Width(hot) <= end // a formula cut short is another one; a temperature left out is not
	if !beside && len(lines) < below-top {
		lines = slices.Insert(lines, 1, chemLine{hot, theme.Quiet})
	}
	first := max(top, min(row-(len(lines)-1)/2, below-len(lines)))
	if beside {
		s.g.TextRight(end, first, hot, s.Style(theme.Text))
	}
	for i, line := range lines {
		s.g.TextIn(cell.Rect{X: s.words, Y: first + i, W: end - s.words, H: 1}, line.text, s.Style(line.role))
	}
	return first
}

// chemLine is one line beside a height.
type chemLine struct {
	text string
	role theme.Role
}

// chemistry is what is said of a zone in so many rows: the first with the
// temperature beside it, which takes so many columns.
func (s *shaftView) chemistry(end, hot, rows int, l picture.Label) []chemLine {
	room := end - s.words
	reactions := modelwords.Reactions(l.What)
	first, short := reactions[0].Full, reactions[0].Brief
	if s.parts.short {
		return []chemLine{{short.From + s.yields(short, s.M.YieldsBrief) + short.To, theme.Strong}}
	}
	lines := s.equation(first, room-hot-1, theme.Strong)
	if len(lines) > rows {
		lines = s.equation(short, room, theme.Strong)
	}
	if len(lines) > rows {
		lines = lines[:1]
	}
	add := func(more ...chemLine) {
		if len(more) > 0 && more[0].text != "" && len(lines)+len(more) <= rows {
			lines = append(lines, more...)
		}
	}
	add(chemLine{fitting(s.g, room, modelwords.GasAt(l.Gas), modelwords.GasShort(l.Gas)...), theme.Quiet})
	for _, r := range reactions[1:] {
		add(s.equation(r.Full, room, theme.Text)...)
	}
	if l.WallSide.Known {
		middle := s.roughly(l.Degrees, l.Spread)
		add(chemLine{fitting(s.g, room, modelwords.InTheMiddle(middle), modelwords.MiddleShort(middle)), theme.Quiet})
	}
	return lines
}

// bathChemistry writes under the tuyere how hot the hearth is, how its slag runs,
// and why one with less iron would not, as much as there is room for.
func (s *shaftView) bathChemistry(end int) {
	var lines []string
	if !s.pic.Melts.IsZero() {
		stiff, melts := s.pic.Stiff, s.pic.Melts
		lines = append(lines, fitting(s.g, end-s.words, modelwords.SlagIs(stiff), modelwords.SlagIsShort(stiff)),
			fitting(s.g, end-s.words, modelwords.MeltsAt(s.roughly(melts.P50, melts)), modelwords.MeltsShort(s.roughly(melts.P50, melts))))
		for _, p := range s.pic.Poorer {
			lines = append(lines, modelwords.SlagWith(p, end-s.words))
		}
		lines = slices.DeleteFunc(lines, func(text string) bool { return s.g.Width(text) > end-s.words }) // half a number is read as a whole one
	}
	row, last := s.row(0)+1, s.first+s.rows-1
	if s.taken[row] || row > last {
		return
	}
	hot := s.roughly(s.pic.Hearth.P50, s.pic.Hearth)
	s.g.Text(s.words, row, modelwords.HearthWord, s.Style(theme.Text))
	if s.words+s.g.Width(modelwords.HearthWord)+1+s.g.Width(hot) <= end {
		s.g.TextRight(end, row, hot, s.Style(theme.Text))
	} else {
		lines = append([]string{hot}, lines...)
	}
	for i, text := range lines[:min(len(lines), last-row)] {
		s.g.TextIn(cell.Rect{X: s.words, Y: row + 1 + i, W: end - s.words, H: 1}, text, s.Style(theme.Quiet))
	}
}

// equation is one in a row, or broken before its arrow where it has more
// than so many columns.
func (s *shaftView) equation(e modelwords.Equation, room int, role theme.Role) []chemLine {
	arrow := s.yields(e, s.M.Yields)
	if whole := strings.Join(strings.Fields(e.From+" "+arrow+" "+e.To), " "); arrow == "" || s.g.Width(whole) <= room {
		return []chemLine{{whole, role}}
	}
	return []chemLine{{e.From, role}, {arrow + " " + e.To, role}}
}

// yields is the arrow of an equation; one with a single side has none.
func (*shaftView) yields(e modelwords.Equation, arrow string) string {
	if e.From == "" || e.To == "" {
		return ""
	}
	return arrow
}
