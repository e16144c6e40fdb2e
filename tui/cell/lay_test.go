package cell

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// What a component draws keeps its letters and its look: colours are inks.
func TestLayReadsRenditions(t *testing.T) {
	g := New(12, 2, false)
	g.Lay("\x1b[1;38;5;20;48;5;2mab\x1b[0mc\x1b[7;34md\x1b[27me\x1b[m\nÅ\x1b[2Jse", Style{Ink: 9})
	if got, want := g.String(), "abcde       \nÅse         "; got != want {
		t.Fatalf("got %q, want %q", got, want)
	}
	for x, want := range []Style{
		{Ink: 20, Paper: 2, Attr: Bold}, {Ink: 20, Paper: 2, Attr: Bold}, {Ink: 9}, {Ink: 4, Attr: Inverse}, {Ink: 4},
	} {
		if got := g.row(0)[x].style; got != want {
			t.Errorf("cell %d is %+v, want %+v", x, got, want)
		}
	}
}

// Whatever a component draws, the sheet keeps its width and holds no sequence.
func FuzzLay(f *testing.F) {
	for _, s := range []string{"\x1b[38;5;214mfire\x1b[0m", "\x1b[38;5m", "\x1b[48;5;999m鉄", "\x1b]0;t\x07a", "a\nb\nc"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		g := New(9, 2, false)
		g.Lay(s, Style{})
		for _, row := range strings.Split(g.String(), "\n") {
			if w := ansi.StringWidth(row); w != 9 {
				t.Errorf("row of %d cells: %q", w, row)
			}
		}
		_ = g.Encode(&Palette{})
	})
}
