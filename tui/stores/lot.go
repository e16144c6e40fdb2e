package stores

import (
	"errors"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// came are the ways in which a material comes, the usual one first.
var came = map[entry.Material][]entry.Does{
	entry.LotOre:       {entry.Dug, entry.Roasted, entry.Bought, entry.Given},
	entry.LotCharcoal:  {entry.Bought, entry.Burnt, entry.Given},
	entry.LotWood:      {entry.Bought, entry.Seasoned, entry.Given},
	entry.LotClay:      {entry.Dug, entry.Bought, entry.Given},
	entry.LotSand:      {entry.Dug, entry.Bought, entry.Given},
	entry.LotIronSlag:  {entry.PickedOver, entry.Bought, entry.Given},
	entry.LotFlux:      {entry.Bought, entry.Dug, entry.Given},
	entry.LotFragments: {entry.PickedOver, entry.Bought, entry.Given},
}

// charged is what a material is in a charge, where it goes into one.
var charged = map[entry.Material]entry.What{
	entry.LotOre: entry.Ore, entry.LotCharcoal: entry.Charcoal, entry.LotIronSlag: entry.SeedSlag, entry.LotFragments: entry.Fragments, entry.LotFlux: entry.Flux,
}

// newLot asks what it is of, how it came, its name and how much there is, and how wet.
func (s Screen) newLot(sh *screen.Shared) screen.Effect {
	uid := sh.NewUID()
	return screen.Choose(words.LotOf, screen.Lettered('n', len(ranks), func(i int) (string, func(*screen.Shared) screen.Effect) {
		m := ranks[i]
		l := entry.Lot{UID: uid, Material: m, What: charged[m]}
		return words.MaterialWord(m), func(sh *screen.Shared) screen.Effect { return s.howItCame(sh, l) }
	})...)
}

func (s Screen) howItCame(_ *screen.Shared, l entry.Lot) screen.Effect {
	ways := came[l.Material]
	return screen.Choose(words.HowItCame, screen.Lettered('n', len(ways), func(i int) (string, func(*screen.Shared) screen.Effect) {
		return words.CameAs(ways[i], l.Material), func(sh *screen.Shared) screen.Effect {
			return askName(words.LotNameOf(l.Material), "", lotFree(sh, ""), func(name string) screen.Effect {
				l.Name = name
				if l.Material == entry.LotOre {
					l.Mix = name
				}
				return s.howMuchCame(sh, l, ways[i])
			})
		}
	})...)
}

func (s Screen) howMuchCame(sh *screen.Shared, l entry.Lot, does entry.Does) screen.Effect {
	return askAmount(sh, words.HowMuchOf(l.Name), l, entry.None[float64](), func(a entry.Amount, with done) screen.Effect {
		return askWater(words.WaterIn(l.Name), entry.None[entry.Share](), func(m entry.Maybe[entry.Share]) screen.Effect {
			l.Moisture = m
			a.Moisture = m
			return s.chosen(l.UID, keep(append(with, entry.LotStored{Lot: l}, entry.Deed{Does: does, Out: []entry.Amount{a}}), adds(l)))
		})
	})
}

// adds says what a new lot weighs dry, once how much there is and how wet is known.
func adds(l entry.Lot) func(*screen.Shared) string {
	return func(sh *screen.Shared) string {
		is, ok := sh.House().Lot(string(l.ID()))
		if !ok || !is.Left.Known() || !l.Moisture.Known {
			return ""
		}
		return words.DryIs(sh.Units.Kg(entry.Kilogram(is.Left.Kg)))
	}
}

// count sets what there is.
func count(sh *screen.Shared, l house.Lot) screen.Effect {
	return askAmount(sh, words.CountedNow(l.Name), l.Lot, lies(l), func(a entry.Amount, with done) screen.Effect {
		return keep(append(with, entry.Deed{Does: entry.CountedAgain, Out: []entry.Amount{a}}), func(sh *screen.Shared) string {
			is, _ := sh.House().Lot(string(l.ID))
			if n := len(is.Changes); n > 0 && is.Changes[n-1].Count {
				return words.CountFound(sh.Units, is.Weight(is.Changes[n-1].Off))
			}
			return ""
		})
	})
}

// moisture sets how wet a lot is; what there is of it dry stays.
func moisture(sh *screen.Shared, l house.Lot) screen.Effect {
	set := func(m entry.Maybe[entry.Share]) screen.Effect {
		d := described(l)
		d.Moisture = m
		return screen.DidInHouse(func(sh *screen.Shared) string {
			if !m.Known {
				return words.WaterUnknown(l.Name)
			}
			return words.BothBases(l.Name, 100*lot.OfWeight(m.Value), 100*float64(m.Value))
		}, entry.LotStored{Lot: d})
	}
	return screen.ChooseOr("w", words.WaterOf(l.Name),
		screen.Opt("w", words.WeighDryWeigh, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.SampleWet, grams, entry.None[float64](), func(wet float64) screen.Effect {
				return screen.Ask{Dialog: screen.Field{Label: words.SampleDry, Unit: grams.Unit, Input: screen.NewInput(true), Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
					dry, err := in.Value(sh.Units, grams)
					switch {
					case err != nil:
						return nil, err
					case dry > wet:
						return nil, errors.New(words.DryOverWet)
					}
					return set(entry.Some(entry.Share(wet/dry - 1))), nil
				}}}
			})
		}),
		screen.Opt("p", words.WaterPerCent, func(*screen.Shared) screen.Effect { return askWater(words.WaterIn(l.Name), l.Moisture, set) }))
}

var grams = screen.Limits{Unit: "g", Least: 0.1, Most: 100_000}

// describe changes what a lot is called, where it is from, and what is known of it.
func describe(sh *screen.Shared, l house.Lot) screen.Effect {
	d := described(l)
	set := func(d entry.Lot) screen.Effect { return keep(done{entry.LotStored{Lot: d}}) }
	var list []screen.Option
	if _, byName := l.ID.Name(); !byName { // what goes by its name cannot have another
		list = append(list, screen.Opt("n", words.LotNameIs(l.Name), func(sh *screen.Shared) screen.Effect {
			return askName(words.LotNameOf(l.Of()), l.Name, lotFree(sh, l.ID), func(name string) screen.Effect {
				d.Name = name
				return set(d)
			})
		}))
	}
	text := func(k, label string, at *string) {
		list = append(list, screen.Opt(k, words.FieldIs(label, *at), func(*screen.Shared) screen.Effect {
			return screen.AskWords(label, *at, func(s string) screen.Effect {
				*at = s
				return set(d)
			})
		}))
	}
	text("o", words.LotOrigin, &d.Origin)
	switch l.Of() {
	case entry.LotOre:
		text("m", words.LotMix, &d.Mix)
	case entry.LotWood, entry.LotCharcoal:
		text("p", words.LotSpecies, &d.Species)
		list = append(list, screen.Opt("b", words.LotBulk(l.BulkDensity), func(*screen.Shared) screen.Effect {
			return screen.AskMaybe(words.LotBulkOf(l.Of()), screen.Limits{Unit: "kg/m³", Least: 20, Most: 2000}, given(l.BulkDensity), func(v entry.Maybe[float64]) screen.Effect {
				d.BulkDensity = entry.Maybe[entry.KgPerCubicM]{Value: entry.KgPerCubicM(v.Value), Known: v.Known}
				return set(d)
			})
		}))
	}
	list = append(list, screen.Opt("l", words.LotLump(l.Lump), func(*screen.Shared) screen.Effect {
		return screen.AskMaybe(words.LotLumpIs, millimetres, given(l.Lump), func(v entry.Maybe[float64]) screen.Effect {
			d.Lump = entry.Maybe[entry.Millimetre]{Value: entry.Millimetre(v.Value), Known: v.Known}
			return set(d)
		})
	}))
	text("e", words.LotNote, &d.Note)
	return screen.Choose(words.DescribeLot(l.Name), list...)
}

func given[Q entry.Quantity](m entry.Maybe[Q]) entry.Maybe[float64] {
	return entry.Maybe[float64]{Value: float64(m.Value), Known: m.Known}
}

// measures lists the named measures, each to be weighed again, and a new one.
func measures(sh *screen.Shared) screen.Effect {
	ms := sh.House().Measures
	if len(ms) > 20 {
		ms = ms[len(ms)-20:]
	}
	return screen.Choose(words.DoMeasures, screen.Lettered('k', len(ms)+1, func(i int) (string, func(*screen.Shared) screen.Effect) {
		if i == len(ms) {
			return words.AnotherMeasure, func(*screen.Shared) screen.Effect {
				of := []entry.What{entry.Charcoal, entry.Ore, entry.What(entry.LotWood), entry.What(entry.LotClay), entry.What(entry.LotSand), entry.Flux}
				return screen.Choose(words.MeasureOf, screen.Lettered('a', len(of), func(i int) (string, func(*screen.Shared) screen.Effect) {
					return strings.ReplaceAll(string(of[i]), "_", " "), func(sh *screen.Shared) screen.Effect {
						return newMeasure(sh, of[i], func(m entry.Measure) screen.Effect { return keep(done{entry.MeasureNamed{Measure: m}}) })
					}
				})...)
			}
		}
		m := ms[i]
		return words.MeasureIs(sh.Units, m), func(*screen.Shared) screen.Effect {
			return screen.AskMaybe(words.MeasureHolds(m.Name), aMeasureful, given(m.Mass), func(v entry.Maybe[float64]) screen.Effect {
				m.Mass = entry.Maybe[entry.Kilogram]{Value: entry.Kilogram(v.Value), Known: v.Known}
				m.Guessed = false
				return keep(done{entry.MeasureNamed{Measure: m}})
			})
		}
	})...)
}
