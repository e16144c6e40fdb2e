package physics

import (
	"errors"
	"math"
)

// BurdenLot is what a kilogram of something charged consists of and the room it takes. Make one with [CharcoalLot], [OreLot],
// [SlagLot] or [FragmentLot].
type BurdenLot struct {
	perKg       [solidCount]float64 // mol/kg as charged
	fuelVolume  float64             // m3/kg
	stoneVolume float64             // m3/kg
	lump        float64             // m; 0 for what is not charcoal
}

// Portion is a mass in kg, as charged, of a lot.
type Portion struct {
	Lot  BurdenLot
	Mass float64
}

// DefaultLump is the mean size of graded charcoal in m: graded 5-25 mm (measuring-heat page of 9 Oct 2011, reference notes);
// calibration study 12-25 mm. Large, uneven lumps and uneven contact of gas act alike. RoughLump is ungraded charcoal of a
// first fill (guess: twice that).
const (
	DefaultLump = 0.017
	RoughLump   = 0.034
)

// charcoalAsh is hardwood ash by mass (from memory, unverified; wood ash varies by a factor of two in each).
var charcoalAsh = Oxides{SiO2: 0.25, Al2O3: 0.05, Fe2O3: 0.04, MnO: 0.02, MgO: 0.08, CaO: 0.40, K2O: 0.12, P2O5: 0.04}

// CharcoalLot describes a lot of charcoal; lump is its mean size in m (3 to 100 mm). Volatiles are what carbon and ash leave.
func CharcoalLot(c Charcoal, bed Bed, lump float64) (BurdenLot, error) {
	if err := errors.Join(c.Validate(), bed.Validate(), inRange("charcoal lump", lump, 0.003, 0.1)); err != nil {
		return BurdenLot{}, err
	}
	dry := c.DryMass(1)
	lot := BurdenLot{fuelVolume: dry / bed.CharcoalBulk, lump: lump}
	lot.perKg[solidC] = dry * c.Carbon / MolarMassC
	lot.perKg[solidVolatiles] = dry * max(0, c.Volatiles()) / molarMassVM
	lot.perKg[solidWater] = (1 - dry) / MolarMassH2O
	charcoalAsh.addTo(&lot.perKg, dry*c.Ash/charcoalAsh.Sum())
	if lot.perKg[solidC] == 0 {
		return BurdenLot{}, &RangeError{Quantity: "charcoal carbon share", Value: c.Carbon, Low: 0.01, High: 1}
	}
	return lot, nil
}

// OreAssay is an ore as charged: its iron mineral and iron share of the dry mass, the other oxides as shares of the dry mass
// (iron oxides in it are ignored), calcite, and kg of water per kg dry. What an assay leaves open counts as four parts of
// silica and one of alumina, the usual gangue of bog ore (recommended model).
type OreAssay struct {
	Mineral  Mineral
	Iron     float64
	Others   Oxides
	Calcite  float64
	Moisture float64
}

// errSiderite: the shaft has no iron carbonate; siderite is roasted before it is charged, to hematite.
var errSiderite = errors.New("physics: siderite is charged roasted, as hematite")

// OreLot describes a lot of ore. An assay with more iron than its mineral can hold, or of more than everything, is an error.
func OreLot(a OreAssay, bed Bed) (BurdenLot, error) {
	others := a.Others
	others.FeO, others.Fe2O3 = 0, 0
	if err := errors.Join(bed.Validate(), CheckIronShare(a.Iron, a.Mineral), others.Validate(),
		inRange("ore moisture", a.Moisture, 0, 2), inRange("calcite share", a.Calcite, 0, 1)); err != nil {
		return BurdenLot{}, err
	}
	if a.Mineral == Siderite {
		return BurdenLot{}, errSiderite
	}
	dry := 1 / (1 + a.Moisture)
	lot := BurdenLot{stoneVolume: bed.OreShare * dry / bed.OreLump}
	iron := dry * a.Iron / MolarMassFe // mol Fe per kg
	switch a.Mineral {
	case Goethite:
		lot.perKg[solidFeOOH] = iron
	case Hematite:
		lot.perKg[solidFe2O3] = iron / 2
	case Magnetite:
		lot.perKg[solidFe3O4] = iron / 3
	default:
		lot.perKg[solidFeO] = iron
	}
	mineral := 0.0
	for i, moles := range lot.perKg {
		mineral += moles * solidMolarMass[i]
	}
	mineral /= dry
	open := 1 - mineral - others.Sum() - a.Calcite
	const assayError = 0.03
	if err := inRange("sum of the assay", 1-open, 0, 1+assayError); err != nil {
		return BurdenLot{}, err
	}
	known := 1.0
	if open < 0 {
		known = (1 - mineral) / (others.Sum() + a.Calcite) // small excess: the gangue gives way
		open = 0
	}
	others.addTo(&lot.perKg, dry*known)
	lot.perKg[solidCaCO3] += dry * known * a.Calcite / molarMassCaCO3
	Oxides{SiO2: 0.8, Al2O3: 0.2}.addTo(&lot.perKg, dry*open)
	lot.perKg[solidWater] = (1 - dry) / MolarMassH2O
	return lot, nil
}

// SlagLot describes slag put back into the furnace, dry; composition as shares of its mass, scaled to a sum of one.
func SlagLot(o Oxides, bed Bed) (BurdenLot, error) {
	if err := errors.Join(bed.Validate(), o.Validate()); err != nil {
		return BurdenLot{}, err
	}
	if err := inRange("sum of the slag assay", o.Sum(), 0.5, 1.1); err != nil {
		return BurdenLot{}, err
	}
	lot := BurdenLot{stoneVolume: bed.OreShare / bed.OreLump}
	o.addTo(&lot.perKg, 1/o.Sum())
	return lot, nil
}

// FragmentLot describes pieces of iron bloom charged again, taken as pure iron.
func FragmentLot(bed Bed) (BurdenLot, error) {
	if err := bed.Validate(); err != nil {
		return BurdenLot{}, err
	}
	lot := BurdenLot{stoneVolume: bed.OreShare / bed.OreLump}
	lot.perKg[solidFe] = 1 / MolarMassFe
	return lot, nil
}

// Charge lays portions on top of the burden at a time in s since light, as one charge mixed through and sliced into layers,
// at the temperature of the air. Several charges at one moment are several calls.
func (s *Shaft) Charge(at float64, portions ...Portion) error {
	return s.lay(at, s.ambient.Temperature, portions)
}

// Embers lays glowing charcoal (K) on top of the burden: what is left of the preheating fire when the blast starts.
func (s *Shaft) Embers(at, kelvin float64, portions ...Portion) error {
	if err := inRange("temperature of the embers", kelvin, coldestAir, 1700); err != nil {
		return err
	}
	return s.lay(at, kelvin, portions)
}

func (s *Shaft) lay(at, kelvin float64, portions []Portion) error {
	var sum layer
	for _, p := range portions {
		if err := inRange("mass charged", p.Mass, 0, 100); err != nil {
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
	s.charges++
	sum.charge = s.charges
	if sum.lump == 0 { // ore alone lies in the charcoal under it
		sum.lump = DefaultLump
		if s.count > 0 {
			sum.lump = s.layers[s.count-1].lump
		}
	}
	sum.temperature, sum.edge, sum.gasT = kelvin, kelvin, kelvin
	row, share := tableRow(kelvin)
	low, rise := s.table.solidEnthalpy(&sum.n, row)
	sum.enthalpy = low + share*rise
	s.bookIn(&sum)

	fresh := s.thickness * s.wall.areaAt(s.StackHeight())
	slices := max(1, int(math.Ceil(sum.volume()/fresh-1e-9)))
	slices = min(slices, maxLayers/2)
	for s.count+slices > maxLayers {
		s.thin()
	}
	part := 1 / float64(slices)
	for i := range sum.n {
		sum.n[i] *= part
	}
	sum.enthalpy *= part
	sum.fuelVolume *= part
	sum.stoneVolume *= part
	for range slices {
		s.layers[s.count] = sum
		s.count++
	}
	if sum.fuelVolume == 0 && s.count > slices {
		// Ore alone runs down between the lumps of the layer below it.
		s.join(&s.layers[s.count-slices-1], &s.layers[s.count-slices])
		copy(s.layers[s.count-slices:s.count-1], s.layers[s.count-slices+1:s.count])
		s.count--
		s.layers[s.count] = layer{}
	}
	return nil
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
	s.totals.OreIron += (ironAtoms(&l.n) - l.n[solidFe]) * MolarMassFe
}

// PreheatWall sets the inside of the wall as the preheating fire left it: K at the tuyere and at the charging mark, straight
// between and falling evenly to the air outside.
func (s *Shaft) PreheatWall(at, bottom, top float64) error {
	if err := errors.Join(inRange("wall at the tuyere", bottom, coldestAir, 1700), inRange("wall at the mark", top, coldestAir, 1700)); err != nil {
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
			s.wallT[r][k] = inside + (s.ambient.Temperature-inside)*(float64(k)+0.5)/wallNodes
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
	if err := inRange("drop of the stack", drop, 0, height/2); err != nil {
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
	if err := inRange("share of the slag tapped", share, 0, 1); err != nil {
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
	s.totals.IronTaken += gone[solidFe] * MolarMassFe
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
