package words

import (
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	modelwords "chargehand/model/words"
)

// What the screen shows of them.
const (
	TakenAsUsual = "taken as usual"
	FinesWord    = "fines"
	ShowsWord    = "shows"
	SizesWord    = "sizes"
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

// UsedUp is said of a lot of which nothing is left.
const UsedUp = "used up"

// AsItLies is what there is with its water.
func AsItLies(u modelwords.Units, kg float64) string {
	return KgRound(u, kg) + " as it lies, with its water"
}

// TooLittleBy says by how much.
func TooLittleBy(u modelwords.Units, kg float64) string { return KgRound(u, kg) + " dry too little" }

// ByDry is the same behind a word that says it already.
func ByDry(u modelwords.Units, kg float64) string { return "by " + KgRound(u, kg) + " dry" }

// MoreThanNeeded says by how much.
func MoreThanNeeded(u modelwords.Units, kg float64, raw bool) string {
	if raw {
		return KgRound(u, kg) + " to spare once roasted"
	}
	return KgRound(u, kg) + " dry to spare"
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

// Wood and charcoal, the one in the other.
const (
	WoodGives   = "charcoal"
	WoodRests   = "can be burnt from it, 10 to 25 % of the dry wood"
	WoodForRest = "the rest"
)

// WoodStacked is wood in stacked cubic metres.
func WoodStacked(low, high float64, species string) string {
	if species == "" {
		species = "any wood"
	}
	return "dry wood, " + modelwords.Number(low, 1) + " to " + modelwords.Number(high, 1) + " m³ stacked of " + species
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
		return Guessed
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

// SizesAre are the heaps of a lot by its sieves, in shares of it.
func SizesAre(sizes []entry.SizeShare) string {
	var said []string
	for i, s := range sizes {
		share, to := float64(s.Share), " mm and over"
		if i+1 < len(sizes) {
			share -= float64(sizes[i+1].Share)
			to = " to " + modelwords.Number(float64(sizes[i+1].Over), 1) + " mm"
		}
		said = append(said, modelwords.Number(float64(s.Over), 1)+to+" "+modelwords.Number(100*share, 0)+" %")
	}
	return strings.Join(said, ", ")
}

// AtClock is the time of day so many minutes from now.
func AtClock(now time.Time, minutes float64) string {
	return now.Add(time.Duration(minutes * float64(time.Minute))).Format(modelwords.Clock)
}

// ChangeOf is one line of what came, went and was counted.
func ChangeOf(u modelwords.Units, c house.Change, weight float64) string {
	amount := KgRound(u, weight)
	if c.Kg > 0 { // as it was on the scales
		amount = u.Kg(entry.Kilogram(weight))
	}
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
		return amount + " to " + c.Smelt
	case c.Took:
		return amount + " " + DeedShort(c.Does)
	case c.Does == entry.Roasted || c.Does == entry.Burnt || c.Does == entry.Sieved || c.Does == entry.Mixed:
		return DeedShort(c.Does) + ", gave " + amount
	}
	return DeedShort(c.Does) + ", " + amount
}
