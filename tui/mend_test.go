package tui_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/tui"
	"chargehand/tui/act"
	"chargehand/tui/book"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
)

func TestCrossOutOneAfterTheOther(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c", "t", "r")
	d.Press("u")
	d.Answers("rodded")
	d.Press("u")
	d.Answers("tapped")
	d.Press("u")
	d.Answers("charge 1")
	if n := len(d.M.Running().Reading().Charges); n != 0 {
		t.Errorf("%d charges left", n)
	}
	d.Press("o", "x")
	d.Answers("holds again: charge 1")
	if n := len(d.M.Running().Reading().Charges); n != 1 {
		t.Errorf("%d charges after bringing it back", n)
	}
	d.Press("o", "x")
	d.Answers("tapped")
}

func TestTheLightStays(t *testing.T) {
	d := desk.Sit(t)
	d.Press("p", "u")
	if _, refused := d.M.Answer(); !refused || d.M.Running().Reading().Light.UID == "" {
		t.Error("the light was crossed out")
	}
}

func TestMinuteEarlierPerPress(t *testing.T) {
	d := desk.Practising(t)
	d.Wait(10 * time.Minute)
	d.Press("c")
	at := d.M.Running().Reading().Charges[0].At
	d.Fast(80*time.Millisecond, "m", "m", "m")
	d.Send(tui.Gathered{})
	if got := at - d.M.Running().Reading().Charges[0].At; got.Round(time.Second) != 3*time.Minute {
		t.Errorf("three presses moved the charge by %v", got)
	}
	d.Wait(time.Minute)
	if got := at - d.M.Running().Reading().Charges[0].At; got.Round(time.Second) != 3*time.Minute {
		t.Errorf("a minute later it stands %v earlier", got)
	}
	for range 6 {
		d.Fast(80*time.Millisecond, "m", "m", "m", "m", "m")
		d.Wait(time.Second)
	}
	d.Answers("before the fire was lit")
}

// The time can be moved of an entry whose content was changed, and the other
// way round: the one amendment that holds carries both.
func TestTimeAndContentBothStayChanged(t *testing.T) {
	d := desk.Practising(t)
	d.Wait(10 * time.Minute)
	d.Press("b", "7", "0", "0", "enter")
	d.Press("v", "b", "a", "w", "8", "0", "0", "enter")
	d.Press("a", "t", "5", "enter")
	blast := d.M.Running().Reading()
	if v := blast.Blast.Volume.Value; v != 800 {
		t.Errorf("after the time was changed the blast is %v", v)
	}
	ago := blast.At - blast.BlastAt
	d.Press("a", "w", "9", "0", "0", "enter")
	r := d.M.Running().Reading()
	if r.Blast.Volume.Value != 900 || (r.At-r.BlastAt-ago).Abs() > 10*time.Second {
		t.Errorf("blast %v, %v ago, want 900, %v ago", r.Blast.Volume.Value, r.At-r.BlastAt, ago)
	}
	d.Shows("was at 12:10, blast, 700 l/min")
	d.Press("o")
	if v := d.M.Running().Reading().Blast.Volume.Value; v != 800 {
		t.Errorf("undoing the last change leaves %v, want 800", v)
	}
}

func TestBookStrikesAndUndoes(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c", "t", "v", "b", "up")
	d.Press("u")
	if n := len(d.M.Running().Reading().Charges); n != 0 {
		t.Fatal("the charge is not crossed out")
	}
	d.Shows("crossed out 12:00")
	d.Press("u")
	d.Answers("already")
	d.Press("o")
	if n := len(d.M.Running().Reading().Charges); n != 1 {
		t.Error("the charge did not come back")
	}
	d.Press("o")
	d.Answers("nothing was done")
}

func TestBookFilter(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c", "t", "n", "x", "enter", "v", "b", "k", "n")
	ls := d.M.Screen(screen.Book).(book.Screen).Lines(d.M.Shared())
	if len(ls) != 1 || ls[0].Event.Kind() != entry.KindNote {
		t.Errorf("the Book shows %d entries", len(ls))
	}
	d.Shows("book: notes")
}

func TestEnterLate(t *testing.T) {
	d := desk.Practising(t)
	d.Wait(40 * time.Minute)
	d.Press("c")
	d.Press("o", "e", "1", "5", "enter", "c", "2", "enter", "3", "enter")
	cs := d.M.Running().Reading().Charges
	if len(cs) != 2 {
		t.Fatalf("%d charges", len(cs))
	}
	if ago := d.M.Running().Reading().At - cs[0].At; ago.Round(time.Minute) != 15*time.Minute {
		t.Errorf("the late charge stands %v ago, want 15 min", ago)
	}
	if n, _ := cs[0].Parts.Count(entry.Charcoal); n != 2 {
		t.Errorf("it holds %v buckets", n)
	}
	es := d.M.Running().Entries()
	if e := es[len(es)-1]; e.Uncertain != act.WholeMinutes {
		t.Errorf("its time is known to %v", e.Uncertain)
	}
	d.Answers("entered late, at 12:2")
	// A time of day, from the Book.
	d.Press("v", "b", "e")
	d.Write("12:10")
	d.Press("enter", "t")
	l, _ := d.M.Running().Last()
	if at := d.M.Running().Wall(l).Format("15:04"); at != "12:10" {
		t.Errorf("the tap stands at %s", at)
	}
	d.Shows("late")
	// Before light there is nothing.
	d.Press("e")
	d.Write("1130")
	d.Press("enter")
	d.Answers("the fire was lit at 12:00")
	d.Press("backspace", "backspace", "backspace", "backspace")
	d.Write("1430")
	d.Press("enter")
	d.Answers("type an earlier time: it is 12:4")
}

// Provisional entries count at once, acts may speak of them, and what was kept
// takes their place.
func TestPendingThenKept(t *testing.T) {
	d := desk.Practising(t)
	d.Hold = true
	d.Press("c", "g", "m")
	if n := len(d.M.Running().Reading().Charges); n != 1 {
		t.Fatalf("%d charges before they are kept", n)
	}
	if d.M.Said().State == 0 || d.M.Unkept() != len(d.Queue) {
		t.Errorf("%d unkept of %d", d.M.Unkept(), len(d.Queue))
	}
	pending := d.M.Running().Reading()
	d.Press("u") // crosses out the remark, which is not kept either
	var strike entry.Strike
	for _, e := range d.Queue {
		if s, ok := e.Event.(entry.Strike); ok {
			strike = s
			if s.Target.Local == "" {
				t.Error("a strike of an entry not yet kept carries no name of it")
			}
		}
	}
	// Another entry gets in between: the numbers shift, the aims follow.
	d.Book.Keep(entry.Entry{Stream: d.M.Running().ID(), Happened: d.At.Wall, Event: entry.Note{Text: "from elsewhere"}})
	d.Acknowledge()
	if d.M.Unkept() != 0 || d.M.Running().Kept() != len(d.M.Running().Entries()) {
		t.Errorf("%d unkept, %d of %d kept", d.M.Unkept(), d.M.Running().Kept(), len(d.M.Running().Entries()))
	}
	r := d.M.Running().Reading()
	if len(r.Charges) != 1 || r.Charges[0].At != pending.Charges[0].At {
		t.Errorf("after keeping: %+v, before: %+v", r.Charges, pending.Charges)
	}
	if strike.Target.Seq == 0 {
		t.Error("the strike had no provisional number")
	}
	kept, _, _ := d.Book.Entries(d.M.Running().ID())
	fromBook := readAt(kept, fold.All, r.At)
	if len(fromBook.Charges) != 1 || fromBook.Charges[0].At != r.Charges[0].At {
		t.Error("the book tells another story than the screen")
	}
}

// What the screen shows is what the book holds, whenever it is kept.
func TestScreenAndBookAgree(t *testing.T) {
	d := desk.Practising(t)
	for i, k := range []string{"c", "s", "g", "m", "u", "c", "up", "c", "d", "u", "t", "m", "m", "c"} {
		d.Hold = i%3 != 0
		d.Wait(2 * time.Minute)
		d.Press(k)
	}
	d.Acknowledge()
	kept, _, _ := d.Book.Entries(d.M.Running().ID())
	if len(kept) != len(d.M.Running().Entries()) {
		t.Fatalf("the book holds %d entries, the screen %d", len(kept), len(d.M.Running().Entries()))
	}
	for i := range kept {
		got, want := d.M.Running().Entries()[i], kept[i]
		if got.Seq != want.Seq || got.Local != want.Local {
			t.Errorf("entry %d: screen %d %s, book %d %s", i, got.Seq, got.Local, want.Seq, want.Local)
		}
	}
}

func TestNotKeptIsSaidPlainly(t *testing.T) {
	d := desk.Practising(t)
	d.Hold = true
	d.Press("c")
	d.Shows("being kept")
	d.Send(tui.Kept{Err: errors.New("no space left on device"), Waiting: 1})
	d.Shows("NOT KEPT 1")
	d.Shows("no space left on device")
	d.Press("t")
	d.Shows("NOT KEPT 2")
	d.Press("v", "q", "y")
	d.Shows("entries NOT kept yet")
	if d.Quit {
		t.Fatal("left with entries not kept")
	}
	d.Press("w")
	d.Hold = false
	d.Acknowledge()
	if !d.Quit {
		t.Error("did not leave when all was kept")
	}
}

func TestSlowDiskIsSaid(t *testing.T) {
	d := desk.Practising(t)
	d.Hold = true
	d.Press("c")
	d.Wait(time.Second)
	d.Shows("being kept")
	d.Wait(3 * time.Second)
	d.Shows("NOT KEPT 2") // the charge, and a caution that was shown
	d.Acknowledge()
	d.Shows("kept")
	if d.M.Tally().NotKept != 0 {
		t.Error("still said to be not kept")
	}
}

func TestLeaveAnyway(t *testing.T) {
	d := desk.Practising(t)
	d.Hold = true
	d.Press("c")
	d.Send(tui.Kept{Err: errors.New("no space"), Waiting: 1})
	d.Press("ctrl+c", "y")
	d.Press("x")
	if !d.Quit {
		t.Error("did not leave though told to")
	}
}

func TestRefusedEntryGoes(t *testing.T) {
	d := desk.Practising(t)
	d.Hold = true
	d.Press("c")
	refused := d.Queue[len(d.Queue)-1]
	d.Queue = d.Queue[:len(d.Queue)-1]
	d.Acknowledge()
	d.Send(tui.Kept{Refused: []entry.Entry{refused}, Err: errors.New("too long")})
	if n := len(d.M.Running().Reading().Charges); n != 0 {
		t.Errorf("%d charges: a refused entry still counts", n)
	}
	d.Answers("too long")
}

// The account of a smelt that is closed is still put right: what was forgotten
// goes in, on the same day and long after it, and what is wrong comes out.
func TestAClosedSmeltIsStillPutRight(t *testing.T) {
	for name, after := range map[string]time.Duration{"the same day": 40 * time.Minute, "five days later": 5 * 24 * time.Hour} {
		t.Run(name, func(t *testing.T) {
			d := desk.Practising(t)
			for range 3 {
				d.Press("c")
				d.Pass(10 * time.Minute)
			}
			d.Press("o", "o", "n", "y") // taken out at half past twelve, without a bloom
			d.Press("o", "k", "y", "enter")
			d.Wait(after)
			r := d.M.Shared().Smelt.Reading()
			if !d.M.Shared().Smelt.Phase().Over() || len(r.Charges) != 3 || screen.RightsIn(d.M.Shared().Smelt) != screen.Mendable {
				t.Fatalf("%s, %d charges", d.M.Shared().Smelt.Phase(), len(r.Charges))
			}
			d.Press("o", "e")
			d.Write("12:15")
			d.Press("enter", "c", "enter", "enter")
			d.Answers("entered late, at 12:15: charge 3")
			if n := len(d.M.Shared().Smelt.Reading().Charges); n != 4 {
				t.Errorf("%d charges after a late one: %s", n, d.Said())
			}
			d.Press("n")
			d.Write("pond")
			d.Press("enter")
			d.Answers("pond")
			d.Press("w", "b", "4", "enter", "k")
			if kg := d.M.Shared().Smelt.Reading().Bloom; kg.Value != 4 {
				t.Errorf("the bloom weighs %v", kg)
			}
			d.Press("v", "b", "k", "c", "end", "a", "t")
			d.Write("12:25")
			d.Press("enter")
			if c := d.M.Shared().Smelt.Reading().Charges[3]; c.At.Round(time.Minute) != 25*time.Minute {
				t.Errorf("charge 4 was moved to %v: %s", c.At, d.Said())
			}
			d.Press("end", "u")
			d.Answers("crossed out: charge 4")
			if n := len(d.M.Shared().Smelt.Reading().Charges); n != 3 {
				t.Errorf("%d charges after one was crossed out", n)
			}
			d.Press("e")
			d.Write("12:20")
			d.Press("enter", "t")
			d.Answers("entered late, at 12:20: tapped")
			if p := d.M.Shared().Smelt.Phase(); p != entry.Closed {
				t.Errorf("mending took it back to %s", p)
			}
		})
	}
}

// A smelt that was closed without a word about its bloom takes it afterwards.
func TestTheBloomIsTakenOutAfterwards(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c")
	d.Pass(30 * time.Minute)
	d.Press("o", "k", "y", "enter", "o", "e", "5", "enter", "o", "r")
	d.Press("w", "b", "4", "enter", "k")
	if p := d.M.Shared().Smelt.Reading().Phase; p != entry.Extracted {
		t.Errorf("it stands at %s: %s", p, d.Said())
	}
	d.Shows("extracted after 25 min")
}

// What the book says of itself is said at once, whatever is on the screen, and
// goes with the next key, which acts as ever.
func TestTakeOverIsSaidAtOnceAndOnce(t *testing.T) {
	d := desk.Practising(t)
	d.Press("t")
	d.Send(tui.Kept{Told: []string{"a small book took over", "and another"}})
	d.Shows("v b has this and 1 more: a small book took over")
	d.Wait(time.Second)
	d.Shows("a small book took over")
	before := len(d.M.Running().Reading().Charges)
	d.Press("c")
	if strings.Contains(d.Picture(), "took over") {
		t.Error("it is still said after a key")
	}
	if n := len(d.M.Running().Reading().Charges); n != before+1 {
		t.Errorf("%d charges: the key did not act", n)
	}
	d.Hold = true
	d.Press("t")
	d.Send(tui.Kept{Err: errors.New("no space"), Waiting: 1})
	d.Send(tui.Kept{Told: []string{"a small book took over"}})
	d.Shows("NOT KEPT 1")
}

// readAt is what is known of a smelt at a moment, from its first entry on.
func readAt(entries []entry.Entry, known uint64, at time.Duration) *figure.Reading {
	return session.Open("s", entries).AsOf(known, at).Reading()
}
