package report

import (
	"fmt"
	"math"
	"strings"
	"time"

	"chargehand/model/figure"
	"chargehand/model/words"
)

// Plot is one figure over the day, drawn and as a table of the same numbers.
type Plot struct {
	ID, Title, Unit, Meaning string
	Points                   []Point
	Decimals                 int
	X, Y                     Axis
}

// Point is a figure at a moment, and where it is drawn. One that is not known has no
// place, and breaks the line.
type Point struct {
	Time           string
	Known          bool
	Low, Mid, High float64 // in the plot's unit
	X              float64
	YLow, Y, YHigh float64
}

// Axis is one side of a plot: its ends in the plot's unit, and the marks on it.
type Axis struct {
	From, To float64
	Ticks    []Tick
}

// Tick is a mark on an axis: where it is drawn, and what stands beside it.
type Tick struct {
	At   float64
	Text string
}

// The size of a plot in the units of its drawing, and the margins that its words take.
const (
	plotWidth, plotHeight   = 720.0, 200.0
	marginLeft, marginRight = 52.0, 10.0
	marginTop, marginBottom = 10.0, 24.0
	innerWidth              = plotWidth - marginLeft - marginRight
	innerHeight             = plotHeight - marginTop - marginBottom
)

// plotted are the figures that are drawn, with how they are told.
var plotted = []struct {
	of       figure.Name
	title    string
	decimals int
}{
	{figure.RatioFive, "Ore to charcoal, last five charges", 2},
	{figure.RatioSmelt, "Ore to charcoal since the first ore", 2},
	{figure.BurnRate, "Charcoal burned an hour", 1},
	{figure.Air, "Blast", 0},
	{figure.StackHeight, "Burden above the tuyere", 1},
	{figure.HearthTemperature, "Hearth, reckoned", 0},
	{figure.TopGasTemperature, "Gas over the burden, reckoned", 0},
	{figure.OreComeDown, "Ore come down, reckoned", 0},
}

// plots draws them.
func plots(c course) []Plot {
	var all []Plot
	for _, p := range plotted {
		def := figure.Table[p.of]
		one := Plot{ID: def.Key, Title: p.title, Unit: unitWord(def.Unit), Meaning: def.Meaning, Decimals: p.decimals}
		for _, r := range c.readings {
			f := r.Figure(p.of)
			pt := Point{Time: r.Wall(r.At).Format(words.Clock)}
			if f.Known() {
				pt.Known, pt.Low, pt.Mid, pt.High = true, f.P10, f.P50, f.P90
			}
			one.Points = append(one.Points, pt)
		}
		one.lay(c)
		all = append(all, one)
	}
	return all
}

// unitWord is a unit of the wire as it is printed.
func unitWord(unit string) string {
	if unit == "1" {
		return "kg per kg"
	}
	return words.Units{}.Name(unit)
}

// Any tells whether anything of the figure is known.
func (p Plot) Any() bool {
	for _, pt := range p.Points {
		if pt.Known {
			return true
		}
	}
	return false
}

// lay finds the axes and the place of every point.
func (p *Plot) lay(c course) {
	span := max(c.over.Span.Hours(), 1e-3)
	low, high := math.Inf(1), math.Inf(-1)
	for _, pt := range p.Points {
		if pt.Known {
			low, high = math.Min(low, pt.Low), math.Max(high, pt.High)
		}
	}
	if low > high {
		low, high = 0, 1
	}
	from, to, step := rounded(low, high)
	p.X, p.Y = Axis{From: 0, To: span}, Axis{From: from, To: to}
	for v := from; v <= to+step/2; v += step {
		p.Y.Ticks = append(p.Y.Ticks, Tick{p.y(v), words.Number(v, max(0, int(math.Ceil(-math.Log10(step)-1e-9))))})
	}
	p.X.Ticks = hours(c, p.x)
	for i, r := range c.readings {
		pt := &p.Points[i]
		pt.X = p.x(r.At.Hours())
		if pt.Known {
			pt.YLow, pt.Y, pt.YHigh = p.y(pt.Low), p.y(pt.Mid), p.y(pt.High)
		}
	}
}

func (p *Plot) x(h float64) float64 { return marginLeft + innerWidth*(h-p.X.From)/(p.X.To-p.X.From) }
func (p *Plot) y(v float64) float64 {
	return marginTop + innerHeight*(p.Y.To-v)/(p.Y.To-p.Y.From)
}

// hours are the marks of the clock's full hours; of a long smelt every second, and so on.
func hours(c course, x func(float64) float64) []Tick {
	if len(c.readings) == 0 {
		return nil
	}
	r := c.readings[0]
	every := time.Duration(math.Ceil(c.over.Span.Hours()/14)) * time.Hour
	every = max(every, time.Hour)
	lit := r.Wall(0)
	first := lit.Truncate(time.Hour)
	var all []Tick
	for t := first; !t.After(lit.Add(c.over.Span)); t = t.Add(every) {
		if at := t.Sub(lit); at >= 0 {
			all = append(all, Tick{x(at.Hours()), t.Format(words.Clock)})
		}
	}
	return all
}

// rounded gives round ends about two values and the step between marks: 1, 2 or 5 of
// a power of ten, three to seven of them.
func rounded(low, high float64) (from, to, step float64) {
	if high-low < 1e-9*math.Max(1, math.Abs(high)) {
		pad := math.Max(math.Abs(high)/2, 0.5)
		low, high = low-pad, high+pad
		if low < 0 && high-pad >= 0 {
			low = 0
		}
	}
	raw := (high - low) / 5
	power := math.Pow(10, math.Floor(math.Log10(raw)))
	step = 10 * power
	for _, m := range []float64{1, 2, 5} {
		if raw <= m*power {
			step = m * power
			break
		}
	}
	return step * math.Floor(low/step), step * math.Ceil(high/step), step
}

// Line is the path of the middle, broken where it is not known.
func (p Plot) Line() string {
	var b strings.Builder
	down := false
	for _, pt := range p.Points {
		switch {
		case !pt.Known:
		case down:
			fmt.Fprintf(&b, "L%s %s", place(pt.X), place(pt.Y))
		default:
			fmt.Fprintf(&b, "M%s %s", place(pt.X), place(pt.Y))
		}
		down = pt.Known
	}
	return b.String()
}

// Band are the shapes between the low and the high line, one for each unbroken run.
func (p Plot) Band() string {
	var b strings.Builder
	for i := 0; i < len(p.Points); {
		n := 0
		for i+n < len(p.Points) && p.Points[i+n].Known {
			n++
		}
		if n > 1 {
			run := p.Points[i : i+n]
			for k, pt := range run {
				fmt.Fprintf(&b, "%s%s %s", [2]string{"M", "L"}[min(k, 1)], place(pt.X), place(pt.YHigh))
			}
			for k := range run {
				pt := run[len(run)-1-k]
				fmt.Fprintf(&b, "L%s %s", place(pt.X), place(pt.YLow))
			}
			b.WriteString("Z")
		}
		i += n + 1
	}
	return b.String()
}

// place is a coordinate of a drawing, to a hundredth.
func place(v float64) string { return fmt.Sprintf("%.2f", v) }

// Number is a value of the plot as it is printed.
func (p Plot) Number(v float64) string { return words.Number(v, p.Decimals) }

// Cell is a point as the table has it: the middle, and the band where there is one.
func (p Plot) Cell(pt Point) string {
	low, mid, high := p.Number(pt.Low), p.Number(pt.Mid), p.Number(pt.High)
	switch {
	case !pt.Known:
		return words.NotKnown
	case low == mid && mid == high:
		return mid
	}
	return mid + " (" + low + " to " + high + ")"
}

// Row is a line of the table of all plots.
type Row struct {
	Time  string
	Cells []string
}

// Rows are the numbers of all plots, a line for each moment.
func (r Report) Rows() []Row {
	var all []Row
	for i := range r.Plots[0].Points {
		row := Row{Time: r.Plots[0].Points[i].Time}
		for _, p := range r.Plots {
			row.Cells = append(row.Cells, p.Cell(p.Points[i]))
		}
		all = append(all, row)
	}
	return all
}

// Says is the plot in a sentence, for whoever does not see it.
func (p Plot) Says() string {
	first, last, low, high := Point{}, Point{}, math.Inf(1), math.Inf(-1)
	for _, pt := range p.Points {
		if !pt.Known {
			continue
		}
		if !first.Known {
			first = pt
		}
		last = pt
		low, high = math.Min(low, pt.Mid), math.Max(high, pt.Mid)
	}
	if !first.Known {
		return words.ReportNoPlot
	}
	return fmt.Sprintf("%s: %s %s at %s, %s at %s, between %s and %s. The table of numbers has them all.",
		p.Meaning, p.Number(first.Mid), p.Unit, first.Time, p.Number(last.Mid), last.Time, p.Number(low), p.Number(high))
}
