package tui_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Entries reach the book in the order of the keys, with their aims; numbers and
// names are unique.
func TestEntriesComeInOrder(t *testing.T) {
	var handed []entry.Entry
	book := orderedStore{&handed}
	now := desk.Noon
	p := tui.Program(tui.New(tui.Config{Store: book, Start: now, NewUID: func() string { return "u" }}), book, func() entry.Stamp { return now })
	p.Init()
	var m = p
	for _, k := range []string{"p", "c", "s", "g", "t", "u", "c"} {
		now = desk.Later(now, time.Second)
		m, _ = m.Update(tui.Pressed{Key: desk.KeyMsg(k), At: now})
	}
	var kinds []string
	seen := map[string]bool{}
	for i, e := range handed {
		kinds = append(kinds, string(e.Kind()))
		if e.Seq != uint64(i+1) || seen[e.Local] {
			t.Errorf("entry %d has the number %d and the name %s", i+1, e.Seq, e.Local)
		}
		seen[e.Local] = true
	}
	if got := strings.Join(kinds, " "); got != "light charge charge level tap strike charge" {
		t.Errorf("handed over: %s", got)
	}
}

type orderedStore struct{ handed *[]entry.Entry }

func (s orderedStore) Keep(es ...entry.Entry)           { *s.handed = append(*s.handed, es...) }
func (s orderedStore) Smelts() ([]shelf.Summary, error) { return nil, nil }
func (s orderedStore) Entries(string) ([]entry.Entry, []entry.Gap, error) {
	return nil, nil, nil
}

func TestFrameIsKeptUntilItChanges(t *testing.T) {
	store := orderedStore{new([]entry.Entry)}
	p := tui.Program(tui.New(tui.Config{Store: store, Start: desk.Noon, NewUID: func() string { return "u" }}), store, func() entry.Stamp { return desk.Noon })
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	first := p.View()
	tui.Smear(p)
	p.Update(tea.FocusMsg{})
	if p.View() != first+"!" {
		t.Error("a message for nobody drew a new frame")
	}
	p.Update(tui.Tick{At: desk.Later(desk.Noon, time.Second)})
	if p.View() == first+"!" {
		t.Error("a tick did not draw a new frame")
	}
}

func TestClockJump(t *testing.T) {
	for _, c := range []struct {
		name       string
		wall, boot time.Duration
		want       time.Duration
	}{
		{"no jump", time.Second, time.Second, 0},
		{"slewed", 1900 * time.Millisecond, time.Second, 0},
		{"slept: both went on", time.Hour, time.Hour, 0},
		{"set forward", 23*time.Minute + time.Second, time.Second, 23 * time.Minute},
		{"set back", -time.Hour, time.Second, -time.Hour - time.Second},
	} {
		now := desk.Noon
		now.Wall, now.Mono = now.Wall.Add(c.wall), now.Mono+c.boot
		jump, jumped := tui.ClockJump(desk.Noon, now)
		if got := time.Duration(jump.ByMs) * time.Millisecond; jumped != (c.want != 0) || got != c.want {
			t.Errorf("%s: %v %v, want %v", c.name, jumped, got, c.want)
		}
	}
	summer := desk.Noon
	summer.Wall, summer.Mono = desk.Noon.Wall.Add(time.Second).In(time.FixedZone("", 3*3600)), desk.Noon.Mono+time.Second
	if _, jumped := tui.ClockJump(desk.Noon, summer); jumped {
		t.Error("a change of the zone is no jump")
	}
	other := desk.Later(desk.Noon, time.Hour)
	other.Boot, other.Mono = "boot-2", 5*time.Second
	if _, jumped := tui.ClockJump(desk.Noon, other); jumped {
		t.Error("two starts of the machine cannot be compared")
	}
}

func TestJumpIsWrittenDown(t *testing.T) {
	d := desk.Practising(t)
	d.Wait(time.Minute)
	d.Press("c")
	at := d.M.Running().Reading().Charges[0].At
	d.At.Wall = d.At.Wall.Add(-23 * time.Minute)
	d.Wait(time.Minute)
	if j, ok := d.Last().(entry.ClockJump); !ok || (time.Duration(j.ByMs)*time.Millisecond+23*time.Minute).Abs() > time.Second {
		t.Fatalf("the last entry is %#v", d.Last())
	}
	d.Answers("23 min back")
	r := d.M.Running().Reading()
	if r.Charges[0].At != at || (r.At-at-time.Minute).Abs() > 2*time.Second {
		t.Errorf("the charge stands at %v of %v: a stepped wall clock scrambled the smelt", r.Charges[0].At, r.At)
	}
	d.Press("c", "m")
	if n := len(d.M.Running().Reading().Charges); n != 2 {
		t.Fatalf("%d charges", n)
	}
	if ago := d.M.Running().Reading().At - d.M.Running().Reading().Charges[1].At; ago.Round(time.Second) > 61*time.Second || ago < time.Minute {
		t.Errorf("after the jump one minute earlier is %v ago", ago)
	}
}

// A board without a battery clock wakes 48 minutes slow in the middle of a smelt;
// what is kept until its clock is set stands too early, and one act moves it.
func TestTheClockHadBeenWrong(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	d.Press("o", "v", "w", "esc")
	d.Wait(time.Second)
	before := d.M.Running().Reading().At
	slow := desk.Later(d.At, 5*time.Minute)
	slow.Boot, slow.Mono, slow.Wall = "boot-2", 20*time.Second, slow.Wall.Add(-48*time.Minute)
	d = desk.SitAt(t, d.Book, slow, theme.Theme{})
	d.Press("g", "c")
	charged := func() time.Duration {
		cs := d.M.Running().Reading().Charges
		return cs[len(cs)-1].At
	}
	if at := charged(); at > before+10*time.Second {
		t.Fatalf("with a slow clock the charge stands at %v, after %v", at, before)
	}
	d.At.Wall = d.At.Wall.Add(48 * time.Minute)
	d.Wait(time.Second)
	d.Press("o", "v", "w", "y")
	d.Answers(words.Shifted(48 * time.Minute))
	if late := charged() - before - 5*time.Minute; late.Abs() > 10*time.Second {
		t.Errorf("the charge stands %v from where it happened", late)
	}
	d.Press("o", "v", "w")
	d.Shows(words.RightTime) // what was set is put right; more can only be said by hand
}

// The same where the clock is never set: what was done in this start moves by what is said
// the time is; what was done before it, and light, stay.
func TestALaterStartIsPutRightByHand(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	r := d.M.Running().Reading()
	before, lit, earlier := r.At, r.Lit, r.Charges[0].At
	slow := desk.Later(d.At, 5*time.Minute)
	slow.Boot, slow.Mono, slow.Wall = "boot-2", 20*time.Second, slow.Wall.Add(-48*time.Minute)
	d = desk.SitAt(t, d.Book, slow, theme.Theme{})
	d.Press("g", "c")
	n := len(d.M.Running().Reading().Charges)
	charged := func() time.Duration { return d.M.Running().Reading().Charges[n-1].At }
	d.Press("o", "v", "w")
	d.Write(d.At.Wall.Add(48 * time.Minute).Format("1504"))
	d.Press("enter", "y")
	d.Answers("all since the machine last started moved")
	if late := charged() - before - 5*time.Minute; late.Abs() > 10*time.Second {
		t.Errorf("the charge stands %v from where it happened; %s", late, d.Said())
	}
	r = d.M.Running().Reading()
	if !r.Lit.Equal(lit) || r.Charges[0].At != earlier {
		t.Errorf("light moved from %v to %v, the first charge from %v to %v", lit, r.Lit, earlier, r.Charges[0].At)
	}
	d.Wait(time.Minute)
	d.Press("t")
	d = killed(d)
	d.Press("g")
	if late := charged() - before - 5*time.Minute; late.Abs() > 10*time.Second {
		t.Errorf("in another start it stands %v from where it happened", late)
	}
}

// A clock that stands wrong from the light on, set by the machine later or by nobody,
// is put right by one entry: every time of the smelt moves, what lies between two acts
// does not, and crossing that entry out takes it back.
func TestTheClockIsPutRightByHand(t *testing.T) {
	for name, set := range map[string]bool{"set by the machine since": true, "wrong still": false} {
		d := desk.Smelting(t, theme.Theme{})
		d.Press("c")
		d.Wait(7 * time.Minute)
		r := d.M.Running().Reading()
		lit, charged, spent := r.Lit, r.Charges[len(r.Charges)-1].At, r.At
		right := d.At.Wall.Add(23 * time.Minute)
		if set {
			d.At.Wall = right
			d.Wait(time.Second)
		}
		n := len(d.Book[d.M.Running().ID()])
		d.Press("o", "v", "w")
		if !set {
			d.Write(right.Format("1504"))
			d.Press("enter")
		}
		d.Shows("23 min later: lit " + lit.Add(23*time.Minute).Format("15:04") + ", not " + lit.Format("15:04"))
		if evs := d.Book[d.M.Running().ID()][n:]; slices.ContainsFunc(evs, func(e entry.Entry) bool { j, ok := e.Event.(entry.ClockJump); return ok && !j.Right.IsZero() }) {
			t.Fatalf("%s: it is changed before it was asked", name)
		}
		d.Press("y")
		d.Answers("23 min later")
		r = d.M.Running().Reading()
		if by := r.Lit.Sub(lit) - 23*time.Minute; by.Abs() > 2*time.Second {
			t.Errorf("%s: light stands at %v, was %v", name, r.Lit, lit)
		}
		if got := r.Charges[len(r.Charges)-1].At; got != charged || (r.At-spent).Abs() > 10*time.Second {
			t.Errorf("%s: the charge stands at %v of %v, stood at %v of %v", name, got, r.At, charged, spent)
		}
		d.Press("v", "b", "u")
		d.Answers("crossed out: the clock stood wrong")
		if got := d.M.Running().Reading().Lit; !got.Equal(lit) {
			t.Errorf("%s: crossed out, light stands at %v, was %v", name, got, lit)
		}
		d.Press("o")
		d.Answers("holds again: the clock stood wrong")
		d.Press("esc")
		r = d.M.Running().Reading()
		// A time typed now is one of those that are shown.
		due := charged + 3*time.Minute
		d.Press("o", "e")
		d.Write(r.Wall(due).Format("1504"))
		d.Press("enter", "r")
		rodded := false
		for l := range d.M.Running().Backward() {
			if _, ok := l.Event.(entry.Rod); ok {
				rodded = true
				if got, want := d.M.Running().Wall(l).Format("15:04"), r.Wall(due).Format("15:04"); got != want {
					t.Errorf("%s: entered late for %s, and stands at %s", name, want, got)
				}
				break
			}
		}
		if !rodded {
			t.Errorf("%s: nothing was entered late:\n%s", name, d.Picture())
		}
		live := d.M.Running()
		before := live.AsOf(uint64(n), spent).Reading()
		if !before.Lit.Equal(lit) {
			t.Errorf("%s: as we saw it light stood at %v, is %v", name, lit, before.Lit)
		}
	}
}

func TestResumeAfterTheEnd(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	d.Wait(time.Second)
	before := d.M.Running()
	// The program dies; the machine starts anew; the program comes back.
	at := desk.Later(d.At, 5*time.Minute)
	at.Boot, at.Mono = "boot-2", 20*time.Second
	again := desk.SitAt(t, d.Book, at, theme.Theme{})
	again.Shows("go on with")
	again.Press("g")
	r := again.M.Running().Reading()
	if again.M.Active() != screen.Fire || len(r.Charges) != len(before.Reading().Charges) {
		t.Fatalf("%s, %d charges, want %d", again.M.Active(), len(r.Charges), len(before.Reading().Charges))
	}
	for i, c := range r.Charges {
		if c.At != before.Reading().Charges[i].At {
			t.Errorf("charge %d moved from %v to %v", i+1, before.Reading().Charges[i].At, c.At)
		}
	}
	if gap := r.At - before.Reading().At; gap.Round(time.Second) != 5*time.Minute+time.Second {
		t.Errorf("the clock went on by %v", gap)
	}
	again.Press("c")
	if n := len(again.M.Running().Reading().Charges); n != len(before.Reading().Charges)+1 {
		t.Errorf("%d charges after one more", n)
	}
	if by := again.M.Running().Entries()[len(again.M.Running().Entries())-1].By; by != "MK" {
		t.Errorf("the initials are %q", by)
	}
}

func TestLeavingAsks(t *testing.T) {
	for _, keys := range [][]string{{"ctrl+c"}, {"v", "q"}} {
		d := desk.Practising(t)
		d.Press(keys...)
		if d.Quit {
			t.Fatalf("%v left a running smelt without asking", keys)
		}
		d.Press("n")
		if d.Quit {
			t.Fatal("no is no")
		}
		d.Press(keys...)
		d.Press("y")
		if !d.Quit {
			t.Errorf("%v and yes did not leave", keys)
		}
		if d.M.Unkept() != 0 {
			t.Error("left with entries not kept")
		}
	}
	d := desk.Sit(t)
	d.Press("q")
	if !d.Quit {
		t.Error("nothing runs, and it did not leave")
	}
}

func TestHangUpLeavesAtOnce(t *testing.T) {
	d := desk.Practising(t)
	d.Press("q")
	d.Hold = true
	d.Send(tui.Leave{})
	if !d.Quit || len(d.Queue) != 1 {
		t.Errorf("quit %v, %d entries handed over: the keys not yet written down must go out", d.Quit, len(d.Queue))
	}
}

func TestAnotherSmeltAsksFirst(t *testing.T) {
	d := desk.Practising(t)
	first := d.M.Running().ID()
	d.Press("v", "a", "p")
	if d.M.Running().ID() != first {
		t.Fatal("left a running smelt without asking")
	}
	d.Press("y")
	if d.M.Running().ID() == first {
		t.Error("yes did not begin another")
	}
}

func TestPanicInACommand(t *testing.T) {
	var told any
	cmd := tui.Guarded(func(v any, stack []byte) { told = v }, func() []byte { return nil }, func() tea.Msg { panic(errors.New("burst")) })
	msg := cmd()
	if !tui.IsFailed(msg) || told == nil {
		t.Fatalf("%#v, told %v", msg, told)
	}
	d := desk.Sit(t)
	d.Send(msg)
	d.Answers("burst")
}

// Keys that come faster than frames are not all drawn: nobody would see it. What
// stands after the last is.
func TestFramesThatNobodySeesAreNotDrawn(t *testing.T) {
	d := desk.Practising(t)
	p := tui.Program(d.M, d.Book, func() entry.Stamp { return d.At })
	drawn, late := 0, 0
	view := func() {
		if !strings.HasSuffix(p.View(), "!") {
			drawn++
			tui.Smear(p)
		}
	}
	due := func(cmd tea.Cmd) {
		if cmd != nil {
			late++
		}
	}
	view()
	drawn = 0
	const keys, every = 300, 10 * time.Millisecond
	for i := range keys {
		d.At = desk.Later(d.At, every)
		_, cmd := p.Update(tui.Pressed{Key: desk.KeyMsg([]string{"h", "esc"}[i%2]), At: d.At})
		due(cmd)
		view()
	}
	most := int(keys * every / tui.Frames)
	if drawn > most+1 || drawn < most/2 {
		t.Errorf("%d frames drawn for %d keys in %v, want about %d", drawn, keys, keys*every, most)
	}
	if late == 0 {
		t.Error("no frame was left for later")
	}
	p.Update(tui.FrameDue{})
	view()
	m, _ := tui.Inner(p)
	if got := strings.TrimSuffix(p.View(), "!"); got != m.View() {
		t.Error("what stands after the last key is not drawn")
	}
}

// A look at the clock of which nothing is seen does not reach the library, which would hold
// the frame against the last one again and again; one of which something is seen does, once.
// The clock is looked at again either way, and keys go by untouched.
func TestWhatChangesNothingDrawsNoFrame(t *testing.T) {
	store := orderedStore{new([]entry.Entry)}
	now := desk.Noon
	p := tui.Program(tui.New(tui.Config{Store: store, Start: now, NewUID: func() string { return "u" }}), store, func() entry.Stamp { return now })
	filter := tui.Unseen(func(_ tea.Model, msg tea.Msg) tea.Msg { return msg })
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	p.Update(tui.ShelfFailed(nil)) // read, and empty: nothing is waited for
	start := p.View()
	now = desk.Later(now, time.Second)
	if msg, is := filter(p, tui.Tick{At: now}).(tea.BatchMsg); !is || len(msg) != 1 || msg[0] == nil || p.View() != start {
		t.Error("the start shows no seconds, and yet a second of it was drawn, or it was the last one")
	}
	for _, k := range []string{"p", "c"} {
		now = desk.Later(now, time.Second)
		key := tui.Pressed{Key: desk.KeyMsg(k), At: now}
		if msg, is := filter(p, key).(tui.Pressed); !is || msg.At != now {
			t.Fatalf("of a key became %v", msg)
		}
		p.Update(key)
	}
	lit, kept := p.View(), len(*store.handed)
	now = desk.Later(now, time.Second)
	msg := filter(p, tui.Tick{At: now})
	if _, is := msg.(tea.BatchMsg); is || p.View() == lit {
		t.Fatal("the timer of a charge goes on, and the frame does not")
	}
	drawn, taken := p.View(), len(*store.handed)
	if _, cmd := p.Update(msg); cmd == nil || p.View() != drawn || len(*store.handed) != taken || taken < kept {
		t.Error("the second was taken twice, or it was the last one")
	}
}

// A second of which the solver has something to say is drawn once, with what it says; where
// that takes longer than a frame, without it first.
func TestASecondWaitsForTheSolver(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	var solver tui.Solver
	d.Works(&solver)
	p := tui.Program(d.M, d.Book, func() entry.Stamp { return d.At })
	filter := tui.Unseen(func(_ tea.Model, msg tea.Msg) tea.Msg { return msg })
	drawn := func(msg tea.Msg) bool {
		_, is := filter(p, msg).(tea.BatchMsg)
		return !is
	}
	solved := func() tea.Msg {
		m, busy := tui.Inner(p)
		cmd := solver.Next(m)
		if cmd == nil || !busy {
			t.Fatal("the solver is not asked")
		}
		solver.Done()
		return cmd()
	}
	asIs := func() bool {
		m, _ := tui.Inner(p)
		return p.View() == m.View()
	}
	_ = p.View()
	free := 0
	for _, late := range []bool{false, true} {
		d.At = desk.Later(d.At, 10*time.Second) // the time since the last charge is shown to ten
		if drawn(tui.Tick{At: d.At}) || asIs() {
			t.Fatal("drawn before the solver had the time of a frame to say something of it")
		}
		if late {
			if !drawn(tui.FrameDue{}) || !asIs() {
				t.Error("waits longer than a frame for the solver")
			}
			drawn(solved())
		} else if !drawn(solved()) || drawn(tui.FrameDue{}) {
			t.Error("not drawn once, with what the solver says")
		}
		if !asIs() {
			t.Error("what the solver says is not drawn")
		}
		d.At = desk.Later(d.At, time.Second)
		drawn(tui.Tick{At: d.At})
		if _, busy := tui.Inner(p); busy {
			drawn(solved())
		} else if free++; !asIs() {
			t.Error("a second that nothing is solved for waits")
		}
	}
	if free == 0 {
		t.Error("the solver is asked each second")
	}
}
