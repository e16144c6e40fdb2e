package tui

import (
	"errors"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/tui/theme"
)

// Entries reach the book in the order of the keys, with their aims; numbers and
// names are unique.
func TestEntriesComeInOrder(t *testing.T) {
	var handed []entry.Entry
	book := orderedStore{&handed}
	now := noon
	p := Program(New(Config{Store: book, Start: now, NewUID: func() string { return "u" }}), book, func() entry.Stamp { return now })
	p.Init()
	var m = p
	for _, k := range []string{"p", "c", "s", "g", "t", "u", "c"} {
		now = later(now, time.Second)
		m, _ = m.Update(Pressed{Key: keyMsg(k), At: now})
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

func (s orderedStore) Keep(es ...entry.Entry)                { *s.handed = append(*s.handed, es...) }
func (s orderedStore) Smelts() ([]SmeltLine, error)          { return nil, nil }
func (s orderedStore) Entries(string) ([]entry.Entry, error) { return nil, nil }

func TestFrameIsKeptUntilItChanges(t *testing.T) {
	store := orderedStore{new([]entry.Entry)}
	p := Program(New(Config{Store: store, Start: noon, NewUID: func() string { return "u" }}), store, func() entry.Stamp { return noon }).(*program)
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	first := p.View()
	p.frame += "!"
	p.Update(tea.FocusMsg{})
	if p.View() != first+"!" {
		t.Error("a message for nobody drew a new frame")
	}
	p.Update(Tick{At: later(noon, time.Second)})
	if p.View() != first {
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
		now := noon
		now.Wall, now.Mono = now.Wall.Add(c.wall), now.Mono+c.boot
		jump, jumped := clockJump(noon, now)
		if got := time.Duration(jump.ByMs) * time.Millisecond; jumped != (c.want != 0) || got != c.want {
			t.Errorf("%s: %v %v, want %v", c.name, jumped, got, c.want)
		}
	}
	summer := noon
	summer.Wall, summer.Mono = noon.Wall.Add(time.Second).In(time.FixedZone("", 3*3600)), noon.Mono+time.Second
	if _, jumped := clockJump(noon, summer); jumped {
		t.Error("a change of the zone is no jump")
	}
	other := later(noon, time.Hour)
	other.Boot, other.Mono = "boot-2", 5*time.Second
	if _, jumped := clockJump(noon, other); jumped {
		t.Error("two starts of the machine cannot be compared")
	}
}

func TestJumpIsWrittenDown(t *testing.T) {
	d := practising(t)
	d.wait(time.Minute)
	d.press("c")
	at := d.m.running.Reading().Charges[0].At
	d.at.Wall = d.at.Wall.Add(-23 * time.Minute)
	d.wait(time.Minute)
	if j, ok := d.last().(entry.ClockJump); !ok || (time.Duration(j.ByMs)*time.Millisecond+23*time.Minute).Abs() > time.Second {
		t.Fatalf("the last entry is %#v", d.last())
	}
	d.answers("23 min back")
	r := d.m.running.Reading()
	if r.Charges[0].At != at || (r.At-at-time.Minute).Abs() > 2*time.Second {
		t.Errorf("the charge stands at %v of %v: a stepped wall clock scrambled the smelt", r.Charges[0].At, r.At)
	}
	d.press("c", "m")
	if n := len(d.m.running.Reading().Charges); n != 2 {
		t.Fatalf("%d charges", n)
	}
	if ago := d.m.running.Reading().At - d.m.running.Reading().Charges[1].At; ago.Round(time.Second) > 61*time.Second || ago < time.Minute {
		t.Errorf("after the jump one minute earlier is %v ago", ago)
	}
}

// A board without a battery clock wakes 48 minutes slow in the middle of a smelt;
// what is kept until its clock is set stands too early, and one act moves it.
func TestTheClockHadBeenWrong(t *testing.T) {
	d := smelting(t, theme.Theme{})
	d.press("o", "v")
	d.answers(words.NoClockJump)
	d.wait(time.Second)
	before := d.m.running.Reading().At
	slow := later(d.at, 5*time.Minute)
	slow.Boot, slow.Mono, slow.Wall = "boot-2", 20*time.Second, slow.Wall.Add(-48*time.Minute)
	d = sitAt(t, d.book, slow, theme.Theme{})
	d.press("g", "c")
	charged := func() time.Duration {
		cs := d.m.running.Reading().Charges
		return cs[len(cs)-1].At
	}
	if at := charged(); at > before+10*time.Second {
		t.Fatalf("with a slow clock the charge stands at %v, after %v", at, before)
	}
	d.at.Wall = d.at.Wall.Add(48 * time.Minute)
	d.wait(time.Second)
	d.press("o", "v", "y")
	d.answers(words.Shifted(48 * time.Minute))
	if late := charged() - before - 5*time.Minute; late.Abs() > 10*time.Second {
		t.Errorf("the charge stands %v from where it happened", late)
	}
	d.press("o", "v")
	d.answers(words.AlreadyShifted)
}

func TestResumeAfterTheEnd(t *testing.T) {
	d := smelting(t, theme.Theme{})
	d.wait(time.Second)
	before := d.m.running
	// The program dies; the machine starts anew; the program comes back.
	at := later(d.at, 5*time.Minute)
	at.Boot, at.Mono = "boot-2", 20*time.Second
	again := sitAt(t, d.book, at, theme.Theme{})
	again.shows("go on with")
	again.press("g")
	r := again.m.running.Reading()
	if again.m.active != fireScreen || len(r.Charges) != len(before.Reading().Charges) {
		t.Fatalf("%s, %d charges, want %d", again.m.active, len(r.Charges), len(before.Reading().Charges))
	}
	for i, c := range r.Charges {
		if c.At != before.Reading().Charges[i].At {
			t.Errorf("charge %d moved from %v to %v", i+1, before.Reading().Charges[i].At, c.At)
		}
	}
	if gap := r.At - before.Reading().At; gap.Round(time.Second) != 5*time.Minute+time.Second {
		t.Errorf("the clock went on by %v", gap)
	}
	again.press("c")
	if n := len(again.m.running.Reading().Charges); n != len(before.Reading().Charges)+1 {
		t.Errorf("%d charges after one more", n)
	}
	if by := again.m.running.Entries()[len(again.m.running.Entries())-1].By; by != "MK" {
		t.Errorf("the initials are %q", by)
	}
}

func TestLeavingAsks(t *testing.T) {
	for _, keys := range [][]string{{"ctrl+c"}, {"v", "q"}} {
		d := practising(t)
		d.press(keys...)
		if d.quit {
			t.Fatalf("%v left a running smelt without asking", keys)
		}
		d.press("n")
		if d.quit {
			t.Fatal("no is no")
		}
		d.press(keys...)
		d.press("y")
		if !d.quit {
			t.Errorf("%v and yes did not leave", keys)
		}
		if d.m.Unkept() != 0 {
			t.Error("left with entries not kept")
		}
	}
	d := sit(t)
	d.press("q")
	if !d.quit {
		t.Error("nothing runs, and it did not leave")
	}
}

func TestHangUpLeavesAtOnce(t *testing.T) {
	d := practising(t)
	d.press("q")
	d.hold = true
	d.send(Leave{})
	if !d.quit || len(d.queue) != 1 {
		t.Errorf("quit %v, %d entries handed over: the keys not yet written down must go out", d.quit, len(d.queue))
	}
}

func TestAnotherSmeltAsksFirst(t *testing.T) {
	d := practising(t)
	first := d.m.running.ID()
	d.press("v", "a", "p")
	if d.m.running.ID() != first {
		t.Fatal("left a running smelt without asking")
	}
	d.press("y")
	if d.m.running.ID() == first {
		t.Error("yes did not begin another")
	}
}

func TestPanicInACommand(t *testing.T) {
	var told any
	cmd := guarded(func(v any, stack []byte) { told = v }, func() []byte { return nil }, func() tea.Msg { panic(errors.New("burst")) })
	msg, ok := cmd().(failed)
	if !ok || told == nil {
		t.Fatalf("%#v, told %v", msg, told)
	}
	d := sit(t)
	d.send(msg)
	d.answers("burst")
}
