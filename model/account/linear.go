package account

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// The rank of a matrix is the number of its singular values above this share of
// the largest. A signature, or a part of one, below it is none.
const rankShare = 1e-9

// linear is a problem made linear about a point: the balances, and a row for
// each quantity held at nought, over the quantities that have an error (known)
// and those that are solved for (sought).
//
// The formulas are those of data reconciliation (Kuehn and Davidson 1961; the
// projection of what is not measured, Crowe, Garcia Campos and Hrymak 1983;
// references from memory, unverified), with a singular value decomposition for
// the projection and for the inverse, so that a balance that says nothing is
// left out by itself.
type linear struct {
	known, sought []int
	rows          int // balances, then limits

	project *mat.Dense // balances that are left when what is sought is taken out
	a       *mat.Dense // all rows over known
	scale   *mat.Dense // lower root of the errors' covariance
	inverse *mat.Dense // of what is sought: sought = inverse (c - a x)
	blind   []bool     // of sought: the balances do not reach it

	root   *mat.Dense // S^-1 U' of the projected rows in units of their own error: one row for each independent check
	spread *mat.Dense // V: the directions in which known is checked
}

// size of a matrix that may have no columns.
func dense(r, c int) *mat.Dense {
	if r == 0 || c == 0 {
		return nil
	}
	return mat.NewDense(r, c, nil)
}

// newLinear takes the slopes of the balances at x and the limits in force.
func newLinear(p Problem, x []float64, held []int, root *mat.Dense) *linear {
	l := &linear{rows: len(p.Balances) + len(held), scale: root}
	for j, q := range p.Quantities {
		switch {
		case q.unknown():
			l.sought = append(l.sought, j)
		case q.known():
			l.known = append(l.known, j)
		}
	}
	l.a = l.slopes(p, x, held, l.known)
	l.takeOut(l.slopes(p, x, held, l.sought))
	l.checks()
	return l
}

func (l *linear) slopes(p Problem, x []float64, held, of []int) *mat.Dense {
	m := dense(l.rows, len(of))
	for col, j := range of {
		for i, b := range p.Balances {
			for _, t := range b.Terms {
				m.Set(i, col, m.At(i, col)+t.slope(x, j))
			}
		}
		for i, h := range held {
			if h == j {
				m.Set(len(p.Balances)+i, col, 1)
			}
		}
	}
	return m
}

// takeOut finds the combinations of rows that hold nothing of what is sought,
// and what gives the sought from the known.
func (l *linear) takeOut(sought *mat.Dense) {
	l.blind = make([]bool, len(l.sought))
	if sought == nil {
		l.project = dense(l.rows, l.rows)
		for i := range l.rows {
			l.project.Set(i, i, 1)
		}
		return
	}
	// Columns of one length, so that a share and a mass are of equal weight.
	lengths := make([]float64, len(l.sought))
	scaled := mat.DenseCopyOf(sought)
	for j := range l.sought {
		if lengths[j] = mat.Norm(sought.ColView(j), 2); lengths[j] == 0 {
			lengths[j] = 1
		}
		for i := range l.rows {
			scaled.Set(i, j, scaled.At(i, j)/lengths[j])
		}
	}
	var svd mat.SVD
	if !svd.Factorize(scaled, mat.SVDFull) {
		return
	}
	var u, v mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)
	values := svd.Values(nil)
	rank := rankOf(values)
	if l.project = dense(l.rows-rank, l.rows); l.project != nil {
		l.project.Copy(u.Slice(0, l.rows, rank, l.rows).T())
	}
	l.inverse = dense(len(l.sought), l.rows)
	for j := range l.sought {
		for i := range l.rows {
			var sum float64
			for k := range rank {
				sum += v.At(j, k) * u.At(i, k) / values[k]
			}
			l.inverse.Set(j, i, sum/lengths[j])
		}
		for k := rank; k < len(l.sought); k++ {
			l.blind[j] = l.blind[j] || math.Abs(v.At(j, k)) > rankShare
		}
	}
}

// checks finds the independent checks: what is left of the balances, in units
// of its own error.
func (l *linear) checks() {
	if l.project == nil || l.a == nil {
		return
	}
	var b, g mat.Dense
	b.Mul(l.project, l.a)
	g.Mul(&b, l.scale)
	var svd mat.SVD
	if !svd.Factorize(&g, mat.SVDThin) {
		return
	}
	var u, v mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)
	values := svd.Values(nil)
	rank := rankOf(values)
	if rank == 0 || values[0] == 0 {
		return
	}
	left, _ := l.project.Dims()
	over := dense(rank, left)
	for k := range rank {
		for i := range left {
			over.Set(k, i, u.At(i, k)/values[k])
		}
	}
	l.root = dense(rank, l.rows)
	l.root.Mul(over, l.project)
	l.spread = mat.DenseCopyOf(v.Slice(0, len(l.known), 0, rank))
}

func rankOf(values []float64) int {
	rank := 0
	for _, v := range values {
		if v > rankShare*values[0] {
			rank++
		}
	}
	return rank
}

// redundancy is how many independent checks there are.
func (l *linear) redundancy() int {
	if l.root == nil {
		return 0
	}
	n, _ := l.root.Dims()
	return n
}

// off is the checks' result in units of their own error, from the rows' c - a y
// taken the other way round: a y - c.
func (l *linear) off(residual []float64) []float64 {
	out := make([]float64, l.redundancy())
	for k := range out {
		for i, r := range residual {
			out[k] += l.root.At(k, i) * r
		}
	}
	return out
}

// adjusted is by how much each known quantity moves.
func (l *linear) adjusted(off []float64) []float64 {
	move := make([]float64, len(l.known))
	if len(off) == 0 {
		return move
	}
	white := make([]float64, len(l.known))
	for j := range white {
		for k, o := range off {
			white[j] += l.spread.At(j, k) * o
		}
	}
	for j := range move {
		for k := range white {
			move[j] += l.scale.At(j, k) * white[k]
		}
	}
	return move
}

// covariance of all quantities after the adjustment; nought for exact ones.
func (l *linear) covariance(n int) *mat.SymDense {
	cov := mat.NewSymDense(n, nil)
	if len(l.known) == 0 {
		return cov
	}
	k := len(l.known)
	left := mat.NewDense(k, k, nil)
	for i := range k {
		left.Set(i, i, 1)
	}
	if l.spread != nil {
		var h mat.Dense
		h.Mul(l.spread, l.spread.T())
		left.Sub(left, &h)
	}
	var known, half mat.Dense
	half.Mul(l.scale, left)
	known.Mul(&half, l.scale.T())
	// All quantities from the known: themselves, and the sought.
	from := mat.NewDense(n, k, nil)
	for i, j := range l.known {
		from.Set(j, i, 1)
	}
	if l.inverse != nil {
		var m mat.Dense
		m.Mul(l.inverse, l.a)
		for i, j := range l.sought {
			for c := range k {
				from.Set(j, c, -m.At(i, c))
			}
		}
	}
	var all, part mat.Dense
	part.Mul(from, &known)
	all.Mul(&part, from.T())
	for i := range n {
		for j := i; j < n; j++ {
			cov.SetSym(i, j, (all.At(i, j)+all.At(j, i))/2)
		}
	}
	return cov
}

// rootOf is the lower root of the covariance of the measured errors.
func rootOf(p Problem) (*mat.Dense, bool) {
	var known []int
	place := map[int]int{}
	for j, q := range p.Quantities {
		if q.known() {
			place[j] = len(known)
			known = append(known, j)
		}
	}
	if len(known) == 0 {
		return nil, true
	}
	cov := mat.NewSymDense(len(known), nil)
	for i, j := range known {
		cov.SetSym(i, i, p.Quantities[j].SD*p.Quantities[j].SD)
	}
	for _, c := range p.Correlations {
		a, okA := place[c.A]
		b, okB := place[c.B]
		if okA && okB {
			cov.SetSym(a, b, c.R*p.Quantities[c.A].SD*p.Quantities[c.B].SD)
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(cov) {
		return nil, false
	}
	var low mat.TriDense
	chol.LTo(&low)
	return mat.DenseCopyOf(&low), true
}
