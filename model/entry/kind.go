package entry

// Kind names a kind of event on the wire.
type Kind string

// Traits are what holds for all events of a kind: one row of the table below.
// What follows from them is asked of them; only the machines that apply events
// (fold, rule, solve, the writers of other forms) tell one kind from another.
type Traits struct {
	Kind       Kind
	Stream     Streams // in which streams it is at home
	Keyed      Places  // where it can be keyed or comes from
	Act        Answer  // something a person did or saw, that one key may cross out
	Pace       Answer  // disturbs the pace of burning: the interval around it says nothing of it
	Moves      Moves   // what it moves
	Amend      Amending
	CSV        CSV    // what it becomes in the smelt log as CSV
	AfterClose Answer // may follow the close, and does not count to the smelt's own time
	form
}

// Answer is the answer to a question about a kind. The zero value is none: the
// table's test finds it.
type Answer uint8

// The answers.
const (
	No Answer = iota + 1
	Yes
	Depends // on what the event says
)

// Streams are the streams in which a kind is at home.
type Streams uint8

// The streams.
const (
	OfSmelt Streams = 1 << iota
	OfHouse
	OfBoth = OfSmelt | OfHouse
)

// Places are where an event can be keyed, or what else makes it.
type Places uint32

// The places. A kind that is no longer keyed is read for ever.
const (
	OnFire Places = 1 << iota
	OnBook
	OnStart
	OnLight
	OnStores
	OnFurnace
	OnPlan
	OnAccount
	OnForge
	OnShelf
	OnRehearse
	OnEvery   // any screen
	ByProgram // nobody keys it
	ByImport  // taken from a log
	NoLonger
)

// Moves are what an event moves of the smelt.
type Moves uint8

// What can be moved.
const (
	MovesNothing Moves = 1 << iota
	MovesLevel         // the level of the burden
	MovesPhase
	movesBoth = MovesLevel | MovesPhase
)

// Amending says how much of an event an amendment may replace.
type Amending uint8

// What may be amended.
const (
	Never Amending = iota + 1
	TimeOnly
	Whole
)

// CSV says what an event becomes in the smelt log as CSV: the row or column,
// or one of the two below.
type CSV string

// What has no place in the log. Entries of the first kind count as lost when a
// log is written; those of the second say nothing of the furnace.
const (
	CSVNone    CSV = "none"
	CSVJournal CSV = "none, being of the journal"
)

// Written tells whether the log has a place for the event.
func (c CSV) Written() bool { return c != "" && c != CSVNone && c != CSVJournal }

// TraitsOf gives the traits of an event's kind. Of no event, and of a kind of a
// newer version, nothing is known but that it was written down.
func TraitsOf(ev Event) Traits {
	var k Kind
	if ev != nil {
		k = ev.Kind()
	}
	if _, raw := ev.(Unknown); !raw {
		if t, ok := rows[k]; ok {
			return t
		}
	}
	return Traits{Kind: k, Stream: OfBoth, Keyed: ByProgram, Act: No, Pace: No, Moves: MovesNothing, Amend: Never, CSV: CSVNone, AfterClose: Yes}
}

// TraitsOfKind gives the traits of a kind by its name.
func TraitsOfKind(k Kind) Traits {
	if t, ok := rows[k]; ok {
		return t
	}
	return TraitsOf(Unknown{Name: k})
}

// Known tells whether this version knows the kind.
func (t Traits) Known() bool { return t.typ != nil }

// IsAct tells whether an event is something a person did or saw, which one key
// may cross out. Light is none: without it there is no smelt.
func IsAct(ev Event) bool { return TraitsOf(ev).Act == Yes }

// Kinds lists every kind of this version, in the order of the table.
func Kinds() []Kind {
	ks := make([]Kind, len(table))
	for i, t := range table {
		ks[i] = t.Kind
	}
	return ks
}

var rows = func() map[Kind]Traits {
	m := make(map[Kind]Traits, len(table))
	for _, t := range table {
		m[t.Kind] = t
	}
	return m
}()

// table has a row for every kind, in the order of a day, then the house. Each
// row answers everything (tested); the columns are those of Traits.
var table = []Traits{
	// kind, stream, keyed, act, pace, moves, amend, CSV, after the close, form
	{KindLight, OfSmelt, OnLight | ByImport, No, No, MovesPhase, Whole, "the clock of the first row, and the remarks", No, of[Light](most("mass_kg", 1e5), most("smelts", 1e5), most("failures", 1e5), within("calibration", -1e9, 1e9), most("moisture", 5), within("loi_pct", -15, 100))},
	{KindPhase, OfSmelt, OnFire | ByImport, Yes, No, MovesPhase, TimeOnly, "preheat, if it says so", Yes, of[PhaseSet](need("phase"))},
	{KindRecipe, OfSmelt, OnFire, Yes, No, MovesNothing, Whole, CSVNone, No, of[Recipe](most("charges", 1000))},
	{KindFill, OfSmelt, OnFire | ByImport, Yes, No, movesBoth, Whole, "fill", No, of[Fill]()},
	{KindCharge, OfSmelt, OnFire | ByImport, Yes, Depends, movesBoth, Whole, "charge", No, of[Charge]()},
	{KindLevel, OfSmelt, OnFire, Yes, Depends, MovesLevel, TimeOnly, CSVNone, Yes, of[Level](need("charge", "remark"))},
	{KindDip, OfSmelt, OnFire | ByImport, Yes, No, MovesLevel, Whole, "height_cm, if above the tuyere", No, of[Dip]()},
	{KindPoke, OfSmelt, OnFire, Yes, Yes, MovesLevel, TimeOnly, CSVNone, No, of[Poke]()},
	{KindBlast, OfSmelt, OnFire | ByImport, Yes, Depends, MovesNothing, Whole, "air, with air_l_min", No, of[Blast]()},
	{KindRod, OfSmelt, OnFire, Yes, Yes, MovesNothing, TimeOnly, CSVNone, No, of[Rod]()},
	{KindTuyere, OfSmelt, OnFire, Yes, Yes, MovesNothing, Whole, CSVNone, No, of[Tuyere]()},
	{KindTap, OfSmelt, OnFire | ByImport, Yes, Yes, MovesNothing, Whole, "tap", No, of[Tap]()},
	{KindArch, OfSmelt, OnFire, Yes, Yes, MovesNothing, Whole, CSVNone, No, of[Arch]()},
	{KindLook, OfSmelt, OnFire, Yes, No, MovesNothing, Whole, CSVNone, No, of[Look](need("at", "sees"))},
	{KindTemperature, OfSmelt, OnFire | ByImport, Yes, No, MovesNothing, Whole, "temp_c", No, of[Temperature]()},
	{KindWeigh, OfSmelt, OnFire, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Weigh](most("mass_kg", 1e5), need("what"))},
	{KindSample, OfSmelt, OnFire, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Sample]()},
	{KindOreHeld, OfSmelt, OnFire, Yes, No, MovesPhase, TimeOnly, CSVNone, No, of[OreHeld]()},
	{KindLastOre, OfSmelt, OnFire, Yes, No, MovesPhase, TimeOnly, CSVNone, No, of[LastOre]()},
	{KindBurnDown, OfSmelt, OnFire | ByImport, Yes, No, MovesPhase, TimeOnly, "burndown", No, of[BurnDown]()},
	{KindExtract, OfSmelt, OnFire | ByImport, Yes, No, MovesPhase, Whole, "extract", No, of[Extract]()},
	{KindPause, OfSmelt, OnFire, Yes, Yes, MovesNothing, TimeOnly, CSVNone, No, of[Pause]()},
	{KindResume, OfSmelt, OnFire, Yes, Yes, MovesNothing, TimeOnly, CSVNone, No, of[Resume]()},
	{KindHandOver, OfSmelt, OnFire, Yes, No, MovesNothing, Whole, CSVNone, No, of[HandOver](need("to"))},
	{KindForgeHeat, OfSmelt, NoLonger, Yes, No, MovesNothing, TimeOnly, CSVNone, Yes, of[ForgeHeat](most("number", 1000))},
	{KindNote, OfBoth, OnFire | ByImport, Yes, No, MovesNothing, Whole, "note", Yes, of[Note](need("text"))},
	{KindAcknowledge, OfSmelt, OnFire, No, No, MovesNothing, Never, CSVJournal, Yes, of[Acknowledge](within("onset_ms", -aMonthMs, aMonthMs), need("rule"))},
	{KindCaution, OfBoth, ByProgram, No, No, MovesNothing, Never, CSVJournal, Yes, of[CautionShown](need("caution"))},
	{KindSetting, OfBoth, OnEvery, No, No, MovesNothing, Never, CSVJournal, Yes, of[Setting](need("name"))},
	{KindClockJump, OfBoth, ByProgram, No, No, MovesNothing, Never, CSVJournal, Yes, of[ClockJump](within("by_ms", -aCenturyMs, aCenturyMs), within("shift_ms", -aCenturyMs, aCenturyMs))},
	{KindTestimony, OfSmelt, ByProgram, No, No, MovesNothing, Never, CSVJournal, Yes, of[Testimony](need("rule", "state"))},
	{KindStrike, OfBoth, OnFire | OnBook, No, No, MovesNothing, Never, CSVJournal, Yes, of[Strike](need("target"))},
	{KindAmend, OfBoth, OnBook, No, No, MovesNothing, Never, CSVJournal, Yes, of[Amend]()},
	{KindKeys, OfBoth, OnEvery, No, No, MovesNothing, Never, CSVJournal, Yes, of[Keys](within("after_ms", -aCenturyMs, aCenturyMs))},
	{KindIncident, OfSmelt, OnFire, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Incident](need("what"))},
	{KindWall, OfSmelt, OnFire, Yes, No, MovesNothing, Whole, "note, in words", Yes, of[WallSeen](need("what"))},
	{KindWeather, OfSmelt, OnFire, Yes, No, MovesNothing, Whole, "note, in words", Yes, of[Weather]()},
	{KindAgainFromHere, OfSmelt, OnFire, Yes, No, MovesNothing, TimeOnly, CSVNone, No, of[AgainFromHere](most("charges", 1000), need("taken"))},
	{KindSealed, OfSmelt, ByProgram, No, No, MovesNothing, Never, CSVJournal, Yes, of[Sealed](within("number", -1<<53, 1<<53), most("drawn", 512<<10))},
	{KindOpened, OfSmelt, ByProgram, No, No, MovesNothing, Never, CSVJournal, Yes, of[Opened]()},
	{KindRemind, OfBoth, OnEvery, Yes, No, MovesNothing, Whole, CSVJournal, Yes, of[Remind](need("word"))},
	// Of the house.
	{KindDeed, OfHouse, OnStores, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Deed](most("mass_kg", 1e5), most("plus_minus_kg", 1e5), most("moisture", 5), need("does"))},
	{KindAssay, OfHouse, OnStores, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Assay](within("loi_pct", -15, 100))},
	{KindSampleResult, OfHouse, OnStores | OnAccount, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[SampleResult](within("loi_pct", -15, 100), need("sample"))},
	{KindDrying, OfHouse, OnFurnace, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Drying](need("furnace"))},
	{KindPlanTicked, OfHouse, OnPlan, Yes, No, MovesNothing, TimeOnly, CSVNone, Yes, of[PlanTicked](need("plan", "item"))},
	{KindWallWords, OfHouse, OnPlan, No, No, MovesNothing, Never, CSVJournal, Yes, of[WallWords]()},
	{KindPiece, OfHouse, OnForge, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Piece](within("year", -5000, 9999), need("uid"))},
	{KindForgeSession, OfHouse, OnForge, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[ForgeSession](need("pieces"))},
	{KindHeat, OfHouse, OnForge, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Heat](need("pieces"))},
	{KindHeatOver, OfHouse, OnForge, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[HeatOver](need("heat"))},
	{KindPieceWeighed, OfHouse, OnForge | OnAccount, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[PieceWeighed](need("piece"))},
	{KindPieceTested, OfHouse, OnForge, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[PieceTested](need("piece", "test"))},
	{KindLearnt, OfHouse, OnAccount, Yes, No, MovesNothing, TimeOnly, CSVNone, Yes, of[Learnt](need("of"))},
	{KindLesson, OfHouse, OnAccount, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Lesson](need("text"))},
	{KindMapping, OfHouse, OnShelf, No, No, MovesNothing, Never, CSVJournal, Yes, of[Mapping](need("name"))},
	{KindDraft, OfHouse, OnEvery, No, No, MovesNothing, Never, CSVJournal, Yes, of[Draft](need("screen"))},
	{KindFurnace, OfHouse, OnFurnace, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[FurnaceBuilt](need("furnace"))},
	{KindLot, OfBoth, OnStores, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[LotStored](most("mass_kg", 1e5), most("moisture", 5), within("loi_pct", -15, 100), need("lot"))},
	{KindMeasure, OfBoth, OnStores, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[MeasureNamed](need("measure"))},
	{KindPlan, OfHouse, OnPlan, Yes, No, MovesNothing, Whole, CSVNone, Yes, of[Plan](most("charges", 1000))},
}

const (
	aMonthMs   = 31 * 24 * 3600e3
	aCenturyMs = 100 * 366 * 24 * 3600e3
)
