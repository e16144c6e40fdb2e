package tui_test

import (
	"reflect"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/tui/desk"
)

func TestForecastIsShown(t *testing.T) {
	d := desk.Burning(t)
	d.Shows("charge 5: ")
	if d.M.Running().Reading().Due.Intervals == 0 {
		t.Errorf("%+v", d.M.Running().Reading().Due)
	}
}

// A lost blast is warned of, seen with one key, and clears when it is on again;
// each is written down once.
func TestWarningIsShownSeenAndCleared(t *testing.T) {
	d := desk.Burning(t)
	d.Press("b", "7", "0", "0", "enter", "b", "o")
	d.Pass(3 * time.Minute)
	d.Shows("blast lost")
	d.Press("a")
	d.Answers("seen: blast lost")
	if a, ok := d.Last().(entry.Acknowledge); !ok || a.Rule != string(rule.BlastLost) {
		t.Errorf("%#v", d.Last())
	}
	for _, w := range d.M.Running().Standing() {
		if w.Rule == rule.BlastLost && !w.Acknowledged {
			t.Error("it is not acknowledged")
		}
	}
	d.Press("b", "n")
	d.Pass(2 * time.Minute)
	if got := d.Testified(rule.BlastLost); !reflect.DeepEqual(got, []string{session.Raised, session.Cleared}) {
		t.Errorf("testified: %v", got)
	}
	d.Press("a", "a")
	for range 20 {
		if _, refused := d.M.Answer(); refused {
			break
		}
		d.Press("a")
	}
	d.Answers("no warning stands")
}

// What the program showed changes no figure and no warning.
func TestTestimonyIsNotRead(t *testing.T) {
	d := desk.Burning(t)
	d.Press("b", "o")
	d.Pass(5 * time.Minute)
	var without []entry.Entry
	for _, e := range d.M.Running().Entries() {
		if e.Kind() == entry.KindTestimony {
			e.Event = nil
		}
		without = append(without, e)
	}
	at := d.M.Running().Reading().At
	if got := readAt(without, fold.All, at); !reflect.DeepEqual(got, d.M.Running().Reading()) {
		t.Error("without the testimony the figures differ")
	}
	if got := session.Open("s", without).AsOf(fold.All, at).Warnings(); !reflect.DeepEqual(got, d.M.Running().Warnings()) {
		t.Error("without the testimony the warnings differ")
	}
}

// After a restart nothing is written down that already was.
func TestTestimonyGoesOnAfterARestart(t *testing.T) {
	d := desk.Burning(t)
	d.Press("b", "o")
	d.Pass(3 * time.Minute)
	again := desk.SitAt(t, d.Book, desk.Later(d.At, time.Minute), d.M.Shared().Theme)
	again.Press("g")
	again.Pass(time.Minute)
	if got := again.Testified(rule.BlastLost); len(got) != 1 {
		t.Errorf("testified: %v", got)
	}
}

// Whether the top gas burns is answered by one key, also before it is asked; that it
// is out only while it is.
func TestTopGasIsAnsweredByOneKey(t *testing.T) {
	d := desk.Practising(t)
	d.Press("x")
	d.Answers("nobody asks")
	d.Press("y")
	if l, ok := d.Last().(entry.Look); !ok || l.At != entry.AtTopGas || l.Sees != entry.TopGasAlight {
		t.Fatalf("before it is asked: %#v: %s", d.Last(), d.Said())
	}
	d.Press("c")
	for range 6 {
		d.Pass(5 * time.Minute)
		d.Press("c")
	}
	if !d.M.Running().Stands(rule.TopGasQuestion) {
		d.Press("l", "g", "o") // out: the answer is asked for all the same
		d.Pass(time.Minute)
	}
	d.Shows("alight")
	d.Press("y")
	if l, ok := d.Last().(entry.Look); !ok || l.At != entry.AtTopGas || l.Sees != entry.TopGasAlight {
		t.Fatalf("%#v: %s", d.Last(), d.Said())
	}
	d.Pass(time.Minute)
	d.Press("x")
	d.Answers("nobody asks")
}

// A caution comes with its moment, goes with the next key, which acts, and
// comes once for each person.
func TestCautionsAreShownOnce(t *testing.T) {
	d := desk.Practising(t)
	d.Wait(time.Second)
	d.Shows("take care: carbon monoxide")
	d.Wait(time.Second)
	d.Shows("take care: carbon monoxide")
	d.Press("c")
	if d.Count(entry.KindCharge) != 1 || d.M.Careful() != "" {
		t.Error("the key did not act, or the caution stands")
	}
	for range 30 {
		d.Wait(time.Minute)
		d.Press("s")
	}
	seen := map[string]int{}
	count := func() {
		clear(seen)
		for _, e := range d.M.Running().Entries() {
			if c, ok := e.Event.(entry.CautionShown); ok {
				seen[c.Caution+" "+e.By]++
			}
		}
	}
	count()
	for _, c := range []string{rule.CarbonMonoxide, rule.WetClay, rule.FireSpread, rule.UnlitGas, rule.Glare, rule.Zinc, rule.BurnThrough} {
		if seen[c+" "] != 1 {
			t.Errorf("%s was shown %d times", c, seen[c+" "])
		}
	}
	if seen[rule.HotWork+" "] != 0 {
		t.Error("hot work was shown before its moment")
	}
	d.Press("o", "g", "J", "enter")
	for range 30 {
		d.Wait(time.Minute)
		d.Press("s")
	}
	count()
	if seen[rule.CarbonMonoxide+" J"] != 1 {
		t.Errorf("another person was shown %v", seen)
	}
	// To read again: one line of the list of rare acts.
	before := len(d.Acts())
	d.Press("o", "w", "a")
	d.Shows("take care: carbon monoxide")
	d.Press("z")
	d.Shows("wet clay")
	for range len(rule.Cautions) {
		d.Press("enter", "esc")
	}
	if d.M.Dialog() != nil || len(d.Acts()) != before {
		t.Error("reading the cautions again booked something, or does not end")
	}
}

// A caution with no room beside a warning waits, and is not said to be shown.
func TestCautionWaitsForRoom(t *testing.T) {
	d := desk.Practising(t)
	d.Send(tea.WindowSizeMsg{Width: 50, Height: 20})
	d.Press("c", "b", "o")
	d.Pass(2 * time.Minute)
	shown := 0
	for _, e := range d.M.Running().Entries() {
		if e.Kind() == entry.KindCaution {
			shown++
		}
	}
	d.Press("s")
	if d.M.Running().Stands(rule.BlastLost) {
		d.Pass(time.Minute)
		if d.M.Careful() != "" {
			t.Errorf("a caution over the warning: %s", d.M.Careful())
		}
	} else {
		t.Fatal("no warning stands")
	}
	if shown > 2 {
		t.Errorf("%d cautions were called shown", shown)
	}
}
