package draw

import (
	"strings"

	"chargehand/model/figure"
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
	hot := s.hot(l.Zone)
	lines := s.chemistry(end, len(hot), below-top, l)
	first := max(top, min(row-(len(lines)-1)/2, below-len(lines)))
	if s.words+s.g.Width(lines[0].text)+1+len(hot) <= end { // a formula cut short is another one; a temperature left out is not
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
		lines = s.equation(short, room-hot-1, theme.Strong)
	}
	add := func(more ...chemLine) {
		if len(more) > 0 && more[0].text != "" && len(lines)+len(more) <= rows {
			lines = append(lines, more...)
		}
	}
	add(chemLine{modelwords.GasAt(l.Gas), theme.Quiet})
	for _, r := range reactions[1:] {
		add(s.equation(r.Full, room, theme.Text)...)
	}
	if l.WallSide.Known {
		add(chemLine{s.Units.InTheMiddle(l.Degrees), theme.Quiet})
	}
	return lines
}

// bathChemistry writes under the tuyere how hot the hearth is, how its slag runs,
// and why one with less iron would not, as much as there is room for.
func (s *shaftView) bathChemistry(end int) {
	var lines []string
	if s.pic.Stiff.Known {
		lines = append(lines, modelwords.SlagIs(s.pic.Stiff.Value), s.Units.MeltsAt(float64(s.pic.Melts.Value)))
		for _, p := range s.pic.Poorer {
			lines = append(lines, modelwords.SlagWith(p, end-s.words))
		}
	}
	row, last := s.row(0)+1, s.first+s.rows-1
	if s.taken[row] || row > last {
		return
	}
	s.label(end, row, modelwords.HearthWord, figure.Zone{Degrees: float64(s.pic.Hearth.Value)})
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
