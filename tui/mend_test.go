package tui

import (
	"errors"
	"strings"
	"testing"
	"time"

	"chargehand/model"
	"chargehand/model/entry"
	"chargehand/model/fold"
)

func TestCrossOutOneAfterTheOther(t *testing.T) {
	d := practising(t)
	d.press("c", "t", "r")
	d.press("u")
	d.answers("rodded")
	d.press("u")
	d.answers("tapped")
	d.press("u")
	d.answers("charge 1")
	if n := len(d.m.running.Reading().Charges); n != 0 {
		t.Errorf("%d charges left", n)
	}
	d.press("o", "u")
	d.answers("holds again: charge 1")
	if n := len(d.m.running.Reading().Charges); n != 1 {
		t.Errorf("%d charges after bringing it back", n)
	}
	d.press("o", "u")
	d.answers("tapped")
}

func TestTheLightStays(t *testing.T) {
	d := sit(t)
	d.press("p", "u")
	if !d.m.answer.refused || d.m.running.Reading().Light.UID == "" {
		t.Error("the light was crossed out")
	}
}

func TestMinuteEarlierPerPress(t *testing.T) {
	d := practising(t)
	d.wait(10 * time.Minute)
	d.press("c")
	at := d.m.running.Reading().Charges[0].At
	d.fast(80*time.Millisecond, "m", "m", "m")
	if got := at - d.m.running.Reading().Charges[0].At; got.Round(time.Second) != 3*time.Minute {
		t.Errorf("three presses moved the charge by %v", got)
	}
	d.wait(time.Minute)
	if got := at - d.m.running.Reading().Charges[0].At; got.Round(time.Second) != 3*time.Minute {
		t.Errorf("a minute later it stands %v earlier", got)
	}
	for range 30 {
		d.fast(80*time.Millisecond, "m")
	}
	d.answers("before the fire was lit")
}

// The time can be moved of an entry whose content was changed, and the other
// way round: the one amendment that holds carries both.
func TestTimeAndContentBothStayChanged(t *testing.T) {
	d := practising(t)
	d.wait(10 * time.Minute)
	d.press("b", "7", "0", "0", "enter")
	d.press("v", "b", "a", "w", "8", "0", "0", "enter")
	d.press("a", "t", "5", "enter")
	blast := d.m.running.Reading()
	if v := blast.Blast.Volume.Value; v != 800 {
		t.Errorf("after the time was changed the blast is %v", v)
	}
	ago := blast.At - blast.BlastAt
	d.press("a", "w", "9", "0", "0", "enter")
	r := d.m.running.Reading()
	if r.Blast.Volume.Value != 900 || (r.At-r.BlastAt-ago).Abs() > 10*time.Second {
		t.Errorf("blast %v, %v ago, want 900, %v ago", r.Blast.Volume.Value, r.At-r.BlastAt, ago)
	}
	d.shows("was at 12:10, blast, 700 l/min")
	d.press("o")
	if v := d.m.running.Reading().Blast.Volume.Value; v != 800 {
		t.Errorf("undoing the last change leaves %v, want 800", v)
	}
}

func TestBookStrikesAndUndoes(t *testing.T) {
	d := practising(t)
	d.press("c", "t", "v", "b", "up")
	d.press("u")
	if n := len(d.m.running.Reading().Charges); n != 0 {
		t.Fatal("the charge is not crossed out")
	}
	d.shows("crossed out 12:00")
	d.press("u")
	d.answers("already")
	d.press("o")
	if n := len(d.m.running.Reading().Charges); n != 1 {
		t.Error("the charge did not come back")
	}
	d.press("o")
	d.answers("nothing was done")
}

func TestBookFilter(t *testing.T) {
	d := practising(t)
	d.press("c", "t", "n", "x", "enter", "v", "b", "k", "n")
	ls := d.m.screens[bookScreen].(journal).lines(d.m.shared())
	if len(ls) != 1 || ls[0].Event.Kind() != entry.KindNote {
		t.Errorf("the Book shows %d entries", len(ls))
	}
	d.shows("book: notes")
}

func TestEnterLate(t *testing.T) {
	d := practising(t)
	d.wait(40 * time.Minute)
	d.press("c")
	d.press("o", "e", "1", "5", "enter", "c", "2", "enter", "3", "enter")
	cs := d.m.running.Reading().Charges
	if len(cs) != 2 {
		t.Fatalf("%d charges", len(cs))
	}
	if ago := d.m.running.Reading().At - cs[0].At; ago.Round(time.Minute) != 15*time.Minute {
		t.Errorf("the late charge stands %v ago, want 15 min", ago)
	}
	if n, _ := cs[0].Parts.Count(entry.Charcoal); n != 2 {
		t.Errorf("it holds %v buckets", n)
	}
	es := d.m.running.Entries()
	if e := es[len(es)-1]; e.Uncertain != wholeMinutes {
		t.Errorf("its time is known to %v", e.Uncertain)
	}
	d.answers("entered late, at 12:2")
	// A time of day, from the Book.
	d.press("v", "b", "e")
	d.write("12:10")
	d.press("enter", "t")
	l, _ := d.m.running.Last()
	if at := d.m.running.Wall(l).Format("15:04"); at != "12:10" {
		t.Errorf("the tap stands at %s", at)
	}
	d.shows("late")
	// Before light there is nothing.
	d.press("e")
	d.write("1130")
	d.press("enter")
	d.answers("before the fire was lit at 12:00")
}

// Provisional entries count at once, acts may speak of them, and what was kept
// takes their place.
func TestPendingThenKept(t *testing.T) {
	d := practising(t)
	d.hold = true
	d.press("c", "g", "m")
	if n := len(d.m.running.Reading().Charges); n != 1 {
		t.Fatalf("%d charges before they are kept", n)
	}
	if d.m.said().State == 0 || d.m.Unkept() != len(d.queue) {
		t.Errorf("%d unkept of %d", d.m.Unkept(), len(d.queue))
	}
	pending := d.m.running.Reading()
	d.press("u") // crosses out the remark, which is not kept either
	var strike entry.Strike
	for _, e := range d.queue {
		if s, ok := e.Event.(entry.Strike); ok {
			strike = s
			if s.Target.Local == "" {
				t.Error("a strike of an entry not yet kept carries no name of it")
			}
		}
	}
	// Another entry gets in between: the numbers shift, the aims follow.
	d.book.keep(entry.Entry{Stream: d.m.running.ID(), Happened: d.at.Wall, Event: entry.Note{Text: "from elsewhere"}})
	d.acknowledge()
	if d.m.Unkept() != 0 || d.m.running.Kept() != len(d.m.running.Entries()) {
		t.Errorf("%d unkept, %d of %d kept", d.m.Unkept(), d.m.running.Kept(), len(d.m.running.Entries()))
	}
	r := d.m.running.Reading()
	if len(r.Charges) != 1 || r.Charges[0].At != pending.Charges[0].At {
		t.Errorf("after keeping: %+v, before: %+v", r.Charges, pending.Charges)
	}
	if strike.Target.Seq == 0 {
		t.Error("the strike had no provisional number")
	}
	kept, _ := d.book.Entries(d.m.running.ID())
	fromBook := model.Read(kept, fold.All, r.At)
	if len(fromBook.Charges) != 1 || fromBook.Charges[0].At != r.Charges[0].At {
		t.Error("the book tells another story than the screen")
	}
}

// What the screen shows is what the book holds, whenever it is kept.
func TestScreenAndBookAgree(t *testing.T) {
	d := practising(t)
	for i, k := range []string{"c", "s", "g", "m", "u", "c", "up", "c", "d", "u", "t", "m", "m", "c"} {
		d.hold = i%3 != 0
		d.wait(2 * time.Minute)
		d.press(k)
	}
	d.acknowledge()
	kept, _ := d.book.Entries(d.m.running.ID())
	if len(kept) != len(d.m.running.Entries()) {
		t.Fatalf("the book holds %d entries, the screen %d", len(kept), len(d.m.running.Entries()))
	}
	for i := range kept {
		got, want := d.m.running.Entries()[i], kept[i]
		if got.Seq != want.Seq || got.Local != want.Local {
			t.Errorf("entry %d: screen %d %s, book %d %s", i, got.Seq, got.Local, want.Seq, want.Local)
		}
	}
}

func TestNotKeptIsSaidPlainly(t *testing.T) {
	d := practising(t)
	d.hold = true
	d.press("c")
	d.shows("being kept")
	d.send(Kept{Err: errors.New("no space left on device"), Waiting: 1})
	d.shows("NOT KEPT 1")
	d.shows("no space left on device")
	d.press("t")
	d.shows("NOT KEPT 2")
	d.press("v", "q", "y")
	d.shows("entries NOT kept yet")
	if d.quit {
		t.Fatal("left with entries not kept")
	}
	d.press("w")
	d.hold = false
	d.acknowledge()
	if !d.quit {
		t.Error("did not leave when all was kept")
	}
}

func TestSlowDiskIsSaid(t *testing.T) {
	d := practising(t)
	d.hold = true
	d.press("c")
	d.wait(time.Second)
	d.shows("being kept")
	d.wait(3 * time.Second)
	d.shows("NOT KEPT 2") // the charge, and a caution that was shown
	d.acknowledge()
	d.shows("kept")
	if d.m.tally().notKept != 0 {
		t.Error("still said to be not kept")
	}
}

func TestLeaveAnyway(t *testing.T) {
	d := practising(t)
	d.hold = true
	d.press("c")
	d.send(Kept{Err: errors.New("no space"), Waiting: 1})
	d.press("ctrl+c", "y")
	d.press("x")
	if !d.quit {
		t.Error("did not leave though told to")
	}
}

func TestRefusedEntryGoes(t *testing.T) {
	d := practising(t)
	d.hold = true
	d.press("c")
	refused := d.queue[len(d.queue)-1]
	d.queue = d.queue[:len(d.queue)-1]
	d.acknowledge()
	d.send(Kept{Refused: []entry.Entry{refused}, Err: errors.New("too long")})
	if n := len(d.m.running.Reading().Charges); n != 0 {
		t.Errorf("%d charges: a refused entry still counts", n)
	}
	d.answers("too long")
}

// The account of a smelt that is closed is still put right: what was forgotten
// goes in, on the same day and long after it, and what is wrong comes out.
func TestAClosedSmeltIsStillPutRight(t *testing.T) {
	for name, after := range map[string]time.Duration{"the same day": 40 * time.Minute, "five days later": 5 * 24 * time.Hour} {
		t.Run(name, func(t *testing.T) {
			d := practising(t)
			for range 3 {
				d.press("c")
				d.pass(10 * time.Minute)
			}
			d.press("o", "o", "n", "y") // taken out at half past twelve, without a bloom
			d.press("o", "k", "y")
			d.wait(after)
			r := d.m.shown().Reading()
			if !d.m.shown().Phase().Over() || len(r.Charges) != 3 || rightsIn(d.m.shown()) != mendable {
				t.Fatalf("%s, %d charges", d.m.shown().Phase(), len(r.Charges))
			}
			d.press("o", "e")
			d.write("12:15")
			d.press("enter", "c", "enter", "enter")
			d.answers("entered late, at 12:15: charge 3")
			if n := len(d.m.shown().Reading().Charges); n != 4 {
				t.Errorf("%d charges after a late one: %s", n, d.m.answer.text)
			}
			d.press("n")
			d.write("pond")
			d.press("enter")
			d.answers("pond")
			d.press("w", "b", "4", "enter")
			if kg := d.m.shown().Reading().Bloom; kg.Value != 4 {
				t.Errorf("the bloom weighs %v", kg)
			}
			d.press("v", "b", "k", "c", "end", "a", "t")
			d.write("12:25")
			d.press("enter")
			if c := d.m.shown().Reading().Charges[3]; c.At.Round(time.Minute) != 25*time.Minute {
				t.Errorf("charge 4 was moved to %v: %s", c.At, d.m.answer.text)
			}
			d.press("end", "u")
			d.answers("crossed out: charge 4")
			if n := len(d.m.shown().Reading().Charges); n != 3 {
				t.Errorf("%d charges after one was crossed out", n)
			}
			d.press("e")
			d.write("12:20")
			d.press("enter", "t")
			d.answers("entered late, at 12:20: tapped")
			if p := d.m.shown().Phase(); p != entry.Closed {
				t.Errorf("mending took it back to %s", p)
			}
		})
	}
}

// A smelt that was closed without a word about its bloom takes it afterwards.
func TestTheBloomIsTakenOutAfterwards(t *testing.T) {
	d := practising(t)
	d.press("c")
	d.pass(30 * time.Minute)
	d.press("o", "k", "y", "o", "e", "5", "enter", "o", "r")
	d.press("w", "b", "4", "enter")
	if p := d.m.shown().Reading().Phase; p != entry.Extracted {
		t.Errorf("it stands at %s: %s", p, d.m.answer.text)
	}
	d.shows("extracted after 25 min")
}

// What the book says of itself is said at once, whatever is on the screen, and
// goes with the next key, which acts as ever.
func TestTakeOverIsSaidAtOnceAndOnce(t *testing.T) {
	d := practising(t)
	d.press("t")
	d.send(Kept{Told: []string{"a small book took over", "and another"}})
	d.shows("a small book took over (and 1 more")
	d.wait(time.Second)
	d.shows("a small book took over")
	before := len(d.m.running.Reading().Charges)
	d.press("c")
	if strings.Contains(d.screen(), "took over") {
		t.Error("it is still said after a key")
	}
	if n := len(d.m.running.Reading().Charges); n != before+1 {
		t.Errorf("%d charges: the key did not act", n)
	}
	d.hold = true
	d.press("t")
	d.send(Kept{Err: errors.New("no space"), Waiting: 1})
	d.send(Kept{Told: []string{"a small book took over"}})
	d.shows("NOT KEPT 1")
}
