package fold

import (
	"fmt"

	"chargehand/model/entry"
	"chargehand/physics"
)

// WhereOutside is where a temperature of the air outside the furnace was read.
const WhereOutside = "outside"

// OutsideBy is the temperature of that air, where an event tells it.
func OutsideBy(ev entry.Event) entry.Maybe[entry.Celsius] {
	switch ev := ev.(type) {
	case entry.Temperature:
		if ev.Where == WhereOutside {
			return entry.Some(ev.Degrees)
		}
	case entry.Weather:
		return ev.Air
	}
	return entry.None[entry.Celsius]()
}

// AirAt is the air that a blower takes in: 15 C and one atmosphere unless the
// site's altitude or the temperature outside was given.
func AirAt(f entry.Furnace, outside entry.Maybe[entry.Celsius]) physics.Air {
	a := physics.StandardAir()
	if f.Altitude.Known {
		if p, err := physics.PressureAtAltitude(float64(f.Altitude.Value)); err == nil {
			a.Pressure = p
		}
	}
	if outside.Known {
		warm := a
		warm.Temperature = physics.FromCelsius(float64(outside.Value))
		if warm.Validate() == nil {
			a = warm
		}
	}
	return a
}

// PlatePipe is the narrowest pipe in which the standard for orifice plates holds.
const PlatePipe entry.Millimetre = 1000 * physics.LeastOrificePipe

// PlateHoles are the least and the widest hole of a plate in a pipe for which it
// does.
func PlateHoles(pipe entry.Millimetre) (least, most entry.Millimetre) {
	return max(1000*physics.LeastOrifice, physics.LeastOrificeRatio*pipe), physics.MostOrificeRatio * pipe
}

// Volume is the air in l/min that an instrument's reading stands for. A reading
// outside of what the instrument's rule holds for is an error (a
// *physics.RangeError, or one that names what is missing).
func Volume(r entry.AirReading, air physics.Air) (entry.LitrePerMinute, error) {
	pipe, hole := float64(r.Pipe.Value)/1000, float64(r.Hole.Value)/1000
	density, err := air.Density()
	if err != nil {
		return 0, err
	}
	if !r.Pipe.Positive() {
		return 0, fmt.Errorf("a reading of %s without the bore of the pipe", r.With)
	}
	var flow float64
	switch r.With {
	case entry.OrificePlate:
		o, err := physics.Orifice{Pipe: pipe, Bore: hole, Taps: physics.CornerTaps}.Air(float64(r.Pressure.Value), air)
		if err != nil {
			return 0, err
		}
		flow = o.Volume
	case entry.PitotTube:
		flow = physics.PitotFlow(float64(r.Pressure.Value), density, pipe)
	case entry.VaneAnemometer:
		flow = physics.VaneFlow(float64(r.Speed.Value), physics.Cylinder(pipe, 1).Area(0), 1)
	default:
		return 0, fmt.Errorf("%q is no instrument of this version", r.With)
	}
	return entry.LitrePerMinute(physics.ToLitresPerMinute(flow)), nil
}
