package tui

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/tui/paint"
)

// warningHints are the keys that answer what stands.
func warningHints(s session.Session) []paint.KeyHint {
	if !s.Running() {
		return nil
	}
	var hs []paint.KeyHint
	if s.Stands(rule.TopGasQuestion, rule.TopGasUnlit) {
		hs = append(hs, short(fireMap.Alight, words.ShortAlight), short(fireMap.Out, words.ShortOut))
	}
	if slices.ContainsFunc(s.Standing(), unseen) {
		hs = append(hs, short(fireMap.Seen, words.ShortSeen))
	}
	return hs
}

// topGas answers whether the gas at the top burns, while that is asked. At
// other times it is a look like any other, so that a slip books none.
func topGas(sh shared, sees string) step {
	if !sh.smelt.Stands(rule.TopGasQuestion, rule.TopGasUnlit) {
		return refused(words.TopGasNotAsked)
	}
	return book(entry.Look{At: entry.AtTopGas, Sees: sees})
}

// testify writes down which warnings began and ceased to stand since that was
// last written down. It is for people who ask later what the program showed;
// warnings are derived anew from the entries and never read back from this.
func (m Model) testify() (Model, []entry.Entry) {
	s := m.running
	if !s.Running() {
		return m, nil
	}
	said := s.Testified()
	var out []entry.Entry
	say := func(id rule.ID, state, text string) {
		var e entry.Entry
		m, e = m.hand(s.ID(), act{event: entry.Testimony{
			Rule: string(id), State: state, Program: m.cfg.Version, Solver: s.Light().Solver, Text: text,
		}}, m.active, "")
		out = append(out, e)
	}
	now := map[rule.ID]bool{}
	for _, w := range s.Standing() {
		if now[w.Rule] = true; !said[w.Rule] {
			title, evidence, _ := words.Units{}.Warning(w) // the journal is metric
			say(w.Rule, session.Raised, words.Warned(title, evidence))
		}
	}
	for _, row := range rule.Table {
		if said[row.ID] && !now[row.ID] {
			say(row.ID, session.Cleared, "")
		}
	}
	return m.refolded(out), out
}
