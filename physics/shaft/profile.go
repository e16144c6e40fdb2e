package shaft

import "chargehand/physics"

// Layer is one layer of the shaft as a reader sees it: heights in m above the tuyere, temperatures in K, masses in kg.
type Layer struct {
	Bottom, Top float64
	Charge      int     // number of the charge, from 1 in the order they were laid
	Middle      float64 // mean of the solids across the bore
	WallSide    float64 // the solids at the wall
	Gas         float64 // gas leaving the layer

	CO, CO2, H2, H2O, O2 float64 // mole fractions of that gas

	Carbon, Volatiles, Water float64
	Ore                      OreStage
	Slag                     float64 // gangue, ash and wustite
}

// OreStage is where the iron of a layer stands: kg of iron in each.
type OreStage struct {
	Goethite, Hematite, Magnetite, Wustite, Metal float64
}

// Sum gives all iron, kg.
func (o OreStage) Sum() float64 { return o.Goethite + o.Hematite + o.Magnetite + o.Wustite + o.Metal }

// OxygenPerIron gives atoms of oxygen per atom of iron: 1.5 hematite, 4/3 magnetite, 1 wustite, 0 metal; 0 without iron. The
// water of goethite does not count.
func (o OreStage) OxygenPerIron() float64 {
	sum := o.Sum()
	if sum <= 0 {
		return 0
	}
	return (1.5*(o.Goethite+o.Hematite) + 4.0/3*o.Magnetite + o.Wustite) / sum
}

func oreStageOf(n *[solidCount]float64) OreStage {
	return OreStage{
		Goethite: n[solidFeOOH] * physics.MolarMassFe, Hematite: 2 * n[solidFe2O3] * physics.MolarMassFe,
		Magnetite: 3 * n[solidFe3O4] * physics.MolarMassFe, Wustite: n[solidFeO] * physics.MolarMassFe, Metal: n[solidFe] * physics.MolarMassFe,
	}
}

// AppendProfile appends the layers from the bottom up and returns the longer slice, which a caller may reuse.
func (s *Shaft) AppendProfile(to []Layer) []Layer {
	var w work
	s.layOut(&w)
	for i := range s.count {
		l := &s.layers[i]
		v := Layer{
			Bottom: w.bottom[i], Top: w.bottom[i+1], Charge: int(l.charge),
			Middle: l.temperature, WallSide: l.edge, Gas: l.gasT,
			Carbon: l.n[solidC] * physics.MolarMassC, Volatiles: l.n[solidVolatiles] * molarMassVM, Water: l.n[solidWater] * physics.MolarMassH2O,
			Ore: oreStageOf(&l.n), Slag: slagMass(&l.n),
		}
		moles := 0.0
		for _, n := range l.gas {
			moles += n
		}
		if moles > 0 {
			v.CO, v.CO2, v.H2 = l.gas[gasCO]/moles, l.gas[gasCO2]/moles, l.gas[gasH2]/moles
			v.H2O, v.O2 = l.gas[gasH2O]/moles, l.gas[gasO2]/moles
		}
		to = append(to, v)
	}
	return to
}

// TopGas is what leaves the burden: K, mol/s in all, mole fractions.
type TopGas struct {
	Temperature, Moles       float64
	CO, CO2, H2, H2O, O2, N2 float64
}

// TopGas gives the gas over the burden at the last step.
func (s *Shaft) TopGas() TopGas {
	g := &s.topGas
	t := TopGas{Temperature: g.temperature, Moles: g.moles()}
	if t.Moles > 0 {
		t.CO, t.CO2, t.H2 = g.n[gasCO]/t.Moles, g.n[gasCO2]/t.Moles, g.n[gasH2]/t.Moles
		t.H2O, t.O2, t.N2 = g.n[gasH2O]/t.Moles, g.n[gasO2]/t.Moles, g.n[gasN2]/t.Moles
	}
	return t
}

// Hearth is what lies below the tuyere: K, kg.
type Hearth struct {
	Temperature float64
	Iron        float64 // metal
	Carbon      float64 // in the metal
	Slag        physics.Oxides
	// CarbonNow is the mass share of carbon in the iron that comes down now.
	CarbonNow float64
}

// Hearth gives the state of the hearth.
func (s *Shaft) Hearth() Hearth {
	b := &s.hearth.bath
	return Hearth{Temperature: b.temperature, Iron: b.n[solidFe] * physics.MolarMassFe, Carbon: b.n[solidC] * physics.MolarMassC,
		Slag: oxidesOf(&b.n), CarbonNow: s.hearth.carburising}
}

// Totals gives the sums since light.
func (s *Shaft) Totals() Totals { return s.totals }

// Ledger gives the account since light.
func (s *Shaft) Ledger() Ledger { return s.ledger }
