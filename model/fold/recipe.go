package fold

import "chargehand/model/entry"

// recipe sets what the next charge is: the last recipe keyed, or the plan's
// step that the charges since then have reached, without ore when ore is held
// or over.
func (s *State) recipe(scale scales) {
	next := s.Light.Recipe
	for _, l := range s.Lines {
		ev, ok := l.Event.(entry.Recipe)
		if !ok {
			continue
		}
		next = ev.Next
		if len(ev.Ramp) > 0 {
			next = step(ev, s.chargesSince(l))
		}
	}
	for _, p := range next {
		if p.What == entry.Ore && (s.OreHeld || s.LastOre) {
			continue
		}
		m, _ := scale.part(p, s.At)
		s.Recipe = append(s.Recipe, Part{p, m})
	}
}

// step is the ramp's charge after so many; past its end the last step goes on.
func step(r entry.Recipe, done int) entry.Parts {
	for _, st := range r.Ramp {
		if done < st.Charges {
			return st.Parts
		}
		done -= st.Charges
	}
	return r.Ramp[len(r.Ramp)-1].Parts
}

func (s *State) chargesSince(l Line) int {
	n := 0
	for _, c := range s.Charges {
		if c.At > l.At || (c.At == l.At && c.Seq > l.Seq()) {
			n++
		}
	}
	return n
}
