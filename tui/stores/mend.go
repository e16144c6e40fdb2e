package stores

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// ofStores tells whether a line is a deed of the stores that a person keyed.
func ofStores(l house.Line) bool { return act.KeyedAt(l, entry.OnStores) }

// about tells whether a line says something of a lot.
func about(l house.Line, id entry.UID, name string) bool {
	is := func(u entry.UID) bool { return u == id || u == entry.NameUID(name) }
	switch ev := l.Event.(type) {
	case entry.LotStored:
		return is(ev.Lot.ID())
	case entry.Assay:
		return is(ev.Lot)
	case entry.Deed:
		for _, as := range [][]entry.Amount{ev.In, ev.Out, ev.Fuel} {
			for _, a := range as {
				if is(a.Lot) {
					return true
				}
			}
		}
	}
	return false
}

// mostLines is how many of the last lines of a lot are offered to be put right.
const mostLines = 12

// putRight lists what was keyed of a lot, the newest first.
func putRight(sh *screen.Shared, l house.Lot) screen.Effect {
	lines := sh.Home.Lines()
	var of []int
	for i := len(lines) - 1; i >= 0 && len(of) < mostLines; i-- {
		if ofStores(lines[i]) && !lines[i].Struck() && about(lines[i], l.ID, l.Name) {
			of = append(of, i)
		}
	}
	back := func(sh *screen.Shared) screen.Effect { return act.BringBackInHouse(sh, entry.OnStores, says) }
	return screen.Choose(words.PutRightOf(l.Name), screen.Lettered('e', len(of)+1, func(n int) (string, func(*screen.Shared) screen.Effect) {
		if n == len(of) {
			return words.DoUndo, back
		}
		line := lines[of[n]]
		return words.Dated(line.Happened, says(sh, line.Event)), func(sh *screen.Shared) screen.Effect { return mend(sh, lines, of[n]) }
	})...)
}

// mend changes an amount of a line, when it was, or crosses it out.
func mend(sh *screen.Shared, lines []house.Line, i int) screen.Effect {
	l := lines[i]
	var list []screen.Option
	if d, ok := l.Event.(entry.Deed); ok {
		n := 0
		amounts := func(as []entry.Amount, of func(entry.Deed) []entry.Amount) {
			for j, a := range as {
				if !a.Mass.Known || n >= 9 {
					continue
				}
				n++
				what := sh.Units.Amount(called(sh, []entry.Amount{a})[0])
				list = append(list, screen.Opt("abdghjklq"[n-1:n], words.AnotherAmount(what), func(*screen.Shared) screen.Effect {
					return screen.AskNumber(words.InPlaceOf(what), kilograms, given(a.Mass), func(v float64) screen.Effect {
						changed := d
						changed.In, changed.Out, changed.Fuel = append([]entry.Amount{}, d.In...), append([]entry.Amount{}, d.Out...), append([]entry.Amount{}, d.Fuel...)
						of(changed)[j].Mass = entry.Some(entry.Kilogram(v))
						return act.AmendInHouse(sh, l, changed, time.Time{}, says)
					})
				}))
			}
		}
		amounts(d.In, func(d entry.Deed) []entry.Amount { return d.In })
		amounts(d.Out, func(d entry.Deed) []entry.Amount { return d.Out })
		amounts(d.Fuel, func(d entry.Deed) []entry.Amount { return d.Fuel })
		list = append(list, around(sh, l, d)...)
	}
	list = append(list,
		act.WhenInHouse("w", l, says),
		screen.Opt("x", words.DoStrike, func(sh *screen.Shared) screen.Effect { return act.StrikeInHouse(sh, lines, i, says) }))
	return screen.Choose(says(sh, l.Event), list...)
}
