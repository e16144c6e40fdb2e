package words

import (
	"strings"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
)

// What a plan promises.
const (
	PromiseOre      = "ore dry"
	PromiseCharcoal = "charcoal dry"
	PromiseHours    = "from light to bloom"
)

// Promise is a figure that a plan promised, and what it came to.
type Promise struct {
	Of  string
	Was entry.Estimate
	Is  entry.Maybe[float64] // in its unit
}

// PromisedAgainst says what a plan promised and what came out; "" where it promised nothing.
func PromisedAgainst(u modelwords.Units, all []Promise, chance entry.Estimate, bloom entry.Maybe[entry.Kilogram]) string {
	var said []string
	for _, p := range all {
		if !p.Was.P50.Known {
			continue
		}
		is := NotKnown
		if p.Is.Known {
			is = u.Value(p.Is.Value, p.Was.Unit, 1)
		}
		was := u.Value(float64(p.Was.P50.Value), p.Was.Unit, 1)
		if p.Was.P10.Known && p.Was.P90.Known && p.Was.P10 != p.Was.P90 {
			was = u.Range(float64(p.Was.P10.Value), float64(p.Was.P90.Value), p.Was.Unit, 1)
		}
		said = append(said, p.Of+" "+was+", came "+is)
	}
	if chance.P50.Known {
		what := "not weighed"
		if bloom.Known {
			what = u.Kg(bloom.Value)
		}
		said = append(said, "a chance of "+modelwords.NIn10(float64(chance.P50.Value))+", bloom "+what)
	}
	if len(said) == 0 {
		return ""
	}
	return "the plan promised " + strings.Join(said, "; ")
}
