package words

import (
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
)

// The practice, which the shelf sets aside.
const (
	ShelfPractice = "practice ones"
	ShelfBack     = "back to all"
)

// PracticeHolds is how many practice smelts there are.
func PracticeHolds(n int) string { return "practice: " + ShelfHolds(n) }

// DoSettings opens the settings.
const DoSettings = "settings: units, bell, dark or light"

// BellIs says what the bell sounds for.
func BellIs(h rule.Heard) string {
	return [...]string{
		rule.HeardAct: "bell: for an ACT and what you ask for", rule.HeardAll: "bell: for a charge that is due too", rule.HeardOff: "bell: off",
	}[h]
}

// UnitIs says in which unit a quantity is read and typed.
func UnitIs(q modelwords.Quantity, unit string) string { return q.String() + " in " + unit }

// FromNowOn asks whether that is meant.
func FromNowOn(is string) string { return is + " from now on" }

// SettingsUnread says why the settings are not in force.
func SettingsUnread(why string) string {
	return "the settings cannot be read: " + why + "; units are metric"
}
