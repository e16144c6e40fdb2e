package act

import (
	"math"
	"slices"

	"chargehand/model/entry"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// heavier is a measure of charcoal that outweighs what it was taken for.
type heavier struct {
	weigh entry.Weigh
	was   float64 // kg
	by    float64 // share of that
}

// askHeavier asks once why a measure of charcoal weighs more than it did. Charcoal goes in
// by volume: what is wetter holds the same carbon, what is fuller more of it, and what is
// another has to be told apart. Left without an answer the cause is not known, and what
// hangs on it is less sure.
func askHeavier(h heavier, then func(entry.Event) screen.Effect) screen.Effect {
	w := h.weigh
	because := func(y entry.Reweighed, after func(*screen.Shared) screen.Effect) func(*screen.Shared) screen.Effect {
		return func(*screen.Shared) screen.Effect {
			w := w
			w.Why = y
			return askSince(w, "n", func(w entry.Weigh) screen.Effect { return screen.Each{then(w), screen.Again(after)} })
		}
	}
	unknown := func(*screen.Shared) screen.Effect {
		return askSince(w, "w", func(w entry.Weigh) screen.Effect { return then(w) })
	}
	return screen.Each{screen.Kept(then(w)), screen.ChooseOr("n", words.HeavierWhy(w.Name, h.by),
		screen.Opt("w", words.WhyWetter, because(entry.Wetter, h.topUp)),
		screen.Opt("l", words.WhyFuller, because(entry.Fuller, h.keepRatio)),
		screen.Opt("o", words.WhyOtherLot, func(*screen.Shared) screen.Effect {
			w := w
			w.Why, w.FromNow = entry.Other, true
			return screen.Each{then(w), screen.Again(otherCharcoal)}
		}),
		screen.Opt("n", words.WhyNotKnown, unknown))}
}

// topUp says what damp charcoal does. Where charcoal is weighed out, and only there, it
// offers as much more of it as is water.
func (h heavier) topUp(sh *screen.Shared) screen.Effect {
	parts := sh.Smelt.Recipe()
	i := slices.IndexFunc(parts, func(p entry.Part) bool { return p.What == entry.Charcoal && p.Mass.Known && !p.Count.Known })
	if i < 0 {
		return screen.Said(words.DampBooked)
	}
	more := func(ps entry.Parts) entry.Parts {
		for i, p := range ps {
			if p.What == entry.Charcoal && p.Mass.Known && !p.Count.Known {
				ps[i].Mass = entry.Some(entry.Kilogram(round(float64(p.Mass.Value)*(1+h.by), 0.05)))
				ps[i].Measure = h.weigh.Name // it is as damp as that
			}
		}
		return ps
	}
	r := RestWith(sh, more)
	for _, p := range r.Next {
		if p.What == entry.Charcoal {
			return screen.Question(words.TopUp(sh.Units.Kg(p.Mass.Value), sh.Units.Kg(parts[i].Mass.Value)), func(*screen.Shared) screen.Effect { return Book(r) })
		}
	}
	return screen.Said(words.DampBooked)
}

// keepRatio offers the ore that keeps the ratio as the measure holds more: on one key, of
// the next charge and of those that the plan has after it.
func (h heavier) keepRatio(sh *screen.Shared) screen.Effect {
	was := sh.Smelt.Recipe()
	r := RestWith(sh, func(ps entry.Parts) entry.Parts {
		for i, p := range ps {
			switch {
			case p.What != entry.Ore:
			case p.Count.Known:
				ps[i].Count = entry.Some(entry.Count(round(float64(p.Count.Value)*(1+h.by), 0.5)))
				ps[i].Mass = entry.None[entry.Kilogram]()
			case p.Mass.Known:
				ps[i].Mass = entry.Some(entry.Kilogram(round(float64(p.Mass.Value)*(1+h.by), 0.05)))
			}
		}
		return ps
	})
	if slices.Equal(r.Next, was) {
		return screen.Said(words.FullerAsItIs)
	}
	return screen.Question(words.KeepRatio(sh.Units.AllParts(oreIn(r.Next)), sh.Units.AllParts(oreIn(was))), func(*screen.Shared) screen.Effect { return Book(r) })
}

// otherCharcoal asks which lot goes in from here on.
func otherCharcoal(sh *screen.Shared) screen.Effect { return otherLot(sh, entry.Charcoal) }

func oreIn(ps entry.Parts) entry.Parts {
	return slices.DeleteFunc(slices.Clone(ps), func(p entry.Part) bool { return p.What != entry.Ore })
}

// round rounds to a step.
func round(v, step float64) float64 { return math.Round(v/step) * step }

// NextIs is a next charge of these parts; what the plan has after it stays.
func NextIs(sh *screen.Shared, parts entry.Parts) entry.Recipe {
	rest := slices.Clone(sh.Smelt.Rest())
	if len(rest) == 0 {
		return entry.Recipe{Next: parts}
	}
	next := rest[0]
	next.Charges, next.Parts = 1, parts
	if rest[0].Charges--; rest[0].Charges == 0 {
		rest = rest[1:]
	}
	return entry.Recipe{Next: parts, Ramp: append([]entry.RecipeStep{next}, rest...)}
}

// RestWith is the next charge, and what the plan has after it, each changed.
func RestWith(sh *screen.Shared, change func(entry.Parts) entry.Parts) entry.Recipe {
	r := entry.Recipe{Next: change(slices.Clone(sh.Smelt.Recipe()))}
	for _, st := range sh.Smelt.Rest() {
		st.Parts = change(slices.Clone(st.Parts))
		r.Ramp = append(r.Ramp, st)
	}
	return r
}
