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
	}
}

// Scaled is a share of the mass.
func (m Mass) Scaled(k float64) Mass {
	m.Kg *= k
	m.Chance *= k * k
	m.Common *= k
	return m
}

// dried is the mass without its moisture (on the dry mass, with its spread).
func (m Mass) dried(w, sd float64) Mass {
	d := m.Scaled(1 / (1 + w))
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
	s.weights[m.Name] = []weight{{from: math.MinInt64, kg: float64(m.Mass.Value), known: m.Mass.Known, guessed: m.Guessed, wetter: 1}}
}

func (s scales) weigh(ev entry.Weigh, at time.Duration) {
	w := weight{from: at, kg: float64(ev.Mass), known: true, wetter: 1}
	before, ok := s.of(ev.Name, at)
	if ok && before.known && before.kg > 0 && ev.Why == entry.Wetter {
		w.wetter = before.wetter * w.kg / before.kg
	}
	if ev.FromNow {
		s.weights[ev.Name] = append(s.weights[ev.Name], w)
		return
	}
	w.from = math.MinInt64
	s.weights[ev.Name] = []weight{w}
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
	return charged, charged.dried((1+moist)*w.wetter-1, sd)
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
