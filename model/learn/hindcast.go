package learn

import (
	"math"

	"chargehand/physics"
)

// Hindcast says how well the forecasts of a row of smelts would have done, each
// made from the smelts before it alone.
type Hindcast struct {
	Scores
	Fixed Scores `json:"fixed"` // the same of [FixedYield] on the same smelts
	None  None   `json:"none"`
}

// Scores are of the smelts that gave a bloom; widths and errors are in kg of
// bloom per kg of ore. Of no smelts all of them are nothing.
type Scores struct {
	N             int     `json:"n"`
	InBand        float64 `json:"in_band"`        // share of the yields from the 10th to the 90th percentile
	Width         float64 `json:"width"`          // mean of 90th less 10th percentile
	MeanError     float64 `json:"mean_error"`     // mean of |middle - yield|
	IntervalScore float64 `json:"interval_score"` // mean of width + 10 x how far outside (Gneiting and Raftery 2007, for 80 %)
}

// None scores the chance of no compact bloom, over all smelts.
type None struct {
	N     int     `json:"n"`
	Brier float64 `json:"brier"` // mean of (chance - what came)2, with 1 for none
	Base  float64 `json:"base"`  // share of the smelts that gave none; who had known it would score base (1 - base)
}

// FixedYield is the band that a forecast has to be worth its trouble against: of
// every smelt the same.
var FixedYield = physics.Band{P10: 0.07, P50: 0.20, P90: 0.38}

// Trial is one smelt with the forecasts made of it.
type Trial struct {
	Smelt
	Own      int // how many own smelts on the same mix went into the forecast
	Forecast physics.Band
	None     float64 // chance of no compact bloom
}

// Trials makes the forecasts of a row of smelts, in the order of [InOrder]. The
// chance of none is [NoneRate] from the first smelt on: these are tables of
// people who have smelted before.
func Trials(smelts []Smelt) []Trial { return trials(PriorWeight, smelts) }

func trials(weight float64, smelts []Smelt) []Trial {
	ordered := InOrder(smelts)
	var ts []Trial
	for i, s := range ordered {
		own := OwnYields(ordered[:i], s.Crew, s.Mix)
		ts = append(ts, Trial{s, len(own), yield(weight, own), NoneRate(Failures(ordered[:i], s.Crew))})
	}
	return ts
}

// Score sums up trials.
func Score(ts []Trial) Hindcast {
	h := Hindcast{Scores: score(ts, func(t Trial) physics.Band { return t.Forecast })}
	h.Fixed = score(ts, func(Trial) physics.Band { return FixedYield })
	h.None.N = len(ts)
	for _, t := range ts {
		came := 0.0
		if t.Bloom <= 0 {
			came = 1
		}
		h.None.Brier += (t.None - came) * (t.None - came) / float64(len(ts))
		h.None.Base += came / float64(len(ts))
	}
	return h
}

func score(ts []Trial, forecast func(Trial) physics.Band) (s Scores) {
	for _, t := range ts {
		y, ok := t.Yield()
		if !ok {
			continue
		}
		b := forecast(t)
		s.N++
		if b.P10 <= y && y <= b.P90 {
			s.InBand++
		}
		s.Width += b.P90 - b.P10
		s.MeanError += math.Abs(b.P50 - y)
		s.IntervalScore += intervalScore(b, y)
	}
	if s.N > 0 {
		n := float64(s.N)
		s.InBand, s.Width, s.MeanError, s.IntervalScore = s.InBand/n, s.Width/n, s.MeanError/n, s.IntervalScore/n
	}
	return s
}

// missWeight is 2/alpha of the interval score of a band of 1 - alpha = 80 %.
const missWeight = 10

func intervalScore(b physics.Band, y float64) float64 {
	return b.P90 - b.P10 + missWeight*max(0, b.P10-y, y-b.P90)
}
