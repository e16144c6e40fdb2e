package tui

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"pgregory.net/rapid"

	"chargehand/model"
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/tui/theme"
)

// Whatever is keyed, at whatever pace, with acknowledgements that come late and
// restarts in between: nothing panics, every view fills the window, every key
// stands in the journal exactly once, and the screen and the book tell the same
// story.
func TestRandomKeys(t *testing.T) {
	var keys []string
	for k := range named {
		keys = append(keys, k)
	}
	for c := ' '; c < 127; c++ {
		keys = append(keys, string(c))
	}
	keys = append(keys, "é", "à", "ß", "c", "c", "s", "s", "f", "u", "m", "o", "y", "enter", "1", "2")
	rapid.Check(t, func(rt *rapid.T) {
		d := sitAt(t, memory{}, noon, theme.Theme{})
		d.press("p")
		pressed, boots := 1, 1
		for range rapid.IntRange(1, 60).Draw(rt, "steps") {
			switch rapid.IntRange(0, 11).Draw(rt, "what") {
			case 0:
				d.wait(time.Duration(rapid.IntRange(1, 3600).Draw(rt, "s")) * time.Second)
			case 1:
				d.hold = !d.hold
			case 2:
				d.send(tea.WindowSizeMsg{Width: rapid.IntRange(1, 160).Draw(rt, "w"), Height: rapid.IntRange(1, 50).Draw(rt, "h")})
				fills(t, d.m.View(), string(d.m.active), d.m.w, d.m.h)
			case 3:
				if rapid.IntRange(0, 3).Draw(rt, "restart") > 0 {
					continue
				}
				d.wait(time.Second)
				d.hold = false
				d.acknowledge()
				boots++
				at := later(d.at, time.Minute)
				at.Boot, at.Mono = fmt.Sprintf("boot-%d", boots), time.Minute
				d = sitAt(t, d.book, at, theme.Theme{})
			default:
				k := rapid.SampledFrom(keys).Draw(rt, "key")
				if k == "q" || k == "ctrl+c" || k == "x" {
					continue // the desk cannot be left in the middle
				}
				d.fast(time.Duration(rapid.IntRange(20, 1500).Draw(rt, "ms"))*time.Millisecond, k)
				pressed++
				_ = d.m.View()
			}
		}
		d.hold = false
		d.wait(2 * time.Second)
		d.acknowledge()
		if n := d.m.Unkept(); n != 0 {
			rt.Fatalf("%d entries never kept", n)
		}
		if n := journaled(d.book); n != pressed {
			rt.Fatalf("%d keys pressed, %d in the journal", pressed, n)
		}
		for _, s := range []session.Session{d.m.running, d.m.looked} {
			if !s.Is() || s.ToLook() {
				continue
			}
			kept, _ := d.book.Entries(s.ID())
			if !reflect.DeepEqual(kept, s.Entries()) {
				rt.Fatalf("the screen holds other entries of %s than the book", s.ID())
			}
			if s.Running() {
				if got, want := s.Reading(), model.Read(kept, fold.All, s.Reading().At); !reflect.DeepEqual(got, want) {
					rt.Fatalf("the screen reads %+v, the book %+v", got, want)
				}
			}
		}
	})
}

// journaled counts the keys in a book: those of acts, and those of batches.
func journaled(b memory) int {
	n := 0
	for _, es := range b {
		for _, e := range es {
			switch ev := e.Event.(type) {
			case entry.Keys:
				n += len(ev.Pressed)
			default:
				if e.Key != "" {
					n++
				}
			}
		}
	}
	return n
}
