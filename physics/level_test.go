package physics_test

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"

	"chargehand/physics"
)

func TestLookAgainstKalmanByHand(t *testing.T) {
	// R. E. Kalman 1960 (J. Basic Eng. 82:35), one state, worked by hand. Prior 0.30 m with variance 0.03^2 of its own and a
	// rate error of 0.04 m: P = 0.0009 + 0.0016 = 0.0025. Mark at 0.40 m, R = 0.05^2 = 0.0025. Gain 1/2, height 0.35, P 0.00125.
	level := physics.LevelAt(0.30, 0.03).Descend(0, 0.04/600, 600)
	agree(t, "variance before", level.Variance(), 0.0025, 1e-12)
	seen := level.Observe(0.40, 0.05)
	agree(t, "height", seen.Height, 0.35, 1e-12)
	agree(t, "variance", seen.Variance(), 0.00125, 1e-12)
	// Both parts of the doubt keep half: the rate's error is still 0.02 m of it.
	agree(t, "drift", seen.Drift, 0.02, 1e-12)
	// A dip of 1 cm at 0.30: gain 0.00125/0.00135, height 0.35 - 0.05 x 25/27, P = 0.00125 x 0.0001/0.00135.
	dipped := seen.Observe(0.30, physics.DipSD)
	agree(t, "height after the dip", dipped.Height, 0.35-0.05*25/27, 1e-12)
	agree(t, "variance after the dip", dipped.Variance(), 0.00125*0.0001/0.00135, 1e-12)
}

func TestActsByHand(t *testing.T) {
	level := physics.LevelAt(0.50, 0.01)
	// 19.6 cm in 14.5 min, known to a tenth: down to 0.304 with 1.96 cm of drift.
	rate := 0.196 / 870
	sunk := level.Descend(rate, rate/10, 870)
	agree(t, "sunk", sunk.Height, 0.304, 1e-12)
	agree(t, "drift", sunk.Drift, 0.0196, 1e-12)
	charged := sunk.Add(0.196, 0.02)
	agree(t, "charged", charged.Height, 0.50, 1e-12)
	agree(t, "doubt", charged.Variance(), 0.01*0.01+0.02*0.02+0.0196*0.0196, 1e-12)
	poked := charged.Poke(0.05, 0.05)
	agree(t, "poked", poked.Height, 0.45, 1e-12)
	agree(t, "doubt of the poke", poked.Variance()-charged.Variance(), 0.0025, 1e-9)
	band := poked.Band()
	agree(t, "band", band.P90-band.P50, physics.Z90*poked.SD(), 1e-12)
	if low := physics.LevelAt(0.02, 0.10).Band(); low.P10 != 0 || low.P50 != 0.02 {
		t.Errorf("near the tuyere: got %v", low)
	}
	exact := physics.LevelAt(0.5, 0).Observe(0.4, 0)
	if exact.Height != 0.4 || exact.Variance() != 0 {
		t.Errorf("two certainties: got %v, want the later", exact)
	}
}

func TestDoubtGrowsInStepWithTime(t *testing.T) {
	start, rate := physics.LevelAt(0.5, 0), 0.2/3600
	one := start.Descend(rate, rate/5, 3600)
	agree(t, "twice the time, twice the doubt", start.Descend(rate, rate/5, 7200).SD(), 2*one.SD(), 1e-12)
	steps := start
	for range 360 {
		steps = steps.Descend(rate, rate/5, 10)
	}
	agree(t, "in 10 s steps", steps.SD(), one.SD(), 1e-9)
	agree(t, "to the same height", steps.Height, one.Height, 1e-9)
}

// TestDoubtIsTrue plays many furnaces whose rate is wrong by a fixed draw, with a charge, a poke and looks of both kinds, and
// holds the stated doubt against the errors that really came out.
func TestDoubtIsTrue(t *testing.T) {
	const (
		furnaces       = 40_000
		rate, rateSD   = 0.2 / 870, 0.03 / 870
		startSD, addSD = 0.02, 0.015
	)
	random := rand.New(rand.NewPCG(3, 4))
	var errorsEnd []float64
	var doubt float64
	for range furnaces {
		truth := 0.50 + startSD*random.NormFloat64()
		trueRate := rate + rateSD*random.NormFloat64()
		level := physics.LevelAt(0.50, startSD)
		for _, look := range []float64{physics.MarkSD, physics.DipSD, physics.MarkSD, physics.HeapedSD} {
			truth -= trueRate * 600
			level = level.Descend(rate, rateSD, 600)
			truth += 0.14 + addSD*random.NormFloat64()
			level = level.Add(0.14, addSD)
			truth -= 0.02 + 0.02*random.NormFloat64()
			level = level.Poke(0.02, 0.02)
			level = level.Observe(truth+look*random.NormFloat64(), look)
		}
		level = level.Descend(rate, rateSD, 600)
		truth -= trueRate * 600
		errorsEnd = append(errorsEnd, level.Height-truth)
		doubt = level.SD()
	}
	mean, sd := stat.MeanStdDev(errorsEnd, nil)
	agree(t, "mean error against the doubt", mean/doubt, 0, 0.02) // its own standard error is 0.005
	agree(t, "standard deviation of the errors", sd, doubt, 0.02) // 40,000 draws settle it to 0.4 %
}

func TestLevelStaysSane(t *testing.T) {
	anything := rapid.OneOf(rapid.Float64Range(-1, 2), rapid.Float64(),
		rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, math.MaxFloat64}))
	rapid.Check(t, func(t *rapid.T) {
		level := physics.LevelAt(anything.Draw(t, "height"), anything.Draw(t, "sd"))
		for range rapid.IntRange(1, 30).Draw(t, "acts") {
			before := level
			a, b, c := anything.Draw(t, "a"), anything.Draw(t, "b"), anything.Draw(t, "c")
			act := rapid.SampledFrom([]string{"descend", "add", "poke", "observe"}).Draw(t, "act")
			switch act {
			case "descend":
				level = level.Descend(a, b, c)
			case "add":
				level = level.Add(a, b)
			case "poke":
				level = level.Poke(a, b)
			case "observe":
				level = level.Observe(a, b)
			}
			v := level.Variance()
			if !(level.Height >= 0 && level.Height <= math.MaxFloat64 && v >= 0 && v <= math.MaxFloat64 && level.Drift >= 0) {
				t.Fatalf("%s(%g, %g, %g) made %v of %v", act, a, b, c, level, before)
			}
			switch {
			case act == "observe" && v > before.Variance()*(1+1e-9):
				t.Fatalf("looking at %g +- %g made the doubt grow: %v to %v", a, b, before, level)
			case act != "observe" && v < before.Variance()*(1-1e-9):
				t.Fatalf("%s made the doubt shrink without a look: %v to %v", act, before, level)
			case (act == "descend" || act == "poke") && level.Height > before.Height, act == "add" && level.Height < before.Height:
				t.Fatalf("%s moved the burden the wrong way: %v to %v", act, before, level)
			}
		}
	})
}

// charge is one charcoal charge of a published log.
type charge struct {
	at                 time.Duration // since midnight
	charcoal, ore, air float64       // kg, kg, l/min; the last reading before holds where none was noted
}

func publishedCharges(t testing.TB, name string) []charge {
	t.Helper()
	var charges []charge
	var air float64
	for _, row := range figures(t, name) {
		clock, err := time.Parse("15:04", row["clock"])
		if err != nil {
			t.Fatal(err)
		}
		if row["air_l_min"] != "" {
			air = number(t, row["air_l_min"])
		}
		charges = append(charges, charge{
			at:       time.Duration(clock.Hour())*time.Hour + time.Duration(clock.Minute())*time.Minute,
			charcoal: number(t, row["charcoal_kg"]), ore: number(t, row["ore_kg"]), air: air,
		})
	}
	return charges
}

func TestLevelOnAPublishedLog(t *testing.T) {
	// Log of 30 Nov 2016 (warehamforge.ca/ironsmelting/iron2016/10-16-B/11-16.htm): 1.92 kg a charge, bore 25 cm, stack 50 cm.
	// Charged to the mark, so just before each charge the burden stands about one charge, 19 to 20 cm, under it. The estimator
	// knows only the three intervals before, and how they scatter.
	charges := publishedCharges(t, "charges_2016-11-30.csv")
	const mark, known = 0.50, 3
	bore, bed, fuel := physics.Cylinder(0.25, 0.65), physics.DefaultBed(), physics.DefaultCharcoal()
	level := physics.LevelAt(mark, physics.MarkSD)
	var under, inBand []float64
	for i := known; i+1 < len(charges); i++ {
		now, next := charges[i], charges[i+1]
		three := make([]float64, known)
		for k := range known {
			three[k] = (charges[i-k].at - charges[i-k-1].at).Seconds()
		}
		interval, scatter := stat.MeanStdDev(three, nil)
		room := must(t)(bed.Volume(fuel.DryMass(now.charcoal), now.ore))
		thick := bore.Thickness(mark, room)
		rate := thick / interval
		before := level.Descend(rate, rate*scatter/interval, (next.at - now.at).Seconds())
		under = append(under, mark-before.Height)
		band := before.Band()
		if oneUnder := mark - thick; oneUnder >= band.P10 && oneUnder <= band.P90 {
			inBand = append(inBand, 1)
		}
		room = must(t)(bed.Volume(fuel.DryMass(next.charcoal), next.ore))
		level = before.Add(bore.Thickness(before.Height, room), 0.07*thick).Observe(mark, physics.MarkSD)
	}
	mean, sd := stat.MeanStdDev(under, nil)
	t.Logf("%d charges: %.1f cm under the mark before each, scatter %.1f cm, %.0f of them with one charge inside the band",
		len(under), 100*mean, 100*sd, stat.Mean(inBand, nil)*float64(len(inBand)))
	if mean < 0.18 || mean > 0.205 {
		t.Errorf("mean height before a charge: %.3f m under the mark, want about one charge of 0.19", mean)
	}
	for i, u := range under {
		if u < 0.12 || u > 0.28 {
			t.Errorf("charge %d: %.3f m under the mark", i, u)
		}
	}
	if len(inBand) < len(under)*7/10 {
		t.Errorf("one charge under the mark lies inside the band %d times of %d, want eight of ten or so", len(inBand), len(under))
	}
}

func BenchmarkLevelStep(b *testing.B) {
	level := physics.LevelAt(0.5, physics.MarkSD)
	for b.Loop() {
		level = level.Descend(2e-4, 2e-5, 10).Add(0.002, 0.0005).Observe(0.5, physics.MarkSD)
	}
}
