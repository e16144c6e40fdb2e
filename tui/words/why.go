package words

import "fmt"

// Why: what one thing otherwise would have changed of a smelt that is over.
const (
	DoWhy      = "why: what one thing otherwise would have changed"
	DoWhyOrder = "rank by hours too cold, by ore not come down"
	ShortOrder = "rank otherwise"

	WhyTitle     = "why"
	WhyNoSmelt   = "no smelt is shown"
	WhyBurns     = "Why is asked once the smelt is over and all of it is known. While it burns, q at the fire tells the next hour."
	WhyNoOre     = "No ore was in it, so none could be lost: there is no why. Ask again of a smelt with ore."
	WhyLacks     = "The model of the shaft says nothing of this smelt: what it goes by is not known of it (the measures' weights, the blast, the charges)."
	WhyAsking    = "asking ..."
	WhyColdAt    = "hearth too cold, from the first ore on"
	WhyLeftAt    = "of the ore not come down when it was pulled"
	WhyOtherwise = "one thing otherwise"
	WhyHours     = "hours too cold"
	WhyLeft      = "ore not down, %"
	WhySure      = "in the furnaces"
	WhyInTruth   = "in truth: h, %, bloom"
	WhyByCold    = "ranked by the hours too cold"
	WhyByLeft    = "ranked by the ore not come down"
	WhyDay       = "the hearth over the day, as the model has it"
	WhyNotModel  = "the model does not know of it"
)

// WhyFailed says why the furnace of a rehearsal tells nothing.
func WhyFailed(err error) string {
	return "the furnace of this rehearsal tells nothing: " + err.Error()
}

// WhyColdLarge and WhyLeftLarge are the answers in large letters.
func WhyColdLarge(hours float64) string { return fmt.Sprintf("%.1f H", hours) }
func WhyLeftLarge(share float64) string { return fmt.Sprintf("%.0f %%", share) }

// SlagRunsFrom says from how hot on a hearth lets slag run.
func SlagRunsFrom(hot string) string { return "slag runs from " + hot + " on" }

// WhyHearth is the head over by how much the hearth would have been hotter.
func WhyHearth(unit string) string { return "hearth " + unit }

// WhyAsked says how many furnaces are still to be asked.
func WhyAsked(n, of int) string { return fmt.Sprintf("%d of %d furnaces asked ...", n, of) }
