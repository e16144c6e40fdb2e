package rehearse

import (
	"cmp"
	"slices"

	"chargehand/model/truth"
)

// Sum is what many cases come to.
type Sum struct {
	Furnaces int                             `json:"furnaces"`
	Noise    float64                         `json:"noise"`
	Truth    string                          `json:"truth"`  // the version of the furnace
	Solver   string                          `json:"solver"` // of the adviser's solver
	Mishaps  []MishapSum                     `json:"mishaps"`
	Calm     CalmSum                         `json:"calm"`
	Inside   map[string]Of                   `json:"-"`
	Shares   map[string]float64              `json:"inside_percent"`
	Counts   map[string][2]int               `json:"inside"`
	Blooms   struct{ P10, P50, P90 float64 } `json:"bloom_kg"`
	None     int                             `json:"without_bloom"`
	NextHour *HeedSum                        `json:"next_hour,omitempty"` // nil where no crew went by it
}

// MishapSum is what the cases of one mishap come to.
type MishapSum struct {
	Name   truth.Mishap `json:"name"`
	Began  int          `json:"began"`
	Harms  int          `json:"harms"`
	Warned int          `json:"warned"` // of those that do harm
	Loud   int          `json:"warned_loud"`
	InTime int          `json:"in_time"` // before the harm
	// Untold are those that did harm unwarned of, and LuckyWarned those warned of, on which nothing that was keyed up to the harm
	// told the day from the same day without the mishap: of the first nobody could know, of the second only by luck.
	Untold      int     `json:"untold"`
	LuckyWarned int     `json:"warned_untold"`
	MedianLead  float64 `json:"median_lead_min"` // of those warned of, minus where the warning came after the harm
	Asked       int     `json:"asked"`
	CoalOff     float64 `json:"coal_off"` // median
}

// CalmSum is what the days without a mishap come to, a day. The furnace goes wrong of itself on some of them: those are not calm,
// and a program that is quiet on them is none the better for it.
type CalmSum struct {
	Days   int     `json:"days"`
	Looks  float64 `json:"looks"`
	Acts   float64 `json:"acts"`
	False  float64 `json:"false"`
	Within int     `json:"at_most_one_false"` // days with at most one look or act without a cause
	Quiet  int     `json:"quiet"`             // days with at most one look and no act, with a cause or without
	// Amiss are the days on which something went wrong in truth, By what it was, AmissQuiet those of them that were quiet all
	// the same; Truly and TrulyQuiet are the other days.
	Amiss      int           `json:"amiss"`
	By         map[Amiss]int `json:"amiss_by"`
	AmissQuiet int           `json:"amiss_quiet"`
	Truly      int           `json:"truly_calm"`
	TrulyQuiet int           `json:"truly_calm_quiet"`
}

// Total sums cases up.
func Total(cases []Case) Sum {
	s := Sum{Inside: map[string]Of{}, Shares: map[string]float64{}, Counts: map[string][2]int{}}
	s.Calm.By = map[Amiss]int{}
	numbers := map[int64]bool{}
	var blooms []float64
	by := map[truth.Mishap][]Case{}
	for _, k := range cases {
		s.Noise, s.Truth, s.Solver, numbers[k.Number] = k.Noise, k.Truth, k.Solver, true
		if k.Heeds {
			continue
		}
		by[k.Mishap] = append(by[k.Mishap], k)
		for n, o := range k.Inside {
			was := s.Inside[n]
			s.Inside[n] = Of{was.In + o.In, was.Of + o.Of}
		}
	}
	s.Furnaces = len(numbers)
	for n, o := range s.Inside {
		s.Counts[n] = [2]int{o.In, o.Of}
		if o.Of > 0 {
			s.Shares[n] = 100 * float64(o.In) / float64(o.Of)
		}
	}
	for _, k := range by[""] {
		s.Calm.Days++
		s.Calm.Looks, s.Calm.Acts, s.Calm.False = s.Calm.Looks+float64(k.Looks), s.Calm.Acts+float64(k.Acts), s.Calm.False+float64(k.False)
		if k.False <= 1 {
			s.Calm.Within++
		}
		s.Calm.take(k.Amiss, k.Looks <= 1 && k.Acts == 0)
		if k.BloomKg > 0 {
			blooms = append(blooms, k.BloomKg)
		} else {
			s.None++
		}
	}
	if n := float64(s.Calm.Days); n > 0 {
		s.Calm.Looks, s.Calm.Acts, s.Calm.False = s.Calm.Looks/n, s.Calm.Acts/n, s.Calm.False/n
	}
	s.Blooms.P10, s.Blooms.P50, s.Blooms.P90 = quantile(blooms, 0.1), quantile(blooms, 0.5), quantile(blooms, 0.9)
	s.NextHour = heedSum(cases)
	for _, m := range truth.Mishaps() {
		if len(by[m]) > 0 {
			s.Mishaps = append(s.Mishaps, sumOf(m, by[m]))
		}
	}
	return s
}

// take counts a day by what went wrong on it, and whether it was quiet.
func (s *CalmSum) take(amiss []Amiss, quiet bool) {
	all, some := &s.Truly, &s.TrulyQuiet
	if len(amiss) > 0 {
		all, some = &s.Amiss, &s.AmissQuiet
	}
	*all++
	if quiet {
		s.Quiet++
		*some++
	}
	for _, a := range amiss {
		s.By[a]++
	}
}

func sumOf(m truth.Mishap, cases []Case) MishapSum {
	t := MishapSum{Name: m}
	var leads, off []float64
	for _, k := range cases {
		if !k.Began {
			continue
		}
		t.Began++
		if k.Asked {
			t.Asked++
		}
		off = append(off, k.CoalOff)
		if !k.Harms {
			continue
		}
		t.Harms++
		switch {
		case k.Untold && k.Warned:
			t.LuckyWarned++
		case k.Untold:
			t.Untold++
		}
		if k.Warned {
			t.Warned++
			leads = append(leads, k.LeadMin)
			if k.Loud {
				t.Loud++
			}
			if k.LeadMin >= 0 {
				t.InTime++
			}
		}
	}
	t.MedianLead, t.CoalOff = quantile(leads, 0.5), quantile(off, 0.5)
	return t
}

// quantile of some values; 0 of none.
func quantile(vs []float64, share float64) float64 {
	if len(vs) == 0 {
		return 0
	}
	sorted := slices.SortedFunc(slices.Values(vs), cmp.Compare[float64])
	return sorted[min(len(sorted)-1, int(share*float64(len(sorted))))]
}
