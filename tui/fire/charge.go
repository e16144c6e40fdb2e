package fire

import (
	"time"

	"chargehand/model/entry"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// charging books a charge. Once the burn-down has begun, when the screen shows
// no next charge any more, it asks first.
func charging(sh *screen.Shared, parts entry.Parts) screen.Effect {
	if sh.Full {
		return screen.Refuse(words.NoRoom)
	}
	e := act.Book(entry.Charge{Parts: parts})
	if p := sh.Smelt.Phase(); p == entry.BurnsDown || p.Over() {
		return screen.Question(words.ChargeInBurnDown(p), func(*screen.Shared) screen.Effect { return e })
	}
	if r := sh.Smelt.Reading(); r.Unfilled && filling(r.Phase) { // who says that the main burn begins has filled it
		return screen.Each{e, askFill(sh)}
	}
	return e
}

// askFill asks, beside the first charge, for the fill that nobody keyed: without one
// the charge went into an empty shaft. It is kept as of a minute before, of an amount
// that nobody knows.
func askFill(sh *screen.Shared) screen.Effect {
	before := sh.Now.Wall.Add(-time.Minute)
	return screen.Question(words.NoFillKeyed, func(*screen.Shared) screen.Effect {
		fill := entry.Fill{Parts: entry.Parts{{What: entry.Charcoal}}}
		return screen.Each{screen.Keep{{Event: fill, Happened: before, Uncertain: time.Minute}}, screen.Said(words.FillKeyed)}
	})
}

// chargeAsShown books exactly the recipe that the screen shows.
func chargeAsShown(sh *screen.Shared) screen.Effect {
	next := sh.Smelt.Reading().Next
	if len(next) == 0 {
		return screen.Refuse(words.NoRecipe)
	}
	parts := make(entry.Parts, len(next))
	for i, p := range next {
		parts[i] = p.Part
	}
	return charging(sh, parts)
}

// charcoalOnly is the charcoal of the recipe; before the main burn, a measure
// of the fill.
func charcoalOnly(sh *screen.Shared) screen.Effect {
	var parts entry.Parts
	for _, p := range sh.Smelt.Recipe() {
		if p.What == entry.Charcoal {
			parts = append(parts, p)
		}
	}
	if filling(sh.Smelt.Reading().Phase) {
		parts = act.Measured(sh, entry.Charcoal, 1)
	}
	switch {
	case len(parts) == 0:
		return screen.Refuse(words.NoCharcoalMeasure)
	case sh.Full:
		return screen.Refuse(words.NoRoom)
	case filling(sh.Smelt.Reading().Phase):
		return act.Book(entry.Fill{Parts: parts})
	}
	return charging(sh, parts)
}

// filling tells whether charcoal alone is still the fill.
func filling(p entry.Phase) bool {
	return p == entry.Prepared || p == entry.Preheat || p == entry.Filling
}

// oreAlone adds ore to the open measure.
func oreAlone(sh *screen.Shared, scoops entry.Count) screen.Effect {
	parts := act.Measured(sh, entry.Ore, scoops)
	if parts == nil {
		return screen.Refuse(words.NoOreMeasure)
	}
	return charging(sh, parts)
}

// How much one arrow changes the next charge, in measures.
const (
	oreStep      = 1
	charcoalStep = 0.5
)

// nextBy changes one material of the next charge by so many measures, not
// below none. What goes by weight changes by what the measure weighs.
func nextBy(sh *screen.Shared, w entry.What, by entry.Count) screen.Effect {
	parts := sh.Smelt.Recipe()
	m, _ := sh.Smelt.Measure(w)
	for i, p := range parts {
		if p.What != w {
			continue
		}
		switch {
		case p.Mass.Known && !p.Count.Known && !m.Mass.Known:
			return screen.Refuse(words.ByWeightOnly)
		case p.Mass.Known && !p.Count.Known:
			parts[i].Mass.Value = max(0, p.Mass.Value+entry.Kilogram(by)*m.Mass.Value)
		default:
			parts[i].Count = entry.Some(max(0, p.Count.Value+by))
			parts[i].Mass = entry.None[entry.Kilogram]()
		}
		if parts[i] == p {
			return screen.Refuse(words.NoneAlready(w))
		}
		return act.Book(act.NextIs(sh, parts))
	}
	more := act.Measured(sh, w, by)
	if by < 0 || more == nil {
		return screen.Refuse(words.NoneAlready(w))
	}
	return act.Book(act.NextIs(sh, append(parts, more...)))
}

// level is a remark about the level after the last charge.
func level(sh *screen.Shared, r entry.LevelRemark) screen.Effect {
	cs := sh.Smelt.Reading().Charges
	if len(cs) == 0 {
		return screen.Refuse(words.NoChargeYet)
	}
	last := cs[len(cs)-1]
	return screen.Did(entry.Level{Charge: sh.Smelt.Ref(last.Seq), Remark: r}, func(*screen.Shared) string {
		return words.LevelAfter(last.Number, r)
	})
}
