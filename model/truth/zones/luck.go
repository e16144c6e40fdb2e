package zones

import (
	"math"
	"math/rand/v2"
	"slices"

	"chargehand/model/truth"
)

// luck is what comes and goes, each cause by a stream of its own.
type luck struct {
	buckets, scoops, lots, flames, blower, leak, hanging, skull, eyes, keys *rand.Rand
	apart                                                                   float64 // drawn once: whether the bloom holds together
	drifted                                                                 float64 // s since blower and leak wandered
	shut                                                                    float64 // how far the tuyere is shut, 0 to 1
	hangs                                                                   float64 // s that the burden will still hang
	stands                                                                  float64 // m3 that lay in the burning zone when it began to
	hung                                                                    float64 // s
	topOut                                                                  bool
}

func newLuck(number int64) luck {
	s := func(cause string) *rand.Rand { return stream(number, cause) }
	return luck{
		buckets: s("buckets"), scoops: s("scoops"), lots: s("lots"), flames: s("flames"), blower: s("blower"), leak: s("leak"),
		hanging: s("hanging"), skull: s("skull"), eyes: s("eyes"), keys: s("keys"), apart: s("apart").Float64(),
	}
}

// OtherLuck lets what comes and goes fall otherwise than the number has it: the same furnace on another day.
func (f *Furnace) OtherLuck(day int64) {
	was := f.luck
	f.luck = newLuck(f.number + day<<32)
	f.apart, f.drifted, f.shut, f.hangs, f.stands, f.hung, f.topOut = was.apart, was.drifted, was.shut, was.hangs, was.stands, was.hung, was.topOut
}

// air is the blast.
type air struct {
	set    float64 // l/min, as the crew set it
	wander float64 // what the blower gives of that
	leaks  float64 // what of the share that gets in has not leaked since
}

// metered is what a meter between blower and tuyere reads, l/min.
func (a *air) metered(f *Furnace) float64 {
	return a.set * a.wander * (1 - math.Pow(f.shut, 1.5)) * f.day.blower(f.seconds)
}

// flow is what gets into the fire, l/min.
func (a *air) flow(f *Furnace) float64 {
	crack := f.day.now(truth.Crack, f.seconds) * math.Min(1, f.day.ago(truth.Crack, f.seconds)/480)
	return a.metered(f) * f.AirShare * a.leaks * (1 - crack)
}

// SetBlast sets the blower so that it gives so many l/min through a clear tuyere; 0 stops it.
func (f *Furnace) SetBlast(lMin float64) { f.air.set = lMin }

// happens lets a second's chances fall.
func (f *Furnace) happens(dt float64) {
	if f.drifted += dt; f.drifted >= 60 {
		root := math.Sqrt(f.drifted / 3600)
		f.air.wander = bound(f.air.wander*math.Exp(f.BlowerDrift*root*f.blower.NormFloat64()), 0.7, 1.3)
		f.air.leaks = bound(f.air.leaks*math.Exp(f.LeakDrift*root*f.leak.NormFloat64()), 0.6, 1.25)
		f.freezes(f.drifted)
		f.drifted = 0
	}
	if !f.lit {
		return
	}
	chance := f.hanging.Float64()
	switch {
	case f.hangs > 0:
		f.hung += dt
		f.hangs -= dt
	case f.day.is(truth.Bridge, f.seconds):
		f.hang(f.day.left(truth.Bridge, f.seconds))
	case chance < f.HangRate/3600*dt && f.zone[reducing].volume() > 0.3*f.floor*f.zone[reducing].height:
		f.hang(60 * f.HangMinutes)
	}
}

func (f *Furnace) hang(seconds float64) { f.hangs, f.stands = seconds, f.zone[burning].volume() }

// freezes lets slag shut the tuyere: slowly in a hot furnace, faster in a cold one or where slag stands before it.
func (f *Furnace) freezes(dt float64) {
	rate := f.SkullRate * f.skull.ExpFloat64()
	if f.hearth.came > 0.2 {
		if f.zone[burning].kelvin() < 1423 {
			rate *= 5
		}
		if f.SlagBelow() < 0.01 {
			rate += 3
		}
		f.shut += rate * dt / 3600
	}
	if minutes := f.day.now(truth.TuyereBlocked, f.seconds); minutes > 0 {
		f.shut += dt / 60 / minutes
	}
	f.shut = bound(f.shut, 0, 0.98)
}

// Rod clears the tuyere, as far as a rod does; where slag keeps coming, half at the most.
func (f *Furnace) Rod() {
	leaves := f.RodLeaves
	if f.day.is(truth.TuyereBlocked, f.seconds) {
		leaves = math.Max(leaves, 0.5)
	}
	f.shut *= leaves
}

// Poke brings down what hangs.
func (f *Furnace) Poke() {
	f.hangs = 0
	f.day.settle(truth.Bridge, f.seconds)
}

// LightTop lights the gas at the top.
func (f *Furnace) LightTop() { f.topOut = false }

// mishap is one of the day as it was drawn. Times are s.
type mishap struct {
	truth.Mishap
	after, lasts float64 // 0: for good
	bad          float64
	settled      bool
}

// day is what goes wrong, and when the main burn began; negative before.
type day struct {
	all   []mishap
	began float64
}

func drawDay(number int64, ms []truth.Mishap) day {
	d := day{began: -1}
	for _, r := range MishapTable {
		if !slices.Contains(ms, r.What) {
			continue
		}
		s := stream(number, "mishap "+string(r.What))
		between := func(a, b float64) float64 { return a + (b-a)*s.Float64() }
		d.all = append(d.all, mishap{Mishap: r.What, after: 60 * between(r.From, r.To), lasts: 60 * between(r.Short, r.Long), bad: between(r.Mild, r.Severe)})
	}
	return d
}

// MainBurn says that the main burn begins.
func (f *Furnace) MainBurn() {
	if f.day.began < 0 {
		f.day.began = f.seconds
	}
}

func (d *day) find(m truth.Mishap) *mishap {
	for i := range d.all {
		if d.all[i].Mishap == m {
			return &d.all[i]
		}
	}
	return nil
}

// ago is how many s ago a mishap began; negative before it, or without one.
func (d *day) ago(m truth.Mishap, seconds float64) float64 {
	e := d.find(m)
	if e == nil || d.began < 0 {
		return -1
	}
	return seconds - d.began - e.after
}

// is tells whether a mishap goes on.
func (d *day) is(m truth.Mishap, seconds float64) bool {
	ago := d.ago(m, seconds)
	if ago < 0 {
		return false
	}
	e := d.find(m)
	return !e.settled && (e.lasts == 0 || ago < e.lasts)
}

// now is how bad a mishap is that goes on; 0 while it does not.
func (d *day) now(m truth.Mishap, seconds float64) float64 {
	if !d.is(m, seconds) {
		return 0
	}
	return d.find(m).bad
}

// left is how many s a mishap goes on.
func (d *day) left(m truth.Mishap, seconds float64) float64 {
	return d.find(m).lasts - d.ago(m, seconds)
}

// settle ends a mishap that goes on.
func (d *day) settle(m truth.Mishap, seconds float64) {
	if d.is(m, seconds) {
		d.find(m).settled = true
	}
}

// blower is what it gives of what it is set to: it fails within minutes and stands until it is mended.
func (d *day) blower(seconds float64) float64 {
	if minutes := d.now(truth.BlowerDying, seconds); minutes > 0 {
		return math.Max(0, 1-d.ago(truth.BlowerDying, seconds)/60/minutes)
	}
	return 1
}

// Befalls gives when a mishap of the day begins, in s since light, once the main burn has begun.
func (f *Furnace) Befalls(m truth.Mishap) (seconds float64, ok bool) {
	e := f.day.find(m)
	if e == nil || f.day.began < 0 {
		return 0, false
	}
	return f.day.began + e.after, true
}

// Befalling tells whether a mishap goes on just now.
func (f *Furnace) Befalling(m truth.Mishap) bool { return f.day.is(m, f.seconds) }

// Forgets tells whether the helper forgets to key just now.
func (f *Furnace) Forgets() bool {
	share := f.day.now(truth.ForgottenKey, f.seconds)
	return share > 0 && f.keys.Float64() < share
}
