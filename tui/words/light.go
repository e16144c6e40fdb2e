package words

import (
	"slices"
	"strconv"
	"strings"

	"chargehand/model/entry"
)

// The form before light.
const (
	LightAsks        = "furnace and measures"
	DoStarter        = "another starter"
	DoStarterBack    = "the starter before"
	FormStarter      = "begin with"
	FormFurnace      = "name of the furnace"
	FormBore         = "bore at the tuyere"
	FormStack        = "mark above the tuyere"
	FormRim          = "rim above the tuyere"
	FormBase         = "tuyere above the floor"
	FormLot          = "from the lot"
	FormMends        = "what is put right here holds from the first charge on"
	FormLeftIn       = "left in it: slag, bloom"
	FormLeftNothing  = "blank: none; or s b e"
	LeftInWhat       = "left in it: s for slag, b for a bloom, e for embers, together as they were; blank for nothing"
	FormLitDay       = "lit on (2026-05-09)"
	FormLitAt        = "lit at"
	FormCharcoalName = "charcoal goes in by the"
	FormCharcoalKg   = "charcoal in one"
	FormOreName      = "ore goes in by the"
	FormOreKg        = "ore in one"
	FormOreCount     = "of these to a charge"
	FormTrying       = "tried this time"
	FormTryNothing   = "as before"
	FormInitials     = "your initials"
	FormGuess        = Guessed
	FormGuessLong    = "a guess, until you type your own"
	FormOfFurnace    = "furnace"
	FormOfMeasures   = "measures"
	FormUnmeasured   = "not measured yet, of those below"
	FormAllTheSame   = "none of them keeps you from lighting"
	FormNoneGuessed  = "every number is your own"
	FormHelpsMost    = "would help most"
	FormBegins       = "the smelt begins here, and at no key before"
	RimWord          = "rim"
	FormBlank        = "not known"
	FormNow          = "blank: now"
	FormNoLot        = "none named"
	LightMends       = "as it was lit"
	AsLit            = "as it was lit"
	DoMendLight      = "put it right"
	DoLastRow        = "the last row"
	DoFormEnter      = "next row; on the last, light"
	LightUnchanged   = "nothing was changed: it stays as it was lit"
	LitInFuture      = "that is still to come: the time as it was then"
	NoDay            = "the day as 2026-05-09"
	DayMissing       = "it needs its day, as 2026-05-09"
	FormWrong        = "here"
	StarterRow       = "left and right change the starter, on the first row only: go up to it"
	NotARow          = "nothing to type here: enter lights the fire, the arrows go up and down"
	NameMissing      = "it needs a name"
	NameIsNumber     = "a name, not a number"
	RimBelowMark     = "the rim cannot be below the charging mark: both count up from the tuyere"
	SameMeasure      = "charcoal and ore need measures of different names, so that each can be weighed"
)

// Unmeasured is how many of the numbers are not measured, for large letters.
func Unmeasured(n, of int) string { return strconv.Itoa(n) + " OF " + strconv.Itoa(of) }

// UnmeasuredLine is the same in a line.
func UnmeasuredLine(n, of int) string {
	return strconv.Itoa(n) + " of " + strconv.Itoa(of) + " numbers not measured yet"
}

// ToMeasure is what is to be weighed or measured, and what that tells.
type ToMeasure struct{ Do, Tells string }

// WeighOne is a measure that is to be weighed.
func WeighOne(measure, tells string) ToMeasure { return ToMeasure{"weigh a " + measure, tells} }

// What measuring a number of the form tells.
const (
	TellsOre    = "it sets ore, ratio and yield"
	TellsCoal   = "it sets burn rate and ratio"
	TellsBore   = "it sets the blast and the pace"
	TellsMark   = "it sets how long ore stays in the shaft"
	TellsRim    = "dips are counted from it"
	TellsBase   = "how high the slag stands goes by it"
	MeasureBore = "measure the bore"
	MeasureMark = "measure up to the mark"
	MeasureRim  = "measure up to the rim"
	MeasureBase = "measure floor to tuyere"
	AnyCharcoal = "measure of charcoal"
	AnyOre      = "measure of ore"
)

// Then joins what helps next.
func Then(what string) string { return "then " + what }

// NumberedMeasure is one of several, counted from the floor up.
func NumberedMeasure(measure string, n int) string { return measure + " " + strconv.Itoa(n) }

// BoreIs is the bore over the picture.
func BoreIs(width string) string { return "bore " + width }

// FillIs is what fills the furnace, FillMeasures in how many measures.
func FillIs(kg string) string { return "full to the mark: " + kg + " charcoal" }

// FillShort and BlastShort are the same where there is little room.
func FillShort(kg string) string { return "full: " + kg }

// BlastShort is the blast that good smelts used in such a bore.
func BlastShort(advised string) string { return "blast " + advised + " advised" }

// FillMeasures is a fill in measures.
func FillMeasures(n, measure string) string { return "about " + n + " times the " + measure }

// BlastFor is the blast for a bore: what is advised, and what good smelts used.
func BlastFor(advised, used string) string { return "blast " + advised + " advised, " + used + " used" }

// StarterArrows stand behind it where there is room.
const StarterArrows = ", ← →"

// StarterOf says which of the starters is shown.
func StarterOf(n, of int) string {
	return strconv.Itoa(n) + " of " + strconv.Itoa(of)
}

// AsIn names a starter after the smelt that it was used in.
func AsIn(id string) string { return "as in " + id }

// InField says which field is wrong, and how.
func InField(label, why string) string { return label + ": " + why }

// DoTo says that a key goes to a row.
func DoTo(row string) string { return "to: " + row }

// LightOnGuesses asks before a fire is lit with numbers that nobody measured.
func LightOnGuesses(n int) string {
	if n == 1 {
		return "one number is a guess, never measured here: light with it?"
	}
	return strconv.Itoa(n) + " numbers are guesses, never measured here: light with them?"
}

// EntryBeforeLight refuses a light after something that was done.
func EntryBeforeLight(clock string) string {
	return "something was done at " + clock + ": the fire was lit before that"
}

// MeasureCounted refuses another name for a measure that charges were counted in.
func MeasureCounted(name string) string {
	return "charges are counted by the " + name + ": its name stays, what it holds may change"
}

// OfHouse names a furnace of the house among those to begin with.
func OfHouse(name string) string { return name + ", of the house" }

// OfHousePlanned is the same with its plan.
func OfHousePlanned(name, plan string) string { return name + ", as planned: " + plan }

// LitWith says that a fire is lit, which words of what it was lit with are not understood,
// and by which plan it goes, if by one.
func LitWith(id, plan string, newer []*entry.BoundsError) string {
	said := Lit(id)
	if len(newer) > 0 {
		said = "lit; " + NotUnderstood(newer)
	}
	if plan != "" {
		said += "; charges go by the plan " + plan
	}
	return said
}

// NotUnderstood says which words of what was kept are of a newer version: they stay, and
// nothing is reckoned by them.
func NotUnderstood(newer []*entry.BoundsError) string {
	var all []string
	for _, w := range newer {
		if said := strings.ReplaceAll(w.Field, "_", " ") + " " + w.Given; !slices.Contains(all, said) {
			all = append(all, said)
		}
	}
	return "not understood, kept as it stands: " + strings.Join(all, ", ") + " (of a newer version)"
}
