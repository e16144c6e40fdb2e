package physics

import (
	"errors"
	"math"
)

// How the burden packs until a lot has been weighed in a measure.
const (
	// DefaultCharcoalBulk is the mass of dry lump charcoal that fills a cubic metre, kg/m3: the middle of the published 180 to
	// 220 (general overview, jfe-project.blogspot.com 2011). Light woods lie below: eucalyptus 155 (dos Santos et al. 2020).
	DefaultCharcoalBulk = 200.0

	// CharcoalBulkRelSD puts the 10th and 90th percentile of it at the ends of that range.
	CharcoalBulkRelSD = 0.08

	// DefaultOreLump is the density of roasted ore lumps with their pores, kg/m3: two thirds of what solid hematite with a
	// fifth of silica has, 4500 (from memory, unverified; not in the references). The stack hardly feels it: a lump volume
	// counts for a third, and ore takes a thirtieth of the room of its own mass of charcoal.
	DefaultOreLump = 3000.0

	// DefaultOreShare is the part of the ore's lump volume that makes the stack higher; the rest sinks into the voids between
	// the charcoal. A figure of the recommended shaft model (its equation 1), not measured.
	DefaultOreShare = 0.35
)

// Bed says how a charge packs: bulk density of dry charcoal and lump density of ore in kg/m3, and the share of the ore's lump
// volume that adds to the stack. Damp charcoal fills the same room as dry, so charcoal counts by its dry mass.
type Bed struct {
	CharcoalBulk, OreLump, OreShare float64
}

// DefaultBed is a burden nobody has measured.
func DefaultBed() Bed {
	return Bed{CharcoalBulk: DefaultCharcoalBulk, OreLump: DefaultOreLump, OreShare: DefaultOreShare}
}

// Validate returns a *RangeError for a bulk density outside 80 to 600 kg/m3, a lump density outside 1000 to 6000 (pumice-light
// ore to solid iron oxide), or a share outside 0 to 2 (ore heaped on its own takes more room than its lumps).
func (b Bed) Validate() error {
	return errors.Join(
		InRange("charcoal bulk density", b.CharcoalBulk, 80, 600),
		InRange("ore lump density", b.OreLump, 1000, 6000),
		InRange("ore share of the stack", b.OreShare, 0, 2),
	)
}

// Volume gives the room in m3 that kg of dry charcoal and kg of ore take in the stack. Each mass may be 0 to 1000 kg.
func (b Bed) Volume(dryCharcoal, ore float64) (float64, error) {
	if err := errors.Join(
		b.Validate(),
		InRange("charcoal mass", dryCharcoal, 0, 1000),
		InRange("ore mass", ore, 0, 1000),
	); err != nil {
		return 0, err
	}
	return dryCharcoal/b.CharcoalBulk + b.OreShare*ore/b.OreLump, nil
}

// Bore is the inside of a shaft: diameters in m at its lower and upper end, straight between them over a height in m. Heights
// are counted from the lower end, normally the tuyere. Beyond either end the bore carries on at that end's diameter, so that
// a heap above the rim or a bath below the tuyere still has a volume. A bore that grows is another value.
type Bore struct {
	Bottom, Top, Height float64
}

// Cylinder is a bore of one diameter.
func Cylinder(diameter, height float64) Bore {
	return Bore{Bottom: diameter, Top: diameter, Height: height}
}

// Validate returns a *RangeError for diameters outside 5 cm to 2 m or a height outside 5 cm to 5 m. The other methods give
// nought for a bore that fails and for a height or volume that is undefined or beyond 1000.
func (b Bore) Validate() error {
	return errors.Join(
		InRange("bore at the bottom", b.Bottom, 0.05, 2),
		InRange("bore at the top", b.Top, 0.05, 2),
		InRange("bore height", b.Height, 0.05, 5),
	)
}

// defined says whether the bore, and a height or volume in it, are such as can be at a furnace.
func (b Bore) defined(z, volume float64) bool {
	const far = 1000 // m or m3: beyond it a slip
	return b.Validate() == nil && math.Abs(z) <= far && math.Abs(volume) <= far
}

// Diameter gives the bore in m at a height.
func (b Bore) Diameter(z float64) float64 {
	if !b.defined(z, 0) {
		return 0
	}
	return b.Bottom + (b.Top-b.Bottom)*math.Min(1, math.Max(0, z/b.Height))
}

// Area gives the cross-section in m2 at a height.
func (b Bore) Area(z float64) float64 { return discArea(b.Diameter(z)) }

// VolumeBelow gives the volume in m3 between the lower end and a height; negative below it.
func (b Bore) VolumeBelow(z float64) float64 {
	if !b.defined(z, 0) {
		return 0
	}
	within := math.Min(b.Height, math.Max(0, z))
	d := b.Diameter(within)
	frustum := math.Pi / 12 * within * (b.Bottom*b.Bottom + b.Bottom*d + d*d)
	return frustum + (z-within)*b.Area(z)
}

// VolumeBetween gives the volume in m3 between two heights.
func (b Bore) VolumeBetween(low, high float64) float64 {
	return b.VolumeBelow(high) - b.VolumeBelow(low)
}

// heightHolding is the inverse of VolumeBelow.
func (b Bore) heightHolding(volume float64) float64 {
	whole := b.VolumeBelow(b.Height)
	switch {
	case volume <= 0:
		return volume / b.Area(0)
	case volume >= whole:
		return b.Height + (volume-whole)/b.Area(b.Height)
	}
	// The cube of the diameter grows in step with the volume of a cone; written without the difference of two cubes' roots,
	// which would lose its digits in a bore that is almost straight.
	slope := (b.Top - b.Bottom) / b.Height
	d := math.Cbrt(b.Bottom*b.Bottom*b.Bottom + 12/math.Pi*slope*volume)
	return 12 / math.Pi * volume / (b.Bottom*b.Bottom + b.Bottom*d + d*d)
}

// Thickness gives how thick in m a layer of a volume in m3 lies when its underside is at a height. A negative volume gives,
// as a negative thickness, how far a surface at that height falls when so much is taken from under it.
func (b Bore) Thickness(z, volume float64) float64 {
	if !b.defined(z, volume) {
		return 0
	}
	return b.heightHolding(b.VolumeBelow(z)+volume) - z
}

// FallPerKg gives how far in m the surface of a stack at a height falls for each kg of dry charcoal burned, while orePerCharcoal
// kg of ore leave with it: what a stack of even charges does.
func FallPerKg(bore Bore, z float64, bed Bed, orePerCharcoal float64) (float64, error) {
	if err := errors.Join(bore.Validate(), InRange("stack height", z, -5, 10)); err != nil {
		return 0, err
	}
	perKg, err := bed.Volume(1, orePerCharcoal)
	return perKg / bore.Area(z), err
}

func discArea(diameter float64) float64 { return math.Pi / 4 * diameter * diameter }
