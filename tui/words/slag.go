package words

import (
	"math"
	"strings"

	"chargehand/model/plan"
	modelwords "chargehand/model/words"
)

// The slag check of a plan.
const (
	DoSlagCheck  = "the slag to expect"
	ShortSlag    = "slag"
	SlagAsks     = "only what was keyed and what is usual of it; the first tap tells more"
	SlagClosed   = "back to the plan"
	RemediesHead = "1 kg of it more, in the trade's order: where the slag then melts, the price"
)

// SlagComes is how much slag comes of what.
func SlagComes(u modelwords.Units, s plan.Slag) string {
	kg := func(v float64) string { return u.Value(v, "kg", 1) }
	said := kg(s.Of.Sum()) + " of slag: " + kg(s.Ore) + " from the ore, " + kg(s.Ash) + " ash, " + kg(s.Wall) + " clay worn from the wall (a guess), and " + kg(s.Iron) + " iron that is no bloom"
	if s.Seed > 0 {
		said += "; " + kg(s.Seed) + " seed slag is in it"
	}
	if s.Assumed {
		said += "; the ore is not analysed, a usual one is taken"
	}
	return said
}

// SlagOf is its composition.
func SlagOf(s plan.Slag) string {
	sum := s.Of.Sum()
	var said []string
	for _, p := range []struct {
		name string
		kg   float64
	}{{"iron oxide (FeO)", s.Of.FeO + 0.8998*s.Of.Fe2O3}, {"silica", s.Of.SiO2}, {"alumina", s.Of.Al2O3}, {"lime", s.Of.CaO}, {"manganese oxide", s.Of.MnO}, {"phosphorus oxide", s.Of.P2O5}} {
		if share := 100 * p.kg / sum; share >= 0.5 {
			said = append(said, p.name+" "+modelwords.Number(share, 0))
		}
	}
	return "of a hundred parts: " + strings.Join(said, ", ")
}

// SlagMelts is where it melts and how it runs at the heat of this plan.
func SlagMelts(u modelwords.Units, s plan.Slag) string {
	if s.Melts.IsZero() {
		return "where it melts: not known for such a slag"
	}
	c := func(k float64) float64 { return 50 * math.Round((k-273.15)/50) }
	said := "all molten at about " + u.Value(c(s.Melts.P50), "°C", 0) + " (" + modelwords.Number(c(s.Melts.P10), 0) + " to " + modelwords.Number(c(s.Melts.P90), 0) + ")"
	return said + "; at this plan's heat it runs in " + OfTen(s.Runs.Runs) + ", creeps in " + OfTen(s.Runs.Creeps) + ", stands in " + OfTen(s.Runs.Not)
}

// OfTen is a chance as so many of ten.
func OfTen(chance float64) string { return modelwords.Number(10*chance, 0) + " of 10" }

// SlagIndex is silica against iron, and against iron and manganese.
func SlagIndex(s plan.Slag) string {
	return "silica to iron oxide, 2.39 SiO2 / FeO: " + modelwords.Number(s.Index, 2) + " (" + modelwords.Number(s.Indices.P10, 2) + " to " + modelwords.Number(s.Indices.P90, 2) + "), with manganese " + modelwords.Number(s.IndexMn, 2) + "; old slags 0.7 to 1.5"
}

// SlagVerdict is what to make of it.
func SlagVerdict(s plan.Slag) string {
	switch {
	case s.Stiff:
		return "it may stand: help it run, or hotter and slower"
	case s.PoorOfOre:
		return "little silica to iron: it runs, and its iron is lost for want of heat and time, not of flux"
	}
	return "as old slags were: nothing need go in"
}

// RemedyName is what goes in, marked where it helps against what this slag has.
func RemedyName(r plan.Remedy) string {
	said := string(r.Name)
	if r.Name == plan.IronSlag {
		said = "slag of last time"
	}
	return said
}

// RemedyDoes is what a kg of it does to the slag.
func RemedyDoes(u modelwords.Units, r plan.Remedy) string {
	if r.Melts.IsZero() {
		return "not known"
	}
	return u.Value(50*math.Round((r.Melts.P50-273.15)/50), "°C", 0)
}

// RemedyPrice is what a kg of it costs.
func RemedyPrice(u modelwords.Units, r plan.Remedy) string {
	switch r.Name {
	case plan.IronSlag:
		return "brings up to " + u.Value(r.Brings, "kg", 1) + " iron of its own"
	case plan.WoodAsh:
		return "takes up to " + u.Value(r.Takes.P50, "kg", 1) + " iron; keep it dry"
	case plan.Sand:
		return "takes up to " + u.Value(r.Takes.P50, "kg", 1) + " iron into the slag"
	}
	return "stiffens beyond a little; burns eyes: goggles"
}
