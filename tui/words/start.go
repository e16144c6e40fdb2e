package words

import (
	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"strconv"
)

// The start screen.
const (
	ProgramName = "chargehand"
	ProgramIs   = "the record and the sums of a smelt"
	PractiseIs  = "a smelt that counts for nothing; it asks nothing"
	SmeltIs     = "asks once for furnace and measures, then lights the fire"
	LookIs      = "every smelt kept here, and an invented one"

	ShelfBeingRead = "the shelf is still being read: a moment"
	NoneUnfinished = "no smelt was left unfinished"
)

// UnfinishedIs is the smelt to go on with.
func UnfinishedIs(id string, p entry.Phase, charges int) string {
	return id + ", " + modelwords.Phase(p) + ", " + Charges(charges)
}

// Charges is a number of charges.
func Charges(n int) string {
	switch n {
	case 0:
		return "no charge yet"
	case 1:
		return "1 charge"
	}
	return strconv.Itoa(n) + " charges"
}

// LeaveFor asks before another smelt takes the place of the running one.
func LeaveFor(id string) string { return "leave " + id + " as it stands" }

// Lit says that a smelt has begun.
func Lit(id string) string { return "the fire is lit: " + id }
