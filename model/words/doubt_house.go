package words

import (
	"math"

	"chargehand/model/doubt"
	"chargehand/physics"
)

// houseDoubts are the words of the doubts about what is keyed of the house: short, since
// they are asked in one line; AssayDoubt says the same at length.
var houseDoubts = map[doubt.Name]struct {
	says func(u Units, d doubt.Doubt) string
	mark string
}{
	doubt.NoShare: {func(_ Units, d doubt.Doubt) string {
		return d.Assay.Part + " " + percent(d.Said) + " is no share of a mass"
	}, "a share that is none"},
	doubt.TooMuchIron: {func(_ Units, d doubt.Doubt) string { return tooMuchIron(d) }, "more iron than the mineral holds"},
	doubt.IronOfRoasted: {func(_ Units, d doubt.Doubt) string {
		return percent(d.Said) + " iron: raw bog ore holds up to " + percent(d.Against) + ", so was it roasted"
	}, "more iron than raw ore holds"},
	doubt.IronDisagrees: {func(_ Units, d doubt.Doubt) string {
		return percent(d.Said) + " iron, and its oxides hold " + percent(d.Against) + ": a slip"
	}, "iron and its oxides disagree"},
	doubt.SumIsOff: {func(_ Units, d doubt.Doubt) string { return "the sum is " + percent(d.Said) + ": " + sumCause(d.Assay) }, "a sum that is off"},
	doubt.SumChecksNone: {func(_ Units, d doubt.Doubt) string {
		return "the sum is " + percent(d.Said) + ", as if one column were the rest: it checks nothing"
	}, "a sum that checks nothing"},
	doubt.MoreComesOut: {func(u Units, d doubt.Doubt) string {
		return d.Of + ": " + u.kg(d.Said) + " out of " + u.kg(d.Against)
	}, "more came out than went in"},
	doubt.WetterThanMost: {func(_ Units, d doubt.Doubt) string {
		return percent(d.Said) + " water: more than half of its weight"
	}, "more than half water"},
	doubt.StackBreaks: {func(_ Units, d doubt.Doubt) string {
		return Number(d.Said, 0) + " kg a stacked m³: with that water the same wood weighs " + Number(d.Against, 0)
	}, "a stack that gained or lost dry wood"},
	doubt.PieceGrew: {func(u Units, d doubt.Doubt) string {
		return "it grew from " + u.kg(d.Against) + " to " + u.kg(d.Said)
	}, "a piece that grew"},
	doubt.PieceHoldsMore: {func(u Units, d doubt.Doubt) string {
		return u.kg(d.Said) + " made of " + u.kg(d.Against)
	}, "a piece heavier than what it is of"},
	doubt.DenserThanIron: {func(_ Units, d doubt.Doubt) string { return denser(d.Said) }, "denser than iron"},
	doubt.PrintDisagrees: {func(u Units, d doubt.Doubt) string { return u.printed(d.Printed) }, "a figure in print that is off"},
}

// goethiteWeighs is the formula weight of FeOOH, g/mol, which stands in tables beside its
// share of iron and is taken for it.
var goethiteWeighs = 1000 * physics.Goethite.MolarMass()

// tooMuchIron names the likeliest slip: a formula weight, else an oxide's share.
func tooMuchIron(d doubt.Doubt) string {
	said := percent(d.Said) + " iron: "
	switch {
	case math.Abs(d.Said-goethiteWeighs) < 0.5:
		return said + "none holds that; " + plain(goethiteWeighs) + " is the formula weight of FeOOH"
	case d.Assay.Kind == physics.IronImpossible && d.Said*physics.Hematite.IronShare() <= 100*physics.Goethite.IronShare():
		return said + "none holds that; Fe2O3 given as iron would be " + percent(d.Said*physics.Hematite.IronShare())
	}
	return said + "more than " + percent(d.Against) + ", all that the mineral holds"
}

func sumCause(d physics.AssayDoubt) string {
	switch d.Kind {
	case physics.SumLacksLoss:
		return "is the loss on ignition left out"
	case physics.SumLacksOxygen:
		return "is some FeO in truth Fe2O3"
	case physics.SumIronTwice:
		return "does the iron stand twice"
	case physics.SumOxygenCounted:
		return "was the loss put right for oxygen already"
	case physics.SumFerric:
		return "is some Fe2O3 in truth FeO"
	case physics.SumTooMuch:
		return "too much"
	}
	return "were some oxides not measured"
}
