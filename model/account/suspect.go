package account

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// Suspect is one error that could alone explain why the balances are off: a
// measurement that is wrong, or a leak, something that a balance lacks
// altogether. Those of one group leave the same trace and cannot be told apart.
type Suspect struct {
	Quantity int     // by its place in the problem; -1 for a leak
	Leak     int     // by its balance; -1 for a measurement
	Z        float64 // the adjustment in units of its own error; leaks too, by the same formula
	Size     float64 // how much too high the measurement is, or what the balance lacks, if it is this alone
	Group    int     // from 0, the likeliest first
	Odds     float64 // of the whole group, if it is just one error: likelihoods over their sum
}

// Strength is by how much the misfit falls when this one alone is at fault: the
// generalised likelihood ratio (Narasimhan and Mah 1987).
func (s Suspect) Strength() float64 { return s.Z * s.Z }

// alike is how nearly parallel two traces are that cannot be told apart.
const alike = 1 - 1e-6

// suspects tries every measured quantity and every balance for a single error.
//
// With r the checks in units of their own error and s the trace a candidate
// leaves in them, z = s.r/|s| is the measurement test (Mah and Tamhane 1982), z
// squared the likelihood ratio and s.r/s.s the size (references from memory,
// unverified). An assumed quantity is no candidate. Odds take every candidate
// for equally likely beforehand.
func (p Problem) suspects(l *linear, off []float64) []Suspect {
	if len(off) == 0 {
		return nil
	}
	var found []Suspect
	var traces [][]float64
	try := func(s Suspect, column []float64, unit float64) {
		trace := l.off(column)
		long := math.Sqrt(square(trace))
		if long*unit < 1e-6 {
			return // no check reaches it
		}
		var dot float64
		for k := range trace {
			dot += trace[k] * off[k]
			trace[k] /= long
		}
		s.Z, s.Size = dot/long, dot/long/long
		found, traces = append(found, s), append(traces, trace)
	}
	for c, j := range l.known {
		if p.Quantities[j].Standing != Measured {
			continue
		}
		column := make([]float64, l.rows)
		for i := range column {
			column[i] = l.a.At(i, c)
		}
		try(Suspect{Quantity: j, Leak: -1}, column, p.Quantities[j].SD)
	}
	for i := range p.Balances {
		column := make([]float64, l.rows)
		column[i] = 1
		try(Suspect{Quantity: -1, Leak: i}, column, p.spread(l, i)) // by the error of its balance
	}
	return grouped(found, traces)
}

// spread is the standard deviation of one balance by its known quantities.
func (p Problem) spread(l *linear, i int) float64 {
	var sum float64
	for c, j := range l.known {
		sum += math.Pow(l.a.At(i, c)*p.Quantities[j].SD, 2)
	}
	return math.Sqrt(sum)
}

// grouped puts together what cannot be told apart and orders by odds.
func grouped(found []Suspect, traces [][]float64) []Suspect {
	group := make([]int, len(found))
	var firsts []int
	for i := range found {
		group[i] = -1
		for g, f := range firsts {
			var dot float64
			for k := range traces[i] {
				dot += traces[i][k] * traces[f][k]
			}
			if math.Abs(dot) > alike {
				group[i] = g
				break
			}
		}
		if group[i] < 0 {
			group[i] = len(firsts)
			firsts = append(firsts, i)
		}
	}
	most := 0.0
	for _, s := range found {
		most = max(most, s.Strength())
	}
	odds := make([]float64, len(firsts))
	var all float64
	for i, s := range found {
		w := math.Exp((s.Strength() - most) / 2)
		odds[group[i]] += w
		all += w
	}
	rank := make([]int, len(firsts))
	for g := range rank {
		rank[g] = g
	}
	slices.SortStableFunc(rank, func(a, b int) int { return cmp.Compare(odds[b], odds[a]) })
	for i := range found {
		found[i].Group = slices.Index(rank, group[i])
		found[i].Odds = odds[group[i]] / all
	}
	slices.SortStableFunc(found, func(a, b Suspect) int {
		return cmp.Or(cmp.Compare(a.Group, b.Group), cmp.Compare(b.Strength(), a.Strength()))
	})
	return found
}

// Level is how rarely a smelt without any error is called open: 1 in 20.
const Level = 0.05

// Explained tells whether errors of weighing and assaying explain that the
// balances are off (chi squared; nothing to explain without a check).
func (s Solution) Explained() bool {
	return s.Redundancy == 0 || s.Misfit <= distuv.ChiSquared{K: float64(s.Redundancy)}.Quantile(1-Level)
}
