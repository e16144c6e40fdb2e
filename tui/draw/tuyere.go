package draw

import (
	"math"

	"chargehand/tui/theme"
)

// tuyereLong is how many columns of a tuyere are drawn outside the wall.
const tuyereLong = 7

// tuyere draws the tuyere through its wall at its own angle, its mouth at the
// height of 0 cm, open while the blast is on.
func (s *shaft) tuyere() {
	row := s.row(0)
	from, to := s.span(row)
	copper := s.Style(theme.Copper)
	mouth, out := from, -1
	pipe, slope, nozzle := s.M.Pipe, s.M.Slope, s.M.Nozzle
	outer := s.parts.scale + 1
	if s.pic.TuyereRight {
		mouth, out = to, 1
		slope, nozzle = s.M.SlopeR, s.M.NozzleR
		outer = s.words - 2
	}
	if !s.pic.BlastOn {
		nozzle = s.M.Shut
	}
	rise := math.Tan(s.pic.Angle*math.Pi/180) * s.perCell / s.perRow
	before := 0
	for i := 1; i <= tuyereLong && (outer-mouth-out*i)*out >= 0; i++ {
		up := int(math.Round(rise * float64(i-1))) // the wall's own column stays level with the mouth
		c := pipe
		if up > before {
			c = slope
		}
		before = up
		s.g.Set(mouth+out*i, row-up, c, copper)
	}
	s.g.Set(mouth, row, nozzle, copper.On(s.Style(theme.Number).Paper))
}
