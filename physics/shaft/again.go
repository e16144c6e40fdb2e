package shaft

import (
	"errors"
	"math"

	"chargehand/physics"
)

// What a day's fire leaves in the inside of the wall, K at the tuyere and at the charging mark, and at the floor of the
// hearth. Computed: the published smelts of 30 Nov 2016 and 30 Oct 2021, solved by this package (TestAWorkedWall), end with
// 1420 and 1467 at the tuyere, 626 and 578 at the mark, 1324 and 1357 at the floor, and within a fourth of a steady flow of heat
// through the wall.
const (
	workedBottom, workedTop = 1445.0, 600.0
	workedFloor             = 1340.0
)

// LongestRest is the longest rest that is reckoned, s: after ten days a furnace is as cold as the ground.
const LongestRest = 10 * 24 * 3600.0

// restStep is the step in s in which a rest is gone through. Walls lose their heat in hours.
const restStep = 120.0

// LitAgain takes the furnace from new to what it is so many seconds after the end of a smelt in it, before it is lit and
// charged: wall and ground as hot as a day's fire leaves them, with a steady flow of heat through them, cooled since by the
// same conduction and the same losses as in a smelt, the shaft empty and open. Its wall holds no moisture, which this model
// knows nothing of anyway. What was left in lies on the hearth, as warm as that. A rest of more than [LongestRest] counts as
// that long. The heat that is left is booked as that of the burden: nobody burns for it in this smelt.
func (s *Shaft) LitAgain(rest float64, left ...Portion) error {
	if s.now != 0 || s.count > 0 || s.charges > 0 {
		return errWorked
	}
	if err := physics.InRange("rest", rest, 0, math.MaxFloat64); err != nil {
		return err
	}
	ledger, before := s.ledger, s.Heat()
	s.worked()
	w := papers.Get().(*work)
	w.begin()
	s.layOut(w)
	for rest = min(rest, LongestRest); rest > 0; rest -= restStep {
		dt := min(rest, restStep)
		s.conduct(w, dt)
		s.stepWall(w, dt)
	}
	papers.Put(w)
	s.ledger = ledger
	s.ledger.BurdenHeat += s.Heat() - before
	for _, p := range left {
		if err := physics.InRange("mass left in", p.Mass, 0, 1000); err != nil {
			return err
		}
		s.leave(p)
	}
	return nil
}

// errWorked: what a furnace was before can only be said before anything is done in it.
var errWorked = errors.New("physics: a furnace is lit again before anything is charged in it")

// worked sets wall and ground as a smelt leaves them: the flow of heat through each ring is the same all the way out.
func (s *Shaft) worked() {
	air := s.ambient.Temperature
	for i := range s.wall.rings {
		r := &s.wall.ring[i]
		inside := workedBottom + (workedTop-workedBottom)*min(1, (float64(i)+0.5)*ringHeight/s.geometry.Stack)
		resistance := r.halfCell / r.innerArea
		for _, link := range r.link {
			resistance += 1 / link
		}
		watts, t := (inside-air)/resistance, inside
		t -= watts * r.halfCell / r.innerArea
		for k, link := range r.link {
			s.wallT[i][k] = t
			t -= watts / link
		}
	}
	h := &s.hearth
	// Below the floor it gets colder as along a rod that loses heat to its sides.
	fades := math.Sqrt(s.wall.below.leads / (s.params.HearthConductivity * s.wall.areaAt(0)))
	for k := range h.ground {
		h.ground[k] = air + (workedFloor-air)*math.Exp(-fades*(depthOf(k)-packingDepth))
	}
	h.bath.temperature, h.bath.enthalpy = workedFloor, h.packing*workedFloor
}

// leave lays something on the hearth, as warm as that is.
func (s *Shaft) leave(p Portion) {
	var l layer
	for j, moles := range p.Lot.perKg {
		l.n[j] = moles * p.Mass
	}
	b := &s.hearth.bath
	row, share := tableRow(b.temperature)
	low, rise := s.table.solidEnthalpy(&l.n, row)
	l.enthalpy = low + share*rise
	s.bookIn(&l)
	for j, moles := range l.n {
		b.n[j] += moles
	}
	b.enthalpy += l.enthalpy
	s.warmBath()
}

// WallAt gives the temperature of the inside of the wall at a height in m above the tuyere, K.
func (s *Shaft) WallAt(height float64) float64 {
	first, _ := s.wall.ringsOf(max(0, height), max(0, height))
	return s.wallT[first][0]
}

// WallHeat gives the heat that the wall holds beyond the air outside, J.
func (s *Shaft) WallHeat() float64 {
	sum := 0.0
	for i := range s.wall.rings {
		for k, t := range s.wallT[i] {
			sum += s.wall.ring[i].capacity[k] * (t - s.ambient.Temperature)
		}
	}
	return sum
}
