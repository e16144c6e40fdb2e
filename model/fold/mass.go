package fold

import (
	"maps"
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// How well a mass is known, as relative standard deviations.
const (
	// scaleRel is a hanging or kitchen scale outdoors (common practice).
	scaleRel = 0.02
	// guessedRel is a measure that was never weighed: 10 to 15 % between
	// charcoals (the same source).
	guessedRel = 0.15
)

// Heavier is by how much a measure of charcoal may outweigh what it was taken for
// before the cause is asked: twice what a scale outdoors errs, and a little.
const Heavier = 0.05

// Moisture of ore on the dry mass where its lot does not say. Roasted ore kept
// dry holds a few percent; an ore analogue kept 10 %, measured once at 13 %
// (Markewitz 2018; data sheet of 30 Nov 2016).
const (
	oreMoisture   = 0.06
	oreMoistureSD = 0.05
)

// Mass is the mass of some material with its spread: what varies from one
// measure to the next (Chance, a variance) and what is wrong with all of them
// alike (Common, a standard deviation).
type Mass struct {
	Kg      float64
	Chance  float64 // kg2
	Common  float64 // kg
	Guessed bool    // rests on a measure that was never weighed
	Unknown bool    // holds something of unknown mass; Kg is then the known part
	Rain    float64 // kg of it that are water over what the lot holds, which carries no ore
	RainSD  float64 // kg, how well that is known
}

// Sound is the mass without the water that came in beside what the lot holds: what a
// ratio goes by, since a damp bucket holds the same carbon.
func (m Mass) Sound() Mass {
	m.Kg, m.Common = m.Kg-m.Rain, math.Hypot(m.Common, m.RainSD)
	m.Rain, m.RainSD = 0, 0
	return m
}

// Variance is the whole spread as a variance.
func (m Mass) Variance() float64 { return m.Chance + m.Common*m.Common }

// RelVariance is the variance over the square of the mass; 0 for no mass.
func (m Mass) RelVariance() float64 {
	if m.Kg <= 0 {
		return 0
	}
	return m.Variance() / (m.Kg * m.Kg)
}

// Plus adds masses: chance adds as variances, what is common as it stands.
func (m Mass) Plus(o Mass) Mass {
	return Mass{
		Kg: m.Kg + o.Kg, Chance: m.Chance + o.Chance, Common: m.Common + o.Common,
		Guessed: m.Guessed || o.Guessed, Unknown: m.Unknown || o.Unknown,
		Rain: m.Rain + o.Rain, RainSD: m.RainSD + o.RainSD,
	}
}

// Scaled is a share of the mass.
func (m Mass) Scaled(k float64) Mass {
	m.Kg *= k
	m.Chance *= k * k
	m.Common *= k
	m.Rain *= k
	m.RainSD *= k
	return m
}

// dried is the mass without its moisture (on the dry mass, with its spread).
func (m Mass) dried(w, sd float64) Mass {
	d := m.Scaled(1 / (1 + w))
	d.Rain, d.RainSD = 0, 0
	d.Common = math.Hypot(d.Common, d.Kg*sd/(1+w))
	return d
}

// weight is what one measure holds from a moment on.
type weight struct {
	from    time.Duration
	kg      float64
	known   bool
	guessed bool
	wetter  float64 // factor on 1 + moisture, 1 for none: the same charcoal, wetter than the lot says
	unsure  float64 // the most that the logarithm of that factor may be over it, where it weighs more and nobody knows why
	what    entry.What
}

// scales knows what every measure weighs at every moment, and the lots.
type scales struct {
	weights map[string][]weight
	lots    map[string]entry.Lot
}

// newScales reads the measures of light and every weighing in force. A weighing
// holds for the whole smelt, before it too, unless keyed from now; so it counts
// whatever moment is asked about.
func newScales(light entry.Light, lines []Line) scales {
	s := scales{weights: map[string][]weight{}, lots: map[string]entry.Lot{}}
	for _, l := range light.Lots {
		s.lot(l)
	}
	for _, m := range light.Measures {
		s.name(m)
	}
	for _, l := range lines {
		switch ev := l.Event.(type) {
		case entry.MeasureNamed:
			s.name(ev.Measure)
		case entry.LotStored:
			s.lot(ev.Lot)
		case entry.Weigh:
			if ev.What == entry.WeighMeasure {
				s.weigh(ev, l.At)
			}
		}
	}
	return s
}

// lot takes in what is known of a lot. Parts name it by its uid or its name.
func (s scales) lot(l entry.Lot) {
	s.lots[l.Name] = l
	if l.UID != "" {
		s.lots[string(l.UID)] = l
	}
}

// clone is a copy that may be changed beside this one.
func (s scales) clone() scales {
	s.weights = maps.Clone(s.weights)
	for name, ws := range s.weights {
		s.weights[name] = slices.Clip(ws)
	}
	return s
}

func (s scales) name(m entry.Measure) {
	s.weights[m.Name] = []weight{{from: math.MinInt64, kg: float64(m.Mass.Value), known: m.Mass.Known, guessed: m.Guessed, wetter: 1, what: m.What}}
}

// weigh takes a measure weighed anew: of charcoal that is wetter since, fuller, or
// another, or heavier for a reason that nobody knows, which is then somewhere between
// all water and none.
func (s scales) weigh(ev entry.Weigh, at time.Duration) {
	w := weight{from: at, kg: float64(ev.Mass), known: true, wetter: 1}
	if before, ok := s.of(ev.Name, at); ok {
		w.what = before.what
		if ev.Why != entry.Other {
			w.wetter = before.wetter
		}
		switch by := w.kg / before.kg; {
		case !before.known || before.kg <= 0 || w.kg <= 0:
		case ev.Why == entry.Wetter:
			w.wetter *= by
		case ev.Why == "" && HeavierBy(before.what, before.kg, w.kg, before.guessed) > 0:
			w.unsure = before.unsure + math.Log(by)
		case ev.Why == "":
			w.unsure = before.unsure
		}
	}
	if ev.FromNow {
		s.weights[ev.Name] = append(s.weights[ev.Name], w)
		return
	}
	w.from = math.MinInt64
	s.weights[ev.Name] = []weight{w}
}

// HeavierBy is by what share a measure of charcoal outweighs what it was known to
// weigh; 0 where that is no more than Heavier, or where it was only guessed.
func HeavierBy(w entry.What, was, is float64, guessed bool) float64 {
	if w != entry.Charcoal || guessed || was <= 0 || is/was-1 <= Heavier {
		return 0
	}
	return is/was - 1
}

// of is what a measure weighs at a moment.
func (s scales) of(name string, at time.Duration) (weight, bool) {
	ws := s.weights[name]
	for i := len(ws) - 1; i >= 0; i-- {
		if ws[i].from <= at {
			return ws[i], true
		}
	}
	return weight{wetter: 1}, false
}

// part is the mass of one part as charged, and dry.
func (s scales) part(p entry.Part, at time.Duration) (charged, dry Mass) {
	w, known := s.of(p.Measure, at)
	count := float64(p.Count.Value)
	switch {
	case p.Mass.Known:
		charged.Kg = float64(p.Mass.Value)
		charged.Common = scaleRel * charged.Kg
		if p.Count.Known { // a measure of known weight, booked by weight
			charged.Chance = chance(charged.Kg, count)
		}
	case p.Count.Known && count == 0: // none, whatever it weighs
	case p.Count.Known && known && w.known:
		charged.Kg = count * w.kg
		charged.Common = scaleRel * charged.Kg
		if charged.Guessed = w.guessed; w.guessed {
			charged.Common = guessedRel * charged.Kg
		}
		charged.Chance = chance(charged.Kg, count)
	default:
		charged.Unknown = true
	}
	moist, sd := s.moisture(p)
	wetter := w.wetter * math.Exp(w.unsure/2)
	charged.Rain = charged.Kg * (1 - 1/wetter)
	charged.RainSD = charged.Kg / wetter * w.unsure / math.Sqrt(12) // anything from none to all alike
	dry = charged.dried((1+moist)*wetter-1, sd)
	dry.Common = math.Hypot(dry.Common, dry.Kg*w.unsure/math.Sqrt(12))
	return charged, dry
}

// chance is the variance of a number of measures filled one by one.
func chance(kg, count float64) float64 {
	return kg * kg * physics.MeasureRelSD * physics.MeasureRelSD / math.Max(count, 1)
}

// moisture of a part on its dry mass: the lot's, else the usual.
func (s scales) moisture(p entry.Part) (w, sd float64) {
	lot := s.lots[p.Lot]
	switch {
	case lot.Moisture.Known:
		return float64(lot.Moisture.Value), MoistureReadSD
	}
	return UsualMoisture(p.What)
}

// UsualMoisture is the moisture of a material on its dry mass where nobody says,
// with its standard deviation.
func UsualMoisture(w entry.What) (moisture, sd float64) {
	switch w {
	case entry.Charcoal:
		return physics.DefaultCharcoalMoisture, physics.CharcoalMoistureSD
	case entry.Ore:
		return oreMoisture, oreMoistureSD
	}
	return 0, 0
}

// MoistureReadSD is how well a moisture given for a lot is known: one sample
// dried over a fire (common practice).
const MoistureReadSD = 0.01

// sum adds up one material over parts.
func (s scales) sum(parts entry.Parts, w entry.What, at time.Duration) (charged, dry Mass) {
	for _, p := range parts {
		if p.What == w {
			c, d := s.part(p, at)
			charged, dry = charged.Plus(c), dry.Plus(d)
		}
	}
	return charged, dry
}
