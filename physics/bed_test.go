package physics_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"chargehand/physics"
)

func TestShaftVolumes(t *testing.T) {
	// Published shaft volumes (Dark Ages Re-Creation Company pages): cm bore x cm height to litres. They are printed to a
	// tenth and agree with pi taken as 3.14, so pi's own digits move the last by 0.03 litres.
	for _, row := range []struct{ bore, height, litres float64 }{{25, 55, 27.0}, {25, 85, 41.7}, {28, 76, 46.8}, {29, 97, 64.0}} {
		bore := physics.Cylinder(row.bore/100, row.height/100)
		litres := 1000 * bore.VolumeBelow(bore.Height) * 3.14 / math.Pi
		if got := math.Round(litres*10) / 10; got != row.litres {
			t.Errorf("%g x %g cm: got %g litres, want %g", row.bore, row.height, got, row.litres)
		}
	}
}

func TestBucketInTheBore(t *testing.T) {
	// Trade figure of the bed notes: a bucket of 1.8 to 2.0 kg fills 18 to 20 cm of a 25 cm bore at 200 kg/m3.
	bore := physics.Cylinder(0.25, 0.6)
	for _, row := range []struct{ kg, low, high float64 }{{1.8, 0.18, 0.19}, {2.0, 0.20, 0.21}} {
		got := bore.Thickness(0.3, must(t)(physics.DefaultBed().Volume(row.kg, 0)))
		if got < row.low || got > row.high {
			t.Errorf("%g kg: got %.3f m, want %g to %g", row.kg, got, row.low, row.high)
		}
		perKg := must(t)(physics.FallPerKg(bore, 0.5, physics.DefaultBed(), 0))
		agree(t, "what a bucket's burning drops", perKg*row.kg, got, 1e-12)
	}
}

func TestOreFillsTheVoids(t *testing.T) {
	bed := physics.Bed{CharcoalBulk: 200, OreLump: 3000, OreShare: 0.35}
	// Worked by hand: 2/200 + 0.35 x 3/3000 = 0.01 + 0.00035 m3.
	agree(t, "2 kg charcoal, 3 kg ore", must(t)(bed.Volume(2, 3)), 0.01035, 1e-12)
	agree(t, "nothing", must(t)(bed.Volume(0, 0)), 0, 0)
	// Worked by hand, 20 cm bore, equal masses: (1/200 + 0.35/3000) / (pi/4 x 0.04) m per kg.
	agree(t, "fall with ore", must(t)(physics.FallPerKg(physics.Cylinder(0.2, 1), 0.5, bed, 1)),
		(1.0/200+0.35/3000)/(math.Pi*0.01), 1e-12)
}

func TestDefaultBulkDensityMeetsPublished(t *testing.T) {
	// 180 to 220 kg/m3 for lump charcoal: general overview of charcoal properties (jfe-project.blogspot.com 2011).
	b := physics.LogNormal(physics.DefaultCharcoalBulk, physics.CharcoalBulkRelSD)
	agree(t, "10th percentile", b.P10, 180, 0.01)
	agree(t, "90th percentile", b.P90, 220, 0.01)
	// Ends of the packing: 155.3 kg/m3 of lumps of 344.6 leave 0.549 void (dos Santos et al. 2020, CERNE 26(1)). Ore in equal
	// mass cannot overfill it: its lumps must be smaller than the voids of its charcoal.
	if ore, void := 1/physics.DefaultOreLump, 0.549/155.3; ore > void {
		t.Errorf("ore of %g m3/kg does not fit voids of %g", ore, void)
	}
}

func TestTaperedBoreAgainstQuadrature(t *testing.T) {
	for _, bore := range []physics.Bore{
		{Bottom: 0.30, Top: 0.22, Height: 0.7}, {Bottom: 0.25, Top: 0.33, Height: 0.5}, {Bottom: 0.25, Top: 0.25 + 1e-10, Height: 1},
	} {
		// An independent integral of the cross-section (gonum, Gauss-Legendre).
		want := quad.Fixed(bore.Area, 0, bore.Height, 20, quad.Legendre{}, 0)
		agree(t, "whole", bore.VolumeBelow(bore.Height), want, 1e-12)
		want = quad.Fixed(bore.Area, 0.1, 0.43, 20, quad.Legendre{}, 0)
		agree(t, "part", bore.VolumeBetween(0.1, 0.43), want, 1e-12)
		agree(t, "above the rim", bore.VolumeBetween(bore.Height, bore.Height+0.1), 0.1*bore.Area(bore.Height), 1e-9)
		agree(t, "below the tuyere", bore.VolumeBelow(-0.1), -0.1*bore.Area(0), 1e-12)
	}
}

func drawBore(t *rapid.T) physics.Bore {
	diameter := rapid.Float64Range(0.05, 2)
	return physics.Bore{
		Bottom: diameter.Draw(t, "bottom"), Top: diameter.Draw(t, "top"), Height: rapid.Float64Range(0.05, 5).Draw(t, "height"),
	}
}

func TestLayersHoldTheirVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bore := drawBore(t)
		z := rapid.Float64Range(-1, 6).Draw(t, "z")
		v := rapid.Float64Range(-0.1, 0.1).Draw(t, "volume")
		thick := bore.Thickness(z, v)
		got := bore.VolumeBetween(z, z+thick)
		if math.Abs(got-v) > 1e-9 {
			t.Fatalf("%v at %g: a layer of %g m3 is %g m thick and holds %g", bore, z, v, thick, got)
		}
		if v*thick < 0 && math.Abs(v) > 1e-12 { // below, the sum of two volumes has lost its digits
			t.Fatalf("a volume of %g is %g thick", v, thick)
		}
	})
}

func TestBedRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	if err := physics.DefaultBed().Validate(); err != nil {
		t.Error(err)
	}
	for _, bed := range []physics.Bed{{}, {CharcoalBulk: 0.2, OreLump: 3, OreShare: 0.35}, {200, 3000, nan}, {200, nan, 0}, {nan, 3000, 0}, {200, 3000, -1}} {
		_, err := bed.Volume(1, 1)
		isRangeError(t, "bed", err)
	}
	for _, mass := range []float64{-1, nan, math.Inf(1)} {
		_, err := physics.DefaultBed().Volume(mass, 0)
		isRangeError(t, "charcoal mass", err)
		_, err = physics.DefaultBed().Volume(0, mass)
		isRangeError(t, "ore mass", err)
		_, err = physics.FallPerKg(physics.Cylinder(0.25, 0.6), mass*10, physics.DefaultBed(), 0)
		isRangeError(t, "height", err)
		_, err = physics.FallPerKg(physics.Cylinder(0.25, 0.6), 0.5, physics.DefaultBed(), mass)
		isRangeError(t, "ratio", err)
	}
	for _, bore := range []physics.Bore{{}, physics.Cylinder(25, 60), {0.25, nan, 0.6}, {nan, 0.25, 0.6}, {0.25, 0.25, nan}, {0.25, -0.25, 0.6}} {
		isRangeError(t, "bore", bore.Validate())
		for _, got := range []float64{bore.Diameter(0), bore.Area(0.3), bore.VolumeBelow(0.3), bore.VolumeBetween(0, 1), bore.Thickness(0.3, 0.01)} {
			if got != 0 {
				t.Errorf("impossible bore %v: got %g, want nought", bore, got)
			}
		}
	}
}

func TestUndefinedHeightsGiveNought(t *testing.T) {
	bore := physics.Cylinder(0.25, 0.6)
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64} {
		for _, got := range []float64{bore.Diameter(v), bore.Area(v), bore.VolumeBelow(v), bore.Thickness(v, 0.01), bore.Thickness(0.3, v)} {
			if got != 0 {
				t.Errorf("at %g: got %g, want nought", v, got)
			}
		}
	}
}

func BenchmarkThickness(b *testing.B) {
	bore := physics.Bore{Bottom: 0.30, Top: 0.22, Height: 0.7}
	for b.Loop() {
		bore.Thickness(0.3, 0.01)
	}
}
