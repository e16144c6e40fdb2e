package solve_test

import (
	"maps"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/solve"
	"chargehand/model/words"
)

// judged is every note of the solver's on the published logs, held against what
// the log says: true, false, or unremarked where it says nothing of the kind.
var judged = map[string]string{
	"01 " + string(rule.SlagUnseen):  "asked: the log tells of slag at 12:55 and not again",
	"02 " + string(rule.SlagUnseen):  "true: nineteen minutes later the air was in trouble and slag was tapped",
	"03 " + string(rule.SlagUnseen):  "asked: the log says nothing of the slag",
	"02 " + string(rule.TopHot):      "unremarked: charges twice as far apart as before, entries missed; nobody wrote of the top",
	"03 " + string(rule.SlagRises):   "false: nothing in the log, and 7.8 kg of bloom",
	"15 " + string(rule.HearthCools): "true as far as it goes: the bellows had stopped for repair at 15:03; the furnace is a bowl and its sizes here are not its own",
}

// The solver says at most two things of a published smelt that the plain rules
// do not, and each has been judged. Where sizes were not published the usual
// short shaft stands in.
//
//	go test -run TestSolverNotes -v ./model/solve
func TestSolverNotesOnPublishedLogs(t *testing.T) {
	for _, name := range []string{"01", "02", "03", "05", "07", "09", "11", "12", "14", "15"} {
		f, measures := norse, []entry.Measure{bucketOf(1.8)}
		for _, l := range publishedSmelts {
			if l.name == name {
				f, measures = l.furnace, l.measures
			}
		}
		entries := published(t, name, f, measures...)
		c := fold.Trace(entries, fold.All, fold.End(entries)-time.Second)
		type key struct {
			rule  rule.ID
			onset time.Duration
		}
		notes := map[key]rule.Warning{}
		for _, w := range rule.WalkSolved(c, new(solve.Solver).Solve(&c).Samples()) {
			notes[key{w.Rule, w.Onset}] = w
		}
		for _, w := range rule.Walk(c) {
			delete(notes, key{w.Rule, w.Onset})
		}
		for w := range maps.Values(notes) {
			said, evidence, _ := words.Units{}.Warning(w)
			verdict, ok := judged[name+" "+string(w.Rule)]
			if !ok {
				verdict = "NOT JUDGED"
				t.Errorf("log %s: %s is not judged", name, said)
			}
			t.Logf("log %s, %s to %s: %s, %v. %s", name, c.Lit.Add(w.Onset).Format("15:04"), c.Lit.Add(w.Cleared).Format("15:04"), said, evidence, verdict)
		}
		if len(notes) > 2 {
			t.Errorf("log %s: %d notes of the solver's", name, len(notes))
		}
	}
}
