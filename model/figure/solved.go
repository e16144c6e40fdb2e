package figure

import (
	"chargehand/model/entry"
	"chargehand/model/solve"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// fresh is how old a solution may be, on the smelt's clock, and still be called
// of this moment: two steps of the solver's grid, so that the step being solved
// just now does not count as late.
const fresh = 2 * solve.Grid

// WithSolution fills the figures and zones of the shaft solver into a reading.
// It is the one place where they come from. A solution of other entries, or of
// another moment, is filled in too and marked as being solved anew; what the
// solver cannot tell is unknown, and the zones stay the guess that they were. Of
// a smelt that is over it says what there was when the bloom was taken out.
func WithSolution(r *Reading, s solve.Solution) *Reading {
	if r.Phase == "" {
		return r
	}
	r = r.copied()
	r.Solver, r.Status, r.Astray = Solved, s.Status, s.Astray
	if s.Known != r.Known || s.Asked > r.At || r.At-s.Asked >= fresh && s.Status != solve.IsOver {
		r.Solver = Resolving
		if s.Status == solve.NoAir && r.Figures[Air].Known() || s.Status == solve.NoFire && r.Phase != entry.Prepared && r.Phase != entry.Preheat {
			r.Status = solve.Begins // what it lacked has been keyed since
		}
	}
	if s.Status != solve.Computes && s.Status != solve.IsOver {
		return r
	}
	heat := Estimated
	if s.GuessedSizes || s.GuessedAir || s.GuessedMasses || s.Astray {
		heat = Guessed
	}
	if !s.UnknownOre {
		r.slag(s, heat)
		r.iron(s)
	}
	r.Figures[MakeUpCharcoal] = Figure{Band: physics.Exact(s.Totals.MadeUp), Basis: heat}
	r.Figures[SurplusCharcoal] = Figure{Band: physics.Exact(s.Totals.Surplus), Basis: heat}
	if s.Status == solve.IsOver {
		return r
	}
	r.Figures[ModelStackHeight] = Figure{Band: physics.Exact(100 * s.Height), Basis: heat}
	r.temperatures(s, heat)
	r.airFactor(s)
	r.backPressure(s)
	if zs := solvedZones(r, s, heat); len(zs) > 0 {
		r.Zones = r.oreZones(zs)
	}
	return r
}

func (r *Reading) temperatures(s solve.Solution, basis Basis) {
	if s.TopGas.CO+s.TopGas.CO2 > 0 {
		r.Figures[TopGasTemperature] = Figure{Band: celsius(s, s.TopGas.Temperature, s.Height), Basis: basis}
		r.Figures[TopGasCO] = Figure{Band: carbonGas(s.TopGas.CO, s.TopGas.CO2), Basis: basis}
	}
	if shaft.BeyondReadings(s.Hearth.Temperature) {
		basis = Guessed
	}
	r.Figures[HearthTemperature] = Figure{Band: inCelsius(r.hearth(s)), Basis: basis}
}

// hearth is the heat of the hearth in K by the solver and by what was seen.
func (r *Reading) hearth(s solve.Solution) physics.Band {
	return r.Signs.Hearth(s.HearthBand(), s.Hearth.Slag)
}

// HottestRead is the hottest place that was read in furnaces of this kind, Celsius.
const HottestRead = shaft.HottestReadHigh

// BeyondReadings tells whether the model has a place hotter than any that was read in a
// furnace of this kind: that is not to be believed.
func (r *Reading) BeyondReadings() bool {
	for _, z := range r.Zones {
		if z.WallSide.Known && shaft.BeyondReadings(z.Degrees+physics.ZeroCelsius) {
			return true
		}
	}
	h := r.Figures[HearthTemperature]
	return h.Known() && shaft.BeyondReadings(h.P50+physics.ZeroCelsius)
}

// celsius is a temperature in K at a height in m with its band, in Celsius.
func celsius(s solve.Solution, kelvin, height float64) physics.Band {
	return inCelsius(shaft.TemperatureBand(kelvin, height, s.Ambient.Temperature))
}

func inCelsius(b physics.Band) physics.Band {
	return physics.Band{P10: physics.ToCelsius(b.P10), P50: physics.ToCelsius(b.P50), P90: physics.ToCelsius(b.P90)}
}

// backPressure sets what the pressure before the tuyere should have been when it
// was read.
func (r *Reading) backPressure(s solve.Solution) {
	g, ok := s.SampleAt(r.PressedAt)
	if ok && g.Holds > 0 && r.Figures[BackPressure].Known() {
		r.Figures[BackPressureUsual] = Figure{Band: physics.LogNormal(g.Holds, holdsSpread), Basis: Guessed}
	}
}

func (r *Reading) airFactor(s solve.Solution) {
	if s.AirFactor.IsZero() {
		return
	}
	basis := Guessed
	if s.Intervals >= fewestForMeter && !s.Astray {
		basis = Estimated
	}
	r.Figures[AirFactor] = Figure{Band: s.AirFactor, Basis: basis}
}

// solvedZones joins the layers in which the same goes on. The heights are
// stretched to the burden as the reading has it: the estimator has dips and
// charges to the mark to go by, the solver only what burned.
func solvedZones(r *Reading, s solve.Solution, basis Basis) []Zone {
	height := r.Figures[StackHeight]
	if !height.Known() || height.P50 <= 0 || s.Height <= 0 {
		return nil
	}
	stretch := height.P50 / s.Height
	var zs []Zone
	for i := len(s.Profile) - 1; i >= 0; i-- {
		l := s.Profile[i]
		what := processOf[l.Zone()]
		if n := len(zs); n == 0 || zs[n-1].What != what {
			zs = append(zs, Zone{What: what, Top: stretch * l.Top, Basis: basis})
		}
		zs[len(zs)-1].Bottom = stretch * l.Bottom
	}
	for i := range zs {
		middle, wall := zs[i].mean(s.Profile, stretch)
		zs[i].Degrees = physics.ToCelsius(middle)
		height := (zs[i].Top + zs[i].Bottom) / 200
		zs[i].Spread, zs[i].WallSpread = celsius(s, middle, height), celsius(s, wall, height)
		if shaft.BeyondReadings(middle) {
			zs[i].Basis = Guessed
		}
		zs[i].WallSide = entry.Some(entry.Celsius(physics.ToCelsius(wall)))
		zs[i].Gas = Gas{Needs: zs[i].What.LeastCO(zs[i].Degrees)}
		zs[i].Gas.CO, zs[i].Gas.HasCO = zs[i].carbonMonoxide(s.Profile, stretch)
	}
	return zs
}

// mean is the temperature in K over a zone, in the middle and at the wall.
func (z Zone) mean(profile []shaft.Layer, stretch float64) (middle, wall float64) {
	thick := 0.0
	for l, t := range z.layers(profile, stretch) {
		middle, wall, thick = middle+t*l.Middle, wall+t*l.WallSide, thick+t
	}
	if thick <= 0 {
		return physics.ZeroCelsius, physics.ZeroCelsius
	}
	return middle / thick, wall / thick
}

// processOf is what goes on in a zone of the solver, in the words of a reading.
var processOf = map[shaft.Zone]Process{
	shaft.ZoneCold: Drying, shaft.ZoneDrying: Drying, shaft.ZoneRoasting: Roasting, shaft.ZoneHematite: RedToBlack,
	shaft.ZoneMagnetite: LosesOxygen, shaft.ZoneWustite: IronForms, shaft.ZoneSlag: SlagRuns, shaft.ZoneBurning: Burning,
}
