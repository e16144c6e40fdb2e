package tui

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/words"
)

// limits of what is said of the blast.
var (
	litresPerMinute = limits{"l/min", 0, 20000}
	strokesPerMin   = limits{"strokes a minute", 0, 300}
	litresAStroke   = limits{"litres a stroke", 0.1, 500}
	openTuyeres     = limits{"tuyeres", 0, 20}
	pascals         = limits{"Pa", 0, 50000}
	pipeBore        = limits{"mm", 10, 1000}
	metresPerSecond = limits{"m/s", 0, 60}
)

// askBlast asks for litres a minute; letters lead to other ways to say what
// blows.
func askBlast(_ shared, from entry.Event, then func(entry.Event) step) step {
	was := as[entry.Blast](from)
	book := func(b entry.Blast) step { return then(b) }
	by := func(k, word string, ask func(entry.Blast, func(entry.Blast) step) step) option {
		return opt(k, word, func(shared) step { return ask(was, book) })
	}
	return askNumber(words.DoBlast, litresPerMinute, given(was.Volume),
		func(v float64) step { return then(entry.Blast{Volume: entry.Some(entry.LitrePerMinute(v))}) },
		opt("o", words.BlastOff, func(shared) step { return then(entry.Blast{State: entry.BlastOff}) }),
		opt("n", words.BlastOn, func(shared) step { return then(entry.Blast{State: entry.BlastOn}) }),
		by("g", words.ByGate, askGate), by("s", words.ByStrokes, askStrokes), by("t", words.ByTuyeres, askOpen),
		by("p", words.ByPressure, askPressure),
		opt("m", words.ByMeter, func(sh shared) step { return askMeter(sh, was, book) }))
}

func askGate(was entry.Blast, then func(entry.Blast) step) step {
	return askWords(words.BlastGate, was.Gate, func(s string) step { return then(entry.Blast{Gate: s}) })
}

func askStrokes(was entry.Blast, then func(entry.Blast) step) step {
	return askNumber(words.BlastStrokes, strokesPerMin, given(was.Strokes), func(v float64) step {
		return then(entry.Blast{Strokes: entry.Some(entry.PerMinute(v))})
	})
}

func askOpen(was entry.Blast, then func(entry.Blast) step) step {
	return askNumber(words.BlastTuyeres, openTuyeres, given(was.Tuyeres), func(v float64) step {
		return then(entry.Blast{Tuyeres: entry.Some(entry.Count(v))})
	})
}

func askPressure(was entry.Blast, then func(entry.Blast) step) step {
	return askNumber(words.BlastPressure, pascals, given(was.Pressure), func(v float64) step {
		return then(entry.Blast{Pressure: entry.Some(entry.Pascal(v))})
	})
}

// askMeter asks what an instrument in the pipe shows, or what the blower was
// metered at with a setting: from then on that setting alone is a volume.
func askMeter(sh shared, was entry.Blast, then func(entry.Blast) step) step {
	instrument := func(k string, with entry.AirMeter, ask func(entry.AirReading, func(entry.AirReading) step) step) option {
		return opt(k, string(with), func(sh shared) step { return askReading(sh, was, with, ask, then) })
	}
	setting := func(k, word string, ask func(entry.Blast, func(entry.Blast) step) step, gives func(was, at entry.Blast, then func(entry.Blast) step) step) option {
		return opt(k, word, func(shared) step {
			return ask(was, func(at entry.Blast) step { return gives(was, at, then) })
		})
	}
	return choose(words.MeterWhich,
		instrument("o", entry.OrificePlate, askPlate), instrument("p", entry.PitotTube, askDifference), instrument("v", entry.VaneAnemometer, askSpeed),
		setting("g", words.MarkGate, askGate, askGives), setting("s", words.MarkStrokes, askStrokes, askGives),
		setting("t", words.MarkTuyeres, askOpen, askGives), setting("l", words.MarkStroke, askStrokes, askStroke))
}

// askGives asks for the volume that was metered at a setting.
func askGives(was, at entry.Blast, then func(entry.Blast) step) step {
	return askNumber(words.MarkGives, litresPerMinute, given(was.Volume), func(v float64) step {
		at.Volume = entry.Some(entry.LitrePerMinute(v))
		return then(at)
	})
}

// askStroke asks for what one stroke of a bellows delivers.
func askStroke(was, at entry.Blast, then func(entry.Blast) step) step {
	return askNumber(words.MarkStroke, litresAStroke, given(was.Stroke), func(v float64) step {
		at.Stroke = entry.Some(entry.Litre(v))
		return then(at)
	})
}

// askReading asks for the pipe and for what the instrument shows. Sizes that
// were given with its last reading are offered again. What no volume can be
// reckoned from is refused here, where it can be put right.
func askReading(sh shared, was entry.Blast, with entry.AirMeter, ask func(entry.AirReading, func(entry.AirReading) step) step, then func(entry.Blast) step) step {
	r := lastRead(sh, was, with)
	bores := pipeBore
	if with == entry.OrificePlate {
		bores.least = float64(fold.PlatePipe)
	}
	return askNumber(words.PipeBore, bores, given(r.Pipe), func(v float64) step {
		r := entry.AirReading{With: with, Pipe: entry.Some(entry.Millimetre(v)), Hole: r.Hole}
		return ask(r, func(r entry.AirReading) step {
			if _, err := fold.Volume(r, fold.AirAt(sh.smelt.Light().Furnace, entry.None[entry.Celsius]())); err != nil {
				return refused(words.CannotReckonAir(with))
			}
			return then(entry.Blast{Read: r})
		})
	})
}

func askPlate(r entry.AirReading, then func(entry.AirReading) step) step {
	least, most := fold.PlateHoles(r.Pipe.Value)
	return askNumber(words.PlateHole, limits{"mm", float64(least), float64(most)}, given(r.Hole), func(v float64) step {
		r.Hole = entry.Some(entry.Millimetre(v))
		return askDifference(r, then)
	})
}

func askDifference(r entry.AirReading, then func(entry.AirReading) step) step {
	return askNumber(words.ReadsPressure, pascals, entry.None[float64](), func(v float64) step {
		r.Pressure = entry.Some(entry.Pascal(v))
		return then(r)
	})
}

func askSpeed(r entry.AirReading, then func(entry.AirReading) step) step {
	return askNumber(words.ReadsSpeed, metresPerSecond, entry.None[float64](), func(v float64) step {
		r.Speed = entry.Some(entry.MetrePerSecond(v))
		return then(r)
	})
}

// lastRead is the last reading of an instrument: of the event to be changed, or
// of the smelt; blank when there is none.
func lastRead(sh shared, was entry.Blast, with entry.AirMeter) entry.AirReading {
	if was.Read.With == with {
		return was.Read
	}
	for l := range sh.smelt.Backward() {
		if b, ok := l.Event.(entry.Blast); ok && b.Read.With == with {
			return b.Read
		}
	}
	return entry.AirReading{}
}
