package words

import (
	"strconv"
	"time"

	"chargehand/model/compare"
	modelwords "chargehand/model/words"
)

// The list of all smelts.
const (
	ShelfDay           = "day"
	ShelfBloom         = "bloom"
	ShelfOre           = "ore dry"
	ShelfCharcoal      = "charcoal"
	ShelfMarks         = "tried"
	ShelfTried         = "tried"
	DoInventedWeek     = "the invented week before the invented smelt: stores, furnace, plan"
	ShortWeek          = "invented week"
	ShelfPromised      = "wanted"
	ShelfNextTime      = "next time"
	ShelfFurnace       = "furnace"
	ShelfYield         = "yield of ore"
	ShelfHours         = "hours"
	ShelfHalves        = "in half hours"
	ShelfMeasured      = "measured of it, and where it lies among your others"
	ShelfMeasuredAlone = "measured of it; there is no other of yours to hold it against"
	ShelfKey           = "day: ore from the first; white: slow"
	ShelfKeyBold       = "day: ore from the first; bold: slow"
	ShelfBare          = "no smelt yet: v then a goes to the start, where one begins"
	MarkInvented       = "invented"
	MarkImported       = "imported"
	MarkUnfinished     = "not finished"
	BloomBurns         = "burns"
	BloomNone          = "none"
	BloomUnweighed     = "not weighed"
	BloomNever         = "never known"
	DayUnknown         = "no day"
	YieldDry           = "dry"
	YieldCharged       = "as charged"
)

// ShelfHolds is how many smelts stand on the shelf.
func ShelfHolds(n int) string {
	if n == 1 {
		return "1 smelt"
	}
	return strconv.Itoa(n) + " smelts"
}

// What the smelts of a crew gave: over the large letters, and under them.
const (
	GaveOf          = "gave a bloom, of those that are over"
	YieldOf         = "of the ore dry, the middle of them"
	NoneOver        = "no bloom weighed yet"
	NoYieldYet      = "no bloom weighed against its ore yet"
	ShelfTurnsAside = "enter shows the practice smelts, which are set aside"
	ShelfTurnsBack  = "enter goes back to all smelts"
	CountsNot       = "practice and what is invented count in none of this"
	BloomNotYet     = "its bloom is not weighed"
)

// OfLetters is so many of so many in large letters.
func OfLetters(n, of int) string { return strconv.Itoa(n) + " OF " + strconv.Itoa(of) }

// PercentLetters is a share in large letters.
func PercentLetters(share float64) string { return modelwords.Number(100*share, 0) + " %" }

// Percent is a share.
func Percent(share float64) string { return modelwords.Number(100*share, 0) + " %" }

// YieldsBetween is the least and the most yield, and how many there are.
func YieldsBetween(low, high float64, n int) string {
	if n == 1 {
		return "of one smelt"
	}
	return modelwords.Number(100*low, 0) + " to " + Percent(high) + ", of " + strconv.Itoa(n) + " smelts"
}

// NotWeighed is how many smelts are over without their bloom having been weighed.
func NotWeighed(n int) string {
	switch n {
	case 0:
		return "every bloom is weighed"
	case 1:
		return "of one more the bloom is not weighed"
	}
	return "of " + strconv.Itoa(n) + " more the bloom is not weighed"
}

// GaveLine is the same as the large letters in a line.
func GaveLine(n, of int) string {
	return strconv.Itoa(n) + " of " + strconv.Itoa(of) + " gave a bloom"
}

// YieldLine is the middle yield in a line.
func YieldLine(share float64) string { return "middle yield " + Percent(share) + " of the ore dry" }

// YieldWords is a yield with its base.
func YieldWords(share float64, dry bool) string {
	if dry {
		return Percent(share) + " " + YieldDry
	}
	return Percent(share) + " " + YieldCharged
}

// Lasted is how long a smelt took.
func Lasted(d time.Duration) string {
	m := int(d.Minutes()) // whole ones, as the result and the account say it
	if m < 60 {
		return strconv.Itoa(m) + " min"
	}
	two := strconv.Itoa(m % 60)
	if len(two) < 2 {
		two = "0" + two
	}
	return strconv.Itoa(m/60) + " h " + two
}

// PerBloom is the charcoal a kg of bloom.
func PerBloom(ratio string) string { return ratio + " kg charcoal as charged a kg of bloom" }

// Finding and sorting.
const (
	FindLine         = "find"
	TypeToFind       = "type words of a furnace, day, ore or name"
	FoundNone        = "no smelt has all of these words: esc shows all again"
	SortedByYield    = "most yield first"
	SortedByCharcoal = "least charcoal a kg of bloom first"
)

// Found is how many smelts have what was typed.
func Found(n int) string { return ShelfHolds(n) + " found" }

// PromisedCame is what was wanted of a smelt against what came.
func PromisedCame(wanted, came string) string {
	if came == "" {
		return wanted
	}
	return wanted + ", came: " + came
}

// NoOtherMeasured says that a measure is known of no other own smelt.
const NoOtherMeasured = "of no other of yours"

// OthersAt and OthersBetween say what the own others have.
func OthersAt(at string, n int) string { return at + " in " + others(n) }

func OthersBetween(low, high string, n int) string { return low + " to " + high + " in " + others(n) }

func others(n int) string {
	if n == 1 {
		return "1 other"
	}
	return strconv.Itoa(n) + " others"
}

// MeasureWord names a measure in a line of its own.
func MeasureWord(m compare.Measure) string {
	switch m {
	case compare.Ore:
		return "ore, dry"
	case compare.Charcoal: // and so in what is counted on it
		return "charcoal, as charged"
	case compare.Ratio:
		return "of it a kg ore, dry"
	case compare.PerBloom:
		return "of it a kg bloom"
	case compare.Interval:
		return "from charge to charge"
	case compare.Yield:
		return "bloom of the ore"
	}
	return modelwords.CompareWord(m)
}
