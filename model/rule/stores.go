package rule

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/house"
)

// stores is what is left of the lots that were weighed, as light named them and
// the smelt weighed or named them since. It is reckoned dry: a lot that gets wet
// has no more in it.
type stores struct {
	lots    []entry.Lot
	left    []house.Mass // of each
	told    []entry.Lot  // told of since, and named by nothing in force: what named it may have been crossed out
	named   []string     // lots named that were not told of yet
	judged  int          // lines behind when it was last judged
	verdict [2]verdict
}

// verdict is what is left and needed of one material, dry, and as it weighs.
type verdict struct {
	left, need             float64
	leftWeight, needWeight float64
	known                  bool // both, and it is needed at all
}

// stored are the materials that a smelt may run short of.
var stored = [2]entry.What{entry.Ore, entry.Charcoal}

func newStores(lots []entry.Lot) stores {
	var s stores
	for _, l := range lots {
		s.put(l)
	}
	return s
}

// tell takes what the smelt was told of a lot since it was lit: it counts from when something that goes in is of it.
func (s *stores) tell(l entry.Lot) {
	is := func(ref string) bool { return ref == string(l.ID()) || ref == l.Name }
	if house.LotNamed(s.lots, string(l.ID())) >= 0 || slices.ContainsFunc(s.named, is) {
		s.put(l)
		return
	}
	s.told = append(s.told[:len(s.told):len(s.told)], l) // a copy of the moment keeps its own
}

// name takes the lots that an event names.
func (s *stores) name(lots ...string) {
	for _, ref := range lots {
		switch i := house.LotNamed(s.told, ref); {
		case house.LotNamed(s.lots, ref) >= 0, slices.Contains(s.named, ref):
		case i >= 0:
			s.put(s.told[i])
		default:
			s.named = append(s.named[:len(s.named):len(s.named)], ref)
		}
	}
}

// put takes a lot in, or describes it anew: with a mass it is counted by that,
// without one there is of it what there was, dry.
func (s *stores) put(l entry.Lot) {
	left := house.Some
	if l.Mass.Known {
		left = house.DryOf(l, l.Mass.Value)
	}
	if i := house.LotNamed(s.lots, string(l.ID())); i >= 0 {
		if s.lots[i] = l; l.Mass.Known {
			s.left[i] = left
		}
		return
	}
	s.lots, s.left = append(s.lots, l), append(s.left, left)
}

func (s *stores) weigh(w entry.Weigh) {
	s.name(w.Name)
	if i := house.LotNamed(s.lots, w.Name); i >= 0 {
		s.left[i] = house.DryOf(s.lots[i], w.Mass)
	}
}

// use takes from the lots what goes into the furnace. Of a part that may be of
// several lots nobody knows which, and what is left of them is no longer known.
func (s *stores) use(c *fold.Timeline, parts entry.Parts, at time.Duration) {
	if len(s.lots) == 0 {
		return
	}
	for _, p := range parts {
		if p.None() {
			continue
		}
		of := house.PartLots(s.lots, p)
		for _, i := range of {
			took := house.Some
			if len(of) == 1 {
				took = house.DryPart(c, s.lots[i], p, at)
			}
			s.left[i] = s.left[i].Minus(took)
		}
	}
}

// of is what is left of a material, when all its lots are known: dry, and as it
// weighs.
func (s *stores) of(w entry.What) (dry, weight float64, known bool) {
	for i, l := range s.lots {
		if l.What != w {
			continue
		}
		if !s.left[i].Known() {
			return 0, 0, false
		}
		dry, known = dry+s.left[i].Kg, true
		weight += house.Weight(l, s.left[i].Kg)
	}
	return max(dry, 0), max(weight, 0), known
}

// ahead is how many charges the stores must last for where no ramp says.
const ahead = 3

// needed is what the rest of the ramp takes of a material, or the next charges:
// dry, and as it weighs.
func (m *moment) needed(w entry.What) (dry, weight float64, known bool) {
	steps, done := m.recipe.Ramp, m.done
	if len(steps) == 0 {
		steps, done = []entry.RecipeStep{{Charges: ahead, Parts: m.recipe.Next}}, 0
	}
	for _, st := range steps {
		left := max(0, st.Charges-done)
		done = max(0, done-st.Charges)
		mass := m.c.MassOf(st.Parts, w, m.at)
		if left > 0 && mass.Unknown {
			return 0, 0, false
		}
		weight += float64(left) * mass.Kg
		dry += float64(left) * m.stores.dry(m.c, st.Parts, w, m.at)
	}
	return dry, weight, weight > 0
}

// spare is by how much the stores must suffice again to clear.
const spare = 1.05

// storesShort: what is left does not last as far as the plan.
func storesShort(m *moment) (Evidence, bool) {
	least, short := m.scarcest(1)
	if !short { // it may stand still, see storesSuffice
		least, _ = m.scarcest(spare)
	}
	return least, short
}

// scarcest tells of the first material of which there is less than so many times what is needed.
func (m *moment) scarcest(times float64) (Evidence, bool) {
	if len(m.stores.lots) == 0 || !m.charging() {
		return nil, false
	}
	for i, v := range m.supplies() {
		if v.known && v.left < v.need*times {
			return Evidence{word("what", string(stored[i])), number("left", v.leftWeight, Kilograms), number("needed", v.needWeight, Kilograms)}, true
		}
	}
	return nil, false
}

func storesSuffice(m *moment, _ Warning) bool {
	_, short := m.scarcest(spare)
	return !short
}

// Supply is what is left of a material whose lots were weighed, as it weighs.
type Supply struct {
	What       entry.What
	Left, Need float64              // kg; Need is what the rest of the plan takes, or of the next charges where there is none
	Each       entry.Maybe[float64] // kg of it in the next charge
}

// Supplies are those of the materials that are known, after what happened since the
// last grid point. The lines are those that did.
func (w *Walker) Supplies(since []fold.Line) (known []Supply) {
	if len(w.moment.stores.lots) == 0 && len(since) == 0 {
		return nil
	}
	m := w.moment.clone()
	if len(since) > 0 {
		m.advance(since[len(since)-1].At, since)
	}
	for i, v := range m.supplies() {
		if !v.known {
			continue
		}
		s := Supply{What: stored[i], Left: v.leftWeight, Need: v.needWeight}
		if each := m.c.MassOf(fold.Planned(m.recipe, m.done), s.What, m.at); !each.Unknown && each.Kg > 0 {
			s.Each = entry.Some(each.Kg)
		}
		known = append(known, s)
	}
	return known
}

// supplies judges the stores; only a line changes them.
func (m *moment) supplies() [2]verdict {
	if m.stores.judged != m.lines {
		m.stores.judged = m.lines
		for i, w := range stored {
			m.stores.verdict[i] = m.supply(w)
		}
	}
	return m.stores.verdict
}

func (m *moment) supply(w entry.What) verdict {
	if w == entry.Ore && m.lastOre {
		return verdict{}
	}
	left, leftWeight, known := m.stores.of(w)
	if !known {
		return verdict{}
	}
	need, needWeight, known := m.needed(w)
	return verdict{left, need, leftWeight, needWeight, known}
}

// dry is the dry mass of one material in parts of known mass.
func (s *stores) dry(c *fold.Timeline, parts entry.Parts, w entry.What, at time.Duration) float64 {
	kg := 0.0
	for _, p := range parts {
		if p.What != w {
			continue
		}
		lot := entry.Lot{What: w, Name: p.Lot}
		if of := house.PartLots(s.lots, p); len(of) > 0 {
			lot = s.lots[of[0]]
		}
		kg += house.DryPart(c, lot, p, at).Kg
	}
	return kg
}
