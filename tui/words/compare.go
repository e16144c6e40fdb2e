package words

import (
	"fmt"

	"chargehand/model/compare"
	"chargehand/model/shelf"
	modelwords "chargehand/model/words"
)

// Comparing smelts.
const (
	DoCompare         = "compare smelts"
	DoMarkToCompare   = "mark to compare, two to four"
	DoCompareMarked   = "compare those marked"
	DoOthersToCompare = "choose others to compare"
	DoOpenPast        = "open it in the past"

	ShortMark    = "mark"
	ShortCompare = "compare"

	MarkTwoFirst     = "mark two to four smelts first: k on each"
	NoMoreToMark     = "four are marked: k on one of them takes its mark off"
	NothingToCompare = "nothing to compare: mark two to four smelts in the list of all (v s, then k on each)"
	NotToCompare     = "this line is no smelt"
	DifferedMost     = "what differed most"
	InWords          = "in words"
	CompareSmelt     = "smelt"
	CompareFirstOre  = "first ore"
	CompareScale     = "minutes up, ore down"
	CompareKey       = "one scale: a bar as high as its charge took minutes, as deep as its ore; white: slow for its day; line: burn-down"
	CompareKeyBold   = "one scale: a bar as high as its charge took minutes, as deep as its ore; bold: slow for its day; line: burn-down"
	CompareBurnDown  = "burn-down"
	ComparePull      = "pull"
	NoDayRead        = "no charge is kept of it"
)

// ComparedAre says whether they are of one ore.
func ComparedAre(mix string) string {
	if mix == "" {
		return "ore mixes not named alike"
	}
	return "one ore mix: " + mix
}

// CompareHead is a measure over its column.
func CompareHead(m compare.Measure) string {
	switch m {
	case compare.Ore:
		return "ore dry"
	case compare.Ratio:
		return "charcoal/ore"
	case compare.PerBloom:
		return "charcoal/bloom"
	case compare.Rise:
		return "full ore"
	}
	return modelwords.CompareWord(m)
}

// DifferedLarge is a measure in large letters.
func DifferedLarge(m compare.Measure) string {
	switch m {
	case compare.Ratio:
		return "charcoal"
	case compare.Interval:
		return "minutes"
	case compare.Rise:
		return "ore rise"
	}
	return modelwords.CompareWord(m)
}

// CompareGave is what came of a smelt, in a few words.
func CompareGave(u modelwords.Units, l shelf.Summary) string {
	bloom := u.CompareValue(l, compare.Bloom)
	if bloom == "" {
		return BloomUnweighed
	}
	if y := u.CompareValue(l, compare.Yield); y != "" && l.Bloom.Positive() {
		return bloom + ", " + y
	}
	return bloom
}

// HoursOn is so many hours after the first ore.
func HoursOn(h float64) string { return fmt.Sprintf("+%g h", h) }

// Marked is how many smelts are marked.
func Marked(n int) string {
	if n < 2 {
		return fmt.Sprintf("%d marked: k on another", n)
	}
	return fmt.Sprintf("%d marked: m compares them", n)
}
