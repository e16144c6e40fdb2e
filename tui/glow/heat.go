package glow

import (
	"math"
	"sync"
)

// The temperatures in Celsius between which the table runs: below, all is as
// cold; above, nothing is whiter.
const Coldest, Hottest = 20.0, 1450.0

// Step is how finely heat is told apart, in K: less than half a unit of
// lightness, so that neighbours of nearly one heat share their colour.
const Step = 10.0

// Of is the colour of a temperature before it is fitted into what can be shown.
func Of(celsius float64) LCh {
	t := min(max(celsius, Coldest), Hottest)
	return LCh{L: Lightness(t), C: between(chroma, t), H: between(hue, t)}
}

// Lightness is the L* of a temperature in Celsius.
func Lightness(celsius float64) float64 {
	share := min(max((celsius-Coldest)/(Hottest-Coldest), 0), 1)
	return 25 + 67*share*math.Sqrt(share)
}

// point is a value at a temperature in Celsius; between two it goes straight.
type point struct{ celsius, value float64 }

// The chroma of dark red is kept a little low: without red cones red looks darker,
// and with more of it what 8 bits round made a step of 10 K fall there.
var chroma = []point{{20, 3}, {350, 6}, {500, 18.5}, {650, 43}, {800, 62}, {950, 72}, {1100, 76}, {1250, 70}, {1350, 56}, {1450, 34}}

var hue = []point{{20, 70}, {350, 48}, {500, 36}, {650, 35}, {800, 41}, {950, 54}, {1100, 68}, {1250, 80}, {1350, 88}, {1450, 95}}

func between(points []point, t float64) float64 {
	for i := 1; i < len(points); i++ {
		if a, b := points[i-1], points[i]; t <= b.celsius {
			return a.value + (b.value-a.value)*(t-a.celsius)/(b.celsius-a.celsius)
		}
	}
	return points[len(points)-1].value
}

// Lumps are how many shades a lump of charcoal may have: by its place it is up
// to lumpDepth lighter or darker than its heat.
const Lumps = 5

const lumpDepth = 2.5

// shades is every colour of the table, by step of heat and lump, made when the
// first is asked for.
var shades = sync.OnceValue(func() *[steps][Lumps]Colour {
	var all [steps][Lumps]Colour
	for i := range all {
		own := Of(Coldest + Step*float64(i))
		for lump := range all[i] {
			all[i][lump] = own.Darker(-lumpLighter(lump)).Colour()
		}
	}
	return &all
})

const steps = int((Hottest-Coldest)/Step) + 1

func stepOf(celsius float64) int {
	return int((min(max(celsius, Coldest), Hottest)-Coldest)/Step + 0.5)
}

func lumpLighter(lump int) float64 { return lumpDepth * (2*float64(lump)/(Lumps-1) - 1) }

// At is the colour of a temperature in Celsius.
func At(celsius float64) Colour { return Lump(celsius, Lumps/2) }

// Lump is the colour of a lump of charcoal of a temperature in Celsius; lump is
// 0 for a dark one to Lumps-1 for a light one.
func Lump(celsius float64, lump int) Colour {
	return shades()[stepOf(celsius)][min(max(lump, 0), Lumps-1)]
}
