package entry

import "slices"

// What is seen in the peep, down the tuyere: from hot to cold, then what
// stands before the fire. Colours of glow go with heat roughly as red below
// 900 °C, orange to 1050, yellow to 1250, white above (from memory,
// unverified).
const (
	PeepWhite  = "white"
	PeepDrops  = "drops pass" // white, and molten slag or iron on its way down
	PeepYellow = "yellow"
	PeepOrange = "orange"
	PeepRed    = "red"
	PeepDim    = "dim"  // something stands half before the glow
	PeepDark   = "dark" // no glow: the tuyere is shut
)

// What the flame over the top is like.
const (
	FlameYellow = "yellow" // before ore, and again when the ore is used up
	FlamePale   = "pale"   // pale and thin: the ore takes the carbon monoxide
	FlameBlue   = "blue"
	FlameNone   = "none"
)

// What the blast sounds like.
const (
	SoundSteady  = "steady"
	SoundRoaring = "roaring"
	SoundWeak    = "weak"
	SoundGurgle  = "gurgle" // slag stands at the tuyere
	SoundSilent  = "silent" // no blast to be heard
)

// What the slag does, at the tuyere or in the tap.
const (
	SlagRuns     = "runs"
	SlagStiff    = "stiff"
	SlagAtTuyere = "at the tuyere"
	SlagGlassy   = "pale and glassy"
	SlagSparks   = "throws sparks" // iron runs with it
)

// What it smells of. Carbon monoxide has no smell.
const (
	SmellNothing = "nothing"
	SmellSmoke   = "smoke"
	SmellSulphur = "sulphur"
	SmellMetal   = "hot metal"
)

// Whether the gas at the top burns.
const (
	TopGasAlight = "alight"
	TopGasOut    = "out"
)

// WherePeep is where a temperature was read in the fire before the tuyere
// (Temperature.Where).
const WherePeep = "in the peep"

// WhereTop is where that of the gas over the burden was read.
const WhereTop = "top gas"

// LookPlaces are what one can look at, most often looked at first.
func LookPlaces() []LookAt {
	return []LookAt{AtPeep, AtSound, AtSlag, AtFlame, AtTopGas, AtSmell}
}

// LookWords are the words for what is seen there. A log may hold any other
// word; it then raises and clears no warning.
func LookWords(at LookAt) []string { return slices.Clone(lookWords[at]) }

var lookWords = map[LookAt][]string{
	AtPeep:   {PeepWhite, PeepYellow, PeepOrange, PeepRed, PeepDark, PeepDim, PeepDrops},
	AtFlame:  {FlameYellow, FlamePale, FlameBlue, FlameNone},
	AtSound:  {SoundSteady, SoundRoaring, SoundWeak, SoundGurgle, SoundSilent},
	AtSlag:   {SlagRuns, SlagStiff, SlagAtTuyere, SlagGlassy, SlagSparks},
	AtSmell:  {SmellNothing, SmellSmoke, SmellSulphur, SmellMetal},
	AtTopGas: {TopGasAlight, TopGasOut},
}
