package act

import (
	"errors"
	"strconv"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// InHouse says an event of the house in words, with its things by their names.
type InHouse func(*screen.Shared, entry.Event) string

// KeyedAt tells whether a line is an act of the house that is keyed at a place.
func KeyedAt(l house.Line, at entry.Places) bool {
	return l.Event != nil && entry.IsAct(l.Event) && entry.TraitsOf(l.Event).Keyed&at != 0
}

// CrossOutInHouse crosses out the last thing keyed at a place of the house; again the one
// before. What was kept with it by the same key goes with it.
func CrossOutInHouse(sh *screen.Shared, at entry.Places, says InHouse) screen.Effect {
	lines := sh.Home.Lines()
	for i := len(lines) - 1; i >= 0; i-- {
		if KeyedAt(lines[i], at) && !lines[i].Struck() {
			return StrikeInHouse(sh, lines, i, says)
		}
	}
	return screen.Refuse(words.NothingToCross)
}

// StrikeInHouse crosses out one line and those kept by the same key.
func StrikeInHouse(sh *screen.Shared, lines []house.Line, i int, says InHouse) screen.Effect {
	said := words.CrossedOut(says(sh, lines[i].Event))
	var acts screen.House
	for n := len(lines) - 1; n >= 0; n-- {
		if n != i && !together(lines[n], lines[i]) || lines[n].Event == nil || !entry.IsAct(lines[n].Event) || lines[n].Struck() {
			continue
		}
		acts = append(acts, screen.Act{Event: entry.Strike{Target: sh.Home.Ref(lines[n].Seq())}})
	}
	return screen.Each{acts, screen.Said(said)}
}

// together tells whether two lines were kept by one key.
func together(a, b house.Line) bool {
	return a.Entry.Group != "" && a.Entry.Group == b.Entry.Group
}

// BringBackInHouse undoes the last crossing-out at a place, with those of the same key.
func BringBackInHouse(sh *screen.Shared, at entry.Places, says InHouse) screen.Effect {
	lines := sh.Home.Lines()
	bySeq := map[uint64]house.Line{}
	for _, l := range lines {
		bySeq[l.Seq()] = l
	}
	var acts screen.House
	said := ""
	for i, first := len(lines)-1, -1; i >= 0; i-- {
		s, ok := lines[i].Event.(entry.Strike)
		if !ok || lines[i].Struck() {
			continue
		}
		target := bySeq[s.Target.Seq]
		if !KeyedAt(target, at) {
			continue
		}
		if first >= 0 && !together(lines[i], lines[first]) {
			break
		}
		if first < 0 {
			first, said = i, says(sh, target.Event)
		}
		acts = append(acts, screen.Act{Event: entry.Strike{Target: sh.Home.Ref(lines[i].Seq())}})
	}
	if len(acts) == 0 {
		return screen.Refuse(words.NothingCrossed)
	}
	return screen.Each{acts, screen.Said(words.BroughtBack(said))}
}

// AmendInHouse changes a line's event, its time, or both; what an earlier change said of the
// other is carried along.
func AmendInHouse(sh *screen.Shared, l house.Line, ev entry.Event, at time.Time, says InHouse) screen.Effect {
	a := entry.Amend{Target: sh.Home.Ref(l.Seq()), Event: ev, Happened: at}
	if l.AmendedBy != 0 && ev == nil {
		a.Event = l.Event
	}
	if l.AmendedBy != 0 && at.IsZero() {
		a.Happened = entry.Wall(l.Happened)
	}
	return screen.DidInHouse(func(sh *screen.Shared) string {
		for _, now := range sh.Home.Lines() {
			if now.Seq() == l.Seq() {
				return words.NowSays(words.Dated(now.Happened, says(sh, now.Event)))
			}
		}
		return ""
	}, a)
}

// WhenInHouse is the line of a list that moves a line of the house to the day it was.
func WhenInHouse(key string, l house.Line, says InHouse) screen.Option {
	return screen.Opt(key, words.WhenItWas, func(*screen.Shared) screen.Effect {
		return screen.Ask{Dialog: screen.Field{Label: words.DayItWas, Blank: words.DayAs, Input: screen.NewInput(false), Done: func(sh *screen.Shared, in screen.Input) (screen.Effect, error) {
			at, err := dayOf(in.Trimmed(), sh.Now.Wall)
			if err != nil {
				return nil, err
			}
			return AmendInHouse(sh, l, nil, at, says), nil
		}}}
	})
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
