package plan_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/plan"
)

// What is to be done before the day comes earliest first, five lines at most, and each only
// where something asks for it.
func TestByWhen(t *testing.T) {
	bare := asked(nil).ByWhen(house.State{}, nil)
	for i := range bare {
		if i > 0 && bare[i].Before > bare[i-1].Before {
			t.Errorf("%+v after %+v", bare[i], bare[i-1])
		}
	}
	if len(bare) != 5 || bare[0].Errand != plan.BuildIt || bare[1].Errand != plan.DryIt {
		t.Errorf("of nothing: %+v", bare)
	}
	built := house.Furnace{Versions: []house.Version{{Furnace: furnace(25, 50)}}, Dryings: []house.Drying{{Drying: entry.Drying{Fires: entry.Some(entry.Count(2))}}}}
	p := asked(func(a *plan.Ask) {
		a.Built, a.Blast = true, plan.Metered(700)
		a.Left = map[plan.Need]float64{plan.NeedCharcoal: 10, plan.NeedOreRoasted: 500}
	})
	h := house.State{Measures: []entry.Measure{{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}}}
	due := p.ByWhen(h, &built)
	take := needed(t, p, plan.NeedCharcoal).Band.P50
	if len(due) != 2 || due[0].Errand != plan.BurnForIt || due[0].Times != int(math.Ceil((take-10)/15)) || math.Abs(due[0].Kg-(take-10)) > 1e-9 || due[1].Errand != plan.BreakAll {
		t.Errorf("charcoal alone is short, of %.1f kg: %+v", take, due)
	}
	// Own burns say how many it takes.
	h.Lots = []house.Lot{{Lot: entry.Lot{Material: entry.LotCharcoal}, Changes: []house.Change{{Does: entry.Burnt, Dry: house.Mass{Kg: take}}}}}
	if due := p.ByWhen(h, &built); due[0].Times != 1 {
		t.Errorf("with burns of %.0f kg: %+v", take, due[0])
	}
}

// The day, the crew and the room for slag bound the ore of a smelt; a furnace that is tapped
// has room.
func TestCeilings(t *testing.T) {
	of := func(p plan.Plan, by plan.CeilingOf) float64 {
		for _, c := range p.Ceilings() {
			if c.Of == by {
				return c.Ore
			}
		}
		return -1
	}
	p := asked(func(a *plan.Ask) { a.Until = 7 * time.Hour })
	most := of(p, plan.ByTheDay)
	if most < plan.LeastOre || most >= plan.MostOre {
		t.Fatalf("in seven hours %.0f kg", most)
	}
	for ore, fits := range map[float64]bool{most: true, most + 1: false} {
		way := plan.Chargings(ore, p.Shaft.Fill(), p.Bucket, p.Pace.P50)[1]
		if is := p.Hours(way).P50 <= 7; is != fits {
			t.Errorf("%.0f kg take %.2f h of 7", ore, p.Hours(way).P50)
		}
	}
	if longer := of(asked(func(a *plan.Ask) { a.Until = 9 * time.Hour }), plan.ByTheDay); longer <= most {
		t.Errorf("%.0f kg in nine hours, %.0f in seven", longer, most)
	}
	bowl, tapped := asked(nil), asked(func(a *plan.Ask) { a.Furnace.Practice = entry.SlagTap })
	w, _ := bowl.Usual()
	slag := bowl.Slag(w, plan.Foreseen{}).Of.Sum() / w.Ore
	if room := of(bowl, plan.BySlag); math.Abs(room*slag-3*bowl.Shaft.Below) > 3*slag || of(tapped, plan.BySlag) != -1 {
		t.Errorf("%.0f kg of ore leave %.1f kg of slag in %.1f l; tapped %.0f", room, room*slag, bowl.Shaft.Below, of(tapped, plan.BySlag))
	}
	if of(bowl, plan.ByTheCrew) != -1 || of(asked(func(a *plan.Ask) { a.Smelts = 0 }), plan.ByTheCrew) != 25 {
		t.Error("15 to 25 kg are advised for a first smelt, and for no other")
	}
}

// The ore rises as a person had it, and all of it goes in.
func TestOreRisesAsKeyed(t *testing.T) {
	r := plan.Rise{Before: 3, First: 0.5, Step: 0.25, Every: 2, Most: 1}
	p := asked(func(a *plan.Ask) { a.Rises = map[string]plan.Rise{"usual": r} })
	was := asked(nil)
	way, ok := p.Usual()
	if !ok || way.Name != plan.Own || math.Abs(way.Ore-was.Ways[1].Ore) > 0.01 {
		t.Fatalf("%+v of %.2f kg", way, was.Ways[1].Ore)
	}
	var got []plan.Step
	for _, s := range way.Steps {
		if s.Ore > 0 {
			got = append(got, s)
		}
	}
	for i, want := range []plan.Step{{Charges: 2, Ore: 0.5}, {Charges: 2, Ore: 0.75}, {Ore: 1}} {
		if got[i].Ore != want.Ore || want.Charges > 0 && got[i].Charges != want.Charges {
			t.Errorf("step %d: %+v", i, got[i])
		}
	}
	if way.Steps[1].Charges != 3 || p.Ways[0].Name != "careful" || p.Ways[2].Name != "bold" {
		t.Errorf("%+v", p.Ways)
	}
	if back := plan.RiseOf(way); back.Before != r.Before || back.First != r.First || back.Step != r.Step || back.Every != r.Every || back.Most != r.Most {
		t.Errorf("%+v read back as %+v", r, back)
	}
	// The strangest rise still ends.
	for _, r := range []plan.Rise{{}, {First: 20, Most: 1}, {First: 0.1, Step: 0.001, Every: 1, Most: 100}, {Before: -3, Every: -1, Step: -1}} {
		p := asked(func(a *plan.Ask) { a.Rises = map[string]plan.Rise{"bold": r} })
		if w := p.Ways[2]; math.Abs(w.Ore-was.Ways[2].Ore) > 0.01 || len(w.Steps) > 50 {
			t.Errorf("%+v: %.2f kg in %d steps", r, w.Ore, len(w.Steps))
		}
	}
}

// Eight plausible furnaces are asked one after the other; the band holds the middle, and a
// ninth changes nothing.
func TestBandOverPlausibleFurnaces(t *testing.T) {
	p := asked(nil)
	f := p.Foresee(p.Ways[1])
	for n := range plan.BandFurnaces {
		if f.Over.Whole() {
			t.Fatalf("whole after %d", n)
		}
		f = p.Widen(p.Ways[1], f)
	}
	b := f.Over.Hearth()
	if !f.Over.Whole() || b.P10 > f.Hearth.P50+50 || b.P90 < f.Hearth.P50-50 || b.P90 <= b.P10 || b.P10 < 1200 || b.P90 > 2000 {
		t.Errorf("%+v about %.0f", b, f.Hearth.P50)
	}
	if all := f.Band(); all.P10 > f.Hearth.P10 || all.P90 < f.Hearth.P90 {
		t.Errorf("%+v is narrower than %+v alone", all, f.Hearth)
	}
	if more := p.Widen(p.Ways[1], f); len(more.Over.Hearths) != plan.BandFurnaces {
		t.Error("asked beyond the eighth")
	}
	if none := p.Widen(p.Ways[1], plan.Foreseen{}); none.Known || len(none.Over.Hearths) != 0 {
		t.Errorf("of nothing: %+v", none)
	}
}

// The bands of three ways in eight plausible furnaces, beside their middles: what the screen
// asks in the background.
func BenchmarkBands(b *testing.B) {
	p := asked(nil)
	for b.Loop() {
		for _, w := range p.Ways {
			f := p.Foresee(w)
			for range plan.BandFurnaces {
				f = p.Widen(w, f)
			}
		}
	}
}
