package physics

import "math"

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
	// BloomMetalShare is the metal in a fresh bloom by mass, 0.85 to 0.90 (assumed); the rest is slag.
	BloomMetalShare = 0.87
	// FragmentShare is the part of the metal that comes out as bits beside the lump: 1 kg of bits beside 2.9 kg on 7 Nov 2009
	// (testdata/logs, log 01), less in a good smelt (common practice).
	FragmentShare = 0.15
)

// ModelBloom gives the bloom in kg that metal in the hearth stands for. It is the model's, for the account and for comparing
// the model with published blooms; it foretells none: over 41 published smelts it has no correlation with what came out.
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
