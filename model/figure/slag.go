package figure

import (
	"math"

	"chargehand/model/solve"
	"chargehand/physics"
)

// slag sets what stands in the hearth, of what it is made, and how it runs.
func (r *Reading) slag(s solve.Solution, basis Basis) {
	slag := s.Hearth.Slag
	mass := slag.Sum()
	if s.UsualOre {
		basis = Guessed
	}
	band := physics.LogNormal(mass, slagSpread)
	r.Figures[SlagMass] = Figure{Band: within(band.P10, band.P50, band.P90, allSlag(slag, s.Totals.OreIron)), Basis: basis}
	if mass < leastSlag || mass*slag.FerrousShare() < leastSlag*leastFerrous {
		return
	}
	iron := 100 * slagIron(slag) / mass
	r.Figures[SlagIron] = Figure{Band: within(iron-slagIronSpread, iron, iron+slagIronSpread, 100*physics.Wustite.IronShare()), Basis: basis}
	r.bath(s)
	if s.Status != solve.IsOver {
		r.runs(slag, s, basis)
	}
}

// allSlag is what a slag would come to with all the iron in it that was charged, kg: with the
// same gangue there cannot be more.
func allSlag(slag physics.Oxides, charged float64) float64 {
	return slag.Sum() - slag.FeO - slag.Fe2O3 + charged/physics.Wustite.IronShare()
}

// bath sets how far below the tuyere the slag stands.
func (r *Reading) bath(s solve.Solution) {
	b := s.Bath.Scale(100)
	if r.SlagLevelMissing() != (LevelMissing{}) || b.IsZero() || s.Status == solve.IsOver {
		return
	}
	floor := float64(r.Light.Furnace.TuyereBase.Value)
	r.Figures[SlagBelowTuyere] = Figure{Band: physics.Band{P10: floor - b.P90, P50: floor - b.P50, P90: floor - b.P10}, Basis: Guessed}
}

// LevelMissing is what is not known of this furnace that a level of the slag rests on.
type LevelMissing struct{ Weighing, Depth bool }

// SlagLevelMissing tells what would have to be known for the slag to have a level.
func (r *Reading) SlagLevelMissing() LevelMissing {
	return LevelMissing{Weighing: !r.SlagWeighed.Known, Depth: !r.Light.Furnace.TuyereBase.Positive()}
}

// slagIron is the iron in a slag, kg.
func slagIron(o physics.Oxides) float64 {
	return physics.IronShareFromOxides(o.FeO, o.Fe2O3)
}

// shownFerrous are the shares of FeO, per cent, at which the stiffness of a slag
// is laid beside its own: 14 published slags of this trade lie between 40 and
// 75 (31 to 58 % iron; see slagIronSpread).
var shownFerrous = []float64{35, 45, 55, 65, 75}

// runs sets when the slag melts and how stiff it is, and what more or less iron
// in it would do: the reason why a slag with too little of it does not run.
func (r *Reading) runs(slag physics.Oxides, s solve.Solution, basis Basis) {
	melts := slag.Liquidus()
	r.Figures[SlagMelts] = Figure{Band: physics.Band{P10: physics.ToCelsius(melts.P10), P50: physics.ToCelsius(melts.P50), P90: physics.ToCelsius(melts.P90)}, Basis: basis}
	if index := slag.ReducibleIronIndex(); !math.IsInf(index, 0) {
		poor, rich := r.ferrous(slag)
		r.Figures[ReducibleIron] = Figure{Band: physics.Band{P10: slag.WithFerrous(rich).ReducibleIronIndex(), P50: index, P90: slag.WithFerrous(poor).ReducibleIronIndex()}, Basis: basis}
	}
	r.Running = slag.Running(r.hearth(s))
	r.Figures[SlagStiffness] = Figure{Band: r.stiffness(slag, s), Basis: basis}
	for _, f := range shownFerrous {
		r.Poorer = append(r.Poorer, SlagPoint{f, slag.WithFerrous(f / 100).Stiffness(r.hearth(s).P50).P50})
	}
}

// ferrous is the share of FeO in the slag at the ends of the band of its iron.
func (r *Reading) ferrous(slag physics.Oxides) (poor, rich float64) {
	iron := r.Figures[SlagIron]
	perIron := 1 / (100 * physics.Wustite.IronShare())
	at := slag.FerrousShare()
	return max(0, at-(iron.P50-iron.P10)*perIron), min(0.95, at+(iron.P90-iron.P50)*perIron)
}

// stiffness is the viscosity with what makes it uncertain, each by itself and as
// factors: the model of it, the heat of the hearth, and the iron in the slag.
func (r *Reading) stiffness(slag physics.Oxides, s solve.Solution) physics.Band {
	heat := r.hearth(s)
	own := slag.Stiffness(heat.P50)
	poor, rich := r.ferrous(slag)
	at := func(o physics.Oxides, kelvin float64) float64 { return o.Stiffness(kelvin).P50 }
	thinner := factors(own.P50, own.P10, at(slag, heat.P90), at(slag.WithFerrous(rich), heat.P50))
	stiffer := factors(own.P50, own.P90, at(slag, heat.P10), at(slag.WithFerrous(poor), heat.P50))
	return physics.Band{P10: own.P50 / thinner, P50: own.P50, P90: own.P50 * stiffer}
}

// factors is by how much several causes, each by itself, take a value from its
// middle, as one factor of at least 1: their logarithms add up as spreads do.
func factors(middle float64, ends ...float64) float64 {
	sum := 0.0
	for _, e := range ends {
		l := math.Log(e / middle)
		sum += l * l
	}
	return math.Exp(math.Sqrt(sum))
}
