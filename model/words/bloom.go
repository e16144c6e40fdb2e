package words

import (
	"fmt"

	"chargehand/model/figure"
	"chargehand/model/learn"
)

// BloomsHead is the head of the table of hindcast --blooms: yields in kg per kg
// of ore.
const BloomsHead = "DATE\tORE KG\tBLOOM KG\tYIELD\tFORECAST\t10 %\t90 %\tOWN BEFORE\tCHANCE OF NONE\tCREW\t"

// BloomsRow is one line of it.
func BloomsRow(t learn.Trial) string {
	date, yield := t.Date, "none"
	if date == "" {
		date = "unknown"
	}
	if y, ok := t.Yield(); ok {
		yield = fmt.Sprintf("%.3f", y)
	}
	return fmt.Sprintf("%s\t%.1f\t%.1f\t%s\t%.3f\t%.3f\t%.3f\t%d\t%.2f\t%s\t", date, t.Ore, t.Bloom, yield,
		t.Forecast.P50, t.Forecast.P10, t.Forecast.P90, t.Own, t.None, short(t.Crew))
}

// OreOf says of which ore the bloom will be, OreOfShort in fewer words.
func OreOf(r *figure.Reading) string { long, _ := oreOf(r); return long }

// OreOfShort is what OreOf says where there is little room.
func OreOfShort(r *figure.Reading) string { _, short := oreOf(r); return short }

func oreOf(r *figure.Reading) (long, short string) {
	if _, planned := r.OreToCome(); planned {
		return "from the ore planned", "of the plan's ore"
	}
	if r.OreTaken.P50 > 0 || r.LastOre || r.Phase.Over() {
		return "from all the ore it took", "of all its ore"
	}
	return "from the ore in so far", "of ore in so far"
}

// PerTenShort is the middle of a yield as people reckon it.
func PerTenShort(y figure.Figure) string { return Apart(y, plain(Rough(10*y.P50))+" kg of 10 kg ore") }

// PerTenOwn says as well how many own smelts stand behind it.
func PerTenOwn(r *figure.Reading) string {
	said := PerTenShort(r.Figure(figure.Yield))
	if r.OwnYields > 0 {
		said += fmt.Sprintf(" with %d own", r.OwnYields)
	}
	return said
}

// PerTen is the same with its spread.
func PerTen(y figure.Figure) string {
	return Apart(y, fmt.Sprintf("%s kg of 10 kg ore (%s to %s)", plain(Rough(10*y.P50)), plain(Rough(10*y.P10)), plain(Rough(10*y.P90))))
}

// OwnMix says how many own smelts the yield rests on; nothing where it rests on
// published ones.
func OwnMix(r *figure.Reading) string {
	switch r.OwnYields {
	case 0:
		return ""
	case 1:
		return "with your 1 smelt on this ore mix"
	}
	return fmt.Sprintf("with your %d smelts on this ore mix", r.OwnYields)
}

// OwnEnds says how many own smelts the chance of none rests on.
func OwnEnds(r *figure.Reading) string {
	if r.OwnSmelts == 0 {
		return ""
	}
	return fmt.Sprintf("%d of your %d gave none", r.OwnFailures, r.OwnSmelts)
}

// OrNone is the chance of no compact bloom, in per cent, as it stands beside the
// forecast.
func OrNone(f figure.Figure) string {
	low, high := int(f.P10/10+0.5), int(f.P90/10+0.5)
	switch {
	case !f.Known():
		return ""
	case low == high:
		return "or none: " + InTen(f.P10/100)
	}
	return fmt.Sprintf("or none: %d to %d in 10", low, high)
}

// OrNoneBrief is the same in fewer words.
func OrNoneBrief(f figure.Figure) string {
	low, high := int(f.P10/10+0.5), int(f.P90/10+0.5)
	switch {
	case !f.Known():
		return ""
	case low == high:
		return fmt.Sprintf("none: %d in 10", low)
	}
	return fmt.Sprintf("none: %d-%d in 10", low, high)
}

// NotTaught says that the house's own smelts could not be read.
func NotTaught(err error) string {
	return "own smelts could not be read (" + err.Error() + "): the bloom is foretold by published ones"
}

// short cuts a long name.
func short(name string) string {
	const most = 32
	if r := []rune(name); len(r) > most {
		return string(r[:most-3]) + "..."
	}
	return name
}

// BloomsSum says how well the forecasts would have done, with the counts behind
// the shares.
func BloomsSum(h learn.Hindcast, left learn.LeftOut) []string {
	scores := func(name string, s learn.Scores) string {
		return fmt.Sprintf("%s: %.0f of %d in the band, %.3f wide, %.3f off, interval score %.3f", name, s.InBand*float64(s.N), s.N, s.Width, s.MeanError, s.IntervalScore)
	}
	said := []string{
		fmt.Sprintf("%d smelts, %d with a bloom, %.0f without; left out: %d totals and notes, %d without ore or bloom, %d with too little ore",
			h.None.N, h.N, h.None.Base*float64(h.None.N), left.NoSmelts, left.Unknown, left.TooLittle),
	}
	if h.N > 0 {
		said = append(said, scores("forecast", h.Scores), scores("one band for all (0.07 to 0.38)", h.Fixed),
			fmt.Sprintf("the forecast scores %.2f of the one band; less is better", h.IntervalScore/h.Fixed.IntervalScore))
	}
	if h.None.N > 0 {
		said = append(said, fmt.Sprintf("chance of no compact bloom: Brier score %.3f; who had known the share of %.2f would have scored %.3f",
			h.None.Brier, h.None.Base, h.None.Base*(1-h.None.Base)))
	}
	return said
}
