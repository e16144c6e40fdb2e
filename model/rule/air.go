package rule

import (
	"math"
	"time"
)

// What every smelter knows of the air over the bore. Published smelts with a bloom lie
// outside of the usual rule too, so it is looked at only where the burn agrees.
const (
	// LeastAir and MostAir are the air in l/min per cm2 of bore beyond which a burn that
	// agrees is warned of; a tenth of them inside is well again. They are a choice, no
	// published bounds: a quarter less than the least of the published smelts with a bloom
	// (0.80), and over all of these but one (2.1; the one blew 2.9). plan.UsedBlast has
	// what was used, with its sources.
	LeastAir, MostAir = 0.6, 2.2
	airMargin         = 0.1
	// airHolds is how long it must have blown so: bellows crews change, gates are tried.
	airHolds = 10 * time.Minute
)

// airOver is the blast over the bore in l/min per cm2, as far as both are known and the
// meter is believed.
func (m *moment) airOver() (float64, bool) {
	f := m.c.Light.Furnace
	b, ok := m.blast()
	if !ok || b.Off || !b.Volume.Positive() || !f.Bore.Positive() || f.Guessed || !m.charging() || m.factor.odd {
		return 0, false
	}
	cm := float64(f.Bore.Value)
	return float64(b.Volume.Value) / (math.Pi / 4 * cm * cm), true
}

// airWeak: little air, and the burn says so.
func airWeak(m *moment) (Evidence, bool) {
	air, known := m.airOver()
	each, timed := m.measure()
	return airEvidence(air, each), known && timed && air < LeastAir && each > slowMeasure
}

// airStrong: much air, and the burn says so.
func airStrong(m *moment) (Evidence, bool) {
	air, known := m.airOver()
	each, timed := m.measure()
	return airEvidence(air, each), known && timed && air > MostAir && each < fastMeasure
}

func airEvidence(air, each float64) Evidence {
	return Evidence{number("air", air, PerArea), number("each", each, Minutes), number("least", LeastAir, PerArea), number("most", MostAir, PerArea)}
}

// airWell: the air within the bounds again, or a burn like any other.
func airWell(m *moment, w Warning) bool {
	air, known := m.airOver()
	each, timed := m.measure()
	if !known || !timed {
		return true
	}
	if w.Rule == AirWeak {
		return air > LeastAir*(1+airMargin) || each < slowAgain
	}
	return air < MostAir*(1-airMargin) || each > fastAgain
}

// airOdd: the air alone. Told once; good smelts were made with as much.
func airOdd(m *moment) (Evidence, bool) {
	_, weak := airWeak(m)
	_, strong := airStrong(m)
	air, known := m.airOver()
	return airEvidence(air, 0), known && !weak && !strong && (air < LeastAir || air > MostAir)
}

func airUsual(m *moment, w Warning) bool {
	air, known := m.airOver()
	return toldLongEnough(m, w) || !known || air >= LeastAir && air <= MostAir
}
