package furnace

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/picture"
	"chargehand/model/plan"
	"chargehand/model/shelf"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint shows the furnaces and what is known of the picked one at the left, and the picked
// one to scale at the right.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	th := sh.Theme
	fs := sh.House().Furnaces
	screen.TopBeside(g, sh, words.FurnacesTitle, words.FurnacesHold(len(fs)))
	body := screen.Body(g)
	if len(fs) == 0 {
		g.Wrap(cell.Rect{X: 2, Y: body.Y + 1, W: body.W - 4, H: 4}, words.FurnaceBare, th.Style(theme.Text))
		return
	}
	w, h := g.Size()
	at := s.at(fs)
	left := map[scene.Size]int{scene.Cramped: w, scene.Small: 50, scene.Middle: 71, scene.Large: 110}[scene.SizeOf(w, h)]
	facts, beside := body.CutLeft(left)
	if !beside.Empty() {
		g.Fill(cell.Rect{X: left, Y: body.Y, W: 1, H: body.H}, th.Marks().VLine, th.Style(theme.Frame))
		_, beside = beside.CutLeft(1)
		drawn(g.Sub(beside), sh, fs[at].Last().Furnace)
	}
	list, facts := facts.CutTop(min(len(fs), max(facts.H/5, 2)) + 1)
	listed(g.Sub(list), sh, fs, at)
	known(g.Sub(facts), sh, fs[at])
}

// listed is the list of the furnaces.
func listed(g cell.Grid, sh *screen.Shared, fs []house.Furnace, at int) {
	th := sh.Theme
	w, h := g.Size()
	rows := h - 1
	first := screen.FirstShown(at, len(fs), rows)
	t := screen.Table{Columns: screen.Fit([]screen.Column{{Width: 20, Role: theme.Strong}, {Width: 24}, {Width: 20, Role: theme.Quiet}}, w), Picked: at - first}
	for _, f := range fs[first:min(first+rows, len(fs))] {
		last := f.Last()
		t.Rows = append(t.Rows, screen.Row{Cells: []string{last.Furnace.Name, words.ShortSize(sh.Units, last.Furnace), words.VersionIs(last)}})
	}
	t.Paint(g.Sub(cell.Rect{W: w, H: rows}), th)
	g.Fill(cell.Rect{Y: h - 1, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
}

// known is what is reckoned of a furnace, and its versions.
func known(g cell.Grid, sh *screen.Shared, f house.Furnace) {
	th, u := sh.Theme, sh.Units
	w, h := g.Size()
	last := f.Last().Furnace
	y := 0
	row := func(label, value string, remarks ...string) { // the first remark there is room for
		if y >= h {
			return
		}
		g.Text(2, y, label, th.Style(theme.Text))
		x := 13 + g.Text(13, y, g.Cut(value, w-14), th.Style(theme.Strong))
		for i, r := range remarks {
			if i == len(remarks)-1 || g.Width(r) <= w-x-3 {
				g.TextIn(cell.Rect{X: x + 2, Y: y, W: w - x - 3, H: 1}, r, th.Style(theme.Quiet))
				break
			}
		}
		y++
	}
	if plan.Sized(last) {
		v := plan.ShaftOf(last)
		bucket := bucketOf(sh)
		row(words.Holds, words.Litres(v.Litres), words.FillTakes(u, v.Fill(), bucket))
		row(words.LineBlastWord, words.BlastRange(u, v.Advised.P10, v.Advised.P90), words.OneSchool)
		row("", words.BlastRange(u, v.Used.P10, v.Used.P90), words.GoodSmelts)
		pace, basis := v.Pace(plan.BlowerOf(last))
		row(words.Pace, words.MinutesAMeasure(pace.P10, pace.P90, bucket), words.BurnsAnHour(u, pace.P10, pace.P90, basis), words.KgAnHour(u, pace.P10, pace.P90))
		clay, sand := v.ClayAndSand(last)
		row(words.Clay, words.KgBand(u, clay.P10, clay.P90), words.ClayRests(last), words.BasisIs(entry.BasisGuessed))
		if sand.P90 > 0 {
			row(words.SandWord, words.KgBand(u, sand.P10, sand.P90), words.BasisIs(entry.BasisGuessed))
		}
	} else {
		y += g.Wrap(cell.Rect{X: 2, Y: y, W: w - 3, H: 2}, words.MeasureFirst, th.Style(theme.Strong))
	}
	if b := last.Blower; len(b) > 0 && b[len(b)-1].Volume.Known {
		row(words.Blower, words.BlastOf(u, b[len(b)-1]), words.BagTested, words.BagBrief)
	} else {
		row(words.Blower, words.NotMeasured, words.BagHelps)
	}
	usual := []string{words.DryingUsual, words.DryingBrief}
	if fired(f) {
		usual = nil
	}
	row(words.Dried, words.DryingSo(f), usual...)
	if y++; y >= h {
		return
	}
	g.Text(2, y, words.Versions, th.Style(theme.Quiet))
	y++
	for i := len(f.Versions) - 1; i >= 0 && y < h; i-- {
		v := f.Versions[i]
		g.Text(4, y, v.From.Format("2 Jan 06"), th.Style(theme.Quiet))
		y += max(1, g.Wrap(cell.Rect{X: 14, Y: y, W: w - 15, H: min(2, h-y)}, words.VersionSays(u, v), th.Style(theme.Text)))
	}
	for _, happened := range wallsOf(sh, f) {
		if y >= h {
			return
		}
		g.Text(4, y, happened.At.Format("2 Jan 06"), th.Style(theme.Quiet))
		y += max(1, g.Wrap(cell.Rect{X: 14, Y: y, W: w - 15, H: min(2, h-y)}, words.WallInSmelt(u.Event(happened.Seen), happened.smelt), th.Style(theme.Text)))
	}
	for i := len(f.Dryings) - 1; i >= 0 && y < h; i-- {
		d := f.Dryings[i]
		g.Text(4, y, d.At.Format("2 Jan 06"), th.Style(theme.Quiet))
		y += max(1, g.Wrap(cell.Rect{X: 14, Y: y, W: w - 15, H: min(2, h-y)}, sh.Units.Event(d.Drying), th.Style(theme.Text)))
	}
}

// bucketOf is the measure in which charcoal goes in, the usual one where the house has none
// that was weighed.
func bucketOf(sh *screen.Shared) entry.Measure {
	if m, ok := plan.MeasureFor(sh.House(), entry.Charcoal); ok && m.Mass.Positive() {
		return m
	}
	return entry.Measure{Name: words.UsualBucket, Mass: entry.Some(entry.Kilogram(plan.UsualBucket)), Guessed: true}
}

// fired tells whether small fires were lit to dry it.
func fired(f house.Furnace) bool {
	return slices.ContainsFunc(f.Dryings, func(d house.Drying) bool { return d.Fires.Value > 0 })
}

// wallThen is what a wall did in a smelt.
type wallThen struct {
	shelf.WallThen
	smelt string
}

// wallsOf is what the wall of a furnace did since its last version, the newest first: what
// is mended or measured of it afterwards makes another version.
func wallsOf(sh *screen.Shared, f house.Furnace) (all []wallThen) {
	last := f.Last()
	for _, l := range sh.Shelf.Lines {
		if l.Practice || l.Rehearsal || l.Invented || !l.In(last.Furnace) {
			continue
		}
		for i := len(l.Wall) - 1; i >= 0; i-- {
			if l.Wall[i].At.After(last.From) {
				all = append(all, wallThen{l.Wall[i], l.ID})
			}
		}
	}
	return all
}

// drawn is a furnace to scale, full of charcoal by the measure that the house has for it.
func drawn(g cell.Grid, sh *screen.Shared, f entry.Furnace) {
	l := entry.Light{Furnace: f}
	bucket := ""
	if m, ok := plan.MeasureFor(sh.House(), entry.Charcoal); ok {
		l.Measures, bucket = []entry.Measure{m}, m.Name
	}
	pic, fill := picture.Filled(l)
	sh.Pen().Filled(g, pic, fill, bucket, draw.FilledView{})
}
