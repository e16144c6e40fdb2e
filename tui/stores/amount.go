package stores

import (
	"errors"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// limits of what fields take.
var (
	kilograms   = screen.Limits{Unit: "kg", Least: 0, Most: 20_000}
	cubicMetres = screen.Limits{Unit: "m³ stacked", Least: 0, Most: 200}
	counts      = screen.Limits{Unit: "measures", Least: 0, Most: 1000}
	percent     = screen.Limits{Unit: "%", Least: 0, Most: 100}
	water       = screen.Limits{Unit: "% of its weight", Least: 0, Most: 90}
	millimetres = screen.Limits{Unit: "mm", Least: 0.1, Most: 200}
	aMeasureful = screen.Limits{Unit: "kg", Least: 0.01, Most: 500}
)

// done are events of the house that a deed amounts to, so far.
type done []entry.Event

// askAmount asks how much of a lot: by weight or, one key further, in a measure, stacked,
// or only some. What else is to be kept with it comes along.
func askAmount(sh *screen.Shared, label string, of entry.Lot, given entry.Maybe[float64], then func(entry.Amount, done) screen.Effect) screen.Effect {
	id := of.ID()
	ways := []screen.Option{
		screen.Opt("m", words.InAMeasure, func(sh *screen.Shared) screen.Effect {
			return askMeasure(sh, of, func(m entry.Measure, with done) screen.Effect {
				return screen.AskNumber(words.HowMany(m.Name), counts, entry.None[float64](), func(n float64) screen.Effect {
					return then(entry.Amount{Lot: id, Measure: string(m.ID()), Count: entry.Some(entry.Count(n))}, with)
				})
			})
		}),
		screen.Opt("o", words.OnlySome, func(*screen.Shared) screen.Effect { return then(entry.Amount{Lot: id, Some: true}, nil) }),
	}
	if of.Of() == entry.LotWood {
		ways = append(ways, screen.Opt("k", words.Stacked, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(label, cubicMetres, entry.None[float64](), func(v float64) screen.Effect {
				return then(entry.Amount{Lot: id, Stacked: entry.Some(entry.CubicMetre(v))}, nil)
			})
		}))
	}
	return screen.AskNumber(label, kilograms, given, func(v float64) screen.Effect {
		return then(entry.Amount{Lot: id, Mass: entry.Some(entry.Kilogram(v))}, nil)
	}, ways...)
}

// whatOf is what a measure of a lot is a measure of.
func whatOf(l entry.Lot) entry.What {
	if l.What != "" {
		return l.What
	}
	return entry.What(l.Material)
}

// askMeasure asks for one of the named measures for a material, or a new one.
func askMeasure(sh *screen.Shared, of entry.Lot, then func(entry.Measure, done) screen.Effect) screen.Effect {
	var known []entry.Measure
	for _, m := range sh.House().Measures {
		if m.What == whatOf(of) {
			known = append(known, m)
		}
	}
	another := func(sh *screen.Shared) screen.Effect {
		return newMeasure(sh, whatOf(of), func(m entry.Measure) screen.Effect { return then(m, done{entry.MeasureNamed{Measure: m}}) })
	}
	if len(known) == 0 {
		return another(sh)
	}
	return screen.Choose(words.WhichMeasure, screen.Lettered('m', len(known)+1, func(i int) (string, func(*screen.Shared) screen.Effect) {
		if i == len(known) {
			return words.AnotherMeasure, another
		}
		return words.MeasureIs(sh.Units, known[i]), func(*screen.Shared) screen.Effect { return then(known[i], nil) }
	})...)
}

// newMeasure asks for the name and the weight of a measure; it may be weighed later.
func newMeasure(sh *screen.Shared, of entry.What, then func(entry.Measure) screen.Effect) screen.Effect {
	uid := sh.NewUID()
	return askName(words.MeasureName, "", func(name string) error {
		for _, m := range sh.House().Measures {
			if strings.EqualFold(m.Name, name) {
				return errors.New(words.MeasureTaken(name))
			}
		}
		return nil
	}, func(name string) screen.Effect {
		return screen.AskMaybe(words.MeasureHolds(name), aMeasureful, entry.None[float64](), func(v entry.Maybe[float64]) screen.Effect {
			return then(entry.Measure{UID: uid, Name: name, What: of, Mass: entry.Maybe[entry.Kilogram]{Value: entry.Kilogram(v.Value), Known: v.Known}})
		})
	})
}

// askName asks for a name that must be there, and good.
func askName(label, given string, bad func(string) error, then func(string) screen.Effect) screen.Effect {
	return screen.Ask{Dialog: screen.Field{
		Label: label, Input: screen.Prefilled(given, false),
		Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
			name := in.Trimmed()
			if name == "" {
				return nil, errors.New(words.NameMissing)
			}
			if err := bad(name); err != nil {
				return nil, err
			}
			return then(name), nil
		},
	}}
}

// lotFree refuses the name that another lot has.
func lotFree(sh *screen.Shared, but entry.UID) func(string) error {
	return func(name string) error {
		for _, l := range sh.House().Lots {
			if l.ID != but && strings.EqualFold(l.Name, name) {
				return errors.New(words.LotTaken(name))
			}
		}
		return nil
	}
}

// askWater asks for the water of what there is, in per cent of its weight as a scale shows
// it; blank is not known.
func askWater(label string, given entry.Maybe[entry.Share], then func(entry.Maybe[entry.Share]) screen.Effect) screen.Effect {
	shown := entry.None[float64]()
	if given.Known {
		shown = entry.Some(round1(100 * lot.OfWeight(given.Value)))
	}
	return screen.AskMaybe(label, water, shown, func(v entry.Maybe[float64]) screen.Effect {
		switch {
		case !v.Known:
			return then(entry.None[entry.Share]())
		case v == shown:
			return then(given)
		}
		return then(entry.Some(lot.OnDry(v.Value / 100)))
	})
}

func round1(v float64) float64 { return float64(int(v*10+0.5)) / 10 }

// described is a lot as its description is keyed anew: what there is of it is no part of
// that, nor are its assays.
func described(l house.Lot) entry.Lot {
	d := l.Lot
	d.Mass, d.Stacked, d.Assay = entry.None[entry.Kilogram](), entry.None[entry.CubicMetre](), nil
	return d
}

// lies is what there is of a lot as a scale shows it, where that is known and more than
// nothing.
func lies(l house.Lot) entry.Maybe[float64] {
	if !l.Left.Known() || l.Left.Kg <= 0 {
		return entry.None[float64]()
	}
	return entry.Some(round2(l.Weight(l.Left.Kg)))
}

func round2(v float64) float64 { return float64(int(v*100+0.5)) / 100 }

// keep keeps what was done, and says it with the lots by their names; then says more.
func keep(evs done, more ...func(*screen.Shared) string) screen.Effect {
	return screen.DidInHouse(func(sh *screen.Shared) string {
		said := ""
		for _, ev := range evs {
			if _, also := ev.(entry.LotStored); also && len(evs) > 1 {
				continue // beside its deed
			}
			said = says(sh, ev)
		}
		for _, m := range more {
			if text := m(sh); text != "" {
				said += "; " + text
			}
		}
		return said
	}, evs...)
}

// verdict keeps what was done like keep, and says first how it came out, where that is known:
// it is what one waits for, and the foot is short.
func verdict(evs done, first func(*screen.Shared) string, more ...func(*screen.Shared) string) screen.Effect {
	kept := keep(evs, more...).(screen.Each)
	for i, e := range kept {
		if say, is := e.(screen.Say); is {
			kept[i] = screen.Say(func(sh *screen.Shared) string {
				if text := first(sh); text != "" {
					return text + "; " + say(sh)
				}
				return say(sh)
			})
		}
	}
	return kept
}

// says is an event of the house in words, its lots and measures by their names.
func says(sh *screen.Shared, ev entry.Event) string {
	return sh.Units.Event(house.NamesOf(sh.Home.Lines()).In(ev))
}

// called are amounts with their lots and measures by name.
func called(sh *screen.Shared, as []entry.Amount) []entry.Amount {
	return house.NamesOf(sh.Home.Lines()).Amounts(as)
}

// material names what a lot is of.
func material(l entry.Lot) string { return modelwords.LotMaterial(l.Of()) }
