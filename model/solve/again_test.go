package solve_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/solve"
)

// again is the invented smelt in a furnace that stood for so many hours.
func again(hours float64, left ...entry.LeftIn) *day {
	d := steady(6, 10*time.Minute)
	l := d.entries[0].Event.(entry.Light)
	l.Rested, l.LeftIn = entry.Some(entry.Hour(hours)), left
	d.entries[0].Event = l
	return d
}

// A furnace lit again 20 minutes later is hotter in the first half hour than a new one;
// one lit again after a week is as new.
func TestAFurnaceLitAgainStartsWarm(t *testing.T) {
	const at = 25 * time.Minute
	fresh, warm, week := steady(6, 10*time.Minute).fresh(at), again(1.0/3).fresh(at), again(7*24).fresh(at)
	t.Logf("top gas %.0f, %.0f, %.0f K; hearth %.0f, %.0f, %.0f", fresh.TopGas.Temperature, warm.TopGas.Temperature, week.TopGas.Temperature,
		fresh.Hearth.Temperature, warm.Hearth.Temperature, week.Hearth.Temperature)
	if warm.TopGas.Temperature < fresh.TopGas.Temperature+20 || warm.Hearth.Temperature < fresh.Hearth.Temperature+20 {
		t.Error("a warm furnace is no hotter")
	}
	if math.Abs(week.TopGas.Temperature-fresh.TopGas.Temperature) > 1 || math.Abs(week.Hearth.Temperature-fresh.Hearth.Temperature) > 1 {
		t.Error("after a week it is not as new")
	}
	if embers := again(1.0/3, entry.LeftEmbers).fresh(at); embers.Hearth.Temperature < warm.Hearth.Temperature-1 {
		t.Errorf("with embers left in the hearth is colder: %.0f K", embers.Hearth.Temperature)
	}
}

// A slag bowl that was left in takes up room under the tuyere from the start.
func TestASlagBowlLeftInCountsInTheLevel(t *testing.T) {
	const at = 25 * time.Minute
	without, with := again(20).fresh(at), again(20, entry.LeftSlag).fresh(at)
	base := float64(norse.TuyereBase.Value) / 100
	t.Logf("the slag stands %.1f and %.1f cm deep, %.1f kg", 100*without.Bath.P50, 100*with.Bath.P50, with.Hearth.Slag.Sum())
	if with.Bath.P50 < without.Bath.P50+base/4 || with.Hearth.Slag.Sum() < 1 || with.Status != solve.Computes {
		t.Errorf("%.3f m with and %.3f m without", with.Bath.P50, without.Bath.P50)
	}
}
