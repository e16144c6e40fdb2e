package account

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Solution is a problem solved: every quantity at its likeliest, and what the
// balances say about each measurement.
type Solution struct {
	Value      []float64 // by quantity; nobody's guess where the balances do not reach it (see Blind)
	Blind      []bool    // not known, and the balances do not reach it
	Redundancy int       // how many independent checks there are
	Misfit     float64   // sum of squares of the checks in units of their own error: chi squared of Redundancy degrees
	Suspects   []Suspect // what one error alone could be, the likeliest first; measured quantities and leaks
	Limited    bool      // a quantity was kept from falling below nought
	Rough      bool      // the values did not come to rest: those of one step, as if all were linear (see Problem.Roughly)

	covariance *mat.SymDense
}

// SD is the standard deviation of a quantity after the solution.
func (s Solution) SD(j int) float64 { return math.Sqrt(max(0, s.covariance.At(j, j))) }

// Sum gives terms added up at the solution and their standard deviation.
func (s Solution) Sum(terms ...Term) (value, sd float64) {
	slopes := make([]float64, len(s.Value))
	for _, t := range terms {
		value += t.at(s.Value)
		for j := range slopes {
			slopes[j] += t.slope(s.Value, j)
		}
	}
	g := mat.NewVecDense(len(slopes), slopes)
	return value, math.Sqrt(max(0, mat.Inner(g, s.covariance, g)))
}

// Masses times shares take some ten steps; iterations is far more than that.
const iterations, wholeSteps = 300, 12

// Solve finds the values of least weighted squares that balance. Masses times
// shares are made linear about the last values until they rest. No known
// quantity falls below nought; what is solved for may, since that says that a
// figure is wrong. Checks and suspects are those without the limits. Figures
// that contradict each other altogether give ErrNotSolved.
func (p Problem) Solve() (Solution, error) {
	s, root, err := p.solve(iterations)
	if err != nil {
		return Solution{}, err
	}
	return s, p.limit(&s, root)
}

// Roughly takes one step from the measured values only, and no limits. It is
// what can be said of figures that contradict each other so far that Solve
// finds no values: by how much, and what was not known as far as it follows
// from the others as they stand.
func (p Problem) Roughly() (Solution, error) {
	s, _, err := p.solve(1)
	s.Rough = true
	return s, err
}

func (p Problem) solve(steps int) (Solution, *mat.Dense, error) {
	if err := p.check(); err != nil {
		return Solution{}, nil, err
	}
	root, ok := rootOf(p)
	if !ok {
		return Solution{}, nil, ErrNotSolved
	}
	if len(p.Quantities) == 0 || len(p.Balances) == 0 {
		return p.untouched(), root, nil
	}
	x, l, off, err := p.rest(nil, root, steps)
	if err != nil {
		return Solution{}, nil, err
	}
	s := Solution{
		Value: x, Blind: make([]bool, len(x)), Redundancy: l.redundancy(), Misfit: square(off),
		covariance: l.covariance(len(x)),
	}
	for i, j := range l.sought {
		s.Blind[j] = l.blind[i]
	}
	s.Suspects = p.suspects(l, off)
	return s, root, nil
}

// untouched is a problem that has nothing to balance.
func (p Problem) untouched() Solution {
	n := len(p.Quantities)
	s := Solution{Value: make([]float64, n), Blind: make([]bool, n), covariance: mat.NewSymDense(max(n, 1), nil)}
	for j, q := range p.Quantities {
		s.Value[j], s.Blind[j] = q.Value, q.unknown()
		s.covariance.SetSym(j, j, q.SD*q.SD)
	}
	return s
}

// limit holds at nought what fell below it, and lets go what would rise again,
// until neither happens: the active-set method for limits of one side.
func (p Problem) limit(s *Solution, root *mat.Dense) error {
	var held []int
	for range 2*len(p.Quantities) + 1 {
		worst, at := -1, -tiny
		for j, q := range p.Quantities {
			if q.known() && q.Value >= 0 && s.Value[j] < at*(q.SD) {
				worst, at = j, s.Value[j]/q.SD
			}
		}
		if worst < 0 {
			return nil
		}
		held = append(held, worst)
		for {
			x, l, off, err := p.rest(held, root, iterations)
			if err != nil {
				return err
			}
			s.Value, s.covariance, s.Limited = x, l.covariance(len(x)), true
			free := p.released(l, off, len(held))
			if free < 0 {
				break
			}
			held = append(held[:free:free], held[free+1:]...)
		}
	}
	return ErrNotSolved
}

// tiny is how far below nought a quantity may lie by rounding, in its own error.
const tiny = 1e-9

// released is the limit that pulls the wrong way, or -1: its multiplier would be
// less if the quantity rose.
func (p Problem) released(l *linear, off []float64, held int) int {
	for i := range held {
		var multiplier float64
		for k, o := range off {
			multiplier += l.root.At(k, len(p.Balances)+i) * o
		}
		if multiplier > tiny {
			return i
		}
	}
	return -1
}

// rest iterates until the values rest, or takes the one step asked for.
func (p Problem) rest(held []int, root *mat.Dense, steps int) ([]float64, *linear, []float64, error) {
	x := make([]float64, len(p.Quantities))
	for j, q := range p.Quantities {
		if x[j] = q.Value; q.unknown() && q.Value == 0 {
			x[j] = 1
		}
	}
	for n := range steps {
		l := newLinear(p, x, held, root)
		// The rows made linear: a (X - x) + Off(x) = 0. At the measured values of
		// the known and the present ones of the sought they come to residual.
		residual := make([]float64, l.rows)
		for i, b := range p.Balances {
			residual[i] = b.Off(x)
		}
		for i, j := range held {
			residual[len(p.Balances)+i] = x[j]
		}
		for c, j := range l.known {
			for i := range residual {
				residual[i] += l.a.At(i, c) * (p.Quantities[j].Value - x[j])
			}
		}
		off := l.off(residual)
		move := l.adjusted(off)
		next := append([]float64(nil), x...)
		for c, j := range l.known {
			next[j] = p.Quantities[j].Value - move[c]
			for i := range residual {
				residual[i] -= l.a.At(i, c) * move[c]
			}
		}
		for r, j := range l.sought {
			for i := range residual {
				next[j] -= l.inverse.At(r, i) * residual[i]
			}
		}
		if steps == 1 || resting(x, next, n) {
			return next, l, off, nil
		}
		// Whole steps run to and fro where a share is known very roughly and has to
		// move far: then shorter ones.
		step := 1.0
		if n >= wholeSteps {
			step = 0.5
		}
		for j := range x {
			next[j] = x[j] + step*(next[j]-x[j])
		}
		x = next
	}
	return nil, nil, nil, ErrNotSolved
}

// resting tells whether nothing moves any more; after many steps a millionth is
// nothing, which is far below what is weighed.
func resting(x, next []float64, steps int) bool {
	within := 1e-11
	if steps > iterations/2 {
		within = 1e-6
	}
	for j := range x {
		if !(math.Abs(next[j]-x[j]) <= within*(1+math.Abs(x[j]))) {
			return false
		}
	}
	return true
}

func square(v []float64) float64 {
	var sum float64
	for _, x := range v {
		sum += x * x
	}
	return sum
}
