package shaft

import (
	"errors"

	"chargehand/physics"
)

// MakeUp lays charcoal where the shaft has burned more than the furnace did: a portion of a lot, charred and dry, goes into
// the middle of the raceway at the heat it finds there, or at a least one in K, so that what lies above is lifted to where it would be had that much
// less burned. It is booked apart (see [Ledger]); nobody charged it.
func (s *Shaft) MakeUp(at, least float64, p Portion) error {
	if err := errors.Join(physics.InRange("make-up charcoal", p.Mass, 0, 100), physics.InRange("heat of the make-up charcoal", least, physics.ColdestAir, 1700)); err != nil {
		return err
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	sum := layer{fuelVolume: p.Lot.fuelVolume * p.Mass, lump: p.Lot.lump, temperature: least, edge: least, gasT: least}
	if !(sum.fuelVolume > 0) {
		return nil
	}
	sum.n[solidC] = p.Lot.perKg[solidC] * p.Mass
	where := s.insideRaceway()
	if where < s.count {
		l := &s.layers[where]
		sum.temperature, sum.edge, sum.gasT, sum.gas, sum.charge = max(least, l.temperature), l.edge, l.gasT, l.gas, l.charge
	}
	row, share := tableRow(sum.temperature)
	low, rise := s.table.solidEnthalpy(&sum.n, row)
	sum.enthalpy = low + share*rise
	for e, atoms := range solidAtoms[solidC] {
		s.ledger.MadeUp[e] += atoms * sum.n[solidC]
	}
	s.ledger.MadeUpHeat += sum.enthalpy
	s.totals.MadeUp += p.Mass
	s.insert(where, sum)
	return nil
}

// Surplus books portions that were charged at a time in s since light and for which the burden has no room, since it stands
// higher than the furnace's: they have burned already, in a furnace that burns faster. They change nothing but the account.
func (s *Shaft) Surplus(at float64, portions ...Portion) error {
	for _, p := range portions {
		if err := physics.InRange("surplus charcoal", p.Mass, 0, 100); err != nil {
			return err
		}
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	for _, p := range portions {
		for e := range ElementCount {
			s.ledger.Surplus[e] += p.Mass * atomsIn(&p.Lot.perKg, e)
		}
		s.totals.Surplus += p.Mass
	}
	return nil
}

// insideRaceway gives the layer half way up the raceway, or up a burden lower than that.
func (s *Shaft) insideRaceway() int {
	var w work
	s.layOut(&w)
	middle := min(s.raceway(), w.height) / 2
	for i := range s.count {
		if w.bottom[i+1] > middle {
			return i
		}
	}
	return s.count
}

// HoldAlight keeps the lower half of the raceway burning: where none of it is as hot as a heat in K it is brought up to that,
// as people do with a fire that will not catch. It says whether it had to. The heat is booked with that of the embers.
func (s *Shaft) HoldAlight(kelvin float64) bool {
	if !(kelvin < 1700) || s.count == 0 || s.layers[0].temperature >= kelvin {
		return false
	}
	end := s.insideRaceway()
	for i := range min(end+1, s.count) {
		if s.layers[i].temperature >= kelvin {
			return false
		}
	}
	for i := range min(end+1, s.count) {
		l := &s.layers[i]
		row, share := tableRow(kelvin)
		low, rise := s.table.solidEnthalpy(&l.n, row)
		s.ledger.BurdenHeat += low + share*rise - l.enthalpy
		l.enthalpy, l.temperature, l.warming = low+share*rise, kelvin, 0
	}
	return true
}
