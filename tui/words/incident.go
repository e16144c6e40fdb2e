package words

import "chargehand/model/entry"

// What went wrong with people or fire, and what to do first. Under alarm and unwell the
// order is that of any carbon monoxide: out into the air, help, nobody back (common
// practice; the emergency number is that of the place).
const (
	DoIncident       = "accident, alarm, unwell"
	IncidentWhat     = "what happened"
	IncidentAlarm    = "carbon monoxide alarm"
	IncidentUnwell   = "somebody unwell"
	IncidentBurn     = "a burn"
	IncidentFire     = "fire outside the furnace"
	IncidentNearMiss = "a near miss"
	IncidentOther    = "something else"
	IncidentMore     = "what about it"
	IncidentPPM      = "parts per million that the alarm shows"
	IncidentWhere    = "where"
	IncidentNote     = "in a few words"
	IncidentPeople   = "who, by initials"
	IncidentAgain    = "read again what to do first"
	IncidentClosed   = "read it again: o, y, r"
	IncidentRead     = "esc when read"
	IncidentKept     = "; more of it: the book, a"
)

// away is what is done first at an alarm, and where somebody is unwell.
var away = firstWords{"everybody away, into fresh air; then the emergency number", "all away"}

// firstWords say what to do first in the fewest words; large in letters of the face alone.
type firstWords struct{ title, large string }

var incidentWords = map[entry.IncidentWhat]firstWords{
	entry.IncidentAlarm: away, entry.IncidentUnwell: away,
	entry.IncidentBurn: {"cool it under running water for 20 minutes", "water 20 min"},
	entry.IncidentFire: {"people away first; then the fire brigade", "people away"},
}

// IncidentTitle says in the fewest words what to do first; nothing where it is not of people or fire.
func IncidentTitle(w entry.IncidentWhat) string { return incidentWords[w].title }

// IncidentLarge is the same to be read from across a yard.
func IncidentLarge(w entry.IncidentWhat) string { return incidentWords[w].large }

// IncidentFirst is why, and what to do in its order; nothing where it is not of people
// or fire.
func IncidentFirst(w entry.IncidentWhat) (why, care string) {
	switch w {
	case entry.IncidentAlarm, entry.IncidentUnwell:
		return "Take it for carbon monoxide until somebody who knows says otherwise: headache, dizziness, nausea and a weak mind come first, and it has no smell.",
			"Everybody away from the furnace and upwind, now. Call the emergency number and say carbon monoxide. Nobody goes back for the smelt or for a meter; who was unwell stays away today. The furnace may be left: it burns down by itself."
	case entry.IncidentBurn:
		return "Larger than the hand, in the face, on hands or joints, or white and without pain: the emergency number.",
			"Cool it at once under clean running water, about 20 minutes; rings and watch off before it swells; nothing that sticks to it is pulled off."
	case entry.IncidentFire:
		return "Water in the furnace or on slag bursts.",
			"People away first, then the fire brigade; then water or sand beside the furnace, as long as the way out stays free. Blast off if that lies on the way."
	}
	return "", ""
}
