package figure

// Name names a figure. The table below is the one place where a figure's key,
// unit and definition stand; screens, help, JSON and documentation draw on it.
type Name int

// The figures of a smelt.
const (
	Elapsed Name = iota
	SinceCharge
	NextCharge
	NextThree
	CharcoalCharged
	CharcoalDry
	OreCharged
	OreDry
	RatioLast
	RatioFive
	RatioSmelt
	RatioLastDry
	RatioFiveDry
	RatioSmeltDry
	BurnRate
	MinutesPerMeasure
	BurnLeast
	BurnMost
	MeterFactor
	StackHeight
	Air
	AirPerArea
	AirPerCharcoal
	AirFactor
	BackPressure
	BackPressureUsual
	HearthTemperature
	TopGasTemperature
	TopGasCO
	SlagMass
	SlagIron
	SlagBelowTuyere
	SlagMelts
	SlagStiffness
	ReducibleIron
	OrePlanned
	Yield
	NoBloom
	OreComeDown
	BloomSoFar
	BloomEnd
	BloomCarbon
	ModelStackHeight
	MakeUpCharcoal
	SurplusCharcoal
	Count // how many figures there are
)

// Definition says what a figure is.
type Definition struct {
	Key     string // on the wire
	Unit    string // of the wire; 1 for a plain number
	Meaning string // one sentence
}

// Table holds the definition of every figure.
var Table = [Count]Definition{
	Elapsed:           {"elapsed", "s", "time since the fire was lit"},
	SinceCharge:       {"since_charge", "s", "time since the last charge that held charcoal"},
	NextCharge:        {"next_charge", "min", "minutes until the next charge is due; negative once it is late"},
	NextThree:         {"next_three", "min", "minutes until the third charge from now is due"},
	CharcoalCharged:   {"charcoal_charged", "kg", "charcoal put in so far, fill included, as charged"},
	CharcoalDry:       {"charcoal_dry", "kg", "the same without its moisture"},
	OreCharged:        {"ore_charged", "kg", "ore put in so far, as charged"},
	OreDry:            {"ore_dry", "kg", "the same without its moisture"},
	RatioLast:         {"ratio_last", "1", "ore to charcoal by mass of the last charge, as charged"},
	RatioFive:         {"ratio_five", "1", "ore to charcoal by mass over the last five charges, as charged"},
	RatioSmelt:        {"ratio_smelt", "1", "ore to charcoal by mass from the first ore to the last, as charged"},
	RatioLastDry:      {"ratio_last_dry", "1", "ore to charcoal of the last charge, both dry"},
	RatioFiveDry:      {"ratio_five_dry", "1", "ore to charcoal over the last five charges, both dry"},
	RatioSmeltDry:     {"ratio_smelt_dry", "1", "ore to charcoal from the first ore to the last, both dry"},
	BurnRate:          {"burn_rate", "kg/h", "dry charcoal burned an hour, over the last three intervals between charges"},
	MinutesPerMeasure: {"minutes_per_measure", "min", "minutes for one measure of charcoal, over the same intervals"},
	BurnLeast:         {"burn_least", "kg/h", "dry charcoal that the blast burns at least: all its oxygen leaves as CO2"},
	BurnMost:          {"burn_most", "kg/h", "dry charcoal that the blast burns at most: all its oxygen leaves as CO"},
	MeterFactor:       {"meter_factor", "1", "carbon burned over the most that the metered blast allows, since the main burn began"},
	StackHeight:       {"stack_height", "cm", "height of the burden above the tuyere"},
	Air:               {"air", "l/min", "blast as last observed"},
	AirPerArea:        {"air_per_area", "l/min/cm2", "blast over the cross-section of the shaft at the tuyere"},
	AirPerCharcoal:    {"air_per_charcoal", "m3/kg", "blast over the burn rate, per kg of dry charcoal"},
	AirFactor:         {"air_factor", "1", "share of the metered blast that burns, computed from the charge intervals"},
	BackPressure:      {"back_pressure", "Pa", "pressure before the tuyere, as last read"},
	BackPressureUsual: {"back_pressure_usual", "Pa", "what a clear tuyere and a sound burden held against the blast just then, computed"},
	HearthTemperature: {"hearth_temperature", "C", "temperature of the hearth below the tuyere, computed"},
	TopGasTemperature: {"top_gas_temperature", "C", "temperature of the gas over the burden, over the last minutes, computed"},
	TopGasCO:          {"top_gas_co", "%", "carbon monoxide in the carbon gases over the burden by volume, CO of CO and CO2, over the last minutes, computed"},
	SlagMass:          {"slag_mass", "kg", "slag in the hearth, computed"},
	SlagIron:          {"slag_iron", "%", "iron in that slag by mass, as oxide"},
	SlagBelowTuyere:   {"slag_below_tuyere", "cm", "how far the slag stands below the tuyere; negative above it"},
	SlagMelts:         {"slag_melts", "C", "temperature above which that slag is all molten"},
	SlagStiffness:     {"slag_stiffness", "Pa s", "viscosity of that slag at the heat of the hearth, crystals in it counted"},
	ReducibleIron:     {"reducible_iron", "1", "2.39 SiO2 over FeO and MnO by mass: above 1 the slag has too little iron to bind its silica and stiffens, below 1 iron is left that could still become metal"},
	OrePlanned:        {"ore_planned", "kg", "ore that the plan has for the whole smelt, dry"},
	Yield:             {"yield", "1", "kg of bloom from a kg of ore, dry, of smelts that give a bloom: published ones, and one's own on the same ore mix"},
	NoBloom:           {"no_bloom", "%", "chance of no compact bloom at all: one and the own failures to ten and the own smelts; before there are two about 1 in 10 for a crew that has smelted elsewhere, 3 to 8 in 10 for one that has not"},
	OreComeDown:       {"ore_down", "%", "share of the ore's iron so far that has come down into the hearth, computed"},
	BloomSoFar:        {"bloom_so_far", "kg", "the yield of the ore that has come down"},
	BloomEnd:          {"bloom_end", "kg", "bloom at the end, if there is one: the yield of the ore planned, or without a plan of the ore in so far"},
	BloomCarbon:       {"bloom_carbon", "%", "carbon in the iron gathered so far by mass, a span without a middle"},
	ModelStackHeight:  {"model_stack_height", "cm", "height of the burden in the computed shaft, which is brought to the one above at a charge"},
	MakeUpCharcoal:    {"make_up_charcoal", "kg", "charcoal laid into the computed shaft where it had burned more than the furnace, as charged; in no other figure"},
	SurplusCharcoal:   {"surplus_charcoal", "kg", "charcoal charged that the computed shaft had no room for: taken to have burned before, as charged; in no other figure"},
}

// HasMiddle says whether the middle of a figure says anything. Of some only the
// ends do: a rule with a fixed place between them would be taken for a forecast.
func (n Name) HasMiddle() bool { return n != BloomCarbon && n != NoBloom }

// Key is the name of the figure on the wire.
func (n Name) Key() string { return Table[n].Key }

// Basis says what a figure rests on.
type Basis int

// From the firmest to none at all. A figure made of several rests on the
// weakest of them.
const (
	Measured  Basis = iota // read off an instrument or weighed
	Estimated              // reckoned from what was measured
	Guessed                // only defaults behind it
	Unknown                // no value
)

var basisWords = [...]string{"measured", "estimated", "guessed", "unknown"}

func (b Basis) String() string { return basisWords[b] }

// Weaker is the weaker of two bases.
func (b Basis) Weaker(o Basis) Basis { return max(b, o) }
