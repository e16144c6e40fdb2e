package words

import (
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/lot"
	modelwords "chargehand/model/words"
)

// The stores: what their keys do, and the same in the keys line.
const (
	DoStores       = "stores: what there is"
	DoNewLot       = "a new lot"
	DoDeed         = "what was done with it"
	DoCount        = "weigh or count it again"
	DoWater        = "how wet it is"
	DoAssay        = "an assay of it"
	DoMendStores   = "put right what was keyed of it"
	DoStrikeStores = "cross out the last thing keyed here"
	DoMeasures     = "measures: bucket, sack, barrow"
	DoDescribe     = "its name, where from, lump"
	DoSampleResult = "the lab's answer on a sample"

	ShortNew   = "new"
	ShortDone  = "what was done"
	ShortCount = "weigh"
	ShortWater = "moisture"
	ShortAssay = "assay"
	ShortMend  = "put right"
)

// StoresTitle and the like stand over and in the table.
const (
	StoresTitle    = "what there is"
	StoresBare     = "Nothing here yet. Weigh three things: a bucket of charcoal, a scoop of ore, all the ore. n begins a lot."
	StoresNothing  = "nothing here yet: n begins a lot" // to a key that wants a lot
	StoresNoPlan   = "no plan to hold it against yet"
	StoresPlanLit  = "no plan to hold it against"
	HeadMaterial   = "material"
	HeadLot        = "lot"
	HeadLeft       = "left"
	HeadDry        = "dry"
	HeadNeeded     = "needed"
	HeadKnown      = "what is known of it"
	HeadDryAgainst = "dry"
	NotWeighedYet  = "not weighed"
	TooLittleTag   = "TOO LITTLE"
	EnoughWord     = "enough"
	KnownOfIt      = "what is known of it"
	IronInIt       = "iron in it"
	CanGiveUp      = "gives up"
	SlagToExpect   = "slag"
	LumpOf         = "lump"
	WaterOfIt      = "water"
	RoastThrough   = "roasted through?"
	WouldHelp      = "would help most"
	NotKnown       = "not known"
	LastToWord     = "lasts to"
	OfWeight       = "by weight"
	KgOfBloom      = "a kg bloom"
	LegendNeeded   = "needed"
)

// Fields and lists of the stores.
const (
	LotOf          = "a lot of what"
	HowItCame      = "how did it come"
	InAMeasure     = "in a measure"
	OnlySome       = "only some"
	Stacked        = "stacked"
	WhichMeasure   = "which measure"
	AnotherMeasure = "another measure"
	MeasureName    = "name of the measure"
	MeasureOf      = "a measure of what"
	WeighDryWeigh  = "weigh a sample, dry it, weigh it again"
	WaterPerCent   = "in per cent of its weight"
	SampleWet      = "the sample as it lies"
	SampleDry      = "the same, dried until it loses no more"
	DryOverWet     = "dried it cannot weigh more than wet: check both"
	BlankIsNot     = "blank: not known"
	LotOrigin      = "where from"
	LotMix         = "ore mix"
	LotSpecies     = "which tree"
	LotLumpIs      = "mean size of its lumps"
	LotNote        = "note"
	IntoNew        = "a new lot"
	SievesAsked    = "sieves, fine and coarse"
	SievesUnit     = "mm, as 3 15; one, or up to six"
	SievesWrong    = "type the sieves in mm with a blank between, as 3 15: one to six, 0.1 to 200 mm"
	GoneAsDust     = "gone as dust"
	NotSievedYet   = "not sieved yet: it stays in the lot"
	AssayIron      = "its iron, in per cent"
	AssayOxides    = "its oxides, as a lab gives them"
	AssayIronIs    = "iron"
	ItIsIron       = "iron, Fe"
	ItIsOxide      = "iron oxide, Fe2O3"
	LossOnIgnition = "loss on ignition"
	SignsInstead   = "no lab: what it shows, colour, weight, magnet"
	NoShareYet     = "no share yet: type one of them, or esc"
	SharesAreOf    = "the shares are of it"
	BasisUnsaid    = "not said"
	SampleLabel    = "label of the sample"
	WhenItWas      = "the day it was"
	DayItWas       = "how many days ago"
	DayAs          = "or as 2026-11-28"
	CrushDry       = "dust: wet it, wear a P3 mask"
)

// MaterialWord names a material.
func MaterialWord(m entry.Material) string { return modelwords.LotMaterial(m) }

// CameAs is a way in which a material comes, in a list.
func CameAs(d entry.Does, m entry.Material) string {
	switch {
	case d == entry.Dug && m == entry.LotOre:
		return "dug, as it came from the ground"
	case d == entry.Roasted:
		return "roasted already"
	case d == entry.Burnt:
		return "burnt by ourselves"
	case d == entry.Seasoned:
		return "cut and seasoned"
	case d == entry.PickedOver:
		return "picked up from a smelt"
	}
	return string(d)
}

// LotNameOf asks for a lot's name.
func LotNameOf(m entry.Material) string { return "name of this " + MaterialWord(m) }

// LotTaken and MeasureTaken refuse a name that is given.
func LotTaken(name string) string {
	return "another lot is called " + short(name) + ": give it another name"
}

// MeasureTaken refuses the name of a measure.
func MeasureTaken(name string) string { return "there is a " + short(name) + " already" }

// HowMuchOf and the like ask for an amount.
func HowMuchOf(name string) string { return "how much " + name }

// WaterIn asks how wet it is.
func WaterIn(name string) string { return "water in " + name }

// WaterOf heads the ways to say that.
func WaterOf(name string) string { return "how wet is " + name }

// CountedNow asks for what there is.
func CountedNow(name string) string { return name + " now" }

// CountFound says how far a count was off.
func CountFound(u modelwords.Units, off float64) string {
	switch {
	case off > 0.05:
		return u.Kg(entry.Kilogram(off)) + " more than was thought"
	case off < -0.05:
		return u.Kg(entry.Kilogram(-off)) + " less than was thought"
	}
	return "as was thought"
}

// DryIs says what an amount is without its water.
func DryIs(kg string) string { return kg + " dry" }

// BothBases says how wet a lot is on both bases.
func BothBases(name string, ofWeight, onDry float64) string {
	return name + ": " + modelwords.Number(ofWeight, 1) + " % water of its weight, " + modelwords.Number(onDry, 1) + " % on the dry mass"
}

// WaterUnknown says that it is no longer known.
func WaterUnknown(name string) string { return name + ": its water is not known now" }

// NowHolds says how wet it is after drying.
func NowHolds(onDry entry.Share) string {
	return "now " + modelwords.Number(100*lot.OfWeight(onDry), 1) + " % water of its weight"
}

// HowMany asks for a count of a measure.
func HowMany(measure string) string { return "how many of " + measure }

// MeasureHolds asks for what a measure holds.
func MeasureHolds(name string) string { return "one " + name + " holds" }

// MeasureIs is a measure in a list.
func MeasureIs(u modelwords.Units, m entry.Measure) string {
	if m.Mass.Known {
		return m.Name + ", " + u.Kg(m.Mass.Value) + " " + modelwords.Material(m.What)
	}
	return m.Name + ", " + NotWeighedYet
}

// AssayOf heads the ways to key an assay; IronOrOxide asks which.
func AssayOf(name string) string { return "assay of " + name }

// IronOrOxide asks which of the two is meant.
func IronOrOxide(pct float64) string { return modelwords.Number(pct, 1) + " %: iron, or iron oxide" }

// NoAssayOf says that it is not assayed.
func NoAssayOf(material string) string { return "ore and slag are assayed, not " + material }

// SignsOf heads what ore shows, SignIs is a line of it.
func SignsOf(name string) string { return name + " shows, enter keeps it" }

// SignIs is a sign, seen or not.
func SignIs(s entry.OreSign, seen bool) string {
	if seen {
		return signWords[s] + ": yes"
	}
	return signWords[s]
}

var signWords = map[entry.OreSign]string{
	entry.SignDarkRed: "dark red", entry.SignBrown: "brown, a little green", entry.SignBlack: "black, loose, earthy", entry.SignSticky: "sticky between the teeth, like resin",
	entry.SignGritty: "gritty: sand in it", entry.SignHeavy: "heavy for its size", entry.SignLight: "light for its size", entry.SignMagnetic: "roasted, it pulls a magnet", entry.SignNoMagnet: "roasted, no pull on a magnet",
}

// SignsSeen are the signs in one line; of a newer version's nothing is reckoned.
func SignsSeen(signs []entry.OreSign) string {
	var all []string
	for _, s := range signs {
		said := string(s)
		if _, known := signWords[s]; !known {
			said += " (not understood)"
		}
		all = append(all, said)
	}
	return strings.Join(all, ", ")
}

// IronNow says what iron is assumed of a lot.
func IronNow(s lot.Share) string {
	if s.Basis != entry.BasisAssumed {
		return "its iron stays as the assay says"
	}
	return "iron " + ShareBand(s.P10, s.P90) + " assumed, " + modelwords.Number(100*s.P50, 0) + " taken"
}

// CannotPay says that an ore does not pay for its own slag.
func CannotPay(holds, takes float64) string {
	return "cannot pay its own slag: it holds " + modelwords.Number(holds, 0) + " % iron, its silica with wall and ash takes " + modelwords.Number(takes, 0) + " %; mix it with a richer one"
}

// CannotPayBrief is the same in the table.
const CannotPayBrief = "cannot pay its slag"

// DampToCharge cautions of roasted ore that got wet.
const DampToCharge = "damp: dry it before it is charged; wet ore steams and spits in the shaft, and cools its top"

// DampBrief is the same in the table.
const DampBrief = "damp: dry it first"

// OxidesNow heads the list of oxides.
func OxidesNow(n int) string { return "shares keyed: " + strconv.Itoa(n) }

// ShareIs is one of them in the list.
func ShareIs(name string, v entry.Maybe[float64]) string {
	if !v.Known {
		return name
	}
	return name + " " + modelwords.Number(v.Value, 2) + " %"
}

var basisWords = map[entry.AssayBasis]string{
	entry.AsDug: "as dug, with its water", entry.AsDried: "dried", entry.AsRoasted: "roasted", entry.AsIgnited: "ignited in the lab", entry.Normalised: "made to add up to 100",
}

// BasisWord is what shares are of.
func BasisWord(b entry.AssayBasis) string { return basisWords[b] }

// DescribeLot heads what may be said of a lot.
func DescribeLot(name string) string { return name + ": what it is" }

// LotNameIs is its name in that list.
func LotNameIs(name string) string { return "name: " + name }

// FieldIs is a line of it.
func FieldIs(label, value string) string {
	if value == "" {
		return label
	}
	return label + ": " + value
}

// LotBulk, LotBulkOf and LotLump are how it lies.
func LotBulk(m entry.Maybe[entry.KgPerCubicM]) string {
	if !m.Known {
		return "kg a cubic metre"
	}
	return "kg a cubic metre: " + modelwords.Number(float64(m.Value), 0)
}

// LotBulkOf asks for it.
func LotBulkOf(m entry.Material) string {
	if m == entry.LotWood {
		return "a stacked cubic metre weighs"
	}
	return "a cubic metre of it weighs"
}

// LotLump is the size of its lumps, in the list.
func LotLump(m entry.Maybe[entry.Millimetre]) string {
	if !m.Known {
		return "size of its lumps"
	}
	return "size of its lumps: " + modelwords.Number(float64(m.Value), 0) + " mm"
}

// PutRightOf heads what was keyed of a lot.
func PutRightOf(name string) string { return "put right, of " + name }

// Dated is something with its day.
func Dated(at time.Time, said string) string { return at.Format("2 Jan") + " " + said }

// AnotherAmount and InPlaceOf are for an amount that was wrong.
func AnotherAmount(what string) string { return "another weight for " + what }

// InPlaceOf asks for it.
func InPlaceOf(what string) string { return "in place of " + what }

// NowSays says what a changed line says.
func NowSays(said string) string { return "now: " + said }

// DayUnread refuses a day.
func DayUnread(text string) string {
	return "type it like 3, for three days ago, or 2026-11-28: " + quoted(text) + " is no day"
}

// ShortBy says that a lot is below nothing.
func ShortBy(u modelwords.Units, kg float64) string {
	return u.Kg(entry.Kilogram(kg)) + " more used than there was: count it again, or an entry is wrong"
}

// RoastedThrough says how a roast came out.
func RoastedThrough(r lot.Roast) string {
	expected := modelwords.Number(100*r.Expected[0], 0) + " to " + modelwords.Number(100*r.Expected[1], 0) + " % expected at " + modelwords.Number(100*r.Water, 0) + " % water"
	lost := modelwords.Number(100*r.Lost, 0) + " % lost, "
	switch r.Through() {
	case lot.HalfRoasted:
		return "no: " + lost + expected + "; damp still, or half roasted"
	case lot.LostMore:
		return lost + "more than the " + expected + ": dust lost, or wetter than said"
	}
	return "yes: " + lost + expected
}

// BurnYields says what a charcoal burn gave, on both bases.
func BurnYields(b lot.Burn) string {
	said := modelwords.Number(100*b.OnWet, 1) + " % of the wood as it lay"
	if b.Dry {
		said += ", " + modelwords.Number(100*b.OnDry, 1) + " % of it dry"
	}
	if b.Brands > 0 {
		said += "; brands " + modelwords.Number(b.Brands, 1) + " kg"
	}
	if b.Fines > 0 {
		said += "; fines " + modelwords.Number(100*b.Fines/(b.Charcoal+b.Fines), 0) + " % of the charcoal, left out of it"
	}
	return said
}

var helpWords = map[lot.Help]string{
	lot.HelpWeigh: "weighing all of it: w", lot.HelpWater: "drying a sample: m, its water is taken as usual", lot.HelpAssay: "an assay (a): it halves this spread, not that of the bloom",
}

// WhatHelps says what would help most.
func WhatHelps(h lot.Help) string { return helpWords[h] }
