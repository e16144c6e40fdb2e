package why

import (
	"cmp"
	"math"
	"slices"
	"time"

	"chargehand/model/ahead"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// What a difference must pass to be one: the grid of the samples twice, and what the coarse grid leaves of ore (assumed).
const (
	HoursError = 0.1
	LeftError  = 2.0 // per cent
)

// Outcome is what one thing otherwise comes to, over the furnaces asked so far.
type Outcome struct {
	Choice
	Cold, Left           physics.Band // h of hearth below working heat from the first ore on; per cent of the ore not come down
	ColdChange, LeftMore physics.Band // against the smelt as it was, in the same furnace
	Shift                physics.Band // K, by which the hearth would have been hotter on the mean from the first ore on
	Better, Worse        int          // of the furnaces, in how many it is by more than the error, by the hours or, where they are even, by the ore
	each                 []told
}

type told struct{ cold, left, mean float64 }

// Changes tells whether anything is otherwise by more than the error.
func (o Outcome) Changes() bool {
	return math.Abs(o.ColdChange.P50) > HoursError || math.Abs(o.LeftMore.P50) > LeftError
}

// Opinion is what has been told so far.
type Opinion struct {
	Asked    int       // furnaces asked
	Outcomes []Outcome // as it was first
	Lacks    bool      // the solver says nothing of this smelt
	NoOre    bool      // no ore was in it: nothing was to be lost
	Status   solve.Status
}

// Known tells whether there are figures.
func (o Opinion) Known() bool { return o.Asked > 0 && !o.Lacks }

// Done tells whether all furnaces were asked.
func (o Opinion) Done() bool { return o.Lacks || o.NoOre || o.Asked == ahead.Furnaces }

// Looking goes through the furnaces one by one.
type Looking struct {
	all     []Keyed
	choices []Choice
	told    Opinion
}

// Begin asks of a whole smelt, with nothing otherwise before a moment on its clock (of a rehearsal: before somebody took over).
func Begin(s session.Session, from time.Duration) *Looking {
	l := &Looking{all: of(s)}
	l.choices = Choices(l.all, from)
	for _, c := range l.choices {
		l.told.Outcomes = append(l.told.Outcomes, Outcome{Choice: c})
	}
	l.told.Lacks, l.told.NoOre = len(l.choices) < 2, dayOf(l.all, 0).firstOre == 0
	return l
}

// More tells whether furnaces are left to ask.
func (l *Looking) More() bool { return !l.told.Done() }

// Next asks one more furnace about everything. It takes a second or so.
func (l *Looking) Next() {
	n := l.told.Asked
	for i, c := range l.choices {
		all := c.Apply(l.all)
		t, status := ask(all, n)
		if l.told.Status = status; status != solve.Computes && status != solve.IsOver {
			l.told.Lacks = true
			return
		}
		l.told.Outcomes[i].each = append(l.told.Outcomes[i].each, t)
	}
	l.told.Asked++
}

// ask solves a smelt to its end in one furnace.
func ask(all []Keyed, furnace int) (told, solve.Status) {
	d := dayOf(all, 0)
	es := ahead.As(furnace, entries(all))
	lit := all[0].At
	c := fold.Trace(es, fold.All, d.pulled-lit-time.Second)
	v := solve.Solver{Grid: shaft.Coarse}
	s := v.Solve(&c)
	if s.Status != solve.Computes {
		return told{}, s.Status
	}
	t := told{left: 100 - ahead.DownOf(s)}
	const minute = 1.0 / 60
	seen := 0
	for _, g := range s.Samples() {
		if g.At < d.firstOre-lit {
			continue
		}
		seen++
		t.mean += g.Hearth.P50
		if physics.ToCelsius(g.Hearth.P50) < physics.SlagFreezes {
			t.cold += minute
		}
	}
	if seen == 0 {
		return told{}, solve.NoAir
	}
	t.mean /= float64(seen)
	return t, s.Status
}

// Opinion is what has been told so far.
func (l *Looking) Opinion() Opinion {
	o := l.told
	o.Outcomes = slices.Clone(o.Outcomes)
	was := o.Outcomes[0].each[:o.Asked]
	for i := range o.Outcomes {
		w := &o.Outcomes[i]
		if o.Asked == 0 {
			break
		}
		each := w.each[:o.Asked]
		of := func(v func(k int) float64) physics.Band {
			vs := make([]float64, len(each))
			for k := range each {
				vs[k] = v(k)
			}
			return ahead.Spread(vs)
		}
		w.Cold, w.Left = of(func(k int) float64 { return each[k].cold }), of(func(k int) float64 { return each[k].left })
		w.ColdChange, w.LeftMore = of(func(k int) float64 { return each[k].cold - was[k].cold }), of(func(k int) float64 { return each[k].left - was[k].left })
		w.Shift = of(func(k int) float64 { return each[k].mean - was[k].mean })
		w.Better, w.Worse = 0, 0
		for k := range each {
			switch dir := direction(each[k].cold-was[k].cold, each[k].left-was[k].left); {
			case dir < 0:
				w.Better++
			case dir > 0:
				w.Worse++
			}
		}
	}
	return o
}

// direction is -1 for less cold or, where that is even, less ore left, 1 for more, 0 for neither.
func direction(cold, left float64) int {
	switch {
	case math.Abs(cold) > HoursError:
		return cmp.Compare(cold, 0)
	case math.Abs(left) > LeftError:
		return cmp.Compare(left, 0)
	}
	return 0
}

// Order is by what the outcomes are ranked.
type Order int

// By the hours below working heat, or by the ore not come down.
const (
	ByCold Order = iota
	ByLeft
)

// Ranked are the outcomes but as it was: what would have helped the most first.
func (o Opinion) Ranked(by Order) []Outcome {
	if len(o.Outcomes) == 0 {
		return nil
	}
	all := slices.Clone(o.Outcomes[1:])
	slices.SortStableFunc(all, func(a, b Outcome) int {
		cold, left := cmp.Compare(round(a.ColdChange.P50, HoursError), round(b.ColdChange.P50, HoursError)), cmp.Compare(round(a.LeftMore.P50, LeftError), round(b.LeftMore.P50, LeftError))
		if by == ByLeft {
			return cmp.Or(left, cold)
		}
		return cmp.Or(cold, left)
	})
	return all
}

// round makes even what differs by less than an error.
func round(v, err float64) float64 { return math.Round(v / err) }
