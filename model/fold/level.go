package fold

import (
	"math"
	"sort"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// How fast charcoal burns where this smelt has not told yet, in kg of dry
// charcoal an hour: published run averages lie between 5.9 and 18.1 minutes a
// kilogram (overviews of 2008 to 2022 by Markewitz), 3.3 to 10.2 kg/h.
const (
	usualBurn   = 6.5
	usualBurnSD = 2.7
)

const (
	// steadyRel is how far the next interval of a steady smelt lies from its
	// last ones: about 15 % over the published logs of testdata (chargehand hindcast).
	steadyRel = 0.15
	// smoulder is the share of the burn that goes on with no blast: a guess.
	smoulder = 0.1
	// fillsTo is how much of the stack a fill of unknown amount takes up, with
	// its spread: a guess.
	fillsTo, fillsToSD = 0.75, 0.25
)

// ShaftBore is the inside of the furnace from the tuyere to the charging mark,
// and whether it is known well enough to reckon with.
func ShaftBore(f entry.Furnace) (physics.Bore, bool) {
	b := physics.Bore{
		Bottom: metres(f.Bore.Value), Top: metres(f.BoreTop.Or(f.Bore.Value)), Height: metres(f.Stack.Value),
	}
	return b, b.Validate() == nil
}

func metres(c entry.Centimetre) float64 { return float64(c) / 100 }

// walk is the estimator on its way through the lines: charges add and are a look at
// the mark, dips are a better one, a poke drops the burden without burning any of
// it, and between them the burden sinks as fast as this smelt burns. Every method is
// told the smelt as it is up to then.
type walk struct {
	bore   physics.Bore
	bed    physics.Bed
	level  physics.Level
	at     time.Duration
	laid   bool    // something lies in the shaft
	passed int     // charges before at
	sunk   sinking // since the last line that told of the level
	strays strays  // how unevenly this smelt goes
}

// newWalk begins with the fire in an empty shaft, but unsure of that by half the
// stack: what is burned to heat the furnace is seldom written down.
func newWalk(bore physics.Bore, bed physics.Bed) walk {
	w := walk{bore: bore, bed: bed, level: physics.LevelAt(0, bore.Height/2)}
	w.sunk.begin(w.level)
	return w
}

// take is one line. It tells whether the line says anything of the level; one
// that does not leaves no trace, not even in how the sums are rounded.
func (w *walk) take(s *State, l Line, scale scales) bool {
	switch l.Event.(type) {
	case entry.Charge:
		w.sinkTo(s, l.At)
		if s.Awaits(l.At) {
			w.level = w.sunk.came()
		}
	case entry.Fill, entry.Poke, entry.Dip:
		w.sinkTo(s, l.At)
		w.level = w.believed(s)
	case entry.Rod, entry.Blast: // they tell nothing of the level, but what a dip said of the pace holds no more
		if w.sunk.found.weight == 0 {
			return false
		}
		w.sinkTo(s, l.At)
		w.level = w.believed(s)
		w.sunk.done()
	default:
		return false
	}
	switch ev := l.Event.(type) {
	case entry.Fill:
		under := w.level.Height
		w.lay(scale, ev.Parts, l.At)
		if l.Remark != "" || 2*w.level.Height-under >= w.bore.Height { // else as much again has room: it is one of several
			w.look(l.Remark)
		}
	case entry.Charge:
		under := w.level.Height
		w.lay(scale, ev.Parts, l.At)
		if ev.Parts.Holds(entry.Charcoal) {
			w.sunk.charged(w.level.Height-under, s.Pace.Began() != l.At)
			w.look(l.Remark)
			w.sunk.top = min(w.level.Height, w.bore.Height)
			last, earlier := w.lastPaces(s, l)
			w.strays.interval(last, earlier)
			w.sunk.interval(w.level, last, earlier)
		}
	case entry.Poke:
		w.level = w.level.Poke(physics.PokeDrop, physics.PokeDropSD)
		w.sunk.laid = w.sunk.laid.Poke(physics.PokeDrop, physics.PokeDropSD)
		w.sunk.done()
	case entry.Dip:
		h, ok := dipped(ev, s.Light.Furnace)
		if !ok {
			return false
		}
		w.strays.dip(w.level, h)
		w.sunk.dip(h)
		w.level, w.laid = w.level.Observe(h, physics.DipSD), true
	}
	w.level.Height = min(w.level.Height, Rim(s.Light.Furnace))
	w.sunk.begin(w.level)
	return true
}

// believed is the level where the walk is.
func (w *walk) believed(s *State) physics.Level {
	if !s.Awaits(w.at) {
		return w.level
	}
	return w.sunk.waited()
}

// Rim is how high above the tuyere, in m, a burden can stand: as high as the rim, or
// where that was not given a heap over the charging mark.
func Rim(f entry.Furnace) float64 {
	if rim := metres(f.Rim.Value); rim >= metres(f.Stack.Value) {
		return rim
	}
	return metres(f.Stack.Value) + physics.HeapedSD
}

// lay puts parts on top of the burden. A part of unknown mass leaves the height
// as unsure as it may be.
func (w *walk) lay(scale scales, parts entry.Parts, at time.Duration) {
	coal, dry := scale.sum(parts, entry.Charcoal, at)
	ore, _ := scale.sum(parts, entry.Ore, at)
	stack := w.bore.Height
	if coal.Unknown {
		w.level = physics.LevelAt(fillsTo*stack, fillsToSD*stack)
	} else if volume, err := w.bed.Volume(dry.Kg, ore.Kg); err == nil {
		thick := w.bore.Thickness(w.level.Height, volume)
		rel := physics.CharcoalBulkRelSD
		w.level = w.level.Add(thick, thick*rel)
	}
	w.laid = true
}

// look takes a fill or a charge as filling to the mark, unless it was said otherwise.
func (w *walk) look(remark entry.LevelRemark) {
	switch remark {
	case entry.NotToMark:
	case entry.Heaped:
		w.level = w.level.Observe(w.bore.Height+physics.MarkSD, physics.HeapedSD)
	default:
		w.level = w.level.Observe(w.bore.Height, physics.MarkSD*w.strays.eye())
	}
}

// sinkTo lets the burden sink until a moment.
func (w *walk) sinkTo(s *State, to time.Duration) {
	for w.laid && w.at < to {
		next := s.nextBlast(w.at, to)
		kgh, sd, ore := w.burn(s)
		if b, ok := s.BlastAt(w.at); ok && b.Off {
			kgh, sd = kgh*smoulder, kgh*smoulder
		}
		if fall, err := physics.FallPerKg(w.bore, w.level.Height, w.bed, ore); err == nil {
			perS := physics.FromKgPerHour(1) * fall
			dt := (next - w.at).Seconds()
			w.level = w.level.Descend(kgh*perS, sd*perS, dt)
			w.sunk.fell, w.sunk.sd = w.sunk.fell+kgh*perS*dt, w.sunk.sd+sd*perS*dt
		}
		w.at = next
	}
	w.at = max(w.at, to)
}

// burn is how fast charcoal burns just then, in kg dry an hour, by the charges
// of this smelt until then, and the ratio of ore to charcoal at which the burden
// leaves.
func (w *walk) burn(s *State) (kgh, sd, ore float64) {
	for w.passed < len(s.Charges) && s.Charges[w.passed].At <= w.at {
		w.passed++
	}
	b, ok := s.burning(w.passed)
	coal := b.Charcoal.Dry
	if ok && coal.Kg > 0 && !b.Ore.Dry.Unknown {
		ore = b.Ore.Dry.Kg / coal.Kg
	}
	if ok && !coal.Unknown {
		more := s.blowsMore(b, w.at)
		rate := coal.Kg / b.Hours * more
		return rate, rate * math.Hypot(steadyRel*w.strays.pace(), byBlastSD*math.Log(more)), ore
	}
	return usualBurn, usualBurnSD, ore
}

// lastPaces are the paces of the last interval and of those before it that the burn goes by, over that of all of them, as a
// charge has just come; zeros where they are too few.
func (w *walk) lastPaces(s *State, l Line) (last, earlier float64) {
	n := sort.Search(len(s.Charges), func(i int) bool { return s.Charges[i].At > l.At })
	all, ok := s.burning(n)
	one, ok1 := s.burnOver(1, n)
	if !ok || !ok1 || all.Charcoal.Dry.Unknown || all.Charcoal.Dry.Kg <= one.Charcoal.Dry.Kg || all.Hours <= one.Hours || one.Charcoal.Dry.Kg <= 0 {
		return 0, 0
	}
	rate := all.Charcoal.Dry.Kg / all.Hours
	return one.Charcoal.Dry.Kg / one.Hours / rate, (all.Charcoal.Dry.Kg - one.Charcoal.Dry.Kg) / (all.Hours - one.Hours) / rate
}

// byBlastSD is how sure it is that charcoal burns in step with a metered blast, as the standard deviation of the exponent: air is
// what it burns in, but of two published logs that changed it for good one went with a power of 1.0 (log 03, 400 to 465 l/min)
// and one with -0.4 (log 05, 655 to 794).
const byBlastSD = 0.7

// blowsMore is by how many times more blows at a moment than while something burned, where both were metered; else 1.
func (s *State) blowsMore(b Burn, at time.Duration) float64 {
	is, ok := s.BlastAt(at)
	if !ok || is.Off || !is.Volume.Positive() {
		return 1
	}
	litres, known := s.Blown(b.From, b.To)
	if was := litres / (60 * b.Hours); known && was > 0 {
		return float64(is.Volume.Value) / was
	}
	return 1
}

// dipped is the height of a dip above the tuyere in metres. Down from the rim
// means nothing while the rim's height is unknown.
func dipped(d entry.Dip, f entry.Furnace) (float64, bool) {
	switch {
	case d.AboveTuyere.Known:
		return metres(d.AboveTuyere.Value), true
	case d.BelowRim.Known && f.Rim.Known:
		return max(0, metres(f.Rim.Value-d.BelowRim.Value)), true
	}
	return 0, false
}

// Bed is how the charcoal of this smelt packs: by its lot when that was
// measured.
func (s State) Bed() physics.Bed {
	bed := physics.DefaultBed()
	for _, l := range s.Light.Lots {
		if l.What == entry.Charcoal && l.BulkDensity.Known {
			bed.CharcoalBulk = float64(l.BulkDensity.Value)
		}
	}
	return bed
}
