package words

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/learn"
	"chargehand/model/plan"
	"chargehand/physics"
)

// The plan on the command line.
const (
	PlanDoes = "says how much ore a wanted bloom, billet or bar takes and how sure that is, what else is needed, and how to charge; works without a book"

	FlagBloom       = "the bloom that is wanted, `kg`"
	FlagBillet      = "the billet that is wanted, `kg`"
	FlagBar         = "the bar that is wanted, `kg`"
	FlagSure        = "how sure it is to be, a `share` from 0 to 1"
	FlagBlast       = "the blast, `l/min`, where it was measured"
	FlagPlanFurnace = "the furnace: its `name` in the book, or a name with sizes in cm: \"Reed Hollow,bore=25,stack=50\""
	FlagOre         = "the ore: its `lot` in the book"
	FlagForge       = "what the forge burns for a billet or bar, its `fuel`: charcoal, coal or gas"
	FlagSeedSlag    = "iron-rich slag put in before the first ore, `kg` (default: up to 2 of what there is)"
	FlagBands       = "solve each way in eight plausible furnaces for wider, fairer bands of the hearth: some seconds"

	PlanWantsOne = "wants one of --bloom KG, --billet KG and --bar KG"
)

// PlanKg refuses an amount.
func PlanKg(kg float64) string {
	return fmt.Sprintf("%g kg cannot be planned for: give more than 0 and at most 1000", kg)
}

// PlanSure refuses a chance.
func PlanSure(share float64) string {
	return fmt.Sprintf("--sure %g is no chance: give a number from 0 to 1, as 0.7 for 7 in 10", share)
}

// PlanBlast refuses a blast.
func PlanBlast(lMin float64) string {
	return fmt.Sprintf("--blast %g is no blast: give l/min, or leave it out when it was not measured", lMin)
}

// PlanForge refuses a fuel.
func PlanForge(s string) string {
	return fmt.Sprintf("--forge %q is not known: give charcoal, coal or gas, or leave it out", s)
}

// PlanSeedSlag refuses an amount.
func PlanSeedSlag(kg float64) string {
	return fmt.Sprintf("--seed-slag %g is no amount: give 0 to 20 kg", kg)
}

// PlanSolving says how far the bands are.
func PlanSolving(done, of int) string {
	return fmt.Sprintf("solved in %d of %d plausible furnaces", done, of)
}

// NoSuchFurnace says so.
func NoSuchFurnace(name string) string {
	return fmt.Sprintf("no furnace %q in the book: chargehand furnace lists them; or give sizes: \"%s,bore=25,stack=50\"", name, name)
}

// NoSuchOre says so.
func NoSuchOre(name string) string {
	return fmt.Sprintf("no lot of ore %q in the book: chargehand stores lists them", name)
}

// NIn10 says a chance as so many in ten.
func NIn10(chance float64) string {
	switch n := math.Round(10 * chance); {
	case chance < 0.05:
		return "hardly ever"
	case n > 9 || chance > 0.95:
		return "almost surely"
	default:
		return fmt.Sprintf("about %.0f in 10", n)
	}
}

var fearWords = map[plan.Fear]string{
	plan.FearLong:   "a long day: over 7 1/2 hours of blast",
	plan.FearCold:   "ore before the charcoal has burned 45 min: look into the peep first",
	plan.FearRich:   "much ore at once: hold the ore when the peep darkens",
	plan.FearHearth: "the model fears a cold hearth",
	plan.FearStiff:  "the model fears stiff slag",
	plan.FearCast:   "the model fears cast iron",
}

// PlanFear says what is feared of a way to charge.
func PlanFear(f plan.Fear) string { return fearWords[f] }

// AfterLight says a time since the wood fire was lit.
func AfterLight(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

var dayWords = map[plan.Happening]string{
	plan.LightWood: "light the wood fire", plan.Filling: "fill with charcoal, blast on", plan.CharcoalOnly: "charcoal only, until the peep is white",
	plan.OverLastOre: "last ore is in: cover it with charcoal", plan.BurningDown: "burn-down: tools and people ready", plan.Pulling: "pull the bloom",
}

// OfTheDay is a line of the day's clock.
func OfTheDay(m plan.Moment) string {
	switch m.What {
	case plan.FirstOre:
		return "first ore: " + grams(m.Ore) + " dry to a measure of charcoal"
	case plan.OreRises:
		return "ore: " + grams(m.Ore) + " dry to a measure"
	case plan.SlagFirst:
		return "seed slag, iron-rich: " + grams(m.Slag) + " to a measure"
	}
	return dayWords[m.What]
}

func grams(kg float64) string { return strings.TrimSuffix(fmt.Sprintf("%.2f", kg), "0") + " kg" }

var needWords = map[plan.Need]string{
	plan.NeedOreRoasted: "ore, roasted, dry", plan.NeedOreRaw: "ore, as dug, dry", plan.NeedCharcoal: "charcoal, dry", plan.NeedCharcoalForge: "charcoal for the forge",
	plan.NeedWood: "wood, dry, if all charcoal is burnt from it", plan.NeedClay: "clay mix, dry", plan.NeedHours: "hours", plan.NeedHands: "hands",
}

var pieceWords = map[entry.PieceKind]string{entry.BloomPiece: "bloom", entry.Billet: "billet", entry.Bar: "bar"}

// Plan is a plan in words, with what the solver foresees of each way to charge.
func Plan(p plan.Plan, foreseen []plan.Foreseen) string {
	var b strings.Builder
	line := func(format string, a ...any) { fmt.Fprintf(&b, strings.TrimRight(format, " ")+"\n", a...) }
	line("Wanted: a %s of %s, %s.", pieceWords[p.What], planned(p.Kg, "kg"), NIn10(p.Sure))
	line("")
	if p.Smelts < 2 {
		line("No compact bloom at all: about 3 to 8 in 10 in a crew's first two smelts (at one open meeting 3 of 10 gave a bloom, 4 only pieces, 3 nothing).")
	} else {
		line("No compact bloom at all: %s, by %s.", NIn10(p.None.P50), byOwn(p.Failures, p.Smelts))
	}
	if p.ByBillet() {
		b := learn.Billet(p.Billets)
		line("A billet, where there is a bloom: %.0f to %.0f %% of the ore, most likely about %.0f %%%s. The plan goes by that.", 100*b.P10, 100*b.P90, 100*b.P50, yieldOf(len(p.Billets)))
	}
	line("A bloom, where there is one: %.0f to %.0f %% of the ore, most likely about %.0f %%%s.", 100*p.Yield.P10, 100*p.Yield.P90, 100*p.Yield.P50, yieldOf(len(p.Yields)))
	if p.Ore.Most > 0 {
		line("By its assay this ore gives at most %.0f %% of itself.", 100*p.Ore.Most)
	}
	line("")
	for _, o := range p.Offers {
		if o.Ore > 0 {
			line("  %-12s of %s ore each: %s", smelts(o.Smelts), planned(o.Ore, "kg"), NIn10(o.Chance))
		} else {
			line("  %-12s %s at most, with %d kg of ore each", smelts(o.Smelts), NIn10(o.Chance), plan.MostOre)
		}
	}
	o, ok := p.Offer()
	if !ok {
		line("")
		said := "No amount of ore gives that chance. Ask for less"
		if sure := math.Floor(10*p.Offers[len(p.Offers)-1].Chance) / 10; sure > 0 {
			said += fmt.Sprintf(", or be content with less certainty: --sure %.1f", sure)
		}
		line("%s.", said)
		return b.String()
	}
	if p.Smelts == 0 {
		line("  For a first smelt 15 to 25 kg of ore is advised, never under 9.")
	}
	line("")
	line("It takes, for %s:", smelts(o.Smelts))
	for _, n := range p.Needs {
		line("  %-44s %s", needWords[n.Need], needed(n))
	}
	switch {
	case !p.Forges():
	case p.Forge == "":
		line("  The forge: its fuel was not said; the charcoal stands there in case it burns that (--forge charcoal, coal or gas).")
	case p.Forge != entry.ForgeCharcoal:
		line("  The forge burns %s: how much of it is not known.", p.Forge)
	}
	line("  Needs are dry and less fines. Marked (guessed): a weighing of your own would replace it.")
	for _, s := range p.TooShort {
		line("  too little: %s: %s needed, %s left", needWords[s.Need], planned(s.Take, "kg"), planned(s.Left, "kg"))
	}
	for i, w := range p.Ways {
		line("")
		h := p.Hours(w)
		line("%s%s: %s ore, %s charcoal, %.0f to %.0f hours from the wood fire to the bloom", strings.ToUpper(w.Name[:1]), w.Name[1:], planned(w.Ore, "kg"), planned(w.Charcoal, "kg"), h.P10, math.Ceil(h.P90))
		line("  %s", strings.Join(steps(w), ", "))
		if i < len(foreseen) && foreseen[i].Known {
			line("  the model's hearth: %s", about50(foreseen[i].Hearth))
		}
		fears := w.Fears
		if i < len(foreseen) {
			fears = append(fears[:len(fears):len(fears)], foreseen[i].Fears...)
		}
		for _, f := range fears {
			line("  ! %s", fearWords[f])
		}
	}
	if trend(foreseen) {
		line("")
		line("That the hearths and the fears of these differ: %s:", TrendNotShown)
		line("with as much ore each has the same chance.")
	}
	if w, ok := p.Usual(); ok {
		line("")
		line("The day, charged as usual (hours and minutes from the wood fire on):")
		for _, m := range p.Day(w) {
			line("  %5s  %s", AfterLight(m.After), OfTheDay(m))
		}
	}
	line("")
	line("This knows only what was keyed. Fire ban, wind, gas and people you judge yourself;")
	line("local codes and licensed practice come first.")
	return b.String()
}

func byOwn(failures, smelts int) string {
	return fmt.Sprintf("%d of %d own smelts and one in ten before them", failures, smelts)
}

func yieldOf(own int) string {
	switch own {
	case 0:
		return ", as published smelts gave"
	case 1:
		return ", by published smelts and one of your own on this ore mix"
	}
	return fmt.Sprintf(", by published smelts and %d of your own on this ore mix", own)
}

func smelts(n int) string {
	return [...]string{"", "one smelt", "two smelts", "three smelts"}[n]
}

func steps(w plan.Charging) (all []string) {
	for _, s := range w.Steps {
		switch {
		case s.Does == entry.StepFill:
			all = append(all, fmt.Sprintf("fill %d measures", s.Charges))
		case s.Does == entry.StepBurnDown:
			all = append(all, fmt.Sprintf("burn-down %.0f min", s.Minutes))
		case s.Ore > 0:
			all = append(all, fmt.Sprintf("%d x %s", s.Charges, grams(s.Ore)))
		case s.Slag > 0:
			all = append(all, fmt.Sprintf("%d x %s seed slag", s.Charges, grams(s.Slag)))
		case s.Does == entry.StepLastOre:
			all = append(all, fmt.Sprintf("%d of charcoal over the last ore", s.Charges))
		default:
			all = append(all, fmt.Sprintf("%d of charcoal only", s.Charges))
		}
	}
	return all
}

func needed(n plan.Needed) string {
	if !n.Known {
		return "not known"
	}
	if n.Wide() {
		return FarApart
	}
	text := planned(n.Band.P50, n.Unit)
	if !n.Point && n.Band.P90 > n.Band.P10 {
		text = fmt.Sprintf("%s to %s, about %s", planned(n.Band.P10, ""), planned(n.Band.P90, ""), planned(n.Band.P50, n.Unit))
	}
	if n.Basis == entry.BasisGuessed {
		text += " (guessed)"
	}
	return text
}

// planned is a number to two digits with its unit.
func planned(v float64, unit string) string {
	text := fmt.Sprintf("%.0f", v)
	if math.Abs(v) < 9.95 && v != math.Trunc(v) {
		text = fmt.Sprintf("%.1f", v)
	}
	return strings.TrimSpace(text + " " + unit)
}

// about50 is a temperature to 50 degrees with its band.
func about50(k physics.Band) string {
	c := func(k float64) float64 { return 50 * math.Round(physics.ToCelsius(k)/50) }
	return fmt.Sprintf("about %.0f C (%.0f to %.0f), a guess", c(k.P50), c(k.P10), c(k.P90))
}

// TrendNotShown stands wherever a trend of the model is printed that is steeper than
// published smelts show.
const TrendNotShown = "the model believes this; published smelts do not show it"

// trend tells whether the model has the ways of charging differ.
func trend(foreseen []plan.Foreseen) bool {
	for _, f := range foreseen[min(1, len(foreseen)):] {
		first := foreseen[0]
		if f.Known && first.Known && (about50(f.Hearth) != about50(first.Hearth) || !slices.Equal(f.Fears, first.Fears)) {
			return true
		}
	}
	return false
}
