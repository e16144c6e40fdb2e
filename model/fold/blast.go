package fold

import (
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// Blast is the blast from one entry to the next.
type Blast struct {
	At        time.Duration
	Seen      entry.Blast                       // as observed
	Set       entry.Blast                       // the last observation that said anything of the setting
	Volume    entry.Maybe[entry.LitrePerMinute] // what is known to blow from here on
	BySetting bool                              // the volume is what the blower gave at that setting at other times
	Off       bool
}

// blasts is the history of the blast. A setting (a gate mark, strokes, open
// tuyeres) is the volume that the blower was metered at there, and unknown where
// it never was; "set by ear" is unknown too. A pressure alone leaves the volume
// as it was; "on" again after "off" is what blew before.
func blasts(lines []Line, f entry.Furnace, by blower) []Blast {
	var bs []Blast
	var before Blast // what last blew
	air := AirAt(f, entry.None[entry.Celsius]())
	for _, l := range lines {
		switch ev := l.Event.(type) {
		case entry.Temperature:
			if ev.Where == WhereOutside {
				air = AirAt(f, entry.Some(ev.Degrees))
			}
		case entry.Blast:
			b := Blast{At: l.At, Seen: ev, Set: ev}
			if ev.SaysNoSetting() && (before.Set != entry.Blast{}) {
				b.Set = before.Set
			}
			b.blows(ev, before, by, air)
			if !b.Off {
				before = b
			}
			bs = append(bs, b)
		}
	}
	return bs
}

// blows sets what blows after an entry.
func (b *Blast) blows(ev entry.Blast, before Blast, by blower, air physics.Air) {
	if ev.Off() {
		b.Off, b.Volume = true, entry.Some(entry.LitrePerMinute(0))
		return
	}
	if v, known := metered(ev, air); known {
		b.Volume = entry.Some(v)
		return
	}
	if ev.SaysNoSetting() {
		b.Volume, b.BySetting = before.Volume, before.BySetting
		return
	}
	if v, known := by.gives(ev); known {
		b.Volume, b.BySetting = entry.Some(v), true
	}
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

// Pressure is the last reading of the pressure before the tuyere, and when. There
// is none while the blast is off, nor from before it last was.
func (s State) Pressure() (pa entry.Pascal, at time.Duration, ok bool) {
	for i := len(s.Blast) - 1; i >= 0; i-- {
		b := s.Blast[i]
		if b.Off {
			break
		}
		if b.Seen.Pressure.Known {
			return b.Seen.Pressure.Value, b.At, true
		}
	}
	return 0, 0, false
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
