package rehearse

import (
	"crypto/sha256"
	"encoding/hex"
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

// Judged are the figures that are held against the truth.
var Judged = []figure.Name{figure.StackHeight, figure.HearthTemperature, figure.NextCharge, figure.OreComeDown}

// Befallen is a mishap of a day, with what became of it. Times are on the rehearsal's clock.
type Befallen struct {
	Name   truth.Mishap
	At     time.Duration
	Began  bool          // the day came that far
	HarmAt time.Duration // when it had done harm, against the same day without it; see Harms
	Harms  bool
	Warned time.Duration // when a warning of it was raised, at or after At; see IsWarned
	Rule   rule.ID
	IsWarned,
	Loud bool // a look or an act; else a note
	Untold bool // nothing that was keyed up to the harm told the day from the same day without it
}

// Lead is how long before the harm the warning came; negative after it.
func (b Befallen) Lead() time.Duration { return b.HarmAt - b.Warned }

// Of counts how many of so many the band held.
type Of struct{ In, Of int }

// Day is a rehearsal that is over: what was keyed, what the adviser said of it, and what was true.
type Day struct {
	Number   int64
	Mishaps  []Befallen
	Entries  []entry.Entry
	Warnings []rule.Warning
	BloomKg  float64
	OreKg    float64 // as charged by the crew's scoops
	// Believed and True are of one moment: the last charge with ore after which another one came.
	At       time.Duration
	Believed map[figure.Name]physics.Band // those that were known
	True     map[figure.Name]float64
	Inside   map[figure.Name]Of // of every ten minutes from the first ore on; of the next charge, of every charge
	End      *figure.Reading
	crew     *crew
	Hash     string
}

// Options of a rehearsal.
type Options struct {
	Noise  float64  // by how much all that varies within a day is multiplied; 0 is 1
	Chance bool     // the mishaps came by chance: the seal does not name them
	By     Answerer // the furnace that answers; the usual one if none is named
	Heeds  bool     // the crew goes by the advice of the next hour
	twin   *crew    // the same day without mishaps, where it was worked already
}

// Run rehearses unattended: the day of a furnace number with some mishaps. The same number, mishaps and noise give the same
// entries, byte for byte.
func Run(number int64, mishaps []truth.Mishap, o Options) (Day, error) {
	if o.Noise == 0 {
		o.Noise = 1
	}
	by, err := o.By.known()
	if err != nil {
		return Day{}, err
	}
	c := by.crew(number, o.Noise, mishaps)
	c.chosen, c.heeds = !o.Chance, o.Heeds
	if err := c.work(); err != nil {
		return Day{}, err
	}
	d := Day{Number: number, Entries: c.entries, BloomKg: c.bloom, OreKg: c.ore, Inside: map[figure.Name]Of{}, crew: c}
	if err := d.seal(); err != nil {
		return Day{}, err
	}
	for _, m := range mishaps {
		b := Befallen{Name: m}
		at, ok := c.f.Befalls(m)
		b.At, b.Began = seconds(at), ok && at < c.over
		d.Mishaps = append(d.Mishaps, b)
	}
	if len(mishaps) > 0 {
		twin := o.twin
		if twin == nil {
			twin = by.crew(number, o.Noise, nil)
			if err := twin.work(); err != nil {
				return Day{}, err
			}
		}
		for i := range d.Mishaps {
			if b := &d.Mishaps[i]; b.Began {
				if at, ok := harm(&c.course, &twin.course, b.At.Seconds(), c.f.Mark()); ok {
					b.HarmAt, b.Harms = seconds(at), true
					b.Untold = c.untold(twin, *b)
				}
			}
		}
	}
	d.judge(c)
	return d, nil
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

// seal hashes what was keyed, as it is kept.
func (d *Day) seal() error {
	h := sha256.New()
	for _, e := range d.Entries {
		line, err := entry.Encode(e)
		if err != nil {
			return err
		}
		h.Write(line)
		h.Write([]byte{'\n'})
	}
	d.Hash = hex.EncodeToString(h.Sum(nil))
	return nil
}

// every is how often the figures are held against the truth.
const every = 10 * time.Minute

// judge opens the adviser's session on what was keyed and holds it against what was true: its figures as they were seen at
// each moment, with what was known then.
func (d *Day) judge(c *crew) {
	s := session.Open(c.stream, d.Entries)
	v := &solve.Solver{Grid: shaft.Coarse}
	end := seconds(c.over)
	if c.burning > 0 {
		end = seconds(c.burning)
	}
	show, next := d.shows(c)
	charge := 0
	for at := seconds(c.firstOre).Truncate(every) + every; c.firstOre > 0 && at < end; at += every {
		for charge < len(c.keyedAt) && seconds(c.keyedAt[charge]) < at {
			d.due(s, c, charge)
			charge++
		}
		d.hold(read(s, v, at), c.at(at))
		if show > at-every && show <= at {
			d.showing(read(s, v, at), c.at(at), next-at)
		}
	}
	whole := s.AsOf(fold.All, seconds(c.over))
	if j, ok := whole.Job(); ok {
		whole = whole.Solved(j.Run(v))
	}
	d.Warnings, d.End = whole.Warnings(), whole.Reading()
	for i := range d.Mishaps {
		d.Mishaps[i].warn(d.Warnings)
	}
}

// read is the session at a moment, as it was seen, solved.
func read(s session.Session, v *solve.Solver, at time.Duration) *figure.Reading {
	p := s.AsOf(s.KnownAt(at), at)
	if j, ok := p.Job(); ok {
		p = p.Solved(j.Run(v))
	}
	return p.Reading()
}

// at is the truth at a moment.
func (c *course) at(at time.Duration) truth.Truth {
	i := min(len(c.trace)-1, max(0, int(at/time.Minute)-1))
	return c.trace[i].Truth
}

// hold counts whether the bands of a moment hold the truth.
func (d *Day) hold(r *figure.Reading, t truth.Truth) {
	for n, v := range map[figure.Name]float64{figure.StackHeight: t.StackCm, figure.HearthTemperature: t.HearthC, figure.OreComeDown: t.OreDown} {
		d.count(n, r.Figure(n), v)
	}
}

func (d *Day) count(n figure.Name, f figure.Figure, v float64) {
	if !f.Known() || math.IsNaN(v) {
		return
	}
	o := d.Inside[n]
	o.Of++
	if f.P10 <= v && v <= f.P90 {
		o.In++
	}
	d.Inside[n] = o
}

// due holds the forecast made at a charge, with ore in the furnace, against the charge that truly came next. A forgotten key
// makes the forecast no worse: the charge came all the same.
func (d *Day) due(s session.Session, c *crew, charge int) {
	at := c.keyedAt[charge]
	if at < c.firstOre {
		return
	}
	if next, ok := c.chargeAfter(at); ok {
		moment := seconds(at) + time.Second
		r := s.AsOf(s.KnownAt(moment), moment).Reading()
		d.count(figure.NextCharge, r.Figure(figure.NextCharge), (next-moment.Seconds())/60)
	}
}

func (c *crew) chargeAfter(at float64) (float64, bool) {
	for _, t := range c.chargesAt {
		if t > at {
			return t, true
		}
	}
	return 0, false
}

// shows is the moment that Believed and True are of: of the ten minutes' steps the last one before a charge that came while
// there was ore to charge; with when that charge came.
func (d *Day) shows(c *crew) (at, next time.Duration) {
	if n := len(c.chargesAt); n >= 3 {
		next = seconds(c.chargesAt[n-2])
		at = (next - time.Second).Truncate(every)
	}
	return at, next
}

// showing fills Believed and True.
func (d *Day) showing(r *figure.Reading, t truth.Truth, next time.Duration) {
	d.At, d.Believed, d.True = r.At, map[figure.Name]physics.Band{}, map[figure.Name]float64{
		figure.StackHeight: t.StackCm, figure.HearthTemperature: t.HearthC, figure.NextCharge: next.Minutes(), figure.OreComeDown: t.OreDown,
	}
	for _, n := range Judged {
		if f := r.Figure(n); f.Known() {
			d.Believed[n] = f.Band
		}
	}
}
