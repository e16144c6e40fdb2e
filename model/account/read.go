package account

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/house"
	"chargehand/model/ore"
	"chargehand/physics"
)

// endOfTime is after all that was ever keyed.
var endOfTime = time.Date(9999, 1, 1, 0, 0, 0, 0, time.UTC)

// Read gathers what was weighed and assayed of a smelt, from all its entries and
// those of the house, where the lab's answers, the assays of lots and what was
// done with them are kept. The house may be empty.
func Read(entries, ofHouse []entry.Entry) Smelt {
	c := fold.Trace(entries, fold.All, fold.Latest(entries))
	r := reader{smelt: Smelt{OwnSlag: -1}, answers: answers{samples: map[string]entry.Assay{}, lots: map[entry.UID]entry.Assay{}}}
	r.stores = house.Fold(ofHouse, nil, endOfTime)
	if len(entries) > 0 {
		r.smelt.Name = entries[0].Stream
	}
	for _, line := range fold.Lines(ofHouse, fold.All) {
		if !line.Struck() {
			r.answers.read(line.Event)
		}
	}
	for _, line := range fold.InForce(entries, fold.All) {
		r.answers.read(line.Event)
		r.line(line.Event)
	}
	r.slagMade()
	r.charged(c.Materials())
	r.bloom()
	r.crumbs()
	r.slag()
	return r.smelt
}

// reader gathers a smelt.
type reader struct {
	smelt   Smelt
	answers answers
	stores  house.State // for what lots are

	samples                  []entry.Sample
	weighed                  []entry.Weigh
	leftIn                   []entry.LeftIn
	taps, untold             int    // of slag, and those whose mass nobody said
	tapped                   Amount // by the taps that were weighed as they ran
	noBloom                  bool
	slagOfTap, slagOfFurnace int // assays
}

// line reads one entry in force.
func (r *reader) line(ev entry.Event) {
	switch ev := ev.(type) {
	case entry.Light:
		r.leftIn = ev.LeftIn
	case entry.Sample:
		r.samples = append(r.samples, ev)
	case entry.Tap:
		r.taps++
		if !ev.Mass.Known {
			r.untold++
			return
		}
		r.tapped = add(r.tapped, onScale(ev.Mass.Value, entry.None[entry.Kilogram]()))
	case entry.Extract:
		r.noBloom = ev.None
	case entry.Weigh:
		if !ev.Closed { // that it will not be weighed is no weighing
			r.weighed = append(r.weighed, ev)
		}
	}
}

// onScale is a mass as weighed.
func onScale(kg entry.Kilogram, plusMinus entry.Maybe[entry.Kilogram]) Amount {
	if plusMinus.Known {
		return Weighed(float64(kg), float64(plusMinus.Value)/physics.Z90)
	}
	return Weighed(float64(kg), scaleRel*float64(kg))
}

// add adds a weighing to those before it: what comes in several tubs.
func add(sum, more Amount) Amount {
	if !sum.Known() {
		return more
	}
	return sum.plus(more)
}

// weighedAs adds up the weighings of one thing, as several tubs of slag; not
// known when there is none.
func (r *reader) weighedAs(fits func(entry.Weigh) bool) Amount {
	var sum Amount
	for _, w := range r.weighed {
		if fits(w) {
			sum = add(sum, onScale(w.Mass, w.PlusMinus))
		}
	}
	return sum
}

// sampled are the assays of what was sampled in some places of this smelt.
func (r *reader) sampled(places ...Place) Assay {
	var iron, silica []Amount
	for _, s := range r.samples {
		at, said := takenOf(s)
		a, answered := r.answers.samples[entry.LabelOf(s.Label)]
		if s.Label == "" || !said || !answered || !slices.Contains(places, at) {
			continue
		}
		d := dried(a, entry.None[entry.Share](), at != Ore)
		if d.Iron.Known() {
			iron = append(iron, d.Iron)
		}
		if d.Silica.Known() {
			silica = append(silica, d.Silica)
		}
	}
	return Assay{mean(iron), mean(silica)}
}

// or takes what one assay does not say from another.
func (a Assay) or(b Assay) Assay {
	if !a.Iron.Known() {
		a.Iron = b.Iron
	}
	if !a.Silica.Known() {
		a.Silica = b.Silica
	}
	return a
}

// slagMade is what this smelt's slag is made of: as sampled, the slag of the tap
// by itself where it was sampled too.
func (r *reader) slagMade() {
	usual := Assay{slagIron, slagSilica}
	tap, furnace := r.sampled(TapSlag), r.sampled(FurnaceSlag, Slag)
	r.slagOfFurnace = r.smelt.assay(furnace.or(tap).or(usual))
	r.slagOfTap = r.slagOfFurnace
	if tap != (Assay{}) && furnace != (Assay{}) {
		r.slagOfTap = r.smelt.assay(tap.or(furnace).or(usual))
	}
	r.smelt.OwnSlag = r.slagOfFurnace
}

// charged takes what went in.
func (r *reader) charged(all []fold.Material) {
	var coal, carbon, ash []Amount // of each charcoal, kg
	for _, m := range all {
		dry := amountOf(m.Dry)
		if m.What == entry.Charcoal {
			c, a := carbonShare, ashShare
			if m.Lot.Carbon.Known {
				c = Weighed(float64(m.Lot.Carbon.Value), assaySD)
			}
			if m.Lot.Ash.Known {
				a = Weighed(float64(m.Lot.Ash.Value), assaySD/4)
			}
			coal, carbon, ash = append(coal, dry), append(carbon, dry.of(c)), append(ash, dry.of(a))
			continue
		}
		st := Stream{Name: m.Lot.Name, Mass: dry}
		lot := r.answers.of(m.Lot)
		switch m.What {
		case entry.Ore:
			st.Place = Ore
			st.Of = r.smelt.assay(lot.or(r.sampled(Ore)).or(Assay{Iron: r.usualIron(m.Lot)}))
		case entry.SeedSlag:
			st.Place = SeedSlag
			st.Of = r.smelt.assay(lot.or(Assay{seedIron, slagSilica}))
		case entry.ReturnedSlag:
			st.Place, st.Of = ReturnedSlag, r.slagOfTap
		case entry.Fragments:
			st.Place = FragmentsIn
			st.Of = r.smelt.assay(Assay{Iron: fragmentShare})
		default:
			st.Place = Flux
			st.Of = r.smelt.assay(lot)
		}
		r.smelt.In = append(r.smelt.In, st)
	}
	for _, left := range r.leftIn { // of the smelt before: iron went in with it that nobody weighed
		switch left {
		case entry.LeftSlag:
			r.smelt.In = append(r.smelt.In, Stream{Place: ReturnedSlag, Of: r.smelt.assay(Assay{slagIron, slagSilica})})
		case entry.LeftBloom:
			r.smelt.In = append(r.smelt.In, Stream{Place: FragmentsIn, Of: r.smelt.assay(Assay{Iron: fragmentShare})})
		}
	}
	r.smelt.CarbonShare, r.smelt.AshShare = carbonShare, ashShare
	if len(coal) > 0 {
		r.smelt.Charcoal = total(coal...)
	}
	if c := r.smelt.Charcoal; c.Known() && c.Value > 0 {
		r.smelt.CarbonShare = Amount{total(carbon...).Value / c.Value, carbonShare.SD, total(carbon...).Standing}
		r.smelt.AshShare = Amount{total(ash...).Value / c.Value, ashShare.SD, total(ash...).Standing}
	}
	left := r.weighedAs(func(w entry.Weigh) bool { return w.What == entry.WeighCharcoalLeft })
	r.smelt.CharcoalLeft = left.times(1 / (1 + physics.DefaultCharcoalMoisture))
	r.smelt.Wall = r.weighedAs(func(w entry.Weigh) bool { return w.What == entry.WeighWall })
}

// usualIron is what is taken for the iron of ore that nobody assayed: as the stores take it for
// the lot, and roasted, as ore mostly goes into a furnace, of one that they do not know.
func (r *reader) usualIron(charged entry.Lot) Amount {
	roasted, signs := true, charged.Signs
	if l, ok := r.stores.Lot(string(charged.ID())); ok {
		roasted, signs = l.Roasted(), l.Signs
	}
	b := ore.Iron(roasted, signs)
	return between(b.P10, b.P50, b.P90)
}

// amountOf is a mass of the fold. One that rests on a measure nobody weighed is
// assumed, one that holds an unknown part not known.
func amountOf(m fold.Mass) Amount {
	switch {
	case m.Unknown:
		return Amount{}
	case m.Guessed:
		return Taken(m.Kg, sqrt(m.Variance()))
	}
	return Weighed(m.Kg, sqrt(m.Variance()))
}

// firmness orders the states in which a bloom is weighed: cold counts, with the
// loose slag knocked off; hot holds some of it still, compacted less.
var firmness = map[entry.PieceState]int{entry.Cold: 3, "": 3, entry.Hot: 2, entry.Compacted: 1}

// bloom takes the bloom: of each piece the last weighing in its firmest state.
// Weighed in water too, its density tells something of its metal.
func (r *reader) bloom() {
	best := map[entry.UID]entry.Weigh{}
	var pieces []entry.UID
	metal := metalShare
	for _, w := range r.weighed {
		if w.What != entry.WeighBloom {
			continue
		}
		b, ok := best[w.Piece]
		if !ok {
			pieces = append(pieces, w.Piece)
		}
		if !ok || firmness[w.State] >= firmness[b.State] {
			best[w.Piece] = w
		}
		if w.InWater.Known {
			if d := MetalByDensity(float64(w.Mass), float64(w.InWater.Value), w.Soaked); d.Known() {
				metal = d
				r.smelt.BloomSlag = slagBeside(d)
			}
		}
	}
	if s := r.sampled(Bloom).Iron; s.Known() { // a corner of it is not the whole
		metal = Taken(s.Value, max(s.SD, metalSampleSD))
	}
	st := Stream{Place: Bloom, Of: r.smelt.assay(Assay{Iron: metal})}
	for _, p := range pieces {
		st.Mass = add(st.Mass, onScale(best[p].Mass, best[p].PlusMinus))
	}
	if r.noBloom && len(pieces) == 0 {
		st.Mass = Weighed(0, 0)
	}
	r.smelt.Out = append(r.smelt.Out, st)
}

// crumbs takes the fragments that came out.
func (r *reader) crumbs() {
	m := r.weighedAs(func(w entry.Weigh) bool { return w.What == entry.WeighFragments })
	if m.Known() {
		share := r.sampled(FragmentsOut).Iron
		if !share.Known() {
			share = fragmentShare
		}
		r.smelt.Out = append(r.smelt.Out, Stream{Place: FragmentsOut, Mass: m, Of: r.smelt.assay(Assay{Iron: share})})
	}
}

// slag takes the slag. Slag of no said place is all of it, or, where the taps
// were weighed as they ran, what was left in the furnace. Beside what was left in
// the furnace it is all of it too, if it is not less: the rest was tapped.
func (r *reader) slag() {
	where := func(at entry.SlagWhere) Amount {
		return r.weighedAs(func(w entry.Weigh) bool { return w.What == entry.WeighSlag && w.Where == at })
	}
	tap, furnace, any := where(entry.SlagOfTap), where(entry.SlagOfFurnace), where("")
	if !tap.Known() && r.untold == 0 {
		tap = r.tapped
	}
	if furnace.Known() && any.Known() && any.Value >= furnace.Value {
		if !tap.Known() && any.Value > furnace.Value {
			tap = any.minus(furnace)
		}
		any = Amount{}
	}
	out := func(at Place, m Amount, of int) {
		r.smelt.Out = append(r.smelt.Out, Stream{Place: at, Mass: m, Of: of})
	}
	whole := any.Known() && !tap.Known() && !furnace.Known()
	if tap.Known() || r.taps > 0 && !whole {
		out(TapSlag, tap, r.slagOfTap)
	}
	switch {
	case furnace.Known() && any.Known():
		out(FurnaceSlag, furnace, r.slagOfFurnace)
		out(Slag, any, r.slagOfFurnace)
	case furnace.Known():
		out(FurnaceSlag, furnace, r.slagOfFurnace)
	case any.Known() && tap.Known():
		out(FurnaceSlag, any, r.slagOfFurnace)
	case any.Known():
		out(Slag, any, r.slagOfFurnace)
	case tap.Known() || r.taps > 0:
		out(FurnaceSlag, Amount{}, r.slagOfFurnace)
	default:
		out(Slag, Amount{}, r.slagOfFurnace)
	}
}
