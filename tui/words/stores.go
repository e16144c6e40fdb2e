package words

import (
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
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
	StoresNoPlan   = "no plan to hold it against yet"
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
	LotOf           = "a lot of what"
	HowItCame       = "how did it come"
	InAMeasure      = "in a measure"
	OnlySome        = "only some"
	Stacked         = "stacked"
	WhichMeasure    = "which measure"
	AnotherMeasure  = "another measure"
	MeasureName     = "name of the measure"
	MeasureOf       = "a measure of what"
	WeighDryWeigh   = "weigh a sample, dry it, weigh it again"
	WaterPerCent    = "in per cent of its weight"
	SampleWet       = "the sample as it lies"
	SampleDry       = "the same, dried until it loses no more"
	DryOverWet      = "dried it cannot weigh more than wet: check both"
	BlankIsNot      = "blank: not known"
	BlankNoSieve    = "blank: one sieve only"
	LotOrigin       = "where from"
	LotMix          = "ore mix"
	LotSpecies      = "which tree"
	LotLumpIs       = "mean size of its lumps"
	LotNote         = "note"
	IntoNew         = "a new lot"
	SieveFine       = "the fine sieve"
	SieveCoarse     = "the coarse sieve"
	SieveNotCoarser = "the coarse sieve has to be wider than the fine one"
	AssayIron       = "its iron, in per cent"
	AssayOxides     = "its oxides, as a lab gives them"
	AssayIronIs     = "iron"
	ItIsIron        = "iron, Fe"
	ItIsOxide       = "iron oxide, Fe2O3"
	LossOnIgnition  = "loss on ignition"
	NoShareYet      = "no share yet: type one of them, or esc"
	SharesAreOf     = "the shares are of it"
	BasisUnsaid     = "not said"
	SampleLabel     = "label of the sample"
	WhenItWas       = "the day it was"
	DayItWas        = "how many days ago"
	DayAs           = "or as 2026-11-28"
	CrushDry        = "dust: wet it, wear a P3 mask"
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

// DoneWith heads the deeds of a lot.
func DoneWith(name string) string { return "what was done with " + name }

var deedWords = map[entry.Does]string{
	entry.Dried: "dried", entry.Roasted: "roasted", entry.Washed: "washed", entry.PickedOver: "picked over", entry.Broken: "broken up",
	entry.Crushed: "crushed", entry.Burnt: "burnt to charcoal", entry.Seasoned: "seasoned", entry.Sieved: "sieved", entry.Mixed: "mixed with another",
}

// DeedWord is a deed in a list.
func DeedWord(d entry.Does) string {
	if w, ok := deedWords[d]; ok {
		return w
	}
	return string(d)
}

// MoreCame is more of a lot in a list, GoneAs what goes of it.
func MoreCame(d entry.Does) string { return "more came: " + string(d) }

// GoneAs is a way to go, in a list.
func GoneAs(d entry.Does) string {
	if d == entry.Spoilt {
		return "lost or spoilt"
	}
	return string(d)
}

// HowMuchCame and the others ask for the amounts of a deed.
func HowMuchCame(d entry.Does) string { return "how much was " + string(d) }

// HowMuchWent asks for what is gone.
func HowMuchWent(d entry.Does) string {
	if d == entry.Spoilt {
		return "how much is lost"
	}
	return "how much was " + string(d)
}

// HowMuchIn asks for what went into a deed.
func HowMuchIn(d entry.Does, name string) string {
	return "how much of " + name + " was " + DeedShort(d)
}

// DeedShort is a deed in a sentence.
func DeedShort(d entry.Does) string {
	if d == entry.Mixed {
		return "mixed"
	}
	return DeedWord(d)
}

// HowMuchOut asks for what came out.
func HowMuchOut(d entry.Does) string { return DeedShort(d) + ", it weighs" }

// WaterAfter asks how wet it is then.
func WaterAfter(d entry.Does) string { return "water in it, " + DeedShort(d) }

// Whither asks where it lies now.
func Whither(d entry.Does) string { return DeedShort(d) + ", it is" }

// IntoSame and IntoOther are where it may lie.
func IntoSame(name string) string { return "still " + name }

// IntoOther is another lot.
func IntoOther(name string) string { return "with " + name }

// NameAfter proposes the name of what came out.
func NameAfter(name string, d entry.Does) string {
	if d == entry.Burnt {
		return name + " charcoal"
	}
	return name + ", " + DeedShort(d)
}

// MixWith asks with what it was mixed, MixName proposes a name.
func MixWith(name string) string { return name + " mixed with" }

// MixName proposes a name.
func MixName(a, b string) string { return a + " and " + b }

// UnderSieve and the others ask for the heaps.
func UnderSieve(mm float64) string { return "what fell through " + modelwords.Number(mm, 1) + " mm" }

// OverSieve asks for the coarse heap.
func OverSieve(mm float64) string { return "what stayed over " + modelwords.Number(mm, 1) + " mm" }

// BetweenSieves asks for what the lot is now.
func BetweenSieves(two bool) string {
	if two {
		return "what lies between the two"
	}
	return "what stayed on the sieve"
}

// FinesOf and CoarseOf name the heaps.
func FinesOf(name string, mm float64) string {
	return name + ", under " + modelwords.Number(mm, 1) + " mm"
}

// CoarseOf names the coarse heap.
func CoarseOf(name string, mm float64) string {
	return name + ", over " + modelwords.Number(mm, 1) + " mm"
}

// FinesShare says how much of it was fines, and what they do.
func FinesShare(share float64) string {
	return modelwords.Number(100*share, 0) + " % fines out: less pressure and fewer sparks, hangs a little more"
}

// AssayOf heads the ways to key an assay; IronOrOxide asks which.
func AssayOf(name string) string { return "assay of " + name }

// IronOrOxide asks which of the two is meant.
func IronOrOxide(pct float64) string { return modelwords.Number(pct, 1) + " %: iron, or iron oxide" }

// NoAssayOf says that it is not assayed.
func NoAssayOf(material string) string { return "ore and slag are assayed, not " + material }

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
	return said
}

var helpWords = map[lot.Help]string{
	lot.HelpWeigh: "weighing all of it: w", lot.HelpWater: "drying a sample: m, its water is taken as usual", lot.HelpAssay: "an assay: a. It halves this spread; that of the bloom stays",
}

// WhatHelps says what would help most.
func WhatHelps(h lot.Help) string { return helpWords[h] }

// What the screen shows of them.
const (
	TakenAsUsual = "taken as usual"
	AtThisBurn   = "at the pace of the smelt that burns"
)

// ForThePlan says against which plan the stores are held.
func ForThePlan(name, day string) string {
	if t, err := time.Parse(time.DateOnly, day); err == nil {
		return "for the plan of " + t.Format("2 January")
	}
	return "for the plan " + name
}

// Large is a word in capitals.
func Large(s string) string { return strings.ToUpper(s) }

// LargeKg is a mass in large letters.
func LargeKg(u modelwords.Units, kg float64) string { return strings.ToUpper(KgRound(u, kg)) }

// KgRound is a mass as well as it is known: to a decimal below ten, else whole.
func KgRound(u modelwords.Units, kg float64) string {
	if u.Shown(kg, "kg") < 10 && u.Shown(kg, "kg") > -10 {
		return u.Value(kg, "kg", 1)
	}
	return u.Value(kg, "kg", 0)
}

// NeededNotWeighed, LeftDry, TooLittleBy and MoreThanNeeded say how it stands.
func NeededNotWeighed(u modelwords.Units, need float64) string {
	return KgRound(u, need) + " dry needed; what there is is not weighed"
}

// LeftDry is what is left.
func LeftDry(u modelwords.Units, kg float64) string { return KgRound(u, kg) + " dry in all" }

// TooLittleBy says by how much.
func TooLittleBy(u modelwords.Units, kg float64) string { return KgRound(u, kg) + " dry too little" }

// MoreThanNeeded says by how much.
func MoreThanNeeded(u modelwords.Units, kg float64) string {
	return KgRound(u, kg) + " dry more than the plan needs"
}

// LeftOf is what is left of a lot as it lies, with its spread or what is not known of it.
func LeftOf(u modelwords.Units, m house.Mass, weight, sd float64) string {
	switch {
	case m.More && m.Less:
		return NotKnown
	case m.More && m.Kg == 0:
		return "some"
	case m.More:
		return "at least " + KgRound(u, weight)
	case m.Less:
		return "at most " + KgRound(u, weight)
	}
	d := 1.2816 * sd
	if d < 0.05 {
		return KgRound(u, weight)
	}
	decimals := 0
	if weight < 10 {
		decimals = 1
	}
	return u.Spread(weight-d, weight, weight+d, "kg", decimals)
}

// StackedIs is a stack of wood.
func StackedIs(m3 float64) string { return modelwords.Number(m3, 1) + " m³" }

// BelowNothing says so in few words.
func BelowNothing(u modelwords.Units, kg float64) string { return KgRound(u, kg) + " below nothing" }

// IronBrief, WaterBrief and Joined are what is known in few words.
func IronBrief(s lot.Share) string {
	if s.Basis == entry.BasisAssumed {
		return "iron " + ShareBand(s.P10, s.P90)
	}
	return "iron " + modelwords.Number(100*s.P50, 0) + " %"
}

// WaterBrief is how wet it is.
func WaterBrief(ofWeight float64) string { return modelwords.Number(100*ofWeight, 0) + " % water" }

// Joined is both, where there are two.
func Joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// ShareBand is a band of shares in per cent.
func ShareBand(low, high float64) string {
	return modelwords.Number(100*low, 0) + " to " + modelwords.Number(100*high, 0) + " %"
}

// KgBetween is a band of masses.
func KgBetween(low, high float64) string {
	return modelwords.Number(low, 0) + " to " + modelwords.Number(high, 0) + " kg"
}

// WholePerCent is a share in per cent without its sign.
func WholePerCent(share float64) string { return modelwords.Number(100*share, 0) }

// ThereIs stands over what there is of a material.
func ThereIs(m entry.Material) string { return MaterialWord(m) + ", dry" }

// PerCentShort is a share.
func PerCentShort(share float64) string { return modelwords.Number(100*share, 0) + " %" }

// IronRests says what the iron rests on.
func IronRests(s lot.Share) string {
	return modelwords.Number(100*s.P50, 0) + " taken; " + BasisIs(s.Basis)
}

// BasisIs says what a figure rests on.
func BasisIs(b entry.Basis) string {
	if b == entry.BasisGuessed {
		return "a guess"
	}
	return string(b)
}

// OnDryMass is moisture on the other basis.
func OnDryMass(v float64) string {
	return "by weight; " + modelwords.Number(100*v, 0) + " % on dry"
}

// Millimetres is a size.
func Millimetres(m entry.Maybe[entry.Millimetre]) string {
	return modelwords.Number(float64(m.Value), 0) + " mm"
}

// AtClock is the time of day so many minutes from now.
func AtClock(now time.Time, minutes float64) string {
	return now.Add(time.Duration(minutes * float64(time.Minute))).Format(modelwords.Clock)
}

// ChangeOf is one line of what came, went and was counted.
func ChangeOf(u modelwords.Units, c house.Change, weight float64) string {
	amount := KgRound(u, weight)
	switch {
	case !c.Dry.Known() && c.Dry.Kg == 0:
		amount = "some"
	case !c.Dry.Known():
		amount = "at least " + amount
	}
	switch {
	case c.Count && c.Smelt != "":
		return "weighed at " + c.Smelt + ": " + amount
	case c.Count && c.Does == entry.CountedAgain:
		return "counted again: " + amount
	case c.Count:
		return "there was " + amount
	case c.Smelt != "":
		return amount + " went into " + c.Smelt
	case c.Took:
		return amount + " " + DeedShort(c.Does)
	case c.Does == entry.Roasted || c.Does == entry.Burnt || c.Does == entry.Sieved || c.Does == entry.Mixed:
		return DeedShort(c.Does) + ", gave " + amount
	}
	return DeedShort(c.Does) + ", " + amount
}
