package forge

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/forge"
	"chargehand/model/house"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// about tells whether a line says something of a piece, or made something of it.
func about(l house.Line, id entry.UID) bool {
	in := func(ids []entry.UID) bool {
		for _, one := range ids {
			if one == id {
				return true
			}
		}
		return false
	}
	switch ev := l.Event.(type) {
	case entry.Piece:
		return ev.UID == id || in(of(ev))
	case entry.ForgeSession:
		return in(ev.Pieces)
	case entry.Heat:
		return in(ev.Pieces)
	case entry.PieceWeighed:
		return ev.Piece == id
	case entry.PieceTested:
		return ev.Piece == id
	}
	return false
}

// mostLines is how many of the last lines of a piece are offered to be put right.
const mostLines = 12

// putRight lists what was keyed of a piece, the newest first.
func putRight(sh *screen.Shared, b forge.Bench, i int) screen.Effect {
	lines := sh.Home.Lines()
	var of []int
	for n := len(lines) - 1; n >= 0 && len(of) < mostLines; n-- {
		if act.KeyedAt(lines[n], entry.OnForge) && !lines[n].Struck() && about(lines[n], b.Pieces[i].UID) {
			of = append(of, n)
		}
	}
	back := func(sh *screen.Shared) screen.Effect { return act.BringBackInHouse(sh, entry.OnForge, says) }
	return screen.Choose(words.PutRightOf(called(b, i)), screen.Lettered('m', len(of)+1, func(n int) (string, func(*screen.Shared) screen.Effect) {
		if n == len(of) {
			return words.DoUndo, back
		}
		line := lines[of[n]]
		return words.Dated(line.Happened, says(sh, line.Event)), func(sh *screen.Shared) screen.Effect { return mend(sh, lines, of[n]) }
	})...)
}

// mend changes a number of a line, when it was, or crosses it out.
func mend(sh *screen.Shared, lines []house.Line, i int) screen.Effect {
	l := lines[i]
	var list []screen.Option
	change := func(key, label string, l screen.Limits, was entry.Maybe[float64], set func(float64) entry.Event) {
		list = append(list, screen.Opt(key, words.OtherwiseIs(label), func(sh *screen.Shared) screen.Effect {
			return screen.AskNumber(label, l, was, func(v float64) screen.Effect {
				return act.AmendInHouse(sh, lines[i], set(v), time.Time{}, says)
			})
		}))
	}
	switch ev := l.Event.(type) {
	case entry.Piece:
		change("g", words.PieceKg, kilograms, given(ev.Mass), func(v float64) entry.Event {
			ev.Mass = kg(v)
			return ev
		})
	case entry.PieceWeighed:
		change("g", words.PieceKg, kilograms, entry.Some(float64(ev.Mass)), func(v float64) entry.Event {
			ev.Mass = entry.Kilogram(v)
			return ev
		})
	case entry.PieceTested:
		list = append(list, screen.Opt("g", words.OtherwiseIs(words.TestPlace), func(sh *screen.Shared) screen.Effect {
			return askText(words.TestPlace, ev.Place, words.PlaceBlank, func(at string) (screen.Effect, error) {
				ev.Place = at
				return act.AmendInHouse(sh, l, ev, time.Time{}, says), nil
			})
		}))
	case entry.ForgeSession:
		change("a", words.SessionHeats, typed[heatsField].Limits, given(ev.Heats), func(v float64) entry.Event {
			ev.Heats = entry.Some(entry.Count(v))
			return ev
		})
		change("o", words.SessionHours, typed[hoursField].Limits, given(ev.Hours), func(v float64) entry.Event {
			ev.Hours = entry.Some(entry.Hour(v))
			return ev
		})
		change("l", words.SessionKg, typed[fuelKgField].Limits, given(ev.Fuel.Kg), func(v float64) entry.Event {
			ev.Fuel.Kg = kg(v)
			return ev
		})
		if len(ev.After) == 1 {
			change("g", words.SessionAfter, kilograms, entry.Some(float64(ev.After[0].Mass)), func(v float64) entry.Event {
				ev.After = []entry.PieceMass{{Piece: ev.After[0].Piece, Mass: entry.Kilogram(v)}}
				return ev
			})
		}
	}
	list = append(list, act.WhenInHouse("w", l, says),
		screen.Opt("x", words.DoStrike, func(sh *screen.Shared) screen.Effect { return act.StrikeInHouse(sh, lines, i, says) }))
	return screen.Choose(says(sh, l.Event), list...)
}
