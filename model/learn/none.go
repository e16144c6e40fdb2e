package learn

import "chargehand/physics"

// The chance of no compact bloom: one failure in ten before anything is known of
// a crew that has smelted before, and the crew's own count beside it (assumed;
// 81 of 95 smelts of one team gave blooms, darkcompanyca.blogspot.com, 2024).
const (
	priorNone   = 1
	priorSmelts = 10
)

// FirstSmelts is how many smelts of a crew are its first, for which its own
// count says nothing yet.
const FirstSmelts = 2

// FirstNone is the chance of no compact bloom in a crew's first smelts: of ten
// furnaces at one open meeting three gave a compact bloom, four only pieces and
// three nothing (die-roemer-online.de, Rennfeuertreffen 2007).
var FirstNone = physics.Band{P10: 0.3, P50: 0.55, P90: 0.8}

// NoneRate gives the chance of no compact bloom of a crew that has smelted
// before: 1 + its failures to 10 + its smelts.
func NoneRate(failures, smelts int) float64 {
	return float64(priorNone+failures) / float64(priorSmelts+smelts)
}

// ChanceOfNone gives the chance of no compact bloom in a crew's next smelt:
// [FirstNone] in its first two, then [NoneRate] without a spread.
func ChanceOfNone(failures, smelts int) physics.Band {
	if smelts < FirstSmelts {
		return FirstNone
	}
	return physics.Exact(NoneRate(failures, smelts))
}
