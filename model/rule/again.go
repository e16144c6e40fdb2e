package rule

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// lateBy is from when on a smelt that is behind its plan is worth planning anew: two or
// three charges (common practice).
const lateBy = 30 * time.Minute

// chargesLeft is how many charges a plan with steps still has.
func (m *moment) chargesLeft() int {
	left := -m.done
	for _, st := range m.recipe.Ramp {
		left += st.Charges
	}
	return max(left, 0)
}

// planLate: at the pace so far the bloom is out much later than the plan promised in the
// morning. Told once: then it is known, or the rest is planned anew.
func planLate(m *moment) (Evidence, bool) {
	promised, ok := fold.PromisedPull(m.c.Light)
	usual := m.c.Pace.Usual()
	left := m.chargesLeft()
	if !ok || !m.charging() || m.lastOre || m.replanned || usual <= 0 || m.charges < fewestOwn || left == 0 {
		return nil, false
	}
	late := m.lastCharge() + time.Duration(left)*usual + fold.BurnDown - promised
	return Evidence{minutes("apart", late)}, late >= lateBy
}

// otherOre: the ore comes of another lot than the plan was made for. Told once.
func otherOre(m *moment) (Evidence, bool) {
	return Evidence{word("what", m.oreSince)}, m.oreSince != "" && m.charging() && !m.lastOre && !m.replanned && m.chargesLeft() > 0
}

// oreOf takes the ore's lot of a next charge: another than the one before, in a plan.
func (m *moment) oreOf(r entry.Recipe) {
	lot := func(ps entry.Parts) string {
		for _, p := range ps {
			if p.What == entry.Ore {
				return p.Lot
			}
		}
		return ""
	}
	was := ""
	for _, st := range m.recipe.Ramp {
		if was = lot(st.Parts); was != "" {
			break
		}
	}
	is := lot(r.Next)
	if was == "" || is == "" || was == is {
		return
	}
	m.oreSince = is
	for _, l := range m.stores.lots {
		if string(l.ID()) == is {
			m.oreSince = l.Name
		}
	}
}

// replannedOrDone clears what offers to plan anew.
func replannedOrDone(m *moment, w Warning) bool {
	return m.replanned || !m.charging() || m.lastOre || m.at-w.Onset >= recently
}
