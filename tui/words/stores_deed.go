package words

import (
	"chargehand/model/entry"
	modelwords "chargehand/model/words"
)

// What was done with a lot, asked and said.

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

// What comes out of a charcoal burn beside the charcoal.
const (
	BrandsLeft = "brands, not burnt through"
	FinesLeft  = "fines, sieved out"
)

// What may be said of a deed beside its amounts.
const (
	DeedPeople  = "people"
	DeedHours   = "hours of each"
	DeedWeather = "weather"
)

// DeedPeopleAre and DeedHoursAre are lines of its list.
func DeedPeopleAre(n entry.Maybe[entry.Count]) string {
	if !n.Known {
		return DeedPeople
	}
	return DeedPeople + ": " + modelwords.Number(float64(n.Value), 0)
}

// DeedHoursAre is how long it took.
func DeedHoursAre(h entry.Maybe[entry.Hour]) string {
	if !h.Known {
		return DeedHours
	}
	return DeedHours + ": " + modelwords.Number(float64(h.Value), 1)
}

// What a deed burnt and cost.
const (
	DeedFuel     = "burnt for it"
	NoFuel       = "nothing of the stores"
	DeedCost     = "what it cost"
	DeedCurrency = "in which money"
	CurrencyHint = "as EUR"
	MoneyUnit    = "in money"
)

// FuelIs is what was burnt, in the list.
func FuelIs(u modelwords.Units, fuel []entry.Amount) string {
	if len(fuel) == 0 {
		return DeedFuel + ": wood, charcoal"
	}
	return DeedFuel + ": " + u.Amount(fuel[0])
}

// CostIs is what it cost, in the list.
func CostIs(c *entry.Cost) string {
	if c == nil {
		return DeedCost
	}
	return DeedCost + ": " + modelwords.Number(float64(c.Amount), 2) + " " + c.Currency
}

// BrandsOf and DustOf name their heaps.
func BrandsOf(wood string) string { return wood + ", brands" }

// DustOf is what crumbled.
func DustOf(charcoal string) string { return charcoal + ", fines" }

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

// BetweenSieves asks for what lies between a sieve and the next, or on the only one.
func BetweenSieves(mm []float64, n int) string {
	switch {
	case len(mm) == 1:
		return "what stayed on the sieve"
	case len(mm) == 2:
		return "what lies between the two"
	}
	return "what lies between " + modelwords.Number(mm[n], 1) + " and " + modelwords.Number(mm[n+1], 1) + " mm"
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

// SievedLess asks about what lies in none of the heaps.
func SievedLess(u modelwords.Units, kg float64) string {
	return u.Value(kg, "kg", 1) + " more lay there than lies in the heaps now"
}

// DustGone says how much of what was sieved is in no heap.
func DustGone(u modelwords.Units, kg float64) string { return u.Value(kg, "kg", 1) + " gone as dust" }

// FinesInIt says of a share that it is fines still, by own sieves.
const FinesInIt = "not sieved: so much by your sieves, taken off"
