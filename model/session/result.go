package session

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
)

// Outcome is what came of a smelt that is over, and what was foretold.
type Outcome struct {
	None      bool                        // it was opened, and there was no bloom
	Bloom     entry.Maybe[entry.Kilogram] // as weighed last
	State     entry.PieceState            // in which it was weighed then; "" where that was not keyed
	Never     bool                        // it was not, and it was said that it will not be
	SlagNever bool                        // it was said that the slag, or the rest of it, will not be weighed
	// Charcoal is kg as charged, fill included; Left is what of it was weighed as left over.
	Charcoal    figure.Figure
	Left        entry.Kilogram
	CharcoalDry fold.Mass
	OreDry      figure.Figure               // kg
	Slag        entry.Maybe[entry.Kilogram] // all that was on the scales afterwards, tapped or left in
	Tapped      entry.Kilogram              // weighed as it was tapped, and not afterwards once more
	Lasted      time.Duration               // from light until the bloom was taken out, else until it was over
	Extracted   bool                        // that it was taken out is keyed, with when
	Foretold    figure.Figure               // kg of bloom, as the smelt stood and was known just before
	Chance      figure.Figure               // per cent: that there is none, foretold then
}

// before is how long before the extraction the forecast is read: the entry of the
// extraction itself is not known yet.
const before = time.Millisecond

// Outcome is what came of the smelt; ok is false before it is over: the bloom
// taken out, or the smelt closed.
func (s Session) Outcome() (o Outcome, ok bool) {
	r := s.Reading()
	if !r.Phase.Over() {
		return Outcome{}, false
	}
	o = Outcome{Never: r.BloomNever, Charcoal: r.Figure(figure.CharcoalCharged), CharcoalDry: s.Timeline().Charcoal.Dry, OreDry: r.Figure(figure.OreDry), Lasted: r.Since}
	for l := range s.Of(entry.KindExtract) {
		o.None, o.Extracted, o.Lasted = l.Event.(entry.Extract).None, true, l.At
	}
	tapsAgain := false // what was tapped was on the scales afterwards
	for l := range s.Of(entry.KindWeigh) {
		switch w := l.Event.(entry.Weigh); {
		case w.Closed:
			o.SlagNever = o.SlagNever || w.What == entry.WeighSlag
		case w.What == entry.WeighBloom:
			o.Bloom, o.State = entry.Some(w.Mass), w.State
		case w.What == entry.WeighCharcoalLeft:
			o.Left += w.Mass
		case w.What == entry.WeighSlag:
			o.Slag = entry.Some(o.Slag.Value + w.Mass)
			tapsAgain = tapsAgain || w.Where != entry.SlagOfFurnace
		}
	}
	for l := range s.Of(entry.KindTap) {
		if m := l.Event.(entry.Tap).Mass; m.Known && !tapsAgain {
			o.Tapped += m.Value
		}
	}
	at := max(0, o.Lasted-before)
	then := s.AsOf(s.KnownAt(at), at).Reading()
	o.Foretold, o.Chance = then.Figure(figure.BloomEnd), then.Figure(figure.NoBloom)
	return o, true
}

// Yield is kg of bloom per kg of ore, dry.
func (o Outcome) Yield() (share float64, known bool) {
	if !o.Bloom.Positive() || !o.OreDry.Known() || o.OreDry.P50 <= 0 {
		return 0, false
	}
	return float64(o.Bloom.Value) / o.OreDry.P50, true
}

// Burnt is the charcoal that went into the smelt, kg: what was charged, less what was
// left over.
func (o Outcome) Burnt() (kg float64, known bool) {
	return o.Charcoal.P50 - float64(o.Left), o.Charcoal.Known() && o.Charcoal.P50 > float64(o.Left)
}

// CharcoalPerBloom is kg of charcoal per kg of bloom.
func (o Outcome) CharcoalPerBloom() (kg float64, known bool) {
	burnt, known := o.Burnt()
	if !known || !o.Bloom.Positive() {
		return 0, false
	}
	return burnt / float64(o.Bloom.Value), true
}
