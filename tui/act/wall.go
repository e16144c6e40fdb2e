package act

import (
	"chargehand/model/entry"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// AskAround asks what happened to the furnace from outside: arch, wall and weather stand
// below one letter of a list.
func AskAround(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	arch := func(k, word string, open bool) screen.Option {
		return screen.Opt(k, word, func(*screen.Shared) screen.Effect { return then(entry.Arch{Open: open}) })
	}
	ask := func(k, word string, form Form) screen.Option {
		return screen.Opt(k, word, func(sh *screen.Shared) screen.Effect { return form(sh, nil, then) })
	}
	return screen.Choose(words.DoAround, arch("o", words.DoArchOpened, true), arch("k", words.DoArchClosed, false),
		ask("w", words.DoWall, AskWall), ask("r", words.WeatherRain, askRain), ask("i", words.WeatherWind, askWind), ask("e", words.WeatherAir, askAir))
}

// AskWall asks what the wall does, then where, which may stay unsaid, and of a patch what
// it is made of.
func AskWall(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was := as[entry.WallSeen](from)
	what := func(k, word string, w entry.WallWhat) screen.Option {
		return screen.Opt(k, word, func(sh *screen.Shared) screen.Effect {
			now := was
			now.What = w
			if w != entry.WallPatched {
				now.With = ""
				return wallWhere(sh, now, then)
			}
			return optional(sh, words.WallPatchedWith, words.WallPatches, now.With, now, then, func(s string) screen.Effect {
				now.With = s
				return wallWhere(sh, now, then)
			})
		})
	}
	return screen.Choose(words.DoWall, what("k", words.WallCracks, entry.WallCrack), what("b", words.WallBurnsThrough, entry.WallBurnThrough),
		what("l", words.WallSlumps, entry.WallSlump), what("p", words.WallIsPatched, entry.WallPatched))
}

func wallWhere(sh *screen.Shared, w entry.WallSeen, then func(entry.Event) screen.Effect) screen.Effect {
	return optional(sh, words.WallWhere, words.WallPlaces, w.Where, w, then, func(s string) screen.Effect {
		w.Where = s
		return then(w)
	})
}

// optional is a last step that offers some words and takes others. Left, it keeps what
// stands without it; enter keeps what was said before.
func optional(sh *screen.Shared, title string, offered []string, given string, stands entry.Event, then func(entry.Event) screen.Effect, said func(string) screen.Effect) screen.Effect {
	list := screen.LetteredAtOnce('n', len(offered), func(i int) (string, func(*screen.Shared) screen.Effect) {
		return offered[i], func(*screen.Shared) screen.Effect { return said(offered[i]) }
	})
	unsaid := func(*screen.Shared) screen.Effect { return then(stands) }
	list = append(list, screen.Opt(otherLetter, words.InOtherWords, func(*screen.Shared) screen.Effect {
		return screen.AskWords(title, given, said)
	}), screen.Opt("n", words.WhereNotSaid, unsaid))
	return screen.Each{screen.Kept(then(stands)), screen.Ask{Dialog: screen.Choice{Title: title, Default: "n", Left: unsaid, Options: list}}}
}

// otherLetter leads to a field for other words. No word offered begins with it.
const otherLetter = "z"

// AskWeather asks which of the weather is to be changed.
func AskWeather(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	change := func(k, word string, form Form) screen.Option {
		return screen.Opt(k, word, func(sh *screen.Shared) screen.Effect { return form(sh, from, then) })
	}
	return screen.Choose(words.DoWeather, change("r", words.WeatherRain, askRain), change("i", words.WeatherWind, askWind), change("e", words.WeatherAir, askAir))
}

func askRain(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was := as[entry.Weather](from)
	return ofWords(words.WeatherRain, 'r', entry.Rains(), was.Rain, func(s string) screen.Effect { was.Rain = s; return then(was) })
}

func askWind(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was := as[entry.Weather](from)
	return ofWords(words.WeatherWind, 'i', entry.Winds(), was.Wind, func(s string) screen.Effect { was.Wind = s; return then(was) })
}

// outdoors is what a thermometer outside may show.
var outdoors = screen.Limits{Unit: "°C", Least: -60, Most: 100}

func askAir(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was := as[entry.Weather](from)
	return screen.AskNumber(words.WeatherAirIs, outdoors, Given(was.Air), func(v float64) screen.Effect {
		was.Air = entry.Some(entry.Celsius(v))
		return then(was)
	})
}

// ofWords is a list of words of which one is said at once, or others.
func ofWords(title string, avoid rune, offered []string, given string, said func(string) screen.Effect) screen.Effect {
	list := screen.LetteredAtOnce(avoid, len(offered), func(i int) (string, func(*screen.Shared) screen.Effect) {
		return offered[i], func(*screen.Shared) screen.Effect { return said(offered[i]) }
	})
	return screen.Choose(title, append(list, screen.Opt(otherLetter, words.InOtherWords, func(*screen.Shared) screen.Effect {
		return screen.AskWords(title, given, said)
	}))...)
}
