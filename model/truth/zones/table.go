package zones

import (
	"math"
	"math/rand/v2"

	"chargehand/model/truth"
)

// Version names this furnace in the seal of a rehearsal. It is raised whenever the same number gives another day.
const Version = "zones 1"

// Row is one number of the furnace: how it is drawn, what it is and what it rests on.
type Row struct {
	Name          string
	Unit          string
	P10, P50, P90 float64
	Log           bool // drawn evenly in the logarithm on each side of the middle, else evenly in the number
	Least, Most   float64
	Noise         bool // varies within a day; scores are also taken with half and with double of it
	Meaning       string
	Source        string
	field         func(*Drawn) *float64
}

// Drawn is a furnace, its lots and its day: a value for every row of Table. SI units but where the name says otherwise.
type Drawn struct {
	truth.Setting
	// What the crew takes for true is off by these, and lots.
	StackOff, AssayOff, AirShare, Meter, Carbon, Ash, Silica float64
	// Zones and heat.
	BurnHeight, ReducingShare, PassesBy, SolutionHalf, SolutionWidth, GasKeeps, Glow    float64
	WallIn, WallOut, WallHeat, WallBelow, WallAbove, HearthHeat, HearthGain, HearthLoss float64
	// Ore, iron and slag.
	ReductionMinutes, ReductionDoubles, DripMinutes, Touch, Yield, NoBloom, Fragments, BloomSlag, SlagVoid, MeltsOff float64
	// What comes and goes.
	HangRate, HangMinutes, SkullRate, RodLeaves, TopOut             float64
	BlowerDrift, LeakDrift, BucketScatter, ScoopScatter, LotScatter float64
}

const (
	sheets  = "published: Markewitz, data sheets of 30 Nov 2016 and 30 Oct 2021 (testdata/logs 03 and 05)"
	table   = "published: smelts of several crews, 2001 to 2022 (testdata/smelts)"
	fuel    = "published: jfe-project 2011, general overview of charcoal properties"
	assumed = "assumed: nothing published was found"
)

// Table holds every number of the furnace but its mishaps, with how it is drawn. It was kept before the program was held against
// this furnace; no row is changed to make a score better, and whoever changes one raises Version. What stands under Noise
// varies within a day; what does not is drawn once for a furnace.
var Table = []Row{
	// As it is built, loaded and worked.
	{Name: "bore", Unit: "cm", P10: 23, P50: 26, P90: 29, Least: 20, Most: 34, Meaning: "inside diameter", Source: sheets, field: func(d *Drawn) *float64 { return &d.BoreCm }},
	{Name: "stack", Unit: "cm", P10: 44, P50: 50, P90: 58, Least: 38, Most: 72, Meaning: "charging mark above the tuyere", Source: sheets, field: func(d *Drawn) *float64 { return &d.StackCm }},
	{Name: "wall", Unit: "cm", P10: 4, P50: 5.5, P90: 8, Least: 3, Most: 11, Meaning: "thickness of the wall", Source: sheets + ", 6 to 3 cm in 2021", field: func(d *Drawn) *float64 { return &d.WallCm }},
	{Name: "tuyere_base", Unit: "cm", P10: 14, P50: 16, P90: 19, Least: 12, Most: 22, Meaning: "tuyere over the floor of the hearth", Source: sheets + ", 15 cm in both", field: func(d *Drawn) *float64 { return &d.TuyereBaseCm }},
	{Name: "blast_per_area", Unit: "l/min/cm2", P10: 0.85, P50: 1.15, P90: 1.5, Least: 0.7, Most: 2, Meaning: "blast the crew sets, as its meter reads, over the bore", Source: "published: Markewitz 2015, 1.2 to 1.5 advised; 0.8 to 1.3 in the data sheets of 2016 and 2021", field: func(d *Drawn) *float64 { return &d.BlastPerArea }},
	{Name: "ore", Unit: "kg", P10: 16, P50: 23, P90: 32, Least: 10, Most: 42, Meaning: "ore of the whole smelt, as charged", Source: table, field: func(d *Drawn) *float64 { return &d.OreKg }},
	{Name: "ore_start", Unit: "1", P10: 3, P50: 5, P90: 8, Least: 2, Most: 11, Meaning: "charges of charcoal alone before the first ore", Source: "published: logs of 2005 to 2022 (testdata/logs), 2 to 11", field: func(d *Drawn) *float64 { return &d.OreStart }},
	{Name: "bore_off", Unit: "1", P10: -0.02, P50: 0.01, P90: 0.04, Least: -0.06, Most: 0.1, Meaning: "how much wider the bore is than was measured", Source: "published: Markewitz 2015, a bore that grew from 33 to 36 cm", field: func(d *Drawn) *float64 { return &d.BoreOff }},
	{Name: "stack_off", Unit: "1", P10: -0.03, P50: 0, P90: 0.03, Least: -0.08, Most: 0.08, Meaning: "how much higher the mark is than was measured", Source: assumed, field: func(d *Drawn) *float64 { return &d.StackOff }},
	{Name: "bucket_off", Unit: "1", P10: 0.9, P50: 1, P90: 1.12, Log: true, Least: 0.75, Most: 1.35, Meaning: "what a bucket holds on the whole over what the crew takes it to hold", Source: "published: Markewitz 2013, 10 to 15 % between charcoals", field: func(d *Drawn) *float64 { return &d.BucketOff }},
	{Name: "look_every", Unit: "min", P10: 8, P50: 12, P90: 20, Log: true, Least: 4, Most: 40, Meaning: "how often somebody looks, listens and says so", Source: "assumed: published logs note less, crews look more", field: func(d *Drawn) *float64 { return &d.LookEvery }},
	{Name: "meter", Unit: "1", P10: 0.1, P50: 0.5, P90: 0.9, Least: 0, Most: 1, Meaning: "below two thirds the air is metered, above it there is only a mark on the gate", Source: "assumed: of eleven published logs seven have volumes", field: func(d *Drawn) *float64 { return &d.Meter }},

	// Lots.
	{Name: "moisture", Unit: "1", P10: 0.03, P50: 0.06, P90: 0.11, Log: true, Least: 0.02, Most: 0.2, Meaning: "water on dry charcoal", Source: fuel, field: func(d *Drawn) *float64 { return &d.Moisture }},
	{Name: "carbon", Unit: "1", P10: 0.79, P50: 0.85, P90: 0.9, Least: 0.72, Most: 0.94, Meaning: "carbon of dry charcoal", Source: fuel, field: func(d *Drawn) *float64 { return &d.Carbon }},
	{Name: "ash", Unit: "1", P10: 0.015, P50: 0.03, P90: 0.045, Log: true, Least: 0.01, Most: 0.06, Meaning: "ash of dry charcoal", Source: fuel, field: func(d *Drawn) *float64 { return &d.Ash }},
	{Name: "charcoal_bulk", Unit: "kg/m3", P10: 175, P50: 200, P90: 230, Least: 150, Most: 260, Meaning: "dry charcoal that fills a cubic metre", Source: fuel, field: func(d *Drawn) *float64 { return &d.CharcoalBulk }},
	{Name: "ore_iron", Unit: "1", P10: 0.44, P50: 0.51, P90: 0.58, Least: 0.36, Most: 0.63, Meaning: "iron of dry roasted ore by its assay", Source: "published: analogues and roasted bog ores of 46 to 63 % iron (Markewitz, data sheets 2008 to 2022)", field: func(d *Drawn) *float64 { return &d.OreIron }},
	{Name: "assay_off", Unit: "1", P10: -0.04, P50: 0, P90: 0.04, Least: -0.1, Most: 0.1, Meaning: "iron share of the ore less that of its assay", Source: "published: one ore with assays of 51, 53 and 55 % (Markewitz, data sheets 2016 to 2021)", field: func(d *Drawn) *float64 { return &d.AssayOff }},
	{Name: "ore_moisture", Unit: "1", P10: 0.02, P50: 0.05, P90: 0.12, Log: true, Least: 0.01, Most: 0.2, Meaning: "water on dry ore", Source: "published: Markewitz 2018, 10 to 13 % in an analogue ore", field: func(d *Drawn) *float64 { return &d.OreMoisture }},
	{Name: "silica", Unit: "1", P10: 0.6, P50: 0.72, P90: 0.82, Least: 0.45, Most: 0.92, Meaning: "silica of all that is in the ore beside its iron oxide; the rest counts as one", Source: "assumed: between published bog ores, 1 to 14 % silica beside 0.5 to 2.5 % alumina", field: func(d *Drawn) *float64 { return &d.Silica }},
	{Name: "air_share", Unit: "1", P10: 0.74, P50: 0.9, P90: 1.1, Log: true, Least: 0.5, Most: 1.4, Meaning: "air that gets into the fire over what the meter reads", Source: "published: charge intervals of 2016 and 2021 tell 1.15, 0.93 and 0.66 (Markewitz, data sheets)", field: func(d *Drawn) *float64 { return &d.AirShare }},

	// Zones and heat.
	{Name: "burn_height", Unit: "m", P10: 0.07, P50: 0.1, P90: 0.14, Log: true, Least: 0.05, Most: 0.2, Meaning: "height of the burning zone at the blast the crew sets; it goes with the root of the air", Source: "published: DARC 2011, hottest within a hand's breadth over the tuyere", field: func(d *Drawn) *float64 { return &d.BurnHeight }},
	{Name: "reducing_share", Unit: "1", P10: 0.4, P50: 0.5, P90: 0.6, Least: 0.3, Most: 0.7, Meaning: "share of the stack over the burning zone that the reducing zone takes", Source: assumed, field: func(d *Drawn) *float64 { return &d.ReducingShare }},
	{Name: "passes_by", Unit: "1", P10: 0.04, P50: 0.1, P90: 0.2, Log: true, Least: 0, Most: 0.4, Meaning: "share of the carbon dioxide of a zone that goes up along the wall and meets no charcoal", Source: assumed, field: func(d *Drawn) *float64 { return &d.PassesBy }},
	{Name: "solution_half", Unit: "K", P10: 1250, P50: 1330, P90: 1410, Least: 1150, Most: 1450, Meaning: "heat of a zone at which half of the carbon dioxide that meets charcoal takes up carbon", Source: "assumed: far above where it could (970 K), below the hottest probes", field: func(d *Drawn) *float64 { return &d.SolutionHalf }},
	{Name: "solution_width", Unit: "K", P10: 50, P50: 70, P90: 100, Log: true, Least: 30, Most: 150, Meaning: "over how much heat that share goes from a half to three quarters", Source: assumed, field: func(d *Drawn) *float64 { return &d.SolutionWidth }},
	{Name: "gas_keeps", Unit: "1", P10: 0.1, P50: 0.2, P90: 0.35, Log: true, Least: 0.03, Most: 0.5, Meaning: "share of its surplus of heat that gas takes along through a full zone", Source: assumed, field: func(d *Drawn) *float64 { return &d.GasKeeps }},
	{Name: "glow", Unit: "W/K", P10: 1.5, P50: 3, P90: 6, Log: true, Least: 0.5, Most: 12, Meaning: "heat that one zone gives the next by glow and conduction", Source: assumed, field: func(d *Drawn) *float64 { return &d.Glow }},
	{Name: "wall_in", Unit: "W/m2/K", P10: 24, P50: 34, P90: 46, Log: true, Least: 12, Most: 70, Meaning: "from the hot face into the middle of the wall", Source: "assumed: half of 5.5 cm of clay at some 0.9 W/m/K (from memory)", field: func(d *Drawn) *float64 { return &d.WallIn }},
	{Name: "wall_out", Unit: "W/m2/K", P10: 9, P50: 12, P90: 16, Log: true, Least: 5, Most: 25, Meaning: "from the middle of the wall to the air", Source: "assumed: the other half, and some 20 W/m2/K outside", field: func(d *Drawn) *float64 { return &d.WallOut }},
	{Name: "wall_heat", Unit: "J/m3/K", P10: 1.3e6, P50: 1.6e6, P90: 1.9e6, Least: 1e6, Most: 2.4e6, Meaning: "heat that the wall stores", Source: "assumed: 1600 kg/m3 of 1000 J/kg/K (from memory)", field: func(d *Drawn) *float64 { return &d.WallHeat }},
	{Name: "wall_below", Unit: "K", P10: 620, P50: 740, P90: 860, Least: 500, Most: 1000, Meaning: "wall of the burning zone, and hearth, after the wood fire", Source: assumed, field: func(d *Drawn) *float64 { return &d.WallBelow }},
	{Name: "wall_above", Unit: "K", P10: 360, P50: 430, P90: 520, Least: 320, Most: 700, Meaning: "wall of the upper zone after it", Source: assumed, field: func(d *Drawn) *float64 { return &d.WallAbove }},
	{Name: "hearth_heat", Unit: "J/K", P10: 1.5e4, P50: 2.4e4, P90: 3.8e4, Log: true, Least: 1e4, Most: 8e4, Meaning: "heat that packing and ground of the hearth store, without slag and iron", Source: "assumed: some 15 to 35 kg of fines and clay that take part", field: func(d *Drawn) *float64 { return &d.HearthHeat }},
	{Name: "hearth_gain", Unit: "W/K", P10: 9, P50: 14, P90: 20, Log: true, Least: 5, Most: 30, Meaning: "from the burning zone down into the hearth", Source: assumed, field: func(d *Drawn) *float64 { return &d.HearthGain }},
	{Name: "hearth_loss", Unit: "W/K", P10: 0.7, P50: 1, P90: 1.4, Log: true, Least: 0.4, Most: 3, Meaning: "from the hearth into the ground", Source: assumed, field: func(d *Drawn) *float64 { return &d.HearthLoss }},

	// Ore, iron and slag.
	{Name: "reduction_minutes", Unit: "min", P10: 12, P50: 18, P90: 28, Log: true, Least: 6, Most: 90, Meaning: "time at 900 C that takes all oxygen of the ore", Source: "assumed: pea-sized lumps, tens of minutes (from memory, unverified)", field: func(d *Drawn) *float64 { return &d.ReductionMinutes }},
	{Name: "reduction_doubles", Unit: "K", P10: 60, P50: 85, P90: 120, Log: true, Least: 40, Most: 200, Meaning: "so much hotter it takes half the time", Source: assumed, field: func(d *Drawn) *float64 { return &d.ReductionDoubles }},
	{Name: "drip_minutes", Unit: "min", P10: 1.5, P50: 3, P90: 6, Log: true, Least: 0.5, Most: 12, Meaning: "time in which ore in the burning zone runs down, on the mean", Source: assumed, field: func(d *Drawn) *float64 { return &d.DripMinutes }},
	{Name: "touch", Unit: "1", P10: 0.1, P50: 0.25, P90: 0.45, Least: 0, Most: 0.7, Meaning: "share of the wustite that runs down which glowing charcoal reduces as it touches it", Source: "assumed: bowls and low shafts make iron too (testdata/smelts)", field: func(d *Drawn) *float64 { return &d.Touch }},
	{Name: "yield", Unit: "1", P10: 0.08, P50: 0.20, P90: 0.40, Log: true, Least: 0.03, Most: 0.55, Meaning: "kg of bloom from a kg of dry ore of an ordinary day on this furnace", Source: "published: 41 smelts of several crews, 2001 to 2022 (testdata/smelts)", field: func(d *Drawn) *float64 { return &d.Yield }},
	{Name: "no_bloom", Unit: "1", P10: 0.05, P50: 0.10, P90: 0.20, Log: true, Least: 0.02, Most: 0.4, Meaning: "chance that the iron does not come together, in an ordinary day", Source: "assumed: a crew that has smelted elsewhere, about 1 in 10; one open meeting had 7 of 10 (2007)", field: func(d *Drawn) *float64 { return &d.NoBloom }},
	{Name: "fragments", Unit: "1", P10: 0.05, P50: 0.15, P90: 0.3, Least: 0, Most: 0.5, Meaning: "share of the iron that stays in bits beside the bloom", Source: "published: 1 kg of bits beside 2.9 kg (2009), 3 beside 12 (2015)", field: func(d *Drawn) *float64 { return &d.Fragments }},
	{Name: "bloom_slag", Unit: "1", P10: 0.08, P50: 0.14, P90: 0.25, Least: 0.03, Most: 0.4, Meaning: "slag in the bloom as it is weighed", Source: "assumed: blooms are weighed with their slag; primary forging takes a fifth and more off", field: func(d *Drawn) *float64 { return &d.BloomSlag }},
	{Name: "slag_void", Unit: "1", P10: 0.35, P50: 0.5, P90: 0.65, Least: 0.25, Most: 0.8, Meaning: "share of the hearth that slag can fill", Source: assumed, field: func(d *Drawn) *float64 { return &d.SlagVoid }},
	{Name: "melts_off", Unit: "K", P10: -45, P50: 0, P90: 45, Least: -100, Most: 100, Meaning: "how much hotter the slag melts than its line says", Source: "published: the spread of melts of silicates of iron about the diagram of Bowen and Schairer 1932", field: func(d *Drawn) *float64 { return &d.MeltsOff }},

	// What comes and goes.
	{Name: "hang_rate", Unit: "1/h", P10: 0.05, P50: 0.15, P90: 0.4, Log: true, Least: 0, Most: 2, Noise: true, Meaning: "how often the burden hangs", Source: "assumed: log 05 of 2021 was probed to settle twice in a quarter of an hour, log 03 of 2016 not in six hours", field: func(d *Drawn) *float64 { return &d.HangRate }},
	{Name: "hang_minutes", Unit: "min", P10: 4, P50: 10, P90: 22, Log: true, Least: 2, Most: 60, Meaning: "how long a hanging holds that nobody pokes", Source: assumed, field: func(d *Drawn) *float64 { return &d.HangMinutes }},
	{Name: "skull_rate", Unit: "1/h", P10: 0.02, P50: 0.06, P90: 0.18, Log: true, Least: 0, Most: 0.6, Noise: true, Meaning: "how fast slag shuts the tuyere of a hot furnace; five times that in a cold one", Source: "assumed: one furnace of 2005 was rodded five times in 33 minutes, most not at all", field: func(d *Drawn) *float64 { return &d.SkullRate }},
	{Name: "rod_leaves", Unit: "1", P10: 0.05, P50: 0.15, P90: 0.3, Least: 0, Most: 0.6, Meaning: "share of what shuts the tuyere that a rod leaves", Source: assumed, field: func(d *Drawn) *float64 { return &d.RodLeaves }},
	{Name: "top_out", Unit: "1", P10: 0.02, P50: 0.05, P90: 0.12, Log: true, Least: 0, Most: 0.4, Noise: true, Meaning: "chance that a charge puts the flame at the top out", Source: "published: Wealden Iron Research Group 2015 and others, the gas had to be lit", field: func(d *Drawn) *float64 { return &d.TopOut }},
	{Name: "blower_drift", Unit: "1/sqrt(h)", P10: 0.015, P50: 0.03, P90: 0.06, Log: true, Least: 0, Most: 0.2, Noise: true, Meaning: "how far the blower wanders", Source: "published: log 05 of 2021, 791 to 802 l/min at one setting within two hours", field: func(d *Drawn) *float64 { return &d.BlowerDrift }},
	{Name: "leak_drift", Unit: "1/sqrt(h)", P10: 0.02, P50: 0.05, P90: 0.1, Log: true, Least: 0, Most: 0.3, Noise: true, Meaning: "how far the share of the air that leaks wanders", Source: "assumed: charge intervals of 2021 tell 0.93 at one setting and 0.66 two hours later", field: func(d *Drawn) *float64 { return &d.LeakDrift }},
	{Name: "bucket_scatter", Unit: "1", P10: 0.03, P50: 0.05, P90: 0.08, Log: true, Least: 0, Most: 0.2, Noise: true, Meaning: "scatter of one bucket of charcoal to the next", Source: "published: Markewitz 2013, 5 to 10 % by how full it is", field: func(d *Drawn) *float64 { return &d.BucketScatter }},
	{Name: "scoop_scatter", Unit: "1", P10: 0.03, P50: 0.05, P90: 0.08, Log: true, Least: 0, Most: 0.2, Noise: true, Meaning: "the same of the ore of a charge", Source: assumed, field: func(d *Drawn) *float64 { return &d.ScoopScatter }},
	{Name: "lot_scatter", Unit: "1", P10: 0.005, P50: 0.015, P90: 0.03, Log: true, Least: 0, Most: 0.08, Noise: true, Meaning: "scatter of the iron share from one charge to the next", Source: "published: Markewitz, one ore of 51 to 55 % by three assays, 2016 to 2021", field: func(d *Drawn) *float64 { return &d.LotScatter }},
	{Name: "misread", Unit: "1", P10: 0.03, P50: 0.07, P90: 0.15, Log: true, Least: 0, Most: 0.5, Noise: true, Meaning: "chance that a look is told a shade hotter or colder than it was", Source: assumed, field: func(d *Drawn) *float64 { return &d.Misread }},
	{Name: "mark_scatter", Unit: "cm", P10: 1.5, P50: 2.5, P90: 4, Log: true, Least: 0, Most: 8, Noise: true, Meaning: "how far off the mark the burden stands after a charge to the mark", Source: "assumed: several cm by eye, common practice", field: func(d *Drawn) *float64 { return &d.MarkScatter }},
	{Name: "dip_scatter", Unit: "cm", P10: 0.7, P50: 1, P90: 1.5, Log: true, Least: 0, Most: 4, Noise: true, Meaning: "how far off a dip is", Source: assumed, field: func(d *Drawn) *float64 { return &d.DipScatter }},
	{Name: "crew_late", Unit: "min", P10: 0.3, P50: 0.8, P90: 2, Log: true, Least: 0, Most: 6, Noise: true, Meaning: "how long on the mean a charge waits once there is room for it", Source: assumed, field: func(d *Drawn) *float64 { return &d.CrewLate }},
}

// MishapRow is how one mishap is drawn: begin and end in minutes, and how bad it is; evenly between two ends each.
type MishapRow struct {
	What         truth.Mishap
	From, To     float64 // min after the main burn began
	Short, Long  float64 // min that it lasts; 0: for good
	Mild, Severe float64
	Meaning      string // of mild and severe
	Source       string
}

// MishapTable holds all of them.
var MishapTable = []MishapRow{
	{truth.WetCharcoal, 60, 170, 60, 120, 0.28, 0.60, "water on dry charcoal more than its own", "assumed: charcoal that stood in the rain takes up a third and more of its weight (from memory)"},
	{truth.BlowerDying, 60, 170, 35, 70, 8, 18, "minutes in which it fails; it stands until it is mended", assumed},
	{truth.TuyereBlocked, 60, 170, 25, 60, 15, 28, "minutes in which slag shuts the tuyere", "assumed: log 05 and others tell of minutes, never how many"},
	{truth.Bridge, 60, 170, 25, 60, 1, 1, "the burden hangs over the burning zone", assumed},
	{truth.Crack, 60, 170, 0, 0, 0.2, 0.4, "share of the air that leaks; the wall there loses a quarter more heat", assumed},
	{truth.BadOre, 60, 170, 0, 0, 0.10, 0.22, "iron share less than its assay", "published: bog ores of one place, 46 to 63 % iron (Markewitz, data sheets 2008 to 2022)"},
	{truth.ShortBuckets, 60, 170, 0, 0, 0.86, 0.73, "what a bucket is filled to", assumed},
	{truth.ForgottenKey, 60, 170, 25, 60, 0.35, 0.55, "share of charges that nobody keys", assumed},
}

// stream gives the random numbers of one cause: this furnace's own, so that a number is another furnace here than there.
func stream(number int64, cause string) *rand.Rand { return truth.Stream(number, "zones "+cause) }

// z90 is the normal quantile of the ends of a band of ten to ninety per cent: any table.
const z90 = 1.2815515655446004

// Draw draws the furnace of a number. Noise is by how much everything that varies within a day is multiplied: 1 as Table has
// it. The furnace itself is the same at any noise.
func Draw(number int64, noise float64) Drawn {
	var d Drawn
	for _, r := range Table {
		v := r.at(stream(number, "drawn "+r.Name).NormFloat64())
		if r.Noise {
			v = math.Min(v*noise, r.Most*math.Max(1, noise))
		}
		*r.field(&d) = v
	}
	return d
}

// at gives the value of a row at a normal deviate.
func (r Row) at(z float64) float64 {
	form, back := func(v float64) float64 { return v }, func(v float64) float64 { return v }
	if r.Log {
		form, back = math.Log, math.Exp
	}
	far := r.P90
	if z < 0 {
		far = r.P10
	}
	v := back(form(r.P50) + math.Abs(z)/z90*(form(far)-form(r.P50)))
	return math.Max(r.Least, math.Min(r.Most, v))
}

// Of gives the value of a row in a furnace that was drawn.
func (r Row) Of(d Drawn) float64 { return *r.field(&d) }
