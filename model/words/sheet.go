package words

import (
	"errors"
	"fmt"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/paper"
)

// The sheet of paper for a smelt to come.
const (
	SheetDoes = "writes the paper log of a plan with its clock times, and a page for the wall, for a browser or the printer; works without a plan"

	FlagSheetPlan = "the plan: its `name` in the book; the newest when left out"
	FlagBlank     = "nothing planned on it"
	FlagWoodFire  = "the `time` at which the wood fire is lit, as 08:00; else as the plan says"

	SheetWantsOut = "sheet: wants --out FILE, the page to write"

	SheetTitle    = "Smelt log"
	SheetDay      = "day"
	SheetCrew     = "crew"
	SheetMeasures = "measures"
	SheetTrying   = "tried this time"
	SheetLessons  = "Last time"
	SheetLetters  = "Letters, as the program has them"
	SheetHow      = "A row: time, letter, what goes with it; a half is 1/2. Cross out, never rub out. To key the rows in at a go: e at the book, then p."
	SheetRows     = "The log"
	SheetBetween  = "in between: time, letter, amount"
	SheetPlanTime = "planned"
	SheetPlanned  = "planned charge"
	SheetYourTime = "time"
	SheetLetter   = "letter"
	SheetCharcoal = "charcoal"
	SheetOre      = "ore"
	SheetBurnDown = "burn-down"
	SheetLastOre  = "last ore is in"
	SheetWall     = "For the wall"
	SheetTheDay   = "The day"
	SheetWho      = "Who does what, and where to stand"
	SheetName     = "name"
	SheetDoing    = "does"
	SheetStands   = "stands"
	SheetHelp     = "If something happens"
	SheetOwn      = "Our own"
	SheetFoot     = "Times are the plan's, from the wood fire on; the fire keeps its own. Fire ban, wind, gas and people you judge yourself."
)

// SheetOf is the title of a sheet by a plan.
func SheetOf(plan string) string {
	if plan == "" {
		return SheetTitle
	}
	return SheetTitle + ": " + plan
}

// NoSuchPlan says so.
func NoSuchPlan(name string, have []string) string {
	said := fmt.Sprintf("no plan %q in the book", name)
	if len(have) == 0 {
		return said + ": take one on the screen of the plan, or leave --plan out for a log with nothing planned"
	}
	return said + ": there is " + strings.Join(have, ", ")
}

// BadWoodFire refuses a time.
func BadWoodFire(text string) string {
	return fmt.Sprintf("--at %q is no time: give it as 08:00", text)
}

// SheetWanted is what a plan is for, and how sure that is.
func SheetWanted(u Units, p entry.Plan) string {
	said := PieceKind(p.Wanted.What)
	if p.Wanted.Mass.Known {
		said += " of " + u.Kg(p.Wanted.Mass.Value)
	}
	if c, ok := p.Promised["chance"]; ok && c.P50.Known {
		said += ", " + NIn10(float64(c.P50.Value))
	}
	return said
}

// SheetParts is what goes in at one charge, as it is measured out.
func (u Units) SheetParts(ps entry.Parts) string {
	var all []string
	for _, p := range ps {
		switch {
		case p.Count.Known && p.Measure != "":
			all = append(all, Counted(p.Count.Value, p.Measure))
		case p.Mass.Known:
			all = append(all, u.Kg(p.Mass.Value)+" "+Material(p.What))
		}
	}
	return strings.Join(all, ", ")
}

// The lines of the day.
const (
	DayWoodFire = "light the wood fire; the wall steams: nobody hurries it"
	DayLastOre  = "last ore is in: cover it with charcoal"
	DayBurnDown = "burn-down: tools, tongs and people ready, rope up"
	DayPull     = "pull the bloom: one leads; then weigh, put out, and one stays to watch"
)

// DayFill is the fill.
func DayFill(parts string) string { return "fill: " + parts + "; blast on" }

// DaySeedSlag is the iron-rich slag that starts the slag's bowl.
func DaySeedSlag(parts string) string { return "seed slag before the ore: " + parts + " at a time" }

// DayCharcoalOnly is what goes in before the ore.
func DayCharcoalOnly(parts string) string {
	return "charcoal only, " + parts + " at a time, until the peep is white"
}

// DayFirstOre is the first ore.
func DayFirstOre(parts string) string { return "first ore: " + parts }

// DayOre is the ore as it rises.
func DayOre(parts string) string { return "more ore: " + parts }

// UsualDay is the day without a plan.
var UsualDay = []string{
	DayWoodFire, "fill with charcoal; blast on", "charcoal only, until the peep is white", "first ore, a little to a measure of charcoal",
	"more ore every few charges", "full ore, as long as the peep stays bright", DayLastOre, DayBurnDown, DayPull,
}

// SheetRoles are who does what and where to stand (common practice).
var SheetRoles = []struct{ Does, Stands string }{
	{"leads; says when", "upwind, sees top, peep and log"},
	{"charges", "upwind of the top, arm's length, no face over the mouth"},
	{"blower and tuyere", "beside the tuyere, never in line with it; shade on"},
	{"log and clock", "upwind, out of the sparks"},
	{"taps, rods", "aside of the arch; dry hook, dry ground"},
	{"pulls, strikes", "tongs first, hammers opposite; the rest behind the rope"},
	{"fire watch, first aid", "in sight of all, water in hand; closes the day"},
	{"guests", "behind the rope, upwind, with one of the crew"},
}

var wallAsks = map[entry.WallQuestion]string{
	entry.WallWhere:  "where we are, so that an ambulance finds it",
	entry.WallNumber: "number to call",
	entry.WallWater:  "nearest water and extinguisher",
	entry.WallTold:   "who was told of the fire",
}

// WallAsks is a question of the wall page.
func WallAsks(q entry.WallQuestion) string { return wallAsks[q] }

// PaperDoes is what a letter of the paper log stands for.
func PaperDoes(l paper.Letter) string {
	switch {
	case l.Takes == paper.TakesOre:
		return "ore alone"
	case l.Takes == paper.TakesCharcoal:
		return "charcoal only"
	}
	return map[entry.Kind]string{
		entry.KindCharge: "charge", entry.KindBlast: "blast", entry.KindTap: "tap", entry.KindRod: "rod the tuyere", entry.KindLook: "look",
		entry.KindPoke: "poke the burden", entry.KindDip: "dip", entry.KindTemperature: "temperature in the peep", entry.KindWeigh: "weigh",
		entry.KindNote: "note", entry.KindLastOre: "last ore is in", entry.KindBurnDown: "burn-down",
	}[l.Kind]
}

// PaperTakes is what is written behind a letter.
func PaperTakes(t paper.Takes) string {
	return [...]string{
		paper.TakesNothing: "", paper.TakesBoth: "measures of charcoal, of ore (or kg)", paper.TakesOre: "measures, or kg", paper.TakesCharcoal: "measures, or kg",
		paper.TakesBlast: "l/min, on, off", paper.TakesMass: "kg, if weighed", paper.TakesLook: "white, dim; sound gurgle; slag runs",
		paper.TakesDepth: "cm below the rim", paper.TakesHeat: "°C", paper.TakesWeight: "bloom, slag, fragments; kg", paper.TakesWords: "words",
	}[t]
}

// PaperFault says what is wrong with a row, and what to do.
func PaperFault(err error) string {
	var f paper.Fault
	if !errors.As(err, &f) {
		return err.Error()
	}
	takes := ""
	if l, ok := paper.Of(f.Key); ok {
		takes = PaperTakes(l.Takes)
	}
	switch f.Wrong {
	case paper.NoTime:
		return fmt.Sprintf("%q is no time: begin with one, as 10:42", f.Text)
	case paper.NoLetter:
		return "no letter behind the time: as 10:42 c 1 4"
	case paper.NotALetter:
		return fmt.Sprintf("no act has the letter %q: c s f b t r l p i e w n m d", f.Text)
	case paper.TooFew:
		return fmt.Sprintf("%s takes more: %s", f.Key, takes)
	case paper.TooMany:
		if takes == "" {
			takes = "nothing"
		}
		return fmt.Sprintf("%q is too much: %s takes %s", f.Text, f.Key, takes)
	case paper.NotANumber:
		return fmt.Sprintf("%q is no number: %s takes %s", f.Text, f.Key, takes)
	case paper.TimeBack:
		return f.Text + " is before the row above: put the rows in their order"
	case paper.NoMeasure:
		return fmt.Sprintf("%q of which measure? none is named: give kg, as 1.9kg", f.Text)
	case paper.NotSeen:
		return fmt.Sprintf("%q is nothing to look for: as white, dim, sound gurgle", f.Text)
	case paper.NotWeighed:
		return fmt.Sprintf("%q is not weighed here: bloom, slag or fragments", f.Text)
	}
	return fmt.Sprintf("%s %s cannot be: check the number", f.Key, f.Text)
}
