package act

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// AskReweigh asks which measure, what it weighs, from when on, and why, since a
// damp bucket weighs more and holds the same carbon.
func AskReweigh(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	ms := sh.Smelt.Reading().Measures
	if len(ms) == 0 {
		return screen.Refuse(words.NoMeasures)
	}
	return screen.Choose(words.WeighWhich, screen.Lettered(0, min(len(ms), 26), func(i int) (string, func(*screen.Shared) screen.Effect) {
		name := ms[i].Name
		return sh.Units.MeasureOf(ms[i]), func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.Weighing(name), kilograms, givenMass(from, entry.WeighMeasure), func(v float64) screen.Effect {
				w := entry.Weigh{What: entry.WeighMeasure, Name: name, Mass: entry.Kilogram(v)}
				if by := fold.HeavierBy(ms[i].What, float64(ms[i].Mass.Value), v, ms[i].Guessed); from == nil && by > 0 {
					return askHeavier(heavier{weigh: w, was: float64(ms[i].Mass.Value), by: by}, then)
				}
				return askSince(w, "w", func(w entry.Weigh) screen.Effect { return whyIf(from, w, then) })
			})
		}
	})...)
}

// askSince asks from when on a measure weighs so much. Enter takes the likelier.
func askSince(w entry.Weigh, likely string, then func(entry.Weigh) screen.Effect) screen.Effect {
	return screen.Each{screen.Kept(then(w)), screen.ChooseOr(likely, words.WeighSince,
		screen.Opt("w", words.WeighWhole, func(*screen.Shared) screen.Effect { return then(w) }),
		screen.Opt("n", words.WeighFromNow, func(*screen.Shared) screen.Effect { w.FromNow = true; return then(w) }))}
}

// whyIf asks why when a weighing is changed. A new one is booked as it is: the
// answer offers to say why later.
func whyIf(from entry.Event, w entry.Weigh, then func(entry.Event) screen.Effect) screen.Effect {
	if from == nil {
		return then(w)
	}
	return askWhy(w, then)
}

func askWhy(w entry.Weigh, then func(entry.Event) screen.Effect) screen.Effect {
	why := func(k, word string, y entry.Reweighed) screen.Option {
		return screen.Opt(k, word, func(*screen.Shared) screen.Effect { w.Why = y; return then(w) })
	}
	return screen.ChooseOr("n", words.WeighWhy, why("w", words.WhyWetter, entry.Wetter), why("l", words.WhyFuller, entry.Fuller),
		why("o", words.WhyOther, entry.Other), why("n", words.WhyNotKnown, ""))
}

// AskCharge asks for each part in turn: the recipe's, or those of the charge to
// change.
func AskCharge(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	parts := as[entry.Charge](from).Parts
	if from == nil {
		parts = sh.Smelt.Recipe()
	}
	return askEachPart(parts, func(ps entry.Parts) screen.Effect { return then(entry.Charge{Parts: ps}) })
}

func AskFill(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	parts := as[entry.Fill](from).Parts
	if from == nil {
		parts = Measured(sh, entry.Charcoal, 1)
	}
	return askEachPart(parts, func(ps entry.Parts) screen.Effect { return then(entry.Fill{Parts: ps}) })
}

func askOreAlone(sh *screen.Shared, _ entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	return askEachPart(Measured(sh, entry.Ore, 1), func(ps entry.Parts) screen.Effect { return then(entry.Charge{Parts: ps}) })
}

func AskRecipe(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	parts := as[entry.Recipe](from).Next
	if from == nil {
		parts = sh.Smelt.Recipe()
	}
	return askEachPart(parts, func(ps entry.Parts) screen.Effect { return then(entry.Recipe{Next: ps}) })
}

// askEachPart asks for the amount of one part after the other, each by what it
// was given in: measures, else weight.
func askEachPart(parts entry.Parts, then func(entry.Parts) screen.Effect) screen.Effect {
	if len(parts) == 0 {
		return screen.Refuse(words.NoRecipe)
	}
	return askPart(slices.Clone(parts), 0, then, beside{})
}

func askPart(parts entry.Parts, i int, then func(entry.Parts) screen.Effect, said beside) screen.Effect {
	p := parts[i]
	next := func() screen.Effect {
		if i+1 == len(parts) {
			return then(parts)
		}
		return screen.Each{screen.Kept(then(slices.Clone(parts[:i+1]))), askPart(slices.Clone(parts), i+1, then, beside{other: said.other})}
	}
	byWeight := func(given entry.Maybe[float64]) screen.Effect {
		return screen.AskNumber(words.PartAmount(p.What, ""), kilograms, given, func(v float64) screen.Effect {
			parts[i].Mass, parts[i].Count = entry.Some(entry.Kilogram(v)), entry.None[entry.Count]()
			return next()
		}, elsewhere(parts, i, then, said)...)
	}
	if p.Measure == "" || (p.Mass.Known && !p.Count.Known) {
		return byWeight(Given(p.Mass))
	}
	return screen.AskNumber(words.PartAmount(p.What, p.Measure), Measures, Given(p.Count), func(v float64) screen.Effect {
		parts[i].Count, parts[i].Mass = entry.Some(entry.Count(v)), entry.None[entry.Kilogram]()
		return next()
	}, append([]screen.Option{screen.Opt("k", words.ByWeight, func(*screen.Shared) screen.Effect { return byWeight(Given(p.Mass)) })}, elsewhere(parts, i, then, said)...)...)
}

// AskByWeight asks for the charcoal and the ore of a charge in kilograms.
func AskByWeight(sh *screen.Shared, then func(entry.Parts) screen.Effect) screen.Effect {
	parts := sh.Smelt.Recipe()
	if len(parts) == 0 {
		parts = entry.Parts{{What: entry.Charcoal}, {What: entry.Ore}}
	}
	for i := range parts {
		parts[i].Measure, parts[i].Count = "", entry.None[entry.Count]()
	}
	return askEachPart(parts, then)
}

// Measured is so many measures of one material, in its usual measure; nothing
// when it has none.
func Measured(sh *screen.Shared, w entry.What, n entry.Count) entry.Parts {
	m, ok := sh.Smelt.Measure(w)
	if !ok {
		return nil
	}
	return entry.Parts{{What: w, Lot: lotOf(sh, w), Measure: m.Name, Count: entry.Some(n)}}
}

// lotOf is the lot that a material is taken from: as the next charge has it, else as the rest of the plan has it, the last
// charge that had any, or the fire as it was lit. A charge of charcoal only names no lot of ore.
func lotOf(sh *screen.Shared, w entry.What) string {
	of := []entry.Parts{sh.Smelt.Recipe()}
	for _, st := range sh.Smelt.Rest() {
		of = append(of, st.Parts)
	}
	r := sh.Smelt.Reading()
	for _, c := range slices.Backward(r.Charges) {
		of = append(of, c.Parts)
	}
	for _, ps := range append(of, r.Light.Recipe) {
		for _, p := range ps {
			if p.What == w {
				return p.Lot
			}
		}
	}
	return ""
}
