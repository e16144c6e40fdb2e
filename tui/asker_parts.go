package tui

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// askWeigh asks what was weighed, then its mass.
func askWeigh(sh shared, from entry.Event, then func(entry.Event) step) step {
	thing := func(k, word string, w entry.Weighed) option {
		return opt(k, word, func(shared) step {
			return askNumber(words.Weighing(word), kilograms, givenMass(from, w), func(v float64) step {
				return then(entry.Weigh{What: w, Mass: entry.Kilogram(v)})
			})
		})
	}
	return choose(words.WeighWhat,
		opt("m", words.WeighMeasure, func(sh shared) step { return askReweigh(sh, from, then) }),
		thing("b", words.WeighBloom, entry.WeighBloom),
		thing("s", words.WeighSlag, entry.WeighSlag),
		thing("f", words.WeighFragments, entry.WeighFragments),
		opt("l", words.WeighLot, func(shared) step {
			return askWords(words.WeighLot, as[entry.Weigh](from).Name, func(name string) step {
				return askNumber(words.Weighing(name), kilograms, givenMass(from, entry.WeighLot), func(v float64) step {
					return then(entry.Weigh{What: entry.WeighLot, Name: name, Mass: entry.Kilogram(v)})
				})
			})
		}))
}

func givenMass(from entry.Event, w entry.Weighed) entry.Maybe[float64] {
	if was, ok := from.(entry.Weigh); ok && was.What == w {
		return given(entry.Some(was.Mass))
	}
	return entry.None[float64]()
}

// askReweigh asks which measure, what it weighs, from when on, and why, since a
// damp bucket weighs more and holds the same carbon.
func askReweigh(sh shared, from entry.Event, then func(entry.Event) step) step {
	ms := sh.smelt.Reading().Measures
	if len(ms) == 0 {
		return refused(words.NoMeasures)
	}
	return choose(words.WeighWhich, lettered(0, min(len(ms), 26), func(i int) (string, func(shared) step) {
		name := ms[i].Name
		return sh.theme.Units.MeasureOf(ms[i]), func(shared) step {
			return askNumber(words.Weighing(name), kilograms, givenMass(from, entry.WeighMeasure), func(v float64) step {
				w := entry.Weigh{What: entry.WeighMeasure, Name: name, Mass: entry.Kilogram(v)}
				return choose(words.WeighSince,
					opt("w", words.WeighWhole, func(shared) step { return askWhy(w, then) }),
					opt("n", words.WeighFromNow, func(shared) step { w.FromNow = true; return askWhy(w, then) }))
			})
		}
	})...)
}

func askWhy(w entry.Weigh, then func(entry.Event) step) step {
	why := func(k, word string, y entry.Reweighed) option {
		return opt(k, word, func(shared) step { w.Why = y; return then(w) })
	}
	return choose(words.WeighWhy, why("w", words.WhyWetter, entry.Wetter), why("f", words.WhyFuller, entry.Fuller),
		why("o", words.WhyOther, entry.Other), why("n", words.WhyNotKnown, ""))
}

// askCharge asks for each part in turn: the recipe's, or those of the charge to
// change.
func askCharge(sh shared, from entry.Event, then func(entry.Event) step) step {
	parts := as[entry.Charge](from).Parts
	if from == nil {
		parts = sh.smelt.Recipe()
	}
	return askEachPart(parts, func(ps entry.Parts) step { return then(entry.Charge{Parts: ps}) })
}

func askFill(sh shared, from entry.Event, then func(entry.Event) step) step {
	parts := as[entry.Fill](from).Parts
	if from == nil {
		parts = measured(sh, entry.Charcoal, 1)
	}
	return askEachPart(parts, func(ps entry.Parts) step { return then(entry.Fill{Parts: ps}) })
}

func askOreAlone(sh shared, _ entry.Event, then func(entry.Event) step) step {
	return askEachPart(measured(sh, entry.Ore, 1), func(ps entry.Parts) step { return then(entry.Charge{Parts: ps}) })
}

func askRecipe(sh shared, from entry.Event, then func(entry.Event) step) step {
	parts := as[entry.Recipe](from).Next
	if from == nil {
		parts = sh.smelt.Recipe()
	}
	return askEachPart(parts, func(ps entry.Parts) step { return then(entry.Recipe{Next: ps}) })
}

// askEachPart asks for the amount of one part after the other, each by what it
// was given in: measures, else weight.
func askEachPart(parts entry.Parts, then func(entry.Parts) step) step {
	if len(parts) == 0 {
		return refused(words.NoRecipe)
	}
	return askPart(slices.Clone(parts), 0, then)
}

func askPart(parts entry.Parts, i int, then func(entry.Parts) step) step {
	if i == len(parts) {
		return then(parts)
	}
	p := parts[i]
	next := func() step { return askPart(slices.Clone(parts), i+1, then) }
	byWeight := func(given entry.Maybe[float64]) step {
		return askNumber(words.PartAmount(p.What, ""), kilograms, given, func(v float64) step {
			parts[i].Mass, parts[i].Count = entry.Some(entry.Kilogram(v)), entry.None[entry.Count]()
			return next()
		})
	}
	if p.Measure == "" || (p.Mass.Known && !p.Count.Known) {
		return byWeight(given(p.Mass))
	}
	return askNumber(words.PartAmount(p.What, p.Measure), measures, given(p.Count), func(v float64) step {
		parts[i].Count, parts[i].Mass = entry.Some(entry.Count(v)), entry.None[entry.Kilogram]()
		return next()
	}, opt("k", words.ByWeight, func(shared) step { return byWeight(given(p.Mass)) }))
}

// askByWeight asks for the charcoal and the ore of a charge in kilograms.
func askByWeight(sh shared, then func(entry.Parts) step) step {
	parts := sh.smelt.Recipe()
	if len(parts) == 0 {
		parts = entry.Parts{{What: entry.Charcoal}, {What: entry.Ore}}
	}
	for i := range parts {
		parts[i].Measure, parts[i].Count = "", entry.None[entry.Count]()
	}
	return askEachPart(parts, then)
}

// measured is so many measures of one material, in its usual measure; nothing
// when it has none.
func measured(sh shared, w entry.What, n entry.Count) entry.Parts {
	m, ok := sh.smelt.Measure(w)
	if !ok {
		return nil
	}
	return entry.Parts{{What: w, Lot: lotOf(sh, w), Measure: m.Name, Count: entry.Some(n)}}
}

// lotOf is the lot that the recipe takes a material from.
func lotOf(sh shared, w entry.What) string {
	for _, p := range sh.smelt.Recipe() {
		if p.What == w {
			return p.Lot
		}
	}
	return ""
}
