package figure

import "chargehand/physics"

// The spreads of what the shaft solver says: fixed ones, from what its named
// numbers do over their ranges to the published smelt of 30 Nov 2016 (the report
// TestReportSensitivity of package physics), not an ensemble. Temperatures have
// theirs in physics.TemperatureBand.
const (
	// slagSpread: the numbers that move the iron (speed of reduction, contact,
	// raceway, reactivity of the charcoal) together move it by 3.9 of 7.1 kg;
	// what is not iron is slag, 5.0 of 18.2 kg. As the standard deviation of its
	// logarithm, with a little for the gangue of the ore.
	slagSpread = 0.30
	// slagIronSpread in points of a per cent: the same iron over the same slag,
	// and half the range of early slags (31 to 58 % iron, from memory).
	slagIronSpread = 13.0
	// gasSpread is how many times more or less CO there may be for the CO2: the
	// variants tried of the model lie between 4 and 20 where its prototype
	// gives 8 to 15.
	gasSpread = 2.0
	// holdsSpread, as the standard deviation of the logarithm, makes the band of
	// what burden and tuyere hold against the blast a factor of two wide each
	// way: fines alone double the burden's part (package physics).
	holdsSpread = 0.54
	// Less slag of the ore, or iron, than this, in kg, says nothing of its make-up;
	// leastFerrous is the least FeO in a kg of such slag (14 published ones hold 40
	// to 75 %), by which it is told from the ash of charcoal.
	leastSlag, leastFerrous, leastIron = 1.0, 0.4, 0.05
)

// carbonGas is CO over CO and CO2 in per cent.
func carbonGas(co, co2 float64) physics.Band {
	share := func(times float64) float64 { return 100 * co * times / (co*times + co2) }
	return physics.Band{P10: share(1 / gasSpread), P50: share(1), P90: share(gasSpread)}
}

// within is a band kept between nothing and a ceiling.
func within(p10, p50, p90, most float64) physics.Band {
	p50 = max(0, min(most, p50))
	return physics.Band{P10: max(0, min(p50, p10)), P50: p50, P90: max(p50, min(most, p90))}
}
