package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/tui/paint"
)

// fire is the screen beside the furnace. All it shows stands in the smelt; far
// shows the little of it that is read from five metres, turn another warning
// than the gravest.
type fire struct {
	far  bool
	turn turn
}

func (fire) name() screenID { return fireScreen }
func (fire) keys() keymap   { return fireMap }

func (f fire) update(sh shared, p Pressed) (screen, step) {
	st := f.step(sh, typedOf(p.Key))
	f.turn = turn{} // any other key than the one that turns is back at the gravest
	return f, st
}

// step is what a key at the fire does, if it may be done to this smelt.
func (f fire) step(sh shared, t typed) step {
	k := fireMap
	switch {
	case !sh.smelt.Is():
		return refused(words.NoSmelt)
	case key.Matches(t, k.Chemistry):
		l := paint.LayoutOf(sh.w, sh.h)
		if f.far {
			l = paint.Layout{}
		}
		return otherChemistry(sh, l)
	case key.Matches(t, k.Rare):
		return others(sh)
	case key.Matches(t, k.Weigh) && rightsIn(sh.smelt) >= mendable:
		return askWeigh(sh, nil, book)
	case key.Matches(t, k.Note) && rightsIn(sh.smelt) >= mendable:
		return askNote(sh, nil, book)
	case rightsIn(sh.smelt) < own:
		return refused(whyNot(sh.smelt))
	}
	switch {
	case key.Matches(t, k.Charge):
		return chargeAsShown(sh)
	case key.Matches(t, k.Charcoal):
		return charcoalOnly(sh)
	case key.Matches(t, k.Scoop):
		return oreAlone(sh, 1)
	case key.Matches(t, k.Half):
		return oreAlone(sh, 0.5)
	case key.Matches(t, k.MoreOre):
		return nextBy(sh, entry.Ore, oreStep)
	case key.Matches(t, k.LessOre):
		return nextBy(sh, entry.Ore, -oreStep)
	case key.Matches(t, k.MoreCharcoal):
		return nextBy(sh, entry.Charcoal, charcoalStep)
	case key.Matches(t, k.LessCharcoal):
		return nextBy(sh, entry.Charcoal, -charcoalStep)
	case key.Matches(t, k.CrossOut):
		return crossOutLast(sh)
	case key.Matches(t, k.Earlier):
		return minuteEarlier(sh)
	case key.Matches(t, k.NotToMark):
		return level(sh, entry.NotToMark)
	case key.Matches(t, k.Heaped):
		return level(sh, entry.Heaped)
	case key.Matches(t, k.Seen):
		return f.seen(sh)
	case key.Matches(t, k.Alight):
		return topGas(sh, entry.TopGasAlight)
	case key.Matches(t, k.Out):
		return topGas(sh, entry.TopGasOut)
	}
	for _, a := range fireActs {
		if key.Matches(t, a.bind(k)) {
			return a.ask(sh, nil, book)
		}
	}
	return refused(words.NoAct(keyLabel(string(t))))
}

// fireActs are the acts with a key of their own that need no more than their
// asker.
var fireActs = []struct {
	bind func(fireKeys) key.Binding
	ask  asker
}{
	{func(k fireKeys) key.Binding { return k.Blast }, askBlast},
	{func(k fireKeys) key.Binding { return k.Tap }, askTap},
	{func(k fireKeys) key.Binding { return k.Rod }, plain(entry.Rod{})},
	{func(k fireKeys) key.Binding { return k.Poke }, plain(entry.Poke{})},
	{func(k fireKeys) key.Binding { return k.Dip }, askDip},
	{func(k fireKeys) key.Binding { return k.Look }, askLook},
	{func(k fireKeys) key.Binding { return k.Temperature }, askTemperature},
	{func(k fireKeys) key.Binding { return k.Note }, askNote},
	{func(k fireKeys) key.Binding { return k.Pause }, askPause},
}

// book keeps an event that happens now.
func book(ev entry.Event) step { return did(ev, sayLast) }

// sayLast says what the last entry of the smelt is, and what to do about a
// charge that may be double.
func sayLast(sh shared) string {
	last, ok := sh.smelt.Last()
	if !ok {
		return ""
	}
	said := describe(sh.theme.Units, sh.smelt, last)
	if strings.HasSuffix(said, words.Double) {
		said += words.IfDouble
	}
	return said
}

// whyNot says why this smelt takes no such act.
func whyNot(s session.Session) string {
	switch {
	case rightsIn(s) == lookOnly:
		return words.LookOnly
	case s.Light().Imported:
		return words.ImportedSmelt
	}
	return words.ClosedSmelt
}

// charging books a charge. Once the burn-down has begun, when the screen shows
// no next charge any more, it asks first.
func charging(sh shared, parts entry.Parts) step {
	st := book(entry.Charge{Parts: parts})
	switch p := sh.smelt.Phase(); {
	case p == entry.BurnsDown || p.Over():
		return step{ask: question(words.ChargeInBurnDown(p), func(shared) step { return st })}
	}
	return st
}

// chargeAsShown books exactly the recipe that the screen shows.
func chargeAsShown(sh shared) step {
	next := sh.smelt.Reading().Next
	if len(next) == 0 {
		return refused(words.NoRecipe)
	}
	parts := make(entry.Parts, len(next))
	for i, p := range next {
		parts[i] = p.Part
	}
	return charging(sh, parts)
}

// charcoalOnly is the charcoal of the recipe; before the main burn, a measure
// of the fill.
func charcoalOnly(sh shared) step {
	var parts entry.Parts
	for _, p := range sh.smelt.Recipe() {
		if p.What == entry.Charcoal {
			parts = append(parts, p)
		}
	}
	if filling(sh.smelt.Reading().Phase) {
		parts = measured(sh, entry.Charcoal, 1)
	}
	switch {
	case len(parts) == 0:
		return refused(words.NoCharcoalMeasure)
	case filling(sh.smelt.Reading().Phase):
		return book(entry.Fill{Parts: parts})
	}
	return charging(sh, parts)
}

// filling tells whether charcoal alone is still the fill.
func filling(p entry.Phase) bool {
	return p == entry.Prepared || p == entry.Preheat || p == entry.Filling
}

// oreAlone adds ore to the open measure.
func oreAlone(sh shared, scoops entry.Count) step {
	parts := measured(sh, entry.Ore, scoops)
	if parts == nil {
		return refused(words.NoOreMeasure)
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
func nextBy(sh shared, w entry.What, by entry.Count) step {
	parts := sh.smelt.Recipe()
	m, named := sh.smelt.Measure(w)
	for i, p := range parts {
		if p.What != w {
			continue
		}
		switch {
		case p.Mass.Known && !p.Count.Known && !m.Mass.Known:
			return refused(words.ByWeightOnly)
		case p.Mass.Known && !p.Count.Known:
			parts[i].Mass.Value = max(0, p.Mass.Value+entry.Kilogram(by)*m.Mass.Value)
		default:
			parts[i].Count = entry.Some(max(0, p.Count.Value+by))
			parts[i].Mass = entry.None[entry.Kilogram]()
		}
		if parts[i] == p {
			return refused(words.NoneAlready(w))
		}
		return book(entry.Recipe{Next: parts})
	}
	if by < 0 || !named {
		return refused(words.NoneAlready(w))
	}
	return book(entry.Recipe{Next: append(parts, entry.Part{What: w, Measure: m.Name, Count: entry.Some(by)})})
}

// level is a remark about the level after the last charge.
func level(sh shared, r entry.LevelRemark) step {
	cs := sh.smelt.Reading().Charges
	if len(cs) == 0 {
		return refused(words.NoChargeYet)
	}
	last := cs[len(cs)-1]
	return did(entry.Level{Charge: sh.smelt.Ref(last.Seq), Remark: r}, func(shared) string {
		return words.LevelAfter(last.Number, r)
	})
}
