package figure

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

// stack sets the height of the burden above the tuyere.
func stack(r *Reading, s fold.State) {
	if !s.HasLevel || s.Phase == entry.Extracted || s.Phase == entry.Closed {
		return
	}
	rim := 100 * fold.Rim(s.Light.Furnace)
	b := physics.Normal(s.Level.Height, math.Hypot(s.Level.SD()*math.Pow(max(1, s.Uneven), unevenPower), tuyereSD)).AtLeast(0).Scale(100)
	b.P50, b.P90 = min(b.P50, rim), min(b.P90, rim)
	r.Figures[StackHeight] = Figure{Band: b, Basis: r.furnaceBasis()}
	if s.LevelAt >= 0 && s.At-s.LevelAt < freshDip {
		r.Figures[StackHeight].Basis = Measured
	}
}

// tuyereSD is how well it is known, in m, how high rim and mark stand above the tuyere, which no look down the shaft tells: a
// centimetre of the tape on rough clay, and a centimetre for the tip of a tuyere that slopes by 20 degrees and burns back by
// some three (assumed).
const tuyereSD = 0.014

// unevenPower is with what power of how uneven a smelt is its level is in more doubt than the estimator has it, which goes by what
// the pace does: on a day on which nothing keeps step, less does of what it takes for the same on all days (fitted here, on
// made-up furnaces 1001 to 1020 of both truths with double of their noise).
const unevenPower = 0.4

// lostShare is the share of the stack from which on a doubt to either side leaves
// nothing to act on: the burden may as well be at the mark as half way down (assumed).
const lostShare = 1.0 / 3

// StackLost tells whether the level is so doubtful that it is as good as not known,
// and wants a dip.
func (r *Reading) StackLost() bool {
	f, stack := r.Figures[StackHeight], r.Light.Furnace.Stack
	return f.Known() && stack.Positive() && (f.P90-f.P10)/2 > lostShare*float64(stack.Value)
}

// freshDip is how long a dip is called measured: about as long as the burden
// takes to sink by what a dip is good for.
const freshDip = 2 * time.Minute

// layers stands the charges on each other as they now are in the shaft: from
// the top of the burden downwards, newest first, each as thick as what it holds,
// until the tuyere cuts the lowest. Charcoal burns at the tuyere, so what is
// above it is whole; ore settles into the charcoal and is reckoned with the bed.
// What is left below the charges is the fill.
func layers(s fold.State) []Layer {
	bore, ok := fold.ShaftBore(s.Light.Furnace)
	if !ok || !s.HasLevel || s.Phase == entry.Extracted || s.Phase == entry.Closed {
		return nil
	}
	bed := s.Bed()
	top := s.Level.Height
	var ls []Layer
	for i := len(s.Charges) - 1; i >= 0 && top > thinnest; i-- {
		c := s.Charges[i]
		volume, err := bed.Volume(c.Charcoal.Dry.Kg, c.Ore.Dry.Kg)
		if err != nil || volume <= 0 || c.Charcoal.Charged.Unknown {
			continue
		}
		bottom := top + bore.Thickness(top, -volume)
		left := 1.0
		if bottom < 0 {
			left = bore.VolumeBetween(0, top) / volume
			bottom = 0
		}
		ls = append(ls, Layer{
			Charge: c.Number, Seq: c.Seq, Top: 100 * top, Bottom: 100 * bottom, Age: s.At - c.At,
			Charcoal: ofMass(c.Charcoal.Charged.Scaled(left), Estimated), Ore: ofMass(c.Ore.Charged.Scaled(left), Estimated),
		})
		top = bottom
	}
	if top > thinnest {
		ls = append(ls, fillLayer(s, bore, bed, top))
	}
	return ls
}

// thinnest is the thinnest layer worth showing, in metres.
const thinnest = 0.002

// fillLayer is what is left of the fill: as much charcoal as the room below the
// charges holds.
func fillLayer(s fold.State, bore physics.Bore, bed physics.Bed, top float64) Layer {
	kg := bore.VolumeBetween(0, top) * bed.CharcoalBulk
	l := Layer{Top: 100 * top, Charcoal: ofMass(fold.Mass{Kg: kg, Common: kg * physics.CharcoalBulkRelSD}, Estimated)}
	l.Ore = ofMass(fold.Mass{}, Estimated)
	for line := range s.Lines.All() {
		if _, ok := line.Event.(entry.Fill); ok {
			l.Seq, l.Age = line.Seq(), s.At-line.At
			break
		}
	}
	return l
}
