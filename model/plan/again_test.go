package plan_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/plan"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
)

// planned is a published log at a wall time of its day, with what was charged after it as
// the plan that was keyed for it, the moment it is and what it was on its clock.
func planned(t *testing.T, number, clock string, later ...entry.RecipeStep) *fold.Timeline {
	t.Helper()
	es := logcsvtest.Read(t, number, logcsv.Options{})
	whole := fold.Trace(es, fold.All, 24*time.Hour)
	var at time.Duration
	var recipe entry.Recipe
	for l := range whole.Lines.All() {
		wall := whole.Lit.Add(l.At).Format("15:04")
		if wall == clock {
			at = l.At
		}
		if c, ok := l.Event.(entry.Charge); ok && wall > clock {
			recipe.Ramp = append(recipe.Ramp, entry.RecipeStep{Charges: 1, Parts: c.Parts})
		}
	}
	recipe.Ramp = append(recipe.Ramp, later...)
	recipe.Next = recipe.Ramp[0].Parts
	last := es[len(es)-1]
	e := entry.Entry{Version: entry.Version, Stream: last.Stream, Seq: last.Seq + 1, Happened: whole.Lit.Add(at), Kept: whole.Lit.Add(at), Event: recipe}
	c := fold.Trace(append(es, e), fold.All, at)
	return &c
}

func endOf(t *testing.T, ends []plan.End, n plan.EndName) plan.End {
	t.Helper()
	i := slices.IndexFunc(ends, func(e plan.End) bool { return e.Name == n })
	if i < 0 {
		t.Fatalf("no end %q of %d", n, len(ends))
	}
	return ends[i]
}

func within(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if math.Abs(got-want) > by {
		t.Errorf("%s: %.2f, want %.2f", what, got, want)
	}
}

// Log 03 (Markewitz, course of 30 Nov 2016) took 31.7 kg of ore, the last of it at 18:21,
// and was pulled at 19:05. At 15:10, with 6.5 kg in, 40 % of all its ore (12.7 kg) turns out
// bad: 12.5 kg may still go in. The plan as it was lacks what is bad; shorter it takes the
// charges of 3 x 1.5 and 4 x 2 kg, seven more and one of charcoal over them; leaner as many
// charges as planned.
func TestAgainWithBadOre(t *testing.T) {
	c := planned(t, "03", "15:10")
	ends := plan.AgainFrom(c, plan.Remains{Ore: entry.Some(12.5)})
	late, shorter, leaner := endOf(t, ends, plan.EndLate), endOf(t, ends, plan.EndShorter), endOf(t, ends, plan.EndLeaner)
	clock := func(at time.Duration) float64 {
		wall := c.Lit.Add(at)
		return float64(wall.Hour()) + float64(wall.Minute())/60
	}
	within(t, "ore as planned", late.Ore.Kg, 31.7, 0.01)
	within(t, "charcoal as planned", late.Charcoal.Kg, 55.68, 0.01)
	within(t, "short by", late.Short[entry.Ore], 12.7, 0.01)
	within(t, "last ore as planned", clock(late.LastOre), 18.35, 0.35) // the log: 18:21
	within(t, "pulled as planned", clock(late.Pull), 19.08, 0.35)      // the log: 19:05
	if !slices.Contains(late.Fears, plan.FearOre) {
		t.Errorf("fears %v", late.Fears)
	}
	within(t, "ore shorter", shorter.Ore.Kg, 19, 0.01)
	within(t, "charcoal shorter", shorter.Charcoal.Kg, 55.68-6*1.92, 0.01)
	if gone := late.Pull - shorter.Pull; gone < 70*time.Minute || gone > 100*time.Minute {
		t.Errorf("six charges fewer are %v sooner", gone)
	}
	within(t, "ore leaner", leaner.Ore.Kg, 19, 0.06)
	if leaner.Ore.Kg > 19.001 || leaner.Pull != late.Pull || slices.Contains(shorter.Fears, plan.FearOre) || slices.Contains(leaner.Fears, plan.FearOre) {
		t.Errorf("leaner %+v, shorter fears %v", leaner, shorter.Fears)
	}
}

// Log 05 (Markewitz, 30 Oct 2021) stands at 16:58 with four charges of ore in. Of a plan of
// eight more with ore and one over them it is half an hour late: to be out when promised
// three charges of some 14 minutes have to go, and with them 3 kg of ore.
func TestAgainHalfAnHourLate(t *testing.T) {
	part := func(w entry.What, kg entry.Kilogram) entry.Part {
		return entry.Part{What: w, Mass: entry.Some(kg)}
	}
	c := planned(t, "05", "16:58",
		entry.RecipeStep{Charges: 8, Parts: entry.Parts{part(entry.Charcoal, 1.9), part(entry.Ore, 1)}},
		entry.RecipeStep{Does: entry.StepLastOre, Charges: 1, Parts: entry.Parts{part(entry.Charcoal, 1.9)}})
	asPlanned := endOf(t, plan.AgainFrom(c, plan.Remains{}), plan.EndLate)
	promised := asPlanned.Pull - 30*time.Minute
	c.Light.Plan = &entry.PlanTaken{Promised: map[string]entry.Estimate{plan.PromisedHours: {P50: entry.Some(entry.Number(promised.Hours())), Unit: "h"}}}
	ends := plan.AgainFrom(c, plan.Remains{})
	late, shorter, leaner := endOf(t, ends, plan.EndLate), endOf(t, ends, plan.EndShorter), endOf(t, ends, plan.EndLeaner)
	within(t, "minutes late", (late.Pull - promised).Minutes(), 30, 0.01)
	if shorter.Pull > promised || shorter.Pull < promised-15*time.Minute {
		t.Errorf("shorter is out at %v, promised %v", shorter.Pull, promised)
	}
	within(t, "ore as planned", late.Ore.Kg, 12, 0.01)
	within(t, "ore shorter", shorter.Ore.Kg, 9, 0.01)
	within(t, "ore leaner", leaner.Ore.Kg, 4+6, 0.01)
	if leaner.Pull != late.Pull || !slices.Equal(shorter.Steps[len(shorter.Steps)-1].Parts, entry.Parts{part(entry.Charcoal, 1.9)}) {
		t.Errorf("leaner out at %v, shorter ends %+v", leaner.Pull, shorter.Steps)
	}
	// With light for two hours more the plan cannot be kept, and the rest ends by then.
	until := c.At + 2*time.Hour
	for _, e := range plan.AgainFrom(c, plan.Remains{Until: until}) {
		if dark := slices.Contains(e.Fears, plan.FearDark); dark != (e.Name == plan.EndLate) || e.Name != plan.EndLate && e.Pull > until {
			t.Errorf("%s: out at %v of %v, fears %v", e.Name, e.Pull, until, e.Fears)
		}
	}
}

// Charcoal that does not last shortens the rest; no plan, no ends.
func TestAgainWithLittleCharcoal(t *testing.T) {
	c := planned(t, "03", "15:10")
	for _, e := range plan.AgainFrom(c, plan.Remains{Charcoal: entry.Some(5 * 1.92)}) {
		kg := e.Charcoal.Kg - c.Charcoal.Charged.Kg
		if is := e.Short[entry.Charcoal] > 0; is != (e.Name == plan.EndLate) || !is && math.Abs(kg-5*1.92) > 0.01 {
			t.Errorf("%s takes %.2f kg more of %.2f", e.Name, kg, 5*1.92)
		}
	}
	f := fold.NewTimeline(c.About())
	if ends := plan.AgainFrom(&f, plan.Remains{}); ends != nil {
		t.Errorf("without a plan %d ends", len(ends))
	}
}
