package tui_test

import (
	"errors"
	"maps"
	"reflect"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// watching is a second desk on the book of a first, that only watches.
func watching(t *testing.T, of *desk.Desk, smelt string, on screen.ID) *desk.Desk {
	t.Helper()
	had := map[string]int{}
	return desk.SitWith(t, of.Book, of.At, theme.Theme{}, func(cfg *tui.Config) {
		cfg.Watching = &tui.Watching{Smelt: smelt, On: on, News: func(since map[string]uint64) (kept []entry.Entry, others bool, err error) {
			for stream, es := range of.Book {
				if len(es) == had[stream] {
					continue
				}
				had[stream] = len(es)
				after, asked := since[stream]
				others = others || !asked
				for _, e := range es {
					if asked && e.Seq > after {
						kept = append(kept, e)
					}
				}
			}
			return kept, others, nil
		}}
	})
}

// sees lets both clocks go on by a second and holds the smelt that is watched against the
// one that is keyed.
func sees(t *testing.T, of, d *desk.Desk) {
	t.Helper()
	of.Wait(time.Second)
	d.At = of.At
	for range 2 { // what the first second asked for, the second shows
		d.Send(tui.Tick{At: d.At})
	}
	if !reflect.DeepEqual(of.M.Running().Entries(), d.M.Running().Entries()) {
		t.Fatalf("%d entries are keyed, %d seen", of.M.Running().Len(), d.M.Running().Len())
	}
	if !reflect.DeepEqual(of.M.Running().Reading(), d.M.Running().Reading()) {
		t.Fatal("the same entries at the same second, and another reading")
	}
}

// A second screen begins with no fire, shows the one that is lit and each act in it, and
// takes none itself.
func TestASecondScreenWatches(t *testing.T) {
	of := desk.Sit(t)
	d := watching(t, of, "", screen.Fire)
	d.Wait(time.Second)
	d.Answers(words.NoneAlight)
	of.Press("r", "pgdown", "enter", "y")
	of.Press("b")
	of.Write("700")
	of.Press("enter", "f")
	sees(t, of, d)
	d.Shows(" " + words.TagWatching + " ")
	of.Press("o", "m")
	for range 3 {
		of.Press("c")
		of.Wait(10 * time.Minute)
	}
	sees(t, of, d)
	before := d.Picture()
	for _, k := range []string{"c", "s", "f", "t", "r", "u"} {
		d.Press(k)
		d.Answers(words.OnlyWatching)
	}
	of.Press("l", "p", "w")
	sees(t, of, d)
	if d.Picture() == before {
		t.Error("a look at the peep is not seen")
	}
	d.Press("v", "t") // stores, with the row of the fire
	d.Shows("next charge in")
	d.Press("c")
	d.Answers(words.OnlyWatching)
	if len(d.Queue) > 0 || d.M.Unkept() > 0 {
		t.Errorf("a screen that watches made entries: %v", d.Queue)
	}
}

// Of two fires both are seen, and a third screen that is told which sees that one alone.
func TestTwoFiresAreWatched(t *testing.T) {
	of := two(t)
	d := watching(t, of, "", screen.Fire)
	for range 4 {
		d.Wait(time.Second)
	}
	if !d.M.Running().Is() || !d.M.Shared().Other.Is() {
		t.Fatalf("seen are %q and %q", d.M.Running().ID(), d.M.Shared().Other.ID())
	}
	was := d.M.Running().ID()
	d.Press("f2")
	if d.M.Running().ID() == was {
		t.Error("F2 does not change between them")
	}
	_, bank := chargesOf(of, "Old Bank")
	one := watching(t, of, bank, screen.Fire)
	for range 4 {
		one.Wait(time.Second)
	}
	if one.M.Running().ID() != bank {
		t.Errorf("watched is %q", one.M.Running().ID())
	}
}

// A smelt that is over is opened in Replay, and nothing is keyed into it there either.
func TestAFinishedSmeltIsWatched(t *testing.T) {
	of := desk.Smelting(t, theme.Theme{})
	id := of.M.Running().ID()
	of.Press("o", "o", "enter")
	of.Press("o", "k", "y")
	d := watching(t, of, id, screen.Replay)
	if d.M.Active() != screen.Replay {
		t.Fatalf("on %s: %s", d.M.Active(), d.Said())
	}
	for _, keys := range [][]string{{"v", "a"}, {"v", "c"}, {"n"}, {"w"}} {
		d.Press(keys...)
	}
	if n := d.M.Unkept(); n > 0 || len(d.Queue) > 0 {
		t.Errorf("%d entries were made", n)
	}
}

// A book that cannot be read for a while says so, and is read on.
func TestWatchingABookThatIsAway(t *testing.T) {
	of := desk.Smelting(t, theme.Theme{})
	away := errors.New("the stick is out")
	d := desk.SitWith(t, of.Book, of.At, theme.Theme{}, func(cfg *tui.Config) {
		cfg.Watching = &tui.Watching{On: screen.Fire, News: func(map[string]uint64) ([]entry.Entry, bool, error) { return nil, away == nil, away }}
	})
	d.Wait(time.Second)
	d.Answers("the stick is out")
	away = nil
	for range 3 {
		d.Wait(time.Second)
	}
	if !d.M.Running().Is() {
		t.Errorf("the fire is not seen: %s", d.Said())
	}
}

// Whatever is keyed into a screen that watches, no entry comes of it, and what the other
// one keys is seen all the same.
func TestRandomKeysWhileWatching(t *testing.T) {
	var keys []string
	for k := range maps.Keys(desk.Named) {
		keys = append(keys, k)
	}
	for c := ' '; c < 127; c++ {
		if c != 'q' { // leaves
			keys = append(keys, string(c))
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		of := desk.Smelting(t, theme.Theme{})
		d := watching(t, of, "", screen.Fire)
		for range rapid.IntRange(1, 40).Draw(rt, "steps") {
			switch rapid.IntRange(0, 7).Draw(rt, "what") {
			case 0:
				of.Press(rapid.SampledFrom([]string{"c", "s", "f", "u", "r"}).Draw(rt, "act"))
			case 1:
				d.Wait(time.Duration(rapid.IntRange(1, 90).Draw(rt, "s")) * time.Second)
			case 2:
				d.Send(tea.WindowSizeMsg{Width: rapid.IntRange(20, 160).Draw(rt, "w"), Height: rapid.IntRange(8, 50).Draw(rt, "h")})
			default:
				if k := rapid.SampledFrom(keys).Draw(rt, "key"); k != "ctrl+c" {
					d.Fast(time.Duration(rapid.IntRange(20, 1500).Draw(rt, "ms"))*time.Millisecond, k)
				}
			}
			_ = d.M.View()
		}
		if n := d.M.Unkept(); n > 0 || len(d.Queue) > 0 {
			rt.Fatalf("%d entries of a screen that watches: %v", n, d.Queue)
		}
		if of.M.Running().Len() != len(of.Book[of.M.Running().ID()]) {
			rt.Fatal("something else was written")
		}
		of.At = desk.Later(of.At, d.At.Wall.Sub(of.At.Wall))
		for range 3 {
			of.Wait(time.Second)
			d.At = of.At
			d.Send(tui.Tick{At: d.At})
		}
		for _, s := range []string{d.M.Running().ID(), d.M.Shared().Other.ID()} {
			if s == of.M.Running().ID() {
				return
			}
		}
		rt.Fatalf("the fire is not seen: %q", d.M.Running().ID())
	})
}
