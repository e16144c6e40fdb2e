package act

import (
	"slices"
	"strings"

	"chargehand/model/entry"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// ppm is what a carbon monoxide alarm shows.
var ppm = screen.Limits{Unit: "ppm", Least: 0, Most: 100000}

// incidents are what may happen, the gravest first. Their letters are their own: a
// hand in a hurry finds the same one each time.
var incidents = []struct {
	key, word string
	what      entry.IncidentWhat
}{
	{"a", words.IncidentAlarm, entry.IncidentAlarm}, {"w", words.IncidentUnwell, entry.IncidentUnwell}, {"b", words.IncidentBurn, entry.IncidentBurn},
	{"o", words.IncidentFire, entry.IncidentFire}, {"n", words.IncidentNearMiss, entry.IncidentNearMiss}, {"e", words.IncidentOther, entry.IncidentOther},
}

// AskIncident asks what happened, in one letter, and books it: the rest of it can wait.
// One that is changed is asked for the rest.
func AskIncident(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was, changed := from.(entry.Incident)
	what := func(*screen.Shared) screen.Effect {
		var list []screen.Option
		for _, i := range incidents {
			list = append(list, screen.Opt(i.key, i.word, func(*screen.Shared) screen.Effect {
				was.What = i.what
				return then(was)
			}))
		}
		return screen.Choose(words.IncidentWhat, list...)
	}
	if !changed {
		return what(&screen.Shared{})
	}
	text := func(k, word, given string, set func(string)) screen.Option {
		return screen.Opt(k, word, func(*screen.Shared) screen.Effect {
			return screen.AskWords(word, given, func(s string) screen.Effect { set(s); return then(was) })
		})
	}
	return screen.Choose(words.IncidentMore, screen.Opt("w", words.IncidentWhat, what),
		screen.Opt("p", words.IncidentPPM, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.IncidentPPM, ppm, Given(was.CO), func(v float64) screen.Effect {
				was.CO = entry.Some(entry.PPM(v))
				return then(was)
			})
		}),
		text("h", words.IncidentWhere, was.Where, func(s string) { was.Where = s }),
		text("n", words.IncidentNote, was.Note, func(s string) { was.Note = s }),
		text("i", words.IncidentPeople, strings.Join(was.People, " "), func(s string) { was.People = slices.Clip(strings.Fields(s)) }))
}
