package report

import (
	"chargehand/model/rule"
	"chargehand/model/words"
)

// cautions are all that the program knows, with what each rests on.
func cautions() []Caution {
	var all []Caution
	for _, c := range rule.Cautions {
		title, fact, care := words.Caution(c.ID)
		all = append(all, Caution{title, fact, care, c.Source})
	}
	return all
}
