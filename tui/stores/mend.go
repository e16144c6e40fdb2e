package stores

import (
	"errors"
	"strconv"
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
func putRight(sh screen.Shared, l house.Lot) screen.Effect {
	lines := sh.Home.Lines()
	var of []int
	for i := len(lines) - 1; i >= 0 && len(of) < mostLines; i-- {
		if ofStores(lines[i]) && !lines[i].Struck() && about(lines[i], l.ID, l.Name) {
			of = append(of, i)
		}
	}
	back := func(sh screen.Shared) screen.Effect { return act.BringBackInHouse(sh, entry.OnStores, says) }
	return screen.Choose(words.PutRightOf(l.Name), screen.Lettered('e', len(of)+1, func(n int) (string, func(screen.Shared) screen.Effect) {
		if n == len(of) {
			return words.DoUndo, back
		}
		line := lines[of[n]]
		return words.Dated(line.Happened, says(sh, line.Event)), func(sh screen.Shared) screen.Effect { return mend(sh, lines, of[n]) }
	})...)
}

// mend changes an amount of a line, when it was, or crosses it out.
func mend(sh screen.Shared, lines []house.Line, i int) screen.Effect {
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
				what := sh.Units.Amount(named(sh.House(), entry.Deed{In: []entry.Amount{a}}).In[0])
				list = append(list, screen.Opt("abdghijkl"[n-1:n], words.AnotherAmount(what), func(screen.Shared) screen.Effect {
					return screen.AskNumber(words.InPlaceOf(what), kilograms, given(a.Mass), func(v float64) screen.Effect {
						changed := d
						changed.In, changed.Out, changed.Fuel = append([]entry.Amount{}, d.In...), append([]entry.Amount{}, d.Out...), append([]entry.Amount{}, d.Fuel...)
						of(changed)[j].Mass = entry.Some(entry.Kilogram(v))
						return amend(sh, l, changed, time.Time{})
					})
				}))
			}
		}
		amounts(d.In, func(d entry.Deed) []entry.Amount { return d.In })
		amounts(d.Out, func(d entry.Deed) []entry.Amount { return d.Out })
		amounts(d.Fuel, func(d entry.Deed) []entry.Amount { return d.Fuel })
	}
	list = append(list,
		screen.Opt("w", words.WhenItWas, func(sh screen.Shared) screen.Effect {
			return screen.Ask{Dialog: screen.Field{Label: words.DayItWas, Blank: words.DayAs, Input: screen.NewInput(false), Done: func(sh screen.Shared, in screen.Input) (screen.Effect, error) {
				at, err := dayOf(in.Trimmed(), sh.Now.Wall)
				if err != nil {
					return nil, err
				}
				return amend(sh, l, nil, at), nil
			}}}
		}),
		screen.Opt("x", words.DoStrike, func(sh screen.Shared) screen.Effect { return act.StrikeInHouse(sh, lines, i, says) }))
	return screen.Choose(says(sh, l.Event), list...)
}

// amend changes a line's event, its time, or both; what an earlier change said of the
// other is carried along.
func amend(sh screen.Shared, l house.Line, ev entry.Event, at time.Time) screen.Effect {
	a := entry.Amend{Target: sh.Home.Ref(l.Seq()), Event: ev, Happened: at}
	if l.AmendedBy != 0 && ev == nil {
		a.Event = l.Event
	}
	if l.AmendedBy != 0 && at.IsZero() {
		a.Happened = entry.Wall(l.Happened)
	}
	return screen.DidInHouse(func(sh screen.Shared) string {
		for _, now := range sh.Home.Lines() {
			if now.Seq() == l.Seq() {
				return words.NowSays(words.Dated(now.Happened, says(sh, now.Event)))
			}
		}
		return ""
	}, a)
}

// dayOf reads a day: how many days ago it was, or as it is written.
func dayOf(text string, now time.Time) (time.Time, error) {
	noon := func(y int, m time.Month, d int) time.Time {
		t := time.Date(y, m, d, 12, 0, 0, 0, now.Location())
		if t.After(now) { // this morning
			t = now
		}
		return entry.Wall(t)
	}
	if n, err := strconv.Atoi(text); err == nil && n >= 0 && n <= 3660 {
		return noon(now.Year(), now.Month(), now.Day()-n), nil
	}
	t, err := time.Parse(time.DateOnly, text)
	if err != nil || t.After(now.AddDate(0, 0, 1)) || t.Year() < 1900 {
		return time.Time{}, errors.New(words.DayUnread(text))
	}
	return noon(t.Year(), t.Month(), t.Day()), nil
}
