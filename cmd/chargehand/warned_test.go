package main

import (
	"encoding/json"
	"strings"
	"testing"

	"chargehand/model/rule"
	"chargehand/model/words"
)

// The bellows of a published log stopped at 13:58 and started again at 14:00 (log of
// June 2004): in between state tells the warning that stands, in text and as JSON; some
// hours before that there is none, and the list is there all the same.
func TestStateTellsWhatStands(t *testing.T) {
	h := newHouse(t)
	id := h.imported("../../testdata/logs/14-boxed-shaft-2004-06-partial.csv")
	s := h.state(id, "--at", "13:59")
	if len(s.Warns) != 1 {
		t.Fatalf("%d warnings: %+v", len(s.Warns), s.Warns)
	}
	w := s.Warns[0]
	if w.Rule != rule.BlastLost || w.Grade != "act" || !strings.HasPrefix(w.Since, "2004-06-01T13:58:30") && !strings.Contains(w.Since, "T13:58:30") ||
		w.Title == "" || w.Evidence == "" || w.Remedy == "" || w.Acknowledged {
		t.Errorf("%+v", w)
	}
	text := h.run("state", id, "--at", "13:59")
	for _, part := range []string{"ACT", "since 13:58", w.Title, w.Evidence, w.Remedy} {
		if !strings.Contains(text, part) {
			t.Errorf("the text lacks %q:\n%s", part, text)
		}
	}
	var raw map[string]json.RawMessage
	h.decode(h.run("state", "--json", id, "--at", "11:00"), &raw)
	if string(raw["warnings"]) != "[]" {
		t.Errorf("warnings of a quiet preheat: %s", raw["warnings"])
	}
	h.decode(h.run("state", "--json", id, "--at", "13:59"), &raw)
	var keys []map[string]any
	if err := json.Unmarshal(raw["warnings"], &keys); err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"rule", "grade", "since", "title", "evidence", "remedy", "acknowledged"} {
		if _, ok := keys[0][key]; !ok || len(keys[0]) != 7 {
			t.Errorf("no %q in %v", key, keys[0])
		}
	}
}

// Log 03 burned more than its meter allows all day (1.01 to 1.24 times): its zones and
// its factor say that the meter is not believed, and its burn rate that it is over what
// the blast burns, each in the same line. Its zones carry their spread.
func TestStateSaysWhatNobodyShouldActOn(t *testing.T) {
	h := newHouse(t)
	id := h.imported("../../testdata/logs/03-norse-course-2016-11-30.csv", "--furnace", "Norse,bore=25,stack=50,rim=50,base=15")
	text := h.run("state", id, "--at", "15:30")
	for _, line := range []struct{ of, says string }{
		{"  meter factor ", "the meter is not believed"},
		{"  furnace ", "the meter is not believed"},
		{"  burn rate ", words.MoreThanBlast},
		{"  top gas co ", "of CO and CO2"},
		{"  0 to ", "°C ("},
	} {
		if !strings.Contains(lineOf(text, line.of), line.says) {
			t.Errorf("%q does not say %q:\n%s", lineOf(text, line.of), line.says, text)
		}
	}
	s := h.state(id, "--at", "15:30")
	if s.Meter {
		t.Error("JSON believes the meter")
	}
	for _, z := range s.Zones {
		if z.Low >= z.Middle || z.High <= z.Middle {
			t.Errorf("%s: %v, spread %v to %v", z.What, z.Middle, z.Low, z.High)
		}
	}
}

func lineOf(text, start string) string {
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, start) {
			return line
		}
	}
	return ""
}
