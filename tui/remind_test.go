package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// asks asks to be reminded of a word, with the keys of the list of screens.
func asks(d *desk.Desk, minutes, word, how string) {
	d.Press("v", "j")
	d.Wait(2 * time.Second)
	d.Write(minutes)
	d.Press("enter")
	d.Wait(2 * time.Second)
	d.Write(word)
	d.Press("enter", how)
}

// A clamp is to be looked at in twenty minutes, with no smelt alight. It comes up then,
// with the bell once, and stands until one key ends it; both are entries of the house,
// and it comes up after a restart too.
func TestRemindMeWithoutASmelt(t *testing.T) {
	d := desk.Sit(t)
	asks(d, "20", "clamp", "o")
	d.Answers("clamp: at")
	r, ok := last(d, entry.House).(entry.Remind)
	if !ok || r.Word != "clamp" || r.Every.Known || d.M.Running().Is() {
		t.Fatalf("%#v", last(d, entry.House))
	}
	d.Wait(19 * time.Minute)
	if strings.Contains(d.Picture(), "you asked for") || d.Rang > 0 {
		t.Errorf("too soon, the bell %d times", d.Rang)
	}
	d.Wait(time.Minute)
	d.Shows("you asked for " + r.At.Format("15:04") + ": clamp")
	d.Wait(3 * time.Minute)
	d.Shows("clamp")
	if d.Rang != 1 {
		t.Errorf("the bell sounded %d times", d.Rang)
	}
	again := desk.SitAt(t, d.Book, desk.Later(d.At, time.Minute), theme.Theme{})
	again.Wait(time.Second)
	again.Shows("clamp")
	d.Press("backspace")
	d.Answers("clamp: done")
	if r, ok := last(d, entry.House).(entry.Remind); !ok || !r.Ended {
		t.Errorf("%#v", last(d, entry.House))
	}
	d.Wait(time.Hour)
	if strings.Contains(d.Picture(), "you asked for") {
		t.Error("it comes up again")
	}
}

// What comes up while a list, a field or the card is open, from afar, behind the lock or
// on another screen is shown all the same, and the key that ends it is named.
func TestWhatComesUpIsShownWhateverIsOpen(t *testing.T) {
	for name, keys := range map[string][]string{
		"list": {"o"}, "field": {"n", "w", "i", "n", "d"}, "card": {"o", "d"}, "question": {"o", "k"}, "far": {"space"}, "lock": {"o", "z"},
		"book": {"v", "b"}, "replay": {"v", "r"},
	} {
		d := desk.Burning(t)
		asks(d, "10", "clamp", "o")
		d.Wait(10*time.Minute - 7*time.Second)
		d.Press(keys...)
		d.Wait(8 * time.Second)
		d.Wait(time.Second)
		if !strings.Contains(d.Picture(), "clamp") {
			t.Errorf("%s: not shown\n%s", name, d.Picture())
		}
		if d.M.Dialog() == nil && (name == "list" || name == "field") {
			t.Errorf("%s closed", name)
		}
	}
}

// One asked for each time comes up again after it was answered, from the list of rare
// acts too; it is no warning, and the key that ends it does nothing while none is due.
func TestRemindMeEachTime(t *testing.T) {
	d := desk.Burning(t)
	d.Press("o", "j")
	d.Wait(2 * time.Second)
	d.Write("10")
	d.Press("enter")
	d.Wait(2 * time.Second)
	d.Write("wet the wall")
	d.Press("enter", "e")
	d.Answers("each 10 min")
	before := len(d.M.Running().Entries())
	d.Press("backspace")
	if len(d.Book[entry.House]) == 0 || last(d, entry.House).(entry.Remind).Ended {
		t.Errorf("%#v", last(d, entry.House))
	}
	for range 3 {
		d.Pass(10 * time.Minute)
		d.Shows("wet the wall")
		for _, w := range d.M.Running().Standing() {
			if strings.Contains(string(w.Rule), "wall") {
				t.Errorf("it is a warning: %+v", w)
			}
		}
		d.Press("backspace")
		d.Answers("again at")
	}
	for _, e := range d.M.Running().Entries()[before:] {
		if e.Kind() == entry.KindRemind {
			t.Error("it is kept in the smelt")
		}
	}
}

func last(d *desk.Desk, stream string) entry.Event {
	es := d.Book[stream]
	for i := len(es) - 1; i >= 0; i-- {
		if k := es[i].Kind(); k != "" && k != entry.KindKeys && k != entry.KindDraft {
			return es[i].Event
		}
	}
	return nil
}

// The bell sounds for a blast that is lost, once a minute until that was seen; off it is
// silent, and a charge that falls due is heard only when that was chosen.
func TestTheBellIsHeard(t *testing.T) {
	for name, c := range map[string]struct {
		keys []string // in the settings
		act  bool
		due  bool
	}{
		"at first": {nil, true, false}, "all": {[]string{"r", "y"}, true, true}, "off": {[]string{"r", "y", "r", "y"}, false, false},
	} {
		d := desk.Burning(t)
		d.Press("v", "e")
		d.Press(append(c.keys, "esc")...)
		d.Rang = 0
		d.Pass(40 * time.Minute)
		if heard := d.Rang > 0; heard != c.due || d.Rang > 1 {
			t.Errorf("%s: a charge 40 minutes late sounds %d times", name, d.Rang)
		}
		d.Press("c", "b", "7", "0", "0", "enter", "b", "o")
		d.Rang = 0
		d.Pass(3*time.Minute + 30*time.Second)
		if heard := d.Rang > 0; heard != c.act || c.act && (d.Rang < 3 || d.Rang > 4) {
			t.Errorf("%s: a lost blast sounds %d times in three minutes and a half", name, d.Rang)
		}
		d.Press("a")
		if !d.M.Running().Stands(rule.BlastLost) {
			t.Fatalf("%s: no lost blast", name)
		}
		d.Rang = 0
		d.Pass(5 * time.Minute)
		if d.Rang > 0 {
			t.Errorf("%s: seen, and it sounds %d times", name, d.Rang)
		}
	}
}

// What is replayed is never heard: the invented smelt and an old one have no bell.
func TestReplayIsSilent(t *testing.T) {
	d := desk.Sit(t)
	d.Press("l")
	d.Press("v", "e", "r", "esc", "v", "r")
	if d.M.Active() != screen.Replay {
		t.Fatalf("at %s", d.M.Active())
	}
	for range 20 {
		d.Press("right")
		d.Wait(time.Minute)
	}
	if d.Rang > 0 {
		t.Errorf("the bell sounded %d times", d.Rang)
	}
}
