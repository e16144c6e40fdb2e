package shaft

// Sizes of the value that a shaft is. Layers hold a slice of about a centimetre of one charge each.
const (
	maxLayers   = 192
	wallRings   = 64   // up to 1.28 m above the tuyere
	ringHeight  = 0.02 // m
	wallNodes   = 6    // from the inside out
	groundNodes = 8
	groundDepth = 0.02 // m each
)

// layer is a slice of burden: what it holds, how warm it is, and the gas leaving it at the last step.
type layer struct {
	n           [solidCount]float64 // mol
	enthalpy    float64             // J
	temperature float64             // K, the mean across the bore; always that of the enthalpy
	warming     float64             // K/s over the last step
	fuelVolume  float64             // m3 of bed that charcoal takes
	stoneVolume float64             // m3 of bed that ore and slag add
	lump        float64             // m, size of its charcoal
	charge      int32               // number of the charge it came with

	edge float64           // K at the wall side
	gasT float64           // K
	gas  [gasCount]float64 // mol/s
}

func (l *layer) volume() float64 { return l.fuelVolume + l.stoneVolume }

// hearth is what has gathered below the tuyere: bloom and slag on a packing of fines, and the ground under it.
type hearth struct {
	bath        layer   // iron, its carbon, and slag
	fusion      float64 // J of melting that the slag holds beside its enthalpy
	packing     float64 // J/K of the fines below the tuyere
	ground      [groundNodes]float64
	carburising float64 // mass share of carbon that iron leaving the shaft now takes along
}

// Ledger is the account of a shaft since light: what went in and out, in mol of each element and in J. MadeUp is what
// [Shaft.MakeUp] laid in, which nobody charged: it closes the account and is in no other sum. Surplus is what was charged and
// did not go in, see [Shaft.Surplus]: it is beside the account, so that In and Surplus are all that was charged.
type Ledger struct {
	In, Out           [ElementCount]float64
	MadeUp            [ElementCount]float64
	MadeUpHeat        float64 // with that
	Surplus           [ElementCount]float64
	BlastHeat         float64 // in with the blast
	BurdenHeat        float64 // in with charges, embers and a preheated wall, less what was taken out
	TopGasHeat        float64 // out with the top gas
	WallLoss, TopLoss float64 // out through the outer wall (with the bare wall above the burden), out of the open top
	GroundLoss        float64
	LiningLoss        float64 // out with lining that melts
}

// Totals are sums since light, kg unless said.
type Totals struct {
	CarbonBurned   float64 // to gas by oxygen, CO2, steam and ore
	MadeUp         float64 // charcoal that stands for what must have been there, as charged; in no other figure
	Surplus        float64 // charcoal that had no room and is taken to have burned before, as charged; in no other figure
	OreIron        float64 // iron charged as oxide: ore, returned slag, a trace in ash
	SlagTapped     float64
	IronTaken      float64 // taken out as bloom
	OxygenFromOre  float64
	UnburnedOxygen float64 // mol O2 out of the top
	LastStepCarbon float64 // kg/s, the rate of burning in the last step
}
