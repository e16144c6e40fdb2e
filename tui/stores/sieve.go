package stores

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// mostSieves is how many sieves may be keyed of one sieving.
const mostSieves = 6

// heaps are what sieves part, by the width of each from the finest on: what fell through the
// finest, what stayed over the coarsest, and what lies between each two.
type heaps struct {
	mm           []float64
	under, over  float64   // kg; over is nought with one sieve
	between      []float64 // kg, from the finest on; with one sieve what stayed on it
	fine, coarse entry.UID
}

// sieve parts a lot into heaps by the sieves that are named in one line. What stays between
// the finest and the coarsest is the lot; what is under and over them are lots of their own.
func (s Screen) sieve(sh *screen.Shared, l house.Lot) screen.Effect {
	h := heaps{fine: sh.NewUID(), coarse: sh.NewUID()}
	return screen.Ask{Dialog: screen.Field{Label: words.SievesAsked, Unit: words.SievesUnit, Input: screen.NewInput(false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
		mm, err := sievesOf(in.Trimmed())
		if err != nil {
			return nil, err
		}
		h := h
		h.mm = mm
		return screen.AskNumber(words.UnderSieve(mm[0]), kilograms, entry.None[float64](), func(under float64) screen.Effect {
			h.under = under
			if len(mm) == 1 {
				return s.heap(sh, l, h)
			}
			return screen.AskNumber(words.OverSieve(mm[len(mm)-1]), kilograms, entry.None[float64](), func(over float64) screen.Effect {
				h.over = over
				return s.heap(sh, l, h)
			})
		}), nil
	}}}
}

// sievesOf reads the widths of sieves, in mm, from the finest on.
func sievesOf(text string) (mm []float64, err error) {
	for _, w := range strings.FieldsFunc(text, func(c rune) bool { return c == ' ' || c == ';' || c == '/' }) {
		v, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimSuffix(w, ","), ",", "."), 64)
		if err != nil || v < millimetres.Least || v > millimetres.Most {
			return nil, errors.New(words.SievesWrong)
		}
		mm = append(mm, v)
	}
	slices.Sort(mm)
	if mm = slices.Compact(mm); len(mm) == 0 || len(mm) > mostSieves {
		return nil, errors.New(words.SievesWrong)
	}
	return mm, nil
}

// heap asks for the next heap between two sieves. The last of them is what is left of the
// lot, where that is known.
func (s Screen) heap(sh *screen.Shared, l house.Lot, h heaps) screen.Effect {
	n := len(h.between)
	last := n >= len(h.mm)-2
	rest := entry.None[float64]()
	if all := lies(l); all.Known && last {
		left := all.Value - h.under - h.over
		for _, kg := range h.between {
			left -= kg
		}
		rest = entry.Some(round2(math.Max(left, 0)))
	}
	return screen.AskNumber(words.BetweenSieves(h.mm, n), kilograms, rest, func(kg float64) screen.Effect {
		next := h
		next.between = append(slices.Clone(h.between), kg)
		if !last {
			return s.heap(sh, l, next)
		}
		return s.rest(sh, l, next)
	})
}

// middle is what lies between the sieves, kg, and all what lies in the heaps.
func (h heaps) middle() (kg float64) {
	for _, one := range h.between {
		kg += one
	}
	return kg
}

func (h heaps) all() float64 { return h.under + h.middle() + h.over }

// rest asks what became of that which lies in no heap: gone as dust, it is in the lot no
// more; not sieved yet, it stays there.
func (s Screen) rest(sh *screen.Shared, l house.Lot, h heaps) screen.Effect {
	there := lies(l)
	missing := there.Value - h.all()
	if !there.Known || missing <= roundedOff {
		return s.sieved(sh, l, h, 0)
	}
	usual := "p"
	if most(l, entry.Amount{Mass: entry.Some(entry.Kilogram(h.all()))}) {
		usual = "d"
	}
	return screen.ChooseOr(usual, words.SievedLess(sh.Units, missing),
		screen.Opt("d", words.GoneAsDust, func(sh *screen.Shared) screen.Effect { return s.sieved(sh, l, h, missing) }),
		screen.Opt("p", words.NotSievedYet, func(sh *screen.Shared) screen.Effect { return s.sieved(sh, l, h, 0) }))
}

// roundedOff is what weighing a few heaps rounds off, kg.
const roundedOff = 0.05

// sieved keeps the heaps, and that so much of what was sieved went as dust, kg.
func (s Screen) sieved(sh *screen.Shared, l house.Lot, h heaps, dust float64) screen.Effect {
	middle := h.middle()
	amount := func(id entry.UID, kg float64) entry.Amount {
		return entry.Amount{Lot: id, Mass: entry.Some(entry.Kilogram(kg)), Moisture: l.Moisture}
	}
	d := entry.Deed{Does: entry.Sieved, In: []entry.Amount{amount(l.ID, round2(h.all()+dust))}, Out: []entry.Amount{amount(l.ID, middle)}}
	var evs done
	heap := func(id entry.UID, name string, kg float64) {
		if kg <= 0 {
			return
		}
		for _, o := range sh.House().Lots { // sieved before: the same heap
			if o.Name == name && o.Of() == l.Of() {
				d.Out = append(d.Out, amount(o.ID, kg))
				return
			}
		}
		is := entry.Lot{UID: id, Name: name, Material: l.Of(), What: l.What, Mix: l.Mix, Origin: l.Origin, Species: l.Species, Signs: l.Signs, Moisture: l.Moisture}
		if id == h.fine {
			is = house.AsFines(is)
		}
		evs = append(evs, entry.LotStored{Lot: is})
		d.Out = append(d.Out, amount(id, kg))
	}
	heap(h.fine, words.FinesOf(l.Name, h.mm[0]), h.under)
	heap(h.coarse, words.CoarseOf(l.Name, h.mm[len(h.mm)-1]), h.over)
	desc := described(l)
	desc.Sizes, desc.Lump = h.sizes(middle), h.lump(middle, desc.Lump)
	return verdict(append(evs, d, entry.LotStored{Lot: desc}), func(sh *screen.Shared) string {
		said := words.FinesShare(h.under / math.Max(h.all()+dust, 1e-9))
		if dust > 0 {
			said = words.Both(words.DustGone(sh.Units, dust), said)
		}
		return said
	})
}

// sizes are the shares of the lot over each sieve but the coarsest.
func (h heaps) sizes(middle float64) []entry.SizeShare {
	over := middle
	var all []entry.SizeShare
	for i, mm := range h.mm[:max(len(h.mm)-1, 1)] {
		share := 1.0
		if middle > 0 {
			share = math.Min(math.Max(over/middle, 0), 1)
		}
		all = append(all, entry.SizeShare{Over: entry.Millimetre(mm), Share: entry.Share(share)})
		over -= h.between[i]
	}
	return all
}

// lump is the mean size by mass of what lies between the sieves, each heap as the middle of
// its two by their ratio; by one sieve nothing is said of it.
func (h heaps) lump(middle float64, was entry.Maybe[entry.Millimetre]) entry.Maybe[entry.Millimetre] {
	if len(h.mm) < 2 || middle <= 0 {
		return was
	}
	sum := 0.0
	for i, kg := range h.between {
		sum += kg * math.Sqrt(h.mm[i]*h.mm[i+1])
	}
	return entry.Some(entry.Millimetre(sum / middle))
}
