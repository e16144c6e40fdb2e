package furnace_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/plan"
	"chargehand/tui/desk"
	"chargehand/tui/words"
)

// Bores at several heights and what the wall is made of are one line each; a line that
// says neither is refused and stays to be put right.
func TestBoresAndClayAreOneLineEach(t *testing.T) {
	d := desk.Sit(t)
	d.Press("v", "u", "n")
	d.Write("Old")
	d.Press("enter")
	for _, v := range []string{"25", "", "60", "65", "15", "5", "20", "20"} {
		d.Write(v)
		d.Press("enter")
	}
	d.Press("w", "b")
	d.Write("0 30, 20")
	d.Press("enter")
	d.Shows(words.BoresWrong)
	for range len("0 30, 20") {
		d.Press("backspace")
	}
	d.Write("20 28, 0 30, 60 20")
	d.Press("enter")
	d.Shows("0 30, 20 28, 60 20")
	d.Press("r")
	d.Write("clay 2, sand 1, dung 1")
	d.Press("enter")
	d.Shows("the wall: clay 2, sand 1, dung 1")
	d.Press("enter", "m")
	fs := d.M.Shared().House().Furnaces
	if len(fs) != 1 || len(fs[0].Versions) != 2 {
		t.Fatalf("%+v", fs)
	}
	f := fs[0].Last().Furnace
	a := func(v float64) float64 { return math.Pi / 4 * v * v }
	frustum := func(v, e, h float64) float64 { return h / 3 * (a(v) + math.Sqrt(a(v)*a(e)) + a(e)) / 1000 }
	if got, want := plan.ShaftOf(f).Litres, frustum(30, 28, 20)+frustum(28, 20, 40); math.Abs(got-want) > 1e-6*want {
		t.Errorf("%.3f l, by hand %.3f", got, want)
	}
	if len(f.Clay) != 3 || f.Clay[0].Share != 0.5 || f.Clay[2].What != "dung" {
		t.Errorf("%+v", f.Clay)
	}
}

// The arch is keyed with the sizes, and stands with them.
func TestTheArchIsKeyed(t *testing.T) {
	d := built(t)
	d.Script("wy20\n15\n")
	d.Shows("arch: 20 cm wide, 15 cm high")
	d.Script("\nm")
	f := d.M.Shared().House().Furnaces[0].Last().Furnace
	if f.ArchWide.Value != 20 || f.ArchHigh.Value != 15 {
		t.Errorf("%+v", f)
	}
	d.Shows("arch 20 wide and 15 high")
	rows := strings.Split(d.Picture(), "\n")
	first := slices.IndexFunc(rows, func(row string) bool { return strings.Contains(row, "╱╱") })
	nought := slices.IndexFunc(rows, func(row string) bool { return strings.Contains(row, " 0  ") && strings.Contains(row, "═×") })
	if first <= nought || nought < 0 || !strings.Contains(rows[first+2], "╱╱  arch") { // 15 cm over a floor 15 under the tuyere
		t.Errorf("the arch is not drawn up to the tuyere (rows %d, %d):\n%s", first, nought, d.Picture())
	}
}

// Three times that differ leave the blast less sure than three that agree.
func TestTheSpreadOfTheBagTest(t *testing.T) {
	off := func(times string) entry.LitrePerMinute {
		d := built(t)
		d.Script("a240\n" + times)
		b := d.M.Shared().House().Furnaces[0].Last().Furnace.Blower
		if len(b) != 1 || b[0].Volume.Value != 630 {
			t.Fatalf("%+v\n%s", b, d.Picture())
		}
		return b[0].PlusMinus.Value
	}
	if even, odd := off("20\n20\n20\n"), off("17\n20\n23\n"); even < 50 || odd < even+40 {
		t.Errorf("±%v l/min of even times, ±%v of odd ones", even, odd)
	}
}
