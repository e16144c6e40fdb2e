package rule

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// How far the ratio of three charges may lie off the plan, and how near to it
// the last one must come to clear.
const (
	ratioFar  = 0.20
	ratioNear = 0.10
)

// plan is what the recipe had for a charge when it went in.
type plan struct {
	ratio float64 // ore to charcoal; 0 for none to be held against
}

// planned is the plan of the charge that goes in just then. Without ore in the
// recipe, with ore held or over, there is none.
func (m *moment) planned(at time.Duration) plan {
	parts := fold.Planned(m.recipe, m.done)
	coal, ore := m.c.MassOf(parts, entry.Charcoal, at).Sound(), m.c.MassOf(parts, entry.Ore, at)
	if m.lastOre || m.phase == entry.OreOff || coal.Unknown || ore.Unknown || coal.Kg <= 0 || ore.Kg <= 0 {
		return plan{}
	}
	return plan{ore.Kg / coal.Kg}
}

// off is how far a charge lies off its plan, as the logarithm of the two
// ratios; minus infinity without ore. The last charge is not judged: its ore
// may be still to come.
func (m *moment) offPlan(i int) (float64, bool) {
	if i < 0 || i >= m.charges-1 || m.plans[i].ratio == 0 {
		return 0, false
	}
	c := m.c.Charges[i]
	if c.Charcoal.Charged.Unknown || c.Ore.Charged.Unknown || c.Charcoal.Charged.Kg <= 0 {
		return 0, false
	}
	return math.Log(c.Ore.Charged.Kg / c.Charcoal.Charged.Sound().Kg / m.plans[i].ratio), true
}

// ratioOff: three charges together off the plan, and each of the last two.
func ratioOff(m *moment) (Evidence, bool) {
	n := m.charges - 2 // the last charge that is complete
	last, ok := m.offPlan(n)
	before, ok2 := m.offPlan(n - 1)
	_, ok3 := m.offPlan(n - 2)
	if !m.charging() || !ok || !ok2 || !ok3 || math.Min(math.Abs(last), math.Abs(before)) <= ratioNear || (last > 0) != (before > 0) {
		return nil, false
	}
	var coal, ore, meant float64
	for i := n - 2; i <= n; i++ {
		kg := m.c.Charges[i].Charcoal.Charged.Sound().Kg
		coal, ore, meant = coal+kg, ore+m.c.Charges[i].Ore.Charged.Kg, meant+kg*m.plans[i].ratio
	}
	if math.Abs(math.Log(ore/meant)) <= ratioFar {
		return nil, false
	}
	return Evidence{number("ratio", ore/coal, Ratio), number("plan", meant/coal, Ratio)}, true
}

// ratioBack: the last complete charge near its plan, or no plan.
func ratioBack(m *moment, _ Warning) bool {
	last, ok := m.offPlan(m.charges - 2)
	return !ok || !m.charging() || math.Abs(last) < ratioNear
}

// doubleFor is for how long a double charge is asked about.
const doubleFor = 10 * time.Minute

// atOnce is how near two charges are double while nothing is usual yet.
const atOnce = 3 * time.Minute

// doubleCharge: a second full charge so soon that it may be one keyed twice. To see
// the warning is to answer it: it was meant, or is crossed out.
func doubleCharge(m *moment) (Evidence, bool) {
	if m.charges < 2 || !m.within(m.lastCharge(), doubleFor) {
		return nil, false
	}
	last, before := m.c.Charges[m.charges-1], m.c.Charges[m.charges-2]
	apart := last.At - before.At
	if m.answered(DoubleCharge, last.At) || !last.Double || m.caughtUp(m.charges-2) || (m.paces.All()[m.charges-2].usual == 0 && apart > atOnce) {
		return nil, false
	}
	return Evidence{
		number("number", float64(last.Number), Count), minutes("apart", apart),
		minutes("usual", m.c.Pace.UsualBefore()),
	}, true
}

// roomForTwo is after how many usual intervals one charge does not fill the shaft
// again, and crews put two in (common practice): from then on a charge is late.
const roomForTwo = 1.5

// caughtUp tells whether a charge came so late that another one directly after it
// fills the shaft again: a crew that was away, or a burden that hung and came down.
func (m *moment) caughtUp(i int) bool {
	if i < 1 {
		return false
	}
	usual := m.paces.All()[i-1].usual
	return usual > 0 && m.paces.All()[i].minutes >= roomForTwo*usual
}

// answered tells whether a person has acknowledged a rule since a moment.
func (m *moment) answered(id ID, since time.Duration) bool {
	for i := len(m.seen) - 1; i >= 0 && m.seen[i].at >= since; i-- {
		if ID(m.seen[i].what.Rule) == id {
			return true
		}
	}
	return false
}

// recently is for how long the book's own warnings stand.
const recently = 20 * time.Minute

// measureDoubtful: a weighing that is off by more than two fillings of one
// measure differ, and nobody said why.
func measureDoubtful(m *moment) (Evidence, bool) {
	if m.weighings == 0 {
		return nil, false
	}
	w := m.c.Weighings[m.weighings-1]
	if !m.within(w.At, recently) || w.Weigh.Why != "" || !w.Believed.Positive() || w.Weigh.Mass <= 0 {
		return nil, false
	}
	off := math.Log(float64(w.Weigh.Mass / w.Believed.Value))
	if math.Abs(off) <= z95*w.RelSD {
		return nil, false
	}
	return Evidence{
		word("measure", w.Weigh.Name), number("weighed", float64(w.Weigh.Mass), Kilograms),
		number("believed", float64(w.Believed.Value), Kilograms),
		number("off", 100*math.Expm1(off), Percent), number("spread", 100*w.RelSD, Percent),
	}, true
}

// measureSettled: another weighing, or time.
func measureSettled(m *moment, w Warning) bool {
	return m.at-w.Onset >= recently || m.c.Weighings[m.weighings-1].At > w.Onset
}

// clockJumped: the wall clock was set; the smelt's own ran on.
func clockJumped(m *moment) (Evidence, bool) {
	if !m.within(m.jump, recently) {
		return nil, false
	}
	return Evidence{minutes("by", time.Duration(m.jumped.ByMs)*time.Millisecond)}, true
}

// toldLongEnough clears what is told once.
func toldLongEnough(m *moment, w Warning) bool { return m.at-w.Onset >= recently }
