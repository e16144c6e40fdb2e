package tui_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
)

func TestAboutTheLastAct(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c")
	seq := d.M.Running().Reading().Charges[0].Seq
	d.Press("g")
	if ev := d.Last().(entry.Level); ev.Charge.Seq != seq || ev.Remark != entry.NotToMark {
		t.Errorf("%+v", ev)
	}
	d.Press("j")
	if ev := d.Last().(entry.Level); ev.Charge.Seq != seq || ev.Remark != entry.Heaped {
		t.Errorf("%+v", ev)
	}
}

func TestFillComesBeforeTheMainBurn(t *testing.T) {
	d := desk.Sit(t)
	d.Press("p", "f")
	if _, ok := d.Last().(entry.Fill); !ok {
		t.Errorf("charcoal before the main burn is %#v", d.Last())
	}
	d.Shows("fill a measure")
	d.Press("c", "f")
	if ev, ok := d.Last().(entry.Charge); !ok || ev.Parts.Holds(entry.Ore) {
		t.Errorf("charcoal in the main burn is %#v", d.Last())
	}
}

func TestPauseAndGoOn(t *testing.T) {
	d := desk.Practising(t)
	d.Press("k")
	d.Wait(time.Second)
	d.Press("k")
	if _, ok := d.Last().(entry.Resume); !ok {
		t.Errorf("the second press made %#v", d.Last())
	}
}

// While ore is held the charge shown has none, and ore again brings it back,
// whatever was changed meanwhile.
func TestOreHeldAndAgain(t *testing.T) {
	d := desk.Practising(t)
	d.Press("o", "h")
	d.Press("c")
	if ev := d.Last().(entry.Charge); ev.Parts.Holds(entry.Ore) {
		t.Errorf("ore is held and the charge is %+v", ev)
	}
	d.Press("right", "o", "n", "c")
	ev := d.Last().(entry.Charge)
	n, _ := ev.Parts.Count(entry.Ore)
	c, _ := ev.Parts.Count(entry.Charcoal)
	if n != 2 || c != 1.5 {
		t.Errorf("after ore again the charge is %+v", ev)
	}
}

func TestArrowsStopAtNone(t *testing.T) {
	d := desk.Practising(t)
	d.Press("down", "down")
	before := len(d.Acts())
	d.Press("down")
	if len(d.Acts()) != before {
		t.Error("less than none was booked")
	}
	d.Answers("no ore already")
	d.Press("c")
	if ev := d.Last().(entry.Charge); ev.Parts.Holds(entry.Ore) {
		t.Errorf("%+v", ev)
	}
	d.Press("up")
	if n, _ := d.Last().(entry.Recipe).Next.Count(entry.Ore); n != 1 {
		t.Errorf("one up from none is %v scoops", n)
	}
}

func TestQuestionsAskOnce(t *testing.T) {
	for _, no := range []string{"n", "esc"} {
		d := desk.Practising(t)
		before := len(d.Acts())
		d.Press("o", "k")
		d.Shows("close the smelt: sure")
		d.Press(no)
		if len(d.Acts()) != before || d.M.Dialog() != nil {
			t.Errorf("%s did not call it off", no)
		}
	}
}

func TestChargeInTheBurnDownAsks(t *testing.T) {
	for _, k := range []string{"c", "f", "s"} {
		d := desk.Practising(t)
		d.Press("c", "o", "b")
		before := len(d.Acts())
		d.Press(k)
		if len(d.Acts()) != before {
			t.Errorf("%s booked without asking", k)
		}
		d.Shows("charge all the same")
		d.Press("y")
		if _, ok := d.Last().(entry.Charge); !ok {
			t.Errorf("%s and yes made %#v", k, d.Last())
		}
	}
}

func TestBadInputLosesNothing(t *testing.T) {
	d := desk.Practising(t)
	d.Press("i", "1", ",", "2", ",", "enter")
	d.Answers("is no number")
	d.Shows("1,2,")
	d.Press("backspace", "enter")
	if ev, ok := d.Last().(entry.Dip); !ok || ev.BelowRim.Value != 1.2 {
		t.Errorf("%#v", d.Last())
	}
	d.Press("e", "9", "9", "9", "9", "enter")
	d.Answers("type 0 to 2000")
	d.Press("x")
	d.Answers("so 9999 does not count")
	d.Press("esc")
	if d.M.Dialog() != nil {
		t.Error("esc did not leave the field")
	}
}

func TestUnknownKeyAnswers(t *testing.T) {
	d := desk.Practising(t)
	d.Press("z")
	d.Answers("nothing on z")
	d.Press("l", "z")
	d.Answers("none on z")
	if d.M.Dialog() == nil {
		t.Error("a wrong key closed the list")
	}
}

func TestEveryKeyIsJournaled(t *testing.T) {
	d := desk.Practising(t)
	at := len(d.M.Running().Entries())
	d.Press("q", "l", "z", "esc", "b", "7", "backspace", "8", "enter", "v", "b", "up", "c")
	d.Wait(time.Second)
	var keyed []string
	for _, e := range d.M.Running().Entries()[at:] {
		if ks, ok := e.Event.(entry.Keys); ok {
			for _, p := range ks.Pressed {
				keyed = append(keyed, p.Key)
			}
			continue
		}
		keyed = append(keyed, e.Key)
	}
	want := "q l z esc b 7 backspace 8 enter v b up c"
	if got := strings.Join(keyed, " "); got != want {
		t.Errorf("journaled %s\n    want %s", got, want)
	}
}

func TestKeysOutsideASmeltGoToTheHouse(t *testing.T) {
	d := desk.Sit(t)
	d.Press("down", "x")
	d.Wait(time.Second)
	if n := len(d.Book[entry.House]); n != 1 {
		t.Fatalf("%d entries in the house, want one batch", n)
	}
	ks := d.Book[entry.House][0].Event.(entry.Keys)
	if len(ks.Pressed) != 2 || ks.Pressed[1].AfterMs != 500 {
		t.Errorf("%+v", ks)
	}
}

// What is ready is a matter of safety: a line keeps its letter, ticked or not.
func TestReadyLinesKeepTheirLetters(t *testing.T) {
	d := desk.Practising(t)
	d.Press("o", "b", "o", "w", "r")
	letters := func() (all []string) {
		for _, o := range d.M.Dialog().(screen.Choice).Options {
			all = append(all, o.Keys()[0])
		}
		return all
	}
	before := letters()
	for i, k := range before {
		d.Press(k)
		if i == len(before)-1 {
			if d.M.Dialog() != nil {
				t.Error("the list goes on after its last tick")
			}
			break
		}
		if got := letters(); !reflect.DeepEqual(got, before) {
			t.Fatalf("after %s: letters %v, before %v", k, got, before)
		}
	}
	if n := d.Count(entry.KindSetting); n != len(before) {
		t.Errorf("%d of %d ticked", n, len(before))
	}
}

// A phase that the smelt has left behind begins again only after a question: the letter
// may have been meant for another list.
func TestAPhaseLeftBehindAsks(t *testing.T) {
	for _, c := range []struct {
		before []string
		key    string
		asks   bool
	}{
		{nil, "i", true}, {nil, "p", true}, {[]string{"o", "b"}, "p", true}, {[]string{"o", "b"}, "m", true},
		{[]string{"o", "b"}, "n", true}, {[]string{"o", "b"}, "h", true}, {[]string{"o", "h"}, "m", false}, {nil, "h", false}, {[]string{"o", "h"}, "n", false},
	} {
		d := desk.Practising(t)
		d.Press("c")
		d.Press(c.before...)
		before := len(d.Acts())
		d.Press("o", c.key)
		asked, is := d.M.Dialog().(screen.Choice)
		if is != c.asks || is && !asked.Question || len(d.Acts()) == before == !c.asks {
			t.Errorf("after %v, o %s: open %v, %d acts more", c.before, c.key, d.M.Dialog(), len(d.Acts())-before)
		}
		if c.asks {
			d.Press("y")
			if len(d.Acts()) != before+1 {
				t.Errorf("after %v, o %s y: %d acts more", c.before, c.key, len(d.Acts())-before)
			}
		}
	}
}
