package tui

import (
	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
)

// testify writes down which warnings began and ceased to stand since that was
// last written down. It is for people who ask later what the program showed;
// warnings are derived anew from the entries and never read back from this.
func (m Model) testify() (Model, []entry.Entry) {
	var out []entry.Entry
	for _, s := range m.alight() {
		var es []entry.Entry
		m, es = m.testifyOf(s)
		out = append(out, es...)
	}
	return m, out
}

func (m Model) testifyOf(s session.Session) (Model, []entry.Entry) {
	said := s.Testified()
	var out []entry.Entry
	say := func(id rule.ID, state, text string) {
		var e entry.Entry
		m, e = m.hand(s.ID(), screen.Act{Event: entry.Testimony{
			Rule: string(id), State: state, Program: m.cfg.Version, Solver: s.Light().Solver, Text: text,
		}}, m.active, "")
		out = append(out, e)
	}
	now := map[rule.ID]bool{}
	for _, w := range s.Standing() {
		if now[w.Rule] = true; !said[w.Rule] {
			title, evidence, _ := modelwords.Units{}.Warning(w) // the journal is metric
			say(w.Rule, session.Raised, modelwords.Warned(title, evidence))
		}
	}
	for _, row := range rule.Table {
		if said[row.ID] && !now[row.ID] {
			say(row.ID, session.Cleared, "")
		}
	}
	return m.refolded(out), out
}
