package rule

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// stores is what is left of the lots that were weighed.
type stores struct {
	lots    []lotLeft
	judged  int // lines behind when it was last judged
	verdict [2]verdict
}

// verdict is what is left and needed of one material.
type verdict struct {
	left, need float64
	known      bool // both, and it is needed at all
}

// stored are the materials that a smelt may run short of.
var stored = [2]entry.What{entry.Ore, entry.Charcoal}

// lotLeft is what is left of one lot.
type lotLeft struct {
	name  string
	what  entry.What
	kg    float64
	known bool
}

func newStores(lots []entry.Lot) stores {
	var s stores
	for _, l := range lots {
		s.put(l)
	}
	return s
}

// put takes a lot in, or sets it anew.
func (s *stores) put(l entry.Lot) {
	left := lotLeft{l.Name, l.What, float64(l.Mass.Value), l.Mass.Known}
	if i := s.index(l.Name); i >= 0 {
		s.lots[i] = left
		return
	}
	s.lots = append(s.lots, left)
}

func (s *stores) weigh(w entry.Weigh) {
	if i := s.index(w.Name); i >= 0 {
		s.lots[i].kg, s.lots[i].known = float64(w.Mass), true
	}
}

func (s *stores) index(name string) int {
	return slices.IndexFunc(s.lots, func(l lotLeft) bool { return l.name == name })
}

// use takes from the lots what goes into the furnace. A part that names no lot
// is of the only one of its material; of several nobody knows which, and what
// is left of them is no longer known.
func (s *stores) use(c *fold.Course, parts entry.Parts, at time.Duration) {
	if len(s.lots) == 0 {
		return
	}
	for _, p := range parts {
		if p.None() {
			continue
		}
		m := c.MassOf(entry.Parts{p}, p.What, at)
		only := s.only(p.What)
		for i := range s.lots {
			l := &s.lots[i]
			switch {
			case l.what != p.What || (p.Lot != "" && l.name != p.Lot):
			case m.Unknown || (p.Lot == "" && !only):
				l.known = false
			default:
				l.kg -= m.Kg
			}
		}
	}
}

func (s *stores) only(w entry.What) bool {
	n := 0
	for _, l := range s.lots {
		if l.what == w {
			n++
		}
	}
	return n == 1
}

// left is what is left of a material, when all its lots are known.
func (s *stores) left(w entry.What) (kg float64, known bool) {
	for _, l := range s.lots {
		if l.what != w {
			continue
		}
		if !l.known {
			return 0, false
		}
		kg, known = kg+l.kg, true
	}
	return max(kg, 0), known
}

// ahead is how many charges the stores must last for where no ramp says.
const ahead = 3

// needed is what the rest of the ramp takes of a material, or the next charges.
func (m *moment) needed(w entry.What) (kg float64, known bool) {
	steps, done := m.recipe.Ramp, m.done
	if len(steps) == 0 {
		steps, done = []entry.RecipeStep{{Charges: ahead, Parts: m.recipe.Next}}, 0
	}
	for _, st := range steps {
		left := max(0, st.Charges-done)
		done = max(0, done-st.Charges)
		mass := m.c.MassOf(st.Parts, w, m.at)
		if left > 0 && mass.Unknown {
			return 0, false
		}
		kg += float64(left) * mass.Kg
	}
	return kg, kg > 0
}

// spare is by how much the stores must suffice again to clear.
const spare = 1.05

// storesShort: what is left does not last as far as the plan.
func storesShort(m *moment) (Evidence, bool) {
	if len(m.stores.lots) == 0 || !m.charging() {
		return nil, false
	}
	for i, v := range m.supplies() {
		if v.known && v.left < v.need {
			return Evidence{word("what", string(stored[i])), number("left", v.left, Kilograms), number("needed", v.need, Kilograms)}, true
		}
	}
	return nil, false
}

func storesSuffice(m *moment, _ Warning) bool {
	if !m.charging() {
		return true
	}
	for _, v := range m.supplies() {
		if v.known && v.left < v.need*spare {
			return false
		}
	}
	return true
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
	left, known := m.stores.left(w)
	if !known {
		return verdict{}
	}
	need, known := m.needed(w)
	return verdict{left, need, known}
}
