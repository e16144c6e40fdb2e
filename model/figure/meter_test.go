package figure

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

// A meter is not believed where the band of its factor lies outside of what can be, above
// all to monoxide or below half of that, and never on guesses alone.
func TestAMeterIsDisbelievedForCertainOnly(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		basis     Basis
		want      bool
	}{
		{1.02, 1.24, Estimated, true}, {0.98, 1.2, Estimated, false}, {0.3, 0.45, Estimated, true}, {0.4, 0.6, Estimated, false}, {1.02, 1.24, Guessed, false},
	} {
		r := new(Reading)
		r.Figures[MeterFactor] = Figure{Band: physics.Band{P10: c.low, P50: (c.low + c.high) / 2, P90: c.high}, Basis: c.basis}
		if r.MeterDoubted() != c.want {
			t.Errorf("%+v: doubted %v", c, r.MeterDoubted())
		}
	}
}

// The factor of a meter is that of the blower that blows: the intervals of another, and one with both,
// say nothing of it.
func TestAMeterFactorIsOfItsBlower(t *testing.T) {
	lit := time.Date(2026, 5, 9, 8, 0, 0, 0, time.UTC)
	var es []entry.Entry
	key := func(at time.Duration, ev entry.Event) {
		es = append(es, entry.Entry{Version: entry.Version, Stream: "s", Seq: uint64(len(es) + 1), Boot: "b", Mono: at, Happened: lit.Add(at), Kept: lit.Add(at), Event: ev})
	}
	bucket := entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}}}
	blow := func(name string, lMin float64) entry.Blast {
		return entry.Blast{Blower: name, Volume: entry.Some(entry.LitrePerMinute(lMin))}
	}
	key(0, entry.Light{})
	at := time.Minute
	factor := func() Figure { return MeterOf(fold.Fold(es, fold.All, at)) }
	burn := func(n int) {
		for range n {
			key(at, bucket)
			at += 10 * time.Minute
		}
	}
	key(at, blow("", 400))
	burn(6)
	first := factor()
	key(at, blow("spare", 800))
	if f := factor(); f.Known() {
		t.Errorf("the factor of a blower that has just begun is %+v", f.Band)
	}
	burn(6)
	if f := factor(); !f.Known() || math.Abs(f.P50/first.P50-0.5) > 0.01 {
		t.Errorf("the factor is %+v with a meter that reads double, %+v with the one before", f.Band, first.Band)
	}
}
