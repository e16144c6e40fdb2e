package entry

import "strings"

// LotStored keeps a lot in the house. Said again of the same uid it describes
// the lot anew; a mass then is what there is of it from that time on. In a smelt it is
// a copy of a lot that the smelt was not lit with: a mass is what the stores had of it
// then, and counts for the smelt alone.
type LotStored struct {
	Lot Lot `json:"lot"`
}

// MeasureNamed keeps a measure in the house.
type MeasureNamed struct {
	Measure Measure `json:"measure"`
}

// Deed is something done with the stores. It takes from lots and gives to lots.
type Deed struct {
	UID     UID          `json:"uid,omitempty"`
	Does    Does         `json:"does"`
	In      []Amount     `json:"in,omitempty"`   // taken
	Out     []Amount     `json:"out,omitempty"`  // given
	Fuel    []Amount     `json:"fuel,omitempty"` // burnt for it
	People  Maybe[Count] `json:"people,omitzero"`
	Begin   When         `json:"begin,omitzero"`
	End     When         `json:"end,omitzero"`
	Hours   Maybe[Hour]  `json:"hours,omitzero"` // of each
	Weather string       `json:"weather,omitempty"`
	Note    string       `json:"note,omitempty"`
	Cost    *Cost        `json:"cost,omitempty"`
}

// Does is what a deed does.
type Does string

// What can be done with the stores.
const (
	Dug          Does = "dug"
	Bought       Does = "bought"
	Given        Does = "given"
	Washed       Does = "washed"
	PickedOver   Does = "picked over"
	Roasted      Does = "roasted"
	Crushed      Does = "crushed"
	Broken       Does = "broken"
	Sieved       Does = "sieved"
	Burnt        Does = "burnt" // wood to charcoal
	Seasoned     Does = "seasoned"
	Dried        Does = "dried"
	Mixed        Does = "mixed"
	CountedAgain Does = "counted again"
	Sold         Does = "sold"
	GivenAway    Does = "given away"
	Spoilt       Does = "spoilt"
)

// Amount is how much of a lot: weighed, or counted in a measure, or stacked, or
// only "some". A mass holds; else it is count times what the measure weighs.
type Amount struct {
	Lot       UID               `json:"lot,omitempty"`
	Mass      Maybe[Kilogram]   `json:"mass_kg,omitzero"`
	Measure   string            `json:"measure,omitempty"` // the measure's uid, else its name
	Count     Maybe[Count]      `json:"count,omitzero"`
	Some      bool              `json:"some,omitempty"`
	PlusMinus Maybe[Kilogram]   `json:"plus_minus_kg,omitzero"`
	Moisture  Maybe[Share]      `json:"moisture,omitzero"` // on the dry mass
	Stacked   Maybe[CubicMetre] `json:"stacked_m3,omitzero"`
}

// Cost is what was paid. It is never converted.
type Cost struct {
	Amount   Money  `json:"amount"`
	Currency string `json:"currency,omitempty"`
}

// Assay is what a lot or a sample holds, in oxides or in iron.
type Assay struct {
	Lot    UID                `json:"lot,omitempty"`
	Sample string             `json:"sample,omitempty"` // the sample's label
	Basis  AssayBasis         `json:"basis,omitempty"`
	Parts  map[string]Assayed `json:"parts,omitempty"`  // by oxide, as "Fe2O3", or "Fe" for all iron
	Loss   Maybe[Percent]     `json:"loi_pct,omitzero"` // on ignition; iron that takes up oxygen makes it less than nought
	By     string             `json:"by,omitempty"`
}

// Assayed is how much of one oxide there is.
type Assayed struct {
	Percent   Percent        `json:"pct"`
	PlusMinus Maybe[Percent] `json:"plus_minus,omitzero"`
	Basis     Basis          `json:"basis,omitempty"`
}

// AssayBasis is in which state the material is that the shares are of.
type AssayBasis string

// The states of what is assayed.
const (
	AsDug      AssayBasis = "as dug"
	AsDried    AssayBasis = "dried"
	AsRoasted  AssayBasis = "roasted"
	AsIgnited  AssayBasis = "ignited"
	Normalised AssayBasis = "normalised" // to a sum of 100, the loss unknown
)

// LabelOf is a label of a sample as one is told from another: spaces and capitals aside.
func LabelOf(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), "")) }

// SampleResult is the lab's answer about a sample, by its label.
type SampleResult struct {
	Sample string `json:"sample"`
	Assay  Assay  `json:"assay"`
}

func (LotStored) Kind() Kind    { return KindLot }
func (MeasureNamed) Kind() Kind { return KindMeasure }
func (Deed) Kind() Kind         { return KindDeed }
func (Assay) Kind() Kind        { return KindAssay }
func (SampleResult) Kind() Kind { return KindSampleResult }
