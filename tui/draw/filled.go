package draw

import (
	"chargehand/model/picture"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/shaft"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// FilledView says which size of the furnace stands out, being typed just now.
type FilledView struct{ Bore, Mark, Rim, Measure bool }

// Filled paints a furnace that is not lit, full to the mark, with its scale; the
// bore over it, and where there is room the layers beside it by the name of their
// measure.
func (p Pen) Filled(g cell.Grid, pic picture.Picture, fill picture.Filling, measure string, v FilledView) {
	w, h := g.Size()
	if w < 24 || h < 8 {
		return
	}
	parts := filledParts(w)
	place := shaft.Fit(pic, cell.Rect{X: parts.body, Y: 2, W: parts.wide, H: h - 2}, parts.wall)
	shaft.Paint(g, p.Theme, place, shaft.View{Pic: pic, Past: true, Unlit: true})
	shaft.Arch(g, p.Theme, place, pic)
	shaft.Scale(g, p.Theme, p.Units, place, parts.scale, pic.Floor) // over the pipe, which reaches that far
	p.boreOver(g, pic, place, v.Bore)
	x := parts.body + parts.wide + 2
	if w-x < 10 {
		return
	}
	taken := map[int]bool{}
	say := func(row int, text, more string, role theme.Role) {
		if taken[row] {
			return
		}
		taken[row] = true
		n := g.Text(x, row, text, p.Style(role))
		if more != "" && x+n+2+g.Width(more) < w {
			g.Text(x+n+2, row, more, p.Style(theme.Quiet))
		}
	}
	role := func(chosen bool) theme.Role {
		if chosen {
			return theme.Now
		}
		return theme.Strong
	}
	say(place.Row(pic.Mark), modelwords.MarkWord, "", role(v.Mark))
	if pic.Top > pic.Mark {
		say(place.Row(pic.Top-place.PerRow/2), words.RimWord, "", role(v.Rim))
	}
	if pic.Arch > pic.Floor {
		say(place.Row((pic.Arch+pic.Floor)/2), words.DoArch, "", theme.Quiet)
	}
	if !fill.Measures.Known {
		return
	}
	for _, s := range pic.Slices {
		if s.Charge == 0 || s.Top-s.Bottom < place.PerRow {
			continue
		}
		say(place.Row((s.Top+s.Bottom)/2), words.NumberedMeasure(measure, s.Charge), p.Units.Value(s.Top-s.Bottom, "cm", 0), role(v.Measure))
	}
}

func filledParts(w int) shaftColumns {
	if w >= 80 {
		return shaftColumns{scale: 3, body: 6, wide: 44, wall: 6}
	}
	if w >= 42 {
		return shaftColumns{scale: 3, body: 5, wide: 24, wall: 3}
	}
	return shaftColumns{scale: 3, body: 5, wide: 16, wall: 1}
}

// boreOver writes the bore over the furnace, with a line as wide as it.
func (p Pen) boreOver(g cell.Grid, pic picture.Picture, place shaft.Place, chosen bool) {
	from, to := place.Span(pic, place.Row(pic.Mark))
	s := p.Style(theme.Quiet)
	if chosen {
		s = p.Style(theme.Now)
	}
	text := " " + words.BoreIs(p.Units.Value(pic.Bore, "cm", 1)) + " "
	g.Fill(cell.Rect{X: from, Y: 1, W: to - from, H: 1}, p.M.HLine, s)
	g.Text(from+max((to-from-g.Width(text))/2, 0), 1, text, s)
}
