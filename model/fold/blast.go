package fold

import (
	"time"

	"chargehand/model/entry"
)

// Blast is the blast from one entry to the next.
type Blast struct {
	At     time.Duration
	Seen   entry.Blast                       // as observed
	Volume entry.Maybe[entry.LitrePerMinute] // what is known to blow from here on
	Off    bool
}

// blasts is the history of the blast. An entry that says something new of the
// setting without a volume (a gate mark, strokes, "set by ear") leaves the
// volume unknown; a pressure alone leaves it as it was; "on" again after "off"
// is what blew before.
func blasts(lines []Line) []Blast {
	var bs []Blast
	var before entry.Maybe[entry.LitrePerMinute] // what last blew
	for _, l := range lines {
		ev, ok := l.Event.(entry.Blast)
		if !ok {
			continue
		}
		b := Blast{At: l.At, Seen: ev}
		switch {
		case ev.Off():
			b.Off, b.Volume = true, entry.Some(entry.LitrePerMinute(0))
		case ev.Volume.Known:
			b.Volume = ev.Volume
		case ev == entry.Blast{State: entry.BlastOn}:
			b.Volume = before
		case ev == entry.Blast{Pressure: ev.Pressure, Meter: ev.Meter} && ev.Pressure.Known:
			b.Volume = before
		}
		if !b.Off {
			before = b.Volume
		}
		bs = append(bs, b)
	}
	return bs
}

// BlastAt is the blast at a moment, and whether any was ever recorded by then.
func (s State) BlastAt(at time.Duration) (Blast, bool) {
	for i := len(s.Blast) - 1; i >= 0; i-- {
		if s.Blast[i].At <= at {
			return s.Blast[i], true
		}
	}
	return Blast{}, false
}

// Blown is the air blown between two moments, in litres, and whether the volume
// was known all the while.
func (s State) Blown(from, to time.Duration) (litres float64, known bool) {
	b, ok := s.BlastAt(from)
	known = ok
	for t := from; t < to; {
		next := to
		for _, n := range s.Blast {
			if n.At > t {
				next = min(n.At, to)
				break
			}
		}
		known = known && b.Volume.Known
		litres += float64(b.Volume.Value) * (next - t).Minutes()
		t = next
		b, _ = s.BlastAt(t)
	}
	return litres, known
}
