package tui

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/paint"
)

// watch is what goes by the fixed grid: the warnings up to a reading, and the
// cautions that the person in charge has still to be shown. It costs a few
// milliseconds, so it is kept until an entry comes in or the next grid point.
type watch struct {
	at       time.Duration // the grid point
	warnings []rule.Warning
	cautions []rule.Caution
}

// watched holds the rules against the smelt at its reading.
func (s smelt) watched() smelt {
	c := fold.Trace(s.entries, fold.All, s.reading.At)
	s.watch = watch{
		at: s.reading.At.Truncate(rule.Grid), warnings: rule.WalkSolved(c, s.solution.Glances()), cautions: rule.CautionsDue(c.State, s.reading.By),
	}
	return s
}

// stale tells whether the reading has passed another grid point.
func (s smelt) stale() bool { return s.reading.At.Truncate(rule.Grid) != s.watch.at }

// judged tells whether the rules go by an entry. They do not by the keys of
// moving about, which are many.
func judged(e entry.Entry) bool { return e.Kind() != entry.KindKeys }

// standing are the warnings that stand, gravest first.
func (s smelt) standing() []rule.Warning { return rule.Active(s.watch.warnings) }

// stands tells whether a warning of one of these rules does.
func (s smelt) stands(ids ...rule.ID) bool {
	for _, w := range s.watch.warnings {
		for _, id := range ids {
			if w.Raised() && w.Rule == id {
				return true
			}
		}
	}
	return false
}

// warningHints are the keys that answer what stands.
func warningHints(s smelt) []paint.KeyHint {
	if !s.running() {
		return nil
	}
	var hs []paint.KeyHint
	if s.stands(rule.TopGasQuestion, rule.TopGasUnlit) {
		hs = append(hs, short(fireMap.Alight, words.ShortAlight), short(fireMap.Out, words.ShortOut))
	}
	if slices.ContainsFunc(s.standing(), unseen) {
		hs = append(hs, short(fireMap.Seen, words.ShortSeen))
	}
	return hs
}

// topGas answers whether the gas at the top burns, while that is asked. At
// other times it is a look like any other, so that a slip books none.
func topGas(sh shared, sees string) step {
	if !sh.smelt.stands(rule.TopGasQuestion, rule.TopGasUnlit) {
		return refused(words.TopGasNotAsked)
	}
	return book(entry.Look{At: entry.AtTopGas, Sees: sees})
}

// What a testimony says of a warning.
const (
	raised  = "raised"
	cleared = "cleared"
)

// testify writes down which warnings began and ceased to stand since that was
// last written down. It is for people who ask later what the program showed;
// warnings are derived anew from the entries and never read back from this.
func (m Model) testify() (Model, []entry.Entry) {
	s := m.running
	if !s.running() {
		return m, nil
	}
	said := map[rule.ID]bool{}
	for _, e := range s.entries {
		if t, ok := e.Event.(entry.Testimony); ok {
			said[rule.ID(t.Rule)] = t.State == raised
		}
	}
	var out []entry.Entry
	say := func(id rule.ID, state, text string) {
		var e entry.Entry
		m, e = m.hand(s.id, act{event: entry.Testimony{
			Rule: string(id), State: state, Program: m.cfg.Version, Solver: s.light().Solver, Text: text,
		}}, m.active, "")
		out = append(out, e)
	}
	now := map[rule.ID]bool{}
	for _, w := range s.standing() {
		if now[w.Rule] = true; !said[w.Rule] {
			title, evidence, _ := words.Units{}.Warning(w) // the journal is metric
			say(w.Rule, raised, words.Warned(title, evidence))
		}
	}
	for _, row := range rule.Table {
		if said[row.ID] && !now[row.ID] {
			say(row.ID, cleared, "")
		}
	}
	return m.refolded(out), out
}
