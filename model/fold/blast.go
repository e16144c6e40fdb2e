package fold

import (
	"cmp"
	"sort"
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
	Blower    string                            // the one at work, as named; empty for the one that the fire was lit with
	Off       bool
}

// blow takes the blast from an entry on. A setting (a gate mark, strokes, open
// tuyeres) is the volume that the blower was metered at there, and unknown where
// it never was; "set by ear" is unknown too. A pressure alone leaves the volume
// as it was; "on" again after "off" is what blew before. Of another blower nothing is known
// but what is said of it.
func (c *Timeline) blow(l Line, ev entry.Blast) {
	b := Blast{At: l.At, Seen: ev, Set: ev, Blower: cmp.Or(ev.Blower, c.blew.Blower)}
	if ev.SaysNoSetting() && (c.blew.Set != entry.Blast{}) {
		b.Set = c.blew.Set
	}
	b.blows(ev, c.blew, c.about.blowers.of(b.Blower), c.air)
	switch {
	case !b.Off:
		c.blew = b
	case ev.Blower != "": // exchanged, and not started yet
		c.blew = Blast{Blower: ev.Blower}
	}
	c.blasts.Append(b)
	c.Blast = c.blasts.All()
	c.Pace.Blow(l.At, b.Off)
}

// blows sets what blows after an entry.
func (b *Blast) blows(ev entry.Blast, before Blast, by *blower, air physics.Air) {
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
func (s *State) BlastAt(at time.Duration) (Blast, bool) {
	if i := s.blastsBy(at); i > 0 {
		return s.Blast[i-1], true
	}
	return Blast{}, false
}

// blastsBy is how many entries of the blast there are up to a moment.
func (s *State) blastsBy(at time.Duration) int {
	if n := len(s.Blast); n == 0 || s.Blast[n-1].At <= at { // mostly now
		return n
	}
	return sort.Search(len(s.Blast), func(i int) bool { return s.Blast[i].At > at })
}

// nextBlast is the next change of the blast after a moment, at most to.
func (s *State) nextBlast(after, to time.Duration) time.Duration {
	if i := s.blastsBy(after); i < len(s.Blast) {
		return min(s.Blast[i].At, to)
	}
	return to
}

// Pressure is the last reading of the pressure before the tuyere, and when. There
// is none while the blast is off, nor from before it last was.
func (s *State) Pressure() (pa entry.Pascal, at time.Duration, ok bool) {
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
func (s *State) Blown(from, to time.Duration) (litres float64, known bool) {
	b, ok := s.BlastAt(from)
	known = ok
	for t := from; t < to; {
		next := s.nextBlast(t, to)
		known = known && b.Volume.Known
		litres += float64(b.Volume.Value) * (next - t).Minutes()
		t = next
		b, _ = s.BlastAt(t)
	}
	return litres, known
}
