package rule

import "time"

// Row is one rule.
type Row struct {
	ID     ID
	Grade  Grade
	Source string // what it rests on: a published source, or common practice

	holds time.Duration // how long raise must hold before it counts
	once  bool          // told once in a smelt, but for what agrees
	runs  bool          // raise gives its evidence also when it would not raise
	// sure is from when on a warning is of the row's grade; until then it is a note, and nil is at once. What somebody has just
	// keyed is no news to them: it wants a look when nobody answers it, when it comes back, or when another sign agrees.
	sure  func(m *moment, onset time.Duration, back bool) bool
	raise func(*moment) (Evidence, bool)
	clear func(*moment, Warning) bool // given its evidence as it was raised
	agree func(*moment) bool          // whether somebody saw what agrees with it; nil where nothing does
}

// Where the rules come from: each source begins with "published" (and its year),
// "fitted here" (and the command), "computed outside" or "assumed".
const (
	common     = "assumed: common practice"
	markewitz  = "published: Markewitz 2018, charcoal and ore burn rates (Wareham Forge blog)"
	canIron    = "published: DARC, CanIRON VIII 2011, log and notes"
	ownPace    = "fitted here: go test -run TestFiguresAreTheFit -v ./model/forecast, this smelt's own intervals with an adaptive band"
	iceSlag    = "published: Bowen and Schairer 1932, slag of iron silicate melts from 1177 °C (from memory, unverified)"
	wealden    = "published: Wealden Iron Research Group 2015, the flame over the top is burning carbon monoxide"
	shortStack = "published: EXARC 2020, ore passes a short column faster"
	reckoned   = "assumed: as the model of the shaft has it"
	ergun      = "published: Ergun 1952, what a bed of lumps holds against a gas; " + reckoned
	bridges    = "published: DARC 2011, large charcoal bridges, then drops"
	richFailed = "assumed: rich and fast together, as in a published failure of 20.8 kg of ore on 19 kg of charcoal at 6 min a measure; " + markewitz
	overall    = "published: Markewitz 2018 and WIRG 2015, about 1 : 1 over a whole smelt"
	perBore    = "published: Markewitz 2015, Icelandic 6, 1.2 to 1.5 l/min per cm2, smelts with a bloom at 0.8 to 2.1"
	whiteFirst = "assumed: as in the recipe of the Rockbridge Bloomery, ore from blazing white in the peep on, molten drops by charge 3"
)

// The rules.
const (
	BurnSlower      ID = "burn slower"
	BurnFaster      ID = "burn faster"
	ChargeOverdue   ID = "charge overdue"
	EntryMissing    ID = "entry missing"
	StackLow        ID = "stack low"
	HangUp          ID = "hang-up"
	Slip            ID = "slip"
	TuyereDim       ID = "tuyere dim"
	TuyereBlocked   ID = "tuyere blocked"
	BlastLost       ID = "blast lost"
	TopGasQuestion  ID = "top gas alight"
	TopGasUnlit     ID = "top gas out"
	RatioOff        ID = "ratio off"
	HearthCold      ID = "hearth cold"
	SlagThick       ID = "slag stiff"
	SlagNear        ID = "slag near the tuyere"
	SlagAt          ID = "slag at the tuyere"
	WallOpen        ID = "wall open"
	WallCracked     ID = "wall cracked"
	CarbonHigh      ID = "carbon high"
	StoresShort     ID = "stores short"
	MeasureDoubtful ID = "measure doubtful"
	PlanLate        ID = "behind the plan"
	OtherOre        ID = "other ore"
	CharcoalDamp    ID = "charcoal damp"
	DampHearth      ID = "hearth fell, damp charcoal"
	MeterOdd        ID = "meter odd"
	DoubleCharge    ID = "double charge"
	ClockJumped     ID = "clock jumped"
	FireFell        ID = "fire fell"
	SlagUnseen      ID = "slag not seen"

	PressureHigh ID = "pressure high"
	PressureLow  ID = "pressure low"
	MixRich      ID = "mix rich"
	RatioHigh    ID = "ratio high"
	AirWeak      ID = "air weak"
	AirStrong    ID = "air strong"
	AirOdd       ID = "air odd"
	OreEarly     ID = "ore early"
	AirShort     ID = "air short"

	TopHot       ID = "top hot"
	HearthCools  ID = "hearth cools"
	SlagStiffens ID = "slag stiffens"
	SlagRises    ID = "slag rises"
	CarbonRises  ID = "carbon rises"
)

// Table is every rule, gravest first.
var Table = []Row{
	{ID: BlastLost, Grade: Act, Source: common, holds: 30 * time.Second, raise: blastLost, clear: blastBack},
	{ID: TuyereBlocked, Grade: Act, Source: common, raise: tuyereBlocked, clear: not(tuyereBlocked)},
	{ID: SlagAt, Grade: Act, Source: canIron, raise: slagAt, clear: not(slagAt)},
	{ID: WallOpen, Grade: Act, Source: "published: DARC 2005, a wall that went when three quarters were done, patched with wire", raise: wallOpen, clear: not(wallOpen)},

	{ID: TopGasUnlit, Grade: Look, Source: wealden, sure: unlit, raise: topGasUnlit, clear: not(topGasUnlit)},
	{ID: TuyereDim, Grade: Look, Source: common, sure: dimForSure, raise: tuyereDim, clear: not(tuyereDim)},
	{ID: SlagNear, Grade: Look, Source: canIron, sure: unanswered, raise: slagNear, clear: not(slagNear)},
	{ID: SlagThick, Grade: Look, Source: common, sure: stiffForSure, raise: slagThick, clear: not(slagThick)},
	{ID: WallCracked, Grade: Look, Source: "published: course log of 2017, cracks patched while it ran; " + common, sure: lets, raise: wallCracked, clear: not(wallCracked)},
	{ID: PressureHigh, Grade: Look, Source: ergun + "; " + common, raise: pressureHigh, clear: pressureUsual},
	{ID: OreEarly, Grade: Look, Source: whiteFirst, sure: coldForSure, raise: oreEarly, clear: not(oreEarly)},
	{ID: DampHearth, Grade: Look, Source: "assumed: common practice, crews take a step less ore on damp charcoal", raise: dampHearth, clear: not(dampHearth)},
	{ID: HearthCold, Grade: Look, Source: iceSlag, sure: coldForSure, raise: hearthCold, clear: hearthWarm},
	{ID: FireFell, Grade: Look, Source: "assumed: common practice, colours of heat as smiths tell them", sure: fellForSure, raise: fireFell, clear: not(fireFell)},
	{ID: AirShort, Grade: Look, Source: ownPace + "; " + markewitz, raise: airShort, clear: airEnough},
	{ID: ChargeOverdue, Grade: Look, Source: ownPace, raise: chargeOverdue, clear: chargeIn},
	{ID: EntryMissing, Grade: Look, Source: common, raise: entryMissing, clear: entryFound},
	{ID: HangUp, Grade: Look, Source: bridges, raise: hangUp, clear: not(hangUp)},
	{ID: Slip, Grade: Look, Source: bridges, raise: slip, clear: not(slip)},
	{ID: StackLow, Grade: Look, Source: shortStack, holds: time.Minute, raise: stackLow, clear: stackFilled},
	{ID: BurnSlower, Grade: Look, Source: markewitz + "; " + ownPace, raise: burnSlower, clear: burnAsUsual},
	{ID: MixRich, Grade: Look, Source: richFailed, raise: mixRich, clear: mixLean},
	{ID: RatioHigh, Grade: Look, Source: overall, holds: time.Minute, raise: ratioHigh, clear: ratioDown},
	{ID: AirWeak, Grade: Look, Source: perBore + "; " + markewitz, holds: airHolds, raise: airWeak, clear: airWell},
	{ID: AirStrong, Grade: Look, Source: perBore + "; " + markewitz, holds: airHolds, raise: airStrong, clear: airWell},
	{ID: RatioOff, Grade: Look, Source: common, raise: ratioOff, clear: ratioBack},
	{ID: StoresShort, Grade: Look, Source: common, runs: true, raise: storesShort, clear: storesSuffice},
	{ID: DoubleCharge, Grade: Look, Source: common, sure: twoAtOnce, raise: doubleCharge, clear: not(doubleCharge)},
	{ID: MeasureDoubtful, Grade: Look, Source: "published: Markewitz 2013, 5 to 15 % between fillings and charcoals", sure: weighedOff, raise: measureDoubtful, clear: measureSettled},

	{ID: TopGasQuestion, Grade: Note, Source: wealden, holds: time.Minute, raise: topGasQuestion, clear: not(topGasQuestion)},
	{ID: SlagUnseen, Grade: Note, Source: "assumed: common practice, slag is looked at when it is tapped or hooked out, every half an hour or so", raise: slagUnseen, clear: not(slagUnseen)},
	{ID: BurnFaster, Grade: Note, Source: markewitz + "; " + ownPace, raise: burnFaster, clear: burnAsUsual},
	{ID: CarbonHigh, Grade: Note, Source: common, raise: carbonHigh, clear: not(carbonHigh)},
	{ID: PlanLate, Grade: Note, Source: common, once: true, raise: planLate, clear: replannedOrDone},
	{ID: OtherOre, Grade: Note, Source: common, once: true, raise: otherOre, clear: replannedOrDone},
	{ID: CharcoalDamp, Grade: Note, Source: "assumed: by the heat of vaporising its water in the upper shaft; " + common, raise: charcoalDamp, clear: charcoalDried},
	{ID: MeterOdd, Grade: Note, Source: "assumed: by the balance of oxygen carbon burned to monoxide is the most a blast burns", once: true, raise: meterOdd, clear: toldLongEnough},
	{ID: AirOdd, Grade: Note, Source: perBore, holds: airHolds, once: true, raise: airOdd, clear: airUsual},
	{ID: ClockJumped, Grade: Note, Source: common, raise: clockJumped, clear: not(clockJumped)},

	{ID: PressureLow, Grade: Note, Source: ergun + "; " + common, raise: pressureLow, clear: pressureUp},
	{ID: SlagRises, Grade: Note, Source: reckoned, holds: 3 * time.Minute, runs: true, raise: slagRises, clear: slagSinks},
	{ID: HearthCools, Grade: Note, Source: reckoned + ", against this smelt's own hour", holds: 3 * time.Minute, once: true, runs: true, raise: hearthCools, clear: hearthWarms, agree: seenStiff},
	{ID: SlagStiffens, Grade: Note, Source: reckoned, holds: 3 * time.Minute, runs: true, raise: slagStiffens, clear: slagRunsAgain},
	{ID: TopHot, Grade: Note, Source: "published: DARC 2011 and Markewitz 2021, 660 and 715 °C at the top; " + reckoned, once: true, runs: true, raise: topHot, clear: topCool, agree: readHot},
	{ID: CarbonRises, Grade: Note, Source: reckoned, holds: 10 * time.Minute, runs: true, raise: carbonRises, clear: carbonFalls},
}

// not clears a rule when what raised it no longer stands. It is for signs: they
// change by what people see and do, not by themselves, and dwell keeps them
// from flapping.
func not(raise func(*moment) (Evidence, bool)) func(*moment, Warning) bool {
	return func(m *moment, _ Warning) bool {
		_, stands := raise(m)
		return !stands
	}
}
