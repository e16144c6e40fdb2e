package ore

import (
	"chargehand/model/entry"
	"chargehand/physics"
)

// speaks is how much each sign speaks for good ore, or against it. Which way is published:
// dark red ore that sticks between the teeth like resin is the best, up to 49 % iron, brown
// with a little green middling, black, loose and earthy poor and thrown away (Norges land og
// folk, Hedemarkens amt 1); good ore is dense, about 4, and heated strongly turns black and
// magnetic (Orton, Underground Treasures); where sand was washed in it is poorer (Werner,
// Raseneisenerze). How much is assumed.
var speaks = map[entry.OreSign]float64{
	entry.SignDarkRed: 0.3, entry.SignSticky: 0.3, entry.SignHeavy: 0.3, entry.SignMagnetic: 0.2,
	entry.SignBrown: 0, entry.SignGritty: -0.4, entry.SignLight: -0.3, entry.SignBlack: -0.8, entry.SignNoMagnet: -0.5,
}

// mostMoved is how far signs move the middle towards an end of what is usual, with all of them
// speaking one way, as a share of the way there (assumed): they rank ores and measure none.
const mostMoved = 0.6

// bySigns moves a usual band of iron by what the ore shows: with good signs its middle and its
// low end go up, with poor ones its middle and its high end go down.
func bySigns(usual physics.Band, signs []entry.OreSign) physics.Band {
	sum := 0.0
	for _, s := range signs {
		sum += speaks[s]
	}
	by := mostMoved * max(min(sum, 1), -1)
	b := usual
	if by > 0 {
		b.P50 += by * (usual.P90 - usual.P50)
		b.P10 += by * (usual.P50 - usual.P10)
		return b
	}
	b.P50 += by * (usual.P50 - usual.P10)
	b.P90 += by * (usual.P90 - usual.P50)
	return b
}
