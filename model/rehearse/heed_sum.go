package rehearse

// HeedSum holds the days of a crew that goes by the advice of the next hour against the days of the same furnaces by the plan.
type HeedSum struct {
	Furnaces int     `json:"furnaces"`
	Advised  int     `json:"advised"` // on so many days there was advice
	Advice   int     `json:"advice"`  // so many times
	Planned  WaySum  `json:"planned"`
	Heeded   WaySum  `json:"heeded"`
	More     int     `json:"more_iron"` // days with more iron than by the plan, by over a tenth
	Less     int     `json:"less_iron"`
	Change   float64 `json:"iron_change_kg"` // mean, of the days with advice
}

// WaySum is what one way of charging came to.
type WaySum struct {
	Cold    int     `json:"cold_hearths"` // days with a hearth cold for over half an hour with ore in it
	ColdMin float64 `json:"cold_min"`     // in all
	Cast    int     `json:"cast_ends"`    // as the adviser took them
	Hangs   int     `json:"hangs"`
	Missed  int     `json:"missed_hangs"`
	None    int     `json:"without_bloom"`
	IronKg  float64 `json:"iron_kg"` // in all
}

func (w *WaySum) add(k Case) {
	if k.ColdMin > colder {
		w.Cold++
	}
	if k.Cast {
		w.Cast++
	}
	if k.BloomKg == 0 {
		w.None++
	}
	w.ColdMin, w.Hangs, w.Missed, w.IronKg = w.ColdMin+k.ColdMin, w.Hangs+k.Hangs, w.Missed+k.Missed, w.IronKg+k.IronKg
}

// another is from which share on iron is more or less than by the plan.
const another = 0.1

func heedSum(cases []Case) *HeedSum {
	planned := map[int64]Case{}
	for _, k := range cases {
		if k.Mishap == "" && !k.Heeds {
			planned[k.Number] = k
		}
	}
	s := HeedSum{}
	for _, k := range cases {
		was, ok := planned[k.Number]
		if !k.Heeds || !ok {
			continue
		}
		s.Furnaces++
		s.Planned.add(was)
		s.Heeded.add(k)
		if s.Advice += k.Advised; k.Advised == 0 {
			continue
		}
		s.Advised++
		s.Change += k.IronKg - was.IronKg
		switch by := k.IronKg - was.IronKg; {
		case by > another*was.IronKg:
			s.More++
		case by < -another*was.IronKg:
			s.Less++
		}
	}
	if s.Furnaces == 0 {
		return nil
	}
	if s.Advised > 0 {
		s.Change /= float64(s.Advised)
	}
	return &s
}
