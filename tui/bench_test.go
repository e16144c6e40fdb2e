package tui

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/theme"
)

// longSmelt is a desk at the end of a ten hours' smelt of about 500 entries.
func longSmelt(b *testing.B, w, h int) Model {
	b.Helper()
	d := sitAt(new(testing.T), memory{}, noon, theme.Theme{Profile: theme.Fixed256})
	d.press("p")
	for len(d.m.running.Entries()) < 500 {
		d.press("c", "s", "s", "u", "l", "p", "w", "m")
		d.wait(7 * time.Minute)
	}
	d.send(tea.WindowSizeMsg{Width: w, Height: h})
	return d.m
}

// BenchmarkFrame is one frame of Fire, painting and encoding.
func BenchmarkFrame(b *testing.B) {
	for _, size := range []struct {
		name string
		w, h int
	}{{"80x24", 80, 24}, {"120x36", 120, 36}, {"200x60", 200, 60}} {
		b.Run(size.name, func(b *testing.B) {
			m := longSmelt(b, size.w, size.h)
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
	m := longSmelt(b, 120, 36)
	at := later(m.now, time.Second)
	var out []entry.Entry
	b.ReportAllocs()
	for b.Loop() {
		_, out, _ = m.Update(Pressed{Key: keyMsg("c"), At: at})
	}
	if len(out) != 1 {
		b.Fatal(out)
	}
}

// BenchmarkTick is one second gone by in the same smelt.
func BenchmarkTick(b *testing.B) {
	m := longSmelt(b, 120, 36)
	at := later(m.now, time.Second)
	b.ReportAllocs()
	for b.Loop() {
		_, _, _ = m.Update(Tick{At: at})
	}
}
