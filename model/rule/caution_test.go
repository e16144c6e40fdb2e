package rule_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/words"
)

func (d *day) due(minute float64, by string) []string {
	var ids []string
	var care rule.Care
	for l := range fold.Fold(d.entries, fold.All, clock(minute)).Lines.All() {
		care.Take(*l)
	}
	for _, c := range care.Due(by) {
		ids = append(ids, c.ID)
	}
	return ids
}

// show says that each caution due to a person stood on the screen.
func (d *day) show(minute float64, by string) {
	for _, id := range d.due(minute, by) {
		d.key(minute, entry.CautionShown{Caution: id})
		d.entries[len(d.entries)-1].By = by
	}
}

func TestCautionsAreToldOnceToEachPersonAtTheirMoment(t *testing.T) {
	d := newDay(entry.Light{})
	check := func(minute float64, by string, want ...string) {
		t.Helper()
		if diff := cmp.Diff(want, d.due(minute, by)); diff != "" {
			t.Errorf("due to %q at minute %v (-want +got):\n%s", by, minute, diff)
		}
	}
	check(1, "AB", rule.CarbonMonoxide, rule.WetClay, rule.FireSpread)
	d.show(1, "AB")
	check(2, "AB")
	check(2, "CD", rule.CarbonMonoxide, rule.WetClay, rule.FireSpread)
	d.key(5, entry.Blast{State: entry.BlastOn})
	check(5, "AB", rule.BlowerInRain, rule.Noise)
	d.show(5, "AB")
	d.key(10, entry.Fill{Parts: entry.Parts{coal(5)}})
	check(10, "AB", rule.UnlitGas, rule.Glare, rule.Zinc)
	d.show(10, "AB")
	d.key(15, charge(coal(1.9), ore(1)))
	check(15, "AB", rule.BurnThrough)
	d.show(15, "AB")
	d.key(20, charge(coal(1.9), ore(1)))
	check(20, "AB")
	d.key(30, entry.Blast{State: entry.BlastOff})
	check(30, "AB", rule.BlowBack)
	check(29, "AB")
	d.show(30, "AB")
	d.key(40, look(entry.AtSound, entry.SoundGurgle))
	check(40, "AB", rule.MoltenSlag)
	d.show(40, "AB")
	d.key(41, entry.Tap{})
	check(41, "AB")
	d.key(50, entry.BurnDown{})
	check(50, "AB", rule.HotWork, rule.Onlookers, rule.Silica)
	d.show(50, "AB")
	check(60, "AB")
	check(60, "CD", rule.HotWork, rule.Onlookers, rule.Silica, rule.MoltenSlag, rule.BlowBack, rule.UnlitGas, rule.Glare, rule.Zinc,
		rule.BurnThrough, rule.BlowerInRain, rule.Noise, rule.CarbonMonoxide, rule.WetClay, rule.FireSpread)
	d.key(299, entry.Note{Text: "rain"})
	check(299, "AB")
	d.key(300, entry.Note{Text: "still rain"})
	check(300, "AB", rule.Tiredness)
}

// What may be is told once; when it comes to pass it is told anew, before all else and
// without waiting for another to be read, and then no more.
func TestACautionIsToldAnewWhenItComesToPass(t *testing.T) {
	d := newDay(entry.Light{})
	check := func(minute float64, want ...string) {
		t.Helper()
		if diff := cmp.Diff(want, d.due(minute, "AB")); diff != "" {
			t.Errorf("due at minute %v (-want +got):\n%s", minute, diff)
		}
	}
	d.key(5, entry.Blast{State: entry.BlastOn})
	d.key(10, charge(coal(1.9), ore(1)))
	d.show(10, "AB")
	d.key(11, entry.Weather{Rain: entry.RainNone})
	d.key(12, entry.WallSeen{What: entry.WallPatched})
	check(12)
	d.key(13, entry.Weather{Rain: entry.RainSteady})
	check(13, rule.BlowerInRain)
	d.show(13, "AB")
	d.key(14, entry.Weather{Rain: entry.RainHeavy})
	check(14)
	d.key(15, entry.WallSeen{What: entry.WallBurnThrough})
	check(15, rule.BurnThrough)
	if !rule.AtWall.Presses() || rule.AtRain.Presses() {
		t.Error("a wall that gives waits, or rain does not")
	}
	d.show(15, "AB")
	d.key(16, entry.WallSeen{What: entry.WallCrack})
	check(16)

	early := newDay(entry.Light{}) // told when it comes to pass, and no more at its own moment
	early.show(1, "AB")
	early.key(2, entry.Weather{Rain: entry.RainDrops})
	early.show(2, "AB")
	early.key(3, entry.Blast{State: entry.BlastOn})
	if diff := cmp.Diff([]string{rule.Noise}, early.due(3, "AB")); diff != "" {
		t.Errorf("after rain before the blast (-want +got):\n%s", diff)
	}
}

// After one caution a person is left alone for a while, unless what the next one
// speaks of has come since.
func TestCautionsComeOneByOne(t *testing.T) {
	d := newDay(entry.Light{})
	check := func(minute float64, by, want string) {
		t.Helper()
		var care rule.Care
		s := fold.Fold(d.entries, fold.All, clock(minute))
		for l := range s.Lines.All() {
			care.Take(*l)
		}
		c, ok := care.Next(by, s.At)
		if c.ID != want || ok != (want != "") {
			t.Errorf("at minute %v %q is shown %q, want %q", minute, by, c.ID, want)
		}
	}
	shown := func(minute float64, by, id string) {
		d.key(minute, entry.CautionShown{Caution: id})
		d.entries[len(d.entries)-1].By = by
	}
	check(1, "AB", rule.CarbonMonoxide)
	shown(1, "AB", rule.CarbonMonoxide)
	check(2, "AB", "")
	check(2, "CD", rule.CarbonMonoxide)
	check(3, "AB", rule.WetClay)
	shown(3, "AB", rule.WetClay)
	d.key(3.5, entry.Fill{Parts: entry.Parts{coal(5)}})
	check(3.5, "AB", rule.UnlitGas)
	shown(3.6, "AB", rule.UnlitGas)
	check(4, "AB", "")
	d.key(4, entry.Blast{State: entry.BlastOff})
	check(4, "AB", rule.BlowBack)
}

// Every caution has its words and its source.
func TestEveryCautionHasWords(t *testing.T) {
	for _, c := range rule.Cautions {
		title, fact, care := words.Caution(c.ID)
		if title == "" || fact == "" || care == "" || c.Source == "" || strings.HasSuffix(care, ".") {
			t.Errorf("%s: %q, %q, %q, from %q", c.ID, title, fact, care, c.Source)
		}
	}
}
