package doubt

import (
	"math"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
)

// How far off is a slip. They are wide: a doubt that is wrong costs a key at the fire.
const (
	jumpsUp   = 5.  // of a blast, over the last
	jumpsDown = 10. // and under it: a decimal place
	measureBy = 5.  // of a measure weighed anew, either way
	airBy     = 5.  // of the first blast, over and under what is usual for the bore

	// mostIron is the iron in magnetite, the richest ore there is: 3 x 55.845 in 231.533
	// (standard atomic weights).
	mostIron = 0.724
	// leastMetal is the metal in a bloom at least, 0.6 to 0.9 (common practice).
	leastMetal = 0.6
	mostSlag   = 2.    // slag over the ore that it came from: more than all of it and the wall
	heaviest   = 50.   // kg that one person lifts (common practice)
	densest    = 300.  // kg/m3 of charcoal as it lies (common practice: 150 to 300)
	shaftBy    = 2.    // charcoal of one entry over a full shaft: some burns while it is filled
	richest    = 5.    // ore over charcoal in one charge; published smelts end below 2
	hottest    = 1700. // C: charcoal in cold blast burns cooler (common practice)

	glows = 525. // C at which a solid begins to glow (Draper 1847, from memory): a peep that burns does

	// No day for work at a fire is colder or warmer, C (assumed): nearer to the fire a
	// thermometer reads its heat, and not the air that the blower draws.
	coldestDay, hottestDay = -30., 45.
)

// The least and the most of a furnace, cm; such furnaces are 20 to 40 wide and 35 to 110
// high over the tuyere.
var (
	bores  = [2]float64{7, 120}
	stacks = [2]float64{12, 330}
)

// Table has every doubt once. Of several about one number the first is the one told.
var Table = []Row{
	{BelowFloor, dip(func(down float64, f entry.Furnace, _ entry.Phase) (Doubt, bool) {
		floor := float64(f.Rim.Value + f.TuyereBase.Value)
		return Doubt{Said: down, Against: floor}, f.Rim.Known && f.TuyereBase.Known && down > floor
	})},
	{BelowTuyere, dip(func(down float64, f entry.Furnace, p entry.Phase) (Doubt, bool) {
		rim := float64(f.Rim.Value)
		floor := rim + float64(f.TuyereBase.Value)
		sinks := p == entry.BurnsDown || p.Over() // then the burden does
		return Doubt{Said: down, Against: rim}, f.Rim.Known && down > rim && !sinks && (!f.TuyereBase.Known || down <= floor)
	})},
	{AboveRim, about(func(d entry.Dip, r *figure.Reading) (Doubt, bool) {
		rim := r.Light.Furnace.Rim
		return Doubt{Said: float64(d.AboveTuyere.Value), Against: float64(rim.Value)}, d.AboveTuyere.Known && rim.Known && d.AboveTuyere.Value > rim.Value
	})},
	{BlastJumps, about(func(b entry.Blast, r *figure.Reading) (Doubt, bool) {
		v, last := volume(b, r), lastVolume(r)
		return Doubt{Said: v, Against: last}, v > 0 && last > 0 && (v >= jumpsUp*last || v <= last/jumpsDown)
	})},
	{BlastForBore, about(func(b entry.Blast, r *figure.Reading) (Doubt, bool) {
		v, bore := volume(b, r), float64(r.Light.Furnace.Bore.Value)
		area := math.Pi / 4 * bore * bore
		d, off := Doubt{Said: v, Against: rule.LeastAir * area}, v < rule.LeastAir*area/airBy
		if most := rule.MostAir * area; v > most*airBy {
			d.Against, off = most, true
		}
		return d, v > 0 && area > 0 && lastVolume(r) == 0 && off
	})},
	{MoreThanOre, about(func(w entry.Weigh, r *figure.Reading) (Doubt, bool) {
		ore, known := oreIn(r)
		iron := w.What == entry.WeighBloom || w.What == entry.WeighFragments
		return Doubt{Said: float64(w.Mass), Against: ore.P50}, iron && known && float64(w.Mass)*leastMetal > ore.P90*mostIron
	})},
	{SlagOverOre, func(ev entry.Event, r *figure.Reading) (Doubt, bool) {
		ore, known := oreIn(r)
		var slag float64
		switch ev := ev.(type) {
		case entry.Weigh:
			if ev.What == entry.WeighSlag {
				slag = float64(ev.Mass)
			}
		case entry.Tap:
			slag = float64(ev.Mass.Value)
		}
		return Doubt{Said: slag, Against: ore.P50}, known && slag > mostSlag*ore.P90
	}},
	{WeighsNothing, about(func(w entry.Weigh, _ *figure.Reading) (Doubt, bool) {
		some := w.What == entry.WeighMeasure || w.What == entry.WeighBloom
		return Doubt{Of: of(w)}, some && !w.Closed && w.Mass == 0
	})},
	{MeasureJumps, about(func(w entry.Weigh, r *figure.Reading) (Doubt, bool) {
		was := weighs(r, w.Name)
		d := Doubt{Said: float64(w.Mass), Against: was, Of: w.Name}
		return d, w.What == entry.WeighMeasure && w.Mass > 0 && was > 0 && (d.Said >= measureBy*was || d.Said <= was/measureBy)
	})},
	{TooHeavyToLift, func(ev entry.Event, r *figure.Reading) (Doubt, bool) {
		switch ev := ev.(type) {
		case entry.Weigh:
			return Doubt{Said: float64(ev.Mass), Of: ev.Name}, ev.What == entry.WeighMeasure && ev.Mass > heaviest
		case entry.Light:
			for _, m := range ev.Measures {
				if m.Mass.Known && m.Mass.Value > heaviest {
					return Doubt{Said: float64(m.Mass.Value), Of: m.Name}, true
				}
			}
		}
		return Doubt{}, false
	}},
	{MoreThanShaft, func(ev entry.Event, r *figure.Reading) (Doubt, bool) {
		charcoal, known := massOf(parts(ev), entry.Charcoal, r)
		holds := shaftHolds(r.Light.Furnace)
		return Doubt{Said: charcoal, Against: holds}, known && holds > 0 && charcoal > shaftBy*holds
	}},
	{OreOverCharcoal, func(ev entry.Event, r *figure.Reading) (Doubt, bool) {
		ore, known := massOf(parts(ev), entry.Ore, r)
		charcoal, too := massOf(parts(ev), entry.Charcoal, r)
		return Doubt{Said: ore, Against: charcoal}, known && too && charcoal > 0 && ore > richest*charcoal
	}},
	{HotterThanFire, about(func(t entry.Temperature, _ *figure.Reading) (Doubt, bool) {
		return Doubt{Said: float64(t.Degrees), Against: hottest}, t.Degrees > hottest
	})},
	{ColderThanGlow, about(func(t entry.Temperature, r *figure.Reading) (Doubt, bool) {
		burns := r.Phase == entry.MainBurn || r.Phase == entry.OreOff
		return Doubt{Said: float64(t.Degrees), Against: glows}, burns && t.Where == entry.WherePeep && t.Degrees < glows
	})},
	{AirOutside, func(ev entry.Event, _ *figure.Reading) (Doubt, bool) {
		outside := fold.OutsideBy(ev)
		c := float64(outside.Value)
		d := Doubt{Said: c, Against: hottestDay}
		if c < coldestDay {
			d.Against = coldestDay
		}
		return d, outside.Known && (c < coldestDay || c > hottestDay)
	}},
	{TuyereTooFar, about(func(t entry.Tuyere, r *figure.Reading) (Doubt, bool) {
		bore := r.Light.Furnace.Bore
		return Doubt{Said: float64(t.Proud.Value), Against: float64(bore.Value)}, t.Proud.Known && bore.Known && t.Proud.Value >= bore.Value
	})},
	{TuyereTooWide, about(func(t entry.Tuyere, r *figure.Reading) (Doubt, bool) {
		bore := r.Light.Furnace.Bore
		return Doubt{Said: float64(t.Bore.Value), Against: 10 * float64(bore.Value)}, t.Bore.Known && bore.Known && float64(t.Bore.Value) >= 10*float64(bore.Value)
	})},
	{FurnaceSize, about(func(l entry.Light, _ *figure.Reading) (Doubt, bool) { return sizeOff(l.Furnace) })},
}

// flares and narrows are the widest and the narrowest bore at the mark, as a share of the one at the tuyere, that is not asked
// about: built shafts run straight or narrow upwards (common practice; the shares assumed).
const flares, narrows = 1.5, 0.4

// tuyeres are the narrowest and the widest bore of a tuyere that is not asked about, mm: a published one has 20 mm (data sheet
// of 30 November 2016, Markewitz), those of natural draught are wider; what is typed in cm for mm falls out (the ends assumed).
var tuyeres = [2]float64{10, 120}

// TuyereMM is what a doubt about the bore of a tuyere is of: it is in mm.
const TuyereMM = "tuyere bore"

// sizeOff finds a bore or a shaft that no such furnace has.
func sizeOff(f entry.Furnace) (Doubt, bool) {
	if v := float64(f.Bore.Value); f.Bore.Known && (v < bores[0] || v > bores[1]) {
		return Doubt{Said: v, Of: "bore"}, true
	}
	for _, b := range f.Bores {
		if v := float64(b.Bore); v < bores[0] || v > bores[1] {
			return Doubt{Said: v, Of: "bore"}, true
		}
	}
	if at, top := float64(f.Bore.Value), float64(f.BoreTop.Value); f.Bore.Known && f.BoreTop.Known && (top > flares*at || top < narrows*at) {
		return Doubt{Said: top, Against: at, Of: "bore at the mark"}, true
	}
	if v := float64(f.TuyereBore.Value); f.TuyereBore.Known && (v < tuyeres[0] || v > tuyeres[1]) {
		return Doubt{Said: v, Of: TuyereMM}, true
	}
	v := float64(f.Stack.Value)
	return Doubt{Said: v, Of: "shaft"}, f.Stack.Known && (v < stacks[0] || v > stacks[1])
}

// about makes a row of what it finds in events of one kind.
func about[E entry.Event](finds func(E, *figure.Reading) (Doubt, bool)) func(entry.Event, *figure.Reading) (Doubt, bool) {
	return func(ev entry.Event, r *figure.Reading) (Doubt, bool) {
		e, ok := ev.(E)
		if !ok {
			return Doubt{}, false
		}
		return finds(e, r)
	}
}

// dip makes a row of a dip down from the rim.
func dip(finds func(down float64, f entry.Furnace, p entry.Phase) (Doubt, bool)) func(entry.Event, *figure.Reading) (Doubt, bool) {
	return about(func(d entry.Dip, r *figure.Reading) (Doubt, bool) {
		if !d.BelowRim.Known {
			return Doubt{}, false
		}
		return finds(float64(d.BelowRim.Value), r.Light.Furnace, r.Phase)
	})
}

// of is what a weighing is of, as a person calls it.
func of(w entry.Weigh) string {
	if w.Name != "" {
		return w.Name
	}
	return string(w.What)
}

// volume is what blows by an observation, l/min; 0 where it does not tell.
func volume(b entry.Blast, r *figure.Reading) float64 {
	if b.Read.With != "" && !b.Volume.Known {
		v, err := fold.Volume(b.Read, fold.AirAt(r.Light.Furnace, entry.None[entry.Celsius]()))
		if err != nil {
			return 0
		}
		return float64(v)
	}
	return float64(b.Volume.Value)
}

// lastVolume is what blew last, l/min; 0 where that is not known.
func lastVolume(r *figure.Reading) float64 {
	if v := volume(r.Blast, r); v > 0 {
		return v
	}
	if air := r.Figure(figure.Air); air.Known() {
		return air.P50
	}
	return 0
}

// oreIn is the ore that went in, kg as charged; not where nobody keyed any, where some
// was never weighed, or where other iron went in with it.
func oreIn(r *figure.Reading) (kg figure.Figure, known bool) {
	if slices.Contains(r.Light.LeftIn, entry.LeftSlag) || slices.Contains(r.Light.LeftIn, entry.LeftBloom) {
		return figure.Figure{}, false
	}
	for _, c := range r.Charges {
		for _, p := range c.Parts {
			switch p.What {
			case entry.SeedSlag, entry.ReturnedSlag, entry.Fragments:
				return figure.Figure{}, false
			}
		}
	}
	ore := r.Figure(figure.OreCharged)
	return ore, ore.Known() && ore.P90 > 0
}

// weighs is what a measure weighs, kg; 0 where nobody knows.
func weighs(r *figure.Reading, name string) float64 {
	for _, m := range r.Measures {
		if m.Name == name {
			return float64(m.Mass.Value)
		}
	}
	return 0
}

// massOf is the mass of one material among parts, kg, where all of it is known.
func massOf(ps entry.Parts, w entry.What, r *figure.Reading) (kg float64, known bool) {
	for _, p := range ps {
		if p.What != w {
			continue
		}
		m := float64(p.Mass.Value)
		if !p.Mass.Known {
			m = float64(p.Count.Value) * weighs(r, p.Measure)
		}
		if m == 0 && !p.None() {
			return 0, false
		}
		kg, known = kg+m, true
	}
	return kg, known
}

// shaftHolds is the charcoal that fills the furnace from floor to rim at most, kg; 0 where
// it was not measured.
func shaftHolds(f entry.Furnace) float64 {
	if !f.Bore.Known || !f.Rim.Known {
		return 0
	}
	const cm3 = 1e-6
	bore := max(float64(f.Bore.Value), float64(f.BoreTop.Value))
	return math.Pi / 4 * bore * bore * float64(f.Rim.Value+f.TuyereBase.Value) * cm3 * densest
}
