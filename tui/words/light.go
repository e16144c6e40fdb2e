package words

import "strconv"

// The form before light.
const (
	LightAsks        = "furnace and measures"
	DoStarter        = "another starter"
	DoStarterBack    = "the starter before"
	FormStarter      = "begin with"
	FormFurnace      = "name of the furnace"
	FormBore         = "bore at the tuyere"
	FormStack        = "charging mark above the tuyere"
	FormRim          = "rim above the tuyere"
	FormCharcoalName = "charcoal goes in by the"
	FormCharcoalKg   = "which holds"
	FormOreName      = "ore goes in by the"
	FormOreKg        = "which holds"
	FormOreCount     = "of these with each charge"
	FormInitials     = "your initials"
	FormGuess        = "a guess, until you type your own"
	FormBlank        = "not known"
	FormWrong        = "here"
	StarterRow       = "left and right change the starter, on the first row only: go up to it"
	NotARow          = "nothing to type here: enter lights the fire, the arrows go up and down"
	NameMissing      = "it needs a name"
	RimBelowMark     = "the rim cannot be below the charging mark: both count up from the tuyere"
	SameMeasure      = "charcoal and ore need measures of different names, so that each can be weighed"
)

// StarterOf says which of the starters is shown.
func StarterOf(n, of int) string {
	return strconv.Itoa(n) + " of " + strconv.Itoa(of) + ", ← →"
}

// AsIn names a starter after the smelt that it was used in.
func AsIn(id string) string { return "as in " + id }

// InField says which field is wrong, and how.
func InField(label, why string) string { return label + ": " + why }
