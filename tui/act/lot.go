package act

import (
	"slices"
	"strings"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// AskOtherLot asks from which lot charcoal or ore comes from the next charge on.
func AskOtherLot(sh *screen.Shared) screen.Effect {
	of := func(k string, w entry.What) screen.Option {
		return screen.Opt(k, modelwords.Material(w), func(sh *screen.Shared) screen.Effect { return otherLot(sh, w) })
	}
	return screen.Choose(words.DoOtherLot, of("o", entry.Ore), of("k", entry.Charcoal))
}

// otherLot asks from which lot one material comes, of the next charge and of those that the
// plan has after it.
func otherLot(sh *screen.Shared, w entry.What) screen.Effect {
	if !sh.Smelt.Recipe().Holds(w) {
		return screen.Refuse(words.NoneAlready(w))
	}
	return askLot(sh, w, func(lot string) screen.Effect {
		return Book(RestWith(sh, func(ps entry.Parts) entry.Parts {
			for i := range ps {
				if ps[i].What == w {
					ps[i].Lot = lot
				}
			}
			return ps
		}))
	})
}

// askLot asks for a lot of a material: one that this smelt knows, or another by name.
func askLot(sh *screen.Shared, w entry.What, then func(string) screen.Effect) screen.Effect {
	known := lotsOf(sh, w)
	other := func(*screen.Shared) screen.Effect {
		return screen.AskWords(words.LotName(w), "", func(s string) screen.Effect { return then(s) })
	}
	if len(known) == 0 {
		return other(sh)
	}
	return screen.Choose(words.LotWhich(w), screen.Lettered('l', len(known)+1, func(i int) (string, func(*screen.Shared) screen.Effect) {
		if i == len(known) {
			return words.LotOther, other
		}
		return known[i].Name, func(*screen.Shared) screen.Effect { return then(known[i].named()) }
	})...)
}

// knownLot is a lot as it is chosen: parts name it by its uid, else by its name.
type knownLot struct {
	Name string
	UID  entry.UID
}

func (l knownLot) named() string {
	if l.UID != "" {
		return string(l.UID)
	}
	return l.Name
}

// mostLots is how many of them a list offers.
const mostLots = 12

// lotsOf are the lots of a material that a smelt was lit with, was told of, or has
// been charged from, then those in the stores with something left.
func lotsOf(sh *screen.Shared, w entry.What) []knownLot {
	var known []knownLot
	add := func(l entry.Lot) {
		has := func(k knownLot) bool {
			return strings.EqualFold(k.Name, l.Name) || l.UID != "" && k.UID == l.UID || string(k.UID) == l.Name
		}
		if l.What == w && l.Name != "" && len(known) < mostLots && !slices.ContainsFunc(known, has) {
			known = append(known, knownLot{l.Name, l.UID})
		}
	}
	for _, l := range sh.Smelt.Lots() {
		add(l)
	}
	for l := range sh.Smelt.Lines() {
		for _, p := range entry.PartsIn(l.Event) {
			if !l.Struck() {
				add(entry.Lot{Name: p.Lot, What: p.What})
			}
		}
	}
	for _, l := range sh.House().Lots {
		if kg := l.Left.Kg; kg > 0 || !l.Left.Known() {
			add(l.Lot)
		}
	}
	return known
}

// others are what goes in now and then beside charcoal and ore.
var others = []struct {
	key  string
	what entry.What
}{{"e", entry.SeedSlag}, {"r", entry.ReturnedSlag}, {"g", entry.Fragments}, {"x", entry.Flux}}

func askOther(then func(entry.What) screen.Effect) screen.Effect {
	var list []screen.Option
	for _, o := range others {
		list = append(list, screen.Opt(o.key, modelwords.Material(o.what), func(*screen.Shared) screen.Effect { return then(o.what) }))
	}
	return screen.Choose(words.AlsoIn, list...)
}

// AskOtherIn asks for slag, fragments or flux by weight: into the fill before the main
// burn, else as a charge of its own, which belongs to the one before it.
func AskOtherIn(sh *screen.Shared, _ entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	fills := sh.Smelt.Phase() == entry.Preheat || sh.Smelt.Phase() == entry.Filling
	return askOther(func(w entry.What) screen.Effect {
		return askPart(entry.Parts{{What: w}}, 0, func(ps entry.Parts) screen.Effect {
			if fills {
				return then(entry.Fill{Parts: ps})
			}
			return then(entry.Charge{Parts: ps})
		}, beside{other: true})
	})
}

// beside is what was said beside an amount: its lot, and what else is in. Each is asked
// once.
type beside struct{ lot, other bool }

// elsewhere are the ways from the amount of a part to its lot, and to what else is in.
func elsewhere(parts entry.Parts, i int, then func(entry.Parts) screen.Effect, said beside) []screen.Option {
	w := parts[i].What
	var ways []screen.Option
	if !said.lot {
		ways = append(ways, screen.Opt("l", words.FromLot, func(sh *screen.Shared) screen.Effect {
			return askLot(sh, w, func(lot string) screen.Effect {
				ps := slices.Clone(parts)
				ps[i].Lot = lot
				return askPart(ps, i, then, beside{lot: true, other: said.other})
			})
		}))
	}
	if !said.other {
		ways = append(ways, screen.Opt("o", words.AlsoIn, func(*screen.Shared) screen.Effect {
			return askOther(func(w entry.What) screen.Effect {
				return askPart(append(slices.Clone(parts), entry.Part{What: w}), i, then, beside{lot: said.lot, other: true})
			})
		}))
	}
	return ways
}
