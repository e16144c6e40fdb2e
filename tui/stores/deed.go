package stores

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/lot"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// worked are what is done to a material, that makes a lot of it another, or the same one
// otherwise.
var worked = map[entry.Material][]entry.Does{
	entry.LotOre:      {entry.Dried, entry.Roasted, entry.Washed, entry.PickedOver, entry.Broken, entry.Crushed},
	entry.LotCharcoal: {entry.Broken, entry.PickedOver, entry.Dried},
	entry.LotWood:     {entry.Burnt, entry.Seasoned, entry.Dried, entry.Broken},
	entry.LotIronSlag: {entry.Broken, entry.Crushed, entry.PickedOver},
	entry.LotFlux:     {entry.Crushed, entry.Dried},
	entry.LotClay:     {entry.Dried, entry.Crushed},
	entry.LotSand:     {entry.Dried, entry.Washed},
}

// gone are the ways in which a lot goes.
var gone = []entry.Does{entry.Sold, entry.GivenAway, entry.Spoilt}

// deeds is the list of what may have been done with a lot.
func (s Screen) deeds(sh *screen.Shared, l house.Lot) screen.Effect {
	type line struct {
		word string
		then func(*screen.Shared) screen.Effect
	}
	var lines []line
	for _, does := range worked[l.Of()] {
		work := s.work
		if does == entry.Burnt {
			work = s.burn
		}
		lines = append(lines, line{words.DeedWord(does), func(sh *screen.Shared) screen.Effect { return work(sh, l, does) }})
	}
	lines = append(lines, line{words.DeedWord(entry.Sieved), func(sh *screen.Shared) screen.Effect { return s.sieve(sh, l) }})
	if len(others(sh, l)) > 0 {
		lines = append(lines, line{words.DeedWord(entry.Mixed), func(sh *screen.Shared) screen.Effect { return s.mix(sh, l) }})
	}
	for _, does := range came[l.Of()] {
		if does != entry.Roasted && does != entry.Burnt && does != entry.Seasoned && does != entry.PickedOver {
			lines = append(lines, line{words.MoreCame(does), func(sh *screen.Shared) screen.Effect { return more(sh, l, does) }})
		}
	}
	for _, does := range gone {
		lines = append(lines, line{words.GoneAs(does), func(sh *screen.Shared) screen.Effect { return went(sh, l, does) }})
	}
	return screen.Choose(words.DoneWith(l.Name), screen.Lettered('o', len(lines), func(i int) (string, func(*screen.Shared) screen.Effect) {
		return lines[i].word, lines[i].then
	})...)
}

// more is more of the same lot that came.
func more(sh *screen.Shared, l house.Lot, does entry.Does) screen.Effect {
	return askAmount(sh, words.HowMuchCame(does), l.Lot, entry.None[float64](), func(a entry.Amount, with done) screen.Effect {
		return askWater(words.WaterIn(l.Name), l.Moisture, func(m entry.Maybe[entry.Share]) screen.Effect {
			a.Moisture = m
			return keep(append(with, entry.Deed{Does: does, Out: []entry.Amount{a}}))
		})
	})
}

// went is what is gone of a lot. Nobody is held to what there is: a lot below nothing is
// told.
func went(sh *screen.Shared, l house.Lot, does entry.Does) screen.Effect {
	return askAmount(sh, words.HowMuchWent(does), l.Lot, entry.None[float64](), func(a entry.Amount, with done) screen.Effect {
		return keep(append(with, entry.Deed{Does: does, In: []entry.Amount{a}}), shortOf(l.ID))
	})
}

// shortOf says that a lot is below nothing.
func shortOf(id entry.UID) func(*screen.Shared) string {
	return func(sh *screen.Shared) string {
		l, _ := sh.House().Lot(string(id))
		if kg, short := l.Short(); short {
			return words.ShortBy(sh.Units, l.Weight(kg))
		}
		return ""
	}
}

// work is a deed on a lot: how much went in, how much came out, and where that lies.
func (s Screen) work(sh *screen.Shared, l house.Lot, does entry.Does) screen.Effect {
	return askAmount(sh, words.HowMuchIn(does, l.Name), l.Lot, lies(l), func(in entry.Amount, with done) screen.Effect {
		gives := entry.Lot{Material: l.Of(), What: l.What, Mix: l.Mix, Origin: l.Origin, Species: l.Species, Signs: l.Signs}
		return s.whither(sh, l, does, gives, func(sh *screen.Shared, to entry.Lot, fresh bool) screen.Effect {
			return askAmount(sh, words.HowMuchOut(does), to, entry.None[float64](), func(out entry.Amount, also done) screen.Effect {
				also = append(append(done{}, with...), also...)
				finish := func(m entry.Maybe[entry.Share]) screen.Effect {
					return s.worked(l, does, in, out, to, fresh, m, also)
				}
				if m, same := keptDry(l, does, in, out); same {
					return finish(m)
				}
				if does == entry.Dried || does == entry.Seasoned || does == entry.Roasted || does == entry.Washed {
					return askWater(words.WaterAfter(does), entry.None[entry.Share](), finish)
				}
				return finish(l.Moisture)
			})
		})
	})
}

// keptDry is the moisture of what came out of drying: water alone is lost.
func keptDry(l house.Lot, does entry.Does, in, out entry.Amount) (entry.Maybe[entry.Share], bool) {
	if does != entry.Dried && does != entry.Seasoned || !in.Mass.Known || !out.Mass.Known || !l.Moisture.Known || in.Mass.Value <= 0 {
		return entry.None[entry.Share](), false
	}
	dry := float64(in.Mass.Value) / (1 + float64(l.Moisture.Value))
	return entry.Some(entry.Share(math.Max(float64(out.Mass.Value)/dry-1, 0))), true
}

// worked keeps such a deed.
func (s Screen) worked(l house.Lot, does entry.Does, in, out entry.Amount, to entry.Lot, fresh bool, m entry.Maybe[entry.Share], with done) screen.Effect {
	out.Moisture = m
	evs := append(done{}, with...)
	d := entry.Deed{Does: does, In: []entry.Amount{in}, Out: []entry.Amount{out}}
	switch {
	case fresh:
		to.Moisture = m
		evs = append(evs, entry.LotStored{Lot: to}, d)
	case to.ID() == l.ID && m.Known && m != l.Moisture && most(l, in): // it all lies as it came out
		desc := described(l)
		desc.Moisture = m
		evs = append(evs, d, entry.LotStored{Lot: desc})
	default:
		evs = append(evs, d)
	}
	return s.chosen(to.ID(), verdict(evs, cameOut(l, d, to.ID()), shortOf(l.ID)))
}

// most tells whether an amount is nearly all there was of a lot.
func most(l house.Lot, in entry.Amount) bool {
	return in.Mass.Known && l.Left.Known() && float64(in.Mass.Value) >= 0.95*l.Weight(l.Left.Kg)
}

// cameOut says what a deed tells of itself: a roast whether it went through, a burn its
// yields, drying the water that is left.
func cameOut(l house.Lot, d entry.Deed, to entry.UID) func(*screen.Shared) string {
	return func(sh *screen.Shared) string {
		switch d.Does {
		case entry.Roasted:
			if r, ok := lot.RoastOf(sh.House(), sh.Home.Lines(), to); ok {
				return words.RoastThrough + " " + words.RoastedThrough(r)
			}
		case entry.Burnt:
			if b, ok := lot.BurnOf(sh.House(), d); ok {
				return words.BurnYields(b)
			}
		case entry.Dried, entry.Seasoned:
			if m := d.Out[0].Moisture; m.Known {
				return words.NowHolds(m.Value)
			}
		}
		return ""
	}
}

// whither asks where what came out lies: in a new lot, in the same one or with another.
func (s Screen) whither(sh *screen.Shared, l house.Lot, does entry.Does, gives entry.Lot, then func(sh *screen.Shared, to entry.Lot, fresh bool) screen.Effect) screen.Effect {
	uid := sh.NewUID()
	fresh := func(sh *screen.Shared) screen.Effect {
		return askName(words.LotNameOf(gives.Material), words.NameAfter(l.Name, does), lotFree(sh, ""), func(name string) screen.Effect {
			to := gives
			to.UID, to.Name = uid, name
			return then(sh, to, true)
		})
	}
	list := []screen.Option{screen.Opt("n", words.IntoNew, fresh)}
	usual := "n"
	if gives.Material == l.Of() {
		list = append(list, screen.Opt("e", words.IntoSame(l.Name), func(sh *screen.Shared) screen.Effect { return then(sh, described(l), false) }))
		if does != entry.Roasted {
			usual = "e"
		}
	}
	var into []house.Lot
	for _, o := range lots(sh) {
		if o.Of() == gives.Material && o.ID != l.ID && len(into) < 8 && !spent(o) {
			into = append(into, o)
		}
	}
	keys := "abdghij"
	for i, o := range into[:min(len(into), len(keys))] {
		list = append(list, screen.Opt(keys[i:i+1], words.IntoOther(o.Name), func(sh *screen.Shared) screen.Effect { return then(sh, described(o), false) }))
	}
	return screen.ChooseOr(usual, words.Whither(does), list...)
}

// others are the lots of the same material.
func others(sh *screen.Shared, l house.Lot) (all []house.Lot) {
	for _, o := range lots(sh) {
		if o.Of() == l.Of() && o.ID != l.ID && !spent(o) {
			all = append(all, o)
		}
	}
	return all[:min(len(all), 12)]
}

// mix takes of this lot and of another into a third, or into this one.
func (s Screen) mix(sh *screen.Shared, l house.Lot) screen.Effect {
	with := others(sh, l)
	uid := sh.NewUID()
	return screen.Choose(words.MixWith(l.Name), screen.Lettered('m', len(with), func(i int) (string, func(*screen.Shared) screen.Effect) {
		o := with[i]
		return o.Name, func(sh *screen.Shared) screen.Effect {
			return askAmount(sh, words.HowMuchIn(entry.Mixed, l.Name), l.Lot, lies(l), func(a entry.Amount, one done) screen.Effect {
				return askAmount(sh, words.HowMuchIn(entry.Mixed, o.Name), o.Lot, lies(o), func(b entry.Amount, two done) screen.Effect {
					evs := append(append(done{}, one...), two...)
					return askName(words.LotNameOf(l.Of()), words.MixName(l.Name, o.Name), lotFree(sh, ""), func(name string) screen.Effect {
						to := entry.Lot{UID: uid, Name: name, Material: l.Of(), What: l.What}
						if l.Of() == entry.LotOre {
							to.Mix = name
						}
						out := entry.Amount{Lot: uid, Some: true}
						if a.Mass.Known && b.Mass.Known {
							out = entry.Amount{Lot: uid, Mass: entry.Some(a.Mass.Value + b.Mass.Value)}
							if m, n := l.Moisture, o.Moisture; m.Known && n.Known {
								dry := float64(a.Mass.Value)/(1+float64(m.Value)) + float64(b.Mass.Value)/(1+float64(n.Value))
								out.Moisture = entry.Some(entry.Share(float64(out.Mass.Value)/math.Max(dry, 1e-9) - 1))
								to.Moisture = out.Moisture
							}
						}
						evs = append(evs, entry.LotStored{Lot: to}, entry.Deed{Does: entry.Mixed, In: []entry.Amount{a, b}, Out: []entry.Amount{out}})
						return s.chosen(uid, keep(evs, shortOf(l.ID), shortOf(o.ID)))
					})
				})
			})
		}
	})...)
}
