package fold

import (
	"testing"

	"chargehand/model/entry"
)

var cm25 = entry.Some(entry.Centimetre(25))

func shaft() entry.Furnace {
	return entry.Furnace{Bore: cm25, Stack: entry.Some(entry.Centimetre(50)), Rim: entry.Some(entry.Centimetre(55))}
}

func blown(lMin float64) entry.Blast {
	return entry.Blast{Volume: entry.Some(entry.LitrePerMinute(lMin))}
}

// Two buckets top a new fill up, four and six minutes after the first; a blast of 650
// l/min burns 9.6 kg an hour at most (39 m3 of air over 4.8 m3 a kg of carbon of which
// charcoal holds 0.85; rules of thumb, air to burn carbon to CO). What would read as 27
// and 18 kg/h is no interval; the next bucket, twelve minutes on, ends the first one.
func TestToppingUpANewFillIsNoInterval(t *testing.T) {
	for name, air := range map[string][]entry.Event{"metered": {blown(650)}, "by ear": {entry.Blast{State: entry.BlastOn}}} {
		d := lit(shaft(), bucket(1.8))
		d.key(50, entry.Fill{Parts: entry.Parts{coal(3)}})
		for _, ev := range air {
			d.key(51, ev)
		}
		for _, at := range []float64{60, 64, 70} {
			d.key(at, charge(coal(1)))
		}
		if b, ok := d.state(75).Burning(); ok {
			t.Errorf("%s: burns %.1f kg in %.2f h before any interval", name, b.Charcoal.Charged.Kg, b.Hours)
		}
		if began := d.state(75).Pace.Began(); began != minutes(70) {
			t.Errorf("%s: the interval began at %v", name, began)
		}
		d.key(82, charge(coal(1)))
		b, ok := d.state(83).Burning()
		if !ok || b.Intervals != 1 || b.Charcoal.Charged.Kg != 1.8 || b.Hours != 0.2 {
			t.Errorf("%s: burns %+v, %v", name, b, ok)
		}
	}
}

// What the blast can burn is an interval, however short; with ore in it a charge is
// one; and of a measure that nobody weighed nothing is said.
func TestWhatIsNoTopUp(t *testing.T) {
	for name, c := range map[string]struct {
		bucket float64
		parts  entry.Parts
		apart  float64
	}{
		"a bucket in nine minutes": {1.8, entry.Parts{coal(1)}, 9},
		"with ore":                 {1.8, entry.Parts{coal(1), ore(1)}, 4},
		"not weighed":              {0, entry.Parts{coal(1)}, 4},
	} {
		d := lit(shaft())
		if c.bucket > 0 {
			d = lit(shaft(), bucket(c.bucket))
		}
		d.key(50, entry.Fill{Parts: entry.Parts{coal(3)}})
		d.key(51, blown(650))
		d.key(60, charge(c.parts...))
		d.key(60+c.apart, charge(c.parts...))
		if b, ok := d.state(90).Burning(); !ok || b.Intervals != 1 {
			t.Errorf("%s: %+v, %v", name, b, ok)
		}
	}
}

// A fill is a look at the level like a charge: to the mark, unless it was said
// otherwise.
func TestAFillIsALookAtTheLevel(t *testing.T) {
	d := lit(shaft(), bucket(1.8))
	d.key(30, blown(500))
	f := d.key(40, entry.Fill{Parts: entry.Parts{coal(2)}})
	if s := d.state(40); !s.HasLevel || s.Level.Height < 0.45 || s.Level.SD() > 0.06 {
		t.Errorf("%.0f cm, sd %.0f, after a fill to the mark at 50", 100*s.Level.Height, 100*s.Level.SD())
	}
	d.key(40.1, entry.Level{Charge: ref(f), Remark: entry.NotToMark})
	if s := d.state(40.2); s.Level.Height > 0.40 {
		t.Errorf("%.0f cm after a fill of 3.6 kg that was not to the mark", 100*s.Level.Height)
	}
}

// A shaft is filled a bucket at a time: after the first two of 1.5 kg, some 14 cm each in a stack
// of 50, another has room, so that they are not to the mark.
func TestAFillABucketAtATime(t *testing.T) {
	d := lit(shaft(), bucket(1.5))
	for n, most := range []float64{0.20, 0.35, 0.55} {
		at := 40 + float64(n)/10
		d.key(at, entry.Fill{Parts: entry.Parts{coal(1)}})
		if s := d.state(at + 0.05); s.Level.Height > most {
			t.Errorf("%.0f cm after %d buckets of 1.5 kg", 100*s.Level.Height, n+1)
		}
	}
	if s := d.state(41); s.Level.Height < 0.45 {
		t.Errorf("%.0f cm after the last of three, to the mark at 50", 100*s.Level.Height)
	}
}

// The burden never stands above the rim; where that was not given, not above a heap
// on the mark. Three buckets of 2 kg at once fill 24 cm each of a bore of 25.
func TestTheBurdenStandsNotAboveTheRim(t *testing.T) {
	for name, most := range map[string]float64{"rim at 55": 0.55, "no rim": 0.60} {
		f := shaft()
		if name == "no rim" {
			f.Rim = entry.None[entry.Centimetre]()
		}
		d := lit(f, bucket(2))
		c := d.key(10, charge(coal(3)))
		d.key(10.1, entry.Level{Charge: ref(c), Remark: entry.Heaped})
		for i := range 3 {
			c := d.key(10.2+float64(i)/10, charge(coal(3)))
			d.key(10.25+float64(i)/10, entry.Level{Charge: ref(c), Remark: entry.NotToMark})
		}
		if s := d.state(10.6); s.Level.Height > most+1e-9 {
			t.Errorf("%s: %.0f cm", name, 100*s.Level.Height)
		}
	}
}

func TestUnfilled(t *testing.T) {
	d := lit(shaft(), bucket(2))
	if !d.state(1).Unfilled() {
		t.Error("lit, and nothing filled")
	}
	d.key(5, entry.PhaseSet{Phase: entry.Filling})
	if !d.state(6).Unfilled() {
		t.Error("only said to be filling")
	}
	d.key(7, entry.Fill{})
	if d.state(8).Unfilled() {
		t.Error("filled")
	}
}
