package rehearse

import (
	"math"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/truth"
)

// Notice is something that nobody at the furnace could miss, without looking for it.
type Notice string

// What is noticed.
const (
	RoomForBucket Notice = "room"           // the burden has sunk by a bucket under the mark
	OreIsIn       Notice = "ore in"         // it has, and what there was of ore is charged
	BurnedDown    Notice = "burned down"    // half an hour since the burn-down began
	Slipped       Notice = "slipped"        // what hung came down with a thump
	CrackOpened   Notice = "crack"          // flame licks out of the wall
	BlowerLabours Notice = "blower labours" // its note sinks
	BlowerStands  Notice = "blower stands"
	BlowerRuns    Notice = "blower runs" // mended
	BloomOut      Notice = "bloom out"
)

// Happened is a notice, or something that the furnace adds to the book of itself.
type Happened struct {
	Notice Notice
	Event  entry.Event // nil for a notice
}

// Shown tells whether a notice is only shown: it says what to do next, and nothing happened.
func (n Notice) Shown() bool { return n == RoomForBucket || n == OreIsIn || n == BurnedDown }

// kind of the entry that it becomes.
func (h Happened) kind() entry.Kind {
	switch {
	case h.Event != nil:
		return h.Event.Kind()
	case h.Notice.Shown():
		return ""
	}
	return entry.KindNote
}

// step lets a second pass.
func (l *Live) step() (all []Happened) {
	if l.over {
		return nil
	}
	l.f.Step()
	now := l.f.Seconds()
	if math.Mod(now, 60) == 0 {
		l.trace = append(l.trace, traced{now, l.f.Look()})
		for _, m := range l.mishaps {
			if l.f.Befalling(m) {
				l.lasts[m] = now
			}
		}
	}
	notice := func(n Notice) {
		if !l.told[n] {
			l.told[n] = true
			all = append(all, Happened{Notice: n})
		}
	}
	for len(l.coming) > 0 && l.coming[0].at <= now {
		d := l.coming[0]
		l.coming = l.coming[1:]
		l.comes(d.h.Event)
		all = append(all, d.h)
	}
	if l.pulled {
		return all
	}
	hangs := l.f.Hangs()
	if l.hung && !hangs {
		all = append(all, Happened{Notice: Slipped})
	}
	l.hung = hangs
	since := func(m truth.Mishap) float64 {
		if at, ok := l.f.Befalls(m); ok {
			return now - at
		}
		return -1
	}
	if since(truth.Crack) >= cracksShow {
		notice(CrackOpened)
	}
	if ago := since(truth.BlowerDying); ago >= 0 {
		switch {
		case !l.f.Befalling(truth.BlowerDying):
			notice(BlowerRuns)
		case ago >= 900:
			notice(BlowerStands)
		case ago >= 300:
			notice(BlowerLabours)
		}
	}
	if l.burning > 0 && now >= l.burning+burnsDown && math.Mod(now-l.burning-burnsDown, again) == 0 {
		all = append(all, Happened{Notice: BurnedDown})
	}
	return append(all, l.rooms(now)...)
}

// cracksShow is how long after a wall cracks flame licks out of it, s (assumed).
const cracksShow = 120

// rooms looks every few seconds whether there is room for a bucket. A helper who forgets to key may charge it.
func (l *Live) rooms(now float64) (all []Happened) {
	if !l.filled || !l.blown || l.burning > 0 {
		return nil
	}
	if l.helps > 0 && now >= l.helps {
		l.helps = 0
		l.charge(1, l.next)
		return nil
	}
	if l.room {
		if l.helps == 0 && now > l.since && math.Mod(now-l.since, again) == 0 {
			return []Happened{{Notice: l.roomFor()}}
		}
		return nil
	}
	if math.Mod(now, 5) != 0 || l.f.Mark()-l.f.Level()+l.eye < l.bucket() {
		return nil
	}
	l.room, l.since = true, now
	if l.f.Forgets() {
		l.helps = now + 45
		return nil
	}
	return append(all, Happened{Notice: l.roomFor()})
}

// roomFor is what is noticed when there is room: that, or that there is no ore left for it.
func (l *Live) roomFor() Notice {
	if l.ore >= l.f.OreKg {
		return OreIsIn
	}
	return RoomForBucket
}

// again is how often somebody says that there is room for a bucket until it is charged, s.
const again = 300.0

// bucket is how high a bucket stands in the shaft, m.
func (l *Live) bucket() float64 {
	bore := l.f.BoreCm / 100
	return l.bucketKg * l.f.BucketOff / (1 + l.f.Moisture) / l.f.CharcoalBulk / (math.Pi / 4 * bore * bore)
}

// later has an answer come so many s from now, in order of time.
func (l *Live) later(seconds float64, ev entry.Event) {
	at := l.f.Seconds() + seconds
	i := slices.IndexFunc(l.coming, func(d due) bool { return d.at > at })
	if i < 0 {
		i = len(l.coming)
	}
	l.coming = slices.Insert(l.coming, i, due{at, Happened{Event: ev}})
}

// comes is what an answer that was sure to come does.
func (l *Live) comes(ev entry.Event) {
	switch ev := ev.(type) {
	case entry.Look:
		if ev.At == entry.AtTopGas {
			l.f.LightTop()
		}
	case entry.Opened:
		l.over = true
	}
}
