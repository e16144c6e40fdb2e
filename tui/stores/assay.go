package stores

import (
	"maps"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// oxides are the parts that a lab usually gives of ore or slag, each with its letter.
var oxides = []struct{ key, name string }{
	{"e", "Fe2O3"}, {"o", "FeO"}, {"i", "SiO2"}, {"a", "Al2O3"}, {"l", "CaO"}, {"g", "MgO"}, {"m", "MnO"}, {"k", "K2O"}, {"n", "Na2O"}, {"p", "P2O5"}, {"b", "TiO2"},
}

// assay asks what a lot holds: its iron, or its oxides.
func assay(sh *screen.Shared, l house.Lot) screen.Effect {
	if l.Of() != entry.LotOre && l.Of() != entry.LotIronSlag {
		return screen.Refuse(words.NoAssayOf(words.MaterialWord(l.Of())))
	}
	then := func(a entry.Assay) screen.Effect {
		a.Lot = l.ID
		return keep(done{a})
	}
	if l.Of() == entry.LotOre {
		return askAssay(sh, words.AssayOf(l.Name), then, screen.Opt("g", words.SignsInstead, func(*screen.Shared) screen.Effect { return signs(l) }))
	}
	return askAssay(sh, words.AssayOf(l.Name), then)
}

// signs is the list of what ore shows without a laboratory, each set or taken away by its key;
// it stays open until enter keeps it.
func signs(l house.Lot) screen.Effect { return signsNow(l, l.Signs) }

func signsNow(l house.Lot, seen []entry.OreSign) screen.Effect {
	all := entry.Choices[entry.OreSign]()
	return screen.Ask{Dialog: screen.Choice{
		Title: words.SignsOf(l.Name),
		Options: screen.Lettered('g', len(all), func(i int) (string, func(*screen.Shared) screen.Effect) {
			at := slices.Index(seen, all[i])
			word := words.SignIs(all[i], at >= 0)
			return word, func(*screen.Shared) screen.Effect {
				if at >= 0 {
					return signsNow(l, slices.Delete(slices.Clone(seen), at, at+1))
				}
				return signsNow(l, append(slices.Clone(seen), all[i]))
			}
		}),
		Done: func(*screen.Shared) screen.Effect {
			d := described(l)
			d.Signs = seen
			return keep(done{entry.LotStored{Lot: d}}, func(sh *screen.Shared) string {
				is, _ := sh.House().Lot(string(l.ID))
				return words.IronNow(lot.IronShare(is))
			})
		},
	}}
}

// sampleResult asks for the lab's answer by the label of its sample.
func sampleResult(sh *screen.Shared) screen.Effect {
	return askName(words.SampleLabel, "", func(string) error { return nil }, func(label string) screen.Effect {
		return askAssay(sh, words.AssayOf(label), func(a entry.Assay) screen.Effect {
			return keep(done{entry.SampleResult{Sample: label, Assay: a}})
		})
	})
}

func askAssay(_ *screen.Shared, title string, then func(entry.Assay) screen.Effect, instead ...screen.Option) screen.Effect {
	return screen.Choose(title, append([]screen.Option{
		screen.Opt("i", words.AssayIron, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.AssayIronIs, percent, entry.None[float64](), func(v float64) screen.Effect {
				pct := entry.Percent(v)
				return screen.Choose(words.IronOrOxide(v), // asked once: it is the usual slip
					screen.Opt("i", words.ItIsIron, func(*screen.Shared) screen.Effect { return basis(entry.Assay{Parts: parts("Fe", pct)}, then) }),
					screen.Opt("o", words.ItIsOxide, func(*screen.Shared) screen.Effect { return basis(entry.Assay{Parts: parts("Fe2O3", pct)}, then) }))
			})
		}),
		screen.Opt("o", words.AssayOxides, func(*screen.Shared) screen.Effect { return oxideList(entry.Assay{}, then) }),
	}, instead...)...)
}

func parts(name string, v entry.Percent) map[string]entry.Assayed {
	return map[string]entry.Assayed{name: {Percent: v}}
}

// oxideList stays open while one share after the other is typed.
func oxideList(a entry.Assay, then func(entry.Assay) screen.Effect) screen.Effect {
	var list []screen.Option
	for _, o := range oxides {
		was, known := a.Parts[o.name]
		shown := entry.Maybe[float64]{Value: float64(was.Percent), Known: known}
		list = append(list, screen.Opt(o.key, words.ShareIs(o.name, shown), func(*screen.Shared) screen.Effect {
			return screen.AskMaybe(o.name, percent, shown, func(v entry.Maybe[float64]) screen.Effect {
				next := a
				next.Parts = maps.Clone(a.Parts)
				if next.Parts == nil {
					next.Parts = map[string]entry.Assayed{}
				}
				delete(next.Parts, o.name)
				if v.Known {
					next.Parts[o.name] = entry.Assayed{Percent: entry.Percent(v.Value)}
				}
				return oxideList(next, then)
			})
		}))
	}
	list = append(list, screen.Opt("d", words.ShareIs(words.LossOnIgnition, given(a.Loss)), func(*screen.Shared) screen.Effect {
		return screen.AskMaybe(words.LossOnIgnition, percent, given(a.Loss), func(v entry.Maybe[float64]) screen.Effect {
			next := a
			next.Loss = entry.Maybe[entry.Percent]{Value: entry.Percent(v.Value), Known: v.Known}
			return oxideList(next, then)
		})
	}))
	return screen.Ask{Dialog: screen.Choice{Title: words.OxidesNow(len(a.Parts)), Options: list, Done: func(*screen.Shared) screen.Effect {
		if len(a.Parts) == 0 {
			return screen.Refuse(words.NoShareYet)
		}
		return basis(a, then)
	}}}
}

// basis asks what the shares are of.
func basis(a entry.Assay, then func(entry.Assay) screen.Effect) screen.Effect {
	of := []struct {
		key string
		is  entry.AssayBasis
	}{{"g", entry.AsDug}, {"d", entry.AsDried}, {"r", entry.AsRoasted}, {"i", entry.AsIgnited}, {"n", entry.Normalised}}
	var list []screen.Option
	for _, b := range of {
		list = append(list, screen.Opt(b.key, words.BasisWord(b.is), func(*screen.Shared) screen.Effect {
			a.Basis = b.is
			return then(a)
		}))
	}
	list = append(list, screen.Opt("x", words.BasisUnsaid, func(*screen.Shared) screen.Effect { return then(a) }))
	return screen.Choose(words.SharesAreOf, slices.Clip(list)...)
}
