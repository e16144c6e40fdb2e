package entry

import "slices"

// FurnaceBuilt keeps a version of a furnace in the house. Versions hold in the
// order of their times; a smelt keeps the one that it was lit in.
type FurnaceBuilt struct {
	Furnace Furnace  `json:"furnace"`
	Why     BuiltWhy `json:"why,omitempty"`
}

// BuiltWhy is why a furnace has another version.
type BuiltWhy string

// Why a furnace is described anew.
const (
	Built    BuiltWhy = "built"
	Repaired BuiltWhy = "repaired"
	Worn     BuiltWhy = "worn"
	Measured BuiltWhy = "measured"
)

// Drying is a day of drying a furnace.
type Drying struct {
	Furnace UID          `json:"furnace"`
	Day     Maybe[Count] `json:"day,omitzero"` // since it was built
	Fires   Maybe[Count] `json:"fires,omitzero"`
	Weather string       `json:"weather,omitempty"`
	Cracks  string       `json:"cracks,omitempty"`
	Note    string       `json:"note,omitempty"`
}

// Plan is a plan of a smelt to come. Said again of the same uid it holds in
// place of the one before.
type Plan struct {
	Name     string              `json:"name"`
	Furnace  string              `json:"furnace,omitempty"` // the furnace's uid, else its name
	Ramp     []RecipeStep        `json:"ramp,omitempty"`
	Note     string              `json:"note,omitempty"`
	UID      UID                 `json:"uid,omitempty"`
	Wanted   Wanted              `json:"wanted,omitzero"`
	Sure     Maybe[Share]        `json:"sure,omitzero"`    // how sure it is to be
	Day      string              `json:"day,omitempty"`    // as 2026-05-09
	Begins   string              `json:"begins,omitempty"` // when the wood fire is lit, as 08:00
	Lots     []UID               `json:"lots,omitempty"`
	Measures []UID               `json:"measures,omitempty"`
	Plans    []ChargingPlan      `json:"plans,omitempty"`
	Taken    string              `json:"taken,omitempty"`    // which of them
	Promised map[string]Estimate `json:"promised,omitempty"` // by the name of the figure
	Needs    map[string]Estimate `json:"needs,omitempty"`    // by material
	Solver   string              `json:"solver,omitempty"`
	Trying   string              `json:"trying,omitempty"`     // what is tried this time
	Forge    FuelKind            `json:"forge_fuel,omitempty"` // what the forge burns for it
}

// ID names the plan: its uid, or its name where it has none.
func (p Plan) ID() UID { return p.UID.or(p.Name) }

// Wanted is what a smelt is for.
type Wanted struct {
	What PieceKind       `json:"what,omitempty"`
	Mass Maybe[Kilogram] `json:"mass_kg,omitzero"`
}

// FuelKind is what kind of fuel a forge burns.
type FuelKind string

// What a forge burns.
const (
	ForgeCharcoal FuelKind = "charcoal"
	ForgeCoal     FuelKind = "coal"
	ForgeGas      FuelKind = "gas"
)

// ChargingPlan is one way to charge, from the fill to the burn-down.
type ChargingPlan struct {
	Name  string       `json:"name"`
	Steps []RecipeStep `json:"steps,omitempty"`
}

// PlanTicked is a line of the list before lighting, done or not done after all.
type PlanTicked struct {
	Plan UID    `json:"plan"`
	Item string `json:"item"`
	Done bool   `json:"done,omitempty"`
	By   string `json:"by,omitempty"`
}

// Learnt is what own smelts taught, taken over by a person.
type Learnt struct {
	UID    UID                    `json:"uid,omitempty"`
	Of     string                 `json:"of"` // what it is learnt of: an ore mix, a furnace with its blower
	Values map[string]LearntValue `json:"values,omitempty"`
	From   []string               `json:"from,omitempty"` // uids of smelts
	Solver string                 `json:"solver,omitempty"`
}

// LearntValue is one learnt value with its standard deviation.
type LearntValue struct {
	P50 Number `json:"p50"`
	SD  Number `json:"sd"`
}

// Mapping is how the columns of other people's logs are read.
type Mapping struct {
	Name    string            `json:"name"`
	Columns map[string]Mapped `json:"columns,omitempty"` // by their name

	BlankIsNone bool `json:"blank_is_none,omitempty"` // of ore or charcoal in a charge; else it was not recorded
}

// Mapped is what a column is with us.
type Mapped struct {
	Ours string `json:"ours"`
	Unit string `json:"unit,omitempty"`
}

// Lesson is a line for the next time.
type Lesson struct {
	Text    string `json:"text"`
	Furnace UID    `json:"furnace,omitempty"`
	Mix     string `json:"mix,omitempty"`
	Smelt   string `json:"smelt,omitempty"` // the smelt's uid
}

// Remind asks to be reminded, once or again and again, until it is ended by the
// same word.
type Remind struct {
	At    When          `json:"at,omitzero"`
	Every Maybe[Minute] `json:"every_min,omitzero"`
	Word  string        `json:"word"`
	Ended bool          `json:"ended,omitempty"`
}

// Draft is what was half typed on a screen, of a smelt where it showed one; nothing typed
// ends it.
type Draft struct {
	Screen string            `json:"screen"`
	Smelt  string            `json:"smelt,omitempty"` // the stream of the smelt that it showed
	Typed  map[string]string `json:"typed,omitempty"` // by field
}

// Place names where it was typed.
func (d Draft) Place() string {
	if d.Smelt == "" {
		return d.Screen
	}
	return d.Screen + " " + d.Smelt
}

// WallWords are a person's own lines for the wall page and for the list before
// lighting. They hold in place of those before. The first WallQuestions lines of the wall
// answer one question each, in their order, and are empty where it is not answered.
type WallWords struct {
	Wall     []string `json:"wall,omitempty"`
	Lighting []string `json:"before_lighting,omitempty"`
}

// WallQuestion is what the first lines of the wall page say.
type WallQuestion int

// The questions: where the fire is, so that an ambulance finds it; the number to call;
// the nearest water and extinguisher; who was told of the fire.
const (
	WallWhere WallQuestion = iota
	WallNumber
	WallWater
	WallTold
	WallQuestions int = iota
)

// Answer is what was keyed to a question, "" for nothing.
func (w WallWords) Answer(q WallQuestion) string {
	if int(q) >= len(w.Wall) {
		return ""
	}
	return w.Wall[q]
}

// Answered has a question answered anew.
func (w WallWords) Answered(q WallQuestion, text string) WallWords {
	wall := make([]string, max(WallQuestions, len(w.Wall)))
	copy(wall, w.Wall)
	wall[q] = text
	w.Wall = wall
	return w
}

// Own are the lines of the wall that answer none.
func (w WallWords) Own() []string { return w.Wall[min(WallQuestions, len(w.Wall)):] }

// With has one more line of one's own on the wall.
func (w WallWords) With(text string) WallWords {
	wall := make([]string, max(WallQuestions, len(w.Wall)), max(WallQuestions, len(w.Wall))+1)
	copy(wall, w.Wall)
	w.Wall = append(wall, text)
	return w
}

// Without has the line at a place left out, which answers no question.
func (w WallWords) Without(place int) WallWords {
	w.Wall = slices.Delete(slices.Clone(w.Wall), place, place+1)
	return w
}

func (FurnaceBuilt) Kind() Kind { return KindFurnace }
func (Drying) Kind() Kind       { return KindDrying }
func (Plan) Kind() Kind         { return KindPlan }
func (PlanTicked) Kind() Kind   { return KindPlanTicked }
func (Learnt) Kind() Kind       { return KindLearnt }
func (Mapping) Kind() Kind      { return KindMapping }
func (Lesson) Kind() Kind       { return KindLesson }
func (Remind) Kind() Kind       { return KindRemind }
func (Draft) Kind() Kind        { return KindDraft }
func (WallWords) Kind() Kind    { return KindWallWords }
