package shaft

import (
	"math"

	"chargehand/physics"
)

// charcoalVoid is the share of a charcoal bed between the lumps (0.45-0.55 for screened 15-50 mm; 0.55 from measured bulk and
// lump densities of eucalyptus, dos Santos et al. 2020).
const charcoalVoid = 0.5

// Gas phase limits: below about 900 K neither the burning of CO nor the water-gas shift is fast (assumed).
const (
	gasLightLow, gasLightHigh = 850.0, 950.0
	shiftLength               = 0.03 // m over which the water-gas shift relaxes
)

// gasStream is the gas between two layers: flows in mol/s, temperature, and enthalpy flow in W.
type gasStream struct {
	n           [gasCount]float64
	temperature float64
	heat        float64
}

func (g *gasStream) moles() (sum float64) {
	for _, n := range g.n {
		sum += n
	}
	return sum
}

// air takes in some of the blast.
type airShare struct {
	n           [gasCount]float64 // mol/s
	heat        float64           // W
	temperature float64
}

// reduction is what a layer's ore offers: speeds per layer and mole of gas partner, and how much each step can still do.
type reduction struct {
	active          bool
	co, h2          [oreSteps]float64 // per layer, times the drive in mol/s gives mol O/s
	forward, behind [oreSteps]float64 // mol O that the step can still give up, or take back
}

// react takes the gas through a layer for dt seconds: composition of gas and solids change, energy does not appear here. The
// balance of atoms is exact by construction: every extent is booked once on each side.
func (s *Shaft) react(w *work, l *layer, g *gasStream, air *airShare, thick, dt float64) {
	k := &w.kinetics
	s.table.kineticsAt(l.temperature+lookAhead(l, dt), k)
	moles := g.moles()
	fed := 0.0
	for _, n := range air.n {
		fed += n
	}
	through := moles + fed/2
	if !(through > 1e-9) {
		return
	}
	pressure := s.ambient.Pressure / physics.Bar
	meanGas := (l.temperature + g.temperature) / 2
	film := s.table.transportAt(meanGas)
	volumeFlow := through * physics.GasConstant * meanGas / s.ambient.Pressure
	surface := 6 * (1 - charcoalVoid) / l.lump * l.fuelVolume * s.params.ContactFactor
	sherwood := w.nusselt
	filmSpeed := sherwood * film.diffusivity / pressure / l.lump * surface // m3/s

	// Oxygen: on the charcoal, on bare iron, and with CO and hydrogen in the pores.
	carbonRate := 0.0
	if surface > 0 && l.n[solidC] > 0 {
		carbonRate = inSeries(filmSpeed, k.combustion*surface) / volumeFlow
	}
	hot := ramp(g.temperature, gasLightLow, gasLightHigh)
	if hot < 1 {
		hot = max(hot, ramp(l.temperature, gasLightLow, gasLightHigh))
	}
	fuelGas := g.n[gasCO] + g.n[gasH2]
	poreRate := 0.0
	if fuelGas > 0 {
		poreRate = hot * thick / s.params.PoreMixingLength
	}
	oxygen := oxygenPath{decay: 1}
	if g.n[gasO2]+air.n[gasO2] > 1e-12 {
		oxygen = burnOxygen(g.n[gasO2], air.n[gasO2], carbonRate+poreRate)
	}
	onCarbon, inPores, onIron := 0.0, 0.0, 0.0
	if oxygen.burned > 0 {
		inPores = min(oxygen.burned*poreRate/oxygen.rate, 0.45*fuelGas)
		onCarbon = oxygen.burned * carbonRate / oxygen.rate
		if iron := l.n[solidFe]; iron > 0 && carbonRate > 0 {
			// Re-oxidation before the tuyere. Iron lies bare in the share of the solid's volume that it has: 7.1e-6 m3/mol.
			// Iron already in the hearth is out of the blast's way here, and so is slag: magnetite in slag, which is
			// reported of weak fires, only comes down as ore that never was reduced.
			share := 7.1e-6 * iron / (7.1e-6*iron + (1-charcoalVoid)*l.fuelVolume)
			onIron = min(onCarbon*share, 0.2*iron/dt)
			onCarbon -= onCarbon * share
		}
		onCarbon = min(onCarbon, 0.9*l.n[solidC]/dt)
	}
	coShare := 0.0
	if fuelGas > 0 {
		coShare = g.n[gasCO] / fuelGas
	}
	poreCO := 2 * inPores * coShare
	poreH2 := 2*inPores - poreCO

	// Charcoal with CO2 and steam: inside the lump with pore diffusion, then through the film.
	loss, steamLoss := 0.0, 0.0
	if carbonRate > 0 && k.gasification > 1e-7 { // below some 780 K nothing is left of it
		lumpCarbon := l.n[solidC] / (l.fuelVolume * (1 - charcoalVoid))
		speed := s.params.CharReactivity * k.gasification * lumpCarbon * physics.GasConstant * l.temperature / physics.Bar // 1/s
		thiele := l.lump / 6 * math.Sqrt(speed*pressure/(s.params.PoreDiffusion*film.diffusivity))
		effectiveness := 1 - thiele*thiele/3 // tanh(x)/x at its two ends
		if thiele > 8 {
			effectiveness = 1 / thiele
		} else if thiele > 0.05 {
			effectiveness = math.Tanh(thiele) / thiele
		}
		inside := speed * effectiveness * (1 - charcoalVoid) * l.fuelVolume // m3/s
		loss = inSeries(inside, filmSpeed) / volumeFlow
		// Steam goes 1.5 times as fast inside (assumed) and its film is 1.4 times as thin (diffusivity).
		steamLoss = inSeries(1.5*inside, 1.4*filmSpeed) / volumeFlow
	}

	ore := &w.ore
	s.oreSpeeds(l, k, through, dt, ore)
	madeCO2 := onCarbon + poreCO
	carbonGas := g.n[gasCO] + g.n[gasCO2] + onCarbon/2
	// What carbon leaves of CO2 grows with the CO it makes: floor and slope of it against the CO2 taken.
	stiff := 4 * g.n[gasCO] / through * pressure * k.boudouard
	floor := stiff / 4 * g.n[gasCO]
	gasified, oreCO := s.shareOut(w, oxygen, g.n[gasCO2], madeCO2, loss, floor, stiff, carbonGas, &k.boundaryCO, &ore.co, ore, dt)
	gasified = min(gasified, 0.9*(l.n[solidC]/dt-onCarbon))

	hydrogen := g.n[gasH2] + g.n[gasH2O] + air.n[gasH2O]/2
	steamed, oreH2 := 0.0, 0.0
	var oreCOSteps, oreH2Steps [oreSteps]float64
	oreCOSteps = w.given
	if hydrogen > 0 {
		stiff := (g.n[gasCO] + g.n[gasH2]) / through * pressure * k.steam
		floor := g.n[gasCO] / through * g.n[gasH2] * pressure * k.steam
		steamed, oreH2 = s.shareOut(w, oxygen, g.n[gasH2O]+air.n[gasH2O]/2, poreH2, steamLoss, floor, stiff, hydrogen, &k.boundaryH2, &ore.h2, ore, dt)
		steamed = min(steamed, 0.9*(l.n[solidC]/dt-onCarbon-gasified))
		oreH2Steps = w.given
	}

	// Nothing may go below zero: whoever would overdraw a gas gets less.
	gasified = max(0, min(gasified, g.n[gasCO2]+air.n[gasCO2]+madeCO2+oreCO))
	steamed = max(0, min(steamed, g.n[gasH2O]+air.n[gasH2O]+poreH2+oreH2))
	if have := g.n[gasCO] - poreCO + 2*gasified + steamed; oreCO > have {
		scale(&oreCOSteps, have/oreCO)
		oreCO = have
	}
	if have := g.n[gasCO2] + madeCO2 - gasified; -oreCO > have {
		scale(&oreCOSteps, have/-oreCO)
		oreCO = -have
	}
	if have := g.n[gasH2] - poreH2 + steamed; oreH2 > have {
		scale(&oreH2Steps, have/oreH2)
		oreH2 = have
	}
	if have := g.n[gasH2O] + air.n[gasH2O] + poreH2 - steamed; -oreH2 > have {
		scale(&oreH2Steps, have/-oreH2)
		oreH2 = -have
	}

	for i := range g.n {
		g.n[i] += air.n[i]
	}
	g.n[gasO2] = max(0, g.n[gasO2]-onCarbon-onIron-inPores)
	g.n[gasCO] += 2*gasified + steamed - poreCO - oreCO
	g.n[gasCO2] += onCarbon + poreCO - gasified + oreCO
	g.n[gasH2] += steamed - poreH2 - oreH2
	g.n[gasH2O] += poreH2 - steamed + oreH2
	s.shiftWaterGas(g, hot, k.waterGas, thick)

	burned := (onCarbon + gasified + steamed) * dt
	if burned > 0 {
		l.fuelVolume *= 1 - burned/l.n[solidC]
		l.n[solidC] -= burned
		s.totals.LastStepCarbon += burned / dt * physics.MolarMassC
	}
	if onIron > 0 {
		l.n[solidFe] -= 2 * onIron * dt
		l.n[solidFeO] += 2 * onIron * dt
	}
	if ore.active {
		for i := range oreSteps {
			oreCOSteps[i] += oreH2Steps[i]
		}
		s.reduceOre(l, &oreCOSteps, dt)
	}
}

func scale(v *[oreSteps]float64, by float64) {
	for i := range v {
		v[i] *= by
	}
}

// inSeries gives the speed of two steps one after the other.
func inSeries(a, b float64) float64 {
	if a+b == 0 {
		return 0
	}
	return a * b / (a + b)
}

// stepMost is how much of an oxide one gas partner may turn in a time step: neighbouring steps driven both ways by two
// partners out of balance then still leave some of it.
const stepMost = 0.28

// shareOut solves one oxidised partner along the layer and says what the charcoal took of it and what the ore added to it,
// mol/s. What each step of the ore gave is left in w.given.
func (s *Shaft) shareOut(w *work, oxygen oxygenPath, in, made, loss, floor, stiff, partners float64, boundary, speed *[oreSteps]float64,
	ore *reduction, dt float64) (taken, given float64) {
	w.given = [oreSteps]float64{}
	if loss == 0 && !ore.active {
		return 0, 0
	}
	if in+made < floor {
		loss = 0 // carbon is not laid down again: below 900 C that needs bare iron and time it does not get
	} else {
		loss *= 1 + stiff
		floor = (floor + stiff*(in+made)) / (1 + stiff)
	}
	rate, pull := loss, loss*floor
	var used [oreSteps]float64
	if ore.active {
		for i, v := range speed {
			if v == 0 {
				continue
			}
			// Slow a step down when it would use itself up within the time step.
			drive := (1-boundary[i])*partners - in
			left := ore.forward[i]
			if drive < 0 {
				left = ore.behind[i]
			}
			if !(left > 0) {
				continue
			}
			v /= 1 + v*math.Abs(drive)*dt/left
			used[i] = v
			rate += v
			pull += v * (1 - boundary[i]) * partners
		}
	}
	mean := oxygen.oxidisedPath(in, made, rate, pull)
	taken = max(0, loss*(mean-floor))
	for i, v := range used {
		if v == 0 {
			continue
		}
		give := v * ((1-boundary[i])*partners - mean)
		give = max(-stepMost*ore.behind[i]/dt, min(stepMost*ore.forward[i]/dt, give))
		ore.forward[i] -= give * dt
		ore.behind[i] += give * dt
		w.given[i] = give
		given += give
	}
	return taken, given
}

// shiftWaterGas lets CO + H2O = CO2 + H2 relax towards equilibrium.
func (s *Shaft) shiftWaterGas(g *gasStream, hot, constant, thick float64) {
	co, co2, h2, h2o := g.n[gasCO], g.n[gasCO2], g.n[gasH2], g.n[gasH2O]
	if hot == 0 || h2+h2o < 1e-12 || co+co2 < 1e-12 {
		return
	}
	// (co2+x)(h2+x) = K (co-x)(h2o-x)
	a := 1 - constant
	b := co2 + h2 + constant*(co+h2o)
	c := co2*h2 - constant*co*h2o
	root := math.Sqrt(max(0, b*b-4*a*c))
	x := -2 * c / (b + root)
	way := thick / (2 * shiftLength)
	x *= hot * min(1, 2*way/(1+way)) // 1 - exp(-2 way), near enough for a length that is a guess
	x = max(-min(co2, h2), min(min(co, h2o), x))
	g.n[gasCO], g.n[gasCO2] = co-x, co2+x
	g.n[gasH2], g.n[gasH2O] = h2+x, h2o-x
}
