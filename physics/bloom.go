package physics

import (
	"math"
	"sort"
)

// CarbonClass is what a smith would call the iron.
type CarbonClass int

// The classes of iron by carbon (common practice; the limits are round).
const (
	SoftIron   CarbonClass = iota // below 0.1 %: will not harden
	SteelyIron                    // 0.1 to 0.4 %: tougher, hardens a little
	Steel                         // 0.4 to 1 %: hardens
	HighCarbon                    // 1 to 2.1 %: brittle under the hammer when hot
	CastIron                      // above 2.1 %, the end of austenite at 1153 C: has been liquid
)

var carbonLimits = [...]float64{0.001, 0.004, 0.01, 0.021}

// CarbonClassOf gives the class of a mass share of carbon.
func CarbonClassOf(share float64) CarbonClass {
	for i, limit := range carbonLimits {
		if share < limit {
			return CarbonClass(i)
		}
	}
	return CastIron
}

// What a bloom is made of beside iron the shaft can count.
const (
	// BloomMetalShare is the metal in a fresh bloom by mass, 0.85-0.90 assumed by the reference notes; the rest is slag.
	BloomMetalShare = 0.87
	// FragmentShare is the part of the metal that comes out as bits beside the lump: 1 kg of bits beside 2.9 kg on 7 Nov 2009
	// (practice log), less in a good smelt (common practice).
	FragmentShare = 0.15
)

// BloomForecast gives the bloom in kg that a smelt ends with, from what the model makes of it (kg of bloom: metal less
// fragments over [BloomMetalShare]), the ore charged by then (kg) and what earlier blooms of this crew and furnace weighed
// against the model (true over forecast, in any order).
//
// Published yields run from 6 to 53 % of the ore, and one smelt of them says little about the next. With fewer than three
// blooms of one's own the band is that wide, around the model where it lies inside. From three on the middle is the model
// times their median ratio, and the spread is theirs, but never under 15 % and with the honest widening of few samples.
func BloomForecast(model, ore float64, ratios []float64) Band {
	const lowest, highest = 0.06, 0.53
	if !(model >= 0) || !(ore > 0) {
		return Band{}
	}
	if len(ratios) < 3 {
		return Band{P10: lowest * ore, P50: min(highest*ore, max(lowest*ore, model)), P90: highest * ore}
	}
	logs := make([]float64, 0, len(ratios))
	for _, r := range ratios {
		if r > 0 {
			logs = append(logs, math.Log(r))
		}
	}
	if len(logs) < 3 {
		return BloomForecast(model, ore, nil)
	}
	sort.Float64s(logs)
	n := float64(len(logs))
	median, mean, square := (logs[(len(logs)-1)/2]+logs[len(logs)/2])/2, 0.0, 0.0
	for _, v := range logs {
		mean += v / n
	}
	for _, v := range logs {
		square += (v - mean) * (v - mean) / (n - 1)
	}
	// Predictive: the next bloom scatters about a median that is itself uncertain; three samples count for less than many.
	const least = 0.15
	sd := math.Max(least, math.Sqrt(square*(1+1/n))*(1+1/n))
	return LogNormal(math.Max(model, 0.001*ore)*math.Exp(median), sd)
}

// ModelBloom gives the bloom in kg that metal in the hearth stands for.
func ModelBloom(metal float64) float64 { return metal * (1 - FragmentShare) / BloomMetalShare }

// TraceShares says where an ore's phosphorus and manganese go, as shares of what was charged: notes to a smith, not figures.
// Phosphorus is reduced at bloomery heat and follows the metal the more, the poorer the slag is in FeO; manganese hardly is
// and stays with the slag (common practice; the numbers are guesses).
func TraceShares(slag Oxides) (phosphorusToMetal, manganeseToMetal Band) {
	middle := 0.25
	if index := slag.ReducibleIronIndex(); index > 0 && !math.IsInf(index, 0) {
		middle = min(0.6, 0.2*index)
	}
	return Band{P10: middle / 3, P50: middle, P90: min(0.9, middle*2)}, Band{P10: 0, P50: 0.01, P90: 0.05}
}
