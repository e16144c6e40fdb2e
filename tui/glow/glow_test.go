package glow

import (
	"fmt"
	"math"
	"testing"
)

// lightness is the L* of a colour: from sRGB to luminance (IEC 61966-2-1) and
// to CIELAB (CIE 15), the way back of what the package does.
func lightness(c Colour) float64 {
	r, g, b := parts(c)
	return ofLuminance(0.2126*r + 0.7152*g + 0.0722*b)
}

func ofLuminance(y float64) float64 {
	if y > 216.0/24389 {
		return 116*math.Cbrt(y) - 16
	}
	return 24389.0 / 27 * y
}

func parts(c Colour) (r, g, b float64) {
	part := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return part(c.R), part(c.G), part(c.B)
}

// sight takes linear sRGB to what one without one kind of cones sees: Machado,
// Oliveira and Fernandes, A Physiologically-based Model for Simulation of Color
// Vision Deficiency, IEEE Trans. Visualization and Computer Graphics 15 (2009)
// 1291, their matrices for severity 1.0.
var sights = map[string][3][3]float64{
	"all cones":      {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"no red cones":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"no green cones": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"no blue cones":  {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

func seen(c Colour, sight [3][3]float64) float64 {
	r, g, b := parts(c)
	y := 0.0
	for i, row := range sight {
		v := row[0]*r + row[1]*g + row[2]*b
		y += [3]float64{0.2126, 0.7152, 0.0722}[i] * min(max(v, 0), 1)
	}
	return ofLuminance(y)
}

// Heat gets lighter from each step to the next, for every kind of sight and every
// shade of a lump: never darker, and by less than 3, from about 25 to about 92.
// These are all the colours that heat is painted in: each half of a cell has one
// of them.
func TestHeatGetsLighterForEveryEye(t *testing.T) {
	for name, sight := range sights {
		for lump := range Lumps {
			painted := func(c float64) float64 { return seen(Lump(c, lump), sight) }
			before := painted(Coldest)
			first := before
			for i := 1; i < steps; i++ {
				c := Coldest + Step*float64(i)
				l := painted(c)
				if l < before || l > before+3 {
					t.Errorf("%s, lump %d: at %v C from L* %.3f to %.3f", name, lump, c, before, l)
				}
				if c >= 120 && l <= painted(c-100) {
					t.Errorf("%s, lump %d: at %v C no lighter than 100 K colder", name, lump, c)
				}
				before = l
			}
			if lump != Lumps/2 {
				continue
			}
			if math.Abs(first-25) > 1 || math.Abs(before-92) > 2.5 {
				t.Errorf("%s: from L* %.1f to %.1f", name, first, before)
			}
			t.Logf("%s: L* %.1f to %.1f", name, first, before)
		}
	}
}

// The steps end where the table does.
func TestStepsFillTheTable(t *testing.T) {
	if end := Coldest + Step*float64(steps-1); end != Hottest || stepOf(Hottest) != steps-1 || stepOf(Hottest+500) != steps-1 {
		t.Errorf("the last step is of %v C", end)
	}
}

// The colours are those that were drawn and looked at, to one step of 8 bits.
func TestColoursAsTheyWereDrawn(t *testing.T) {
	for c, want := range map[float64]uint32{
		20: 0x3f3b37, 150: 0x453e3a, 250: 0x4c433f, 350: 0x564a45, 500: 0x765048, 600: 0x974f44, 700: 0xb5503f, 800: 0xcf5538,
		900: 0xdf652e, 1000: 0xea7a22, 1100: 0xf19218, 1150: 0xf39f23, 1200: 0xf5ab2d, 1250: 0xf7b738, 1300: 0xf7c451,
		1350: 0xf8d169, 1400: 0xf9dc88, 1450: 0xfae7a6,
	} {
		got := At(c)
		for i, pair := range [][2]uint8{{got.R, uint8(want >> 16)}, {got.G, uint8(want >> 8)}, {got.B, uint8(want)}} {
			if math.Abs(float64(pair[0])-float64(pair[1])) > 1 {
				t.Errorf("%v C: %02x%02x%02x, want %06x (part %d)", c, got.R, got.G, got.B, want, i)
			}
		}
	}
}

// A colour in which nothing was cut keeps its lightness through sRGB and back.
func TestFittingKeepsTheLightness(t *testing.T) {
	for l := 5.0; l <= 95; l += 5 {
		for h := 0.0; h < 360; h += 15 {
			if got := lightness(LCh{l, 60, h}.Colour()); math.Abs(got-l) > 0.8 {
				t.Errorf("L* %v, hue %v: %v", l, h, got)
			}
		}
	}
}

// A lump is lighter or darker by up to 2.5, a heat of its own by no more.
func TestLumpsAreOneHeat(t *testing.T) {
	for c := 100.0; c <= 1400; c += 50 {
		for lump := range Lumps {
			if d := lightness(Lump(c, lump)) - Lightness(c); math.Abs(d-lumpLighter(lump)) > 0.8 {
				t.Errorf("%v C, lump %d: %.2f lighter", c, lump, d)
			}
		}
	}
}

// usual256 is the usual value of one of the 256 colours: a cube of six steps and
// a row of greys (common practice; a terminal may show others).
func usual256(n uint8) Colour {
	if n >= 232 {
		v := 8 + 10*(n-232)
		return Colour{v, v, v}
	}
	step := func(i uint8) uint8 {
		if i == 0 {
			return 0
		}
		return 55 + 40*i
	}
	n -= 16
	return Colour{step(n / 36), step(n / 6 % 6), step(n % 6)}
}

// The rungs have the lightness that is said of them, and heat climbs them.
func TestLadderOf256(t *testing.T) {
	for _, r := range ladder {
		if got := lightness(usual256(r.number)); math.Abs(got-r.l) > 1 {
			t.Errorf("%d has L* %.1f, said %v", r.number, got, r.l)
		}
	}
	place := map[uint8]int{}
	for i, r := range ladder {
		place[r.number] = i
	}
	used, before := map[uint8]bool{}, 0
	for c := Coldest; c <= Hottest; c += 5 {
		n := Index(c)
		if place[n] < before {
			t.Errorf("at %v C back from rung %d to %d", c, before, place[n])
		}
		before, used[n] = place[n], true
		if grey := place[n] < greys; grey != (c < glowsFrom) {
			t.Errorf("at %v C: colour %d", c, n)
		}
	}
	if len(used) < 9 {
		t.Errorf("only %d rungs are used", len(used))
	}
}

// coverage is the share of a cell that a shade covers.
var coverage = map[rune]float64{' ': 0, '░': 0.25, '▒': 0.5, '▓': 0.75, '█': 1}

// usual16 are the lightnesses of the colours used, by the usual values of the
// terminal library (0 black, 1 red, 3 yellow, 8 grey, 11 and 15 bright).
var usual16 = map[uint8]float64{0: 0, 1: lightness(Colour{128, 0, 0}), 3: lightness(Colour{128, 128, 0}), 8: 54, 11: lightness(Colour{255, 255, 0}), 15: 100}

// In the sixteen colours each step looks different from the last, and from where
// things glow on each is lighter.
func TestStepsOfSixteen(t *testing.T) {
	seen, before, last := map[Shade]bool{}, -1.0, Shade{}
	for c := Coldest; c <= Hottest+50; c += 5 {
		s := Sixteen(c)
		if s == last {
			continue
		}
		if seen[s] {
			t.Errorf("%v C looks like a colder step: %v", c, s)
		}
		l := coverage[s.Char]*usual16[s.Ink] + (1-coverage[s.Char])*usual16[s.Paper]
		if c > 400 && l < before-0.5 {
			t.Errorf("%v C: %v is darker (%.0f) than the step before (%.0f)", c, s, l, before)
		}
		seen[s], before, last = true, l, s
	}
	if len(seen) != len(sixteen) {
		t.Errorf("%d of %d steps seen", len(seen), len(sixteen))
	}
}

// Without colour more ink is hotter, in blocks and in ASCII.
func TestInkRisesWithHeat(t *testing.T) {
	blocks := map[rune]int{' ': 0, '·': 1, '░': 2, '▒': 3, '▓': 4, '█': 5}
	amount := func(c float64) (n int) {
		for x := range 4 {
			for y := range 2 {
				n += blocks[Ink(c, x, y)]
			}
		}
		return n
	}
	last, lastASCII, steps := 0, 0, 0
	for c := Coldest; c <= Hottest; c += 10 {
		a := 0
		for i, r := range ramp {
			if r == ASCII(c) {
				a = i
			}
		}
		if amount(c) < last || a < lastASCII {
			t.Errorf("at %v C less ink", c)
		}
		if a > lastASCII {
			steps++
		}
		last, lastASCII = amount(c), a
	}
	if steps != len(ramp)-1 {
		t.Errorf("ASCII has %d steps", steps)
	}
}

func ExampleAt() {
	fmt.Printf("%02x%02x%02x\n", At(1200).R, At(1200).G, At(1200).B)
	// Output: f5ab2d
}
