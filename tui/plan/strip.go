package plan

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/plan"
	"chargehand/tui/cell"
	"chargehand/tui/chart"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// planned is a charge of a way at its time.
type planned struct {
	at      time.Duration // since the wood fire is lit
	minutes float64
	ore     float64 // kg dry
}

// planned are the charges of a way, without its fill, each when the one before has burned.
func (s Screen) planned(way plan.Charging) []planned {
	var all []planned
	at := s.plan.Day(way)[1].After
	for _, st := range way.Steps {
		for range max(st.Charges, 1) {
			if st.Does != entry.StepFill && st.Charges > 0 {
				all = append(all, planned{at, st.Minutes, st.Ore})
			}
			at += time.Duration(st.Minutes * float64(time.Minute))
		}
	}
	return all
}

// hours is the day by a way under its strip: when each part of it begins, and the hearth
// as hot as the model has it in the middle of the time, from the fill to the pull; before
// the fill, or where the model says nothing, it is a line.
func (s Screen) hours(way plan.Charging) chart.Day {
	moments := s.plan.Day(way)
	end := moments[len(moments)-1].After
	d := chart.Day{Lit: s.when.lit(), Span: end, Now: end}
	for _, m := range moments {
		if word := words.PartOfDay(m.What); word != "" {
			d.Phases = append(d.Phases, chart.Phase{At: m.After, Word: word})
		}
	}
	if s.way < len(s.foresee) && s.foresee[s.way].Known {
		hot := s.foresee[s.way].Hearth.P50 - 273.15
		for at := moments[1].After; at < end; at += 5 * time.Minute {
			d.Hearth = append(d.Hearth, chart.Heat{At: at, Celsius: hot})
		}
	}
	return d
}

// strip draws the charges of a way on the day's clock: minutes up in charcoal, ore down,
// as in the strip at the fire; under them the hearth and the hours. It gives the rows that
// it took.
func (s Screen) strip(g cell.Grid, sh *screen.Shared, way plan.Charging) int {
	th := sh.Theme
	w, h := g.Size()
	up, down := min(max(h/5, 3), 8), min(max(h/8, 2), 5)
	all, day := s.planned(way), s.hours(way)
	mostMin, mostOre := 1.0, 0.1
	for _, o := range all {
		mostMin, mostOre = math.Max(mostMin, o.minutes), math.Max(mostOre, o.ore)
	}
	g.Text(2, up/2, words.MinutesABucket(mostMin), th.Style(theme.Quiet))
	g.Text(2, up+1+down/2, words.OreACharge(sh.Units, mostOre), th.Style(theme.Quiet))
	full, free := th.Marks().Full, 0
	for i, o := range all {
		x := day.Column(o.at, w)
		wide := max(int(o.minutes/day.Span.Minutes()*float64(w-2))-1, 1)
		tall := int(math.Round(o.minutes / mostMin * float64(up)))
		g.Fill(cell.Rect{X: x, Y: up - tall, W: wide, H: tall}, full, th.Style(theme.Bar))
		if x >= free && (i == 0 || (i+1)%5 == 0) {
			free = x + g.Text(x, up, number(i+1), th.Style(theme.Quiet)) + 1
		}
		if o.ore > 0 {
			deep := max(int(math.Round(2*o.ore/mostOre*float64(down))), 1) // in half rows: the rise is what one looks for
			g.Fill(cell.Rect{X: x, Y: up + 1, W: wide, H: deep / 2}, full, th.Style(theme.OreBar))
			g.Fill(cell.Rect{X: x, Y: up + 1 + deep/2, W: wide, H: deep % 2}, th.Marks().Hang, th.Style(theme.OreBar))
		}
	}
	ground := up + 1 + down
	day.Ground(g.Sub(cell.Rect{Y: ground, W: w, H: 2}), th)
	g.Fill(cell.Rect{Y: ground + 2, W: w, H: 1}, th.Marks().HLine, th.Style(theme.Frame))
	return ground + 3
}
