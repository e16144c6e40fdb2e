package account

import (
	"errors"
	"fmt"
	"math"
)

// Standing is what a quantity rests on.
type Standing int

// From nothing to the firmest. What is made of several stands as the weakest.
const (
	Unknown  Standing = iota // to be solved for, where the balances reach it
	Solved                   // was not known, and followed from the balances
	Assumed                  // a prior: it takes its part in the balance, but is never called wrong
	Measured                 // weighed or assayed here
)

// Quantity is one figure of a problem, a mass or a share of one.
type Quantity struct {
	Name     string
	Value    float64 // as measured or assumed; of one not known a first guess, 0 for none
	SD       float64 // its standard deviation, in the same unit; 0 says that it is exact
	Standing Standing
}

// Term is a part of a balance: a number times a product of quantities, by their
// place in the problem. A mass times a share is one term; in is plus, out minus.
type Term struct {
	Times float64
	Of    []int
}

// Balance is a sum of terms that comes to nought in truth.
type Balance struct {
	Name  string
	Terms []Term
}

// Correlation is that of two measured errors, as those of one scale have it.
type Correlation struct {
	A, B int
	R    float64 // -1 to 1
}

// Problem is what was measured and what must balance.
type Problem struct {
	Quantities   []Quantity
	Balances     []Balance
	Correlations []Correlation
}

// ErrNotSolved is a problem whose iteration does not come to rest, as when an
// unknown stands in a product with another of nought.
var ErrNotSolved = errors.New("account: the balances could not be solved from these figures")

// known tells whether a quantity has an error to adjust.
func (q Quantity) known() bool { return !q.unknown() && q.SD > 0 }

// unknown tells whether a quantity is solved for.
func (q Quantity) unknown() bool { return q.Standing <= Solved }

// check refuses what cannot be solved: numbers that are none, terms that name
// no quantity, correlations that are none.
func (p Problem) check() error {
	for _, q := range p.Quantities {
		if !finite(q.Value) || !finite(q.SD) || q.SD < 0 {
			return fmt.Errorf("account: %s is %g with a spread of %g: no figure to reckon with", q.Name, q.Value, q.SD)
		}
	}
	for _, b := range p.Balances {
		for _, t := range b.Terms {
			for _, j := range t.Of {
				if j < 0 || j >= len(p.Quantities) {
					return fmt.Errorf("account: balance %s names quantity %d of %d", b.Name, j, len(p.Quantities))
				}
			}
		}
	}
	for _, c := range p.Correlations {
		if c.A < 0 || c.B < 0 || c.A >= len(p.Quantities) || c.B >= len(p.Quantities) || c.A == c.B || !(math.Abs(c.R) <= 1) {
			return fmt.Errorf("account: quantities %d and %d cannot be correlated by %g", c.A, c.B, c.R)
		}
	}
	return nil
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// at is what a term comes to.
func (t Term) at(x []float64) float64 {
	v := t.Times
	for _, j := range t.Of {
		v *= x[j]
	}
	return v
}

// slope is how much a term grows with quantity j.
func (t Term) slope(x []float64, j int) float64 {
	var sum float64
	for i, k := range t.Of {
		if k != j {
			continue
		}
		v := t.Times
		for n, o := range t.Of {
			if n != i {
				v *= x[o]
			}
		}
		sum += v
	}
	return sum
}

// Off is by how much a balance fails to come to nought at given values.
func (b Balance) Off(x []float64) float64 {
	var sum float64
	for _, t := range b.Terms {
		sum += t.at(x)
	}
	return sum
}
