package words

import (
	"chargehand/model/entry"
	"chargehand/model/house"
	modelwords "chargehand/model/words"
)

// What one asks to be reminded of.
const (
	DoRemind   = "remind me"
	DoReminded = "end what you asked to be reminded of"

	RemindIn   = "remind me in"
	RemindWord = "of what, in a word"
	RemindHow  = "once, or each time"
	RemindOnce = "once"
	RemindEach = "each time so many minutes have gone by"
)

// WillRemind says that it will come up, and when.
func WillRemind(r entry.Remind) string {
	if r.Every.Positive() {
		return r.Word + ": each " + modelwords.Number(float64(r.Every.Value), 1) + " min, first at " + r.At.Format(modelwords.Clock)
	}
	return r.Word + ": at " + r.At.Format(modelwords.Clock)
}

// ComesUp is what has come up, and the key that ends it.
func ComesUp(d house.Due, key string) string {
	return "you asked for " + d.At.Format(modelwords.Clock) + ": " + d.Remind.Word + "; " + key + " ends it"
}

// ReminderAnswered says what became of it.
func ReminderAnswered(r, next entry.Remind) string {
	if next.Ended {
		return r.Word + ": done"
	}
	return r.Word + ": done, again at " + next.At.Format(modelwords.Clock)
}

// The first charge of a furnace that nobody filled.
const (
	NoFillKeyed = "no fill keyed: key it now"
	FillKeyed   = "filled to the mark, a minute before the charge; its weight is not known"
)
