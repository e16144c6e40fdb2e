package plan_test

import (
	"math"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/learn"
	"chargehand/model/plan"
	"chargehand/physics"
)

func needed(t *testing.T, p plan.Plan, need plan.Need) plan.Needed {
	t.Helper()
	for _, n := range p.Needs {
		if n.Need == need {
			return n
		}
	}
	t.Fatalf("nothing is said of %s", need)
	return plan.Needed{}
}

func asked(change func(*plan.Ask)) plan.Plan {
	a := plan.Ask{Want: plan.Want{What: entry.BloomPiece, Kg: 4, Sure: 0.5}, Smelts: 10, Furnace: furnace(25, 50)}
	if change != nil {
		change(&a)
	}
	return plan.Of(a)
}

// What a change does to the needs, in the direction and by the amount of the rule.
func TestNeedsFollowTheRules(t *testing.T) {
	usual := asked(nil)
	ratio := func(p plan.Plan, n plan.Need) float64 { return needed(t, p, n).Band.P50 / needed(t, usual, n).Band.P50 }
	for _, c := range []struct {
		name, rule string
		change     func(*plan.Ask)
		need       plan.Need
		low, high  float64
	}{
		{"a bore of 20 cm", "burning goes with the air, the air with the area (Markewitz 2015): 25/20 squared", func(a *plan.Ask) { a.Furnace = furnace(20, 50) }, plan.NeedHours, 1.25, 1.56},
		{"a bore of 30 cm", "the same: 25/30 squared", func(a *plan.Ask) { a.Furnace = furnace(30, 50) }, plan.NeedHours, 0.69, 0.9},
		{"a bore of 30 cm takes more to fill", "volume, 30/25 squared of some 7 kg", func(a *plan.Ask) { a.Furnace = furnace(30, 50) }, plan.NeedCharcoal, 1.03, 1.15},
		{"twice the bloom", "the chance goes by ore x yield: twice the ore", func(a *plan.Ask) { a.Kg = 8 }, plan.NeedOreRoasted, 1.97, 2.03},
		{"ore that can give a tenth at most", "its iron less what its slag takes bounds the yield: more than 4 / 0.1", func(a *plan.Ask) { a.Ore.Most = 0.1 }, plan.NeedOreRoasted, 1.7, 2.2},
		{"an ore that can give half its mass", "published smelts do not show that rich ore gives more: nothing changes", func(a *plan.Ask) { a.Ore.Most = 0.5 }, plan.NeedOreRoasted, 0.999, 1.03},
		{"a tenth of fines", "sieved out: 1 / 0.9", func(a *plan.Ask) { a.Fines = 0.1 }, plan.NeedCharcoal, 1.11, 1.112},
		{"twice the blast that is advised", "half the minutes a kg", func(a *plan.Ask) { a.Blast = physics.Exact(2 * 1.35 * math.Pi / 4 * 625) }, plan.NeedHours, 0.55, 0.75},
		{"own smelts at a third of the ore", "the mean of 0.20 and six of 0.33", func(a *plan.Ask) { a.Yields = []float64{0.33, 0.33, 0.33, 0.33, 0.33, 0.33} }, plan.NeedOreRoasted, 0.55, 0.7},
	} {
		if r := ratio(asked(c.change), c.need); r < c.low || r > c.high {
			t.Errorf("%s: %s is %.3f of the usual, want %.3f to %.3f (%s)", c.name, c.need, r, c.low, c.high, c.rule)
		}
	}
}

// A built furnace takes no clay, a bloom no forge.
func TestWhatIsThereIsNotNeeded(t *testing.T) {
	p := asked(func(a *plan.Ask) { a.Built = true })
	if n := needed(t, p, plan.NeedClay); n.Band.P90 != 0 {
		t.Errorf("clay %+v", n)
	}
	if n := needed(t, p, plan.NeedCharcoalForge); n.Band.P90 != 0 {
		t.Errorf("forge %+v", n)
	}
	if n := needed(t, asked(func(a *plan.Ask) { a.What = entry.Bar }), plan.NeedCharcoalForge); n.Band.P50 <= 0 || n.Basis != entry.BasisGuessed {
		t.Errorf("forge of a bar %+v", n)
	}
}

// What is counted and is less than the need is said; what nobody keyed is not.
func TestWhatThereIsIsCompared(t *testing.T) {
	p := asked(func(a *plan.Ask) {
		a.Left = map[plan.Need]float64{plan.NeedOreRoasted: 5, plan.NeedCharcoal: 500, plan.NeedClay: 0}
	})
	if len(p.TooShort) != 1 || p.TooShort[0].Need != plan.NeedOreRoasted || p.TooShort[0].Left != 5 {
		t.Errorf("short of %+v", p.TooShort)
	}
}

// Before a crew has smelted twice, one smelt does not give even odds however much ore
// goes in, and two do; a certainty that three do not give is said so.
func TestACertaintyOutOfReach(t *testing.T) {
	first := plan.Of(plan.Ask{Want: plan.Want{What: entry.BloomPiece, Kg: 3, Sure: 0.5}})
	if first.Offers[0].Ore != 0 || first.Offers[0].Chance >= 0.5 || first.Offers[1].Ore == 0 || first.Taken != 1 {
		t.Errorf("first smelts: %+v", first.Offers)
	}
	never := plan.Of(plan.Ask{Want: plan.Want{What: entry.BloomPiece, Kg: 3, Sure: 0.999}})
	if _, ok := never.Offer(); ok || len(never.Ways) != 0 {
		t.Errorf("%+v", never.Offers)
	}
	for _, n := range never.Needs {
		if n.Known {
			t.Errorf("%s is said", n.Need)
		}
	}
}

// Every way to charge brings in the ore and ends over it; a bolder one is shorter.
func TestWaysBringInTheOre(t *testing.T) {
	for ore := plan.LeastOre + 0.0; ore <= plan.MostOre; ore += 1.7 {
		ways := plan.Chargings(ore, 6.4, 1.8, 6)
		for i, w := range ways {
			if math.Abs(w.Ore-ore) > 0.01 {
				t.Errorf("%s brings in %.2f of %.2f kg", w.Name, w.Ore, ore)
			}
			last := w.Steps[len(w.Steps)-2]
			if last.Does != entry.StepLastOre || last.Ore != 0 || w.Steps[0].Does != entry.StepFill {
				t.Errorf("%s: %+v", w.Name, w.Steps)
			}
			if i > 0 && w.Minutes > ways[i-1].Minutes {
				t.Errorf("%s takes longer than %s", w.Name, ways[i-1].Name)
			}
		}
	}
}

// The solver sees a plan for a usual furnace through, hot enough for slag to run, and
// a furnace with a tenth of its air cold.
func TestThePlanIsSolved(t *testing.T) {
	p := asked(nil)
	for _, w := range p.Ways {
		f := p.Foresee(w)
		t.Logf("%s: %.0f min, hearth %.0f (%.0f to %.0f) C, stiff %.2f, fears %v", w.Name, w.Minutes, f.Hearth.P50-273.15, f.Hearth.P10-273.15, f.Hearth.P90-273.15, f.Stiff, f.Fears)
		if !f.Known || f.Hearth.P50 < 1300 || f.Hearth.P50 > 1900 {
			t.Errorf("%s: %+v", w.Name, f)
		}
	}
	warm := p.Foresee(p.Ways[1])
	small := asked(func(a *plan.Ask) { a.Blast = physics.Exact(70) })
	if f := small.Foresee(small.Ways[1]); f.Known && f.Hearth.P50 > warm.Hearth.P50-50 {
		t.Errorf("a tenth of the air: %.0f, with all %.0f", f.Hearth.P50, warm.Hearth.P50)
	}
}

func BenchmarkThreeWaysSolved(b *testing.B) {
	p := asked(nil)
	for b.Loop() {
		for _, w := range p.Ways {
			p.Foresee(w)
		}
	}
}

// Own billets reach the plan of a bar from what the house's smelts teach.
func TestBilletsOfTheHouseReachThePlan(t *testing.T) {
	l := learn.Lessons{Yields: []float64{0.19}, Billets: []float64{0.15, 0.15, 0.15}, Smelts: 3}
	a := plan.Ask{Want: plan.Want{What: entry.Bar, Kg: 1, Sure: 0.5}}.FromHouse(house.State{}, nil, nil, l)
	if !a.ByBillet() {
		t.Fatal("the billets are not in the ask")
	}
	l.Billets = nil
	without := plan.Ask{Want: a.Want}.FromHouse(house.State{}, nil, nil, l)
	with, _ := plan.Of(a).Offer()
	none, _ := plan.Of(without).Offer()
	if with.Ore <= 0 || with.Ore >= none.Ore {
		t.Errorf("%v kg of ore with rich own billets, %v without", with.Ore, none.Ore)
	}
}
