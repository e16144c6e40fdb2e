// Package shaft solves a small shaft furnace through a smelt: layers of burden sinking on a hearth inside a wall that stores
// heat, with gas going through. See [Shaft].
package shaft

import (
	"errors"
	"math"
	"sync"

	"chargehand/physics"
)

// Shaft is a furnace at one moment of a smelt: a stack of layers on a hearth, inside a wall that stores heat, with gas going
// through it. It is a plain value: assigning it copies it, whole and independent (some 50 kB), so a forecast is a copy that
// is run ahead and dropped. What the copies share never changes.
//
// Solids are followed layer by layer as they sink, so nothing smears on the way and each charge stays a layer with its own
// lots; the gas, which passes in a second or two, is taken through them from below at each step as if steady; the wall and
// the ground conduct. A step takes the gas through every layer with its reactions solved exactly along the layer
// (chain.go), exchanges heat implicitly, conducts along the shaft, lets slag and the iron it carries run down, and
// steps the wall. Enthalpy is the state and temperature follows from it, so energy closes to rounding at any step.
//
// Time is in seconds since light. Steps lie on a fixed grid of [Step] anchored at light. [Shaft.AdvanceTo] stops at the
// last grid point not after the time asked for: looking at a shaft never changes it. An event carries its own time: the step
// it falls in is cut there. So a state depends on the events alone, and is bit-identical however often it was looked at, on
// one build and kind of processor; elsewhere it may differ in the last digits (fused multiplication), a few mK after a day.
//
// What it does not know: one side from the other (the blast comes from one side; the two differ by 200-400 K), where in the
// hearth the bloom sits, how far falling iron burns before the tuyere, natural draught through a furnace that is not blown,
// air that leaks in elsewhere, burning above the top, and heat along the wall (2 cm rings pass on little between them).
type Shaft struct {
	params   Params
	geometry Geometry
	ambient  physics.Air
	blast    Blast
	table    *propertyTable // never changes
	wall     *wallModel     // never changes; another one replaces it

	now, grid int64 // ms since light; ms between grid points
	thickness float64

	layers  [maxLayers]layer // from the bottom up
	count   int
	wallT   [wallRings][wallNodes]float64
	hearth  hearth
	topGas  gasStream
	charges int32

	ledger Ledger
	totals Totals
}

// Step is the time between the points of the fine grid in s.
const Step = 5.0

// Grid is how finely a shaft is solved: the time between grid points in s, and the thickness of a fresh layer in m.
type Grid struct{ Step, Layer float64 }

// The fine grid is the one that figures are read from. The coarse one, for looking ahead and for many furnaces at once, costs
// a third of it and errs some four times as much (TestShaftConverges prints how much), a twentieth of the band all the same.
var (
	Fine   = Grid{Step, 0.015}
	Coarse = Grid{2 * Step, 0.03}
)

// Geometry is the furnace as built, lengths in m: the bore from the tuyere up, the height of the charging mark above the
// tuyere, and the wall's thickness at the tuyere and at the top of the bore. Floor is how far the floor of the hearth lies below
// the tuyere; 0 stands for [UsualFloor].
type Geometry struct {
	Bore                physics.Bore
	Stack               float64
	WallBottom, WallTop float64
	Floor               float64
}

// UsualFloor is how far below the tuyere the floor lies where nobody measured it, m (Markewitz, data sheets of 30 Nov 2016 and 30
// Oct 2021: 15 cm; published furnaces have 10 to 25).
const UsualFloor = 0.15

func (g Geometry) floor() float64 {
	if g.Floor > 0 {
		return g.Floor
	}
	return UsualFloor
}

// Validate returns a *RangeError for a furnace outside what the model can hold: a bore of 5 cm to 2 m, a mark 10 cm to
// 1.28 m above the tuyere, walls of 1 to 50 cm.
func (g Geometry) Validate() error {
	return errors.Join(
		g.Bore.Validate(),
		physics.InRange("stack above the tuyere", g.Stack, 0.1, wallRings*ringHeight),
		physics.InRange("wall thickness at the tuyere", g.WallBottom, 0.01, 0.5),
		physics.InRange("wall thickness at the top", g.WallTop, 0.01, 0.5),
		physics.InRange("floor below the tuyere", g.Floor, 0, 1),
	)
}

// Blast is the metered air in mol/s (see [physics.Air.Flow]) and its temperature in K at the tuyere.
type Blast struct {
	Flow        physics.AirFlow
	Temperature float64
}

// New gives the furnace at light on a grid, of a step from 0.001 s and layers from 1 mm: empty, everything at the temperature
// of the air, no blast.
func New(grid Grid, geometry Geometry, params Params, ambient physics.Air) (Shaft, error) {
	if err := errors.Join(geometry.Validate(), params.Validate(), ambient.Validate()); err != nil {
		return Shaft{}, err
	}
	s := Shaft{
		params: params, geometry: geometry, ambient: ambient, table: properties(),
		grid: max(1, milliseconds(grid.Step)), thickness: max(1e-3, grid.Layer),
	}
	s.wall = newWallModel(geometry, params)
	t := ambient.Temperature
	for r := range s.wallT {
		for k := range s.wallT[r] {
			s.wallT[r][k] = t
		}
	}
	h := &s.hearth
	for k := range h.ground {
		h.ground[k] = t
	}
	h.packing = hearthPacking*s.wall.areaAt(0) + s.wall.below.holds(0, packingDepth)
	h.bath.temperature, h.bath.enthalpy = t, h.packing*t
	s.topGas.temperature = t
	s.blast.Temperature = t
	s.ledger.BurdenHeat = s.Heat()
	return s, nil
}

// Clone gives an independent copy; the same as assignment, for readers.
func (s *Shaft) Clone() Shaft { return *s }

// On gives a copy that goes on on another grid: its steps from the next point of that on, its layers as they merge.
func (s *Shaft) On(grid Grid) Shaft {
	c := *s
	c.grid, c.thickness = max(1, milliseconds(grid.Step)), max(1e-3, grid.Layer)
	return c
}

// Time gives the time of the state in s since light: a grid point, or the moment of the last event.
func (s *Shaft) Time() float64 { return float64(s.now) / 1000 }

// AdvanceTo runs whole grid steps up to the last grid point not after a time in s since light; never backwards.
func (s *Shaft) AdvanceTo(seconds float64) {
	end := milliseconds(seconds)
	for {
		next := s.nextGrid()
		if next > end {
			return
		}
		s.step(float64(next-s.now) / 1000)
		s.now = next
	}
}

// ErrPast: an event before the moment the shaft has reached. Late entries are for a fresh run from light.
var ErrPast = errors.New("physics: event lies before the state of the shaft")

// cutAt brings the shaft exactly to the time of an event.
func (s *Shaft) cutAt(seconds float64) error {
	at := milliseconds(seconds)
	if at < s.now || math.IsNaN(seconds) {
		return ErrPast
	}
	s.AdvanceTo(seconds)
	if at > s.now {
		s.step(float64(at-s.now) / 1000)
		s.now = at
	}
	return nil
}

func (s *Shaft) nextGrid() int64 { return (s.now/s.grid + 1) * s.grid }

func milliseconds(seconds float64) int64 {
	const farthest = 1e7 // s, four months
	return int64(math.Round(1000 * max(0, min(seconds, farthest))))
}

// SetBlast changes the blast at a time in s since light; a zero flow stops it.
func (s *Shaft) SetBlast(at float64, b Blast) error {
	err := errors.Join(
		physics.InRange("blast oxygen", b.Flow.O2, 0, 10), physics.InRange("blast nitrogen", b.Flow.N2, 0, 40),
		physics.InRange("blast moisture", b.Flow.H2O, 0, 10), physics.InRange("blast temperature", b.Temperature, physics.ColdestAir, 1100))
	if err != nil {
		return err
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	s.blast = b
	return nil
}

// SetGeometry changes the furnace at a time in s since light: a bore that has grown, a wall that has worn, a shaft built up.
// Wall temperatures stay where they are; the heat of clay gone or added is booked with the burden's.
func (s *Shaft) SetGeometry(at float64, g Geometry) error {
	if err := g.Validate(); err != nil {
		return err
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	before := s.Heat()
	s.geometry = g
	s.wall = newWallModel(g, s.params)
	s.ledger.BurdenHeat += s.Heat() - before
	return nil
}

// SetParams changes the named numbers at a time in s since light, as when the air factor has been estimated anew.
func (s *Shaft) SetParams(at float64, p Params) error {
	if err := p.Validate(); err != nil {
		return err
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	s.params = p
	s.wall = newWallModel(s.geometry, p)
	return nil
}

// SetAmbient changes the weather round the furnace at a time in s since light.
func (s *Shaft) SetAmbient(at float64, a physics.Air) error {
	if err := a.Validate(); err != nil {
		return err
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	s.ambient = a
	return nil
}

// step moves the state by dt seconds.
func (s *Shaft) step(dt float64) {
	w := papers.Get().(*work)
	w.begin()
	s.layOut(w)
	s.stirBath(w, dt)
	s.sweep(w, dt)
	s.conduct(w, dt)
	s.settle(dt)
	s.merge()
	s.stepWall(w, dt)
	papers.Put(w)
}

// work is the scratch paper of one step.
type work struct {
	bottom   [maxLayers + 1]float64 // m above the tuyere
	height   float64                // of the burden, m
	raceway  float64                // height of it, m
	section  [maxLayers]float64     // m2
	capacity [maxLayers]float64     // J/K
	chord    [maxLayers]enthalpyChord
	mixing   [maxLayers]float64 // W/m/K along the shaft
	wallHeat [wallRings]float64 // W into the wall
	bathGas  float64            // mol CO/s out of the bath
	bathHeat float64            // W with it

	kinetics kinetics
	ore      reduction
	given    [oreSteps]float64
	nusselt  float64

	chain conduction
}

// papers are sheets of scratch paper at rest: to clear one anew for each step cost a twentieth of it.
var papers = sync.Pool{New: func() any { return new(work) }}

// begin clears what a step adds to; all else is written before it is read.
func (w *work) begin() {
	w.wallHeat = [wallRings]float64{}
	w.bathGas, w.bathHeat = 0, 0
}

// layOut stacks the layers.
func (s *Shaft) layOut(w *work) {
	z, area := 0.0, s.wall.areaAt(0)
	for i := range s.count {
		w.bottom[i] = z
		z, area = s.stackOn(z, area, i)
		w.section[i] = area
	}
	w.bottom[s.count], w.height = z, z
}

// StackHeight gives how high the burden stands above the tuyere, m.
func (s *Shaft) StackHeight() float64 {
	z, area := 0.0, s.wall.areaAt(0)
	for i := range s.count {
		z, area = s.stackOn(z, area, i)
	}
	return z
}

// StandsOver tells whether the burden stands higher than so many m, and looks no farther up than that.
func (s *Shaft) StandsOver(height float64) bool {
	z, area := 0.0, s.wall.areaAt(0)
	for i := 0; i < s.count && z <= height; i++ {
		z, area = s.stackOn(z, area, i)
	}
	return z > height
}

// stackOn gives where a layer ends that begins at a height, and the section half way up it, from that of the layer below:
// exact in a straight bore, a millionth off in a tapered one.
func (s *Shaft) stackOn(z, below float64, i int) (top, section float64) {
	v := s.layers[i].volume()
	section = s.wall.areaAt(z + v/(2*below))
	return z + v/section, section
}
