package stores

import (
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// burn is a charcoal burn: how much wood went in, how much charcoal came out and where it
// lies, its water, and beside it the brands, which are pieces that are not burnt through,
// and the fines. Either may be left: nobody weighed them.
func (s Screen) burn(sh *screen.Shared, l house.Lot, does entry.Does) screen.Effect {
	brands, fines := sh.NewUID(), sh.NewUID()
	kg := screen.Limits{Unit: "kg", Least: 0, Most: kilograms.Most}
	return askAmount(sh, words.HowMuchIn(does, l.Name), l.Lot, lies(l), func(in entry.Amount, with done) screen.Effect {
		gives := entry.Lot{Material: entry.LotCharcoal, What: entry.Charcoal, Origin: l.Origin, Species: l.Species}
		return s.whither(sh, l, does, gives, func(sh *screen.Shared, to entry.Lot, fresh bool) screen.Effect {
			return askAmount(sh, words.HowMuchOut(does), to, entry.None[float64](), func(out entry.Amount, also done) screen.Effect {
				return askWater(words.WaterAfter(does), entry.None[entry.Share](), func(m entry.Maybe[entry.Share]) screen.Effect {
					return screen.AskMaybe(words.BrandsLeft, kg, entry.None[float64](), func(unburnt entry.Maybe[float64]) screen.Effect {
						return screen.AskMaybe(words.FinesLeft, kg, entry.None[float64](), func(dust entry.Maybe[float64]) screen.Effect {
							out.Moisture = m
							evs := append(append(done{}, with...), also...)
							d := entry.Deed{Does: does, In: []entry.Amount{in}, Out: []entry.Amount{out}}
							if fresh {
								to.Moisture = m
								evs = append(evs, entry.LotStored{Lot: to})
							}
							beside := func(uid entry.UID, name string, as entry.Lot, v entry.Maybe[float64]) {
								if !v.Known || v.Value <= 0 {
									return
								}
								for _, o := range sh.House().Lots { // the heap of burns before
									if o.Name == name && o.Of() == as.Of() {
										uid = ""
										as.UID = o.ID
									}
								}
								if uid != "" {
									as.UID, as.Name = uid, name
									evs = append(evs, entry.LotStored{Lot: as})
								}
								d.Out = append(d.Out, entry.Amount{Lot: as.UID, Mass: entry.Some(entry.Kilogram(v.Value))})
							}
							beside(brands, words.BrandsOf(l.Name), entry.Lot{Material: entry.LotWood, Species: l.Species, Origin: l.Origin}, unburnt)
							beside(fines, words.DustOf(to.Name), house.AsFines(entry.Lot{Material: entry.LotCharcoal, What: entry.Charcoal, Species: l.Species, Moisture: m}), dust)
							return s.chosen(to.ID(), verdict(append(evs, d), cameOut(l, d, to.ID()), shortOf(l.ID)))
						})
					})
				})
			})
		})
	})
}
