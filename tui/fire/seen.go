package fire

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// turn is a warning that is looked at in the place of the gravest, and since
// when: all of them have been seen, and there is room for one.
type turn struct {
	rule  rule.ID
	onset time.Duration
	since entry.Stamp
}

// turnsFor is how long it has that place. Nobody has to turn back.
const turnsFor = 30 * time.Second

// is tells whether a warning is the one looked at.
func (t turn) is(w rule.Warning) bool { return t.rule == w.Rule && t.onset == w.Onset }

// of are the warnings with the one looked at first. One that nobody has seen
// comes before it.
func (t turn) of(ws []rule.Warning, now entry.Stamp) []rule.Warning {
	i := slices.IndexFunc(ws, t.is)
	if i < 0 || screen.Since(t.since, now) > turnsFor || slices.ContainsFunc(ws, unseen) {
		return ws
	}
	return slices.Concat(ws[i:], ws[:i])
}

// unseen tells whether nobody has acknowledged a warning.
func unseen(w rule.Warning) bool { return !w.Acknowledged }

// seen acknowledges the first warning that nobody has seen. Once all are, it
// turns to the next of them.
func (f Screen) seen(sh *screen.Shared) (Screen, screen.Effect) {
	ws := f.turn.of(sh.Smelt.Standing(), sh.Now)
	if i := slices.IndexFunc(ws, unseen); i >= 0 {
		w, more := ws[i], len(ws) > 1
		title, _, _ := sh.Units.Warning(w)
		return f, screen.Did(entry.Acknowledge{Rule: string(w.Rule), OnsetMs: w.Onset.Milliseconds()}, func(*screen.Shared) string {
			return words.SeenWarning(title, more, Map.Seen.Help().Key)
		})
	}
	if len(ws) < 2 {
		return f, screen.Refuse(words.NothingToSee)
	}
	f.turn = turn{ws[1].Rule, ws[1].Onset, sh.Now}
	return f, screen.Say(func(sh *screen.Shared) string {
		title, evidence, _ := sh.Units.Warning(ws[1])
		return modelwords.Warned(title, evidence)
	})
}

// topGas answers whether the gas at the top burns. That it does is taken also before
// it is asked; that it is out only while it is, so that a slip books none: at other
// times it is a look like any other.
func topGas(sh *screen.Shared, sees string) screen.Effect {
	if sees != entry.TopGasAlight && !sh.Smelt.Stands(rule.TopGasQuestion, rule.TopGasUnlit) {
		return screen.Refuse(words.TopGasNotAsked)
	}
	if sh.Answers {
		return screen.See{Event: entry.Look{At: entry.AtTopGas}}
	}
	return act.Book(entry.Look{At: entry.AtTopGas, Sees: sees})
}

// warningHints are the keys that answer what stands.
func warningHints(s session.Session) []draw.KeyHint {
	if !s.Running() {
		return nil
	}
	var hs []draw.KeyHint
	if s.Stands(rule.TopGasQuestion, rule.TopGasUnlit) {
		hs = append(hs, screen.Short(Map.Alight, words.ShortAlight), screen.Short(Map.Out, words.ShortOut))
	}
	if s.Stands(rule.DampHearth) {
		hs = append(hs, draw.KeyHint{Key: screen.KeyLabel(Map.LessOre.Keys()[0]), Does: words.ShortLessOre})
	}
	if slices.ContainsFunc(s.Standing(), unseen) {
		hs = append(hs, screen.Short(Map.Seen, words.ShortSeen))
	}
	if ws := s.Standing(); len(ws) > 0 { // the gravest is the one that is read
		hs = append(hs, remedyHints(ws[0].Rule)...)
	}
	return hs
}

// remedyHints are the keys of what the usual remedy of a warning asks for, where they are acts of one key.
func remedyHints(id rule.ID) []draw.KeyHint {
	k := Map
	switch id {
	case rule.DoubleCharge:
		return []draw.KeyHint{screen.Short(k.CrossOut, words.ShortCrossOut)}
	case rule.TuyereBlocked, rule.TuyereDim, rule.BurnSlower, rule.PressureHigh, rule.AirShort:
		return []draw.KeyHint{screen.Short(k.Rod, words.ShortRod), screen.Short(k.Look, words.DoLook)}
	case rule.SlagAt, rule.SlagNear, rule.SlagRises:
		return []draw.KeyHint{screen.Short(k.Tap, words.DoTap), screen.Short(k.Rod, words.ShortRod)}
	case rule.HangUp, rule.FireFell:
		return []draw.KeyHint{screen.Short(k.Poke, words.ShortPoke), screen.Short(k.Dip, words.DoDip)}
	case rule.SlagUnseen:
		return []draw.KeyHint{screen.Short(k.Look, words.DoLook)}
	case rule.ChargeOverdue:
		return []draw.KeyHint{screen.Short(k.Charge, words.ShortCharge), screen.Short(k.Dip, words.DoDip), screen.Short(k.Poke, words.ShortPoke)}
	}
	return nil
}
