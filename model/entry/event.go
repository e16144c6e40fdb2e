package entry

import "encoding/json"

// Kind names a kind of event on the wire.
type Kind string

// Event is what an entry says happened. Every event of the journal is a plain
// struct of this package, or Unknown for a kind of a newer version.
type Event interface{ Kind() Kind }

// The kinds of the first version, in the order of a day.
const (
	KindLight       Kind = "light"
	KindPhase       Kind = "phase"
	KindRecipe      Kind = "recipe"
	KindFill        Kind = "fill"
	KindCharge      Kind = "charge"
	KindLevel       Kind = "level"
	KindDip         Kind = "dip"
	KindPoke        Kind = "poke"
	KindBlast       Kind = "blast"
	KindRod         Kind = "rod"
	KindTuyere      Kind = "tuyere"
	KindTap         Kind = "tap"
	KindArch        Kind = "arch"
	KindLook        Kind = "look"
	KindTemperature Kind = "temperature"
	KindWeigh       Kind = "weigh"
	KindSample      Kind = "sample"
	KindOreHeld     Kind = "ore_held"
	KindLastOre     Kind = "last_ore"
	KindBurnDown    Kind = "burn_down"
	KindExtract     Kind = "extract"
	KindPause       Kind = "pause"
	KindResume      Kind = "resume"
	KindHandOver    Kind = "hand_over"
	KindForgeHeat   Kind = "forge_heat"
	KindNote        Kind = "note"
	KindAcknowledge Kind = "acknowledge"
	KindCaution     Kind = "caution_shown"
	KindSetting     Kind = "setting"
	KindClockJump   Kind = "clock_jump"
	KindTestimony   Kind = "testimony"
	KindStrike      Kind = "strike"
	KindAmend       Kind = "amend"
	KindKeys        Kind = "keys"
	// Of the house stream.
	KindFurnace Kind = "furnace"
	KindLot     Kind = "lot"
	KindMeasure Kind = "measure"
	KindPlan    Kind = "plan"
)

// decoders makes an event of each kind from its wire form. A kind that is not
// here is kept as Unknown.
var decoders = map[Kind]func(json.RawMessage) (Event, error){
	KindLight: decode[Light], KindPhase: decode[PhaseSet], KindRecipe: decode[Recipe],
	KindFill: decode[Fill], KindCharge: decode[Charge], KindLevel: decode[Level],
	KindDip: decode[Dip], KindPoke: decode[Poke], KindBlast: decode[Blast],
	KindRod: decode[Rod], KindTuyere: decode[Tuyere], KindTap: decode[Tap],
	KindArch: decode[Arch], KindLook: decode[Look], KindTemperature: decode[Temperature],
	KindWeigh: decode[Weigh], KindSample: decode[Sample], KindOreHeld: decode[OreHeld],
	KindLastOre: decode[LastOre], KindBurnDown: decode[BurnDown], KindExtract: decode[Extract],
	KindPause: decode[Pause], KindResume: decode[Resume], KindHandOver: decode[HandOver],
	KindForgeHeat: decode[ForgeHeat], KindNote: decode[Note], KindAcknowledge: decode[Acknowledge],
	KindCaution: decode[CautionShown], KindSetting: decode[Setting], KindClockJump: decode[ClockJump],
	KindTestimony: decode[Testimony], KindStrike: decode[Strike], KindAmend: decode[Amend],
	KindKeys: decode[Keys], KindFurnace: decode[FurnaceBuilt], KindLot: decode[LotStored],
	KindMeasure: decode[MeasureNamed], KindPlan: decode[Plan],
}

// Kinds lists every kind of this version, for tests and documentation.
func Kinds() []Kind {
	ks := make([]Kind, 0, len(decoders))
	for k := range decoders {
		ks = append(ks, k)
	}
	return ks
}

func decode[E Event](b json.RawMessage) (Event, error) {
	var e E
	if len(b) == 0 {
		return e, nil
	}
	err := json.Unmarshal(b, &e)
	return e, err
}

// Unknown is an event of a kind that this version does not know. Its bytes are
// kept as they stand.
type Unknown struct {
	Name Kind
	Raw  json.RawMessage
}

// Kind is the kind's name as it was written.
func (u Unknown) Kind() Kind { return u.Name }

// MarshalJSON gives back the bytes that were read.
func (u Unknown) MarshalJSON() ([]byte, error) {
	if len(u.Raw) == 0 {
		return []byte("{}"), nil
	}
	return u.Raw, nil
}
