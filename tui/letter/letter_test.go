package letter

import (
	"strings"
	"testing"

	"chargehand/tui/cell"
)

// Every letter is seven points high and four to seven wide, rises to the top or
// hangs from it, and is no other.
func TestFaceIsWhole(t *testing.T) {
	seen := map[string]rune{}
	for c, l := range face {
		w := wide(l)
		if w < 2 || w > 7 {
			t.Errorf("%q is %d points wide", c, w)
		}
		shape := strings.Join(l[:], "|")
		if o, twice := seen[shape]; twice {
			t.Errorf("%q and %q look alike", c, o)
		}
		seen[shape] = c
	}
	for c := 'A'; c <= 'Z'; c++ {
		if _, ok := face[c]; !ok {
			t.Errorf("no %q", c)
		}
	}
	for c := '0'; c <= '9'; c++ {
		if _, ok := face[c]; !ok {
			t.Errorf("no %q", c)
		}
	}
}

// Upright strokes are two points wide: no point stands alone between blanks
// across, but for the foot of a comma.
func TestStrokesAreTwoWide(t *testing.T) {
	for c, l := range face {
		if c == ',' || c == 'W' || c == 'M' {
			continue // the middle of W and M is one point, closed in above or below
		}
		for y, row := range l {
			for x := range row {
				alone := at(l, x, y) && (x == 0 || !at(l, x-1, y)) && !at(l, x+1, y)
				if alone {
					t.Errorf("%q: a stroke of one point at %d, %d", c, x, y)
				}
			}
		}
	}
}

func TestSizesAreWhatIsDrawn(t *testing.T) {
	for _, s := range []Scale{Small, Middle, Large} {
		for _, text := range []string{"1 BUCKET", "W", "BLAST LOST", "10 OF 11", "19 %"} {
			w, h := s.Size(text)
			g := cell.New(w+4, h+2, false)
			s.Text(g, 1, 1, text, cell.Style{}, false)
			rows := strings.Split(g.String(), "\n")
			if strings.TrimSpace(rows[0]) != "" || strings.TrimSpace(rows[h+1]) != "" || strings.TrimSpace(rows[1]) == "" {
				t.Errorf("%v %q: not %d rows high:\n%s", s, text, h, g)
			}
			right := 0
			for _, row := range rows {
				right = max(right, len([]rune(strings.TrimRight(row, " "))))
			}
			if right != w+1 {
				t.Errorf("%v %q: %d columns, said %d:\n%s", s, text, right-1, w, g)
			}
		}
	}
}

// The next charge fits beside the minutes: its words into 38 columns.
func TestTheNextChargeFits(t *testing.T) {
	for w := 1; w < 150; w += 7 {
		for h := 1; h < 30; h += 2 {
			s, ok := Fitting("1 BUCKET", w, h)
			if tw, th := s.Size("1 BUCKET"); ok && (tw > w || th > h) {
				t.Errorf("%v is %d x %d, room %d x %d", s, tw, th, w, h)
			}
		}
	}
	for _, text := range []string{"BUCKETS", "SCOOPS"} {
		if s, ok := Fitting(text, 42, 4); !ok || s != Small {
			t.Errorf("%q fits at %v, %v", text, s, ok)
		}
	}
	if s, ok := Fitting("1 BUCKET", 120, 7); !ok || s != Middle {
		t.Errorf("in 120 x 7: %v, %v", s, ok)
	}
}

func TestCapitals(t *testing.T) {
	for in, want := range map[string]bool{"4 scoops": true, "1 Körbe": true, "1 鉄かご": false, "a_b": false, "?": true} {
		if got, all := Capitals(in); all != want {
			t.Errorf("%q: %q, %v", in, got, all)
		}
	}
	if got, _ := Capitals("Körbe"); got != "KORBE" {
		t.Errorf("got %q", got)
	}
}

func TestASCIIIsASCII(t *testing.T) {
	g := cell.New(80, 12, true)
	Small.Text(g, 0, 0, "BUCKET", cell.Style{}, true)
	Digits{11, 18}.Draw(g, 20, 0, "12", cell.Style{}, true)
	got := g.String()
	for _, c := range got {
		if c > 0x7e {
			t.Fatalf("%q in\n%s", c, got)
		}
	}
	if !strings.Contains(got, `_#"""`) || !strings.Contains(got, "####") {
		t.Errorf("got\n%s", got)
	}
}

// No two digits look alike at any size that is drawn, whole or in halves.
func TestDigitsDiffer(t *testing.T) {
	for _, d := range []Digits{{5, 8}, {6, 12}, {7, 12}, {9, 18}, {11, 18}, {20, 30}, {26, 30}} {
		for _, ascii := range []bool{false, true} {
			if ascii && d.H < 10 {
				continue // whole cells need five rows
			}
			seen := map[string]rune{}
			for c := '0'; c <= '9'; c++ {
				g := cell.New(d.W, (d.H+1)/2, ascii)
				d.Draw(g, 0, 0, string(c), cell.Style{}, ascii)
				if o, twice := seen[g.String()]; twice {
					t.Errorf("%v ascii %v: %q and %q look alike:\n%s", d, ascii, c, o, g)
				}
				seen[g.String()] = c
			}
		}
		if w := d.Width("88"); w != 2*d.W+d.gap() {
			t.Errorf("%v: two digits are %d wide", d, w)
		}
	}
}
