package why

import (
	"reflect"
	"testing"
	"time"

	"chargehand/model/ahead"
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/invented"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/physics/shaft"
)

// demo is the invented smelt, whole.
func demo(t testing.TB) session.Session {
	t.Helper()
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	s := session.Open("demo", es)
	return s.AsOf(fold.All, s.End())
}

// hard is the invented smelt with twice the ore and a third less blast, so that it goes cold.
func hard(t testing.TB) session.Session {
	t.Helper()
	all := of(demo(t))
	d := dayOf(all, 0)
	all = d.ored(MoreOre, 2.2).Apply(all)
	all = d.blown(LessBlast, 0.6).Apply(all)
	s := session.Open("hard", entries(all))
	return s.AsOf(fold.All, s.End())
}

// With nothing otherwise it is the smelt: made anew of what holds of it, it solves to the same shaft.
func TestAsItWasIsTheSmelt(t *testing.T) {
	s := demo(t)
	all := of(s)
	at := dayOf(all, 0).pulled - time.Second
	v, w := solve.Solver{Grid: shaft.Coarse}, solve.Solver{Grid: shaft.Coarse}
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	was, is := fold.Trace(es, fold.All, at), fold.Trace(entries(Choices(all, 0)[0].Apply(all)), fold.All, at-all[0].At)
	a, b := v.Solve(&was), w.Solve(&is)
	if a.Status != solve.Computes || a.Totals != b.Totals || a.Hearth != b.Hearth || !reflect.DeepEqual(a.Profile, b.Profile) {
		t.Errorf("%v: hearth %.2f K, made anew %v: %.2f K", a.Status, a.Hearth.Temperature, b.Status, b.Hearth.Temperature)
	}
}

// Each thing otherwise changes what it names and nothing else, and leaves a smelt that can be kept.
func TestOneThingIsOtherwise(t *testing.T) {
	s := demo(t)
	all := of(s)
	was := dayOf(all, 0)
	sum := func(all []Keyed, w entry.What) (n float64) {
		for _, k := range all {
			if c, ok := k.Entry.Event.(entry.Charge); ok {
				for _, p := range c.Parts {
					if p.What == w {
						n += float64(p.Count.Value) + float64(p.Mass.Value)
					}
				}
			}
		}
		return n
	}
	ore, coal := sum(all, entry.Ore), sum(all, entry.Charcoal)
	near := func(a, b float64) bool { return a > 0.999*b && a < 1.001*b }
	seen := map[Name]bool{}
	for _, c := range Choices(all, 0) {
		seen[c.Name] = true
		other := c.Apply(all)
		is := dayOf(other, 0)
		for _, e := range entries(other) {
			if err := entry.Check(e.Event); err != nil {
				t.Errorf("%s: %v", c.Name, err)
			}
		}
		wantOre, wantCoal := ore, coal
		switch c.Name {
		case LessOre:
			wantOre = 0.8 * ore
		case MoreOre:
			wantOre = 1.2 * ore
		case LaterOre:
			wantCoal = coal + Buckets
		}
		if o, k := sum(other, entry.Ore), sum(other, entry.Charcoal); !near(o, wantOre) || !near(k, wantCoal) {
			t.Errorf("%s: %.2f of ore and %.2f of charcoal, want %.2f and %.2f", c.Name, o, k, wantOre, wantCoal)
		}
		longer := is.pulled - was.pulled
		switch c.Name {
		case MoreBlast:
			if longer >= 0 {
				t.Errorf("with more blast it lasts longer by %v", longer)
			}
		case LessBlast, LaterOre:
			if longer <= 0 {
				t.Errorf("%s: it lasts longer by %v", c.Name, longer)
			}
		case LongerBurn:
			if longer != Longer {
				t.Errorf("pulled later by %v", longer)
			}
		case NeverOff:
			if longer != -c.Off {
				t.Errorf("it was off for %v and is over sooner by %v", c.Off, -longer)
			}
		default:
			if longer != 0 {
				t.Errorf("%s: it lasts longer by %v", c.Name, longer)
			}
		}
		if is.pulled-is.lower != was.pulled-was.lower && c.Name != LongerBurn && c.Name != NeverOff {
			t.Errorf("%s: another burn-down", c.Name)
		}
	}
	for _, n := range []Name{AsWas, MoreBlast, LessBlast, LessOre, MoreOre, EvenOre, LaterOre, LongerBurn, WetCharcoal, PoorOre} {
		if !seen[n] {
			t.Errorf("nothing is asked of %s", n)
		}
	}
	from := was.firstOre + time.Hour
	for _, c := range Choices(all, from) {
		if c.Name == LaterOre {
			t.Error("the first ore comes later after it has come")
		}
		if c.Book {
			continue
		}
		other := c.Apply(all)
		for i, k := range all {
			if k.At <= from && (other[i].At != k.At || !reflect.DeepEqual(other[i].Entry, k.Entry)) {
				t.Errorf("%s: otherwise at %v, before %v", c.Name, k.At, from)
			}
		}
	}
}

// More ore is colder and leaves more of it, less ore the other way; what is asked of a smelt changes nothing in it and is said
// again the same.
func TestTheModelsOpinion(t *testing.T) {
	s := hard(t)
	n := s.Len()
	l := Begin(s, 0)
	for range 3 {
		l.Next()
	}
	o := l.Opinion()
	if !o.Known() || o.Done() || o.Asked != 3 {
		t.Fatalf("%+v", o)
	}
	by := map[Name]Outcome{}
	for _, w := range o.Outcomes {
		by[w.Name] = w
		t.Logf("%-16s cold %.2f h (%.2f to %.2f), by %+.2f (%+.2f to %+.2f); left %.1f %%, by %+.1f (%+.1f to %+.1f); better %d, worse %d, against %v", w.Name, w.Cold.P50, w.Cold.P10, w.Cold.P90,
			w.ColdChange.P50, w.ColdChange.P10, w.ColdChange.P90, w.Left.P50, w.LeftMore.P50, w.LeftMore.P10, w.LeftMore.P90, w.Better, w.Worse, w.Against())
	}
	if was := by[AsWas]; was.Left.P50 < 0 || was.Left.P90 > 100 || was.ColdChange.P50 != 0 || was.Changes() {
		t.Errorf("as it was: %+v", was)
	}
	if by[MoreOre].LeftMore.P50 < by[LessOre].LeftMore.P50 || by[MoreOre].ColdChange.P50 < by[LessOre].ColdChange.P50 {
		t.Errorf("more ore %+v, less ore %+v", by[MoreOre], by[LessOre])
	}
	if by[LongerBurn].LeftMore.P50 > 0 {
		t.Errorf("pulled later: %+v", by[LongerBurn])
	}
	again := Begin(s, 0)
	for range 3 {
		again.Next()
	}
	if s.Len() != n || !reflect.DeepEqual(again.Opinion().Outcomes[1].each, o.Outcomes[1].each) {
		t.Error("another opinion the second time")
	}
}

// What would have helped the most comes first, by either order; where published smelts go the other way it is told.
func TestRankedAndAgainst(t *testing.T) {
	one := func(n Name, cold, left float64) Outcome {
		o := Outcome{Choice: Choice{Name: n}}
		o.ColdChange.P50, o.LeftMore.P50 = cold, left
		return o
	}
	o := Opinion{Outcomes: []Outcome{one(AsWas, 0, 0), one(MoreBlast, -0.2, 5), one(LessOre, -1, -1), one(MoreOre, 0.5, 9), one(LessBlast, 0.3, -8)}}
	names := func(by Order) (ns []Name) {
		for _, w := range o.Ranked(by) {
			ns = append(ns, w.Name)
		}
		return ns
	}
	if got := names(ByCold); !reflect.DeepEqual(got, []Name{LessOre, MoreBlast, LessBlast, MoreOre}) {
		t.Errorf("by cold: %v", got)
	}
	if got := names(ByLeft); !reflect.DeepEqual(got, []Name{LessBlast, LessOre, MoreBlast, MoreOre}) {
		t.Errorf("by ore left: %v", got)
	}
	with := func(o Outcome) (qs []Quantity) {
		for _, t := range o.Against() {
			qs = append(qs, t.With)
		}
		return qs
	}
	if got := with(o.Outcomes[1]); !reflect.DeepEqual(got, []Quantity{Air}) {
		t.Errorf("more blast is against %v", got)
	}
	if got := with(o.Outcomes[4]); !reflect.DeepEqual(got, []Quantity{Air}) {
		t.Errorf("less blast is against %v", got)
	}
	if with(o.Outcomes[2]) != nil || with(o.Outcomes[3]) != nil || !reflect.DeepEqual(with(one(MoreOre, -1, 0)), []Quantity{OreToCharcoal}) {
		t.Error("ore against the published")
	}
	if with(one(MoreBlast, 0.05, 1)) != nil {
		t.Error("no difference is against something")
	}
}

func BenchmarkOneFurnace(b *testing.B) {
	s := demo(b)
	for b.Loop() {
		Begin(s, 0).Next()
	}
}

// All furnaces of the invented smelt, for a look: go test ./model/why -run Report -v
func TestReportOpinion(t *testing.T) {
	if !testing.Verbose() {
		t.Skip("prints only")
	}
	l := Begin(hard(t), 0)
	for l.More() {
		l.Next()
	}
	if o := l.Opinion(); o.Asked != ahead.Furnaces {
		t.Errorf("%d furnaces asked", o.Asked)
	}
	for _, w := range l.Opinion().Ranked(ByCold) {
		t.Logf("%-16s cold by %+.2f (%+.2f to %+.2f) h, left by %+.1f (%+.1f to %+.1f) %%, hearth by %+.0f K, better %d worse %d", w.Name, w.ColdChange.P50, w.ColdChange.P10, w.ColdChange.P90, w.LeftMore.P50, w.LeftMore.P10, w.LeftMore.P90, w.Shift.P50, w.Better, w.Worse)
	}
}
