package solve_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
	"chargehand/physics"
)

// clock is a time of day of a published log as a moment of its smelt.
func clock(tb testing.TB, entries []entry.Entry, hhmm string) time.Duration {
	tb.Helper()
	lit := fold.Fold(entries, fold.All, 0).Lit
	t, err := time.Parse("15:04", hhmm)
	if err != nil {
		tb.Fatal(err)
	}
	return time.Date(lit.Year(), lit.Month(), lit.Day(), t.Hour(), t.Minute(), 0, 0, lit.Location()).Sub(lit)
}

func solvedAt(tb testing.TB, entries []entry.Entry, at time.Duration) solve.Solution {
	tb.Helper()
	c := fold.Trace(entries, fold.All, at)
	return new(solve.Solver).Solve(&c)
}

// 30 Nov 2016 (warehamforge.ca data page of that day, log 03), as it was kept,
// with nothing fitted. Its intervals need an air factor of 1.15 to 1.2
// (TestFitParameters in physics/shaft); ours, which leans on the usual
// 0.85, is to come within 15 % of that in the afternoon. With the fire hot it
// burns at temperatures that were read in furnaces of this kind: 1135 to 1350 C
// at the wall low down (30 Oct 2021, lowest probes), 1350 to 1450 C under the
// tuyere (Passy-les-Tours 2014), so 1135 to 1450 at 10 cm; and it falls with the
// height.
func TestTheNorseCourse(t *testing.T) {
	entries := published(t, "03", norse)
	for _, at := range []string{"14:50", "16:05", "17:30", "18:20"} {
		s := solvedAt(t, entries, clock(t, entries, at))
		if s.Status != solve.Computes || s.GuessedAir || s.GuessedSizes || s.UnknownOre {
			t.Fatalf("%s: %+v", at, s)
		}
		if f := s.AirFactor.P50; f < 1.165*0.85 || f > 1.165*1.15 {
			t.Errorf("%s: air factor %.2f", at, f)
		}
		low, middle, high := layerAt(s.Profile, 0.10), layerAt(s.Profile, 0.20), layerAt(s.Profile, 0.30)
		if c := celsius(low.WallSide); c < 1135 || c > 1450 {
			t.Errorf("%s: %.0f C at the wall 10 cm up", at, c)
		}
		if !(low.Middle > middle.Middle && middle.Middle > high.Middle) {
			t.Errorf("%s: %.0f, %.0f, %.0f K going up", at, low.Middle, middle.Middle, high.Middle)
		}
		// The shaft stays where people kept it: within half a charge of the level.
		c := fold.Trace(entries, fold.All, clock(t, entries, at))
		if level, _ := c.LevelThen(c.At); math.Abs(level.Height-s.Height) > 0.09 {
			t.Errorf("%s: burden %.2f m, level %.2f", at, s.Height, level.Height)
		}
	}
}

// The iron that went in is in the burden, the bloom or the slag, to rounding:
// FeO holds 77.7 % of iron and Fe2O3 69.9 (atomic masses).
func TestTheIronAccountCloses(t *testing.T) {
	entries := published(t, "03", norse)
	for _, at := range []string{"14:50", "17:30", "19:00"} {
		s := solvedAt(t, entries, clock(t, entries, at))
		iron := s.Hearth.Iron + 0.7773*s.Hearth.Slag.FeO + 0.6994*s.Hearth.Slag.Fe2O3
		for _, l := range s.Profile {
			iron += l.Ore.Sum()
		}
		if in := s.Totals.OreIron; math.Abs(iron-in) > 1e-3*in {
			t.Errorf("%s: %.4f kg of iron for %.4f that went in", at, iron, in)
		}
		// Ore of unknown assay is taken as roasted, 48 % of it iron: 31.7 kg by the log, 6 % of it
		// water.
		if want := s.Totals.OreIron; at == "19:00" && math.Abs(want-31.7/1.06*0.48) > 0.05 {
			t.Errorf("%.2f kg of iron went in", want)
		}
	}
}

// 30 Oct 2021 (same author, log 05): its intervals need 0.91 before the
// blast was raised at 15:12 and 0.66 after it. Followed live the factor falls,
// and starts and ends within 25 % of those.
func TestTheFactorFollowsTheDay(t *testing.T) {
	entries := published(t, "05", wind)
	before, after := solvedAt(t, entries, clock(t, entries, "14:59")), solvedAt(t, entries, clock(t, entries, "17:04"))
	a, b := before.AirFactor.P50, after.AirFactor.P50
	if !(b < a) || math.Abs(a/0.93-1) > 0.25 || math.Abs(b/0.66-1) > 0.25 {
		t.Errorf("factor %.2f at 655 l/min and %.2f at 798", a, b)
	}
}

// Without a blast on record nothing is made up: no figures until the charges
// have told the air, and a guess after that.
func TestAnUnknownBlast(t *testing.T) {
	d := newDay(norse).key(entry.Fill{Parts: entry.Parts{buckets(3)}}).wait(15 * time.Minute)
	for i := range 8 {
		d.key(charge(buckets(1)))
		s := d.fresh(d.now)
		if i < 3 && s.Status != solve.NoAir {
			t.Errorf("after %d charges: lack %d", i+1, s.Status)
		}
		if i == 7 && (s.Status != solve.Computes || !s.GuessedAir || s.AirFactor != physics.Band{}) {
			t.Errorf("after %d charges: lack %d, guessed %v, factor %v", i+1, s.Status, s.GuessedAir, s.AirFactor)
		}
		d.wait(13 * time.Minute)
	}
	d.key(entry.Blast{Gate: "9"})
	if s := d.fresh(d.now); s.Status != solve.NoAir {
		t.Errorf("another blast nobody metered: lack %d", s.Status)
	}
	d.key(blast(600))
	if s := d.fresh(d.now); s.Status != solve.Computes || !s.GuessedAir {
		t.Errorf("metered at last: lack %d, guessed %v", s.Status, s.GuessedAir)
	}
	if s := d.wait(time.Hour + time.Minute).fresh(d.now); s.GuessedAir {
		t.Error("the guess is not forgotten after an hour")
	}
}

// A fill that waited for its first charge has burned down to make room for it:
// the fire under both catches, whatever the blast.
func TestTheFireCatchesUnderALateFirstCharge(t *testing.T) {
	for _, lMin := range []float64{0, 350, 600, 900} {
		d := newDay(norse).key(entry.Fill{Parts: entry.Parts{buckets(4)}}).wait(50 * time.Minute)
		if lMin > 0 {
			d.key(blast(lMin))
		}
		d.key(charge(buckets(2))).wait(25 * time.Minute)
		s := d.fresh(d.now)
		if c := celsius(s.Hearth.Temperature); s.Status == solve.IsLost || c < 600 || s.Height > norseStack+0.05 {
			t.Errorf("at %.0f l/min: lack %d, hearth %.0f C, burden %.2f m", lMin, s.Status, c, s.Height)
		}
	}
}

const norseStack = 0.50

func TestUnknownOreIsSaid(t *testing.T) {
	d := steady(4, 12*time.Minute).key(charge(buckets(1), entry.Part{What: entry.Ore}))
	if s := d.fresh(d.now); !s.UnknownOre || s.Status != solve.Computes {
		t.Errorf("%+v", s)
	}
}

// A blast that stops cools the hearth; a bloom that is out ends it.
func TestStopAndEnd(t *testing.T) {
	d := steady(8, 12*time.Minute)
	hot := d.fresh(d.now).Hearth.Temperature
	d.key(entry.Blast{State: entry.BlastOff}).wait(30 * time.Minute)
	cold := d.fresh(d.now)
	if cold.Hearth.Temperature > hot-50 || cold.Status != solve.Computes {
		t.Errorf("hearth %.0f K before and %.0f after half an hour without a blast, lack %d", hot, cold.Hearth.Temperature, cold.Status)
	}
	if cold.TopGas.CO+cold.TopGas.CO2 != 0 {
		t.Errorf("gas over a burden that is not blown: %+v", cold.TopGas)
	}
	d.key(entry.Blast{State: entry.BlastOn}).wait(10 * time.Minute)
	if s := d.fresh(d.now); s.Status != solve.Computes || s.Hearth.Temperature < hot-300 {
		t.Errorf("hearth %.0f K ten minutes after the blast came back, lack %d", s.Hearth.Temperature, s.Status)
	}
	d.key(entry.Extract{})
	if s := d.fresh(d.now); s.Status != solve.IsOver || s.Totals.IronTaken != s.Hearth.Iron {
		t.Errorf("lack %d with the bloom out; %.3f kg of iron taken of %.3f", s.Status, s.Totals.IronTaken, s.Hearth.Iron)
	}
	if s := d.wait(time.Hour).fresh(d.now); s.Status != solve.IsOver || s.At > d.now-time.Hour {
		t.Errorf("lack %d, state of %v an hour after %v", s.Status, s.At, d.now-time.Hour)
	}
}

// The fill of unknown mass reaches the level that the estimator believes.
func TestUnknownCharcoalReachesTheLevel(t *testing.T) {
	d := newDay(norse).key(blast(600)).key(entry.Fill{Parts: entry.Parts{{What: entry.Charcoal}}})
	s := d.fresh(d.now)
	c := fold.Trace(d.entries, fold.All, d.now)
	level, ok := c.LevelThen(d.now)
	if !s.GuessedMasses || !ok || math.Abs(s.Height-level.Height) > 0.02 {
		t.Errorf("burden %.2f m, level %.2f", s.Height, level.Height)
	}
}
