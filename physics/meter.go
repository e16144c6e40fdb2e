package physics

import (
	"errors"
	"math"
)

// How far the parts of a meter factor can be trusted, as relative standard deviations.
const (
	// MeasureRelSD is for charcoal by the measure when the measure was weighed that day: mostly how full it is filled, which
	// one author puts at 5 to 10 % (warehamforgeblog.blogspot.com, January 2013). Charge by charge it evens out; that the filler
	// heaps every measure the same way does not.
	MeasureRelSD = 0.07

	// FlowRelSD is for an air meter that was never checked: published notes put leaks and meter errors at 10 to 20 %.
	FlowRelSD = 0.15
)

// MeterCheck holds a stretch of steady burning against its air meter. Charcoal is kg as charged and burned in Duration seconds
// (the charges of whole intervals, so that the stack ends at the mark it began at), Flow the metered air in m3/s at Air.
//
// Two things burn carbon besides the oxygen of the air and are left out unless asked for: the blast's moisture (Steam) and the
// oxygen the ore gives up (OreOxygen, kg/s; at most [Mineral.OxygenPerIron] times the iron charged, about 5 to 10 % of the
// bound in a full burden).
//
// The spreads are relative for mass and flow and absolute (kg/kg) for moisture and carbon share; zero says exact.
type MeterCheck struct {
	Charcoal, Duration, Flow float64
	Fuel                     Charcoal
	Air                      Air
	Steam                    bool
	OreOxygen                float64

	MassRelSD, MoistureSD, CarbonSD, FlowRelSD float64
}

// Validate returns a *RangeError for a stretch that holds nothing to compare: less than a gram of charcoal, a second, or six
// litres of air a minute; for impossible charcoal or weather; and for spreads that are negative or above one.
func (m MeterCheck) Validate() error {
	return errors.Join(
		InRange("charcoal burned", m.Charcoal, 1e-3, 1e4),
		InRange("duration", m.Duration, 1, 7*86400),
		InRange("air flow", m.Flow, 1e-4, greatestFlow),
		InRange("oxygen from the ore", m.OreOxygen, 0, 0.1),
		InRange("carbon share to divide by", m.Fuel.Carbon, 0.01, 1),
		InRange("spread of the mass", m.MassRelSD, 0, 1),
		InRange("spread of the moisture", m.MoistureSD, 0, 1),
		InRange("spread of the carbon share", m.CarbonSD, 0, 1),
		InRange("spread of the air flow", m.FlowRelSD, 0, 1),
		m.Fuel.Validate(),
		m.Air.Validate(),
	)
}

// CarbonRate gives the carbon burned in kg/s.
func (m MeterCheck) CarbonRate() (float64, error) {
	if err := m.Validate(); err != nil {
		return 0, err
	}
	return m.Fuel.CarbonMass(m.Charcoal) / m.Duration, nil
}

// MostCarbon gives the most carbon in kg/s that the metered air, with what else was asked for, could burn.
func (m MeterCheck) MostCarbon() (float64, error) {
	if err := m.Validate(); err != nil {
		return 0, err
	}
	flow, err := m.Air.Flow(m.Flow)
	most := flow.MostCarbon() + m.OreOxygen*MolarMassC/MolarMassO
	if m.Steam {
		most += flow.SteamCarbon()
	}
	return most, err
}

// Factor gives the carbon burned over the most the metered air allows. Above one the meter reads low, or the charcoal is
// lighter, wetter or poorer than taken; well below one air is lost on the way or burns carbon to CO2. It cannot tell these
// apart without a reading of the top gas, and is therefore told once and is no alarm.
//
// The spread adds up the relative variances of weighed mass, moisture, carbon share and meter, which know nothing of each
// other.
func (m MeterCheck) Factor() (Band, error) {
	carbon, err := m.CarbonRate()
	if err != nil {
		return Band{}, err
	}
	most, err := m.MostCarbon()
	if err != nil {
		return Band{}, err
	}
	variance := square(m.MassRelSD) + square(m.FlowRelSD) +
		square(m.MoistureSD/(1+m.Fuel.Moisture)) + square(m.CarbonSD/m.Fuel.Carbon)
	return LogNormal(carbon/most, math.Sqrt(variance)), nil
}

func square(x float64) float64 { return x * x }
