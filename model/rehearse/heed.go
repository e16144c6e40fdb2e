package rehearse

import (
	"math"

	"chargehand/model/ahead"
	"chargehand/model/session"
)

// eachCharges is at every how manieth charge with ore a crew that heeds it looks at the next hour.
const eachCharges = 3

// heed does what the next hour advises, if it advises anything: a scoop less or more, no ore in the next two charges, the blast
// a step down or up.
func (c *crew) heed() {
	if c.withOre%eachCharges != 0 || c.recipe == 0 {
		return
	}
	s := session.Open(c.stream, c.entries)
	s = s.MoveTo(seconds(c.now()))
	a := ahead.Of(s).Advice
	if a.Choice == "" {
		return
	}
	c.advised++
	switch a.Choice {
	case ahead.LessOre:
		c.setRecipe(max(1, c.recipe-1))
	case ahead.MoreOre:
		c.setRecipe(c.recipe + 1)
	case ahead.CharcoalOnly:
		c.spared = 2
	case ahead.LessBlast:
		c.blast(math.Round(0.85*c.setLMin/10) * 10)
	case ahead.MoreBlast:
		c.blast(math.Round(1.15*c.setLMin/10) * 10)
	}
}
