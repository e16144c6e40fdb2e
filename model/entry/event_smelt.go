package entry

import "slices"

// Light is the first event of every smelt: the fire is lit. It names the
// furnace and the measures and takes a copy of all that later figures lean on,
// so that the smelt stands alone.
type Light struct {
	UID         string             `json:"uid"`
	Furnace     Furnace            `json:"furnace"`
	Measures    []Measure          `json:"measures,omitempty"`
	Lots        []Lot              `json:"lots,omitempty"`
	Recipe      Parts              `json:"recipe,omitempty"`      // the next charge, until a Recipe says otherwise
	Calibration map[string]float64 `json:"calibration,omitempty"` // named numbers of the shaft solver, where they are not the usual
	Solver      string             `json:"solver,omitempty"`      // which solver gave the figures of the day
	Practice    bool               `json:"practice,omitempty"`    // set aside from shelf, stores and calibration
	Invented    bool               `json:"invented,omitempty"`    // a demonstration, never smelted
	Undated     bool               `json:"undated,omitempty"`     // the day is unknown; dates of the smelt mean nothing
	Imported    bool               `json:"imported,omitempty"`    // taken from a log: when things were known is not recorded
	Source      []string           `json:"source,omitempty"`      // the remark lines of the log it came from
	SourceHash  string             `json:"source_hash,omitempty"`
	Plan        *PlanTaken         `json:"plan,omitempty"`      // what was planned, as it stood
	Learnt      UID                `json:"learnt,omitempty"`    // the learnt values that the figures lean on
	Taught      *Taught            `json:"taught,omitempty"`    // what own smelts taught when it was lit; nil where that was not known
	LeftIn      []LeftIn           `json:"left_in,omitempty"`   // of the smelt before, in the same furnace
	Rested      Maybe[Hour]        `json:"rested_h,omitzero"`   // since that one ended; not known for a furnace that is new or cold
	Trying      string             `json:"trying,omitempty"`    // what is tried this time
	Rehearsal   bool               `json:"rehearsal,omitempty"` // no fire burns: the furnace is the program's
}

// PlanTaken is what a smelt keeps of its plan.
type PlanTaken struct {
	UID      UID                 `json:"uid,omitempty"`
	Name     string              `json:"name,omitempty"`
	Wanted   Wanted              `json:"wanted,omitzero"`
	Sure     Maybe[Share]        `json:"sure,omitzero"`
	Promised map[string]Estimate `json:"promised,omitempty"` // by the name of the figure
}

// ID names the plan: its uid, or its name where it has none.
func (p PlanTaken) ID() UID { return p.UID.or(p.Name) }

// Taught is a copy of what the house's own earlier smelts taught a smelt as it was lit: it
// keeps that, whatever book it is read in.
type Taught struct {
	Mix      string   `json:"mix,omitempty"`    // the ore mix of the yields
	Yields   []Number `json:"yields,omitempty"` // kg of bloom per kg of ore dry, of those on that mix that gave one
	Smelts   int      `json:"smelts,omitempty"` // on any mix, of which it was known how they ended
	Failures int      `json:"failures,omitempty"`
}

// LeftIn is what a furnace still held when it was lit again.
type LeftIn string

// What can be left in a furnace.
const (
	LeftSlag   LeftIn = "slag"
	LeftBloom  LeftIn = "bloom"
	LeftEmbers LeftIn = "embers"
)

// Phase is a stage of a smelt.
type Phase string

// The phases in their order.
const (
	Prepared  Phase = "prepared"
	Preheat   Phase = "preheat"
	Filling   Phase = "fill"
	MainBurn  Phase = "main burn"
	OreOff    Phase = "ore held"
	BurnsDown Phase = "burn-down"
	Extracted Phase = "extracted"
	Closed    Phase = "closed"
)

// Over tells whether the bloom is out or the smelt was closed without one.
func (p Phase) Over() bool { return p == Extracted || p == Closed }

// Past tells whether a smelt in this phase has left the other one behind. Ore held back is
// a stretch of the main burn.
func (p Phase) Past(other Phase) bool {
	order := []Phase{Prepared, Preheat, Filling, MainBurn, BurnsDown, Extracted, Closed}
	place := func(q Phase) int {
		if q == OreOff {
			q = MainBurn
		}
		return slices.Index(order, q)
	}
	return place(p) > place(other)
}

// PhaseSet says in so many words that a phase begins. Most phases follow from
// the acts (a fill, a charge, burn-down); this is for the others.
type PhaseSet struct {
	Phase Phase `json:"phase"`
}

// Recipe is what the next charges are to be: the very next one, and the steps
// of the plan's ramp after it when there is a plan.
type Recipe struct {
	Next Parts        `json:"next"`
	Ramp []RecipeStep `json:"ramp,omitempty"`
}

// RecipeStep is a number of like charges, or another stretch of a plan.
type RecipeStep struct {
	Does    StepDoes      `json:"does,omitempty"` // charge, when left out
	Charges int           `json:"charges"`
	Parts   Parts         `json:"parts"`
	Every   Maybe[Minute] `json:"every_min,omitzero"` // from one charge to the next
	Lasts   Maybe[Minute] `json:"minutes,omitzero"`
}

// StepDoes is what is done in a step of a plan.
type StepDoes string

// What a step of a plan does.
const (
	StepFill     StepDoes = "fill"
	StepCharcoal StepDoes = "charcoal"
	StepCharge   StepDoes = "charge"
	StepIronSlag StepDoes = "iron_slag"
	StepLastOre  StepDoes = "last_ore"
	StepBurnDown StepDoes = "burn_down"
)

// Fill is charcoal filled into the shaft before the main burn.
type Fill struct {
	Parts Parts `json:"parts,omitempty"`
}

// Charge is what went in at the top at one time.
type Charge struct {
	Parts Parts `json:"parts,omitempty"`
}

// LevelRemark says how a charge left the burden.
type LevelRemark string

// What can be said of the level after a charge. Without a remark a charge is
// taken to fill to the charging mark.
const (
	NotToMark LevelRemark = "not to the mark"
	Heaped    LevelRemark = "heaped"
	ToMark    LevelRemark = "to the mark"
)

// Level is a remark about the level after an earlier charge.
type Level struct {
	Charge Ref         `json:"charge"`
	Remark LevelRemark `json:"remark"`
}

// Dip is a measured level of the burden: down from the rim, or (in some logs)
// up from the tuyere.
type Dip struct {
	BelowRim    Maybe[Centimetre] `json:"below_rim_cm,omitzero"`
	AboveTuyere Maybe[Centimetre] `json:"above_tuyere_cm,omitzero"`
}

// Poke is a push that settles the burden. Nothing burns by it.
type Poke struct{}

// Rod is clearing the tuyere with a rod.
type Rod struct{}

// Tuyere is a change of the tuyere: its angle, how far its tip stands in, its
// bore, or another tuyere altogether.
type Tuyere struct {
	Angle   Maybe[Degree]     `json:"angle_deg,omitzero"`
	Proud   Maybe[Centimetre] `json:"proud_cm,omitzero"`
	Bore    Maybe[Millimetre] `json:"bore_mm,omitzero"`
	Swapped string            `json:"swapped,omitempty"` // what it was swapped for, in words
}

// Tap is slag let out.
type Tap struct {
	Mass Maybe[Kilogram] `json:"mass_kg,omitzero"`
}

// Arch is the arch opened or closed.
type Arch struct {
	Open bool `json:"open"`
}

// LookAt is what was looked at, listened to or smelled.
type LookAt string

// What one looks at.
const (
	AtPeep   LookAt = "peep"
	AtFlame  LookAt = "flame"
	AtSound  LookAt = "sound"
	AtSlag   LookAt = "slag"
	AtSmell  LookAt = "smell"
	AtTopGas LookAt = "top gas"
)

// Look is an observation by eye, ear or nose, in a plain word.
type Look struct {
	At   LookAt `json:"at"`
	Sees string `json:"sees"` // white, dim, dark; gurgle; alight, out; stiff, runs ...
}

// Temperature is a reading, with where it was taken as far as that is known.
type Temperature struct {
	Degrees     Celsius           `json:"c"`
	Where       string            `json:"where,omitempty"`
	AboveTuyere Maybe[Centimetre] `json:"above_tuyere_cm,omitzero"`
}

// Weighed is what was put on the scales.
type Weighed string

// What can be weighed.
const (
	WeighMeasure      Weighed = "measure"
	WeighBloom        Weighed = "bloom"
	WeighSlag         Weighed = "slag"
	WeighFragments    Weighed = "fragments"
	WeighLot          Weighed = "lot"
	WeighCharcoalLeft Weighed = "charcoal_left"
	WeighWall         Weighed = "wall" // what the wall lost
)

// SlagWhere is where slag was weighed.
type SlagWhere string

// Where slag comes from.
const (
	SlagOfTap     SlagWhere = "tap"
	SlagOfFurnace SlagWhere = "furnace"
)

// PieceState is in which state a bloom or another piece was weighed.
type PieceState string

// The states of a piece on the scales.
const (
	Hot       PieceState = "hot"
	Cold      PieceState = "cold"
	Compacted PieceState = "compacted"
)

// Reweighed says why a measure weighs other than before.
type Reweighed string

// Why the content of a measure weighs other than was thought.
const (
	Wetter Reweighed = "wetter" // the same charcoal, more water: it holds the same carbon
	Fuller Reweighed = "fuller" // more of the same in it
	Other  Reweighed = "other"  // another charcoal or ore
)

// Weigh is a weighing. Of a measure it holds for the whole smelt, counts
// before it included, unless keyed from now.
type Weigh struct {
	What    Weighed   `json:"what"`
	Name    string    `json:"name,omitempty"` // which measure or lot
	Mass    Kilogram  `json:"mass_kg"`
	FromNow bool      `json:"from_now,omitempty"`
	Why     Reweighed `json:"why,omitempty"`

	Where     SlagWhere       `json:"where,omitempty"` // of slag
	Piece     UID             `json:"piece,omitempty"`
	State     PieceState      `json:"state,omitempty"`
	PlusMinus Maybe[Kilogram] `json:"plus_minus_kg,omitzero"`
	InWater   Maybe[Kilogram] `json:"in_water_kg,omitzero"` // what it weighs hanging in water
	Soaked    bool            `json:"soaked,omitempty"`     // it lay in water before that until no bubbles came
	Closed    bool            `json:"closed,omitempty"`     // will not be weighed: the mass says nothing
}

// Sample is a sample taken, of slag on a rod for instance.
type Sample struct {
	Of    string `json:"of,omitempty"`
	Note  string `json:"note,omitempty"`
	Label string `json:"label,omitempty"` // what the lab's answer will name
}

// OreHeld says that ore is held back for now, or goes in again.
type OreHeld struct {
	Again bool `json:"again,omitempty"` // ore goes in again
}

// LastOre says that the last ore is in.
type LastOre struct{}

// BurnDown is the start of the burn-down: no more is charged.
type BurnDown struct{}

// Extract is the bloom being taken out.
type Extract struct {
	From string `json:"from,omitempty"` // top, arch, furnace taken down
	None bool   `json:"none,omitempty"` // there was no bloom
}

// Pause and Resume bracket a stop of the work.
type Pause struct {
	Why string `json:"why,omitempty"`
}

// Resume ends a pause.
type Resume struct{}

// HandOver is another person taking charge, of all of it or of what it covers.
type HandOver struct {
	To     string `json:"to"`
	Covers string `json:"covers,omitempty"` // in words; empty is all of it
}

// CoversAll is a hand-over of all of it, in so many words.
const CoversAll = "everything"

// Whole tells whether all of it was handed over: who has only a part is not in charge.
func (h HandOver) Whole() bool { return h.Covers == "" || h.Covers == CoversAll }

// ForgeHeat is one heat in the forge on the way from bloom to bar, as the first
// version wrote it. It is read as a heat on the smelt's bloom and no longer
// keyed: the forge has kinds of its own (ForgeSession, Heat).
type ForgeHeat struct {
	Number int             `json:"number,omitempty"`
	Step   string          `json:"step,omitempty"` // consolidation, folding, drawing out
	Before Maybe[Kilogram] `json:"before_kg,omitzero"`
	After  Maybe[Kilogram] `json:"after_kg,omitzero"`
	Fuel   Maybe[Kilogram] `json:"fuel_kg,omitzero"`
	Note   string          `json:"note,omitempty"`
}

// Note is words. They are never read for meaning.
type Note struct {
	Text string `json:"text"`
}

func (Light) Kind() Kind       { return KindLight }
func (PhaseSet) Kind() Kind    { return KindPhase }
func (Recipe) Kind() Kind      { return KindRecipe }
func (Fill) Kind() Kind        { return KindFill }
func (Charge) Kind() Kind      { return KindCharge }
func (Level) Kind() Kind       { return KindLevel }
func (Dip) Kind() Kind         { return KindDip }
func (Poke) Kind() Kind        { return KindPoke }
func (Rod) Kind() Kind         { return KindRod }
func (Tuyere) Kind() Kind      { return KindTuyere }
func (Tap) Kind() Kind         { return KindTap }
func (Arch) Kind() Kind        { return KindArch }
func (Look) Kind() Kind        { return KindLook }
func (Temperature) Kind() Kind { return KindTemperature }
func (Weigh) Kind() Kind       { return KindWeigh }
func (Sample) Kind() Kind      { return KindSample }
func (OreHeld) Kind() Kind     { return KindOreHeld }
func (LastOre) Kind() Kind     { return KindLastOre }
func (BurnDown) Kind() Kind    { return KindBurnDown }
func (Extract) Kind() Kind     { return KindExtract }
func (Pause) Kind() Kind       { return KindPause }
func (Resume) Kind() Kind      { return KindResume }
func (HandOver) Kind() Kind    { return KindHandOver }
func (ForgeHeat) Kind() Kind   { return KindForgeHeat }
func (Note) Kind() Kind        { return KindNote }

func (l Level) target() Ref       { return l.Charge }
func (l Level) aimed(r Ref) Event { l.Charge = r; return l }
