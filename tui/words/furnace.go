package words

import (
	"math"
	"strconv"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/house"
	modelwords "chargehand/model/words"
)

// The furnaces: what their keys do, and the same in the keys line.
const (
	DoFurnaces   = "furnaces"
	DoNewFurnace = "a new furnace"
	DoSizes      = "measured again, repaired or worn"
	DoDrying     = "a day of drying"
	DoBagTest    = "blast by the bag test"
	DoLightIt    = "light a fire in it"

	ShortLightIt = "light it"
	ShortSizes   = "sizes"
	ShortDrying  = "drying"
	ShortBagTest = "bag test"
)

// What the screen of furnaces says.
const (
	FurnacesTitle  = "furnaces"
	FurnaceBare    = "No furnace here yet. n begins one: its name and the sizes that you have measured; what is blank is not known."
	FurnaceNothing = "no furnace here yet: n begins one" // to a key that wants one
	BoreAtTop      = "bore at the top"
	WallThick      = "thickness of the wall"
	TuyereBoreIs   = "bore of the tuyere"
	TuyereDown     = "the tuyere points down by"
	WhyAnother     = "why is it so"
	WhyMeasured    = "measured again"
	WhyRepaired    = "repaired"
	WhyWorn        = "worn"
	WhyBuilt       = "built anew"
	FiresToday     = "how many small fires today"
	SmallFires     = "fires"
	WeatherToday   = "weather"
	CracksSeen     = "cracks"
	BlankNothing   = "blank: nothing to say"
	SmallFiresOnly = "small fires only: steam bursts clay"
	BagHolds       = "the bag tied over the hose holds"
	Holds          = "holds"
	LineBlastWord  = "blast"
	OneSchool      = "one school advises"
	GoodSmelts     = "good smelts used"
	Pace           = "burns"
	Clay           = "clay"
	SandWord       = "sand"
	UsualBucket    = "bucket"
	ArchWide       = "arch, how wide"
	ArchHigh       = "arch, how high"
	MeasureFirst   = "Measure bore and height above the tuyere: then volume and blast can be reckoned."
	Blower         = "blower"
	NotMeasured    = "not measured"
	BagHelps       = "a: the bag test"
	BagTested      = "bag, less 5-20 %, assumed"
	BagBrief       = "by the bag test"
	Dried          = "drying"
	DryingUsual    = "usual: small fires until no steam"
	DryingBrief    = "usual: small fires"
	Versions       = "versions; a smelt keeps its own"
)

// What else is known of a furnace, and another version of it after its wall did something.
const (
	TipStandsIn    = "tuyere tip stands in"
	TuyereOfWhat   = "the tuyere is of"
	WhereSlagGoes  = "where the slag goes"
	VersionPatched = "patched: a repaired version of the same sizes"
	VersionWorn    = "worn: measure it with a stick with a notch, a version of new sizes"
	VersionNone    = "not now: it stays as it is"
	VersionStays   = "no new version; w makes one at any time"
)

// OfferVersion asks for another version.
func OfferVersion(furnace, what, smelt string) string {
	return furnace + " after " + what + ", in " + smelt + ": what of it now"
}

// TuyereIsOf is what the tuyere is made of.
func TuyereIsOf(what string) string {
	if what == "" {
		return "the tuyere's material"
	}
	return "the tuyere is of: " + what
}

var slagWords = map[entry.SlagPractice]string{
	entry.SlagBowl: "a bowl under the tuyere", entry.SlagPit: "a pit below the shaft", entry.SlagTap: "tapped through the arch", entry.SlagRunning: "runs out of an open arch",
}

// SlagWord is where it goes.
func SlagWord(p entry.SlagPractice) string { return slagWords[p] }

// SlagGoes is the same as a line of the list.
func SlagGoes(p entry.SlagPractice) string {
	if p == "" {
		return "where the slag goes"
	}
	return "slag: " + slagWords[p]
}

// WallInSmelt is what a wall did, and in which smelt.
func WallInSmelt(what, smelt string) string { return what + ", in " + smelt }

// FurnacesHold says how many there are.
func FurnacesHold(n int) string {
	if n == 1 {
		return "1 furnace"
	}
	return strconv.Itoa(n) + " furnaces"
}

// FurnaceTaken refuses a name.
func FurnaceTaken(name string) string {
	return "there is a " + short(name) + " already: w changes its sizes"
}

// SizesOf heads its sizes, SizeIs is one of them.
func SizesOf(name string) string { return name }

// SizeIs is one of its sizes.
func SizeIs(u modelwords.Units, label string, v entry.Maybe[float64], unit string) string {
	if !v.Known {
		return label
	}
	return label + ": " + u.Value(v.Value, unit, 1)
}

// Several bores, and what the wall is made of.
const (
	BoresAsked = "bores: height and bore in cm, then a comma, from the tuyere up"
	BoresWrong = "type a height above the tuyere and a bore, as 0 25, 30 24, 60 20"
	BoresTwice = "two bores at one height"
	ClayAsked  = "the wall, parts by volume, as clay 1, sand 1, dung 1"
	ClayWrong  = "type each with its parts, as clay 1, sand 1, dung 1"
)

// BoresAre is the line of the bores, BoresTyped as they are typed.
func BoresAre(bs []entry.BoreAt) string {
	if len(bs) == 0 {
		return "bores at several heights"
	}
	return "bores at several heights: " + BoresTyped(bs)
}

// BoresTyped is them as they are typed.
func BoresTyped(bs []entry.BoreAt) string {
	var said []string
	for _, b := range bs {
		said = append(said, modelwords.Number(float64(b.At), 1)+" "+modelwords.Number(float64(b.Bore), 1))
	}
	return strings.Join(said, ", ")
}

// ClayIs is the line of what the wall is made of, ClayTyped as it is typed.
func ClayIs(c []entry.ShareOf) string {
	if len(c) == 0 {
		return "what the wall is made of"
	}
	return "the wall: " + ClayTyped(c)
}

// ClayTyped is it as it is typed: the least of its parts is one.
func ClayTyped(c []entry.ShareOf) string {
	least := 1.0
	for _, one := range c {
		least = min(least, float64(one.Share))
	}
	var said []string
	for _, one := range c {
		said = append(said, one.What+" "+modelwords.Number(float64(one.Share)/least, 1))
	}
	return strings.Join(said, ", ")
}

// BagTime asks for one of the three times.
func BagTime(n int) string { return "time " + strconv.Itoa(n) + " of 3 until it is full" }

// BagGave says what the bag says.
func BagGave(u modelwords.Units, read float64, taken entry.Blast) string {
	return BlastOf(u, taken) + " taken: the bag says " + u.Value(read, "l/min", 0) + ", which cold and empty is 5 to 20 % high (assumed)"
}

// ShortSize is a furnace in few words.
func ShortSize(u modelwords.Units, f entry.Furnace) string {
	if !f.Bore.Known || !f.Stack.Known {
		return "not measured"
	}
	return u.Value(float64(f.Bore.Value), "cm", 1) + " wide, " + u.Value(float64(f.Stack.Value), "cm", 0) + " high"
}

// VersionIs is a version in few words.
func VersionIs(v house.Version) string { return string(v.Why) + " " + v.From.Format("2 Jan 06") }

// VersionSays is a version with its sizes.
func VersionSays(u modelwords.Units, v house.Version) string {
	return Joined(string(v.Why), modelwords.FurnaceSizes(v.Furnace))
}

// Litres is a volume.
func Litres(v float64) string { return modelwords.Number(v, 1) + " l" }

// FillTakes says what fills it, in measures.
func FillTakes(u modelwords.Units, kg float64, m entry.Measure) string {
	n := math.Max(1, math.Round(kg/float64(m.Mass.Value)))
	return FillWord(n, m.Name) + ", " + u.Value(kg, "kg", 0)
}

// BlastRange and BlastIs are blasts.
func BlastRange(u modelwords.Units, low, high float64) string {
	round := func(v float64) float64 { return float64(int(v/10+0.5)) * 10 }
	return u.Range(round(low), round(high), "l/min", 0)
}

// BlastOf is one as it was measured, with how far it may be off where that is known.
func BlastOf(u modelwords.Units, b entry.Blast) string {
	v, off := float64(b.Volume.Value), float64(b.PlusMinus.Value)
	if off <= 0 {
		return u.Value(v, "l/min", 0)
	}
	return u.Spread(v-off, v, v+off, "l/min", 0)
}

// ArchIs is the arch in the list of sizes.
func ArchIs(u modelwords.Units, f entry.Furnace) string {
	cm := func(m entry.Maybe[entry.Centimetre]) string { return u.Value(float64(m.Value), "cm", 0) }
	switch {
	case f.ArchWide.Known && f.ArchHigh.Known:
		return "arch: " + cm(f.ArchWide) + " wide, " + cm(f.ArchHigh) + " high"
	case f.ArchWide.Known:
		return "arch: " + cm(f.ArchWide) + " wide"
	case f.ArchHigh.Known:
		return "arch: " + cm(f.ArchHigh) + " high"
	}
	return "arch, for tapping and pulling"
}

// ClayRests says what the parting of clay and sand rests on.
func ClayRests(f entry.Furnace) string {
	if len(f.Clay) > 0 {
		return "dry, by its recipe, a guess"
	}
	return "dry, of 1 : 1 : 1 with dung, a guess"
}

// MinutesAMeasure is how long a measure of charcoal lasts, of which a kg lasts so many minutes.
func MinutesAMeasure(least, most float64, m entry.Measure) string {
	kg := float64(m.Mass.Value)
	return modelwords.Number(kg*least, 0) + " to " + modelwords.Number(kg*most, 0) + " min a " + m.Name
}

// BurnsAnHour is the same in kg an hour, with what it rests on.
func BurnsAnHour(u modelwords.Units, least, most float64, b entry.Basis) string {
	return KgAnHour(u, least, most) + ", " + BasisIs(b)
}

// KgAnHour is it alone.
func KgAnHour(u modelwords.Units, least, most float64) string {
	return u.Range(60/most, 60/least, "kg", 0) + "/h"
}

// KgBand is a band of masses to two digits.
func KgBand(u modelwords.Units, low, high float64) string {
	round := func(v float64) float64 { return float64(int(v/5+0.5)) * 5 }
	return u.Range(round(low), round(high), "kg", 0)
}

// DryingSo is how far the drying is.
func DryingSo(f house.Furnace) string {
	if len(f.Dryings) == 0 {
		return "no day keyed"
	}
	fires := 0.0
	for _, d := range f.Dryings {
		fires += float64(d.Fires.Value)
	}
	days := "1 day"
	if n := len(f.Dryings); n > 1 {
		days = strconv.Itoa(n) + " days"
	}
	switch fires {
	case 0:
		return days + " and no fire yet"
	case 1:
		return days + ", 1 small fire"
	}
	return days + ", " + modelwords.Number(fires, 0) + " small fires"
}

// FillWord is how many measures fill a furnace.
func FillWord(n float64, measure string) string {
	if n == 1 {
		return modelwords.Counted(1, measure) + " fills it"
	}
	return modelwords.Counted(entry.Count(n), measure) + " fill it"
}
