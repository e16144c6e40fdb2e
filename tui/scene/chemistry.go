package scene

import (
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// ChemistryKey shows the shaft as chemistry, or in plain words again.
var ChemistryKey = screen.Bind(words.DoChemistry, "tab")

// Chemistry does that, where this layout shows the shaft. It is a way of looking
// and no act.
func Chemistry(l Layout) screen.Effect {
	if l.Shaft.Empty() {
		return screen.Refuse(words.NoShaftShown)
	}
	return screen.Each{screen.Chemistry{}, screen.Say(func(sh *screen.Shared) string {
		if sh.Chemistry {
			return words.ChemistryOn(ChemistryKey.Help().Key)
		}
		return words.ChemistryOff
	})}
}

// ChemistryHint is the key that does it.
func ChemistryHint(sh *screen.Shared) draw.KeyHint {
	if sh.Chemistry {
		return screen.Short(ChemistryKey, words.ShortPlain)
	}
	return screen.Short(ChemistryKey, words.ShortChemistry)
}
