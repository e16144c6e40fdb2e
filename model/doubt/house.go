package doubt

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/physics"
)

// The doubts about what is keyed of the house, in the order of HouseTable.
const (
	NoShare        Name = "no_share"
	TooMuchIron    Name = "too_much_iron"
	IronOfRoasted  Name = "iron_of_roasted"
	IronDisagrees  Name = "iron_disagrees"
	SumIsOff       Name = "sum_is_off"
	SumChecksNone  Name = "sum_checks_none"
	MoreComesOut   Name = "more_comes_out"
	WetterThanMost Name = "wetter_than_most"
	StackBreaks    Name = "stack_breaks"
	PieceGrew      Name = "piece_grew"
	PieceHoldsMore Name = "piece_holds_more"
	DenserThanIron Name = "denser_than_iron"
	PrintDisagrees Name = "print_disagrees"
)

// HouseRow is a doubt about what is keyed of the house, held against the house as it
// stands.
type HouseRow struct {
	Name  Name
	Finds func(entry.Event, house.State) (Doubt, bool)
}

// InHouse are the doubts about an event of the house. Of an amendment they are those
// about what it says.
func InHouse(ev entry.Event, h house.State) []Doubt {
	if a, ok := ev.(entry.Amend); ok {
		ev = a.Event
	}
	if ev == nil {
		return nil
	}
	var ds []Doubt
	for _, row := range HouseTable {
		if d, found := row.Finds(ev, h); found {
			d.Name = row.Name
			ds = append(ds, d)
		}
	}
	return ds
}

// HouseTable has every doubt about the house once.
var HouseTable = []HouseRow{
	{NoShare, assayed(physics.NoShare)},
	{TooMuchIron, assayed(physics.IronImpossible, physics.IronNeedsMagnetite)},
	{IronOfRoasted, assayed(physics.IronNeedsRoast)},
	{IronDisagrees, assayed(physics.IronDisagrees)},
	{SumIsOff, assayed(physics.SumLacksLoss, physics.SumLacksOxygen, physics.SumLacksOxides, physics.SumIronTwice, physics.SumOxygenCounted, physics.SumFerric, physics.SumTooMuch)},
	{SumChecksNone, byDifference},
	{MoreComesOut, moreComesOut},
	{WetterThanMost, wetter},
	{StackBreaks, stackBreaks},
	{FurnaceSize, furnaceOff},
	{PieceGrew, grew},
	{PieceHoldsMore, holdsMore},
	{DenserThanIron, denser},
	{PrintDisagrees, printOff},
}

// assayed finds those doubts of an assay that physics has.
func assayed(kinds ...physics.AssayDoubtKind) func(entry.Event, house.State) (Doubt, bool) {
	return func(ev entry.Event, h house.State) (Doubt, bool) {
		a, any := assayIn(ev, h)
		if !any {
			return Doubt{}, false
		}
		for _, d := range a.Doubts() {
			for _, k := range kinds {
				if d.Kind == k {
					return Doubt{Said: d.Stated, Against: d.Other, Assay: d}, true
				}
			}
		}
		return Doubt{}, false
	}
}

// byDifference: of two columns, as of a pure mineral, nobody takes one by difference.
func byDifference(ev entry.Event, h house.State) (Doubt, bool) {
	a, _ := assayIn(ev, h)
	columns := len(a.Parts)
	if a.LossKnown {
		columns++
	}
	d, found := assayed(physics.SumByDifference)(ev, h)
	return d, found && columns > 2
}

// assayIn is the assay that an event states, as physics has it: of slag where its lot is.
func assayIn(ev entry.Event, h house.State) (physics.Assay, bool) {
	switch ev := ev.(type) {
	case entry.Assay:
		l, _ := h.Lot(string(ev.Lot))
		return AssayOf(ev, l.Of() == entry.LotIronSlag || ev.Sample != ""), l.Of() != entry.LotCharcoal
	case entry.SampleResult:
		return AssayOf(ev.Assay, true), true
	case entry.LotStored:
		if ev.Lot.Assay != nil {
			return AssayOf(*ev.Lot.Assay, ev.Lot.Of() == entry.LotIronSlag), true
		}
	}
	return physics.Assay{}, false
}

var bases = map[entry.AssayBasis]physics.Basis{
	entry.AsDug: physics.Dug, entry.AsDried: physics.Dried, entry.AsRoasted: physics.Roasted, entry.AsIgnited: physics.Ignited, entry.Normalised: physics.Normalised,
}

// AssayOf is an assay as physics has it.
func AssayOf(a entry.Assay, slag bool) physics.Assay {
	p := physics.Assay{Slag: slag, Parts: map[string]float64{}, Loss: float64(a.Loss.Value), LossKnown: a.Loss.Known, Basis: bases[a.Basis]}
	for name, part := range a.Parts {
		p.Parts[name] = float64(part.Percent)
	}
	return p
}

// gain is from which share on what comes out is told to be more than went in: what a
// scale outdoors is out by (assumed).
const gain = 1.03

// moreComesOut: a roast, a sieve or a hammer makes nothing.
func moreComesOut(ev entry.Event, _ house.State) (Doubt, bool) {
	d, ok := ev.(entry.Deed)
	if !ok || d.Does == entry.CountedAgain || d.Does == entry.Washed || d.Does == entry.Mixed && len(d.In) < 2 {
		return Doubt{}, false // washed ore may weigh more, wet
	}
	in, known := weights(d.In)
	out, too := weights(d.Out)
	return Doubt{Said: out, Against: in, Of: string(d.Does)}, known && too && in > 0 && out > gain*in
}

// weights is what amounts weigh, where all were weighed.
func weights(as []entry.Amount) (kg float64, known bool) {
	for _, a := range as {
		if !a.Mass.Known {
			return 0, false
		}
		kg += float64(a.Mass.Value)
	}
	return kg, len(as) > 0
}

// wettest is the moisture, on the dry mass, beyond which a lot of it is told to be: bog
// ore as it is dug holds 10 to 45 % of its weight, which is up to 0.82 (common practice).
const wettest = 1.0

func wetter(ev entry.Event, _ house.State) (Doubt, bool) {
	l, ok := ev.(entry.LotStored)
	m := float64(l.Lot.Moisture.Value)
	return Doubt{Said: 100 * m / (1 + m), Against: 100 * wettest / (1 + wettest), Of: l.Lot.Name}, ok && l.Lot.Moisture.Known && m > wettest
}

// furnaceOff is the same doubt as of the furnace that a fire is lit in.
func furnaceOff(ev entry.Event, _ house.State) (Doubt, bool) {
	b, ok := ev.(entry.FurnaceBuilt)
	if !ok {
		return Doubt{}, false
	}
	return sizeOff(b.Furnace)
}

// stackWithin is how far the dry wood in a stacked cubic metre may differ from what the
// same lot held before: two weighings of a stack (assumed).
const stackWithin = 0.05

// stackBreaks: wood that dries or gets wet in its stack keeps its dry mass, so that its
// weight a stacked cubic metre follows from its water.
func stackBreaks(ev entry.Event, h house.State) (Doubt, bool) {
	l, ok := ev.(entry.LotStored)
	was, there := h.Lot(string(l.Lot.ID()))
	is := l.Lot
	if !ok || !there || was.Of() != entry.LotWood || !is.BulkDensity.Known || !is.Moisture.Known || !was.BulkDensity.Known || !was.Moisture.Known || is.Moisture == was.Moisture {
		return Doubt{}, false
	}
	follows := float64(was.BulkDensity.Value) * (1 + float64(is.Moisture.Value)) / (1 + float64(was.Moisture.Value))
	d := Doubt{Said: float64(is.BulkDensity.Value), Against: follows, Of: is.Name}
	return d, math.Abs(math.Log(d.Said/d.Against)) > stackWithin
}
