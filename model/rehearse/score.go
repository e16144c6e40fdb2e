package rehearse

import (
	"cmp"
	"slices"

	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/truth"
)

// Case is what one rehearsal scored: one line of a file of scores.
type Case struct {
	Number  int64         `json:"number"`
	Mishap  truth.Mishap  `json:"mishap,omitempty"` // none: a calm day
	Noise   float64       `json:"noise"`
	Truth   string        `json:"truth"`
	Began   bool          `json:"began,omitempty"`
	Harms   bool          `json:"harms,omitempty"`
	Warned  bool          `json:"warned,omitempty"`
	Loud    bool          `json:"loud,omitempty"` // by a look or an act
	LeadMin float64       `json:"lead_min,omitempty"`
	Rule    rule.ID       `json:"rule,omitempty"`
	Looks   int           `json:"looks"`
	Acts    int           `json:"acts"`
	False   int           `json:"false"` // looks and acts of which there was no cause in the furnace
	BloomKg float64       `json:"bloom_kg"`
	Inside  map[string]Of `json:"inside"`
	// CoalOff is the charcoal charged as the figures had it over what it truly was; Asked says that the program asked after
	// the bucket or after a charge. For short buckets and keys forgotten.
	CoalOff float64 `json:"coal_off,omitempty"`
	Asked   bool    `json:"asked,omitempty"`
}

// Score rehearses one furnace calmly and with each mishap alone.
func Score(number int64, noise float64, by Answerer, mishaps []truth.Mishap) ([]Case, error) {
	calm, err := Run(number, nil, Options{Noise: noise, By: by})
	if err != nil {
		return nil, err
	}
	cases := []Case{calm.score(noise)}
	for _, m := range mishaps {
		d, err := Run(number, []truth.Mishap{m}, Options{Noise: noise, By: by, twin: calm.crew})
		if err != nil {
			return nil, err
		}
		cases = append(cases, d.score(noise))
	}
	return cases, nil
}

func (d *Day) score(noise float64) Case {
	k := Case{Number: d.Number, Noise: noise, Truth: d.crew.by.version, BloomKg: d.BloomKg, Inside: map[string]Of{}}
	for n, o := range d.Inside {
		k.Inside[n.Key()] = o
	}
	for _, w := range d.Warnings {
		if w.Grade == rule.Note {
			continue
		}
		if w.Grade == rule.Act {
			k.Acts++
		} else {
			k.Looks++
		}
		if !d.crew.caused(w) {
			k.False++
		}
	}
	if coal := d.crew.coal; coal > 0 {
		k.CoalOff = d.End.Figure(figure.CharcoalCharged).P50 / coal
	}
	for _, b := range d.Mishaps {
		k.Mishap, k.Began, k.Harms, k.Warned, k.Loud, k.Rule = b.Name, b.Began, b.Harms, b.IsWarned, b.Loud, b.Rule
		if b.Harms && b.IsWarned {
			k.LeadMin = b.Lead().Minutes()
		}
		asks := []rule.ID{rule.MeasureDoubtful}
		if b.Name == truth.ForgottenKey {
			asks = []rule.ID{rule.EntryMissing, rule.ChargeOverdue}
		}
		for _, w := range d.Warnings {
			k.Asked = k.Asked || w.Onset >= b.At && slices.Contains(asks, w.Rule)
		}
	}
	return k
}

// caused tells whether what a warning speaks of was so in the furnace within the last minutes. A rule that is not listed has
// none: it counts as false.
func (c *crew) caused(w rule.Warning) bool {
	was := c.at(w.Onset)
	for back := 1; back <= 20; back++ {
		t := c.at(w.Onset - seconds(float64(60*back)))
		was.Hangs = was.Hangs || t.Hangs
		was.TopOut = was.TopOut || t.TopOut
		was.Shut = max(was.Shut, t.Shut)
		was.SlagCm = min(was.SlagCm, t.SlagCm)
		was.OverC = min(was.OverC, t.OverC)
		was.PeepC = min(was.PeepC, t.PeepC)
		was.AirLMin = min(was.AirLMin, t.AirLMin)
	}
	usual := c.at(seconds(c.mainBurn + 600)).AirLMin
	weak := was.AirLMin < 0.85*usual
	low := was.StackCm < 100*c.f.Mark()/2
	switch w.Rule {
	case rule.TuyereDim, rule.TuyereBlocked, rule.PressureHigh:
		return was.Shut > 0.3 || weak
	case rule.BlastLost, rule.AirWeak, rule.BurnSlower:
		return weak || was.Shut > 0.3
	case rule.SlagNear, rule.SlagAt:
		return was.SlagCm < 3
	case rule.SlagThick, rule.HearthCold, rule.OreEarly:
		return was.OverC < 0 || was.PeepC < 1050
	case rule.TopGasUnlit:
		return was.TopOut
	case rule.HangUp, rule.Slip, rule.ChargeOverdue, rule.EntryMissing:
		return was.Hangs || weak || c.forgotten > 0
	case rule.StackLow:
		return low
	case rule.MeasureDoubtful:
		return slices.ContainsFunc(c.mishaps, func(m truth.Mishap) bool { return m == truth.ShortBuckets || m == truth.WetCharcoal }) || max(c.f.BucketOff, 1/c.f.BucketOff) > 1.08
	}
	return false
}

// Sum is what many cases come to.
type Sum struct {
	Furnaces int                             `json:"furnaces"`
	Noise    float64                         `json:"noise"`
	Truth    string                          `json:"truth"` // the version of the furnace
	Mishaps  []MishapSum                     `json:"mishaps"`
	Calm     CalmSum                         `json:"calm"`
	Inside   map[string]Of                   `json:"-"`
	Shares   map[string]float64              `json:"inside_percent"`
	Counts   map[string][2]int               `json:"inside"`
	Blooms   struct{ P10, P50, P90 float64 } `json:"bloom_kg"`
	None     int                             `json:"without_bloom"`
}

// MishapSum is what the cases of one mishap come to.
type MishapSum struct {
	Name       truth.Mishap `json:"name"`
	Began      int          `json:"began"`
	Harms      int          `json:"harms"`
	Warned     int          `json:"warned"` // of those that do harm
	Loud       int          `json:"warned_loud"`
	InTime     int          `json:"in_time"` // before the harm
	MedianLead float64      `json:"median_lead_min"`
	Asked      int          `json:"asked"`
	CoalOff    float64      `json:"coal_off"` // median
}

// CalmSum is what the calm days come to, a day.
type CalmSum struct {
	Days   int     `json:"days"`
	Looks  float64 `json:"looks"`
	Acts   float64 `json:"acts"`
	False  float64 `json:"false"`
	Within int     `json:"at_most_one_false"` // days with at most one look without a cause and no act
}

// Total sums cases up.
func Total(cases []Case) Sum {
	s := Sum{Inside: map[string]Of{}, Shares: map[string]float64{}, Counts: map[string][2]int{}}
	numbers := map[int64]bool{}
	var blooms []float64
	by := map[truth.Mishap][]Case{}
	for _, k := range cases {
		s.Noise, s.Truth, numbers[k.Number] = k.Noise, k.Truth, true
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
	for _, m := range truth.Mishaps() {
		if len(by[m]) > 0 {
			s.Mishaps = append(s.Mishaps, sumOf(m, by[m]))
		}
	}
	return s
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
