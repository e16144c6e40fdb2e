package rehearse

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/truth"
	"chargehand/model/why"
)

// over does a rehearsal over on its furnace. What was keyed is done in its order, but a charge goes in as long after there was
// room for it as it did then: another day does not sink at the same minutes. All else comes as long after the charge before it
// as it did, and a tuyere that freezes worse than they let it is rodded, if they rodded at all.
type over struct {
	l        *Live
	roomAt   float64 // s, when there was room for a bucket; -1 while there is none
	charged  float64 // s, of the last charge
	firstOre float64
	pulled   float64
	lets     float64 // how far shut the tuyere was let be before it was rodded, at the most; 1 where it never was
	givenUp  bool    // nothing sank for so long that nobody waits
}

// lasts is how long beyond what it took then somebody waits for room that does not come, s (assumed).
const lasts = 2 * 3600.0

// early marks a charge that went in before there was room.
var early = math.NaN()

// keeps is what a charge in the shaft is, as it goes in.
func (l *Live) keeps(e entry.Entry) bool {
	_, ok := e.Event.(entry.Charge)
	return ok && l.filled && !l.pulled && e.Screen != Answers && e.Kept.Sub(e.Happened).Abs().Seconds() <= 1.5
}

func (o *over) step() {
	o.l.step()
	if s := o.l.f.Seconds(); o.lets < 1 && math.Mod(s, 60) == 0 && o.l.f.Look().Shut > o.lets+0.05 {
		o.l.f.Rod()
	}
	switch room := o.l.room && o.l.helps == 0; { // what a helper charges is keyed by nobody
	case !room:
		o.roomAt = -1
	case o.roomAt < 0:
		o.roomAt = o.l.f.Seconds()
	}
}

// manner is how somebody worked.
type manner struct {
	waits map[uint64]float64 // how long after there was room each charge went in, s, by its number
	lets  float64
}

// mannerOf finds it.
func mannerOf(entries []entry.Entry) (manner, error) {
	l, err := begun(entries, nil)
	if err != nil {
		return manner{}, err
	}
	o := over{l: l, roomAt: -1, lets: 1}
	all, worst := map[uint64]float64{}, -1.0
	for _, e := range entries {
		at := SecondsOf(e)
		if at <= l.handed {
			continue
		}
		for !l.over && l.f.Seconds() < at-1 {
			o.step()
		}
		if l.keeps(e) {
			if all[e.Seq] = early; o.roomAt >= 0 {
				all[e.Seq] = l.f.Seconds() - o.roomAt
			}
			o.roomAt = -1
		}
		if _, rods := e.Event.(entry.Rod); rods {
			worst = max(worst, l.f.Look().Shut)
		}
		l.does(e)
	}
	if worst < 0 {
		worst = 1
	}
	return manner{all, worst}, nil
}

// does is an entry as it is done or answered.
func (l *Live) does(e entry.Entry) {
	if e.Screen == Answers {
		l.redo(e.Event)
		return
	}
	l.Take(e)
}

// doOver does it over with other entries and other mishaps where they are given. Each of the entries has the number that it had,
// none where it was not keyed then.
func doOver(entries []entry.Entry, all []why.Keyed, by manner, otherwise *[]truth.Mishap) (*over, error) {
	l, err := begun(entries, otherwise)
	if err != nil {
		return nil, err
	}
	o := &over{l: l, roomAt: -1, charged: l.handed, lets: by.lets}
	was := l.handed // when the last charge went in by the entries
	for i, k := range all {
		if k.At.Seconds() <= l.handed {
			if c, ok := k.Entry.Event.(entry.Charge); ok && o.firstOre == 0 && c.Parts.Holds(entry.Ore) {
				o.firstOre = k.At.Seconds()
			}
			continue
		}
		now := l.f.Seconds
		at := o.charged + k.At.Seconds() - was - 1
		switch {
		case l.keeps(k.Entry):
			for !l.over && !o.due(k, was, by.waits) {
				o.step()
			}
			if o.givenUp {
				o.pulled = now()
				return o, nil
			}
		default:
			next := l.nextOf(all[i+1:])
			for !l.over && now() < at && (next == nil || !o.due(*next, was, by.waits)) {
				o.step()
			}
		}
		switch ev := k.Entry.Event.(type) {
		case entry.Charge:
			if l.keeps(k.Entry) {
				o.charged, was, o.roomAt = now()+1, k.At.Seconds(), -1
				if o.firstOre == 0 && ev.Parts.Holds(entry.Ore) {
					o.firstOre = o.charged
				}
			}
		case entry.Extract:
			o.pulled = now()
		}
		l.does(k.Entry)
	}
	if o.pulled == 0 {
		o.pulled = l.f.Seconds()
	}
	return o, nil
}

// due tells whether a charge goes in now.
func (o *over) due(k why.Keyed, was float64, waits map[uint64]float64) bool {
	now := o.l.f.Seconds()
	after := now + 1 - o.charged
	wait, keyed := waits[k.Entry.Seq]
	switch {
	case math.IsNaN(wait):
		return o.roomAt >= 0 || after >= k.At.Seconds()-was
	case !keyed:
		wait = 0
	}
	o.givenUp = after >= max(0, k.At.Seconds()-was)+lasts
	return o.roomAt >= 0 && now >= o.roomAt+wait || o.givenUp
}

// nextOf is the next charge among entries.
func (l *Live) nextOf(all []why.Keyed) *why.Keyed {
	for i := range all {
		if l.keeps(all[i].Entry) {
			return &all[i]
		}
	}
	return nil
}
