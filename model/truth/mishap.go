package truth

import (
	"math"
	"slices"
)

// Mishap is something that goes wrong in a rehearsal. Its name stands on the wire.
type Mishap string

// The mishaps.
const (
	WetCharcoal   Mishap = "wet-charcoal"
	BlowerDying   Mishap = "blower-dying"
	TuyereBlocked Mishap = "tuyere-blocked"
	Bridge        Mishap = "bridge"
	Crack         Mishap = "crack"
	BadOre        Mishap = "bad-ore"
	ShortBuckets  Mishap = "short-buckets"
	ForgottenKey  Mishap = "forgotten-key"
)

// Mishaps are all of them.
func Mishaps() []Mishap {
	return []Mishap{WetCharcoal, BlowerDying, TuyereBlocked, Bridge, Crack, BadOre, ShortBuckets, ForgottenKey}
}

// By chance each mishap befalls one furnace in so many (assumed: so that about half of all days are calm).
const oneIn = 12

// ByChance are those that the furnace of a number has of itself.
func ByChance(number int64) []Mishap {
	var ms []Mishap
	for _, m := range Mishaps() {
		if Stream(number, "by chance "+string(m)).IntN(oneIn) == 0 {
			ms = append(ms, m)
		}
	}
	return ms
}

// event is one mishap as it was drawn: from when on, how long, how bad between 0 and 1. Times are s after the main burn
// began (assumed: an hour to three hours after; bad enough to be seen, as crews tell of them).
type event struct {
	What    Mishap
	After   float64
	Lasts   float64
	Bad     float64
	settled bool
}

// mishap are those of a day.
type mishap struct {
	all   []event
	began float64 // s, when the main burn began; negative before
}

func drawMishaps(number int64, ms []Mishap) mishap {
	day := mishap{began: -1}
	for _, m := range Mishaps() {
		if !slices.Contains(ms, m) {
			continue
		}
		r := Stream(number, "mishap "+string(m))
		day.all = append(day.all, event{What: m, After: 3600 + 7200*r.Float64(), Lasts: 60 * (25 + 35*r.Float64()), Bad: r.Float64()})
	}
	return day
}

// MainBurn says that the main burn begins.
func (f *Furnace) MainBurn() {
	if f.mishap.began < 0 {
		f.mishap.began = f.seconds
	}
}

// Befalls gives when each mishap of the day begins, in s since light, once the main burn has begun.
func (f *Furnace) Befalls(m Mishap) (seconds float64, ok bool) {
	e, found := f.mishap.find(m)
	if !found || f.mishap.began < 0 {
		return 0, false
	}
	return f.mishap.began + e.After, true
}

// Befalling tells whether a mishap goes on just now: a crack, bad ore and short buckets for good, a blower until it is mended.
func (f *Furnace) Befalling(m Mishap) bool {
	ago, e := f.mishap.since(m, f.seconds)
	switch m {
	case Crack, BadOre, ShortBuckets:
		return ago >= 0
	case BlowerDying:
		return ago >= 0 && ago < dies+e.Lasts
	case WetCharcoal:
		return ago >= 0 && ago < 2*e.Lasts
	}
	return f.mishap.is(m, f.seconds)
}

// dies is how long a blower takes to fail, s.
const dies = 900.0

func (d *mishap) find(m Mishap) (*event, bool) {
	for i := range d.all {
		if d.all[i].What == m {
			return &d.all[i], true
		}
	}
	return nil, false
}

// since is how many s ago a mishap began, and how bad it is; negative before it.
func (d *mishap) since(m Mishap, seconds float64) (ago float64, e *event) {
	e, ok := d.find(m)
	if !ok || d.began < 0 {
		return -1, &event{}
	}
	return seconds - d.began - e.After, e
}

// is tells whether a mishap goes on.
func (d *mishap) is(m Mishap, seconds float64) bool {
	ago, e := d.since(m, seconds)
	return ago >= 0 && ago < e.Lasts && !e.settled
}

// Forgets tells whether the helper forgets to key just now: nearly every other charge.
func (f *Furnace) Forgets() bool {
	return f.mishap.is(ForgottenKey, f.seconds) && f.forgets.Float64() < 0.45
}

// moisture is what wet charcoal holds over its own, on its dry mass.
func (d *mishap) moisture(seconds float64) float64 {
	if ago, e := d.since(WetCharcoal, seconds); ago >= 0 && ago < 2*e.Lasts {
		return 0.25 + 0.35*e.Bad
	}
	return 0
}

// filled is how full a bucket is.
func (d *mishap) filled(seconds float64) float64 {
	if ago, e := d.since(ShortBuckets, seconds); ago >= 0 {
		return 0.85 - 0.12*e.Bad
	}
	return 1
}

// poorer is by how much the ore holds less iron.
func (d *mishap) poorer(seconds float64) float64 {
	if ago, e := d.since(BadOre, seconds); ago >= 0 {
		return 0.10 + 0.12*e.Bad
	}
	return 0
}

// blower is what it gives of what it is set to: it fails within a quarter of an hour and stands until it is mended.
func (d *mishap) blower(seconds float64) float64 {
	ago, e := d.since(BlowerDying, seconds)
	switch {
	case ago < 0 || ago > dies+e.Lasts:
		return 1
	case ago < dies:
		return 1 - ago/dies
	}
	return 0
}

// skull is how fast the tuyere shuts beside its own pace, 1/s.
func (d *mishap) skull(seconds float64) float64 {
	if ago, e := d.since(TuyereBlocked, seconds); ago >= 0 && ago < e.Lasts {
		return (1 + e.Bad) / 1500
	}
	return 0
}

// bridges tells whether one side hangs by mishap: the tuyere side first, the other five minutes after it.
func (d *mishap) bridges(seconds float64, side int) bool {
	ago, e := d.since(Bridge, seconds)
	return ago >= 300*float64(side) && ago < e.Lasts && !e.settled
}

// lasts is how many minutes a bridge holds that nobody pokes.
func (d *mishap) lasts() float64 {
	e, _ := d.find(Bridge)
	return e.Lasts / 60
}

// poked settles a bridge that has begun.
func (d *mishap) poked(seconds float64) {
	if ago, e := d.since(Bridge, seconds); ago >= 0 {
		e.settled = true
	}
}

// tight is what a crack leaves of the air that got in; it opens within ten minutes.
func (d *mishap) tight(seconds float64) float64 {
	if ago, e := d.since(Crack, seconds); ago >= 0 {
		return 1 - (0.2+0.2*e.Bad)*math.Min(1, ago/600)
	}
	return 1
}

// cracked is by how many times more heat a cracked wall loses.
func (d *mishap) cracked(seconds float64) float64 {
	if ago, _ := d.since(Crack, seconds); ago >= 0 {
		return 1.25
	}
	return 1
}
