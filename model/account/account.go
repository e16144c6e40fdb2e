package account

import (
	"errors"
	"math"
)

// Account is where every kilogram of iron went, as far as that can be told.
type Account struct {
	Name    string
	In, Out []Row
	Iron    Closure
	Silica  Closure
	Carbon  Passage // what did not come out again went as gas
	Mass    Passage // of the burden without charcoal: the rest went as gas, or was not weighed
	Oxygen  Amount  // that left as gas with the iron that became metal, were it hematite
	Verdict Verdict
	Yields  []Yield

	BloomSlag Share // by its weight in water
}

// Row is one stream with what it holds.
type Row struct {
	Stream
	Share  Amount // of iron
	Iron   Amount // kg, by what was measured and assumed; solved where the mass was not known
	Fitted Amount // kg of iron after the least squares; not known when the figures contradict each other altogether
	Silica Amount // kg; not known without a silica balance
}

// Closure is one substance in and out. Where something had to be solved for the
// sums hold that, and nothing is open.
type Closure struct {
	Tested  bool
	In, Out Amount // kg
	Open    Amount // in less out, kg, may be minus; not known when something had to be solved for
	Share   Amount // out over in
}

// Passage is a substance in and out that is not tested.
type Passage struct {
	In, Out, Rest Amount // kg
	Share         Amount // out over in
}

// Of makes the account of a smelt.
func Of(s Smelt) (Account, error) {
	b := balance(s)
	a := Account{Name: s.Name, BloomSlag: s.BloomSlag, Carbon: carbonOf(s), Mass: massOf(s)}
	if !b.tested[ironBalance] {
		b.each(func(p place, st Stream) {
			a.row(p, Row{Stream: st, Share: s.Assays[st.Of].Iron, Iron: b.raw(b.terms[p].iron)})
		})
		a.Verdict = Verdict{Kind: NothingWeighed}
		a.Yields = yields(a, s)
		return a, nil
	}
	solution, err := b.problem.Solve()
	if errors.Is(err, ErrNotSolved) {
		solution, err = b.problem.Roughly()
	}
	if err != nil {
		return Account{}, err
	}
	b.each(func(p place, st Stream) {
		r := Row{Stream: st, Share: s.Assays[st.Of].Iron, Iron: b.raw(b.terms[p].iron)}
		r.Fitted = b.fitted(solution, b.terms[p].iron)
		if !r.Iron.Known() {
			r.Iron = r.Fitted
		}
		if solution.Rough {
			r.Fitted = Amount{}
		}
		if b.tested[silicaBalance] {
			if r.Silica = b.raw(b.terms[p].silica); !r.Silica.Known() {
				r.Silica = b.fitted(solution, b.terms[p].silica)
			}
		}
		if m := b.mass[p]; b.problem.Quantities[m].unknown() && !solution.Blind[m] {
			r.Mass = Amount{solution.Value[m], solution.SD(m), Solved}
		}
		a.row(p, r)
	})
	if b.lost >= 0 && !solution.Blind[b.lost] {
		lost := Amount{solution.Value[b.lost], solution.SD(b.lost), Solved}
		a.row(place{}, Row{Stream: Stream{Place: WallAndAsh}, Iron: Weighed(0, 0), Silica: lost})
	}
	a.Iron = b.closure(ironBalance, solution)
	if b.tested[silicaBalance] {
		a.Silica = b.closure(silicaBalance, solution)
	}
	a.Oxygen = oxygenOf(a)
	a.Yields = yields(a, s)
	a.Verdict = b.verdict(solution, a)
	return a, nil
}

func (a *Account) row(p place, r Row) {
	if p.out {
		a.Out = append(a.Out, r)
	} else {
		a.In = append(a.In, r)
	}
}

// fitted is what terms come to at the solution; not known when the balances do
// not reach a quantity in them. What rests on one that was solved for is solved.
func (b *balances) fitted(s Solution, terms []Term) Amount {
	standing := Measured
	for _, t := range terms {
		for _, j := range t.Of {
			if s.Blind[j] {
				return Amount{}
			}
			standing = min(standing, max(Solved, b.problem.Quantities[j].Standing))
		}
	}
	v, sd := s.Sum(terms...)
	return Amount{v, sd, standing}
}

// closure is one balance in and out: by what was measured and assumed, or, where
// something had to be solved for, as solved.
func (b *balances) closure(k int, s Solution) Closure {
	c := Closure{Tested: true}
	var in, out []Term
	for _, t := range b.problem.Balances[k].Terms {
		if b.comesOut(t) {
			out = append(out, Term{-t.Times, t.Of})
		} else {
			in = append(in, t)
		}
	}
	c.In, c.Out = b.raw(in), b.raw(out)
	if c.In.Known() && c.Out.Known() {
		c.Open, c.Share = b.raw(b.problem.Balances[k].Terms), c.Out.over(c.In)
		return c
	}
	if !c.In.Known() {
		c.In = b.fitted(s, in)
	}
	if !c.Out.Known() {
		c.Out = b.fitted(s, out)
	}
	return c
}

// comesOut tells whether a term is of a stream that came out.
func (b *balances) comesOut(t Term) bool {
	for i := range b.smelt.Out {
		if t.Of[0] == b.mass[place{true, i}] {
			return true
		}
	}
	return false
}

// carbonOf is the carbon of the charcoal. What is in bloom and slag is too
// little to be seen here.
func carbonOf(s Smelt) Passage {
	left := s.CharcoalLeft
	if !left.Known() {
		left = Weighed(0, 0)
	}
	if !s.Charcoal.Known() {
		return Passage{}
	}
	p := Passage{In: s.Charcoal.of(s.CarbonShare), Out: left.of(s.CarbonShare)}
	p.Rest, p.Share = p.In.minus(p.Out), p.Out.over(p.In)
	return p
}

// massOf is the burden without charcoal, in and out.
func massOf(s Smelt) Passage {
	sum := func(streams []Stream) Amount {
		var masses []Amount
		for _, st := range streams {
			masses = append(masses, st.Mass)
		}
		if len(masses) == 0 {
			return Amount{}
		}
		return total(masses...)
	}
	p := Passage{In: sum(s.In), Out: sum(s.Out)}
	if p.In.Known() && p.Out.Known() {
		p.Rest, p.Share = p.In.minus(p.Out), p.Out.over(p.In)
	}
	return p
}

func sqrt(v float64) float64 { return math.Sqrt(max(0, v)) }
