package why

import (
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/pace"
)

// Name names what is otherwise.
type Name string

// What can be otherwise.
const (
	AsWas       Name = "as it was"
	MoreBlast   Name = "more blast"
	LessBlast   Name = "less blast"
	LessOre     Name = "less ore"
	MoreOre     Name = "more ore"
	EvenOre     Name = "even ore"
	LaterOre    Name = "later ore"
	NeverOff    Name = "blast never off"
	WetCharcoal Name = "wetter charcoal"
	PoorOre     Name = "poorer ore"
	LongerBurn  Name = "later pull"
)

// How much is otherwise: steps that a crew makes, or that an input is easily off by (assumed).
const (
	ByBlast  = 0.15
	ByOre    = 0.2
	Buckets  = 2                // before the first ore
	ByWater  = 0.1              // of dry charcoal
	ByIron   = 0.05             // of the ore
	Longer   = 20 * time.Minute // of the burn-down
	leastOff = 3 * time.Minute  // of a blast that is off for it to count
)

// Choice is one thing otherwise.
type Choice struct {
	Name Name
	Off  time.Duration // of NeverOff, how long it was off
	Book bool          // an input that a furnace cannot be given otherwise: of a rehearsal only the model tells of it

	event func(at time.Duration, ev entry.Event) (entry.Event, bool) // false: left out
	warp  func(at time.Duration) time.Duration
	adds  []Keyed // at their moments in the other smelt
}

// Apply is a smelt with the one thing otherwise.
func (c Choice) Apply(all []Keyed) []Keyed {
	other := make([]Keyed, 0, len(all)+len(c.adds))
	for _, k := range all {
		at := k.At
		if c.warp != nil {
			at = c.warp(at)
		}
		if c.event != nil && k.Entry.Event != nil {
			ev, stays := c.event(k.At, k.Entry.Event)
			if !stays {
				continue
			}
			k.Entry.Event = ev
		}
		other = append(other, Keyed{at, k.Entry})
	}
	other = append(other, c.adds...)
	slices.SortStableFunc(other, byTime)
	return other
}

// day is when things happened in a smelt.
type day struct {
	from     time.Duration // nothing before is otherwise
	begins   time.Duration // the charging
	firstOre time.Duration // 0: there was none
	before   time.Duration // the charge before it
	lower    time.Duration // the burn-down, or the last charge
	pulled   time.Duration
	out      bool // something was pulled
	usual    time.Duration
	blasts   []Keyed
	read     bool // a blast was read off an instrument: it cannot be turned by a share
	offs     [][2]time.Duration
	iron     bool // the ore was assayed
	charges  []Keyed
}

func dayOf(all []Keyed, from time.Duration) day {
	d := day{from: from}
	var log pace.Log
	last, off := time.Duration(0), time.Duration(-1)
	for _, k := range all {
		switch ev := k.Entry.Event.(type) {
		case entry.Light:
			for _, l := range ev.Lots {
				d.iron = d.iron || l.What == entry.Ore && l.Iron.Known
			}
		case entry.Charge:
			if ev.Parts.Holds(entry.Ore) && d.firstOre == 0 {
				d.firstOre, d.before = k.At, last
			}
			last = k.At
			d.charges = append(d.charges, k)
			log.Charge(k.At, false)
		case entry.Blast:
			d.blasts = append(d.blasts, k)
			log.Blow(k.At, ev.Off())
			d.read = d.read || ev.Read != entry.AirReading{}
			switch {
			case ev.Off() && off < 0:
				off = k.At
			case !ev.Off() && off >= 0:
				if k.At-off >= leastOff && len(d.charges) > 0 && off > from {
					d.offs = append(d.offs, [2]time.Duration{off, k.At})
				}
				off = -1
			}
		case entry.BurnDown:
			d.lower = k.At
		case entry.Extract:
			d.pulled, d.out = k.At, true
		}
	}
	if d.lower == 0 {
		d.lower = last
	}
	if d.pulled == 0 && len(all) > 0 {
		d.pulled = all[len(all)-1].At
	}
	if len(d.charges) > 0 {
		d.begins = max(d.charges[0].At, from)
	}
	d.usual = log.Usual()
	return d
}

// Choices are what can be otherwise in a smelt from a moment on; as it was comes first.
func Choices(all []Keyed, from time.Duration) []Choice {
	d := dayOf(all, from)
	cs := []Choice{{Name: AsWas}}
	if len(d.charges) == 0 || d.usual == 0 {
		return cs
	}
	if !d.read {
		cs = append(cs, d.blown(MoreBlast, 1+ByBlast), d.blown(LessBlast, 1/(1+ByBlast)))
	}
	if d.oreFrom() {
		cs = append(cs, d.ored(LessOre, 1-ByOre), d.ored(MoreOre, 1+ByOre))
		if even, ok := d.even(); ok {
			cs = append(cs, even)
		}
	}
	if d.firstOre > from && d.firstOre > 0 {
		cs = append(cs, d.later())
	}
	if len(d.offs) > 0 {
		cs = append(cs, d.neverOff())
	}
	if d.out {
		cs = append(cs, Choice{Name: LongerBurn, warp: func(at time.Duration) time.Duration {
			if at >= d.pulled {
				return at + Longer
			}
			return at
		}})
	}
	water, _ := fold.UsualMoisture(entry.Charcoal)
	usual := entry.Share(water)
	cs = append(cs, lots(WetCharcoal, entry.Charcoal, func(l entry.Lot) entry.Lot {
		l.Moisture = entry.Some(entry.Share(float64(l.Moisture.Or(usual)) + ByWater))
		return l
	}))
	if d.iron {
		cs = append(cs, lots(PoorOre, entry.Ore, func(l entry.Lot) entry.Lot {
			l.Iron.Value = entry.Share(math.Max(0.05, float64(l.Iron.Value)-ByIron))
			return l
		}))
	}
	return cs
}

// oreFrom tells whether there was a charge with ore after from.
func (d day) oreFrom() bool {
	return slices.ContainsFunc(d.charges, func(k Keyed) bool {
		return k.At > d.from && k.Entry.Event.(entry.Charge).Parts.Holds(entry.Ore)
	})
}

// blown turns the blast by a share from the first charge on. What burns faster is charged faster: the charges follow each other
// as the blast does, and the burn-down lasts as long as it did.
func (d day) blown(n Name, by float64) Choice {
	faster := func(t time.Duration) time.Duration { return d.begins + time.Duration(float64(t-d.begins)/by) }
	c := Choice{Name: n, warp: func(at time.Duration) time.Duration {
		switch {
		case at <= d.begins:
			return at
		case at <= d.lower:
			return faster(at)
		}
		return faster(d.lower) + at - d.lower
	}}
	turned := func(b entry.Blast) entry.Blast {
		b.Volume.Value = entry.LitrePerMinute(float64(b.Volume.Value) * by)
		b.Strokes.Value = entry.PerMinute(float64(b.Strokes.Value) * by)
		if g := b.Gate; len(g) == 1 && g[0] >= '1' && g[0] <= '8' {
			b.Gate = string(rune(int(g[0]) + int(math.Copysign(1, by-1)))) // a mark is about as much
		}
		return b
	}
	c.event = func(at time.Duration, ev entry.Event) (entry.Event, bool) {
		if b, ok := ev.(entry.Blast); ok && at > d.begins && !b.Off() {
			return turned(b), true
		}
		return ev, true
	}
	for _, k := range slices.Backward(d.blasts) {
		if k.At > d.begins {
			continue
		}
		if stands := k.Entry.Event.(entry.Blast); !stands.Off() {
			c.adds = []Keyed{d.adds(d.begins+time.Second, turned(stands))}
		}
		break
	}
	return c
}

// adds is something keyed that was not.
func (d day) adds(at time.Duration, ev entry.Event) Keyed {
	e := d.charges[0].Entry
	return Keyed{at, entry.Entry{Version: e.Version, Stream: e.Stream, Screen: "fire", Event: ev}}
}

// ored changes the ore of each charge by a share.
func (d day) ored(n Name, by float64) Choice {
	return d.ores(n, func(p entry.Part) entry.Part { return scaled(p, by) })
}

// ores changes each part of ore.
func (d day) ores(n Name, by func(entry.Part) entry.Part) Choice {
	return Choice{Name: n, event: func(at time.Duration, ev entry.Event) (entry.Event, bool) {
		c, ok := ev.(entry.Charge)
		if !ok || at <= d.from {
			return ev, true
		}
		c.Parts = slices.Clone(c.Parts)
		for i, p := range c.Parts {
			if p.What == entry.Ore {
				c.Parts[i] = by(p)
			}
		}
		return c, true
	}}
}

// scaled is so many times a part.
func scaled(p entry.Part, by float64) entry.Part {
	p.Mass.Value, p.Count.Value = entry.Kilogram(float64(p.Mass.Value)*by), entry.Count(float64(p.Count.Value)*by)
	return p
}

// even spreads the ore evenly over the parts that held it; false where they were even, or are not all counted or weighed alike.
func (d day) even() (Choice, bool) {
	var counts, masses []float64
	measure := ""
	for _, k := range d.charges {
		for _, p := range k.Entry.Event.(entry.Charge).Parts {
			switch {
			case p.What != entry.Ore || k.At <= d.from || p.None():
			case p.Mass.Known:
				masses = append(masses, float64(p.Mass.Value))
			case p.Count.Known && (measure == "" || measure == p.Measure):
				measure = p.Measure
				counts = append(counts, float64(p.Count.Value))
			default:
				return Choice{}, false
			}
		}
	}
	all := append(counts, masses...)
	if len(all) < 2 || len(counts) > 0 && len(masses) > 0 || slices.Max(all) < 1.1*slices.Min(all) {
		return Choice{}, false
	}
	mean := 0.0
	for _, v := range all {
		mean += v / float64(len(all))
	}
	return d.ores(EvenOre, func(p entry.Part) entry.Part {
		switch {
		case p.None():
		case p.Mass.Known:
			p.Mass.Value = entry.Kilogram(mean)
		default:
			p.Count.Value = entry.Count(mean)
		}
		return p
	}), true
}

// later puts two more buckets of charcoal before the first ore: all from it on comes so much later.
func (d day) later() Choice {
	step := d.usual
	if d.before > 0 {
		step = min(step, d.firstOre-d.before)
	}
	step = max(step, time.Minute)
	var bucket entry.Parts
	for _, k := range d.charges { // as much charcoal as in the next charge that held some
		if bucket = slices.DeleteFunc(slices.Clone(k.Entry.Event.(entry.Charge).Parts), func(p entry.Part) bool { return p.What != entry.Charcoal }); k.At >= d.firstOre && len(bucket) > 0 {
			break
		}
	}
	c := Choice{Name: LaterOre, warp: func(at time.Duration) time.Duration {
		if at >= d.firstOre {
			return at + Buckets*step
		}
		return at
	}}
	for i := range Buckets {
		c.adds = append(c.adds, d.adds(d.firstOre+time.Duration(i)*step, entry.Charge{Parts: bucket}))
	}
	return c
}

// neverOff leaves out each time that the blast was off: what came after it comes so much sooner.
func (d day) neverOff() Choice {
	c := Choice{Name: NeverOff}
	for _, o := range d.offs {
		c.Off += o[1] - o[0]
	}
	c.warp = func(at time.Duration) time.Duration {
		cut := time.Duration(0)
		for _, o := range d.offs {
			cut += max(0, min(at, o[1])-o[0])
		}
		return at - cut
	}
	c.event = func(at time.Duration, ev entry.Event) (entry.Event, bool) {
		b, ok := ev.(entry.Blast)
		return ev, !ok || !b.Off() || !slices.ContainsFunc(d.offs, func(o [2]time.Duration) bool { return at == o[0] })
	}
	return c
}

// lots changes what is known of the lots of a material, as the light took it down.
func lots(n Name, what entry.What, by func(entry.Lot) entry.Lot) Choice {
	return Choice{Name: n, Book: true, event: func(_ time.Duration, ev entry.Event) (entry.Event, bool) {
		light, ok := ev.(entry.Light)
		if !ok {
			return ev, true
		}
		light.Lots = slices.Clone(light.Lots)
		found := false
		for i, l := range light.Lots {
			if l.What == what {
				light.Lots[i], found = by(l), true
			}
		}
		if !found {
			light.Lots = append(light.Lots, by(entry.Lot{Name: string(what), What: what}))
		}
		return light, true
	}}
}
