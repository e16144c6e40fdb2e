package truth

import (
	"math"
	"math/rand/v2"
)

// causes are the streams of random numbers, one for each cause.
type causes struct {
	buckets, scoops, lots, splits, flame       *rand.Rand
	blower, leak, hangs, skull, looks, forgets *rand.Rand
	apart                                      float64 // drawn once: whether the bloom holds together
	drifted                                    float64 // s since blower and leak wandered
	shut                                       float64 // how far the tuyere is shut, 0 to 1
	top                                        flame
	hung, slipped, shutLong, flameOutLong      float64
}

func newCauses(number int64) causes {
	return causes{
		buckets: Stream(number, "buckets"), scoops: Stream(number, "scoops"), lots: Stream(number, "lots"), splits: Stream(number, "splits"),
		flame: Stream(number, "flame"), blower: Stream(number, "blower"), leak: Stream(number, "leak"), hangs: Stream(number, "hangs"),
		skull: Stream(number, "skull"), looks: Stream(number, "looks"), forgets: Stream(number, "forgets"), apart: Stream(number, "apart").Float64(),
	}
}

// air is the blast.
type air struct {
	set     float64 // l/min, as the crew set it
	wander  float64 // what the blower gives of that
	leaks   float64 // what of the share that gets in has not leaked since
	share   float64
	through float64 // what the tuyere lets through
	dies    float64 // what a dying blower gives
	cracked float64 // what a crack leaves
}

// metered is what a meter between blower and tuyere reads, l/min.
func (a *air) metered() float64 { return a.set * a.wander * a.through * a.dies }

// flow is what gets into the fire, l/min.
func (a *air) flow() float64 { return a.metered() * a.share * a.leaks * a.cracked }

// OtherLuck lets looks, buckets, lots and what comes and goes fall otherwise than the number has it: the same furnace on another
// day, to tell luck from harm.
func (f *Furnace) OtherLuck(day int64) {
	apart, now := f.apart, f.causes
	f.causes = newCauses(f.number + day<<32)
	f.apart, f.shut, f.top, f.drifted = apart, now.shut, now.top, now.drifted
}

// SetBlast sets the blower so that it gives so many l/min through a clear tuyere; 0 stops it.
func (f *Furnace) SetBlast(lMin float64) {
	f.air.set = lMin
	f.passes()
}

func (f *Furnace) passes() {
	f.air.through = math.Sqrt(math.Max(0, 1-f.shut*f.shut))
	f.air.dies, f.air.cracked = f.mishap.blower(f.seconds), f.mishap.tight(f.seconds)
}

// happens lets a second's chances fall.
func (f *Furnace) happens(dt float64) {
	f.passes()
	f.drifted += dt
	if f.drifted >= 60 {
		root := math.Sqrt(f.drifted / 3600)
		f.air.wander = bound(f.air.wander*math.Exp(f.AirDrift*root*f.blower.NormFloat64()), 0.7, 1.3)
		f.air.leaks = bound(f.air.leaks*math.Exp(f.LeakDrift*root*f.leak.NormFloat64()), 0.6, 1.25)
		f.shuts(f.drifted)
		f.drifted = 0
	}
	if !f.lit {
		return
	}
	jam := f.HangRate * math.Exp(-f.HangLump*1000*f.bore/f.LumpMm) / 3600 * dt
	for i := range f.side {
		c := &f.side[i]
		switch chance := f.hangs.Float64(); {
		case f.mishap.bridges(f.seconds, i) && c.hangs <= 0:
			c.hang(60 * f.mishap.lasts())
		case c.hangs > 0:
			if c.hangs -= dt; c.hangs <= 0 {
				c.slip(f)
			}
		case chance < jam && len(c.slices) > 3:
			c.hang(60 * f.HangMinutes)
		}
		if c.hangs > 0 {
			f.hung += dt
		}
	}
	if f.shut > dim {
		f.shutLong += dt
	}
	if f.top.out {
		f.flameOutLong += dt
	}
}

// shuts lets slag freeze at the tuyere, or flood it.
func (f *Furnace) shuts(dt float64) {
	rate := f.SkullRate * f.skull.ExpFloat64()
	if f.lit && f.came > 0.2 {
		if hot, _ := f.side[0].lowest(0.1); hot < 1500 {
			rate *= 4
		}
		if f.SlagBelow() < 0.01 {
			rate += 4
		}
		f.shut += rate * dt / 3600
	}
	f.shut += f.mishap.skull(f.seconds) * dt
	f.shut = bound(f.shut, 0, 0.985)
}

// hang lets the burden stand for so many s; what is below it burns away.
func (c *column) hang(seconds float64) { c.hangs, c.standing = seconds, c.height() }

// slip lets it fall: the hollow closes.
func (c *column) slip(f *Furnace) {
	c.hangs, c.void = 0, 0
	f.slipped++
}

// below is how much of what lay under the hollow is left, 0 to 1.
func (c *column) below() float64 {
	if c.hangs <= 0 {
		return 1
	}
	burned := c.void / c.area / 0.12 // a hollow of a hand's breadth leaves nothing to glow under it
	return math.Max(0, 1-burned)
}

// hollow keeps a burden that hangs where it stood.
func (c *column) hollow() {
	if c.hangs <= 0 {
		return
	}
	v := 0.0
	for i := range c.slices {
		v += c.slices[i].volume()
	}
	c.void = math.Max(0, c.standing*c.area-v)
}

// Rod clears the tuyere, as far as a rod does.
func (f *Furnace) Rod() {
	leaves := f.RodLeaves
	if f.mishap.is(TuyereBlocked, f.seconds) {
		leaves = math.Max(leaves, 0.5)
	}
	f.shut *= leaves
	f.passes()
}

// Poke settles the burden: what hangs comes down.
func (f *Furnace) Poke() {
	for i := range f.side {
		c := &f.side[i]
		if c.hangs > 0 {
			c.slip(f)
		}
		for j := range c.slices {
			c.slices[j].fuel *= 0.95
		}
	}
	f.mishap.poked(f.seconds)
}

// flame is the gas burning at the top.
type flame struct{ out bool }

func (t *flame) chargeFalls(f *Furnace) {
	if f.flame.Float64() < f.TopOut {
		t.out = true
	}
}

// LightTop lights the gas at the top.
func (f *Furnace) LightTop() { f.top.out = false }

func bound(v, low, high float64) float64 { return math.Max(low, math.Min(high, v)) }
