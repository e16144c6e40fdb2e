package fold

import (
	"time"

	"chargehand/model/entry"
)

// rank orders the phases, so that a fill in the middle of the main burn (rough
// charcoal to top up) does not take the smelt back.
var rank = map[entry.Phase]int{
	entry.Prepared: 0, entry.Preheat: 1, entry.Filling: 2, entry.MainBurn: 3,
	entry.OreOff: 3, entry.BurnsDown: 4, entry.Extracted: 5, entry.Closed: 6,
}

// Turn is a phase that began.
type Turn struct {
	At    time.Duration
	Phase entry.Phase
}

// turn sets the phase by a line, and whether ore is held or over.
func (s *State) turn(l Line) {
	switch ev := l.Event.(type) {
	case entry.PhaseSet:
		s.enter(ev.Phase, l)
	case entry.Fill:
		s.forward(entry.Filling, l)
	case entry.Charge:
		s.forward(entry.MainBurn, l)
		if s.Phase == entry.OreOff && ev.Parts.Holds(entry.Ore) {
			s.enter(entry.MainBurn, l)
		}
	case entry.OreHeld:
		if ev.Again && s.Phase == entry.OreOff {
			s.enter(entry.MainBurn, l)
		} else if !ev.Again {
			s.enter(entry.OreOff, l)
		}
	case entry.LastOre:
		s.LastOre = true
	case entry.BurnDown:
		s.enter(entry.BurnsDown, l)
	case entry.Extract:
		s.enter(entry.Extracted, l)
	}
	s.OreHeld = s.Phase == entry.OreOff
}

func (s *State) enter(p entry.Phase, l Line) {
	if s.Phase != p {
		s.Phase, s.Since = p, l.At
		s.Turns = append(s.Turns, Turn{l.At, p})
	}
}

func (s *State) forward(p entry.Phase, l Line) {
	if rank[p] > rank[s.Phase] {
		s.enter(p, l)
	}
}
