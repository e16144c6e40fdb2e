package act

import (
	"cmp"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// limits of what is said of the blast.
var (
	litresPerMinute = screen.Limits{Unit: "l/min", Least: 0, Most: 20000}
	strokesPerMin   = screen.Limits{Unit: "strokes a minute", Least: 0, Most: 300}
	litresAStroke   = screen.Limits{Unit: "litres a stroke", Least: 0.1, Most: 500}
	openTuyeres     = screen.Limits{Unit: "tuyeres", Least: 0, Most: 20}
	pascals         = screen.Limits{Unit: "Pa", Least: 0, Most: 50000}
	pipeBore        = screen.Limits{Unit: "mm", Least: 10, Most: 1000}
	metresPerSecond = screen.Limits{Unit: "m/s", Least: 0, Most: 60}
)

// AskBlast asks for litres a minute; letters lead to other ways to say what
// blows.
func AskBlast(_ *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was := as[entry.Blast](from)
	then = ofBlower(was.Blower, then)
	book := func(b entry.Blast) screen.Effect { return then(b) }
	by := func(k, word string, ask func(entry.Blast, func(entry.Blast) screen.Effect) screen.Effect) screen.Option {
		return screen.Opt(k, word, func(*screen.Shared) screen.Effect { return ask(was, book) })
	}
	return screen.AskNumber(words.DoBlast, litresPerMinute, Given(was.Volume),
		func(v float64) screen.Effect {
			if v == 0 { // what does not blow is off
				return then(entry.Blast{State: entry.BlastOff})
			}
			return then(entry.Blast{Volume: entry.Some(entry.LitrePerMinute(v))})
		},
		screen.Opt("o", words.BlastOff, func(*screen.Shared) screen.Effect { return then(entry.Blast{State: entry.BlastOff}) }),
		screen.Opt("n", words.BlastOn, func(*screen.Shared) screen.Effect { return then(entry.Blast{State: entry.BlastOn}) }),
		by("g", words.ByGate, askGate), by("k", words.ByStrokes, askStrokes), by("t", words.ByTuyeres, askOpen),
		by("p", words.ByPressure, askPressure),
		screen.Opt("m", words.ByMeter, func(sh *screen.Shared) screen.Effect { return askMeter(sh, was, book) }),
		by("w", words.ByBlower, askBlower))
}

// ofBlower is what is done with a blast that is said anew where it was said that another
// blower blows: it stays that one, unless it is named anew.
func ofBlower(name string, then func(entry.Event) screen.Effect) func(entry.Event) screen.Effect {
	return func(ev entry.Event) screen.Effect {
		b := ev.(entry.Blast)
		b.Blower = cmp.Or(b.Blower, name)
		return then(b)
	}
}

// askBlower asks which blower blows now, and how much, which may not be known yet.
func askBlower(was entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect {
	return screen.AskWords(words.BlowerNow, was.Blower, func(s string) screen.Effect {
		now := entry.Blast{Blower: s}
		gives := screen.MaybeField(words.BlowerGives, litresPerMinute, Given(was.Volume), func(v entry.Maybe[float64]) screen.Effect {
			if v.Positive() {
				now.Volume = entry.Some(entry.LitrePerMinute(v.Value))
			}
			return then(now)
		})
		gives.Left = func(*screen.Shared) screen.Effect { return then(now) }
		return screen.Each{screen.Kept(then(now)), screen.Ask{Dialog: gives}}
	})
}

func askGate(was entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect {
	return screen.AskWords(words.BlastGate, was.Gate, func(s string) screen.Effect { return then(entry.Blast{Gate: s}) })
}

func askStrokes(was entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect {
	return screen.AskNumber(words.BlastStrokes, strokesPerMin, Given(was.Strokes), func(v float64) screen.Effect {
		return then(entry.Blast{Strokes: entry.Some(entry.PerMinute(v))})
	})
}

func askOpen(was entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect {
	return screen.AskNumber(words.BlastTuyeres, openTuyeres, Given(was.Tuyeres), func(v float64) screen.Effect {
		return then(entry.Blast{Tuyeres: entry.Some(entry.Count(v))})
	})
}

func askPressure(was entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect {
	return screen.AskNumber(words.BlastPressure, pascals, Given(was.Pressure), func(v float64) screen.Effect {
		return then(entry.Blast{Pressure: entry.Some(entry.Pascal(v))})
	})
}

// askMeter asks what an instrument in the pipe shows, or what the blower was
// metered at with a setting: from then on that setting alone is a volume.
func askMeter(sh *screen.Shared, was entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect {
	instrument := func(k string, with entry.AirMeter, ask func(entry.AirReading, func(entry.AirReading) screen.Effect) screen.Effect) screen.Option {
		return screen.Opt(k, string(with), func(sh *screen.Shared) screen.Effect { return askReading(sh, was, with, ask, then) })
	}
	setting := func(k, word string, ask func(entry.Blast, func(entry.Blast) screen.Effect) screen.Effect, gives func(was, at entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect) screen.Option {
		return screen.Opt(k, word, func(*screen.Shared) screen.Effect {
			return ask(was, func(at entry.Blast) screen.Effect { return gives(was, at, then) })
		})
	}
	return screen.Choose(words.MeterWhich,
		instrument("o", entry.OrificePlate, askPlate), instrument("p", entry.PitotTube, askDifference), instrument("v", entry.VaneAnemometer, askSpeed),
		setting("g", words.MarkGate, askGate, askGives), setting("k", words.MarkStrokes, askStrokes, askGives),
		setting("t", words.MarkTuyeres, askOpen, askGives), setting("l", words.MarkStroke, askStrokes, askStroke))
}

// askGives asks for the volume that was metered at a setting.
func askGives(was, at entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect {
	return screen.AskNumber(words.MarkGives, litresPerMinute, Given(was.Volume), func(v float64) screen.Effect {
		at.Volume = entry.Some(entry.LitrePerMinute(v))
		return then(at)
	})
}

// askStroke asks for what one stroke of a bellows delivers.
func askStroke(was, at entry.Blast, then func(entry.Blast) screen.Effect) screen.Effect {
	return screen.AskNumber(words.MarkStroke, litresAStroke, Given(was.Stroke), func(v float64) screen.Effect {
		at.Stroke = entry.Some(entry.Litre(v))
		return then(at)
	})
}

// askReading asks for the pipe and for what the instrument shows. Sizes that
// were given with its last reading are offered again. What no volume can be
// reckoned from is refused here, where it can be put right.
func askReading(sh *screen.Shared, was entry.Blast, with entry.AirMeter, ask func(entry.AirReading, func(entry.AirReading) screen.Effect) screen.Effect, then func(entry.Blast) screen.Effect) screen.Effect {
	r := lastRead(sh, was, with)
	bores := pipeBore
	if with == entry.OrificePlate {
		bores.Least = float64(fold.PlatePipe)
	}
	return screen.AskNumber(words.PipeBore, bores, Given(r.Pipe), func(v float64) screen.Effect {
		r := entry.AirReading{With: with, Pipe: entry.Some(entry.Millimetre(v)), Hole: r.Hole}
		return ask(r, func(r entry.AirReading) screen.Effect {
			if _, err := fold.Volume(r, fold.AirAt(sh.Smelt.Light().Furnace, entry.None[entry.Celsius]())); err != nil {
				return screen.Refuse(words.CannotReckonAir(with))
			}
			return then(entry.Blast{Read: r})
		})
	})
}

func askPlate(r entry.AirReading, then func(entry.AirReading) screen.Effect) screen.Effect {
	least, most := fold.PlateHoles(r.Pipe.Value)
	return screen.AskNumber(words.PlateHole, screen.Limits{Unit: "mm", Least: float64(least), Most: float64(most)}, Given(r.Hole), func(v float64) screen.Effect {
		r.Hole = entry.Some(entry.Millimetre(v))
		return askDifference(r, then)
	})
}

func askDifference(r entry.AirReading, then func(entry.AirReading) screen.Effect) screen.Effect {
	return screen.AskNumber(words.ReadsPressure, pascals, entry.None[float64](), func(v float64) screen.Effect {
		r.Pressure = entry.Some(entry.Pascal(v))
		return then(r)
	})
}

func askSpeed(r entry.AirReading, then func(entry.AirReading) screen.Effect) screen.Effect {
	return screen.AskNumber(words.ReadsSpeed, metresPerSecond, entry.None[float64](), func(v float64) screen.Effect {
		r.Speed = entry.Some(entry.MetrePerSecond(v))
		return then(r)
	})
}

// lastRead is the last reading of an instrument: of the event to be changed, or
// of the smelt; blank when there is none.
func lastRead(sh *screen.Shared, was entry.Blast, with entry.AirMeter) entry.AirReading {
	if was.Read.With == with {
		return was.Read
	}
	for l := range sh.Smelt.Backward() {
		if b, ok := l.Event.(entry.Blast); ok && b.Read.With == with {
			return b.Read
		}
	}
	return entry.AirReading{}
}
