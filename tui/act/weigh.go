package act

import (
	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// weighed are the things that a smelt gives or leaves over, in the order in which they
// come on the scales, each with its own letter.
var weighed = []struct {
	key, word string
	what      entry.Weighed
}{
	{"b", words.WeighBloom, entry.WeighBloom}, {"g", words.WeighSlag, entry.WeighSlag}, {"r", words.WeighFragments, entry.WeighFragments},
	{"k", words.WeighCharcoalLeft, entry.WeighCharcoalLeft}, {"a", words.WeighWall, entry.WeighWall},
}

// AskWeigh asks what was weighed, then its mass; of a bloom also in which state, since a
// bloom loses slag as it is hammered and the two are never taken for one another, and of
// slag where it was.
func AskWeigh(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	if sees(sh, from) { // the bloom is weighed when it is cold, without anybody
		return screen.See{Event: entry.Weigh{What: entry.WeighMeasure}}
	}
	list := []screen.Option{
		screen.Opt("m", words.WeighMeasure, func(sh *screen.Shared) screen.Effect { return AskReweigh(sh, from, then) }),
	}
	for _, w := range weighed {
		list = append(list, screen.Opt(w.key, w.word, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.Weighing(w.word), kilograms, givenMass(from, w.what), func(v float64) screen.Effect {
				other := entry.None[float64]() // of the bloom that was on the scales before
				if from == nil && v > 0 {
					other = sh.Smelt.Reading().Bloom
				}
				kept := entry.Weigh{What: w.what, Mass: entry.Kilogram(v)}
				was := as[entry.Weigh](from)
				if was.What == w.what { // what is put right keeps what else was said of it
					kept.PlusMinus, kept.InWater, kept.Soaked = was.PlusMinus, was.InWater, was.Soaked
				}
				switch {
				case w.what == entry.WeighBloom && v > 0:
					return askState(sh, kept, was.State, other, then)
				case w.what == entry.WeighSlag && v > 0:
					return askPlace(kept, was.Where, then)
				}
				return then(kept)
			})
		}))
	}
	list = append(list,
		screen.Opt("l", words.WeighLot, func(*screen.Shared) screen.Effect {
			return screen.AskWords(words.WeighLot, as[entry.Weigh](from).Name, func(name string) screen.Effect {
				return screen.AskNumber(words.Weighing(name), kilograms, givenMass(from, entry.WeighLot), func(v float64) screen.Effect {
					return then(entry.Weigh{What: entry.WeighLot, Name: name, Mass: entry.Kilogram(v)})
				})
			})
		}),
		screen.Opt("n", words.WeighNever, func(*screen.Shared) screen.Effect { return askNever(then) }))
	return screen.Choose(words.WeighWhat, list...)
}

// askPlace asks which slag was on the scales: what ran out and what stayed in are of
// different make. Left without an answer the weighing stays, as one of all of it.
func askPlace(w entry.Weigh, was entry.SlagWhere, then func(entry.Event) screen.Effect) screen.Effect {
	of := func(k, word string, at entry.SlagWhere) screen.Option {
		return screen.Opt(k, word, func(*screen.Shared) screen.Effect { w.Where = at; return then(w) })
	}
	again := func(w entry.Weigh) screen.Effect { return askPlace(w, was, then) }
	list := []screen.Option{of("p", words.SlagTappedOut, entry.SlagOfTap), of("k", words.SlagCake, entry.SlagOfFurnace), of("n", words.SlagOfAll, ""), giveOrTake(w, then, again)}
	enter := "n"
	switch was {
	case entry.SlagOfTap:
		enter = "p"
	case entry.SlagOfFurnace:
		enter = "k"
	}
	all := func(*screen.Shared) screen.Effect { return then(w) }
	return screen.Each{screen.Kept(then(w)), screen.Ask{Dialog: screen.Choice{Title: words.WhichSlag, Default: enter, Left: all, Options: list}}}
}

// askState asks in which state a bloom was on the scales. Left without an answer the
// weighing stays, and the state is not said. Where the bloom was weighed before, it may be
// another piece of it that was on the scales now: then both are taken together, since what
// is weighed again takes the place of what was weighed before.
func askState(sh *screen.Shared, w entry.Weigh, was entry.PieceState, other entry.Maybe[float64], then func(entry.Event) screen.Effect) screen.Effect {
	in := func(k, word string, s entry.PieceState) screen.Option {
		return screen.Opt(k, word, func(*screen.Shared) screen.Effect { w.State = s; return then(w) })
	}
	again := func(w entry.Weigh) screen.Effect { return askState(sh, w, was, other, then) }
	list := []screen.Option{
		in("h", words.StateHot, entry.Hot), in("k", words.StateCold, entry.Cold), in("m", words.StateCompacted, entry.Compacted), in("n", words.StateNotSaid, ""),
		giveOrTake(w, then, again), hungInWater(w, then, again),
	}
	if all := w.Mass + entry.Kilogram(other.Value); other.Positive() {
		list = append(list, screen.Opt("p", words.OtherPiece(sh.Units.Kg(all)), func(*screen.Shared) screen.Effect {
			w.Mass = all
			return askState(sh, w, was, entry.None[float64](), then)
		}))
	}
	enter := "n"
	for i, s := range []entry.PieceState{entry.Hot, entry.Cold, entry.Compacted} {
		if was == s {
			enter = list[i].Keys()[0]
		}
	}
	unsaid := func(*screen.Shared) screen.Effect { return then(w) }
	return screen.Each{screen.Kept(then(w)), screen.Ask{Dialog: screen.Choice{Title: words.WeighState, Default: enter, Left: unsaid, Options: list}}}
}

// giveOrTake asks how far a weighing may be off, where that is not what scales are usually
// off by, and goes on with what was asked. Left, the weighing stays as it is.
func giveOrTake(w entry.Weigh, then func(entry.Event) screen.Effect, again func(entry.Weigh) screen.Effect) screen.Option {
	return screen.Opt("e", words.GiveOrTake, func(*screen.Shared) screen.Effect {
		return part(w, words.GiveOrTakeKg, Given(w.PlusMinus), then, func(kg entry.Kilogram) screen.Effect {
			w.PlusMinus = entry.Some(kg)
			return again(w)
		})
	})
}

// hungInWater asks what a bloom weighs hung in water, of which its slag is told in a wide
// band, and goes on with what was asked. Left, the weighing stays as it is.
func hungInWater(w entry.Weigh, then func(entry.Event) screen.Effect, again func(entry.Weigh) screen.Effect) screen.Option {
	return screen.Opt("i", words.AlsoInWater, func(*screen.Shared) screen.Effect {
		return part(w, words.InWaterKg, Given(w.InWater), then, func(kg entry.Kilogram) screen.Effect {
			w.InWater = entry.Some(kg)
			return AskSoaked(func(soaked bool) screen.Effect { w.Soaked = soaked; return again(w) }, func() screen.Effect { return then(w) })
		})
	})
}

// part asks for a mass that is a part of what was weighed.
func part(w entry.Weigh, label string, given entry.Maybe[float64], then func(entry.Event) screen.Effect, with func(entry.Kilogram) screen.Effect) screen.Effect {
	limits := screen.Limits{Unit: "kg", Least: 0.001, Most: float64(w.Mass)}
	field := screen.Field{
		Label: label, Unit: limits.Unit, Input: screen.PrefilledWith(modelwords.Units{}, given, limits.Unit),
		Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
			v, err := in.Value(sh.Units, limits)
			if err != nil {
				return nil, err
			}
			return with(entry.Kilogram(v)), nil
		},
		Left: func(*screen.Shared) screen.Effect { return then(w) },
	}
	return screen.Each{screen.Kept(then(w)), screen.Ask{Dialog: field}}
}

// AskSoaked asks whether a piece was soaked before it was hung in water: then only the shut
// pores are left.
func AskSoaked(then func(bool) screen.Effect, left func() screen.Effect) screen.Effect {
	said := func(soaked bool) func(*screen.Shared) screen.Effect {
		return func(*screen.Shared) screen.Effect { return then(soaked) }
	}
	return screen.Ask{Dialog: screen.Choice{Title: words.WasSoaked, Default: "n", Left: func(*screen.Shared) screen.Effect { return left() }, Options: []screen.Option{
		screen.Opt("n", words.NotSoaked, said(false)), screen.Opt("k", words.SoakedFirst, said(true)),
	}}}
}

// askNever closes a weighing that nobody will make, so that nothing goes on asking for it.
func askNever(then func(entry.Event) screen.Effect) screen.Effect {
	var list []screen.Option
	for _, w := range weighed {
		list = append(list, screen.Opt(w.key, w.word, func(*screen.Shared) screen.Effect { return then(entry.Weigh{What: w.what, Closed: true}) }))
	}
	return screen.Choose(words.WeighNever, list...)
}

func givenMass(from entry.Event, w entry.Weighed) entry.Maybe[float64] {
	if was, ok := from.(entry.Weigh); ok && was.What == w && !was.Closed {
		return Given(entry.Some(was.Mass))
	}
	return entry.None[float64]()
}
