package draw

import (
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
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
			"ranges":  func() string { g := theme.Theme{}.Grid(w, 14); p.Ranges(g, r, nil, nil); return g.String() },
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

// A band wider than a factor of thirty is said in words, as the state says it.
func TestFarApartIsSaidInWords(t *testing.T) {
	var r figure.Reading
	for _, n := range []figure.Name{figure.BloomEnd, figure.SlagMass, figure.BurnRate} {
		r.Figures[n] = figure.Figure{Band: physics.Band{P10: 0.1, P50: 1, P90: 4}, Basis: figure.Guessed}
	}
	p := With(theme.Theme{}, words.Units{})
	for _, l := range []figureLine{p.bloomLine(r), p.slagLine(r), p.burnLine(r)} {
		if said := l.value + " " + l.remark; said != words.FarApart {
			t.Errorf("%s: %s", l.name, said)
		}
	}
}

// Slag without a level says what would give it one, where there is room.
func TestSlagSaysWhatItsLevelNeeds(t *testing.T) {
	var r figure.Reading
	for n := range r.Figures {
		r.Figures[n].Basis = figure.Unknown
	}
	r.Figures[figure.SlagMass] = figure.Figure{Band: physics.Band{P10: 1, P50: 2, P90: 3}, Basis: figure.Guessed}
	p := With(theme.Theme{}, words.Units{})
	for _, c := range []struct {
		weighed bool
		base    float64
		says    string
	}{
		{false, 0, "level not known: weigh a slag of it, key tuyere above the floor"},
		{false, 15, "level not known: weigh a slag of it"},
		{true, 0, "level not known: key tuyere above the floor"},
		{true, 15, "level not known"},
	} {
		r.SlagKnown, r.Light.Furnace.TuyereBase = c.weighed, entry.Some(entry.Centimetre(c.base))
		if said := p.slagLine(r).remark; said != c.says {
			t.Errorf("weighed %v, %v cm: %q, want %q", c.weighed, c.base, said, c.says)
		}
	}
}

// The rules that go by what every smelter knows mark the figure they speak of too.
func TestWhatEverySmelterKnowsMarksItsFigure(t *testing.T) {
	for id, name := range map[rule.ID]string{
		rule.MixRich: words.LineRatio, rule.RatioHigh: words.LineRatio, rule.AirWeak: words.LineBlast,
		rule.AirStrong: words.LineBlast, rule.AirOdd: words.LineBlast,
	} {
		if !spokenOf(name, []rule.Warning{{Rule: id, Grade: rule.Note + 1}}) {
			t.Errorf("%s does not mark %s", id, name)
		}
	}
}
