package rehearse

import (
	"math"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/truth"
)

// next is the next charge as the crew keys it.
func (c *crew) next() entry.Parts {
	parts := entry.Parts{{What: entry.Charcoal, Lot: "charcoal", Measure: "bucket", Count: entry.Some(entry.Count(1))}}
	if c.recipe > 0 {
		parts = append(parts, entry.Part{What: entry.Ore, Lot: "ore", Measure: "scoop", Count: entry.Some(entry.Count(c.recipe))})
	}
	return parts
}

// aim settles how far from the mark the next charge will stand and how late it will be.
func (c *crew) aim() {
	c.ready = 0
	c.eye = c.f.MarkScatter / 100 * c.late.NormFloat64()
	c.waits = 60 * c.f.CrewLate * c.late.ExpFloat64()
}

// charging charges once there has been room for a bucket for as long as the crew takes.
func (c *crew) charging() {
	now := c.now()
	bore := c.f.BoreCm / 100
	bucket := bucketKg * c.f.BucketOff / (1 + c.f.Moisture) / c.f.CharcoalBulk / (math.Pi / 4 * bore * bore)
	if c.ready == 0 {
		if math.Mod(now, 5) == 0 && c.f.Mark()-c.f.Level()+c.eye >= bucket {
			c.ready = now
		}
		return
	}
	if now < c.ready+c.waits || now < c.lastCharge+60 {
		return
	}
	c.charge(now)
	c.aim()
}

// charge charges, keys it, and settles what the next one is.
func (c *crew) charge(now float64) {
	took := now - c.lastCharge
	planned := c.recipe
	if c.spared > 0 {
		c.spared--
		c.recipe = 0
		defer func() { c.recipe = planned }()
	}
	kg := scoopKg * float64(c.recipe)
	charged := c.f.Charge(1, bucketKg, kg)
	c.charges++
	c.coal += charged.Charcoal
	c.chargesAt = append(c.chargesAt, now)
	c.lastCharge = now
	if c.recipe > 0 {
		c.withOre++
		if c.firstOre == 0 {
			c.firstOre = now
		}
	}
	c.ore += kg
	if c.f.Forgets() {
		c.forgotten++
	} else {
		c.key(now, entry.Charge{Parts: c.next()})
		c.keyedAt = append(c.keyedAt, now)
	}
	if now >= c.nextScale {
		c.nextScale = now + weighs*(0.7+0.6*c.scales.Float64())
		c.later(20, entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: entry.Kilogram(math.Round(20*charged.Bucket) / 20), FromNow: true})
	}
	switch {
	case c.lastOre: // the charcoal over the last ore is in
		c.after(60, func() {
			c.burning = c.now()
			c.key(c.burning, entry.BurnDown{})
		})
	case c.ore >= c.f.OreKg:
		c.lastOre, c.recipe = true, 0
		c.later(10, entry.LastOre{})
	case c.recipe == 0:
		c.beforeOre(took)
	case c.withOre%oreEach == 0 && c.recipe < mostOre:
		c.setRecipe(c.recipe + 1)
	}
	if c.heeds && c.firstOre > 0 && !c.lastOre {
		c.heed()
	}
}

// beforeOre waits for a fire that is hot enough, and blows harder where it is slow to come.
func (c *crew) beforeOre(took float64) {
	hot := c.peep == entry.PeepWhite || c.peep == entry.PeepYellow
	switch {
	case float64(c.charges) >= c.f.OreStart && hot:
		c.setRecipe(leastOre)
	case c.charges >= 2 && c.raised < 5 && (took > slow || c.charges >= 4 && !hot && c.peep != ""):
		c.raised++
		c.blast(math.Round(1.13*c.setLMin/10) * 10)
	}
}

func (c *crew) setRecipe(scoops int) {
	c.recipe = scoops
	c.later(15, entry.Recipe{Next: c.next()})
}

// ignores tells whether a mishap goes on whose work the crew lets be.
func (c *crew) ignores(ms ...truth.Mishap) bool { return slices.ContainsFunc(ms, c.f.Befalling) }
