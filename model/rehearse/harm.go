package rehearse

import (
	"slices"
	"sort"
	"time"

	"chargehand/model/rule"
	"chargehand/model/truth"
)

// What harm is, against the same day on the same furnace without the mishap: so much that luck alone seldom does as much
// (TestHarmIsNotLuck; assumed otherwise).
const (
	colder  = 30.0    // min more below working heat with ore in the hearth
	flooded = 30.0    // min more with slag at the tuyere
	lost    = 0.12    // share of the iron together, of the ore that has come down
	leastKg = 0.25    // kg of iron that this is at the least
	goesOut = 1000.0  // C before the tuyere, below which the fire goes out
	empty   = 1.0 / 3 // of the stack, below which ore falls through
	inARow  = 10      // min of either
)

// harm finds the minute from which on a mishap had done harm, in a furnace whose mark is so many m high; false when it did none.
func harm(c, twin *course, since, mark float64) (float64, bool) {
	final, finalTwin := c.trace[len(c.trace)-1], twin.trace[len(twin.trace)-1]
	loses := finalTwin.Bloom-final.Bloom > max(lost*finalTwin.Bloom, leastKg)
	was := c.at(seconds(since))
	before := twin.down(was.DownKg)
	low := 100 * empty * mark
	out, bare := 0, 0
	for _, t := range c.trace {
		if t.seconds < since || c.burning > 0 && t.seconds > c.burning {
			continue
		}
		same, then := twin.down(t.DownKg), twin.at(seconds(t.seconds))
		out, bare = inARowOf(out, t.PeepC < goesOut && then.PeepC >= goesOut), inARowOf(bare, t.StackCm < low && then.StackCm > low)
		switch {
		case t.ColdMin-was.ColdMin-(same.ColdMin-before.ColdMin) > colder, t.FloodMin-was.FloodMin-(same.FloodMin-before.FloodMin) > flooded, out >= inARow,
			bare >= inARow, loses && same.Bloom-t.Bloom > max(lost*same.Bloom, leastKg):
			return t.seconds, true
		}
	}
	return final.seconds, loses
}

// down is the truth at the last minute at which no more than so many kg of the ore's iron had come down: two days that do not
// keep step are compared so.
func (c *course) down(kg float64) truth.Truth {
	n := sort.Search(len(c.trace), func(i int) bool { return c.trace[i].DownKg > kg })
	return c.trace[max(0, n-1)].Truth
}

// ofCold are the rules that speak of a hearth, or of the fire over it, that is too cold: what comes of less air, of water, of a
// mix with more ore than was meant and of a burden that hangs.
var ofCold = []rule.ID{rule.HearthCold, rule.HearthCools, rule.FireFell, rule.OreEarly, rule.SlagThick, rule.SlagStiffens}

// warns are the rules that speak of a mishap: any of them is a warning of it (assumed).
var warns = map[truth.Mishap][]rule.ID{
	truth.WetCharcoal:   with(ofCold, rule.MeasureDoubtful, rule.BurnSlower, rule.CharcoalDamp, rule.DampHearth),
	truth.BlowerDying:   with(ofCold, rule.BlastLost, rule.TuyereDim, rule.AirWeak, rule.BurnSlower, rule.ChargeOverdue, rule.EntryMissing, rule.PressureLow, rule.AirShort),
	truth.TuyereBlocked: with(ofCold, rule.TuyereDim, rule.TuyereBlocked, rule.PressureHigh, rule.AirWeak, rule.BurnSlower, rule.BlastLost, rule.ChargeOverdue, rule.EntryMissing, rule.AirShort),
	truth.Bridge:        with(ofCold, rule.HangUp, rule.Slip, rule.ChargeOverdue, rule.EntryMissing, rule.BurnSlower, rule.StackLow, rule.AirShort),
	truth.Crack:         with(ofCold, rule.WallCracked, rule.AirOdd, rule.AirWeak, rule.MeterOdd, rule.BurnSlower, rule.PressureLow, rule.ChargeOverdue, rule.EntryMissing, rule.AirShort),
	truth.BadOre:        {rule.SlagThick, rule.SlagStiffens, rule.SlagNear, rule.SlagAt, rule.SlagRises, rule.HearthCold, rule.HearthCools},
	truth.ShortBuckets:  with(ofCold, rule.MeasureDoubtful, rule.BurnFaster, rule.RatioHigh, rule.MixRich),
	truth.ForgottenKey:  {rule.EntryMissing, rule.ChargeOverdue},
}

func with(some []rule.ID, more ...rule.ID) []rule.ID { return append(slices.Clip(some), more...) }

// warn finds the first warning of the mishap that was raised once it had begun.
func (b *Befallen) warn(ws []rule.Warning) {
	if !b.Began {
		return
	}
	first := time.Duration(1 << 62)
	for _, w := range ws {
		if w.Onset >= b.At && w.Onset < first && slices.Contains(warns[b.Name], w.Rule) {
			first = w.Onset
			b.Warned, b.Rule, b.IsWarned, b.Loud = w.Onset, w.Rule, true, w.Grade >= rule.Look
		}
	}
}
