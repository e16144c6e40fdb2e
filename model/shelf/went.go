package shelf

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// fullOre is which share of the most ore of a charge counts as full ore.
const fullOre = 0.9

// went fills in what went into a smelt and how.
func (s *Summary) went(st fold.State) {
	s.Tried = st.Light.Trying
	if p := st.Light.Plan; p != nil {
		s.Wanted = p.Wanted.Mass
	}
	if u := st.Pace.Usual(); u > 0 {
		s.Interval = entry.Some(entry.Minute(u.Minutes()))
	}
	if st.SlagWeighed > 0 {
		s.Slag = entry.Some(st.SlagWeighed)
	}
	most := 0.0
	for _, c := range st.Charges {
		most = max(most, c.Ore.Charged.Kg)
	}
	first := -1
	for i, c := range st.Charges {
		if kg := c.Ore.Charged.Kg; kg > 0 {
			if first < 0 {
				first = i
			}
			if kg >= fullOre*most {
				s.Rise = entry.Some(entry.Minute((c.At - st.Charges[first].At).Minutes()))
				break
			}
		}
	}
	s.Blast = middleBlast(st)
}

// middleBlast is the volume that blew for half of the time from the first charge to the
// last; none where that was not known for half of it.
func middleBlast(st fold.State) entry.Maybe[entry.LitrePerMinute] {
	n := len(st.Charges)
	if n < 2 {
		return entry.None[entry.LitrePerMinute]()
	}
	from, to := st.Charges[0].At, st.Charges[n-1].At
	type stretch struct {
		volume entry.LitrePerMinute
		lasted time.Duration
	}
	var all []stretch
	var known time.Duration
	for i, b := range st.Blast {
		end := to
		if i+1 < len(st.Blast) {
			end = min(to, st.Blast[i+1].At)
		}
		if lasted := end - max(from, b.At); lasted > 0 && b.Volume.Known && !b.Off {
			all = append(all, stretch{b.Volume.Value, lasted})
			known += lasted
		}
	}
	if known == 0 || 2*known < to-from {
		return entry.None[entry.LitrePerMinute]()
	}
	slices.SortFunc(all, func(a, b stretch) int {
		if a.volume < b.volume {
			return -1
		}
		return 1
	})
	var sum time.Duration
	for _, one := range all {
		if sum += one.lasted; 2*sum >= known {
			return entry.Some(one.volume)
		}
	}
	return entry.None[entry.LitrePerMinute]()
}
