package tui

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/words"
)

// asker leads to an event, at once or through lists and fields, and hands it
// on. One asker serves an act at the fire, a late entry and an amendment: from
// is the event to change, or nil for a new one.
type asker func(sh shared, from entry.Event, then func(entry.Event) step) step

// limits of what fields take.
var (
	centimetres = limits{"cm", 0, 500}
	degrees     = limits{"degrees downwards", 0, 90}
	millimetres = limits{"mm", 1, 200}
	celsius     = limits{"°C", 0, 2000}
	kilograms   = limits{"kg", 0, 500}
	measures    = limits{"measures", 0, 100}
)

// given is a quantity of an event to be changed, for its field.
func given[Q entry.Quantity](m entry.Maybe[Q]) entry.Maybe[float64] {
	return entry.Maybe[float64]{Value: float64(m.Value), Known: m.Known}
}

// as is the event to change, or a blank one of its kind.
func as[E entry.Event](from entry.Event) E {
	e, _ := from.(E)
	return e
}

// plain is an act that asks nothing.
func plain(ev entry.Event) asker {
	return func(_ shared, _ entry.Event, then func(entry.Event) step) step { return then(ev) }
}

func askDip(_ shared, from entry.Event, then func(entry.Event) step) step {
	was := as[entry.Dip](from)
	return askNumber(words.DipBelowRim, centimetres, given(was.BelowRim),
		func(v float64) step { return then(entry.Dip{BelowRim: entry.Some(entry.Centimetre(v))}) },
		opt("t", words.DipAboveTuyere, func(shared) step {
			return askNumber(words.DipAboveTuyere, centimetres, given(was.AboveTuyere), func(v float64) step {
				return then(entry.Dip{AboveTuyere: entry.Some(entry.Centimetre(v))})
			})
		}))
}

func askTemperature(_ shared, from entry.Event, then func(entry.Event) step) step {
	given := entry.None[float64]()
	if was, ok := from.(entry.Temperature); ok {
		given = entry.Some(float64(was.Degrees))
	}
	return askNumber(words.DoTemperature, celsius, given, func(v float64) step {
		at := func(k, where string) option {
			return opt(k, where, func(shared) step { return then(entry.Temperature{Degrees: entry.Celsius(v), Where: where}) })
		}
		return choose(words.TemperatureWhere,
			at("p", entry.WherePeep), at("t", words.WhereTop), at("w", words.WhereWall), at("s", words.WhereSlag), at("o", fold.WhereOutside),
			opt("n", words.WhereNotSaid, func(shared) step { return then(entry.Temperature{Degrees: entry.Celsius(v)}) }))
	})
}

func askLook(_ shared, _ entry.Event, then func(entry.Event) step) step {
	places := entry.LookPlaces()
	var list []option
	list = lettered(0, len(places), func(i int) (string, func(shared) step) {
		at := places[i]
		return string(at), func(shared) step {
			sees := entry.LookWords(at)
			chosen := rune(list[i].Keys()[0][0])
			return choose(words.LookSees(at), lettered(chosen, len(sees), func(i int) (string, func(shared) step) {
				return sees[i], func(shared) step { return then(entry.Look{At: at, Sees: sees[i]}) }
			})...)
		}
	})
	return choose(words.LookWhere, list...)
}

func askNote(_ shared, from entry.Event, then func(entry.Event) step) step {
	return askWords(words.DoNote, as[entry.Note](from).Text, func(s string) step { return then(entry.Note{Text: s}) })
}

func askTap(_ shared, from entry.Event, then func(entry.Event) step) step {
	if from == nil {
		return then(entry.Tap{})
	}
	return askNumber(words.SlagTapped, kilograms, given(as[entry.Tap](from).Mass), func(v float64) step {
		return then(entry.Tap{Mass: entry.Some(entry.Kilogram(v))})
	})
}

// askPause begins a pause, or ends the one that is on.
func askPause(sh shared, from entry.Event, then func(entry.Event) step) step {
	if from == nil && sh.smelt.Reading().Paused {
		return then(entry.Resume{})
	}
	return then(entry.Pause{})
}

func askArch(_ shared, _ entry.Event, then func(entry.Event) step) step {
	return choose(words.DoArch,
		opt("o", words.ArchOpened, func(shared) step { return then(entry.Arch{Open: true}) }),
		opt("c", words.ArchClosed, func(shared) step { return then(entry.Arch{}) }))
}

func askTuyere(_ shared, from entry.Event, then func(entry.Event) step) step {
	was := as[entry.Tuyere](from)
	return choose(words.DoTuyere,
		opt("a", words.TuyereAngle, func(shared) step {
			return askNumber(words.TuyereAngle, degrees, given(was.Angle), func(v float64) step {
				return then(entry.Tuyere{Angle: entry.Some(entry.Degree(v))})
			})
		}),
		opt("t", words.TuyereTip, func(shared) step {
			return askNumber(words.TuyereTip, centimetres, given(was.Proud), func(v float64) step {
				return then(entry.Tuyere{Proud: entry.Some(entry.Centimetre(v))})
			})
		}),
		opt("b", words.TuyereBore, func(shared) step {
			return askNumber(words.TuyereBore, millimetres, given(was.Bore), func(v float64) step {
				return then(entry.Tuyere{Bore: entry.Some(entry.Millimetre(v))})
			})
		}),
		opt("s", words.TuyereSwapped, func(shared) step {
			return askWords(words.TuyereSwapped, was.Swapped, func(s string) step { return then(entry.Tuyere{Swapped: s}) })
		}))
}

func askSample(_ shared, from entry.Event, then func(entry.Event) step) step {
	return askWords(words.SampleOf, as[entry.Sample](from).Of, func(s string) step { return then(entry.Sample{Of: s}) })
}

func askHandOver(_ shared, from entry.Event, then func(entry.Event) step) step {
	return askWords(words.HandOverTo, as[entry.HandOver](from).To, func(s string) step { return then(entry.HandOver{To: s}) })
}

// askExtract asks which way the bloom came out, which is also the question
// whether it did.
func askExtract(_ shared, _ entry.Event, then func(entry.Event) step) step {
	from := func(k, way string) option {
		return opt(k, way, func(shared) step { return then(entry.Extract{From: way}) })
	}
	return choose(words.ExtractHow,
		from("t", words.ExtractTop), from("r", words.ExtractArch), from("k", words.ExtractDown),
		opt("n", words.ExtractNone, func(shared) step { return then(entry.Extract{None: true}) }))
}
