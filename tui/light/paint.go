package light

import (
	"chargehand/model/entry"
	"chargehand/model/picture"
	"chargehand/model/plan"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/letter"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint shows how much is still a guess and the rows at the left, and at the right
// the furnace that they make, full of charcoal; in a small window the rows alone.
func (f Screen) Paint(g cell.Grid, sh *screen.Shared) {
	title, asks := words.DoSmelt, words.LightAsks
	if f.mends {
		title, asks = sh.Smelt.ID(), words.LightMends
	}
	top, _ := g.Bounds().CutTop(draw.TopRows)
	v := screen.TopOf(sh, title, asks)
	if f.mends {
		v.Tag = modelwords.Mark(sh.Smelt.Light())
	}
	sh.Pen().Top(g.Sub(top), v)
	body := screen.Body(g)
	w, h := g.Size()
	size := scene.SizeOf(w, h)
	if size == scene.Cramped {
		f.paintRows(g.Sub(body), sh, shapeOf(size))
		return
	}
	left := map[scene.Size]int{scene.Small: 54, scene.Middle: 71, scene.Large: 110}[size]
	form, beside := body.CutLeft(left)
	g.Fill(cell.Rect{X: left, Y: body.Y, W: 1, H: body.H}, sh.Theme.Marks().VLine, sh.Theme.Style(theme.Frame))
	_, beside = beside.CutLeft(1)
	f.beside(g.Sub(beside), sh, size)
	_, form = form.CutTop(f.answer(g.Sub(form), sh, size))
	f.paintRows(g.Sub(form), sh, shapeOf(size))
}

// answer says how much is not measured yet and what would help most, and gives the
// rows that it took.
func (f Screen) answer(g cell.Grid, sh *screen.Shared, size scene.Size) int {
	th := sh.Theme
	w, _ := g.Size()
	left := f.unmeasured()
	n, of := len(left), len(numbers)
	note := words.FormAllTheSame
	if f.mends {
		note = words.FormMends
	}
	if n == 0 {
		note = words.FormNoneGuessed
	}
	if size == scene.Small {
		g.Text(2, 0, words.UnmeasuredLine(n, of), th.Style(theme.Strong))
		if n > 0 {
			first := f.toMeasure(left[0])
			x := 2 + g.Text(2, 1, first.Do, th.Style(theme.Now))
			g.TextIn(cell.Rect{X: x, Y: 1, W: w - x - 1, H: 1}, ": "+first.Tells, th.Style(theme.Quiet))
		} else {
			g.TextIn(cell.Rect{X: 2, Y: 1, W: w - 3, H: 1}, note, th.Style(theme.Quiet))
		}
		return 3
	}
	scale, x := letter.Small, 41
	if size == scene.Large {
		scale, x = letter.Middle, 64
	}
	_, rows := scale.Size(words.Unmeasured(n, of))
	g.Text(2, 0, words.FormUnmeasured, th.Style(theme.Quiet))
	scale.Text(g, 2, 1, words.Unmeasured(n, of), th.Style(theme.Strong), th.ASCII)
	g.TextIn(cell.Rect{X: 2, Y: rows + 2, W: w - 3, H: 1}, note, th.Style(theme.Strong))
	if n > 0 {
		first := f.toMeasure(left[0])
		g.Text(x, 0, words.FormHelpsMost, th.Style(theme.Quiet))
		g.TextIn(cell.Rect{X: x, Y: 1, W: w - x, H: 1}, first.Do, th.Style(theme.Now))
		y := 2 + g.Wrap(cell.Rect{X: x, Y: 2, W: w - x - 1, H: 2}, first.Tells, th.Style(theme.Text))
		for i, id := range left[1:min(n, 3)] {
			g.TextIn(cell.Rect{X: x, Y: y + i, W: w - x, H: 1}, words.Then(f.toMeasure(id).Do), th.Style(theme.Text))
		}
	}
	g.Fill(cell.Rect{Y: rows + 3, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	return rows + 4
}

// lessons are the last ones of the furnace or the ore that the form begins with.
func (f Screen) lessons(sh *screen.Shared) []entry.Lesson {
	s := f.starters[f.starter]
	return sh.House().LessonsFor(s.Furnace.UID, act.MixOf(s.Lots), act.MostLessons)
}

// beside paints what the form makes so far, and the last lessons: below it where there
// is room, in its place while what is tried is asked.
func (f Screen) beside(g cell.Grid, sh *screen.Shared, size scene.Size) {
	all := f.lessons(sh)
	w, h := g.Size()
	rows := 0
	for _, l := range all {
		rows += g.Rows(words.LessonLine(l.Text), w-4)
	}
	rows = min(rows, h-3)
	shown := f.at(f.row) == trying
	if len(all) == 0 || size == scene.Small && !shown {
		f.furnace(g, sh)
		return
	}
	at := cell.Rect{Y: h - rows, W: w, H: rows}
	if size == scene.Small {
		at = cell.Rect{Y: 1, W: w, H: h - 1}
	} else {
		f.furnace(g.Sub(cell.Rect{W: w, H: h - rows - 2}), sh)
	}
	role := theme.Quiet
	if shown {
		role = theme.Now
	}
	g.Text(3, at.Y-1, words.LessonsHead, sh.Theme.Style(role))
	act.Lessons(g, sh, cell.Rect{X: 1, Y: at.Y, W: w - 1, H: at.H}, all)
}

// furnace paints what the form makes so far.
func (f Screen) furnace(g cell.Grid, sh *screen.Shared) {
	th, u := sh.Theme, sh.Units
	w, h := g.Size()
	l, _, _ := f.light(f.starters[f.starter], u) // what cannot be read is drawn as usual
	pic, fill := picture.Filled(l)
	at := f.at(f.row)
	v := draw.FilledView{Bore: at == boreCm, Mark: at == stackCm, Rim: at == rimCm, Measure: at == charcoalKg}
	bucket := f.rows[charcoalName].input.Trimmed()
	narrow := w < 40
	kg := u.Spread(fill.Mass.P10, fill.Mass.P50, fill.Mass.P90, "kg", 1)
	said := []string{words.FillIs(kg)}
	if narrow {
		said[0] = words.FillShort(kg)
	}
	if fill.Measures.Known {
		said = append(said, words.FillMeasures(modelwords.Number(fill.Measures.Value, 0), bucket))
	}
	if l.Furnace.Bore.Positive() {
		about := func(low, high float64) string {
			round := func(v float64) float64 { return float64(int(v*fill.Area/10+0.5)) * 10 }
			return u.Range(round(low), round(high), "l/min", 0)
		}
		blast := words.BlastFor(about(plan.AdvisedBlast.P10, plan.AdvisedBlast.P90), about(plan.UsedBlast.P10, plan.UsedBlast.P90))
		if narrow {
			blast = words.BlastShort(about(plan.AdvisedBlast.P10, plan.AdvisedBlast.P90))
		}
		said = append(said, blast)
	}
	if pic.Usual {
		said = append(said, modelwords.UsualSizes)
	}
	rows := 0
	for _, s := range said {
		rows += g.Rows(s, w-4)
	}
	sh.Pen().Filled(g.Sub(cell.Rect{W: w, H: h - rows - 1}), pic, fill, bucket, v)
	y := h - rows
	for i, s := range said {
		role := theme.Quiet
		if i == 0 {
			role = theme.Strong
		}
		y += g.Wrap(cell.Rect{X: 3, Y: y, W: w - 4, H: h - y}, s, th.Style(role))
	}
}
