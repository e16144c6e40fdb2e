package draw

import (
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/theme"
)

// A burn faster than the blast can burn says so in its own line, and a level that is as
// good as not known asks for a dip, at every width of the figures.
func TestFiguresSayWhatNobodyShouldActOn(t *testing.T) {
	var r figure.Reading
	for n := range r.Figures {
		r.Figures[n].Basis = figure.Unknown
	}
	known := func(n figure.Name, p10, p50, p90 float64) {
		r.Figures[n] = figure.Figure{Band: physics.Band{P10: p10, P50: p50, P90: p90}, Basis: figure.Estimated}
	}
	r.Phase = entry.MainBurn
	r.Light.Furnace = entry.Furnace{Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(50))}
	known(figure.BurnRate, 17, 18.2, 19.5)
	known(figure.BurnLeast, 4.5, 5, 5.5)
	known(figure.BurnMost, 9, 10, 11)
	known(figure.MinutesPerMeasure, 5, 6, 7)
	known(figure.StackHeight, 2, 30, 55)
	p := With(theme.Theme{}, words.Units{})
	for w := 44; w <= 130; w++ {
		for name, paint := range map[string]func() string{
			"figures": func() string { g := theme.Theme{}.Grid(w, 14); p.Figures(g, r); return g.String() },
			"ranges":  func() string { g := theme.Theme{}.Grid(w, 14); p.Ranges(g, r, nil); return g.String() },
		} {
			burn, stack := "", ""
			for line := range strings.Lines(paint()) {
				if strings.Contains(line, "burn ") {
					burn = line
				}
				if strings.Contains(line, "stack ") {
					stack = line
				}
			}
			if !strings.Contains(burn, "18.2") || !strings.Contains(burn, "over the blast") && !strings.Contains(burn, "too fast for the air") {
				t.Fatalf("%s, %d wide: %q", name, w, burn)
			}
			if !strings.Contains(stack, "not known: dip it") || strings.Contains(stack, "±") {
				t.Fatalf("%s, %d wide: %q", name, w, stack)
			}
		}
	}
}
