package physics

import (
	"math"
	"strings"
)

// Basis is the state of the material that the shares of an assay are of.
type Basis int

// The bases. Dried is what is taken when none is stated.
const (
	Dried      Basis = iota // free water driven off
	Dug                     // as it comes, wet
	Roasted                 // as it comes from the roast
	Ignited                 // heated through in the laboratory: the loss on ignition is gone
	Normalised              // made to add up to 100, whatever was lost
)

// Assay is what was found in an ore or a slag, in per cent of its mass. It is as stated: nothing in it need be possible.
type Assay struct {
	Slag  bool // else an ore
	Basis Basis
	Parts map[string]float64 // by the names of AssayParts; what was not measured is left out
	Loss  float64            // on ignition, per cent
	// LossKnown is false where no loss was stated.
	LossKnown bool
}

// assayPart is a substance an assay may name: what it holds, as kg per kg.
type assayPart struct {
	name            string
	feo, fe2o3, mno float64
	otherwise       func(*Oxides) *float64
	beyondFeO       bool // iron that is not written as FeO
	loss            bool // leaves on ignition
}

var (
	magnetiteFeO   = MolarMassFeO / MolarMassFe3O4
	magnetiteFe2O3 = MolarMassFe2O3 / MolarMassFe3O4
)

// assayParts are the substances that an assay may name. Those with no place in [Oxides] (barium, sulphur, carbon dioxide,
// water) only count in the sum.
var assayParts = []assayPart{
	{name: "Fe"},
	{name: "FeO", feo: 1},
	{name: "Fe2O3", fe2o3: 1, beyondFeO: true},
	{name: "Fe3O4", feo: magnetiteFeO, fe2o3: magnetiteFe2O3, beyondFeO: true},
	{name: "FeOOH", fe2o3: MolarMassFe2O3 / 2 / Goethite.MolarMass(), beyondFeO: true},
	{name: "FeCO3", feo: MolarMassFeO / Siderite.MolarMass(), beyondFeO: true}, // its carbon dioxide is counted with it
	{name: "SiO2", otherwise: func(o *Oxides) *float64 { return &o.SiO2 }},
	{name: "TiO2", otherwise: func(o *Oxides) *float64 { return &o.TiO2 }},
	{name: "Al2O3", otherwise: func(o *Oxides) *float64 { return &o.Al2O3 }},
	{name: "MnO", mno: 1},
	{name: "Mn3O4", mno: 3 * MolarMassMnO / (3*MolarMassMnO + MolarMassO)},
	{name: "Mn2O3", mno: 2 * MolarMassMnO / (2*MolarMassMnO + MolarMassO)},
	{name: "MnO2", mno: MolarMassMnO / (MolarMassMnO + MolarMassO)},
	{name: "MgO", otherwise: func(o *Oxides) *float64 { return &o.MgO }},
	{name: "CaO", otherwise: func(o *Oxides) *float64 { return &o.CaO }},
	{name: "Na2O", otherwise: func(o *Oxides) *float64 { return &o.Na2O }},
	{name: "K2O", otherwise: func(o *Oxides) *float64 { return &o.K2O }},
	{name: "P2O5", otherwise: func(o *Oxides) *float64 { return &o.P2O5 }},
	{name: "SO3"}, {name: "S"}, {name: "BaO"}, {name: "Cr2O3"}, {name: "V2O5"}, {name: "CoO"}, {name: "NiO"}, {name: "CuO"},
	{name: "ZnO"}, {name: "PbO"}, {name: "As2O3"}, {name: "SrO"}, {name: "ZrO2"}, {name: "C", loss: true},
	{name: "CO2", loss: true}, {name: "H2O", loss: true}, {name: "other"},
}

// AssayParts lists the names that an assay may hold.
func AssayParts() []string {
	names := make([]string, len(assayParts))
	for i, p := range assayParts {
		names[i] = p.name
	}
	return names
}

// AssayPartNamed gives the name of a substance as [AssayParts] has it, whatever its capitals.
func AssayPartNamed(name string) (string, bool) {
	for _, p := range assayParts {
		if strings.EqualFold(p.name, name) {
			return p.name, true
		}
	}
	return "", false
}

// oxygenTaken is the oxygen that FeO takes up when it is ignited to Fe2O3, per kg: by so much a loss on ignition is too small.
const oxygenTaken = MolarMassO / (2 * MolarMassFeO)

// Iron gives the iron in per cent, and whether the assay says: that of the iron oxides or, where there are none or only FeO
// stands beside it, the iron stated.
func (a Assay) Iron() (percent float64, known bool) {
	o := a.Oxides()
	return 100 * IronShareFromOxides(o.FeO/100, o.Fe2O3/100), a.hasIron()
}

func (a Assay) hasIron() bool {
	_, stated := a.Parts["Fe"]
	return stated || a.hasOxideOfIron()
}

func (a Assay) hasOxideOfIron() bool {
	return a.has(func(p assayPart) bool { return p.feo+p.fe2o3 > 0 })
}

func (a Assay) has(which func(assayPart) bool) bool {
	for _, p := range assayParts {
		if _, ok := a.Parts[p.name]; ok && which(p) {
			return true
		}
	}
	return false
}

// ironOfOxides is the iron in the oxides of iron alone, per cent.
func (a Assay) ironOfOxides() float64 {
	sum := 0.0
	for _, p := range assayParts {
		sum += a.Parts[p.name] * (p.feo*Wustite.IronShare() + p.fe2o3*Hematite.IronShare())
	}
	return sum
}

// Oxides gives the assay as slag makers, in per cent. Iron that is stated as iron is FeO in a slag and Fe2O3 in an ore; beside
// FeO alone what it exceeds that by is Fe2O3. A share that is less than nothing counts as none.
func (a Assay) Oxides() (o Oxides) {
	for _, p := range assayParts {
		v := math.Max(0, a.Parts[p.name])
		o.FeO, o.Fe2O3, o.MnO = o.FeO+v*p.feo, o.Fe2O3+v*p.fe2o3, o.MnO+v*p.mno
		if p.otherwise != nil {
			*p.otherwise(&o) += v
		}
	}
	iron, stated := a.Parts["Fe"]
	switch rest := iron - 100*IronShareFromOxides(o.FeO/100, o.Fe2O3/100); {
	case !stated || rest <= 0 || a.has(func(p assayPart) bool { return p.beyondFeO }):
	case a.Slag && !a.hasOxideOfIron():
		o.FeO += rest / Wustite.IronShare()
	default:
		o.Fe2O3 += rest / Hematite.IronShare()
	}
	return o
}

// Sum adds up the assay in per cent: oxides, what else was measured, and the loss on ignition, unless the shares are of what
// that loss has left. Beside a loss iron written as FeO counts with the oxygen that it took up meanwhile. Iron alone adds up to
// nothing.
func (a Assay) Sum() (percent float64, known bool) {
	_, iron := a.Parts["Fe"]
	if len(a.Parts) == 0 || iron && len(a.Parts) == 1 {
		return 0, false
	}
	sum := a.stated()
	if a.counts() {
		sum += oxygenTaken * a.ferrous()
	}
	return sum, true
}

// stated is the sum as it would be printed.
func (a Assay) stated() float64 {
	sum, o := 0.0, a.Oxides()
	if _, ok := a.Parts["Fe"]; ok && !a.has(func(p assayPart) bool { return p.beyondFeO }) {
		sum = o.FeO + o.Fe2O3
		for _, p := range assayParts {
			if p.feo+p.fe2o3 == 0 && p.name != "Fe" {
				sum += a.Parts[p.name]
			}
		}
	} else {
		for name, v := range a.Parts {
			if name != "Fe" {
				sum += v
			}
		}
	}
	if a.counts() {
		sum += a.Loss
	}
	return sum
}

// counts says whether the loss on ignition is part of the sum.
func (a Assay) counts() bool { return a.LossKnown && a.Basis != Ignited && a.Basis != Normalised }

func (a Assay) ferrous() float64 { return math.Max(0, a.Parts["FeO"]) }

// ReducibleIron gives [Oxides.ReducibleIron] of a slag, and whether it applies.
func (a Assay) ReducibleIron() (index float64, applies bool) {
	o := a.Oxides()
	if !a.Slag || !a.knowsSilica() || o.ferrousTotal() <= 0 {
		return 0, false
	}
	return o.ReducibleIron(), true
}

func (a Assay) knowsSilica() bool { _, ok := a.Parts["SiO2"]; return ok }

// Melts gives where a slag is all molten, K, and whether the assay says.
func (a Assay) Melts() (liquidus Band, applies bool) {
	if !a.Slag || !a.knowsSilica() || !a.hasIron() {
		return Band{}, false
	}
	b := a.Oxides().Liquidus()
	return b, !b.IsZero()
}

// Runs gives how a slag runs at a heat in K, and whether the assay says.
func (a Assay) Runs(heat Band) (Running, bool) {
	if _, ok := a.Melts(); !ok {
		return Running{}, false
	}
	r := a.Oxides().Running(heat)
	return r, r != Running{}
}

// Slags that a smelt may leave, by [Oxides.ReducibleIron]: of 13 old ones in print (Freiberger Forschungshefte D 6, table 2)
// most lie between the first and the last; 1 is fayalite; beyond 2 lies one.
const (
	ironRichSlag, fayaliteSlag, ironPoorSlag = 0.7, 1.0, 1.5
	poorestSlag                              = 2.0
)

// WallAndAshSilica is the silica in kg that wall and ash bring to the slag of 100 kg of ore: 5 kg of clay worn from the wall at
// 65 %, and the ash of 100 kg of charcoal, 2.5 % with a quarter of it silica (assumed; nothing published tells them apart).
const WallAndAshSilica = 4.0

// SilicaTakes gives the iron in kg that some silica in kg takes into slags of a reducible-iron index of 1.5 (10th percentile),
// 1 and 0.7 (90th).
func SilicaTakes(silica float64) Band {
	return Band{P10: ironBoundBy(silica, ironPoorSlag), P50: ironBoundBy(silica, fayaliteSlag), P90: ironBoundBy(silica, ironRichSlag)}
}

// The loss of an ore of which only normalised shares are known, as a share: roasted through, goethite, and old "limonite".
var NormalisedLoss = Band{P10: 0, P50: 0.101, P90: 0.145}

// IronToBeHad gives the iron in kg from 100 kg of ore, after its own silica has taken what a slag of a reducible-iron index of
// 0.7 (10th percentile), 1 and 1.5 (90th) holds, and before wall and ash have taken theirs; and whether the assay says. Shares
// of what ignition leaves are brought back by the loss stated; those made to add up to 100 by one from nothing to 14.5 %.
func (a Assay) IronToBeHad() (kg Band, applies bool) {
	iron, known := a.Iron()
	if a.Slag || !known || !a.knowsSilica() || a.impossible() {
		return Band{}, false
	}
	at := func(index, loss float64) float64 {
		return math.Max(0, iron-a.boundIron(index)) * (1 - loss)
	}
	loss := Band{}
	switch {
	case a.LossKnown && (a.Basis == Ignited || a.Basis == Normalised):
		l := min(1, max(0, a.Loss/100))
		loss = Band{l, l, l}
	case a.Basis == Normalised:
		loss = NormalisedLoss
	}
	return Band{P10: at(ironRichSlag, loss.P90), P50: at(fayaliteSlag, loss.P50), P90: at(ironPoorSlag, loss.P10)}, true
}

// boundIron is the iron that the silica takes into a slag of an index, per cent.
func (a Assay) boundIron(index float64) float64 {
	return ironBoundBy(a.Oxides().SiO2, index)
}

func ironBoundBy(silica, index float64) float64 {
	return 2 * MolarMassFe / MolarMassSiO2 * silica / index
}

// CeilingOfIron is the most iron that the material can hold, per cent: that of magnetite in an ore, of FeO in a slag.
func (a Assay) CeilingOfIron() float64 {
	if a.Slag {
		return 100 * Wustite.IronShare()
	}
	return 100 * Magnetite.IronShare()
}

// impossible says that what is stated cannot be: more iron than any mineral holds, or a share that is none.
func (a Assay) impossible() bool {
	for _, v := range a.Parts {
		if v < 0 || v > 100 {
			return true
		}
	}
	iron, _ := a.Iron()
	return math.Max(iron, a.Parts["Fe"]) > a.CeilingOfIron()+100*roundingSlack
}
