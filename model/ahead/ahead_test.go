package ahead

import (
	"math"
	"reflect"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// Smelt is the invented smelt. It is lent by the tests outside the package: what makes it up plans too, and a plan looks ahead.
var Smelt func() ([]entry.Entry, error)

// demo is the invented smelt as it was known at so many minutes after light.
func demo(t testing.TB, minutes float64) session.Session {
	t.Helper()
	entries, err := Smelt()
	if err != nil {
		t.Fatal(err)
	}
	s := session.Open("demo", entries)
	at := time.Duration(minutes * float64(time.Minute))
	return s.AsOf(s.KnownAt(at), at)
}

// The furnaces lie in the ranges of the solver's numbers, and no two have the same.
func TestTheFurnacesArePlausible(t *testing.T) {
	for _, row := range shaft.ParamTable {
		seen := map[float64]bool{}
		for _, f := range plausible {
			v, ok := f.calibration[row.Name]
			if ok == row.Fixed || ok && (v < row.Low || v > row.High || seen[v]) {
				t.Errorf("%s is %v in %v to %v", row.Name, v, row.Low, row.High)
			}
			seen[v] = true
		}
	}
}

// More blast makes the hearth hotter and the charge shorter, more ore the hearth cooler, by the same furnaces; the smelt that
// is looked ahead of stays as it was, and says the same again.
func TestTheNextHour(t *testing.T) {
	s := demo(t, 250)
	before, n := s.Reading(), s.Len()
	a := Of(s)
	if !a.Known() || a.Asked != Furnaces {
		t.Fatalf("%d furnaces asked, status %v", a.Asked, a.Status)
	}
	by := map[Name]Outcome{}
	for _, o := range a.Outcomes {
		by[o.Name] = o
		if o.Hearth.IsZero() || o.Minutes.IsZero() || o.OreDown.P50 <= 0 || o.OreDown.P90 > 100 {
			t.Errorf("%s: %+v", o.Name, o)
		}
	}
	shown := by[Shown]
	if m := by[MoreBlast]; m.Shift.P50 <= shown.Shift.P50 || m.Minutes.P50 >= shown.Minutes.P50 {
		t.Errorf("more blast: %+v, %+v; as shown %+v, %+v", m.Shift, m.Minutes, shown.Shift, shown.Minutes)
	}
	if l := by[LessBlast]; l.Shift.P50 >= shown.Shift.P50 || l.Minutes.P50 <= shown.Minutes.P50 {
		t.Errorf("less blast: %+v, %+v", l.Shift, l.Minutes)
	}
	if by[MoreOre].Shift.P50 >= shown.Shift.P50 || by[CharcoalOnly].Shift.P50 <= by[LessOre].Shift.P50 {
		t.Errorf("ore: more %+v, shown %+v, less %+v, none %+v", by[MoreOre].Shift, shown.Shift, by[LessOre].Shift, by[CharcoalOnly].Shift)
	}
	if !reflect.DeepEqual(s.Reading(), before) || s.Len() != n {
		t.Error("the smelt has changed")
	}
	if b := Of(s); !reflect.DeepEqual(a, b) {
		t.Error("another answer the second time")
	}
}

// Of a log that was taken in, what came later that day is not known.
func TestTheFutureIsNotKnown(t *testing.T) {
	entries, err := Smelt()
	if err != nil {
		t.Fatal(err)
	}
	s := session.Open("demo", entries)
	at := 250 * time.Minute
	whole, cut := Begin(s.AsOf(fold.All, at)), Begin(demo(t, 250))
	for _, e := range whole.own {
		if l, ok := s.Line(e.Seq); ok && l.At > at && e.Kind() != entry.KindStrike {
			t.Errorf("%s of %v is known at %v", e.Kind(), l.At, at)
		}
	}
	if len(whole.own) < len(cut.own) {
		t.Errorf("%d entries, %d were known", len(whole.own), len(cut.own))
	}
}

// A log keys no recipe: what is shown is a charge like the last.
func TestALogIsChargedOn(t *testing.T) {
	entries, err := Smelt()
	if err != nil {
		t.Fatal(err)
	}
	var log []entry.Entry
	for _, e := range entries {
		if l, ok := e.Event.(entry.Light); ok {
			l.Recipe = nil
			e.Event = l
		}
		if e.Kind() != entry.KindRecipe && e.Kind() != entry.KindStrike {
			log = append(log, e)
		}
	}
	s := session.Open("log", log)
	cs := choices(s.AsOf(fold.All, 250*time.Minute))
	if len(cs) < 4 || !cs[0].parts.Holds(entry.Ore) || !cs[0].parts.Holds(entry.Charcoal) {
		t.Errorf("%d choices, the first %+v", len(cs), cs[0].parts)
	}
}

// Late in the day one waits, pulls or gives up.
func TestTheEndOfTheDay(t *testing.T) {
	a := Of(demo(t, 380))
	var names []Name
	for _, o := range a.Outcomes {
		names = append(names, o.Name)
	}
	if !reflect.DeepEqual(names, []Name{Wait, Pull, GiveUp}) || a.Advice.Choice == "" {
		t.Errorf("%v, advice %+v", names, a.Advice)
	}
	if s := demo(t, 450); Begin(s).More() {
		t.Error("there is a next hour after the smelt")
	}
}

// told in ten furnaces: the shown charge and one other.
func outcomes(shown, other func(i int) told) Ahead {
	a := Ahead{Asked: Furnaces, Outcomes: []Outcome{{Name: Shown}, {Name: CharcoalOnly}}}
	for i := range Furnaces {
		a.Outcomes[0].each = append(a.Outcomes[0].each, shown(i))
		a.Outcomes[1].each = append(a.Outcomes[1].each, other(i))
		if shown(i).hearth < physics.SlagFreezes {
			a.Outcomes[0].Cold++
		}
		if shown(i).carbon > physics.CastFrom {
			a.Outcomes[0].Cast++
		}
	}
	a.Outcomes[0].Runs = spread(a.Outcomes[0].each, func(t told) float64 { return t.runs })
	return a
}

// A choice is advised when the best beats the shown one in eight of ten furnaces by more than the error, and not in seven, and
// not by less, and not where nothing ails the hour.
func TestAdviceIsRare(t *testing.T) {
	const cold = physics.SlagFreezes - 50
	at := func(hearth float64) func(int) told { return func(int) told { return told{hearth: hearth} } }
	better := func(n int, by float64) func(int) told {
		return func(i int) told {
			if i < n {
				return told{hearth: cold + by}
			}
			return told{hearth: cold}
		}
	}
	for _, c := range []struct {
		name         string
		shown, other func(int) told
		want         Name
		why          Why
	}{
		{"eight of ten", at(cold), better(8, hearthError+1), CharcoalOnly, WhyCold},
		{"seven of ten", at(cold), better(7, hearthError+1), "", WhySame},
		{"by the error", at(cold), better(10, hearthError), "", WhySame},
		{"warm", at(1300), at(1400), "", WhyWell},
		{"warm, and nobody saw the slag", func(int) told { return told{hearth: 1300, slag: true, runs: 90} }, at(1400), "", WhyUnseen},
		{"stiff", func(int) told { return told{hearth: 1250, slag: true, runs: 20} }, func(int) told { return told{hearth: 1300, slag: true, runs: 80} }, CharcoalOnly, WhyStiff},
		{"cast", func(int) told { return told{hearth: 1400, carbon: 0.03} }, func(int) told { return told{hearth: 1350, carbon: 0.01} }, CharcoalOnly, WhyCast},
	} {
		got := advise(outcomes(c.shown, c.other))
		if got.Choice != c.want || got.Why != c.why {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
	few := outcomes(at(cold), better(10, 100))
	few.Asked = Furnaces - 1
	if got := advise(few); got.Choice != "" {
		t.Errorf("advice before all were asked: %+v", got)
	}
}

// What two choices differ by on one furnace is the same on the coarse grid as on the fine one to half the error that an advice
// has to beat.
func TestTheCoarseGridsError(t *testing.T) {
	for _, minutes := range []float64{200, 290} {
		s := demo(t, minutes)
		l := Begin(s)
		own := plausible[0].as(l.own)
		var shift, runs [2][]float64
		for g, grid := range []shaft.Grid{shaft.Coarse, shaft.Fine} {
			v := &solve.Solver{Grid: grid}
			for _, ch := range l.choices {
				c := fold.Trace(ch.entries(s, own[:len(own):len(own)], l.at), fold.All, l.at+ch.over)
				then := v.Solve(&c)
				shift[g] = append(shift[g], then.Hearth.Temperature)
				runs[g] = append(runs[g], 100*then.Hearth.Slag.Running(shaft.HearthBand(then.Hearth.Temperature, physics.ZeroCelsius)).Runs)
			}
		}
		for i := range l.choices {
			if d := math.Abs(shift[0][i] - shift[0][0] - shift[1][i] + shift[1][0]); d > hearthError/2 {
				t.Errorf("%s at %v: the hearth differs by %.1f K more on one grid", l.choices[i].name, l.at, d)
			}
			if d := math.Abs(runs[0][i] - runs[0][0] - runs[1][i] + runs[1][0]); d > runsError/2 {
				t.Errorf("%s at %v: the slag by %.1f %%", l.choices[i].name, l.at, d)
			}
		}
	}
}

func BenchmarkFirstFurnace(b *testing.B) {
	s := demo(b, 330)
	s.Reading()
	for b.Loop() {
		Begin(s).Next()
	}
}

func BenchmarkAllFurnaces(b *testing.B) {
	s := demo(b, 330)
	s.Reading()
	for b.Loop() {
		Of(s)
	}
}
