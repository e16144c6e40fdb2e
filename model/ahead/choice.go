package ahead

import (
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/session"
)

// Name names a choice, on the wire too.
type Name string

// The choices: what is shown is the recipe and the blast as they are.
const (
	Shown        Name = "as shown"
	LessOre      Name = "less ore"
	MoreOre      Name = "more ore"
	CharcoalOnly Name = "charcoal only"
	LessBlast    Name = "less blast"
	MoreBlast    Name = "more blast"
	// Once the last ore is in.
	Wait   Name = "wait"
	Pull   Name = "pull"
	GiveUp Name = "give up"
)

// byBlast is how far a blast is turned up or down: a step that a crew makes, and that its burn shows (assumed).
const byBlast = 0.15

// orStep is by how much ore without a measure is stepped.
const orStep = 0.25

// Hour is how far is looked, and Waiting how far when only the end of the burn-down is to come.
const Hour, Waiting = time.Hour, 20 * time.Minute

// choice is one thing that could be done now and at the next charges.
type choice struct {
	name   Name
	parts  entry.Parts // of every charge; none for no charges
	blast  float64     // times as it is
	over   time.Duration
	lMin   float64 // the blast as it is, when it is metered
	starts bool    // the blast is set now
}

// choices are those of a smelt at its moment.
func choices(s session.Session) []choice {
	r := s.Reading()
	shown := s.Recipe()
	if n := len(r.Charges); len(shown) == 0 && n > 0 {
		shown = r.Charges[n-1].Parts // a log says no recipe: like the last
	}
	if r.OreHeld {
		shown = without(shown)
	}
	lMin := 0.0
	if r.Blast.Volume.Positive() && !r.BlastOff {
		lMin = float64(r.Blast.Volume.Value)
	}
	one := func(n Name, parts entry.Parts, blast float64) choice {
		return choice{name: n, parts: parts, blast: blast, over: Hour, lMin: lMin, starts: blast != 1}
	}
	if late(s) {
		// No more is charged: it burns down, or it is pulled as it is.
		wait := choice{name: Wait, over: Waiting, blast: 1, lMin: lMin}
		pull, give := wait, wait
		pull.name, pull.over, give.name, give.over = Pull, 0, GiveUp, 0
		return []choice{wait, pull, give}
	}
	cs := []choice{one(Shown, shown, 1)}
	if shown.Holds(entry.Ore) {
		if less := stepped(shown, -1); less.Holds(entry.Ore) {
			cs = append(cs, one(LessOre, less, 1))
		}
		cs = append(cs, one(MoreOre, stepped(shown, 1), 1), one(CharcoalOnly, without(shown), 1))
	}
	if lMin > 0 {
		area := 0.0 // without a bore anything goes
		if f := r.Light.Furnace; f.Bore.Positive() {
			area = math.Pi / 4 * float64(f.Bore.Value) * float64(f.Bore.Value)
		}
		if lMin*(1-byBlast) >= rule.LeastAir*area {
			cs = append(cs, one(LessBlast, shown, 1-byBlast))
		}
		if area == 0 || lMin*(1+byBlast) <= rule.MostAir*area {
			cs = append(cs, one(MoreBlast, shown, 1+byBlast))
		}
	}
	return cs
}

// late tells whether no more ore comes.
func late(s session.Session) bool {
	r := s.Reading()
	return r.Phase == entry.BurnsDown || r.LastOre
}

// without is a charge without its ore.
func without(parts entry.Parts) entry.Parts {
	return slices.DeleteFunc(slices.Clone(parts), func(p entry.Part) bool { return p.What == entry.Ore })
}

// stepped is a charge with one measure of ore more or less, or a quarter of what is weighed.
func stepped(parts entry.Parts, by float64) entry.Parts {
	parts = slices.Clone(parts)
	for i, p := range parts {
		if p.What != entry.Ore {
			continue
		}
		switch {
		case p.Mass.Known:
			p.Mass.Value = entry.Kilogram(float64(p.Mass.Value) * (1 + orStep*by))
		case p.Count.Known:
			p.Count.Value = entry.Count(math.Max(0, float64(p.Count.Value)+by))
		}
		parts[i] = p
		break
	}
	return parts
}

// entries are those of the choice after a smelt's own: the blast now, and charges as they fall due.
func (c choice) entries(s session.Session, own []entry.Entry, at time.Duration) []entry.Entry {
	last := own[len(own)-1]
	key := func(when time.Duration, ev entry.Event) {
		wall := s.Reading().Wall(when)
		own = append(own, entry.Entry{
			Version: entry.Version, Stream: last.Stream, Seq: own[len(own)-1].Seq + 1, Happened: wall, Kept: wall, Boot: last.Boot,
			Mono: last.Mono + (when - c.taken(s, last)), Event: ev,
		})
	}
	if c.starts && c.lMin > 0 {
		key(at, entry.Blast{Volume: entry.Some(entry.LitrePerMinute(c.lMin * c.blast))})
	}
	if len(c.parts) == 0 {
		return own
	}
	every, next := c.pace(s, at)
	for t := next; every > 0 && t <= at+c.over; t += every {
		key(t, entry.Charge{Parts: c.parts})
	}
	return own
}

// taken is when the last entry was taken down, on the smelt's clock.
func (c choice) taken(s session.Session, last entry.Entry) time.Duration {
	if l, ok := s.Line(last.Seq); ok {
		return l.Accepted
	}
	return s.At()
}

// pace is how long a charge lasts and when the next one is due: the smelt's own, and faster or slower as the blast is.
func (c choice) pace(s session.Session, at time.Duration) (every, next time.Duration) {
	r := s.Reading()
	every = r.Usual
	if r.HasDue {
		left := r.Due.Next.From + time.Duration(r.Due.Next.Minutes.P50*float64(time.Minute)) - at
		if every == 0 {
			every = time.Duration(r.Due.Next.Minutes.P50 * float64(time.Minute))
		}
		next = at + max(0, time.Duration(float64(left)/c.blast))
	} else {
		next = at + time.Minute
	}
	every = time.Duration(float64(every) / c.blast).Truncate(time.Second)
	return max(every, time.Minute), next.Truncate(time.Second)
}
