package tui_test

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui"
	"chargehand/tui/desk"
)

// BenchmarkFrame is one frame of Fire, painting and encoding.
func BenchmarkFrame(b *testing.B) {
	for _, size := range []struct {
		name string
		w, h int
	}{{"80x24", 80, 24}, {"120x36", 120, 36}, {"200x60", 200, 60}} {
		b.Run(size.name, func(b *testing.B) {
			m := desk.Long(b, size.w, size.h)
			b.ReportAllocs()
			for b.Loop() {
				_ = m.View()
			}
		})
	}
}

// BenchmarkKey is a key that books a charge in a smelt of 500 entries, until
// its entry is handed over and the smelt read anew.
func BenchmarkKey(b *testing.B) {
	m := desk.Long(b, 120, 36)
	at := desk.Later(m.Shared().Now, time.Second)
	var out []entry.Entry
	b.ReportAllocs()
	for b.Loop() {
		_, out, _ = m.Update(tui.Pressed{Key: desk.KeyMsg("c"), At: at})
	}
	if len(out) != 1 {
		b.Fatal(out)
	}
}

// BenchmarkTick is one second gone by in the same smelt.
func BenchmarkTick(b *testing.B) {
	m := desk.Long(b, 120, 36)
	at := desk.Later(m.Shared().Now, time.Second)
	b.ReportAllocs()
	for b.Loop() {
		_, _, _ = m.Update(tui.Tick{At: at})
	}
}

// BenchmarkSecond is one second of a fire that nobody touches, in the same smelt: what
// the program does from the look at the clock to the frame that it hands on, without
// the solver beside it.
func BenchmarkSecond(b *testing.B) {
	for _, size := range []struct {
		name string
		w, h int
	}{{"80x24", 80, 24}, {"200x60", 200, 60}} {
		b.Run(size.name, func(b *testing.B) {
			m := desk.Long(b, size.w, size.h)
			var p tea.Model
			at := m.Shared().Now
			takes := tui.Unseen(func(_ tea.Model, msg tea.Msg) tea.Msg { return msg })
			b.ReportAllocs()
			for n := 0; b.Loop(); n++ {
				if n%60 == 0 { // a minute, again and again: later the charge is due, and it is another picture
					p = tui.Program(m, desk.Memory{}, func() entry.Stamp { return at })
					_ = p.View()
				}
				_ = takes(p, tui.Tick{At: desk.Later(at, time.Duration(n%60+1)*time.Second)})
			}
		})
	}
}
