package compare_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"chargehand/model/compare"
	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/shelf"
)

// house is so many smelts whose blast and charge intervals are drawn, and whose yield goes
// with the blast as strongly as asked, 0 for not at all. Invented.
func house(n int, seed uint64, with float64) (all []shelf.Summary) {
	r := rand.New(rand.NewPCG(seed, 1))
	for i := range n {
		blast, free, ore := r.NormFloat64(), r.NormFloat64(), 20+r.NormFloat64()
		kg := func(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }
		all = append(all, shelf.Summary{
			ID: fmt.Sprintf("s%d", i), Phase: entry.Extracted, Lasted: 8 * time.Hour, OreDry: kg(ore), Charcoal: kg(40 + 4*r.NormFloat64()),
			Blast: entry.Some(entry.LitrePerMinute(720 + 60*blast)), Interval: entry.Some(entry.Minute(11 + r.NormFloat64())), Rise: entry.Some(entry.Minute(60 + 15*r.NormFloat64())),
			Bloom: kg(ore * (0.2 + 0.03*(with*blast+math.Sqrt(1-with*with)*free))),
		})
	}
	return all
}

// What differed most is in units of the spread of one's own: here the blast by four of
// them, and under five own smelts nothing is told.
func TestWhatDifferedMost(t *testing.T) {
	all := house(12, 3, 0)
	sd := 0.0
	for _, s := range all {
		sd += math.Pow(float64(s.Blast.Value)-720, 2)
	}
	sd = math.Sqrt(sd / 12)
	a, b := all[0], all[1]
	b = a
	b.ID, b.Blast.Value = "b", a.Blast.Value+entry.LitrePerMinute(4*sd)
	c := compare.Of([]shelf.Summary{a, b}, all)
	if len(c.Differed) == 0 || c.Differed[0].Measure != compare.Blast || math.Abs(c.Differed[0].Spreads-4) > 1 || c.Differed[1].Spreads != 0 {
		t.Errorf("%+v", c.Differed)
	}
	if c := compare.Of([]shelf.Summary{a, b}, all[:4]); len(c.Differed) != 0 || len(c.Trends) != 0 || c.Own != 4 {
		t.Errorf("of four own smelts: %+v", c)
	}
	for i := range all[:9] {
		all[i].Practice = true
	}
	if c := compare.Of([]shelf.Summary{a, b}, all); c.Own != 3 || len(c.Differed) != 0 {
		t.Errorf("practice counts: %+v", c)
	}
}

// Where nothing goes with the yield, a trend is told in about one of twenty houses at the
// most; where the blast does, it is found and named. The rates are printed.
func TestTrendsAreSeldomFalse(t *testing.T) {
	const houses = 1000
	for _, n := range []int{5, 8, 15, 40} {
		falsely, found, named := 0, 0, 0
		for i := range houses {
			if ts := compare.Trends(house(n, uint64(i), 0)); ts[0].Stands() {
				falsely++
			}
			if ts := compare.Trends(house(n, uint64(i), 0.8)); ts[0].Stands() {
				found++
				if ts[0].Measure == compare.Blast && ts[0].Rank > 0 {
					named++
				}
			}
		}
		t.Logf("%d smelts: told of nothing %d, told of a blast that goes with 0.8 %d, rightly %d, of %d", n, falsely, found, named, houses)
		if falsely > houses*8/100 {
			t.Errorf("%d smelts: a trend of nothing in %d of %d", n, falsely, houses)
		}
		if n == 40 && named < houses*95/100 {
			t.Errorf("%d smelts: found in %d of %d", n, named, houses)
		}
	}
}

// The invented smelt as a day: lined up at its first ore, with every charge.
func TestADayBeginsAtItsFirstOre(t *testing.T) {
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	d, s := compare.DayOf("demo", es), shelf.Of("demo", es)
	if len(d.Charges) != s.Charges || !d.Pull.Known || !d.BurnDown.Known || d.BurnDown.Value >= d.Pull.Value {
		t.Fatalf("%d charges of %d, %+v", len(d.Charges), s.Charges, d.Pull)
	}
	ore := 0.0
	for _, b := range d.Charges {
		if b.At < 0 && b.Ore > 0 {
			t.Errorf("ore before the first: %+v", b)
		}
		ore += b.Ore
	}
	if math.Abs(ore-float64(s.Ore.Value)) > 1e-6 || !s.Blast.Positive() || !s.Interval.Positive() || !s.Rise.Known {
		t.Errorf("%g kg of %+v; %+v %+v %+v", ore, s.Ore, s.Blast, s.Interval, s.Rise)
	}
}

func BenchmarkOf1000(b *testing.B) {
	all := house(1000, 1, 0.3)
	for b.Loop() {
		compare.Of(all[:4], all)
	}
}
