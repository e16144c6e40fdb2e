package zones

import "math"

// What can be seen, heard and read at the furnace. The words are those of a look in the journal.

// shades are what the peep shows from hot to cold, with the heat above which it does, K (glow of iron by its colour, common
// practice; from memory, unverified).
var shades = []struct {
	word  string
	above float64
}{{"white", 1540}, {"yellow", 1340}, {"orange", 1180}, {"red", 0}}

// From how far shut on a tuyere looks dim, and dark.
const dim, dark = 0.4, 0.8

// misread tells whether a look is told wrong, with a part of the usual chance.
func (f *Furnace) misread(part float64) bool { return f.eyes.Float64() < part*f.Misread }

// Peep is what is seen down the tuyere. Now and then a look is told a shade off.
func (f *Furnace) Peep() string {
	wrong, hotter := f.misread(1), f.eyes.Float64() < 0.5
	switch {
	case f.shut >= dark:
		return "dark"
	case f.shut >= dim:
		return "dim"
	}
	kelvin := f.zone[burning].kelvin() * (0.88 + 0.12*math.Min(1, 2*f.zone[burning].full(f.floor))) // a hollow glows from its wall alone
	i := 0
	for i < len(shades)-1 && kelvin < shades[i].above {
		i++
	}
	if wrong && hotter {
		i = max(0, i-1)
	} else if wrong {
		i = min(len(shades)-1, i+1)
	}
	if i == 0 && f.ironComes() && f.eyes.Float64() < 0.25 {
		return "drops pass"
	}
	return shades[i].word
}

// ironComes tells whether ore runs down just now.
func (f *Furnace) ironComes() bool {
	for i := range f.zone[burning].packets {
		if f.zone[burning].packets[i].iron > 0.2 {
			return true
		}
	}
	return false
}

// Sound is what is heard of the blast.
func (f *Furnace) Sound() string {
	is, usual := f.air.metered(f), f.BlastPerArea*math.Pi/4*f.BoreCm*f.BoreCm
	switch {
	case is < 0.08*usual:
		return "silent"
	case f.SlagBelow() < 0.015 && f.hearth.kelvin > f.Melts()-60:
		return "gurgle"
	case is < 0.65*f.air.set, f.misread(0.5):
		return "weak"
	}
	return "steady"
}

// Slag is what is seen of it; empty while there is too little.
func (f *Furnace) Slag() string {
	h := &f.hearth
	kg := h.slagKg()
	switch {
	case kg < 1.5:
		return ""
	case f.SlagBelow() < -0.005:
		return "at the tuyere"
	case h.kelvin < f.Melts()-50:
		return "stiff"
	case h.silica+h.rest > 0.75*kg:
		return "pale and glassy"
	case f.misread(0.5):
		return "stiff"
	}
	return "runs"
}

// Flame is what the flame over the top is like.
func (f *Furnace) Flame() string {
	switch carbon := f.top.co + f.top.co2; {
	case f.topOut || carbon <= 0:
		return "none"
	case f.top.co2 > 0.3*carbon: // it burns thin and blue-white
		return "pale"
	}
	return "yellow"
}

// TopAlight tells whether the gas at the top burns.
func (f *Furnace) TopAlight() bool { return !f.topOut }

// Hangs tells whether the burden hangs.
func (f *Furnace) Hangs() bool { return f.hangs > 0 }

// MeterReads is what an instrument reads, l/min, to a per cent; ok is false where there is none.
func (f *Furnace) MeterReads() (lMin float64, ok bool) {
	if f.Meter >= 2./3 {
		return 0, false
	}
	return f.air.metered(f) * (1 + 0.01*f.eyes.NormFloat64()), true
}

// Level is how high the burden stands above the tuyere, m; what hangs stands over its hollow.
func (f *Furnace) Level() float64 {
	v := 0.0
	for i := range f.zone {
		v += f.zone[i].volume()
	}
	if f.hangs > 0 {
		v += math.Max(0, f.stands-f.zone[burning].volume())
	}
	return v / f.floor
}

// Dip is a level measured down from the rim, m above the tuyere as the crew reckons it.
func (f *Furnace) Dip() float64 {
	return math.Max(0, f.Level()-f.Mark()+f.StackCm/100+f.DipScatter/100*f.eyes.NormFloat64())
}
