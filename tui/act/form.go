package act

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Form leads to an event, at once or through lists and fields, and hands it
// on. One Form serves an act at the fire, a late entry and an amendment: from
// is the event to change, or nil for a new one.
type Form func(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect

// limits of what fields take.
var (
	centimetres = screen.Limits{Unit: "cm", Least: 0, Most: 500}
	degrees     = screen.Limits{Unit: "degrees downwards", Least: 0, Most: 90}
	millimetres = screen.Limits{Unit: "mm", Least: 1, Most: 200}
	celsius     = screen.Limits{Unit: "°C", Least: 0, Most: 2000}
	kilograms   = screen.Limits{Unit: "kg", Least: 0, Most: 500}
	Measures    = screen.Limits{Unit: "measures", Least: 0, Most: 100}
)

// Given is a quantity of an event to be changed, for its field.
func Given[Q entry.Quantity](m entry.Maybe[Q]) entry.Maybe[float64] {
	return entry.Maybe[float64]{Value: float64(m.Value), Known: m.Known}
}

// as is the event to change, or a blank one of its kind.
func as[E entry.Event](from entry.Event) E {
	e, _ := from.(E)
	return e
}

// sees tells whether the furnace answers what is to be keyed: in a rehearsal, of a new act.
func sees(sh *screen.Shared, from entry.Event) bool { return sh.Answers && from == nil }

// Plain is an act that asks nothing.
func Plain(ev entry.Event) Form {
	return func(_ *screen.Shared, _ entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
		return then(ev)
	}
}

func AskDip(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	if sees(sh, from) {
		return screen.See{Event: entry.Dip{}}
	}
	was := as[entry.Dip](from)
	return screen.AskNumber(words.DipBelowRim, centimetres, Given(was.BelowRim),
		func(v float64) screen.Effect { return then(entry.Dip{BelowRim: entry.Some(entry.Centimetre(v))}) },
		screen.Opt("t", words.DipAboveTuyere, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.DipAboveTuyere, centimetres, Given(was.AboveTuyere), func(v float64) screen.Effect {
				return then(entry.Dip{AboveTuyere: entry.Some(entry.Centimetre(v))})
			})
		}))
}

func AskTemperature(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	if sees(sh, from) {
		return screen.See{Event: entry.Temperature{}}
	}
	given := entry.None[float64]()
	if was, ok := from.(entry.Temperature); ok {
		given = entry.Some(float64(was.Degrees))
	}
	return screen.AskNumber(words.DoTemperature, celsius, given, func(v float64) screen.Effect {
		at := func(k, where string) screen.Option {
			return screen.Opt(k, where, func(*screen.Shared) screen.Effect {
				return then(entry.Temperature{Degrees: entry.Celsius(v), Where: where})
			})
		}
		unsaid := func(*screen.Shared) screen.Effect { return then(entry.Temperature{Degrees: entry.Celsius(v)}) }
		where := screen.Ask{Dialog: screen.Choice{Title: words.TemperatureWhere, Default: "p", Left: unsaid, Options: []screen.Option{
			at("p", entry.WherePeep), at("g", entry.WhereTop), at("w", words.WhereWall), at("l", words.WhereSlag), at("o", fold.WhereOutside),
			screen.Opt("n", words.WhereNotSaid, unsaid),
		}}}
		return screen.Each{screen.Kept(unsaid(sh)), where}
	})
}

func AskLook(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	places := entry.LookPlaces()
	if sees(sh, from) {
		return screen.Choose(words.LookWhere, append(screen.LetteredAtOnce('l', len(places), func(i int) (string, func(*screen.Shared) screen.Effect) {
			return string(places[i]), func(*screen.Shared) screen.Effect { return screen.See{Event: entry.Look{At: places[i]}} }
		}), screen.Opt("b", words.LookMeter, func(*screen.Shared) screen.Effect { return screen.See{Event: entry.Blast{}} }))...)
	}
	var list []screen.Option // with the letters of the list above: what practice taught holds at the fire
	list = screen.LetteredAtOnce('l', len(places), func(i int) (string, func(*screen.Shared) screen.Effect) {
		at := places[i]
		return string(at), func(*screen.Shared) screen.Effect {
			sees := entry.LookWords(at)
			chosen := rune(list[i].Keys()[0][0])
			return screen.Choose(words.LookSees(at), screen.LetteredAtOnce(chosen, len(sees), func(i int) (string, func(*screen.Shared) screen.Effect) {
				return sees[i], func(*screen.Shared) screen.Effect { return then(entry.Look{At: at, Sees: sees[i]}) }
			})...)
		}
	})
	return screen.Choose(words.LookWhere, list...)
}

func AskNote(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	return screen.AskWords(words.DoNote, as[entry.Note](from).Text, func(s string) screen.Effect { return then(entry.Note{Text: s}) })
}

func AskTap(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	if sees(sh, from) {
		return screen.See{Event: entry.Tap{}}
	}
	if from == nil {
		return then(entry.Tap{})
	}
	return screen.AskNumber(words.SlagTapped, kilograms, Given(as[entry.Tap](from).Mass), func(v float64) screen.Effect {
		return then(entry.Tap{Mass: entry.Some(entry.Kilogram(v))})
	})
}

// AskPause begins a pause, or ends the one that is on.
func AskPause(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	if from == nil && sh.Smelt.Reading().Paused {
		return then(entry.Resume{})
	}
	return then(entry.Pause{})
}

func AskArch(_ *screen.Shared, _ entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	return screen.Choose(words.DoArch,
		screen.Opt("o", words.ArchOpened, func(*screen.Shared) screen.Effect { return then(entry.Arch{Open: true}) }),
		screen.Opt("k", words.ArchClosed, func(*screen.Shared) screen.Effect { return then(entry.Arch{}) }))
}

func AskTuyere(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was := as[entry.Tuyere](from)
	return screen.Choose(words.DoTuyere,
		screen.Opt("a", words.TuyereAngle, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.TuyereAngle, degrees, Given(was.Angle), func(v float64) screen.Effect {
				return then(entry.Tuyere{Angle: entry.Some(entry.Degree(v))})
			})
		}),
		screen.Opt("t", words.TuyereTip, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.TuyereTip, centimetres, Given(was.Proud), func(v float64) screen.Effect {
				return then(entry.Tuyere{Proud: entry.Some(entry.Centimetre(v))})
			})
		}),
		screen.Opt("b", words.TuyereBore, func(*screen.Shared) screen.Effect {
			return screen.AskNumber(words.TuyereBore, millimetres, Given(was.Bore), func(v float64) screen.Effect {
				return then(entry.Tuyere{Bore: entry.Some(entry.Millimetre(v))})
			})
		}),
		screen.Opt("w", words.TuyereSwapped, func(*screen.Shared) screen.Effect {
			return screen.AskWords(words.TuyereSwapped, was.Swapped, func(s string) screen.Effect { return then(entry.Tuyere{Swapped: s}) })
		}))
}

func AskHandOver(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was := as[entry.HandOver](from)
	return screen.AskWords(words.HandOverTo, was.To, func(s string) screen.Effect {
		now := was
		now.To = s
		return optional(sh, words.HandOverCovers, words.HandOvers, now.Covers, now, then, func(s string) screen.Effect {
			now.Covers = s
			return then(now)
		})
	})
}

// AskExtract asks which way the bloom came out, which is also the question
// whether it did.
func AskExtract(sh *screen.Shared, was entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	from := func(k, way string) screen.Option {
		return screen.Opt(k, way, func(*screen.Shared) screen.Effect {
			if sees(sh, was) {
				return screen.See{Event: entry.Extract{From: way}}
			}
			return then(entry.Extract{From: way})
		})
	}
	if sees(sh, was) { // whether there is a bloom shows then
		return screen.Choose(words.ExtractHow, from("p", words.ExtractTop), from("r", words.ExtractArch), from("k", words.ExtractDown))
	}
	return screen.Choose(words.ExtractHow,
		from("p", words.ExtractTop), from("r", words.ExtractArch), from("k", words.ExtractDown),
		screen.Opt("n", words.ExtractNone, func(*screen.Shared) screen.Effect {
			return screen.Question(words.Sure(words.ExtractNone), func(*screen.Shared) screen.Effect { return then(entry.Extract{None: true}) })
		}))
}
