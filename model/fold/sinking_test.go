package fold

import (
	"testing"

	"chargehand/model/entry"
)

// steady is charged a bucket each ten minutes up to a minute, to the mark.
func steady(last float64) *day {
	d := lit(shaft(), bucket(1.8))
	d.key(30, blown(500))
	d.key(40, entry.Fill{Parts: entry.Parts{coal(3)}})
	for at := 50.0; at <= last; at += 10 {
		d.key(at, charge(coal(1)))
	}
	return d
}

// bucketful is how much of the stack of 50 cm a bucket of 1.8 kg takes in a bore of 25 cm, m.
const bucketful = 0.173

// People charge when there is room for a charge: while none comes, the burden is believed to have sunk by not much more than one,
// and less and less is known of it.
func TestNoChargeTellsOfTheLevel(t *testing.T) {
	d := steady(120)
	before := d.state(120).Level
	if l := d.state(129).Level; before.Height-l.Height < 0.75*bucketful {
		t.Errorf("9 min after a charge of 10 min it has sunk by %.1f cm", 100*(before.Height-l.Height))
	}
	for _, minute := range []float64{130, 135, 140} {
		l := d.state(minute).Level
		sunk, plain := before.Height-l.Height, (minute-120)/10*bucketful
		if sunk > 1.45*bucketful || minute >= 135 && sunk > 0.9*plain || minute >= 140 && sunk > 0.75*plain {
			t.Errorf("no charge for %v min: sunk by %.1f cm, where %.1f would have been room for a charge, %.1f at the usual pace", minute-120, 100*sunk, 100*bucketful, 100*plain)
		}
		if b := l.Band(); minute >= 135 && b.P90-b.P10 < bucketful/2 {
			t.Errorf("no charge for %v min, and the level known to %.1f to %.1f cm", minute-120, 100*b.P10, 100*b.P90)
		}
	}
	// In the end it is nobody's guess whether anybody minds the fire.
	if b := d.state(150).Level.Band(); b.P10 > 0.1 || b.P90 < 0.25 {
		t.Errorf("no charge for 30 min, and the level known to %.1f to %.1f cm", 100*b.P10, 100*b.P90)
	}
	// A charge that comes late finds room for itself, not for three.
	d.key(150, charge(coal(1)))
	if l := d.state(150).Level; l.Height < 0.42 {
		t.Errorf("%.1f cm after a charge to the mark at 50 that came late", 100*l.Height)
	}
}

// A dip that finds the burden high says that it sinks slowly: it is not believed to fall at the usual pace from there, nor is
// the next charge waited for so soon. Once the tuyere is rodded nobody knows.
func TestADipTellsOfThePace(t *testing.T) {
	dipped := steady(120)
	dipped.key(130, entry.Dip{AboveTuyere: entry.Some(entry.Centimetre(46))})
	at := dipped.state(130).Level.Height
	slow := dipped.state(140).Level
	if fell := at - slow.Height; fell > bucketful/2 || fell < 0 {
		t.Errorf("in 10 min after a dip at 46 cm it sinks by %.1f cm; in 10 min before it sank by 4", 100*fell)
	}
	if b := slow.Band(); b.P90-b.P10 < 0.04 {
		t.Errorf("10 min after the dip the level is known to %.1f to %.1f cm", 100*b.P10, 100*b.P90)
	}
	dipped.key(130.5, entry.Rod{})
	if l := dipped.state(140).Level; l.Height > slow.Height-bucketful/4 {
		t.Errorf("rodded after the dip, it stands at %.1f cm; not rodded at %.1f", 100*l.Height, 100*slow.Height)
	}
}

// After one interval of three times the usual the next is either as long or as before: the level in between is not known.
func TestAfterALongIntervalThePaceIsInDoubt(t *testing.T) {
	d, regular := steady(120), steady(150)
	d.key(150, charge(coal(1)))
	a, b := d.state(158).Level, regular.state(158).Level
	if a.SD() < 1.2*b.SD() || a.Height < b.Height {
		t.Errorf("8 min after a charge that took 30: %.1f cm (sd %.1f); on a regular day %.1f (sd %.1f)", 100*a.Height, 100*a.SD(), 100*b.Height, 100*b.SD())
	}
}

// Nobody waits for a charge in the burn-down or a pause: the burden sinks on.
func TestWhereNoChargeIsWaitedForTheBurdenSinks(t *testing.T) {
	for name, ev := range map[string]entry.Event{"burn-down": entry.BurnDown{}, "pause": entry.Pause{}} {
		d := steady(120)
		waits := d.state(150).Level.Height
		d.key(120.5, ev)
		if l := d.state(150).Level; l.Height > 0.1 || l.Height >= waits {
			t.Errorf("%s: %.1f cm after 30 min without a charge, %.1f where one was waited for", name, 100*l.Height, 100*waits)
		}
	}
}

// A regular day is believed at the mark after each charge: waiting moves nothing there.
func TestRegularChargesReachTheMark(t *testing.T) {
	if l := steady(200).state(200).Level; l.Height < 0.47 || l.Height > 0.51 {
		t.Errorf("%.1f cm after a charge to the mark at 50", 100*l.Height)
	}
}

// The two goes of a charge take up one room.
func TestGoesOfAChargeAreOneRoom(t *testing.T) {
	d := steady(110)
	d.key(120, charge(coal(0.5)))
	d.key(121, charge(coal(0.5)))
	whole := steady(120)
	if a, b := d.state(140).Level.Height, whole.state(140).Level.Height; a < b-0.02 || a > b+0.04 {
		t.Errorf("%.1f cm after a charge in two goes, %.1f after one in one", 100*a, 100*b)
	}
}

// A metered blast that fell burns less; how much less is not sure.
func TestTheBurdenSinksWithTheBlast(t *testing.T) {
	usual, less, unmetered := steady(120), steady(120), steady(120)
	less.key(121, blown(250))
	unmetered.key(121, entry.Blast{Gate: "half shut"})
	a, b, c := usual.state(128).Level, less.state(128).Level, unmetered.state(128).Level
	if b.Height < a.Height+0.03 || b.SD() <= a.SD() {
		t.Errorf("at half the blast it stands at %.1f cm (sd %.1f), at all of it at %.1f (sd %.1f)", 100*b.Height, 100*b.SD(), 100*a.Height, 100*a.SD())
	}
	if c != a {
		t.Errorf("a blast that nobody metered: %v, want %v", c, a)
	}
}
