package cell

import (
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/x/ansi"
)

// Of the palette used here: ink 1 is red, paper 2 blue (ECMA-48, 8.3.117).
func testPalette() *Palette {
	p := &Palette{}
	p.Ink[1], p.Paper[2] = "31", "44"
	return p
}

func TestEncodeMergesNeighboursOfOneLook(t *testing.T) {
	g := New(6, 2, false)
	g.Text(0, 0, "ab", Style{Ink: 1})
	g.Text(2, 0, "cd", Style{Ink: 1, Paper: 2, Attr: Bold})
	want := "\x1b[31mab\x1b[0;1;31;44mcd\x1b[m  \n      "
	if got := g.Encode(testPalette()); got != want {
		t.Errorf("got %q\nwant %q", got, want)
	}
}

// Colours by themselves are written out (ECMA-48, 8.3.117, and the forms of
// parts 38 and 48 that terminals take); of two looks with all their colours
// set, only what differs.
func TestEncodeColoursByThemselves(t *testing.T) {
	g := New(6, 1, false)
	g.Set(0, 0, '▀', Style{Ink: Full(1, 20, 255), Paper: Full(9, 9, 9)})
	g.Set(1, 0, '▀', Style{Ink: Full(1, 20, 255), Paper: Index(240)})
	g.Set(2, 0, '▀', Style{Ink: Basic(1), Paper: Index(240)})
	g.Set(3, 0, 'x', Style{Ink: Basic(15), Paper: Basic(8)})
	g.Set(4, 0, 'y', Style{Ink: 1, Paper: 2})
	g.Set(5, 0, 'z', Style{Ink: Basic(0)})
	want := "\x1b[38;2;1;20;255;48;2;9;9;9m▀\x1b[48;5;240m▀\x1b[31m▀\x1b[97;100mx\x1b[31;44my\x1b[0;30mz\x1b[m"
	if got := g.Encode(testPalette()); got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

func TestAttributesStayWithoutColour(t *testing.T) {
	g := New(3, 1, false)
	g.Text(0, 0, "a", Style{Ink: 1, Attr: Inverse})
	if got, want := g.Encode(&Palette{}), "\x1b[7ma\x1b[m  "; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestBlankOfOtherInkNeedsNoSequence(t *testing.T) {
	g := New(3, 1, false)
	g.Text(0, 0, "a", Style{Ink: 1})
	g.Text(1, 0, " ", Style{})
	g.Text(2, 0, "b", Style{Ink: 1})
	if got, want := g.Encode(testPalette()), "\x1b[31ma b\x1b[m"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A sheet is as wide as it says whatever is written over whatever, wide
// characters cut in half included. The width is the terminal library's.
func TestRowsKeepTheirWidth(t *testing.T) {
	for x := -3; x < 8; x++ {
		for over := range 8 {
			g := New(8, 1, false)
			g.Text(x, 0, "鉄a鉄", Style{})
			g.Sub(Rect{over, 0, 1, 1}).Text(0, 0, "x鉄", Style{Ink: 1})
			if w := ansi.StringWidth(g.String()); w != 8 {
				t.Errorf("at %d over %d: width %d of %q", x, over, w, g.String())
			}
		}
	}
}

func TestSubClips(t *testing.T) {
	g := New(10, 3, false)
	s := g.Sub(Rect{2, 1, 4, 5})
	if w, h := s.Size(); w != 4 || h != 2 {
		t.Fatalf("size %d x %d", w, h)
	}
	s.Text(-1, 0, "abcdefgh", Style{})
	s.Fill(Rect{-5, 1, 99, 99}, '#', Style{})
	want := "          \n  bcde    \n  ####    "
	if got := g.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestWrapAndCut(t *testing.T) {
	g := New(12, 3, false)
	if n := g.Wrap(Rect{1, 0, 10, 2}, "look in the peep and rod it", Style{}); n != 2 {
		t.Errorf("rows %d", n)
	}
	want := " look in    \n the peep…  \n            "
	if got := g.String(); got != want {
		t.Errorf("got\n%q\nwant\n%q", got, want)
	}
}

func TestAsciiSpelling(t *testing.T) {
	g := New(20, 1, true)
	n := g.Text(0, 0, "Åse ±3 °C 鉄…", Style{})
	if got, want := strings.TrimRight(g.String(), " "), "Ase +-3 C ?..."; got != want || n != len(want) {
		t.Errorf("got %q of %d cells, want %q", got, n, want)
	}
}

// What a person types reaches the screen as printable characters only, each
// row stays as wide as it is by the library's measure of the whole, and an ASCII sheet holds only ASCII.
func FuzzText(f *testing.F) {
	for _, s := range []string{"Reed Hollow", "a\x1b[31mb\x00\r\nc\td", "鉄鉄鉄", "e\u0301\u200d\ufe0f", "\xff\xfe", "\u202eabc", "👩‍🔧 smith", "🇩🇰", "한국", "\u1100\u1161", "ก็"} {
		f.Add(s, 3)
	}
	f.Fuzz(func(t *testing.T, s string, x int) {
		x %= 30
		for _, ascii := range []bool{false, true} {
			g := New(20, 2, ascii)
			g.Text(x, 0, s, Style{Ink: 1})
			g.TextIn(Rect{2, 1, 9, 1}, s, Style{})
			for _, row := range strings.Split(g.String(), "\n") {
				if w := ansi.StringWidth(row); w != 20 {
					t.Errorf("ascii %v: row of %d cells: %q", ascii, w, row)
				}
				for _, c := range row {
					if c < ' ' || c == 0x7f || (c >= 0x80 && c < 0xa0) || (ascii && c > 0x7e) {
						t.Errorf("ascii %v: %q in %q", ascii, c, row)
					}
				}
			}
		}
	})
}

func BenchmarkEncode200x60(b *testing.B) {
	g := New(200, 60, false)
	for y := range 60 {
		for x := 0; x < 200; x += 10 {
			g.Text(x, y, "abc defg ", Style{Ink: Ink(x / 10 % 3)})
		}
	}
	p := testPalette()
	b.ReportAllocs()
	for b.Loop() {
		_ = g.Encode(p)
	}
}

// A picture in which every cell has two colours of its own.
func BenchmarkEncodeGlow40x50(b *testing.B) {
	g := New(40, 50, false)
	for y := range 50 {
		for x := range 40 {
			g.Set(x, y, '▀', Style{Ink: Full(uint8(5*y), uint8(6*x), 40), Paper: Full(uint8(5*y), 200, uint8(6*x))})
		}
	}
	p := testPalette()
	b.ReportAllocs()
	for b.Loop() {
		_ = g.Encode(p)
	}
}

// Rows counts what Wrap takes.
func TestRowsAreThoseOfWrap(t *testing.T) {
	for _, text := range []string{"", "rod", "look in the peep and rod it", "a wordlongerthanaline and more"} {
		for w := 3; w < 30; w++ {
			g := New(40, 40, false)
			if got, want := g.Rows(text, w), g.Wrap(Rect{0, 0, w, 40}, text, Style{}); got != want {
				t.Errorf("%q in %d: %d rows, Wrap takes %d", text, w, got, want)
			}
		}
	}
}

func TestASCIISpellsLikeTheSheet(t *testing.T) {
	if got, want := ASCII("Åse ±3 °C 鉄…"), "Ase +-3 C ?..."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// An arrow is no letter in ASCII either: it would read as another key.
func TestArrowsAreNoLetters(t *testing.T) {
	for _, arrow := range "←→↑↓" {
		if got := ASCII(string(arrow)); strings.ContainsFunc(got, unicode.IsLetter) || strings.Contains(got, "?") {
			t.Errorf("%c is written %q", arrow, got)
		}
	}
}
