package stores

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// around are what may be said of a deed beside its amounts: who, how long, in what weather.
// Each amends the line.
func around(l house.Line, d entry.Deed) []screen.Option {
	set := func(sh screen.Shared, change func(*entry.Deed)) screen.Effect {
		changed := d
		change(&changed)
		return act.AmendInHouse(sh, l, changed, time.Time{}, says)
	}
	line := func(k, label, given string, at func(*entry.Deed) *string) screen.Option {
		return screen.Opt(k, words.FieldIs(label, given), func(sh screen.Shared) screen.Effect {
			return screen.AskWords(label, given, func(text string) screen.Effect {
				return set(sh, func(d *entry.Deed) { *at(d) = text })
			})
		})
	}
	return []screen.Option{
		screen.Opt("p", words.DeedPeopleAre(d.People), func(sh screen.Shared) screen.Effect {
			return screen.AskMaybe(words.DeedPeople, screen.Limits{Unit: words.DeedPeople, Least: 0, Most: 100}, given(d.People), func(v entry.Maybe[float64]) screen.Effect {
				return set(sh, func(d *entry.Deed) { d.People = entry.Maybe[entry.Count]{Value: entry.Count(v.Value), Known: v.Known} })
			})
		}),
		screen.Opt("o", words.DeedHoursAre(d.Hours), func(sh screen.Shared) screen.Effect {
			return screen.AskMaybe(words.DeedHours, screen.Limits{Unit: "h", Least: 0, Most: 500}, given(d.Hours), func(v entry.Maybe[float64]) screen.Effect {
				return set(sh, func(d *entry.Deed) { d.Hours = entry.Maybe[entry.Hour]{Value: entry.Hour(v.Value), Known: v.Known} })
			})
		}),
		line("e", words.DeedWeather, d.Weather, func(d *entry.Deed) *string { return &d.Weather }),
		line("n", words.LotNote, d.Note, func(d *entry.Deed) *string { return &d.Note }),
	}
}
