package solve

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// What is taken where the furnace does not say, in m: the usual short shaft of
// the published smelts of 2016 and 2021 in testdata.
const (
	usualBore  = 0.28
	usualStack = 0.50
	usualWall  = 0.05 // the one of 2021 went from 6 cm at the tuyere to 3 at the top
	// freeboard is how far the bore goes on above the charging mark when no rim
	// was given.
	freeboard = 0.10
)

// geometryOf is the furnace as the solver takes it, and whether its bore and
// stack were given.
func geometryOf(f entry.Furnace) (g shaft.Geometry, given bool) {
	bore, given := fold.ShaftBore(f)
	if !given {
		bore = physics.Cylinder(usualBore, usualStack)
	}
	g = shaft.Geometry{Bore: bore, Stack: bore.Height, WallBottom: usualWall, WallTop: usualWall}
	if f.Wall.Positive() {
		g.WallBottom = metres(f.Wall)
		g.WallTop = g.WallBottom
	}
	if f.TuyereBase.Positive() {
		g.Floor = metres(f.TuyereBase)
	}
	rim := max(bore.Height+freeboard, metres(f.Rim))
	g.Bore.Top = bore.Bottom + (bore.Top-bore.Bottom)*rim/bore.Height // straight on to the rim
	g.Bore.Height = rim
	if g.Validate() != nil { // a taper that closes, a wall that cannot be: at least the bore itself
		g.Bore = bore
		g.WallBottom, g.WallTop, g.Floor = usualWall, usualWall, 0
	}
	return g, given
}

func metres(m entry.Maybe[entry.Centimetre]) float64 { return float64(m.Value) / 100 }

// calibrated are the named numbers of the shaft, with those that the smelt's
// light took down. One that cannot be is left at its usual value.
func calibrated(by map[string]float64) shaft.Params {
	p := shaft.DefaultParams()
	for _, row := range shaft.ParamTable {
		if v, ok := by[row.Name]; ok {
			if with := row.With(p, v); with.Validate() == nil {
				p = with
			}
		}
	}
	return p
}
