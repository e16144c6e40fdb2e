package rehearse

import (
	"math"

	"chargehand/model/entry"
)

// Unseen says why there is nothing to be seen.
type Unseen string

// Why.
const (
	NoInstrument Unseen = "no instrument"
	NoSlagYet    Unseen = "no slag yet"
	NoScent      Unseen = "no scent"
	NothingIn    Unseen = "nothing in"
	NotAsked     Unseen = "not asked"
)

// See answers what is looked at: the event to be booked, whole, for one that says only what is looked at. Else why there is
// nothing to be seen.
func (l *Live) See(ask entry.Event) (entry.Event, Unseen) {
	if l.pulled {
		return nil, NothingIn
	}
	switch ask := ask.(type) {
	case entry.Look:
		if ask.At == entry.AtSmell {
			return nil, NoScent
		}
		if ask.Sees = l.look(ask.At); ask.Sees == "" {
			return nil, NoSlagYet
		}
		return ask, ""
	case entry.Dip:
		if !l.filled {
			return nil, NothingIn
		}
		below := math.Round(l.f.StackCm) + freeboardCm - 100*l.f.Dip()
		return entry.Dip{BelowRim: entry.Some(entry.Centimetre(math.Round(math.Max(0, below))))}, ""
	case entry.Blast:
		reads, ok := l.f.MeterReads()
		if !ok {
			return nil, NoInstrument
		}
		return entry.Blast{Volume: entry.Some(entry.LitrePerMinute(math.Max(0, math.Round(reads))))}, ""
	case entry.Weigh:
		if l.weighed == 0 {
			return nil, NothingIn
		}
		return entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: entry.Kilogram(math.Round(20*l.weighed) / 20), FromNow: true}, ""
	case entry.Tap:
		if kg := l.f.Tap(); kg > 0 {
			return entry.Tap{Mass: entry.Some(entry.Kilogram(math.Max(0.1, math.Round(10*kg)/10)))}, ""
		}
		if sees := l.look(entry.AtSlag); sees != "" {
			return entry.Look{At: entry.AtSlag, Sees: sees}, ""
		}
		return nil, NoSlagYet
	case entry.Extract:
		return l.pull(ask.From), ""
	case entry.Temperature:
		return nil, NoInstrument
	}
	return nil, NotAsked
}

// look is what is seen at a place, empty for nothing.
func (l *Live) look(at entry.LookAt) string {
	switch at {
	case entry.AtPeep:
		return l.f.Peep()
	case entry.AtSound:
		return l.f.Sound()
	case entry.AtSlag:
		return l.f.Slag()
	case entry.AtFlame:
		return l.f.Flame()
	case entry.AtTopGas:
		if l.f.TopAlight() {
			return entry.TopGasAlight
		}
		// Whoever sees it lights it.
		l.later(40, entry.Look{At: entry.AtTopGas, Sees: entry.TopGasAlight})
		return entry.TopGasOut
	}
	return ""
}

// pull takes the bloom out; once it is cold it is weighed, and the seal opened.
func (l *Live) pull(from string) entry.Event {
	l.bloom, l.bits = l.f.Bloom()
	l.f.SetBlast(0)
	l.pulled, l.coming = true, nil
	cold := 20 * 60.0
	if l.bloom > 0 {
		l.later(cold, entry.Weigh{What: entry.WeighBloom, Mass: entry.Kilogram(math.Round(10*l.bloom) / 10), State: entry.Cold})
	}
	l.later(cold+30, entry.PhaseSet{Phase: entry.Closed})
	l.later(cold+60, entry.Opened{})
	return entry.Extract{From: from, None: l.bloom == 0}
}
