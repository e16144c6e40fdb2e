package forge

import (
	"math"

	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/house"
)

// IronDensity is that of pure iron, kg/m3.
const IronDensity = 7870

// How far masses may part without a word: two scales outdoors (assumed).
const scales = 0.03

// Grew tells whether a mass grew by more than scales explain.
func Grew(before, after float64) bool { return before > 0 && after > (1+scales)*before }

// DensityBySize is the density of a bar in kg/m3 by its mass and its size, where both are
// known.
func DensityBySize(kg float64, size []entry.Millimetre) (float64, bool) {
	if len(size) != 3 || kg <= 0 {
		return 0, false
	}
	mm3 := float64(size[0]) * float64(size[1]) * float64(size[2])
	if mm3 <= 0 {
		return 0, false
	}
	return kg / (mm3 * 1e-9), true
}

// DensityInWater is the density of a piece by its weight in air and hung in water.
func DensityInWater(w entry.PieceWeighed) (float64, bool) {
	air, water := float64(w.Mass), float64(w.InWater.Value)
	if !w.InWater.Known || water >= air {
		return 0, false
	}
	return 1000 * air / (air - water), true
}

// TooDense tells whether a density is more than that of iron.
func TooDense(density float64) bool { return density > IronDensity }

// SlagIn is the share of slag in a piece weighed in air and in water, by mass: a wide
// band, for nobody sees the pores.
func SlagIn(w entry.PieceWeighed) (low, high float64, known bool) {
	if !w.InWater.Known {
		return 0, 0, false
	}
	of := account.SlagByDensity(float64(w.Mass), float64(w.InWater.Value), w.Soaked)
	return of.Low, of.High, of.Known
}

// PrintedOff is a figure in print that does not belong to the masses beside it.
type PrintedOff struct {
	Of     string
	Loss   bool    // it is the loss in kg, not the share in per cent
	Said   float64 // kg or per cent
	Is     float64 // what the masses give
	IsLost bool    // the per cent are of what was lost
	Base   float64 // kg of which it would be so many per cent
}

// CheckPrinted holds what is printed of a piece against its mass.
func CheckPrinted(kg float64, p entry.Printed) (off PrintedOff, found bool) {
	of := float64(p.Mass.Value)
	if kg <= 0 || !p.Mass.Positive() {
		return PrintedOff{}, false
	}
	if p.Lost.Known {
		if is := of - kg; math.Abs(float64(p.Lost.Value)-is) > scales*of {
			return PrintedOff{Of: p.Of, Loss: true, Said: float64(p.Lost.Value), Is: is}, true
		}
	}
	if !p.Percent.Known {
		return PrintedOff{}, false
	}
	said, is := float64(p.Percent.Value), 100*kg/of
	far := func(x float64) bool { return math.Abs(said-x) > 0.5+scales*x }
	if !far(is) {
		return PrintedOff{}, false
	}
	off = PrintedOff{Of: p.Of, Said: said, Is: is, IsLost: is <= 100 && !far(100-is)}
	if said > 0 {
		off.Base = 100 * kg / said
	}
	return off, true
}

// RemarkKind is what is odd about a piece.
type RemarkKind int

// What can be odd.
const (
	MassGrew RemarkKind = iota
	HoldsMore
	DenserThanIron
	PrintOff
)

// Remark is one thing that is odd about a piece: said, never refused.
type Remark struct {
	Kind          RemarkKind
	Said, Against float64 // kg, or kg/m3
	Printed       PrintedOff
}

// Remarks are what is odd about a piece.
func (b Bench) Remarks(i int) (all []Remark) {
	p := b.Pieces[i]
	for n := 1; n < len(p.Stages); n++ {
		was, is := p.Stages[n-1], p.Stages[n]
		if was.AtFire && is.AtFire && was.State != entry.Compacted { // it may have been weighed with another piece of it
			continue
		}
		if Grew(was.Mass, is.Mass) {
			all = append(all, Remark{Kind: MassGrew, Said: is.Mass, Against: was.Mass})
		}
	}
	if parts, of, more := b.holdsMore(i); more {
		all = append(all, Remark{Kind: HoldsMore, Said: parts, Against: of})
	}
	for _, density := range Densities(p) {
		if TooDense(density) {
			all = append(all, Remark{Kind: DenserThanIron, Said: density, Against: IronDensity})
		}
	}
	first, _ := p.First()
	for _, printed := range p.Printed {
		if off, found := CheckPrinted(first, printed); found {
			all = append(all, Remark{Kind: PrintOff, Said: off.Said, Against: off.Is, Printed: off})
		}
	}
	return all
}

// Densities are those that are known of a piece, by its size and in water.
func Densities(p house.Piece) (all []float64) {
	if d, ok := DensityBySize(float64(p.Mass.Value), p.Size); ok {
		all = append(all, d)
	}
	for _, w := range p.Weighed {
		if d, ok := DensityInWater(w); ok {
			all = append(all, d)
		}
	}
	return all
}

// holdsMore tells whether what was made of a piece weighed more than it did.
func (b Bench) holdsMore(i int) (parts, of float64, more bool) {
	p := b.Pieces[i]
	if !p.Mass.Positive() {
		return 0, 0, false
	}
	made := false
	for _, k := range b.kids[i] {
		crop := b.Pieces[k].Form == entry.CropEnd
		if crop && !made {
			continue // cut off what went on: taken off its mass already
		}
		made = made || !crop
		if kg, known := b.of(k, i); known {
			parts += kg
		}
	}
	return parts, float64(p.Mass.Value), Grew(float64(p.Mass.Value), parts)
}
