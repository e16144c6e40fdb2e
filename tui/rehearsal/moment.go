package rehearsal

import (
	"slices"
	"time"

	"chargehand/model/rehearse"
)

// moments are when something happened: mishaps, harm, warnings, acts.
func moments(d rehearse.End) []time.Duration {
	var all []time.Duration
	for _, b := range d.Befell {
		all = append(all, b.At)
		if b.Harms {
			all = append(all, b.HarmAt)
		}
	}
	for _, w := range d.Warnings {
		all = append(all, w.Onset)
	}
	for _, a := range d.Acts {
		all = append(all, a.At)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// heatAt is a course at a moment, 0 where it has none.
func heatAt(hs []rehearse.Heat, at time.Duration) float64 {
	i, _ := slices.BinarySearchFunc(hs, at, func(h rehearse.Heat, at time.Duration) int { return int(h.At - at) })
	switch {
	case len(hs) == 0 || at < hs[0].At-20*time.Minute || at > hs[len(hs)-1].At+20*time.Minute:
		return 0
	case i == len(hs):
		return hs[i-1].C
	case i == 0 || hs[i].At == at:
		return hs[i].C
	}
	a, b := hs[i-1], hs[i]
	return a.C + (b.C-a.C)*float64(at-a.At)/float64(b.At-a.At)
}
