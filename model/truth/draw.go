package truth

import (
	"hash/fnv"
	"math"
	"math/rand/v2"
)

// z90 is the normal quantile of the ends of a band of ten to ninety per cent: any table.
const z90 = 1.2815515655446004

// Stream gives the random numbers of one cause in the furnace of a number. Each cause has a stream of its own: what one of
// them does changes nothing of another.
func Stream(number int64, cause string) *rand.Rand {
	h := fnv.New64a()
	h.Write([]byte(cause)) // a hash never fails
	return rand.New(rand.NewPCG(uint64(number), h.Sum64()))
}

// Draw draws the furnace of a number. Noise is by how much everything that varies within a day is multiplied: 1 as Table has
// it. The furnace itself is the same at any noise.
func Draw(number int64, noise float64) Drawn {
	var d Drawn
	for _, r := range Table {
		v := r.at(Stream(number, "drawn "+r.Name).NormFloat64())
		if r.Noise {
			v = math.Min(v*noise, r.Most*math.Max(1, noise))
		}
		*r.field(&d) = v
	}
	return d
}

// at gives the value of a row at a normal deviate: its three percentiles where they stand, and between its ends.
func (r Row) at(z float64) float64 {
	low, mid, high := r.P10, r.P50, r.P90
	if r.Log {
		low, mid, high = math.Log(low), math.Log(mid), math.Log(high)
	}
	v := mid + (high-mid)/z90*z
	if z < 0 {
		v = mid + (mid-low)/z90*z
	}
	if r.Log {
		v = math.Exp(v)
	}
	return math.Max(r.Least, math.Min(r.Most, v))
}

// Of gives the value of a row in a furnace that was drawn.
func (r Row) Of(d Drawn) float64 { return *r.field(&d) }
