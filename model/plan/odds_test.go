package plan_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/learn"
	"chargehand/model/plan"
	"chargehand/persist/smeltcsv"
	"chargehand/physics"
)

func table(t *testing.T, name string) []learn.Smelt {
	t.Helper()
	f, err := os.Open(filepath.Join("../../testdata/smelts", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	read, err := smeltcsv.Read(f, name)
	if err != nil {
		t.Fatal(err)
	}
	kept, _ := learn.From(plan.LeastOre, read.Smelts)
	return kept
}

// Of every published smelt (testdata/smelts, sources in the files), left out in turn:
// the chance claimed of reaching 10, 15, 20 and 25 % of its ore, against the share of
// them that did. The base rate, left out in turn as well, is the share of the others
// that did; over both tables the claimed chances score at most 1.02 of it.
func TestChancesOnPublishedSmelts(t *testing.T) {
	score, base := 0.0, 0.0
	for _, name := range []string{"smelts.csv", "series.csv"} {
		smelts := table(t, name)
		n := float64(len(smelts))
		var odds []plan.Odds // of each, from the others
		for i, s := range smelts {
			others := slices.Concat(smelts[:i], smelts[i+1:])
			own := learn.OwnYields(others, s.Crew, s.Mix)
			failures, made := learn.Failures(others, s.Crew)
			odds = append(odds, plan.OddsOf(plan.Grounds{Yield: learn.Yield(own), Own: len(own), None: learn.NoneRate(failures, made), Left: physics.Exact(1)}))
		}
		for _, share := range []float64{0.10, 0.15, 0.20, 0.25} {
			did := 0.0
			reached := make([]float64, len(smelts))
			for i, s := range smelts {
				if s.Bloom >= share*s.Ore {
					reached[i] = 1
				}
				did += reached[i]
			}
			claimed, brier, rate := 0.0, 0.0, 0.0
			for i, s := range smelts {
				c, b := odds[i].Chance(1, share*s.Ore, s.Ore), (did-reached[i])/(n-1)
				claimed += c
				brier += (c - reached[i]) * (c - reached[i])
				rate += (b - reached[i]) * (b - reached[i])
			}
			t.Logf("%s: at least %2.0f %% of the ore: claimed %.2f, did %2.0f of %.0f (%.2f); Brier %.3f, the base rate's %.3f", name, 100*share, claimed/n, did, n, did/n, brier/n, rate/n)
			if sd := math.Sqrt((did + 1) / (n + 2) * (1 - (did+1)/(n+2)) / n); math.Abs(claimed-did)/n > 2*sd {
				t.Errorf("%s: at %.0f %% claimed %.2f of %.2f", name, 100*share, claimed/n, did/n)
			}
			score, base = score+brier, base+rate
		}
	}
	t.Logf("over both: %.3f of the base rate's", score/base)
	if score > 1.02*base {
		t.Errorf("the chances score %.3f of the base rate's, more than 1.02", score/base)
	}
}

// A chance rises with the ore, falls with what is wanted, and never passes that of
// a bloom; several smelts give more than one.
func TestChancesRiseWithOre(t *testing.T) {
	o := plan.OddsOf(plan.Grounds{Yield: learn.PriorYield, None: 0.1, Left: physics.Exact(1)})
	for n := 1; n <= plan.MostSmelts; n++ {
		was := 0.0
		for ore := 1.0; ore < 400; ore *= 1.1 {
			c := o.Chance(n, 4, ore)
			if c < was-1e-9 || c > 1-math.Pow(0.1, float64(n))+1e-9 || c > o.Chance(n, 3, ore)-1e-9 && c > 0.001 && c < 0.98*o.OfABloom(n) || n > 1 && c < o.Chance(n-1, 4, ore)-1e-9 {
				t.Errorf("%d smelts of %.0f kg: %.3f after %.3f", n, ore, c, was)
			}
			was = c
		}
		if was < 0.98*o.OfABloom(n) {
			t.Errorf("%d smelts of much ore reach %.3f of %.3f", n, was, o.OfABloom(n))
		}
	}
	if ore, ok := o.Ore(1, 4, 0.95); ok {
		t.Errorf("%.1f kg give a chance of 0.95, and every tenth smelt gives none", ore)
	}
	ore, ok := o.Ore(1, 4, 0.5)
	if c := o.Chance(1, 4, ore); !ok || math.Abs(c-0.5) > 0.005 {
		t.Errorf("%.1f kg give %.3f, asked for 0.5", ore, c)
	}
	two, _ := o.Ore(2, 8, 0.5)
	if c := o.Chance(2, 8, two); math.Abs(c-0.5) > 0.005 {
		t.Errorf("two of %.1f kg give %.3f, asked for 0.5", two, c)
	}
}

// Yields on one mix are alike, so that two smelts spread more than two strangers
// would: about 8 of 10 chances of a bloom of the median each way stay.
func TestSumsOfAlikeSmeltsSpreadMore(t *testing.T) {
	alike := plan.OddsOf(plan.Grounds{Yield: learn.PriorYield, Left: physics.Exact(1)})
	strangers := plan.OddsOf(plan.Grounds{Yield: learn.PriorYield, Own: 1e9, Left: physics.Exact(1)})
	low := func(o plan.Odds) float64 { return 1 - o.Chance(3, 0.3, 1) } // half of what is to be expected, or less
	if a, s := low(alike), low(strangers); a < 1.3*s || s <= 0 {
		t.Errorf("alike %.3f, strangers %.3f", a, s)
	}
}

// An ore that can give no more than a tenth of itself never gives more.
func TestAnAssayBoundsTheBloom(t *testing.T) {
	o := plan.OddsOf(plan.Grounds{Yield: learn.PriorYield, None: 0.1, Most: 0.1, Left: physics.Exact(1)})
	if c := o.Chance(1, 1.1, 10); c != 0 {
		t.Errorf("11 %% of an ore that gives 10: %.3f", c)
	}
	if c := o.Chance(1, 0.9, 10); c < 0.7 {
		t.Errorf("9 %% of it: %.3f", c)
	}
}

// A billet takes about twice the bloom (14 blooms of Lindblad, Hammarede 1998).
func TestABilletTakesMoreOre(t *testing.T) {
	want := func(what entry.PieceKind) float64 {
		p := plan.Of(plan.Ask{Want: plan.Want{What: what, Kg: 2, Sure: 0.5}, Smelts: 10})
		o, ok := p.Offer()
		if !ok {
			t.Fatal(what)
		}
		return o.Ore * float64(o.Smelts)
	}
	bloom, billet, bar := want(entry.BloomPiece), want(entry.Billet), want(entry.Bar)
	if r := billet / bloom; r < 1.7 || r > 2.6 || bar <= billet {
		t.Errorf("ore for 2 kg: bloom %.1f, billet %.1f, bar %.1f", bloom, billet, bar)
	}
}

func BenchmarkOdds(b *testing.B) {
	for b.Loop() {
		plan.OddsOf(plan.Grounds{Yield: learn.PriorYield, None: 0.1, Left: plan.BilletOfBloom})
	}
}
