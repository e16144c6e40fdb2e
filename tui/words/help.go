package words

import (
	"cmp"

	"chargehand/model/figure"
)

// The help.
const (
	HelpTyping  = "typing and keys"
	HelpFigures = "the figures"
	HelpBasis   = "what a figure rests on"
	Or          = " or "
)

// HelpDay heads the day in ten lines, HelpOfDay, with which the help begins.
const HelpDay = "the day in ten lines"

// HelpOfDay is what is done, in the order of a day (common practice).
var HelpOfDay = []string{
	"Light a small wood fire; it dries the wall for one to three hours.",
	"Blast on, low; fill the shaft with charcoal; light the gas at the top.",
	"Charge a measure of charcoal each time the burden has sunk by one: c.",
	"When the peep is white, the first ore, a scoop on each measure: s.",
	"More ore by steps, as long as the peep stays white and the pace holds.",
	"Charge when the large minutes have run down: c. From afar: space.",
	"Look now and then and say it: l, then p for the peep, m for the flame.",
	"When the slag rises or gurgles, tap: t. When the peep is dark, rod: r.",
	"After the last ore let it burn down, about half an hour, charcoal only.",
	"Pull the bloom with people and tools ready, then weigh it: w.",
}

// HelpKeysOf heads the keys of a screen, some of which a number pad doubles.
func HelpKeysOf(screen string, doubled bool) string {
	s := "keys: " + cmp.Or(screen, "every screen")
	if doubled {
		s += " (the second on a number pad)"
	}
	return s
}

// HelpOthers heads the list of rare acts.
func HelpOthers(key string) string { return DoOthers + ": " + key + ", then" }

// HelpAboutKeys says what holds for all keys.
var HelpAboutKeys = []string{
	"One bare key each, large or small letters alike. A number pad alone will do: its keys double the frequent acts.",
	"In a list one key chooses: its letter, or the number of its line. In a field digits, comma or point; on an AZERTY keyboard the top row counts as digits without shift. Enter ends a field, esc leaves it.",
	"A key that books an act and comes again at once is taken for a leaning glove and not booked. Scoops, minutes and arrows may be as quick as you like.",
	"Everything keyed is kept at once. Nothing is deleted: what is crossed out stays in the book and can be brought back.",
}

// HelpEstimates says what the estimates rest on.
var HelpEstimates = []string{
	"Each figure has a spread: one time in ten it lies below, one time in ten above. Weigh a measure once and every charge counted in it follows, those before too.",
	"Until they are reckoned from this smelt, what happens at each height and how hot it is there is a guess after one measured furnace.",
}

// Meaning is a figure's definition with its unit.
func Meaning(d figure.Definition) string {
	if d.Unit == "1" {
		return d.Meaning
	}
	return d.Meaning + ", " + d.Unit
}

// BasisMeans says what a basis is.
func BasisMeans(b figure.Basis) string {
	return [...]string{
		figure.Measured:  "read off an instrument, counted or weighed",
		figure.Estimated: "reckoned from what was measured",
		figure.Guessed:   "only usual values behind it: measure to make it better",
		figure.Unknown:   "not enough is known to say anything",
	}[b]
}
