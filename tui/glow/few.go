package glow

import "math"

// rung is one of the 256 colours with its lightness.
type rung struct {
	number uint8
	l      float64
}

// ladder holds the colours of 256 that heat climbs. The nearest of the 256 by
// colour would pass through pink; by lightness it goes on rising. Greys are for
// what does not glow.
var ladder = []rung{
	{236, 20}, {237, 24}, {238, 29}, {239, 33},
	{124, 36}, {160, 45}, {166, 55}, {202, 61}, {208, 68}, {214, 77}, {220, 87}, {222, 88}, {229, 98},
}

// greys is how many rungs are grey, and glowsFrom the temperature in Celsius up
// to which they stand.
const (
	greys     = 4
	glowsFrom = 420.0
)

// Index is the number of a temperature in Celsius among the 256 colours.
func Index(celsius float64) uint8 { return IndexLump(celsius, Lumps/2) }

// IndexLump is that of a lump of charcoal; see Lump.
func IndexLump(celsius float64, lump int) uint8 {
	rungs := ladder[greys:]
	if celsius < glowsFrom {
		rungs = ladder[:greys]
	}
	l := Lightness(celsius) + lumpLighter(lump)
	best := rungs[0]
	for _, r := range rungs[1:] {
		if math.Abs(r.l-l) < math.Abs(best.l-l) {
			best = r
		}
	}
	return best.number
}

// Shade is a step of heat in the sixteen colours: a character in an ink on a
// paper, both by their numbers.
type Shade struct {
	Char       rune
	Ink, Paper uint8
}

// sixteen are the steps with their upper ends in Celsius. Each is a mixture of
// a colour and the one before it.
var sixteen = []struct {
	below float64
	Shade
}{
	{250, Shade{'░', 8, 0}}, {420, Shade{'░', 1, 0}}, {540, Shade{'▒', 1, 0}}, {650, Shade{'▓', 1, 0}}, {850, Shade{'█', 1, 0}},
	{930, Shade{'▒', 3, 1}}, {1010, Shade{'▓', 3, 1}}, {1130, Shade{'█', 3, 0}}, {1240, Shade{'▒', 11, 3}}, {1330, Shade{'█', 11, 0}},
	{1400, Shade{'▒', 15, 11}}, {math.Inf(1), Shade{'█', 15, 0}},
}

// Sixteen is the step of a temperature in Celsius in the sixteen colours.
func Sixteen(celsius float64) Shade {
	for _, s := range sixteen {
		if celsius < s.below {
			return s.Shade
		}
	}
	return sixteen[len(sixteen)-1].Shade
}

// inks are the steps without colour: more ink is hotter, on either page. Sparse
// ones are drawn in one cell of four and of two.
var inks = []struct {
	below float64
	char  rune
	every int
}{
	{420, '·', 4}, {650, '·', 1}, {850, '░', 1}, {1010, '▒', 1}, {1200, '▓', 1}, {math.Inf(1), '█', 1},
}

// Ink is the character of a temperature in Celsius where there is no colour, at
// a column and row: cold charcoal is dotted sparsely.
func Ink(celsius float64, x, y int) rune {
	for _, s := range inks {
		if celsius < s.below {
			if (x+2*(y&1))%s.every != 0 {
				return ' '
			}
			return s.char
		}
	}
	return '█'
}

// ramp is the same in ASCII, and rampTo the upper ends of its steps in Celsius.
const ramp = " .:-=+*#%@"

var rampTo = [len(ramp)]float64{60, 250, 400, 550, 700, 850, 1000, 1130, 1250, math.Inf(1)}

// ASCII is the character of a temperature in Celsius in ASCII.
func ASCII(celsius float64) rune {
	for i, to := range rampTo {
		if celsius < to {
			return rune(ramp[i])
		}
	}
	return rune(ramp[len(ramp)-1])
}
