package rehearse

import (
	"cmp"
	"errors"
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/model/truth"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// End is a rehearsal that a person has worked, after its seal was opened: what was so, what the screen believed, what was done.
// Times are since light.
type End struct {
	Number   int64
	Lit      time.Time // of the rehearsal's own clock
	BloomKg  float64
	NoBloom  bool // nothing held together; else, without a bloom, it was given up
	OreKg    float64
	Over     time.Duration
	MainBurn time.Duration
	True     []Heat
	Believed []Heat
	Befell   []Answered
	Warnings []rule.Warning // looks and acts
	Charges  []Charged
	Acts     []Act
	Said     physics.Band // kg of bloom that the screen expected at the last ore; zero where it said nothing
	Cold     time.Duration
	Looked   int     // how often somebody looked into the peep, after the crew handed over
	Shafts   []Shaft // every ten minutes, and before it was pulled
	Held     Of      // of the ten minutes' steps from the first ore on, how often the hearth's band held what was so
}

// Heat is a hearth at a moment.
type Heat struct {
	At time.Duration
	C  float64
}

// Charged is a charge that was keyed.
type Charged struct {
	At  time.Duration
	Ore bool
}

// Act is what somebody did beside charging; Since is how long after the newest mishap that was then on, negative for none.
type Act struct {
	At    time.Duration
	Event entry.Event
	Since time.Duration
}

// Answered is a mishap with what was first done about it.
type Answered struct {
	Befallen
	Act    entry.Event // nil when nothing was
	ActAt  time.Duration
	Lasted time.Duration
}

// EndOf tells how a rehearsal went. An error while it is sealed.
func EndOf(entries []entry.Entry) (End, error) {
	if len(entries) == 0 || !opened(entries) {
		return End{}, errors.New("it is sealed until its bloom is out, or it is given up")
	}
	l, err := relive(entries, nil)
	if err != nil {
		return End{}, err
	}
	d := End{Number: l.number, Lit: entries[0].Happened, BloomKg: l.bloom, OreKg: l.ore, Over: seconds(l.f.Seconds()), MainBurn: seconds(l.mainBurn)}
	for _, t := range l.trace {
		if t.seconds >= l.mainBurn && l.mainBurn > 0 {
			d.True = append(d.True, Heat{seconds(t.seconds), t.HearthC})
			d.Cold = time.Duration(t.ColdMin * float64(time.Minute))
		}
	}
	if err := d.befell(entries, l); err != nil {
		return End{}, err
	}
	d.did(entries)
	d.believes(entries, l)
	return d, nil
}

// IsOpened tells whether the seal of a rehearsal is open.
func IsOpened(entries []entry.Entry) bool { return opened(entries) }

func opened(entries []entry.Entry) bool {
	for _, e := range entries {
		if e.Kind() == entry.KindOpened {
			return true
		}
	}
	return false
}

// befell holds each mishap that began against the same day, with the same keys, without it.
func (d *End) befell(entries []entry.Entry, l *Live) error {
	manner, err := mannerOf(entries)
	if err != nil {
		return err
	}
	for i, m := range l.mishaps {
		at, ok := l.f.Befalls(m)
		if !ok || at >= l.f.Seconds() || l.burning > 0 && at > l.burning {
			continue
		}
		b := Answered{Befallen: Befallen{Name: m, At: seconds(at), Began: true}}
		others := append(append([]truth.Mishap(nil), l.mishaps[:i]...), l.mishaps[i+1:]...)
		twin, err := doOver(entries, keyedOf(entries), manner, &others)
		if err != nil {
			return err
		}
		if len(l.trace) > 0 && len(twin.l.trace) > 0 {
			if harmed, harms := harm(&l.course, &twin.l.course, at, l.f.Mark()); harms {
				b.HarmAt, b.Harms = seconds(harmed), true
			}
		}
		b.Lasted = max(0, seconds(l.lasts[m])-b.At)
		d.Befell = append(d.Befell, b)
	}
	return nil
}

// remedies tell what answers a mishap (common practice).
var remedies = map[truth.Mishap]func(entry.Event) bool{
	truth.WetCharcoal:   func(ev entry.Event) bool { return weighsAMeasure(ev) || is[entry.Recipe](ev) },
	truth.ShortBuckets:  func(ev entry.Event) bool { return weighsAMeasure(ev) || is[entry.Recipe](ev) },
	truth.BlowerDying:   func(ev entry.Event) bool { return is[entry.Blast](ev) || is[entry.Pause](ev) },
	truth.TuyereBlocked: is[entry.Rod],
	truth.Bridge:        is[entry.Poke],
	truth.Crack:         func(ev entry.Event) bool { return is[entry.WallSeen](ev) || is[entry.Blast](ev) },
	truth.BadOre:        func(ev entry.Event) bool { return is[entry.Recipe](ev) || is[entry.OreHeld](ev) },
	truth.ForgottenKey:  func(ev entry.Event) bool { return is[entry.Charge](ev) }, // entered late
}

// weighsAMeasure tells whether a measure is weighed, and not the bloom at the end.
func weighsAMeasure(ev entry.Event) bool {
	w, ok := ev.(entry.Weigh)
	return ok && w.What == entry.WeighMeasure
}

func is[E entry.Event](ev entry.Event) bool {
	_, ok := ev.(E)
	return ok
}

// did goes through what was done: charges, acts, and the first that answers each mishap.
func (d *End) did(entries []entry.Entry) {
	for _, e := range entries {
		at := e.Happened.Sub(d.Lit)
		late := e.Kept.Sub(e.Happened).Abs() > 1500*time.Millisecond
		taken := e.Kept.Sub(d.Lit)
		for i := range d.Befell {
			b := &d.Befell[i]
			if b.Act == nil && taken >= b.At && remedies[b.Name](e.Event) && late == (b.Name == truth.ForgottenKey) {
				b.Act, b.ActAt = e.Event, taken
			}
		}
		if late {
			continue
		}
		switch ev := e.Event.(type) {
		case entry.Charge:
			c := Charged{At: at}
			for _, p := range ev.Parts {
				c.Ore = c.Ore || p.What == entry.Ore
			}
			d.Charges = append(d.Charges, c)
		case entry.Look:
			if e.Screen == Answers && ev.At == entry.AtPeep {
				d.Looked++
			}
		case entry.Extract:
			d.NoBloom = ev.None
		case entry.Rod, entry.Poke, entry.Tap, entry.LastOre, entry.BurnDown:
			a := Act{At: at, Event: ev, Since: -1}
			for _, b := range d.Befell {
				if at >= b.At && at <= b.At+b.Lasted+30*time.Minute && remedies[b.Name](ev) {
					a.Since = at - b.At
				}
			}
			d.Acts = append(d.Acts, a)
		}
	}
}

// pulledAt is when the bloom was taken out, since light; else when all was over.
func pulledAt(entries []entry.Entry) time.Duration {
	last := time.Duration(0)
	for _, e := range entries {
		last = max(last, e.Kept.Sub(entries[0].Happened))
		if e.Kind() == entry.KindExtract {
			return e.Kept.Sub(entries[0].Happened)
		}
	}
	return last
}

// believes reads what the screen said, each time as it was then known.
func (d *End) believes(entries []entry.Entry, l *Live) {
	s := session.Open(entries[0].Stream, entries)
	v := &solve.Solver{Grid: shaft.Coarse}
	end := d.Over
	if l.burning > 0 {
		end = seconds(l.burning)
	}
	firstOre, lastOre := time.Duration(0), time.Duration(0)
	for _, c := range d.Charges {
		if c.Ore {
			firstOre, lastOre = cmp.Or(firstOre, c.At), c.At
		}
	}
	for at := d.MainBurn.Truncate(every) + every; d.MainBurn > 0 && at <= end; at += every {
		r := read(s, v, at)
		d.Shafts = append(d.Shafts, shaftOf(r, l.course.at(at)))
		if f := r.Figure(figure.HearthTemperature); f.Known() {
			d.Believed = append(d.Believed, Heat{at, f.P50})
			if t := l.course.at(at).HearthC; firstOre > 0 && at >= firstOre && !math.IsNaN(t) {
				d.Held.Of++
				if f.P10 <= t && t <= f.P90 {
					d.Held.In++
				}
			}
		}
		if f := r.Figure(figure.BloomEnd); f.Known() && at >= lastOre && lastOre > 0 && d.Said == (physics.Band{}) {
			d.Said = f.Band
		}
	}
	if pulled := pulledAt(entries); pulled > d.MainBurn && d.MainBurn > 0 {
		at := pulled - time.Second
		d.Shafts = append(d.Shafts, shaftOf(read(s, v, at), l.course.at(at)))
	}
	whole := s.AsOf(fold.All, d.Over)
	if j, ok := whole.Job(); ok {
		whole = whole.Solved(j.Run(v))
	}
	ws := whole.Warnings()
	for i := range d.Befell {
		d.Befell[i].warn(ws)
	}
	for _, w := range ws {
		if w.Grade > rule.Note {
			d.Warnings = append(d.Warnings, w)
		}
	}
}
