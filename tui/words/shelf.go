package words

import "strconv"

// The shelf.
const (
	ShelfSmelt     = "smelt"
	ShelfBloom     = "bloom"
	ShelfPhase     = "phase"
	ShelfCharges   = "charges"
	ShelfOre       = "ore"
	ShelfCharcoal  = "charcoal"
	ShelfMarks     = ""
	ShelfFurnace   = "furnace"
	ShelfBare      = "no smelt yet: v then a goes to the start, where one begins"
	MarkInvented   = "invented, to look at"
	MarkImported   = "imported"
	MarkUndated    = "imported, undated"
	MarkUnfinished = "not finished"
)

// ShelfHolds is how many smelts stand on the shelf.
func ShelfHolds(n int) string {
	if n == 1 {
		return "1 smelt"
	}
	return strconv.Itoa(n) + " smelts"
}
