package report

import (
	"fmt"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/picture"
	"chargehand/model/solve"
	"chargehand/model/words"
)

// Moment is the shaft at one time of the day, drawn to scale, with what goes on at
// each height.
type Moment struct {
	ID, Time, Why string
	Zones         []Zone
	Shapes        []Shape
	Marks         []Tick // heights in cm beside the shaft
	Says          string
	Doubt         string // what the zones rest on, where that is little
}

// Zone is one line of the table beside the shaft.
type Zone struct{ From, To, What, Wall, Middle string }

// Shape is one piece of the drawing; Class names what it is.
type Shape struct {
	Class string
	Path  string
}

// The drawing of a shaft: its height, where its axis stands, and how wide the bore at
// the mark is at most.
const (
	shaftHeight, shaftAxis, shaftWide = 300.0, 110.0, 150.0
)

// moments are the shaft when the first ore was in, at the moment with most to see,
// when the last ore was in, and late in the burn-down; those that there were.
func moments(c course) []Moment {
	type at struct {
		why  string
		when time.Duration
	}
	var want []at
	r := c.end.Reading()
	for _, ch := range r.Charges {
		if ch.Ore.Known() && ch.Ore.P50 > 0 {
			want = append(want, at{words.MomentFirstOre, ch.At + time.Minute})
			break
		}
	}
	if len(r.Charges) > 0 {
		want = append(want, at{words.MomentMost, c.end.MostToSee()})
	}
	if when, _, in := r.LastOreIn(); in {
		want = append(want, at{words.MomentLastOre, when + time.Minute})
	}
	for _, t := range c.over.Turns {
		if t.Phase == entry.BurnsDown {
			want = append(want, at{words.MomentBurnDown, t.At + 15*time.Minute})
		}
	}
	slices.SortStableFunc(want, func(a, b at) int { return int(a.when - b.when) })
	var solver solve.Solver
	var all []Moment
	for _, w := range want {
		if w.when > c.over.Span || len(all) > 0 && all[len(all)-1].Time == clock(c.end, w.when) {
			continue
		}
		m := c.end.AsOf(fold.All, w.when)
		if j, ok := m.Job(); ok {
			m = m.Solved(j.Run(&solver))
		}
		reading := m.Reading()
		one := shaftAt(reading)
		if len(one.Zones) == 0 {
			continue
		}
		one.ID, one.Time, one.Why = fmt.Sprintf("shaft-%d", len(all)+1), clock(c.end, w.when), w.why
		all = append(all, one)
	}
	return all
}

// shaftAt draws a reading.
func shaftAt(r *figure.Reading) Moment {
	p := picture.From(r)
	m := Moment{Doubt: words.ZonesDoubt(r)}
	for _, z := range r.Zones {
		row := Zone{From: words.Number(z.Top, 0), To: words.Number(z.Bottom, 0), What: words.Process(z.What), Wall: words.NotKnown}
		row.Middle = words.Units{}.About(z.Spread.P10, z.Degrees, z.Spread.P90)
		if z.WallSide.Known {
			row.Wall = words.Units{}.About(z.WallSpread.P10, float64(z.WallSide.Value), z.WallSpread.P90)
		}
		m.Zones = append(m.Zones, row)
	}
	high := max(p.Top, p.Burden, 1) - min(p.Floor, 0)
	y := func(cm float64) float64 { return 10 + (shaftHeight-20)*(max(p.Top, p.Burden, 1)-cm)/high }
	wide := shaftWide / max(p.BoreTop, p.Bore, p.BoreAt(p.Floor), 1)
	half := func(cm float64) float64 { return wide * p.BoreAt(cm) / 2 }
	add := func(class string, top, bottom float64) {
		if top > bottom {
			m.Shapes = append(m.Shapes, Shape{class, fmt.Sprintf("M%s %sL%s %sL%s %sL%s %sZ",
				place(shaftAxis-half(top)), place(y(top)), place(shaftAxis+half(top)), place(y(top)),
				place(shaftAxis+half(bottom)), place(y(bottom)), place(shaftAxis-half(bottom)), place(y(bottom)))})
		}
	}
	for _, g := range p.Heats {
		add(fmt.Sprintf("heat%d", int(g.Heat)), g.Top, g.Bottom)
	}
	for _, s := range p.Slices {
		add("ore", s.OreTop, s.OreBottom)
	}
	add("hearth", min(0, p.Burden), p.Floor)
	add("slag", p.Bath, p.Floor)
	m.Shapes = append(m.Shapes, Shape{"wall", fmt.Sprintf("M%s %sL%s %sM%s %sL%s %s",
		place(shaftAxis-half(p.Top)), place(y(p.Top)), place(shaftAxis-half(p.Floor)), place(y(p.Floor)),
		place(shaftAxis+half(p.Top)), place(y(p.Top)), place(shaftAxis+half(p.Floor)), place(y(p.Floor)))})
	side := -1.0
	if p.TuyereRight {
		side = 1
	}
	m.Shapes = append(m.Shapes, Shape{"tuyere", fmt.Sprintf("M%s %sL%s %s", place(shaftAxis+side*(half(0)+14)), place(y(3)), place(shaftAxis+side*(half(0)-10)), place(y(0)))})
	for _, cm := range []float64{p.Mark, p.Burden, 0, p.Floor} {
		if n := len(m.Marks); (cm != p.Burden || p.BurdenKnown) && (n == 0 || m.Marks[n-1].At+14 < y(cm)) {
			m.Marks = append(m.Marks, Tick{y(cm), words.Number(cm, 0) + " cm"})
		}
	}
	m.Says = words.ReportShaftSays(p.Burden, p.BurdenKnown, len(m.Zones))
	return m
}
