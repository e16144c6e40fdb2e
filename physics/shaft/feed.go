package shaft

import (
	"errors"
	"math"

	"chargehand/physics"
)

// Charge lays portions on top of the burden at a time in s since light, as one charge mixed through and sliced into layers,
// at the temperature of the air. Several charges at one moment are several calls. Ore without charcoal goes into the top
// layer and takes no number of its own.
func (s *Shaft) Charge(at float64, portions ...Portion) error {
	return s.lay(at, s.ambient.Temperature, portions)
}

// Embers lays glowing charcoal (K) on top of the burden: what is left of the preheating fire when the blast starts.
func (s *Shaft) Embers(at, kelvin float64, portions ...Portion) error {
	if err := physics.InRange("temperature of the embers", kelvin, physics.ColdestAir, 1700); err != nil {
		return err
	}
	return s.lay(at, kelvin, portions)
}

func (s *Shaft) lay(at, kelvin float64, portions []Portion) error {
	var sum layer
	for _, p := range portions {
		if err := physics.InRange("mass charged", p.Mass, 0, 100); err != nil {
			return err
		}
		for i, moles := range p.Lot.perKg {
			sum.n[i] += moles * p.Mass
		}
		fuel := p.Lot.fuelVolume * p.Mass
		if fuel > 0 {
			sum.lump = (sum.lump*sum.fuelVolume + p.Lot.lump*fuel) / (sum.fuelVolume + fuel)
		}
		sum.fuelVolume += fuel
		sum.stoneVolume += p.Lot.stoneVolume * p.Mass
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	if !(sum.volume() > 0) {
		return nil
	}
	alone := sum.fuelVolume == 0
	if alone && s.count > 0 { // ore without charcoal belongs to the charge it falls on
		top := &s.layers[s.count-1]
		sum.charge, sum.lump = top.charge, top.lump
	} else {
		s.charges++
		sum.charge = s.charges
		if alone {
			sum.lump = DefaultLump
		}
	}
	sum.temperature, sum.edge, sum.gasT = kelvin, kelvin, kelvin
	row, share := tableRow(kelvin)
	low, rise := s.table.solidEnthalpy(&sum.n, row)
	sum.enthalpy = low + share*rise
	s.bookIn(&sum)

	if alone && s.count > 0 { // and runs down between its lumps
		s.join(&s.layers[s.count-1], &sum)
		return nil
	}
	s.insert(s.count, sum)
	return nil
}

// insert puts in what a layer holds, sliced, below the layer of an index.
func (s *Shaft) insert(index int, l layer) {
	fresh := s.thickness * s.wall.areaAt(s.StackHeight())
	slices := min(max(1, int(math.Ceil(l.volume()/fresh-1e-9))), maxLayers/2)
	for s.count+slices > maxLayers {
		s.thin()
	}
	index = min(index, s.count)
	part := 1 / float64(slices)
	for i := range l.n {
		l.n[i] *= part
	}
	l.enthalpy *= part
	l.fuelVolume *= part
	l.stoneVolume *= part
	copy(s.layers[index+slices:s.count+slices], s.layers[index:s.count])
	for i := range slices {
		s.layers[index+i] = l
	}
	s.count += slices
}

// thin makes room by joining the two neighbours that are smallest together.
func (s *Shaft) thin() {
	best := 0
	for i := 0; i+1 < s.count; i++ {
		if s.layers[i].volume()+s.layers[i+1].volume() < s.layers[best].volume()+s.layers[best+1].volume() {
			best = i
		}
	}
	s.join(&s.layers[best], &s.layers[best+1])
	copy(s.layers[best+1:s.count-1], s.layers[best+2:s.count])
	s.count--
	s.layers[s.count] = layer{}
}

func (s *Shaft) bookIn(l *layer) {
	for i, moles := range l.n {
		for e, atoms := range solidAtoms[i] {
			s.ledger.In[e] += atoms * moles
		}
	}
	s.ledger.BurdenHeat += l.enthalpy
	s.totals.OreIron += (ironAtoms(&l.n) - l.n[solidFe]) * physics.MolarMassFe
}

// PreheatWall sets the inside of the wall as the preheating fire left it: K at the tuyere and at the charging mark, straight
// between and falling evenly to the air outside. Where the wall is warmer already it stays so.
func (s *Shaft) PreheatWall(at, bottom, top float64) error {
	if err := errors.Join(physics.InRange("wall at the tuyere", bottom, physics.ColdestAir, 1700), physics.InRange("wall at the mark", top, physics.ColdestAir, 1700)); err != nil {
		return err
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	before := s.Heat()
	for r := range s.wall.rings {
		z := (float64(r) + 0.5) * ringHeight
		inside := bottom + (top-bottom)*min(1, z/s.geometry.Stack)
		for k := range wallNodes {
			s.wallT[r][k] = max(s.wallT[r][k], inside+(s.ambient.Temperature-inside)*(float64(k)+0.5)/wallNodes)
		}
	}
	s.ledger.BurdenHeat += s.Heat() - before
	return nil
}

// Poke drops the burden by a height in m without burning anything: all charcoal in the shaft packs closer.
func (s *Shaft) Poke(at, drop float64) error {
	if err := s.cutAt(at); err != nil {
		return err
	}
	height := s.StackHeight()
	if err := physics.InRange("drop of the stack", drop, 0, height/2); err != nil {
		return err
	}
	if height > 0 {
		closer := 1 - drop/height
		for i := range s.count {
			s.layers[i].fuelVolume *= closer
			s.layers[i].stoneVolume *= closer
		}
	}
	return nil
}

// Tap runs off a share (0 to 1) of the slag in the bath.
func (s *Shaft) Tap(at, share float64) error {
	if err := physics.InRange("share of the slag tapped", share, 0, 1); err != nil {
		return err
	}
	if err := s.cutAt(at); err != nil {
		return err
	}
	b := &s.hearth.bath
	var gone [solidCount]float64
	for j := range gone {
		if isSlag[j] {
			gone[j] = b.n[j] * share
		}
	}
	s.totals.SlagTapped += slagMass(&gone)
	s.takeOut(&gone, s.hearth.fusion*share)
	s.hearth.fusion *= 1 - share
	return nil
}

// TakeBloom takes the iron out of the hearth, with its carbon.
func (s *Shaft) TakeBloom(at float64) error {
	if err := s.cutAt(at); err != nil {
		return err
	}
	var gone [solidCount]float64
	gone[solidFe], gone[solidC] = s.hearth.bath.n[solidFe], s.hearth.bath.n[solidC]
	s.totals.IronTaken += gone[solidFe] * physics.MolarMassFe
	s.takeOut(&gone, 0)
	return nil
}

func (s *Shaft) takeOut(gone *[solidCount]float64, fusion float64) {
	b := &s.hearth.bath
	row, share := tableRow(b.temperature)
	low, rise := s.table.solidEnthalpy(gone, row)
	heat := low + share*rise
	for j, moles := range gone {
		b.n[j] -= moles
		for e, atoms := range solidAtoms[j] {
			s.ledger.Out[e] += atoms * moles
		}
	}
	b.enthalpy -= heat
	s.ledger.BurdenHeat -= heat + fusion
	b.temperature = s.table.solidTemperature(&b.n, s.hearth.packing, b.enthalpy, b.temperature)
}
