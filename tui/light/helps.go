package light

import "chargehand/tui/words"

// numbers are the fields that somebody has to measure, the one first whose
// measuring tells most (common practice: the ratio rests on the scoop, the burn
// rate on the bucket).
var numbers = []field{oreKg, charcoalKg, boreCm, stackCm, rimCm, baseCm}

// unmeasured are those of them that are a guess or blank.
func (f Screen) unmeasured() []field {
	var left []field
	for _, id := range numbers {
		if f.rows[id].input.Trimmed() == "" || f.isGuess(f.starters[f.starter], id) {
			left = append(left, id)
		}
	}
	return left
}

// toMeasure says how a number comes to be measured, and what that tells.
func (f Screen) toMeasure(id field) words.ToMeasure {
	named := func(name field, any string) string {
		if text := f.rows[name].input.Trimmed(); text != "" {
			return text
		}
		return any
	}
	switch id {
	case oreKg:
		return words.WeighOne(named(oreName, words.AnyOre), words.TellsOre)
	case charcoalKg:
		return words.WeighOne(named(charcoalName, words.AnyCharcoal), words.TellsCoal)
	case boreCm:
		return words.ToMeasure{Do: words.MeasureBore, Tells: words.TellsBore}
	case stackCm:
		return words.ToMeasure{Do: words.MeasureMark, Tells: words.TellsMark}
	case baseCm:
		return words.ToMeasure{Do: words.MeasureBase, Tells: words.TellsBase}
	}
	return words.ToMeasure{Do: words.MeasureRim, Tells: words.TellsRim}
}
