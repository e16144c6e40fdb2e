package rehearse

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/truth"
)

// round goes round the furnace: peep and sound each time, slag and flame now and then, the meter where there is one. What it
// sees it keys, and answers as crews do.
func (c *crew) round() {
	c.rounds++
	c.peep = c.look(entry.AtPeep, c.f.Peep())
	sound := c.look(entry.AtSound, c.f.Sound())
	slag := ""
	if at, ok := c.f.Befalls(truth.Crack); ok && !c.cracked && c.now() >= at+cracksShow { // nobody who goes round misses it
		c.cracked = true
		c.key(c.now(), entry.WallSeen{What: entry.WallCrack})
	}
	if c.firstOre > 0 && c.rounds%2 == 0 {
		slag = c.look(entry.AtSlag, c.f.Slag())
	}
	if !c.f.TopAlight() {
		c.look(entry.AtTopGas, entry.TopGasOut)
		c.after(40, func() {
			c.f.LightTop()
			c.look(entry.AtTopGas, entry.TopGasAlight)
		})
	} else if c.rounds%3 == 0 {
		c.look(entry.AtFlame, c.f.Flame())
	}
	if lMin, ok := c.f.MeterReads(); ok && math.Abs(lMin-c.keyedLMin) > 0.06*c.setLMin {
		c.keyBlast(lMin)
	}
	if c.peep == entry.PeepDim || c.peep == entry.PeepDark || sound == entry.SoundWeak {
		c.rod()
	}
	if sound == entry.SoundGurgle || slag == entry.SlagAtTuyere {
		c.tap()
	}
	if usual := c.usual(); usual > 0 && c.now()-c.lastCharge > 1.8*usual && c.setLMin > 0 && sound == entry.SoundSteady {
		c.poke()
	}
}

// look keys a sight, if there is one.
func (c *crew) look(at entry.LookAt, sees string) string {
	if sees != "" {
		c.key(c.now(), entry.Look{At: at, Sees: sees})
	}
	return sees
}

func (c *crew) rod() {
	if c.ignores(truth.TuyereBlocked, truth.BlowerDying) {
		return
	}
	c.after(answers, func() {
		c.f.Rod()
		c.key(c.now(), entry.Rod{})
		c.after(30, func() { c.peep = c.look(entry.AtPeep, c.f.Peep()) })
	})
}

func (c *crew) tap() {
	c.after(answers, func() {
		c.key(c.now(), entry.Arch{Open: true})
		c.after(60, func() {
			if kg := c.f.Tap(); kg > 0.2 {
				c.key(c.now(), entry.Tap{Mass: entry.Some(entry.Kilogram(math.Round(5*kg) / 5))})
			} else {
				c.look(entry.AtSlag, entry.SlagStiff)
			}
			c.later(5, entry.Arch{})
		})
	})
}

func (c *crew) poke() {
	if c.ignores(truth.Bridge, truth.BlowerDying, truth.TuyereBlocked, truth.Crack) {
		return
	}
	c.after(answers, func() {
		c.f.Poke()
		c.key(c.now(), entry.Poke{})
	})
}

// usual is how long a bucket has lasted, s, on the mean of the last four.
func (c *crew) usual() float64 {
	n := len(c.chargesAt)
	if n < 5 {
		return 0
	}
	return (c.chargesAt[n-1] - c.chargesAt[n-5]) / 4
}
