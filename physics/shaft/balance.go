package shaft

// Contents gives the atoms of an element in the shaft and hearth, mol.
func (s *Shaft) Contents(e Element) (mol float64) {
	for i := range s.count {
		mol += atomsIn(&s.layers[i].n, e)
	}
	return mol + atomsIn(&s.hearth.bath.n, e)
}

func atomsIn(n *[solidCount]float64, e Element) (mol float64) {
	for j, moles := range n {
		mol += moles * solidAtoms[j][e]
	}
	return mol
}

// Heat gives the enthalpy in J of everything the account covers: burden, bath, packing, wall and ground.
func (s *Shaft) Heat() float64 {
	h := &s.hearth
	sum := h.bath.enthalpy + h.fusion
	for i := range s.count {
		sum += s.layers[i].enthalpy
	}
	for k, t := range h.ground {
		sum += s.wall.groundHolds(k) * t
	}
	for i := range s.wall.rings {
		for k, t := range s.wallT[i] {
			sum += s.wall.ring[i].capacity[k] * t
		}
	}
	return sum
}

// Imbalance gives how far an element's account is off: contents against in and made up less out, as a share of those two.
func (s *Shaft) Imbalance(e Element) float64 {
	in := s.ledger.In[e] + s.ledger.MadeUp[e]
	if in == 0 {
		return s.Contents(e)
	}
	return (s.Contents(e) - in + s.ledger.Out[e]) / in
}

// HeatImbalance gives how far the account of heat is off, as a share of the heat of burning the carbon burned so far to CO.
func (s *Shaft) HeatImbalance() float64 {
	l := &s.ledger
	due := l.BurdenHeat + l.MadeUpHeat + l.BlastHeat - l.TopGasHeat - l.WallLoss - l.TopLoss - l.GroundLoss - l.LiningLoss
	const carbonToCO = 9.2e6 // J/kg, CODATA
	scale := carbonToCO*s.totals.CarbonBurned + 1e3
	return (s.Heat() - due) / scale
}
