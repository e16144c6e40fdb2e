package stores

import (
	"maps"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// oxides are the parts that a lab usually gives of ore or slag, each with its letter.
var oxides = []struct{ key, name string }{
	{"e", "Fe2O3"}, {"o", "FeO"}, {"i", "SiO2"}, {"a", "Al2O3"}, {"l", "CaO"}, {"g", "MgO"}, {"m", "MnO"}, {"k", "K2O"}, {"n", "Na2O"}, {"p", "P2O5"}, {"b", "TiO2"},
}

// assay asks what a lot holds: its iron, or its oxides.
func assay(sh screen.Shared, l house.Lot) screen.Effect {
	if l.Of() != entry.LotOre && l.Of() != entry.LotIronSlag {
		return screen.Refuse(words.NoAssayOf(words.MaterialWord(l.Of())))
	}
	then := func(a entry.Assay) screen.Effect {
		a.Lot = l.ID
		return keep(done{a})
	}
	return askAssay(sh, words.AssayOf(l.Name), then)
}

// sampleResult asks for the lab's answer by the label of its sample.
func sampleResult(sh screen.Shared) screen.Effect {
	return askName(words.SampleLabel, "", func(string) error { return nil }, func(label string) screen.Effect {
		return askAssay(sh, words.AssayOf(label), func(a entry.Assay) screen.Effect {
			return keep(done{entry.SampleResult{Sample: label, Assay: a}})
		})
	})
}

func askAssay(_ screen.Shared, title string, then func(entry.Assay) screen.Effect) screen.Effect {
	return screen.Choose(title,
		screen.Opt("i", words.AssayIron, func(screen.Shared) screen.Effect {
			return screen.AskNumber(words.AssayIronIs, percent, entry.None[float64](), func(v float64) screen.Effect {
				pct := entry.Percent(v)
				return screen.Choose(words.IronOrOxide(v), // asked once: it is the usual slip
					screen.Opt("i", words.ItIsIron, func(screen.Shared) screen.Effect { return basis(entry.Assay{Parts: parts("Fe", pct)}, then) }),
					screen.Opt("o", words.ItIsOxide, func(screen.Shared) screen.Effect { return basis(entry.Assay{Parts: parts("Fe2O3", pct)}, then) }))
			})
		}),
		screen.Opt("o", words.AssayOxides, func(screen.Shared) screen.Effect { return oxideList(entry.Assay{}, then) }))
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
		list = append(list, screen.Opt(o.key, words.ShareIs(o.name, shown), func(screen.Shared) screen.Effect {
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
	list = append(list, screen.Opt("d", words.ShareIs(words.LossOnIgnition, given(a.Loss)), func(screen.Shared) screen.Effect {
		return screen.AskMaybe(words.LossOnIgnition, percent, given(a.Loss), func(v entry.Maybe[float64]) screen.Effect {
			next := a
			next.Loss = entry.Maybe[entry.Percent]{Value: entry.Percent(v.Value), Known: v.Known}
			return oxideList(next, then)
		})
	}))
	return screen.Ask{Dialog: screen.Choice{Title: words.OxidesNow(len(a.Parts)), Options: list, Done: func(screen.Shared) screen.Effect {
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
		list = append(list, screen.Opt(b.key, words.BasisWord(b.is), func(screen.Shared) screen.Effect {
			a.Basis = b.is
			return then(a)
		}))
	}
	list = append(list, screen.Opt("x", words.BasisUnsaid, func(screen.Shared) screen.Effect { return then(a) }))
	return screen.Choose(words.SharesAreOf, slices.Clip(list)...)
}
