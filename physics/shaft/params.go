package shaft

import (
	"errors"

	"chargehand/physics"
)

// Param is one named number of the shaft model: what a user may calibrate, and what it is worth until then.
type Param struct {
	Name               string
	Unit               string
	Default, Low, High float64
	Meaning            string
	Source             string
	Fixed              bool // part of the model; moved in studies, not by calibrating on a smelt
	field              func(*Params) *float64
}

// Params holds a value for every row of [ParamTable], in SI units; shares are fractions.
type Params struct {
	AirFactor, RacewayHeight, BypassShare, WallConductivity, OreRate, ContactFactor                 float64
	CharReactivity, PoreDiffusion, FurnaceMixing, RadiationShare, TopEmissivity, HearthConductivity float64
	HearthLump, LockedShare, LockedRate, DripRate, HydrogenFactor, PoreMixingLength, CarbonApproach float64
}

// ParamTable lists every named number. The first six are the handful to calibrate; the rest are fixed parts of the model
// with their own doubts. A source begins with "published", "fitted here" (and the command that fits it again and prints value
// and spread), "computed outside" or "assumed". The probes of one day do not tell the numbers of the heat apart: many sets
// meet them as well, and these are round points among them. What the range of each does: TestReportSensitivity.
var ParamTable = []Param{
	{Name: "air_factor", Unit: "1", Default: 0.85, Low: 0.3, High: 1.25,
		Meaning: "share of the metered blast that burns in the bed: meter error, gap round the tuyere, back-flow; also, without a top-gas reading indistinguishable from it, carbon per measure and CO2 in the top gas",
		Source:  "fitted here: go test -run TestFitParameters -v ./physics/shaft, 0.66 to 1.20 by the intervals of three stretches, estimated anew in each smelt",
		field:   func(p *Params) *float64 { return &p.AirFactor }},
	{Name: "raceway", Unit: "m", Default: 0.15, Low: 0.10, High: 0.22,
		Meaning: "height over which the blast spreads into the bed",
		Source:  "fitted here: go test -run TestFitParameters -v ./physics/shaft, 0.10 to 0.19, about half a bore",
		field:   func(p *Params) *float64 { return &p.RacewayHeight }},
	{Name: "bypass", Unit: "1", Default: 0.15, Low: 0, High: 0.3,
		Meaning: "share of the air that climbs past the raceway and meets the bed up to two thirds of its height",
		Source:  "fitted here: go test -run TestFitParameters -v ./physics/shaft, 0.08 to 0.22, one tuyere, about sixteen lumps across",
		field:   func(p *Params) *float64 { return &p.BypassShare }},
	{Name: "wall_k", Unit: "W/m/K", Default: 1.1, Low: 0.7, High: 1.6,
		Meaning: "conductivity of the thin, cracked clay wall",
		Source:  "fitted here: go test -run TestFitParameters -v ./physics/shaft, 0.7 to 1.3, where handbooks give 0.6 to 1.0 for dry clay (from memory)",
		field:   func(p *Params) *float64 { return &p.WallConductivity }},
	{Name: "ore_rate", Unit: "1", Default: 0.6, Low: 0.4, High: 1.5,
		Meaning: "speed of reduction against the reference rate, the knob of the yield",
		Source:  "fitted here: go test -run TestFitParameters -v ./physics/shaft, 0.55, 0.48 to 0.63 for a tenth less and more metal",
		field:   func(p *Params) *float64 { return &p.OreRate }},
	{Name: "contact", Unit: "1", Default: 1, Low: 0.5, High: 1.5,
		Meaning: "exchange of heat and gas between charcoal and gas against that of an even bed of its lump size",
		Source:  "assumed: 1 by definition, below it stands for channelling (the probes of TestFitParameters: 0.75 and more)",
		field:   func(p *Params) *float64 { return &p.ContactFactor }},
	{Name: "reactivity", Unit: "1", Default: 1, Low: 0.1, High: 3, Fixed: true,
		Meaning: "speed of charcoal with CO2 against birch char",
		Source:  "published: Barrio and Hustad 2001, gasification of birch char in CO2 (from memory)",
		field:   func(p *Params) *float64 { return &p.CharReactivity }},
	{Name: "pore_diffusion", Unit: "1", Default: 0.15, Low: 0.1, High: 0.2, Fixed: true,
		Meaning: "diffusivity in the pores of a lump against that of the free gas",
		Source:  "published: Muchi 1967, range of the blast furnace literature (from memory)",
		field:   func(p *Params) *float64 { return &p.PoreDiffusion }},
	{Name: "mixing", Unit: "1", Default: 8, Low: 1, High: 20, Fixed: true,
		Meaning: "conduction of heat along the shaft inside the raceway against that above it: the whirl before the tuyere",
		Source:  "assumed: the whirl evens the heat out, and how much the probes do not tell (TestFitParameters)",
		field:   func(p *Params) *float64 { return &p.FurnaceMixing }},
	{Name: "radiation", Unit: "1", Default: 0.6, Low: 0.5, High: 1, Fixed: true,
		Meaning: "exchange factor of radiation from lump to lump",
		Source:  "assumed: 0.5 to 1 in the literature of packed beds (from memory)",
		field:   func(p *Params) *float64 { return &p.RadiationShare }},
	{Name: "top_emissivity", Unit: "1", Default: 0.2, Low: 0, High: 0.9, Fixed: true,
		Meaning: "net emissivity of the open top: 0 under a full flame, 0.9 without one",
		Source:  "assumed: between a full flame and none, in burn-downs looked at with 0.2 (TestReportHighBlast), beyond 0.9 it counts as 0.9",
		field:   func(p *Params) *float64 { return &p.TopEmissivity }},
	{Name: "hearth_k", Unit: "W/m/K", Default: 0.55, Low: 0.3, High: 1.3, Fixed: true,
		Meaning: "conductivity of what lies below the tuyere: fines and ash, then the ground",
		Source:  "fitted here: go test -run TestFitParameters -v ./physics/shaft, 0.52 to 0.67 by the one probe under a tuyere, 328 C at 10 cm below it (9 Oct 2011)",
		field:   func(p *Params) *float64 { return &p.HearthConductivity }},
	{Name: "hearth_lump", Unit: "m", Default: 0.01, Low: 0.005, High: 0.017, Fixed: true,
		Meaning: "size of the charcoal through which the heat of the fire comes down to the hearth",
		Source:  "assumed: between the fines that a hearth is packed with, under 5 mm, and lumps of a charge, which stand over them in some (the probe under a tuyere is met with either)",
		field:   func(p *Params) *float64 { return &p.HearthLump }},
	{Name: "locked_share", Unit: "1", Default: 0.8, Low: 0.5, High: 1, Fixed: true,
		Meaning: "share of the silica that finds two FeO each to bind once slag forms",
		Source:  "assumed: most of the silica, not all, is met by slag",
		field:   func(p *Params) *float64 { return &p.LockedShare }},
	{Name: "locked_rate", Unit: "1", Default: 0.1, Low: 0, High: 0.5, Fixed: true,
		Meaning: "speed of reduction of FeO bound in slag against free FeO",
		Source:  "assumed: slags with less iron than two FeO a silica exist",
		field:   func(p *Params) *float64 { return &p.LockedRate }},
	{Name: "drip", Unit: "1/s", Default: 0.004, Low: 0.001, High: 0.01, Fixed: true,
		Meaning: "share of the molten slag, with the iron it carries, that runs out of a hot layer in a second",
		Source:  "assumed: a layer loses its slag in some minutes",
		field:   func(p *Params) *float64 { return &p.DripRate }},
	{Name: "hydrogen", Unit: "1", Default: 3, Low: 1, High: 5, Fixed: true,
		Meaning: "speed of reduction by hydrogen against CO at the same drive",
		Source:  "assumed: order of the literature of reduction (from memory)",
		field:   func(p *Params) *float64 { return &p.HydrogenFactor }},
	{Name: "pore_mixing", Unit: "m", Default: 0.02, Low: 0.01, High: 0.05, Fixed: true,
		Meaning: "way the gas goes while oxygen and CO of neighbouring pores mix and burn",
		Source:  "assumed: about one lump",
		field:   func(p *Params) *float64 { return &p.PoreMixingLength }},
	{Name: "carbon_approach", Unit: "1", Default: 0.5, Low: 0.3, High: 1, Fixed: true,
		Meaning: "how far the carbon of the iron comes towards that in balance with the gas at its last contact",
		Source:  "assumed: half way to the balance with the gas",
		field:   func(p *Params) *float64 { return &p.CarbonApproach }},
}

// DefaultParams is the column of defaults.
func DefaultParams() Params {
	var p Params
	for _, row := range ParamTable {
		*row.field(&p) = row.Default
	}
	return p
}

// Value gives the number of the row in p.
func (row Param) Value(p Params) float64 { return *row.field(&p) }

// With gives p with the number of the row set.
func (row Param) With(p Params, value float64) Params {
	*row.field(&p) = value
	return p
}

// Validate returns a *RangeError for each number outside twice its stated range (studies go beyond it; a slip goes further).
func (p Params) Validate() error {
	var problems []error
	for _, row := range ParamTable {
		problems = append(problems, physics.InRange(row.Name, row.Value(p), row.Low/2, row.High*2))
	}
	return errors.Join(problems...)
}
