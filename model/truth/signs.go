package truth

import "math"

// What can be seen, heard and read at the furnace, as a person sees it: signs, not the state. The words are those of a look
// in the journal; package rehearse hands them on.

// From how far shut on a tuyere looks dim, and dark.
const dim, dark = 0.40, 0.80

// shades are what the peep shows from hot to cold, and below which heat in K each follows the one before (as at a furnace:
// white above 1250 C, yellow to 1050, orange to 900; from memory, unverified).
var shades = []struct {
	word  string
	above float64
}{{"white", 1523}, {"yellow", 1323}, {"orange", 1173}, {"red", 0}}

// Peep is what is seen down the tuyere. Now and then a look is told a shade off.
func (f *Furnace) Peep() string {
	off := 0
	if f.looks.Float64() < f.Misread {
		off = 1 - 2*f.looks.IntN(2)
	}
	switch {
	case f.shut >= dark:
		return "dark"
	case f.shut >= dim:
		return "dim"
	}
	kelvin, stands := f.side[0].lowest(0.12)
	if stands <= 0 {
		kelvin = 0
	}
	kelvin *= 1 - 0.1*(1-f.side[0].below())
	i := 0
	for i < len(shades)-1 && kelvin < shades[i].above {
		i++
	}
	i = max(0, min(len(shades)-1, i+off))
	if i == 0 && f.hearth.came > 0.3 && f.looks.Float64() < 0.3 {
		return "drops pass"
	}
	return shades[i].word
}

// Sound is what is heard of the blast.
func (f *Furnace) Sound() string {
	is := f.air.metered()
	usual := f.BlastPerArea * math.Pi / 4 * f.BoreCm * f.BoreCm
	switch {
	case f.air.set <= 0 || is < 0.08*usual:
		return "silent"
	case f.SlagBelow() < 0.015 && f.hearth.kelvin > f.Melts()-60:
		return "gurgle"
	case is < 0.65*f.air.set:
		return "weak"
	case f.looks.Float64() < f.Misread/2:
		return "weak"
	}
	return "steady"
}

// Slag is what is seen of it at the peep or in the tap; empty while there is too little.
func (f *Furnace) Slag() string {
	h := &f.hearth
	o := h.slag()
	melts := f.Melts()
	switch {
	case o.Sum() < 1.5:
		return ""
	case f.SlagBelow() < -0.005:
		return "at the tuyere"
	case h.kelvin < melts-50:
		return "stiff"
	case o.FerrousShare() < 0.22 && h.arrives > 0.8:
		return "pale and glassy"
	}
	if f.looks.Float64() < f.Misread/2 {
		return "stiff"
	}
	return "runs"
}

// Flame is what the flame over the top is like.
func (f *Furnace) Flame() string {
	if f.top.out || f.air.flow() <= 0 {
		return "none"
	}
	co, co2 := 0.0, 0.0
	for i := range f.side {
		co, co2 = co+f.side[i].top.co, co2+f.side[i].top.co2
	}
	if co2 > 0.12*(co+co2) {
		return "pale"
	}
	return "yellow"
}

// Hangs tells whether one side hangs: that it comes down is heard.
func (f *Furnace) Hangs() bool { return f.side[0].hangs > 0 || f.side[1].hangs > 0 }

// TopAlight tells whether the gas at the top burns.
func (f *Furnace) TopAlight() bool { return !f.top.out }

// MeterReads is what an instrument reads, l/min, to a per cent; ok is false where there is none.
func (f *Furnace) MeterReads() (lMin float64, ok bool) {
	if f.Meter >= 0.7 {
		return 0, false
	}
	return f.air.metered() * (1 + 0.01*f.looks.NormFloat64()), true
}

// Level is how high the burden stands above the tuyere as an eye at the rim has it: the mean of the two sides, m.
func (f *Furnace) Level() float64 { return (f.side[0].height() + f.side[1].height()) / 2 }

// Dip is a level measured down from the rim, m above the tuyere as the crew reckons it.
func (f *Furnace) Dip() float64 {
	return math.Max(0, f.Level()-f.Mark()+f.StackCm/100+f.DipScatter/100*f.looks.NormFloat64())
}

// Truth is what a person never sees: for the end of a rehearsal, and for scores.
type Truth struct {
	StackCm  float64 // mean height of the burden over the tuyere
	HearthC  float64
	OreDown  float64 // per cent of the ore's iron that has come down
	DownKg   float64 // kg of that iron
	ColdMin  float64 // minutes so far that the hearth was below working heat with ore in it
	FloodMin float64 // minutes so far that slag stood at the tuyere
	HungMin  float64
	Metal    float64 // share of metal in what comes down
	PeepC    float64
	TopC     float64
	Bloom    float64 // kg of iron come together
	AirLMin  float64 // that gets into the fire
	Shut     float64 // how far the tuyere is shut, 0 to 1
	SlagCm   float64 // how far the slag stands below the tuyere
	OverC    float64 // how far the hearth is above where its slag melts, K
	Hangs    bool    // one side hangs
	TopOut   bool    // the gas at the top does not burn
}

// Look is the state as it truly is.
func (f *Furnace) Look() Truth {
	t := Truth{
		StackCm: 100 * f.Level(), HearthC: f.hearth.kelvin - 273.15, ColdMin: f.hearth.coldSeconds / 60, FloodMin: f.hearth.lostSeconds / 60,
		HungMin: f.hung / 60, Metal: f.hearth.arrives, Bloom: f.BloomIron(), AirLMin: f.air.flow(),
	}
	t.Shut, t.SlagCm, t.OverC, t.TopOut = f.shut, 100*f.SlagBelow(), f.hearth.kelvin-f.Melts(), f.top.out
	t.DownKg = f.hearth.came
	t.Hangs = f.Hangs()
	if f.hearth.oreIn > 0 {
		t.OreDown = 100 * f.hearth.came / f.hearth.oreIn
	}
	hot, _ := f.side[0].lowest(0.12)
	t.PeepC = hot - 273.15
	t.TopC = (f.side[0].top.kelvin+f.side[1].top.kelvin)/2 - 273.15
	return t
}
