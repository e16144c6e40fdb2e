package fold

import (
	"testing"
	"time"

	"chargehand/model/entry"
)

// day builds the entries of an invented smelt, minute by minute, as a person
// would key them on a machine with one boot clock.
type day struct {
	entries []entry.Entry
	boot    string
	booted  time.Time     // wall time, as that clock told it, at which the boot clock began
	drift   time.Duration // what the wall clock has been stepped by since
}

var noon = entry.Wall(time.Date(2026, 5, 9, 12, 0, 0, 0, time.FixedZone("", 2*3600)))

func lit(f entry.Furnace, measures ...entry.Measure) *day {
	d := &day{boot: "one", booted: noon.Add(-time.Hour)}
	d.key(0, entry.Light{UID: "u", Furnace: f, Measures: measures})
	return d
}

// key takes an entry down at so many minutes after noon, true time.
func (d *day) key(minute float64, ev entry.Event) uint64 { return d.late(minute, minute, ev) }

// late takes an entry down at one minute that happened at another.
func (d *day) late(minute, happened float64, ev entry.Event) uint64 {
	wall := noon.Add(minutes(minute) + d.drift)
	d.entries = append(d.entries, entry.Entry{
		Version: 1, Stream: "s", Seq: uint64(len(d.entries) + 1), Kept: wall, Boot: d.boot,
		Mono: noon.Add(minutes(minute)).Sub(d.booted), Happened: noon.Add(minutes(happened) + d.drift), Event: ev,
	})
	return uint64(len(d.entries))
}

// restart is another start of the machine; its clock may be wrong by so much.
func (d *day) restart(boot string, minute float64, wrong time.Duration) {
	d.boot, d.booted, d.drift = boot, noon.Add(minutes(minute)), wrong
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

func ref(seq uint64) entry.Ref { return entry.Ref{Seq: seq} }

func bucket(kg float64) entry.Measure {
	return entry.Measure{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(kg))}
}

func coal(buckets float64) entry.Part {
	return entry.Part{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(buckets))}
}

func ore(kg float64) entry.Part {
	return entry.Part{What: entry.Ore, Mass: entry.Some(entry.Kilogram(kg))}
}

func charge(parts ...entry.Part) entry.Charge { return entry.Charge{Parts: parts} }

func (d *day) state(minute float64) State { return Fold(d.entries, All, minutes(minute)) }

func TestStrikesAndAmendments(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	c := d.key(10, charge(coal(1)))
	count := func(want int, why string) {
		t.Helper()
		if got := len(d.state(1000).Charges); got != want {
			t.Errorf("%s: %d charges, want %d", why, got, want)
		}
	}
	count(1, "as keyed")
	s := d.key(11, entry.Strike{Target: ref(c)})
	count(0, "struck")
	s2 := d.key(12, entry.Strike{Target: ref(s)})
	count(1, "the striking struck")
	d.key(13, entry.Strike{Target: ref(s2)})
	count(0, "and that struck too")
	d.key(14, entry.Amend{Target: ref(c), Event: charge(coal(3))})
	count(1, "amended after it was struck: the last holds")
	if kg := d.state(1000).Charcoal.Charged.Kg; kg != 6 {
		t.Errorf("amended to 3 buckets of 2 kg, got %v kg", kg)
	}
	d.key(15, entry.Strike{Target: ref(99)})
	count(1, "a strike at nothing strikes nothing")
}

func TestAnAmendmentOfAnAmendment(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	c := d.key(10, charge(coal(1)))
	a := d.key(11, entry.Amend{Target: ref(c), Event: charge(coal(2))})
	d.key(12, entry.Amend{Target: ref(a), Event: entry.Amend{Target: ref(c), Event: charge(coal(4)), Happened: noon.Add(minutes(8))}})
	s := d.state(1000)
	if len(s.Charges) != 1 || s.Charges[0].Measures != 4 || s.Charges[0].At != minutes(8) {
		t.Errorf("got %+v", s.Charges)
	}
}

func TestALateEntryStandsWhereItHappened(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	d.key(10, charge(coal(1)))
	d.key(30, charge(coal(1)))
	d.late(31, 20, charge(coal(0.5)))
	cs := d.state(1000).Charges
	if len(cs) != 3 || cs[1].At != minutes(20) || cs[1].Measures != 0.5 {
		t.Errorf("got %+v", cs)
	}
	if got := len(Fold(d.entries, 3, minutes(1000)).Charges); got != 2 {
		t.Errorf("as known by entry 3 there were %d charges, want 2", got)
	}
	if k := KnownAt(d.entries, minutes(30.5)); k != 3 {
		t.Errorf("at minute 30.5 entry %d was the last known, want 3", k)
	}
}

// Wall and boot clock are read one after the other. What was typed as ten past stands
// at ten past, late or amended, and not a millisecond before it.
func TestATimeThatWasTypedStandsAsTyped(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	d.late(31, 10, charge(coal(1)))
	c := d.key(40, charge(coal(1)))
	d.key(41, entry.Amend{Target: ref(c), Event: charge(coal(2)), Happened: noon.Add(minutes(20)), Uncertain: minutes(0.5)})
	d.entries[1].Uncertain = minutes(0.5)
	for i := range d.entries[1:] {
		d.entries[i+1].Mono -= 2 * time.Millisecond
	}
	cs := d.state(1000).Charges
	if len(cs) != 2 || cs[0].At != minutes(10) || cs[1].At != minutes(20) {
		t.Errorf("typed as 10 and 20 min after light, they stand at %+v", cs)
	}
}

// The light is taken down a breath after it begins; from its very beginning
// there is a fire to see.
func TestTheLightIsKnownFromItsBeginning(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	d.key(10, charge(coal(1)))
	d.entries[0].Kept = d.entries[0].Kept.Add(7 * time.Millisecond)
	d.entries[0].Mono += 7 * time.Millisecond
	if k := KnownAt(d.entries, 0); k != 1 {
		t.Errorf("at light entry %d was the last known, want 1", k)
	}
	if s := Fold(d.entries, KnownAt(d.entries, 0), 0); s.Phase == "" {
		t.Error("no fire is lit at light")
	}
}

func TestASteppedWallClockScramblesNothing(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	d.key(10, charge(coal(1)))
	d.drift = -25 * time.Minute // set back
	d.key(20, entry.ClockJump{ByMs: d.drift.Milliseconds()})
	d.key(30, charge(coal(1)))
	d.late(41, 40, charge(coal(1)))
	for i, want := range []float64{10, 30, 40} {
		if at := d.state(1000).Charges[i].At; at != minutes(want) {
			t.Errorf("charge %d at %v, want minute %v", i+1, at, want)
		}
	}
}

func TestARestartGoesByWallTimeLessItsSteps(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	d.drift = 23 * time.Minute // the clock had been 23 min slow and was put right
	d.key(10, entry.ClockJump{ByMs: d.drift.Milliseconds()})
	d.restart("two", 50, 23*time.Minute)
	d.key(60, charge(coal(1)))
	if at := d.state(1000).Charges[0].At; at != minutes(60) {
		t.Errorf("after the restart a charge of minute 60 stands at %v", at)
	}
}

func TestABoardThatWokeWithAWrongTime(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	d.key(30, charge(coal(1)))
	d.restart("two", 34, -48*time.Minute) // no battery clock: it wakes before its last entry
	d.key(35, charge(coal(1)))
	d.key(36, charge(coal(0.5)))
	if cs := d.state(1000).Charges; cs[1].At != minutes(30) || cs[2].At != minutes(31) {
		t.Errorf("before its clock was set the order must hold, got %v and %v", cs[1].At, cs[2].At)
	}
	d.drift = 0
	d.key(37, entry.ClockJump{ByMs: (48 * time.Minute).Milliseconds(), ShiftMs: (48 * time.Minute).Milliseconds()})
	d.key(50, charge(coal(1)))
	for i, want := range []float64{30, 35, 36, 50} {
		if at := d.state(1000).Charges[i].At; at != minutes(want) {
			t.Errorf("charge %d at %v, want minute %v", i+1, at, want)
		}
	}
}

func TestReweighing(t *testing.T) {
	d := lit(entry.Furnace{}, entry.Measure{Name: "bucket", What: entry.Charcoal})
	d.key(10, charge(coal(1)))
	d.key(20, charge(coal(1)))
	if m := d.state(25).Charcoal.Charged; !m.Unknown || m.Kg != 0 {
		t.Errorf("two buckets of unknown weight give %+v", m)
	}
	d.key(90, entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 1.9})
	if m := d.state(25).Charcoal.Charged; m.Unknown || m.Kg != 3.8 {
		t.Errorf("weighed afterwards it counts for the whole smelt, got %+v", m)
	}
	d.key(100, entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 2.5, FromNow: true})
	d.key(110, charge(coal(1)))
	if kg := d.state(120).Charcoal.Charged.Kg; !near(kg, 1.9+1.9+2.5) {
		t.Errorf("from now only: %v kg", kg)
	}
}

func TestADampBucketHoldsTheSameCarbon(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(1.8))
	d.key(10, charge(coal(1)))
	before := d.state(1000).Charcoal
	w := d.key(20, entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 2.1, Why: entry.Wetter})
	wet := d.state(1000).Charcoal
	if wet.Charged.Kg != 2.1 || !near(wet.Dry.Kg, before.Dry.Kg) {
		t.Errorf("wetter: charged %v, dry %v, was %v", wet.Charged.Kg, wet.Dry.Kg, before.Dry.Kg)
	}
	d.key(21, entry.Amend{Target: ref(w), Event: entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 2.1, Why: entry.Fuller}})
	if full := d.state(1000).Charcoal; !near(full.Dry.Kg, before.Dry.Kg*2.1/1.8) {
		t.Errorf("fuller: dry %v, was %v", full.Dry.Kg, before.Dry.Kg)
	}
}

func TestOreJoinsItsCharcoal(t *testing.T) {
	keyed := func(under bool) []Charge {
		d := lit(entry.Furnace{OreUnder: under}, bucket(2))
		d.key(5, charge(ore(0.3)))
		d.key(10, charge(coal(1)))
		d.key(12, charge(ore(0.4)))
		d.key(14, charge(ore(0.5)))
		d.key(20, charge(coal(1), ore(1)))
		d.key(22, charge(ore(0.1)))
		return d.state(1000).Charges
	}
	for _, c := range []struct {
		under bool
		want  []float64
	}{{false, []float64{1.2, 1.1}}, {true, []float64{0.3, 1.9}}} {
		cs := keyed(c.under)
		for i, want := range c.want {
			if !near(cs[i].Ore.Charged.Kg, want) {
				t.Errorf("ore under %v: charge %d has %v kg ore, want %v", c.under, i+1, cs[i].Ore.Charged.Kg, want)
			}
		}
	}
}

func TestPhasesFollowTheActs(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	d.key(20, entry.Fill{})
	d.key(60, charge(coal(1)))
	d.key(70, entry.Fill{}) // topping up with rough charcoal
	d.key(80, entry.OreHeld{})
	d.key(90, charge(coal(1), ore(1)))
	d.key(100, entry.BurnDown{})
	d.key(130, entry.Extract{})
	for minute, want := range map[float64]entry.Phase{
		1: entry.Preheat, 25: entry.Filling, 65: entry.MainBurn, 75: entry.MainBurn, 85: entry.OreOff,
		95: entry.MainBurn, 101: entry.BurnsDown, 200: entry.Extracted,
	} {
		if s := d.state(minute); s.Phase != want {
			t.Errorf("minute %v: %s, want %s", minute, s.Phase, want)
		}
	}
	if end := End(d.entries); end != minutes(130) {
		t.Errorf("the end is %v", end)
	}
}

func TestTheRampIsFollowed(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	d.key(1, entry.Recipe{Ramp: []entry.RecipeStep{{Charges: 2, Parts: entry.Parts{coal(1), ore(1)}}, {Charges: 1, Parts: entry.Parts{coal(1), ore(2)}}}})
	next := func(minute, want float64) {
		t.Helper()
		var got float64
		for _, p := range d.state(minute).Recipe {
			if p.What == entry.Ore {
				got = p.Mass.Kg
			}
		}
		if got != want {
			t.Errorf("minute %v: next ore %v, want %v", minute, got, want)
		}
	}
	next(2, 1)
	d.key(10, charge(coal(1), ore(1)))
	next(11, 1)
	d.key(20, charge(coal(1), ore(1)))
	next(21, 2)
	d.key(30, charge(coal(1), ore(2)))
	next(31, 2)
	d.key(40, entry.LastOre{})
	next(41, 0)
}

func TestBlastWhatIsKnown(t *testing.T) {
	d := lit(entry.Furnace{})
	d.key(0, entry.Blast{Volume: entry.Some(entry.LitrePerMinute(600))})
	d.key(10, entry.Blast{Pressure: entry.Some(entry.Pascal(900))})
	d.key(20, entry.Blast{State: entry.BlastOff})
	d.key(30, entry.Blast{State: entry.BlastOn})
	d.key(40, entry.Blast{Gate: "8"})
	s := d.state(1000)
	for _, c := range []struct {
		from, to, litres float64
		known            bool
	}{{0, 20, 12000, true}, {10, 40, 12000, true}, {20, 30, 0, true}, {39, 41, 600, false}} {
		litres, known := s.Blown(minutes(c.from), minutes(c.to))
		if !near(litres, c.litres) || known != c.known {
			t.Errorf("minutes %v to %v: %v l, known %v", c.from, c.to, litres, known)
		}
	}
}

func TestADoubledChargeIsSeen(t *testing.T) {
	d := lit(entry.Furnace{}, bucket(2))
	for _, m := range []float64{10, 22, 34, 36} {
		d.key(m, charge(coal(1), ore(1)))
	}
	s := d.state(1000)
	cs := s.Charges
	if cs[2].Double || !cs[3].Double {
		t.Errorf("the fourth within 2 min of the third: %v %v", cs[2].Double, cs[3].Double)
	}
	if s.Pace.Usual() != minutes(12) {
		t.Errorf("usual %v, want 12 min", s.Pace.Usual())
	}
}

func TestChargesKeyedAtOnceLeaveTheLevelWithinTheFurnace(t *testing.T) {
	d := lit(entry.Furnace{Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(50))}, bucket(2))
	for i := range 4 {
		d.key(10+float64(i)/600, charge(coal(1)))
	}
	if h := d.state(12).Level.Band(); h.P90 > 1 || h.P50 < 0.2 {
		t.Errorf("two minutes after four charges in a third of a second the burden stands at %+v m", h)
	}
}

func TestAnEmptyStream(t *testing.T) {
	if s := Fold(nil, All, 0); s.Phase != "" || s.Lines.Len() != 0 {
		t.Errorf("got %+v", s)
	}
	if KnownAt(nil, 0) != 0 || End(nil) != 0 || ElapsedAt(nil, entry.Stamp{}) != 0 {
		t.Error("an empty stream has no moments")
	}
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }
