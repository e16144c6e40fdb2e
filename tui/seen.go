package tui

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/words"
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
	if i < 0 || since(t.since, now) > turnsFor || slices.ContainsFunc(ws, unseen) {
		return ws
	}
	return slices.Concat(ws[i:], ws[:i])
}

// unseen tells whether nobody has acknowledged a warning.
func unseen(w rule.Warning) bool { return !w.Acknowledged }

// seen acknowledges the first warning that nobody has seen. Once all are, it
// turns to the next of them.
func (f fire) seen(sh shared) step {
	ws := f.turn.of(sh.smelt.Standing(), sh.now)
	if i := slices.IndexFunc(ws, unseen); i >= 0 {
		w, more := ws[i], len(ws) > 1
		title, _, _ := sh.theme.Units.Warning(w)
		return did(entry.Acknowledge{Rule: string(w.Rule), OnsetMs: w.Onset.Milliseconds()}, func(shared) string {
			return words.SeenWarning(title, more, fireMap.Seen.Help().Key)
		})
	}
	if len(ws) < 2 {
		return refused(words.NothingToSee)
	}
	f.turn = turn{ws[1].Rule, ws[1].Onset, sh.now}
	return step{set: f, say: func(sh shared) string {
		title, evidence, _ := sh.theme.Units.Warning(ws[1])
		return words.Warned(title, evidence)
	}}
}
