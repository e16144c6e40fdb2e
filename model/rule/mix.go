package rule

import "chargehand/model/fold"

// What every smelter knows of the mix, whatever this smelt has done so far. It is told
// of two things that agree, or of the whole smelt: good runs were fast, and good ones
// were rich for a while.
const (
	// richMix is a ratio of ore to charcoal that no published smelt with a bloom had
	// over the whole, and leanAgain one that is not rich any more.
	richMix, leanAgain = 1.1, 1.0
	// richOver is over how many charges the mix is judged, and its burn: charges that come in
	// twos make three of them seem fast on a day that is not. richSmelt is how many with ore
	// make a smelt.
	richOver, richSmelt = 5, 5
	// fastMeasure and slowMeasure are minutes for one measure of charcoal, about 1.8 kg
	// (Markewitz 2018: under 6 and over about 14); fastAgain and slowAgain where they end.
	fastMeasure, fastAgain = 6.0, 7.0
	slowMeasure, slowAgain = 14.0, 13.0
	// bucket in kg is that measure, and leastMeasure the least that is taken for one.
	bucket, leastMeasure = 1.8, 0.85
)

// measure is how many minutes one measure of charcoal takes, over the last three
// intervals: as counted, or for a bucket's weight where nobody counted.
func (m *moment) measure() (float64, bool) { return measureOf(m.c.Burning()) }

// measureOf is how many minutes it took over some intervals.
func measureOf(b fold.Burn, ok bool) (float64, bool) {
	coal := b.Charcoal.Charged
	if !ok || b.Intervals < fewestOwn || b.Hours <= 0 {
		return 0, false
	}
	if !b.Counted {
		return b.Hours * 60 * bucket / coal.Kg, !coal.Unknown && coal.Kg > 0
	}
	n := float64(b.Measures)
	return b.Hours * 60 / n, coal.Unknown || coal.Kg/n >= leastMeasure
}

// ratio is ore to charcoal from one charge to the last complete one: the ore of the very
// last may be still to come.
func (m *moment) ratio(from int) (ratio float64, ok bool) {
	to := m.charges - 1
	if to >= 0 && !m.c.Charges[to].HasOre {
		to--
	}
	if from < 0 || from > to {
		return 0, false
	}
	var coal, ore float64
	for _, c := range m.c.Charges[from : to+1] {
		if c.Charcoal.Charged.Unknown || c.Ore.Charged.Unknown {
			return 0, false
		}
		coal, ore = coal+c.Charcoal.Charged.Sound().Kg, ore+c.Ore.Charged.Kg
	}
	return ore / coal, coal > 0
}

// mixRich: much ore, and so fast a burn that it has no time.
func mixRich(m *moment) (Evidence, bool) {
	ratio, known := m.ratio(m.charges - richOver)
	each, timed := measureOf(m.c.BurningOver(richOver))
	if !m.charging() || m.lastOre || !known || !timed {
		return nil, false
	}
	return Evidence{number("ratio", ratio, Ratio), number("each", each, Minutes)}, ratio > richMix && each < fastMeasure
}

func mixLean(m *moment, _ Warning) bool {
	ratio, known := m.ratio(m.charges - richOver)
	each, timed := measureOf(m.c.BurningOver(richOver))
	return !m.charging() || m.lastOre || !known || !timed || ratio < leanAgain || each > fastAgain
}

// ratioSmelt is the ratio since the first ore, once a smelt's worth of charges held it.
func (m *moment) ratioSmelt() (float64, bool) {
	first, ore := -1, 0
	for i := range m.charges {
		if m.c.Charges[i].HasOre {
			if ore++; first < 0 {
				first = i
			}
		}
	}
	if ore < richSmelt {
		return 0, false
	}
	return m.ratio(first)
}

// ratioHigh: more ore on the charcoal, all day, than gave anybody a bloom. A mix that is
// rich and fast just now is told as that.
func ratioHigh(m *moment) (Evidence, bool) {
	if _, rich := mixRich(m); rich || !m.charging() || m.lastOre {
		return nil, false
	}
	ratio, known := m.ratioSmelt()
	return Evidence{number("ratio", ratio, Ratio), number("most", richMix, Ratio)}, known && ratio > richMix
}

func ratioDown(m *moment, _ Warning) bool {
	ratio, known := m.ratioSmelt()
	return !m.charging() || m.lastOre || !known || ratio < (richMix+leanAgain)/2
}
