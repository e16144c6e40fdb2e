package tui

import (
	"chargehand/model/words"
	"chargehand/tui/paint"
)

// otherChemistry shows the shaft as chemistry, or in plain words again, where
// this layout shows it. It is a way of looking and no act.
func otherChemistry(sh shared, l paint.Layout) step {
	if l.Shaft.Empty() {
		return refused(words.NoShaftShown)
	}
	return step{chem: true, say: func(sh shared) string {
		if sh.chemistry {
			return words.ChemistryOn(fireMap.Chemistry.Help().Key)
		}
		return words.ChemistryOff
	}}
}

// chemistryHint is the key that does it.
func chemistryHint(sh shared) paint.KeyHint {
	if sh.chemistry {
		return short(fireMap.Chemistry, words.ShortPlain)
	}
	return short(fireMap.Chemistry, words.ShortChemistry)
}
