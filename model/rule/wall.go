package rule

import (
	"slices"
	"time"

	"chargehand/model/entry"
)

// hole is a place where the wall gave, and nobody has said that it is patched.
type hole struct {
	seen entry.WallSeen
	at   time.Duration
}

// wall takes down what was seen of it: a crack is no hole; a patch shuts those at its
// place, and one without a place all of them.
func (m *moment) wall(at time.Duration, ev entry.WallSeen) {
	switch ev.What {
	case entry.WallBurnThrough, entry.WallSlump:
		m.holes = append(m.holes, hole{ev, at})
	case entry.WallPatched:
		m.holes = slices.DeleteFunc(slices.Clone(m.holes), func(h hole) bool { return ev.Where == "" || h.seen.Where == ev.Where })
	}
}

// wallOpen: the wall gave while there is fire behind it. Of several holes the last is told.
func wallOpen(m *moment) (Evidence, bool) {
	if len(m.holes) == 0 || m.phase.Over() {
		return nil, false
	}
	h := m.holes[len(m.holes)-1]
	place := h.seen.Where
	if place == "" {
		place = "place not said"
	}
	return Evidence{word("what", string(h.seen.What)), word("where", place), minutes("ago", m.at-h.at)}, true
}
