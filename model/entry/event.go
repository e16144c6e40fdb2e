package entry

import "encoding/json"

// Event is what an entry says happened. Every event of the journal is a plain
// struct of this package, or Unknown for a kind of a newer version.
type Event interface{ Kind() Kind }

// The kinds, in the order of a day.
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
	// Of the days before and after.
	KindAssay         Kind = "assay"
	KindDeed          Kind = "deed"
	KindDrying        Kind = "drying"
	KindPlanTicked    Kind = "plan_ticked"
	KindPiece         Kind = "piece"
	KindForgeSession  Kind = "forge_session"
	KindHeat          Kind = "heat"
	KindHeatOver      Kind = "heat_over"
	KindPieceWeighed  Kind = "piece_weighed"
	KindPieceTested   Kind = "piece_tested"
	KindSampleResult  Kind = "sample_result"
	KindLearnt        Kind = "learnt"
	KindMapping       Kind = "mapping"
	KindLesson        Kind = "lesson"
	KindRemind        Kind = "remind"
	KindDraft         Kind = "draft"
	KindWallWords     Kind = "wall_words"
	KindIncident      Kind = "incident"
	KindWall          Kind = "wall"
	KindWeather       Kind = "weather"
	KindAgainFromHere Kind = "again_from_here"
	KindSealed        Kind = "sealed"
	KindOpened        Kind = "opened"
)

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
