package rehearse

import (
	"math"
	"testing"

	"chargehand/model/truth"
	"chargehand/model/why"
)

// A rehearsal done over as it was is itself; without the mishap that did harm it is better; more ore from where a person took over
// leaves more of it than less; nothing is told while it is sealed.
func TestWhyTruly(t *testing.T) {
	h := lives(t, 11, []truth.Mishap{truth.BlowerDying})
	if _, err := WhyTruly(h.entries[:len(h.entries)-1]); err == nil {
		t.Error("told while it is sealed")
	}
	all, err := WhyTruly(h.entries)
	if err != nil {
		t.Fatal(err)
	}
	by, without := map[why.Name]Truly{}, map[truth.Mishap]Truly{}
	for _, w := range all {
		t.Logf("%+v", w)
		if math.IsNaN(w.Cold + w.Left + w.Bloom) {
			t.Errorf("no number: %+v", w)
		}
		if w.Mishap == "" {
			by[w.Name] = w
		}
		without[w.Mishap] = w
	}
	end, err := EndOf(h.entries)
	if err != nil {
		t.Fatal(err)
	}
	over, err := doOver(h.entries, keyedOf(h.entries), manner{lets: 1}, nil)
	if err != nil || over.l.trace[len(over.l.trace)-1] == h.l.trace[len(h.l.trace)-1] {
		t.Errorf("charged at once it is the same furnace: %v", err)
	}
	as, err := mannerOf(h.entries)
	if err != nil {
		t.Fatal(err)
	}
	if over, err = doOver(h.entries, keyedOf(h.entries), as, nil); err != nil || over.l.trace[len(over.l.trace)-1] != h.l.trace[len(over.l.trace)-1] {
		t.Errorf("done over it is another furnace: %v, %+v, was %+v", err, over.l.f.Look(), h.l.f.Look())
	}
	if was := by[why.AsWas]; was.Bloom != end.BloomKg || all[0].Name != why.AsWas {
		t.Errorf("as it was: %+v, was %.2f kg", was, end.BloomKg)
	}
	if len(end.Befell) == 1 && end.Befell[0].Harms && without[truth.BlowerDying].Cold > by[why.AsWas].Cold {
		t.Errorf("without its mishap it is colder: %+v", without)
	}
	if by[why.MoreOre].Left < by[why.LessOre].Left {
		t.Errorf("more ore %+v, less ore %+v", by[why.MoreOre], by[why.LessOre])
	}
	if _, ok := by[why.WetCharcoal]; ok {
		t.Error("the furnace tells of what is only known otherwise")
	}
	if from, err := HandedOver(h.entries); err != nil || from <= 0 {
		t.Errorf("handed over at %v: %v", from, err)
	}
}
