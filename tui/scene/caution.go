package scene

import (
	modelwords "chargehand/model/words"
	"chargehand/tui/draw"
	"chargehand/tui/words"
)

// CautionText is what a caution says; nil for none.
func CautionText(id string) *draw.CautionText {
	if id == "" {
		return nil
	}
	title, fact, care := modelwords.Caution(id)
	return &draw.CautionText{Title: title, Fact: fact, Care: care, Local: modelwords.LocalRules, Goes: words.CautionGoes}
}
