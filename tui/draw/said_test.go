package draw

import (
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/theme"
	screenwords "chargehand/tui/words"
)

// A burn faster than the blast can burn says so in its own line, and a level that is as
// good as not known asks for a dip, at every width of the figures.
func TestFiguresSayWhatNobodyShouldActOn(t *testing.T) {
	r := new(figure.Reading)
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

// A band wider than a factor of thirty is said in words on every line, on the card of
// the burn-down and of the result and among what is reckoned, as the state says it.
func TestFarApartIsSaidInWords(t *testing.T) {
	r := new(figure.Reading)
	for n := range r.Figures {
		r.Figures[n] = figure.Figure{Band: physics.Band{P10: 0.1, P50: 1, P90: 4}, Basis: figure.Guessed}
	}
	r.Phase = entry.MainBurn
	r.Blast = entry.Blast{Volume: entry.Some(entry.LitrePerMinute(1))}
	r.Light.Furnace = entry.Furnace{Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(500))}
	p := With(theme.Theme{}, words.Units{})
	for _, ls := range [][]figureLine{p.figureLines(r), p.rangeLines(r, true, nil), p.rangeLines(r, false, nil)} {
		for _, l := range ls {
			if said := l.value + ", " + l.remark.full(); said != words.FarApart {
				t.Errorf("%s: %s", l.name, said)
			}
		}
	}
	g := theme.Theme{}.Grid(60, 20)
	p.Reckoned(g, r)
	if !strings.Contains(g.String(), words.FarApart) {
		t.Errorf("yield, reckoned:\n%s", g.String())
	}
	for _, f := range p.downFacts(r, Ending{}) {
		if f.name == screenwords.CardStack && f.says != words.FarApart {
			t.Errorf("%s: %s", f.name, f.says)
		}
	}
	for _, part := range words.Result(words.Units{}, session.Outcome{Foretold: r.Figure(figure.BloomEnd)}, "", "") {
		if part.Name == words.ResultForetold && !strings.HasPrefix(part.Says, words.FarApart) {
			t.Errorf("%s: %s", part.Name, part.Says)
		}
	}
}

// What is reckoned of slag and iron is said shorter before it is cut: in four rows of forty
// columns the iron stands whole, and with more room what the slag does about it too.
func TestWhatIsReckonedIsNotCut(t *testing.T) {
	r := new(figure.Reading)
	for n := range r.Figures {
		r.Figures[n].Basis = figure.Unknown
	}
	r.Running = physics.Running{Runs: 0.7, Creeps: 0.2, Not: 0.1}
	r.Carbon = figure.CarbonSpan{Low: physics.SoftIron, High: physics.Steel}
	r.Figures[figure.SlagMelts] = figure.Figure{Band: physics.Band{P10: 1120, P50: 1190, P90: 1260}, Basis: figure.Estimated}
	r.Figures[figure.BloomCarbon] = figure.Figure{Band: physics.Band{P10: 0.1, P50: 0.3, P90: 0.9}, Basis: figure.Guessed}
	for h, want := range map[int][]string{
		4: {"runs: about 7 in 10"}, 5: {"soft iron to steel"}, 6: {"soft iron to steel"}, 12: {"soft iron to steel; the ", "slag does not protect it", "molten at about"},
	} {
		g := theme.Theme{}.Grid(40, h)
		With(theme.Theme{}, words.Units{}).Reckoned(g, r)
		p := g.String()
		for _, says := range want {
			if !strings.Contains(p, says) {
				t.Errorf("%d rows do not say %q:\n%s", h, says, p)
			}
		}
		if strings.Contains(p, "…") {
			t.Errorf("%d rows cut what they say:\n%s", h, p)
		}
	}
}

// In a small window a line is said shorter before it is cut, and a little of something is
// not told as none of it.
func TestLinesAreSaidShorterBeforeTheyAreCut(t *testing.T) {
	r := new(figure.Reading)
	for n := range r.Figures {
		r.Figures[n].Basis = figure.Unknown
	}
	known := func(n figure.Name, p10, p50, p90 float64) {
		r.Figures[n] = figure.Figure{Band: physics.Band{P10: p10, P50: p50, P90: p90}, Basis: figure.Guessed}
	}
	r.Phase = entry.MainBurn
	known(figure.BloomEnd, 0.4, 1, 2.2)
	known(figure.NoBloom, 10, 40, 80)
	known(figure.SlagMass, 2, 3, 4)
	r.Running = physics.Running{Runs: 1}
	g := theme.Theme{}.Grid(42, 12)
	With(theme.Theme{}, words.Units{}).Ranges(g, r, nil, nil)
	for _, want := range []string{"0.4 to 2.2 kg", "none: 1-8 in 10", "level not known"} {
		if !strings.Contains(g.String(), want) {
			t.Errorf("no %q in\n%s", want, g.String())
		}
	}
}

// Slag without a level says what would give it one, where there is room.
func TestSlagSaysWhatItsLevelNeeds(t *testing.T) {
	r := new(figure.Reading)
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
		{false, 0, "level not known: weigh its slag once, key tuyere above the floor"},
		{false, 15, "level not known: weigh its slag once"},
		{true, 0, "level not known: key tuyere above the floor"},
		{true, 15, "level not known"},
	} {
		r.SlagWeighed.Known, r.Light.Furnace.TuyereBase = c.weighed, entry.Some(entry.Centimetre(c.base))
		if said := p.slagLine(r).remark.full(); said != c.says {
			t.Errorf("weighed %v, %v cm: %q, want %q", c.weighed, c.base, said, c.says)
		}
	}
}

// Once slag was on the scales they are believed, not the model.
func TestWeighedSlagStandsAsWeighed(t *testing.T) {
	r := new(figure.Reading)
	for n := range r.Figures {
		r.Figures[n].Basis = figure.Unknown
	}
	r.SlagWeighed = entry.Some(2.5)
	p := With(theme.Theme{}, words.Units{})
	for name, modelled := range map[string]figure.Figure{"without a model": r.Figures[figure.SlagMass], "with one": {Band: physics.Band{P10: 1, P50: 2, P90: 400}, Basis: figure.Guessed}} {
		r.Figures[figure.SlagMass] = modelled
		if ls := apart([]figureLine{p.slagLine(r)}); ls[0].value != "2.5 kg weighed" {
			t.Errorf("%s: slag %q", name, ls[0].value)
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

// Every part of a charge stands on its card, however many figures its number has: the key books them all.
func TestTheCardOfAChargeLeavesNoPartOut(t *testing.T) {
	weighed := func(what entry.What, kg float64) figure.Part {
		return figure.Part{Part: entry.Part{What: what, Mass: entry.Some(entry.Kilogram(kg))}, Mass: figure.Figure{Band: physics.Band{P10: kg, P50: kg, P90: kg}, Basis: figure.Measured}}
	}
	counted := func(what entry.What, n float64, measure string, kg float64) figure.Part {
		part := weighed(what, kg)
		part.Count, part.Measure = entry.Some(entry.Count(n)), measure
		return part
	}
	p := With(theme.Theme{}, words.Units{})
	for name, parts := range map[string][]figure.Part{
		"half scoops": {counted(entry.Charcoal, 1, "bucket", 1.8), counted(entry.Ore, 3.5, "scoop", 1.75)},
		"many scoops": {counted(entry.Charcoal, 1.5, "basket", 1.8), counted(entry.Ore, 12.5, "shovel", 1.75)},
		"of a plan":   {weighed(entry.Charcoal, 1.8), weighed(entry.Ore, 0.95)},
		"much":        {weighed(entry.Charcoal, 12.25), weighed(entry.Ore, 10.75)},
		"three parts": {weighed(entry.Charcoal, 2), weighed(entry.Ore, 1), weighed(entry.SeedSlag, 0.5)},
	} {
		r := &figure.Reading{Phase: entry.MainBurn, Next: parts}
		for of, card := range map[string]struct {
			w, h  int
			paint func(*theme.Theme, int, int) string
		}{
			"80x24": {19, 9, func(th *theme.Theme, w, h int) string {
				g := th.Grid(w, h)
				p.SmallCharge(g, r, HeadView{Key: "c"})
				return g.String()
			}},
			"120x36": {46, 12, func(th *theme.Theme, w, h int) string {
				g := th.Grid(w, h)
				p.Charge(g, r, HeadView{Key: "c"})
				return g.String()
			}},
			"200x60": {66, 19, func(th *theme.Theme, w, h int) string {
				g := th.Grid(w, h)
				p.LargeCharge(g, r, HeadView{Key: "c"})
				return g.String()
			}},
		} {
			picture := card.paint(&theme.Theme{}, card.w, card.h)
			for _, part := range parts {
				named := words.Material(part.What)
				if of == "80x24" && part.Count.Known {
					named = words.Measures(part.Part)
				}
				if !strings.Contains(strings.ToLower(picture), named) {
					t.Errorf("%s at %s: no %s\n%s", name, of, part.What, picture)
				}
			}
		}
	}
}

// The bloom that is foretold says of which ore at 120 columns, where a plan for it or the
// past may know more than is in yet.
func TestTheBloomForetoldNamesItsOre(t *testing.T) {
	r := &figure.Reading{Phase: entry.MainBurn}
	for n, kg := range map[figure.Name]float64{figure.OreDry: 3, figure.BloomEnd: 4} {
		r.Figures[n] = figure.Figure{Band: physics.Band{P10: kg / 2, P50: kg, P90: kg * 2}, Basis: figure.Guessed}
	}
	for _, taken := range []float64{0, 20} {
		r.OreTaken = figure.Figure{Band: physics.Exact(taken), Basis: figure.Estimated}
		g := theme.Theme{}.Grid(68, 20)
		With(theme.Theme{}, words.Units{}).Ranges(g, r, nil, nil)
		if said := g.String(); !strings.Contains(said, words.OreOf(r)) && !strings.Contains(said, words.OreOfShort(r)) {
			t.Errorf("the figures without %q:\n%s", words.OreOf(r), said)
		}
	}
}
