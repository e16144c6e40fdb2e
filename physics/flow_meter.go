package physics

import (
	"errors"
	"math"
)

// OrificeTaps says where an orifice's two pressure holes lie (ISO 5167-2).
type OrificeTaps int

// The taps of the standard: in the corners, one and half a pipe diameter up and down, and an inch off in the flanges.
const (
	CornerTaps OrificeTaps = iota
	DAndHalfDTaps
	FlangeTaps
)

// Orifice is a plate in a straight pipe: bores in m.
type Orifice struct {
	Pipe, Bore float64
	Taps       OrificeTaps
}

// Beta is the ratio of the bores.
func (o Orifice) Beta() float64 { return o.Bore / o.Pipe }

// What ISO 5167-2 holds for: bores in m, and their ratio.
const (
	LeastOrifice                        = 0.0125
	LeastOrificePipe, MostOrificePipe   = 0.05, 1.0
	LeastOrificeRatio, MostOrificeRatio = 0.10, 0.75
)

// Validate returns a *RangeError outside ISO 5167-2.
func (o Orifice) Validate() error {
	return errors.Join(InRange("orifice bore", o.Bore, LeastOrifice, 1), InRange("orifice pipe", o.Pipe, LeastOrificePipe, MostOrificePipe),
		InRange("orifice ratio", o.Beta(), LeastOrificeRatio, MostOrificeRatio))
}

// DischargeCoefficient is that of Reader-Harris & Gallagher, ISO 5167-2:2003, 5.3.2.1, at a Reynolds number on the pipe.
func (o Orifice) DischargeCoefficient(reynolds float64) float64 {
	b := o.Beta()
	l1, l2 := 0.0, 0.0
	switch o.Taps {
	case DAndHalfDTaps:
		l1, l2 = 1, 0.47
	case FlangeTaps:
		l1 = inchM / o.Pipe
		l2 = l1
	}
	b4 := math.Pow(b, 4)
	a := math.Pow(19000*b/reynolds, 0.8)
	m2 := 2 * l2 / (1 - b)
	c := 0.5961 + 0.0261*b*b - 0.216*math.Pow(b, 8) + 0.000521*math.Pow(1e6*b/reynolds, 0.7) +
		(0.0188+0.0063*a)*math.Pow(b, 3.5)*math.Pow(1e6/reynolds, 0.3) +
		(0.043+0.080*math.Exp(-10*l1)-0.123*math.Exp(-7*l1))*(1-0.11*a)*b4/(1-b4) -
		0.031*(m2-0.8*math.Pow(m2, 1.1))*math.Pow(b, 1.3)
	if o.Pipe < 0.07112 {
		c += 0.011 * (0.75 - b) * (2.8 - o.Pipe/inchM)
	}
	return c
}

// Expansibility is the correction for a gas that expands through the plate, ISO 5167-2:2003, 5.3.2.2: pressures before and
// behind in Pa, the second at least three quarters of the first.
func (o Orifice) Expansibility(upstream, downstream, isentropic float64) float64 {
	b4 := math.Pow(o.Beta(), 4)
	return 1 - (0.351+0.256*b4+0.93*b4*b4)*(1-math.Pow(downstream/upstream, 1/isentropic))
}

// MassFlow gives kg/s from the pressure difference in Pa, the density upstream in kg/m3, and coefficients of discharge and
// expansion.
func (o Orifice) MassFlow(difference, density, discharge, expansibility float64) float64 {
	return discharge / math.Sqrt(1-math.Pow(o.Beta(), 4)) * expansibility * discArea(o.Bore) * math.Sqrt(2*difference*density)
}

// airIsentropic is the ratio of specific heats of air (textbook), airViscosity that of the air at 20 C in Pa s.
const (
	airIsentropic = 1.4
	airViscosity  = 1.81e-5
)

// OrificeReading is a flow of air through an orifice.
type OrificeReading struct {
	Volume        float64 // m3/s at the state of the air
	Mass          float64 // kg/s
	Discharge     float64
	Expansibility float64
	Reynolds      float64
	RelSD         float64 // of the coefficient alone, by the standard's uncertainty as two standard deviations
}

// Air gives the flow from a pressure difference in Pa with the air's state, downstream of the plate, the open side at a
// furnace. Coefficient and Reynolds number are brought to agree. A plate or a Reynolds number outside the standard is a
// *RangeError: the standard promises nothing there.
func (o Orifice) Air(difference float64, air Air) (OrificeReading, error) {
	density, err := air.Density()
	if err := errors.Join(o.Validate(), err, InRange("pressure difference", difference, 0, air.Pressure/4)); err != nil {
		return OrificeReading{}, err
	}
	upstream := air.Pressure + difference
	before := density * upstream / air.Pressure
	r := OrificeReading{Expansibility: o.Expansibility(upstream, air.Pressure, airIsentropic), Reynolds: 1e5}
	if difference == 0 {
		return OrificeReading{Expansibility: 1}, nil
	}
	for range 30 {
		r.Discharge = o.DischargeCoefficient(r.Reynolds)
		r.Mass = o.MassFlow(difference, before, r.Discharge, r.Expansibility)
		r.Reynolds = 4 * r.Mass / (math.Pi * o.Pipe * airViscosity)
	}
	r.Volume = r.Mass / density
	b := o.Beta()
	least := 5000.0
	switch {
	case o.Taps == FlangeTaps:
		least = math.Max(least, 170*b*b*o.Pipe*1000)
	case b > 0.56:
		least = 16000 * b * b
	}
	if err := InRange("Reynolds number of the pipe", r.Reynolds, least, 1e8); err != nil {
		return OrificeReading{}, err
	}
	r.RelSD = o.uncertainty() / 2
	return r, nil
}

// uncertainty of the discharge coefficient as a share, ISO 5167-2:2003, 5.3.3.1.
func (o Orifice) uncertainty() float64 {
	b := o.Beta()
	percent := 0.5
	switch {
	case b < 0.2:
		percent = 0.7 - b
	case b > 0.6:
		percent = 1.667*b - 0.5
	}
	if o.Pipe < 0.07112 {
		percent += 0.9 * (0.75 - b) * (2.8 - o.Pipe/inchM)
	}
	return percent / 100
}

// PitotSpeed gives the speed in m/s from a pitot's pressure in Pa in air of a density in kg/m3.
func PitotSpeed(pressure, density float64) float64 { return math.Sqrt(2 * max(0, pressure) / density) }

// PitotCentre is the mean speed in a pipe against that on its axis, turbulent (Re 1e4-1e5; from memory, unverified).
const PitotCentre = 0.82

// PitotFlow gives m3/s in a pipe of a bore in m from a pitot on its axis.
func PitotFlow(pressure, density, pipe float64) float64 {
	return PitotCentre * PitotSpeed(pressure, density) * discArea(pipe)
}

// VaneFlow gives m3/s from a vane anemometer's speed in m/s, the area in m2 it stands for, and its calibration (1 if none).
func VaneFlow(speed, area, calibration float64) float64 { return speed * area * calibration }

// BellowsFlow gives m3/s from strokes per second, the volume of a stroke in m3 and the share of it that arrives.
func BellowsFlow(strokes, volume, delivered float64) float64 { return strokes * volume * delivered }

// GatePoint is a blower's gate at a mark (a number on its scale, a count of open tuyeres, strokes a minute) with the flow
// measured there, m3/s.
type GatePoint struct{ Mark, Flow float64 }

// GateTable is what is known of a gate: points with rising marks.
type GateTable []GatePoint

// errGate: a gate table needs two points with rising marks and flows that are not negative.
var errGate = errors.New("physics: gate table needs two or more points with rising marks and flows from zero up")

// Validate returns an error unless the marks rise and the flows are sane.
func (g GateTable) Validate() error {
	if len(g) < 2 {
		return errGate
	}
	for i, p := range g {
		if !(p.Flow >= 0 && p.Flow <= greatestFlow) || i > 0 && !(p.Mark > g[i-1].Mark) {
			return errGate
		}
	}
	return nil
}

// Flow gives m3/s at a mark, straight between points. known is false beyond the ends, where the nearest point is given: a gate
// is not to be extrapolated.
func (g GateTable) Flow(mark float64) (flow float64, known bool) {
	if len(g) == 0 || math.IsNaN(mark) {
		return 0, false
	}
	if mark <= g[0].Mark {
		return g[0].Flow, mark == g[0].Mark
	}
	for i := 1; i < len(g); i++ {
		a, b := g[i-1], g[i]
		if mark <= b.Mark {
			return a.Flow + (b.Flow-a.Flow)*(mark-a.Mark)/(b.Mark-a.Mark), true
		}
	}
	return g[len(g)-1].Flow, false
}
