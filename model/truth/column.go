package truth

import "math"

// column is one side of the shaft: the burden from the bottom up, and the wall behind it.
type column struct {
	slices   []slice
	area     float64 // m2
	wall     [rings]float64
	top      stream  // the gas that leaves
	void     float64 // m3 of hollow under a burden that hangs
	hangs    float64 // s for which it will still hang; 0 when it sinks
	standing float64 // m, how high a burden that hangs stands
}

// The wall is followed in rings of so many m; a slice is laid no thicker than thick, and joined to the next one when thin.
const (
	rings, ring = 10, 0.10
	thick, thin = 0.04, 0.012
)

// height is how high the burden stands, m.
func (c *column) height() float64 {
	v := c.void
	for i := range c.slices {
		v += c.slices[i].volume()
	}
	return v / c.area
}

// lay puts a portion on top.
func (c *column) lay(s slice) {
	n := max(1, int(math.Ceil(s.volume()/c.area/thick)))
	p := s.part(1 / float64(n))
	for range n {
		c.slices = append(c.slices, p)
	}
}

// merge joins a slice that has burned to almost nothing to the one above it, and what the last holds falls.
func (c *column) merge() {
	for i := 0; i+1 < len(c.slices); {
		if c.slices[i].volume()/c.area >= thin {
			i++
			continue
		}
		c.slices[i+1].take(&c.slices[i])
		c.slices = append(c.slices[:i], c.slices[i+1:]...)
	}
}

// kinetic is what the sweep needs of the furnace, worked out once.
type kinetic struct {
	burn, solution, exchange float64 // m
	stops                    float64 // K
	reduction                []float64
	wallIn                   float64 // W/m2/K
	mixing                   float64 // W/m/K
	around                   float64 // m of wall round the column
	wallHolds                float64 // J/K of one ring of the wall
}

// half is the share that a height takes of what is half gone in a length.
func half(height, length float64) float64 { return height / (height + length) }

// sweep takes the gas through the column for dt seconds and gives how many mol of carbon it took. The hollow under a burden
// that hangs lets the gas by.
func (c *column) sweep(k *kinetic, eq *balances, air stream, dt float64) (burned float64) {
	g := air
	z := 0.0
	for i := range c.slices {
		s := &c.slices[i]
		h := s.volume() / c.area
		heat, gasHeat := s.heat(), g.heat()
		was := s.kelvin

		if g.o2 > 0 && s.carbon > 0 && was > 600 {
			d := min(g.o2*half(h, k.burn), 0.5*s.carbon/dt)
			g.o2, g.co2, s.carbon = g.o2-d, g.co2+d, s.carbon-d*dt
			burned += d * dt
		}
		if over := was - k.stops; over > 0 && s.carbon > 0 {
			x := at(eq.carbon, was)
			if d := (g.co2 - (1-x)*(g.co+g.co2)) / (1 + x); d > 0 {
				d *= half(h, k.solution) * min(1, over/200)
				d = min(d, 0.5*s.carbon/dt)
				g.co2, g.co, s.carbon = g.co2-d, g.co+2*d, s.carbon-d*dt
				burned += d * dt
			}
		}
		if s.iron > 0 && s.oxygen > 0 && was > 700 && g.o2 < 0.02*g.n2 {
			line := eq.wustite
			if s.oxygen > s.iron {
				line = eq.magnetite
			}
			x, needs := g.monoxide(), at(line, was)
			if x > needs {
				d := s.oxygen * at(k.reduction, was) * (x - needs) / (1 - needs)
				d = min(d, 0.9*g.co, s.oxygen/dt)
				s.oxygen -= d * dt
				g.co, g.co2 = g.co-d, g.co2+d
			}
		}
		if s.water > 0 && was > 370 {
			d := s.water * min(1, (was-370)/100/60*dt) / dt
			s.water -= d * dt
			g.steam += d
		}
		if s.volatile > 0 && was > 650 {
			d := s.volatile * min(1, (was-650)/300/120*dt) / dt
			s.volatile -= d * dt
			g.volatile += d
		}

		// The gas leaves warmer than the slice by what it does not give up in it.
		g.kelvin = was + (g.kelvin-was)*(1-half(h, k.exchange))
		toWall := 0.0
		if r := min(rings-1, int(z/ring)); h > 0 {
			toWall = k.wallIn * k.around * h * (was - c.wall[r]) * dt
			c.wall[r] += toWall / k.wallHolds
		}
		s.warm(heat + dt*(gasHeat-g.heat()) - toWall)
		z += h
	}
	c.top = g
	return burned
}

// conduct evens out neighbours, the hot ones most: glow and whirl.
func (c *column) conduct(k *kinetic, dt float64) {
	for i := 0; i+1 < len(c.slices); i++ {
		a, b := &c.slices[i], &c.slices[i+1]
		hottest := max(a.kelvin, b.kelvin)
		hot := max(0, min(1, (hottest-900)/400)) * max(1, 1+(hottest-1600)/200)
		gap := (a.volume() + b.volume()) / 2 / c.area
		if gap <= 0 {
			continue
		}
		q := (0.5 + hot*k.mixing) * c.area / gap * (a.kelvin - b.kelvin) * dt
		ca, cb := a.capacity(), b.capacity()
		most := 0.25 * math.Abs(a.kelvin-b.kelvin) * min(ca, cb)
		q = max(-most, min(most, q))
		a.kelvin -= q / ca
		b.kelvin += q / cb
	}
}

// at gives the slice at a height, or nil.
func (c *column) at(height float64) *slice {
	z := 0.0
	for i := range c.slices {
		z += c.slices[i].volume() / c.area
		if z >= height {
			return &c.slices[i]
		}
	}
	return nil
}

// lowest gives the mean heat over the lowest so many m, K, and how much of that there is.
func (c *column) lowest(height float64) (kelvin, stands float64) {
	z := 0.0
	for i := range c.slices {
		h := min(c.slices[i].volume()/c.area, height-z)
		if h <= 0 {
			break
		}
		kelvin += h * c.slices[i].kelvin
		z += h
	}
	if z <= 0 {
		return 0, 0
	}
	return kelvin / z, z
}
