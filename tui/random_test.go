package tui_test

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// Whatever is keyed, at whatever pace, with acknowledgements that come late and
// restarts in between: nothing panics, every view fills the window, every key
// stands in the journal exactly once, and the screen and the book tell the same
// story.
func TestRandomKeys(t *testing.T) {
	var keys []string
	for k := range desk.Named {
		keys = append(keys, k)
	}
	for c := ' '; c < 127; c++ {
		keys = append(keys, string(c))
	}
	keys = append(keys, "é", "à", "ß", "c", "c", "s", "s", "f", "u", "m", "o", "y", "enter", "1", "2")
	rapid.Check(t, func(rt *rapid.T) {
		d := desk.SitAt(t, desk.Memory{}, desk.Noon, theme.Theme{})
		d.Press("p")
		pressed, boots := 1, 1
		for range rapid.IntRange(1, 60).Draw(rt, "steps") {
			switch rapid.IntRange(0, 11).Draw(rt, "what") {
			case 0:
				d.Wait(time.Duration(rapid.IntRange(1, 3600).Draw(rt, "s")) * time.Second)
			case 1:
				d.Hold = !d.Hold
			case 2:
				d.Send(tea.WindowSizeMsg{Width: rapid.IntRange(1, 160).Draw(rt, "w"), Height: rapid.IntRange(1, 50).Draw(rt, "h")})
				fills(t, d.M.View(), string(d.M.Active()), d.M.Shared().W, d.M.Shared().H)
			case 3:
				if rapid.IntRange(0, 3).Draw(rt, "restart") > 0 {
					continue
				}
				d.Wait(time.Second)
				d.Hold = false
				d.Acknowledge()
				boots++
				at := desk.Later(d.At, time.Minute)
				at.Boot, at.Mono = fmt.Sprintf("boot-%d", boots), time.Minute
				d = desk.SitAt(t, d.Book, at, theme.Theme{})
			default:
				k := rapid.SampledFrom(keys).Draw(rt, "key")
				if k == "q" || k == "ctrl+c" || k == "x" {
					continue // the desk cannot be left in the middle
				}
				d.Fast(time.Duration(rapid.IntRange(20, 1500).Draw(rt, "ms"))*time.Millisecond, k)
				pressed++
				_ = d.M.View()
			}
		}
		d.Hold = false
		d.Wait(2 * time.Second)
		d.Acknowledge()
		if n := d.M.Unkept(); n != 0 {
			rt.Fatalf("%d entries never kept", n)
		}
		if n := journaled(d.Book); n != pressed {
			rt.Fatalf("%d keys pressed, %d in the journal", pressed, n)
		}
		for _, s := range []session.Session{d.M.Running(), d.M.Looked()} {
			if !s.Is() || s.ToLook() {
				continue
			}
			kept, _, _ := d.Book.Entries(s.ID())
			if !reflect.DeepEqual(kept, s.Entries()) {
				rt.Fatalf("the screen holds other entries of %s than the book", s.ID())
			}
			if s.Running() {
				if got, want := s.Reading(), readAt(kept, fold.All, s.Reading().At); !reflect.DeepEqual(got, want) {
					rt.Fatalf("the screen reads %+v, the book %+v", got, want)
				}
			}
		}
	})
}

// journaled counts the keys in a book: those of acts, and those of batches.
func journaled(b desk.Memory) int {
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
