package rehearse

import (
	"slices"

	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/solve"
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
	Loud    bool          `json:"loud,omitempty"`   // by a look or an act
	Untold  bool          `json:"untold,omitempty"` // nothing that was keyed up to the harm told the day from the calm one
	LeadMin float64       `json:"lead_min,omitempty"`
	Rule    rule.ID       `json:"rule,omitempty"`
	Looks   int           `json:"looks"`
	Acts    int           `json:"acts"`
	False   int           `json:"false"`           // looks and acts of which there was no cause in the furnace
	Amiss   []Amiss       `json:"amiss,omitempty"` // what went wrong in truth on a day without a mishap
	BloomKg float64       `json:"bloom_kg"`
	Inside  map[string]Of `json:"inside"`
	// CoalOff is the charcoal charged as the figures had it over what it truly was; Asked says that the program asked after
	// the bucket or after a charge. For short buckets and keys forgotten.
	CoalOff float64 `json:"coal_off,omitempty"`
	Asked   bool    `json:"asked,omitempty"`
	// Solver is the version of the adviser's solver, and Heeds a calm day of a crew that goes by the advice of the next hour
	// instead of its plan, Advised how often there was one.
	Solver  string `json:"solver"`
	Heeds   bool   `json:"heeds,omitempty"`
	Advised int    `json:"advised,omitempty"`
	Course
}

// Course is how a day went in truth, for days that are held against each other.
type Course struct {
	ColdMin float64 `json:"cold_min"` // the hearth below working heat with ore in it
	IronKg  float64 `json:"iron_kg"`  // that came together
	Hangs   int     `json:"hangs"`    // how often the burden hung for long with ore in it
	Missed  int     `json:"missed"`   // of them, of which no look or act told
	// Cast is that the adviser took the iron to be cast at the end: the made-up furnaces know no carbon in iron.
	Cast bool `json:"cast,omitempty"`
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

// ScoreHeeding rehearses one furnace calmly with a crew that goes by the advice of the next hour.
func ScoreHeeding(number int64, noise float64, by Answerer) (Case, error) {
	d, err := Run(number, nil, Options{Noise: noise, By: by, Heeds: true})
	if err != nil {
		return Case{}, err
	}
	return d.score(noise), nil
}

func (d *Day) score(noise float64) Case {
	k := Case{
		Number: d.Number, Noise: noise, Truth: d.crew.by.version, Solver: solve.Version, BloomKg: d.BloomKg, Inside: map[string]Of{},
		Heeds: d.crew.heeds, Advised: d.crew.advised, Course: d.course(),
	}
	if len(d.Mishaps) == 0 {
		k.Amiss = d.crew.amiss()
	}
	for n, o := range d.Inside {
		k.Inside[n.Key()] = o
	}
	for i, w := range d.Warnings {
		if w.Grade == rule.Note || takesOver(d.Warnings[:i], w) {
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
		k.Mishap, k.Began, k.Harms, k.Warned, k.Loud, k.Untold, k.Rule = b.Name, b.Began, b.Harms, b.IsWarned, b.Loud, b.Untold, b.Rule
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

// takesOver tells whether a warning only goes on with another one: a charge that is overdue for so long that rather an entry is
// missing is one line on the screen that changes its words.
func takesOver(before []rule.Warning, w rule.Warning) bool {
	return w.Rule == rule.EntryMissing && slices.ContainsFunc(before, func(o rule.Warning) bool {
		return o.Rule == rule.ChargeOverdue && o.Cleared == w.Onset
	})
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
	case rule.FireFell:
		return was.PeepC < 1050 || was.Hangs || weak
	case rule.TopGasUnlit:
		return was.TopOut
	case rule.HangUp, rule.Slip, rule.ChargeOverdue, rule.EntryMissing, rule.AirShort:
		return was.Hangs || weak || low || c.forgotten > 0
	case rule.WallCracked:
		return c.f.Befalling(truth.Crack)
	case rule.StackLow:
		return low
	case rule.MeasureDoubtful:
		return slices.ContainsFunc(c.mishaps, func(m truth.Mishap) bool { return m == truth.ShortBuckets || m == truth.WetCharcoal }) || max(c.f.BucketOff, 1/c.f.BucketOff) > 1.08
	}
	return false
}
