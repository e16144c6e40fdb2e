package tui

import (
	"reflect"
	"slices"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model"
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/session"
)

// burning is a practice smelt with six charges, eleven minutes apart.
func burning(t *testing.T) *desk {
	t.Helper()
	d := practising(t)
	for range 6 {
		d.press("c")
		d.pass(11 * time.Minute)
	}
	return d
}

// pass lets time go by with a tick every ten seconds.
func (d *desk) pass(by time.Duration) {
	d.t.Helper()
	for ; by > 0; by -= rule.Grid {
		d.wait(min(by, rule.Grid))
	}
}

// shown is what the program showed of a rule, in its order.
func (d *desk) testified(id rule.ID) []string {
	var states []string
	for _, e := range d.m.running.Entries() {
		if t, ok := e.Event.(entry.Testimony); ok && t.Rule == string(id) {
			states = append(states, t.State)
		}
	}
	return states
}

func TestForecastIsShown(t *testing.T) {
	d := burning(t)
	d.shows("third in")
	if d.m.running.Reading().Due.Intervals == 0 {
		t.Errorf("%+v", d.m.running.Reading().Due)
	}
}

// A lost blast is warned of, seen with one key, and clears when it is on again;
// each is written down once.
func TestWarningIsShownSeenAndCleared(t *testing.T) {
	d := burning(t)
	d.press("b", "7", "0", "0", "enter", "b", "o")
	d.pass(3 * time.Minute)
	d.shows("blast lost")
	d.press("a")
	d.answers("seen: blast lost")
	if a, ok := d.last().(entry.Acknowledge); !ok || a.Rule != string(rule.BlastLost) {
		t.Errorf("%#v", d.last())
	}
	for _, w := range d.m.running.Standing() {
		if w.Rule == rule.BlastLost && !w.Acknowledged {
			t.Error("it is not acknowledged")
		}
	}
	d.press("b", "n")
	d.pass(2 * time.Minute)
	if got := d.testified(rule.BlastLost); !reflect.DeepEqual(got, []string{session.Raised, session.Cleared}) {
		t.Errorf("testified: %v", got)
	}
	d.press("a", "a")
	for d.m.answer.refused == false {
		d.press("a")
	}
	d.answers("no warning stands")
}

// What the program showed changes no figure and no warning.
func TestTestimonyIsNotRead(t *testing.T) {
	d := burning(t)
	d.press("b", "o")
	d.pass(5 * time.Minute)
	var without []entry.Entry
	for _, e := range d.m.running.Entries() {
		if e.Kind() == entry.KindTestimony {
			e.Event = nil
		}
		without = append(without, e)
	}
	at := d.m.running.Reading().At
	if got := model.Read(without, fold.All, at); !reflect.DeepEqual(got, d.m.running.Reading()) {
		t.Error("without the testimony the figures differ")
	}
	if got := model.Warnings(without, fold.All, at); !reflect.DeepEqual(got, d.m.running.Warnings()) {
		t.Error("without the testimony the warnings differ")
	}
}

// After a restart nothing is written down that already was.
func TestTestimonyGoesOnAfterARestart(t *testing.T) {
	d := burning(t)
	d.press("b", "o")
	d.pass(3 * time.Minute)
	again := sitAt(t, d.book, later(d.at, time.Minute), d.m.theme)
	again.press("g")
	again.pass(time.Minute)
	if got := again.testified(rule.BlastLost); len(got) != 1 {
		t.Errorf("testified: %v", got)
	}
}

// While the program asks whether the top gas burns, one key answers; at other
// times that key does nothing.
func TestTopGasIsAnsweredByOneKey(t *testing.T) {
	d := practising(t)
	d.press("x")
	d.answers("nobody asks")
	d.press("c")
	for range 6 {
		d.pass(5 * time.Minute)
		d.press("c")
	}
	if !d.m.running.Stands(rule.TopGasQuestion) {
		d.press("l", "t", "o") // out: the answer is asked for all the same
		d.pass(time.Minute)
	}
	d.shows("alight")
	d.press("y")
	if l, ok := d.last().(entry.Look); !ok || l.At != entry.AtTopGas || l.Sees != entry.TopGasAlight {
		t.Fatalf("%#v: %s", d.last(), d.m.answer.text)
	}
	d.pass(time.Minute)
	d.press("y")
	d.answers("nobody asks")
}

// A caution comes with its moment, goes with the next key, which acts, and
// comes once for each person.
func TestCautionsAreShownOnce(t *testing.T) {
	d := practising(t)
	d.wait(time.Second)
	d.shows("take care: carbon monoxide")
	d.wait(time.Second)
	d.shows("take care: carbon monoxide")
	d.press("c")
	if d.count(entry.KindCharge) != 1 || d.m.careful != "" {
		t.Error("the key did not act, or the caution stands")
	}
	for range 30 {
		d.wait(time.Second)
		d.press("s")
	}
	seen := map[string]int{}
	count := func() {
		clear(seen)
		for _, e := range d.m.running.Entries() {
			if c, ok := e.Event.(entry.CautionShown); ok {
				seen[c.Caution+" "+e.By]++
			}
		}
	}
	count()
	for _, c := range []string{rule.CarbonMonoxide, rule.WetClay, rule.UnlitGas, rule.Glare} {
		if seen[c+" "] != 1 {
			t.Errorf("%s was shown %d times", c, seen[c+" "])
		}
	}
	if seen[rule.HotWork+" "] != 0 {
		t.Error("hot work was shown before its moment")
	}
	d.press("o", "g", "J", "enter")
	for range 10 {
		d.wait(time.Second)
		d.press("s")
	}
	count()
	if seen[rule.CarbonMonoxide+" J"] != 1 {
		t.Errorf("another person was shown %v", seen)
	}
	// To read again: one line of the list of rare acts.
	before := len(d.acts())
	d.press("o", "x")
	d.shows("take care: carbon monoxide")
	d.press("c")
	d.shows("wet clay")
	for range 10 {
		d.press("enter", "esc")
	}
	if d.m.dialog != nil || len(d.acts()) != before {
		t.Error("reading the cautions again booked something, or does not end")
	}
}

// A caution with no room beside a warning waits, and is not said to be shown.
func TestCautionWaitsForRoom(t *testing.T) {
	d := practising(t)
	d.send(tea.WindowSizeMsg{Width: 50, Height: 20})
	d.press("c", "b", "o")
	d.pass(2 * time.Minute)
	shown := 0
	for _, e := range d.m.running.Entries() {
		if e.Kind() == entry.KindCaution {
			shown++
		}
	}
	d.press("s")
	if d.m.running.Stands(rule.BlastLost) {
		d.pass(time.Minute)
		if d.m.careful != "" {
			t.Errorf("a caution over the warning: %s", d.m.careful)
		}
	} else {
		t.Fatal("no warning stands")
	}
	if shown > 2 {
		t.Errorf("%d cautions were called shown", shown)
	}
}

// Of several warnings one key sees each, and once all are seen shows one after
// the other; any other key, or half a minute, is back at the gravest, and one
// that nobody has seen comes first. Two of one grade stand newest first.
func TestWarningsAreSteppedThrough(t *testing.T) {
	d := burning(t)
	d.press("l", "3", "2")
	d.pass(time.Minute)
	d.press("l", "1", "6")
	d.pass(2 * time.Minute)
	first := func() rule.ID {
		f := d.m.screens[fireScreen].(fire)
		return f.turn.of(d.m.running.Standing(), d.m.now)[0].Rule
	}
	ws := d.m.running.Standing()
	if len(ws) < 2 || ws[0].Rule != rule.TuyereDim || ws[1].Rule != rule.SlagThick {
		t.Fatalf("%+v", ws)
	}
	for d.press("a"); slices.ContainsFunc(d.m.running.Standing(), unseen); d.press("a") {
		d.wait(time.Second)
	}
	gravest := first()
	seen := map[rule.ID]bool{}
	for range d.m.running.Standing() {
		d.wait(time.Second)
		d.press("a")
		seen[first()] = true
	}
	if len(seen) != len(d.m.running.Standing()) || first() != gravest {
		t.Errorf("%d of %d were shown, and the last is %s", len(seen), len(d.m.running.Standing()), first())
	}
	d.wait(time.Second)
	if d.press("a"); first() == gravest {
		t.Error("not turned")
	}
	if d.pass(turnsFor + time.Second); first() != gravest {
		t.Errorf("%s stands after half a minute", first())
	}
	d.press("a")
	if d.press("up"); first() != gravest {
		t.Errorf("%s stands after another key", first())
	}
}
