package truth

// Version names this furnace in the seal of a rehearsal. It is raised whenever the same number gives another day.
const Version = "furnace 2"

// Row is one number of the furnace that answers: how it is drawn, what it is and what it rests on.
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
	// As built and blown.
	BoreCm, StackCm, WallCm, TuyereBaseCm, BlastPerArea, OreKg, OreStart float64
	// What the crew takes for true is off by these.
	BoreOff, StackOff, AssayOff, AirShare, BucketOff float64
	// Lots.
	Moisture, Carbon, Ash, CharcoalBulk, LumpMm, OreIron, OreMoisture, Silica float64
	// Burning and heat.
	AirTuyereSide, BurdenTuyereSide, BurnLength, SolutionLength, SolutionStops, Exchange, Mixing, SideMixing float64
	WallInside, WallOutside, WallHeat, PreheatBottom, PreheatTop, HearthHeat, HearthGain, HearthLoss         float64
	// Ore, iron and slag.
	ReductionMinutes, ReductionEnergy, Yield, NoBloom, Fragments, SlagVoid, LiquidusOff, WallWear float64
	// What comes and goes.
	HangRate, HangLump, HangMinutes, SkullRate, RodLeaves, TopOut                                                float64
	AirDrift, LeakDrift, BucketScatter, ScoopScatter, LotScatter, SplitScatter, Misread, MarkScatter, DipScatter float64
	CrewLate, LookEvery, Meter                                                                                   float64
}

const (
	markewitz2013 = "published: Markewitz 2013, bloomery smelting variations (Wareham Forge blog)"
	markewitz2016 = "published: Markewitz, smelts of 30 Nov 2016 and 30 Oct 2021 (Wareham Forge, data sheets)"
	markewitz2018 = "published: Markewitz 2018, charcoal and ore burn rates (Wareham Forge blog)"
	darc2011      = "published: DARC 2011, measuring heat, seven probes over the tuyere of a 25 cm bore"
	fuel2011      = "published: jfe-project 2011, general overview of charcoal properties"
	crews         = "published: 41 smelts of several crews, 2001 to 2022 (testdata/smelts)"
	jams          = "assumed: the form of Janda 2008 and of Thomas and Durian 2014, jams grow rarer by the exponential of opening to lump; how often was never published for a shaft"
	assumed       = "assumed: nothing published was found"
)

// Table holds every number of the furnace that answers, with how it is drawn. It was written before the adviser was held
// against any of it; no row is changed to make a score better, and whoever changes one raises Version. What stands under
// Noise varies within a day; what does not is drawn once for a furnace.
var Table = []Row{
	{Name: "bore", Unit: "cm", P10: 23, P50: 25, P90: 28, Least: 20, Most: 34, Meaning: "inside diameter", Source: markewitz2016, field: func(d *Drawn) *float64 { return &d.BoreCm }},
	{Name: "stack", Unit: "cm", P10: 45, P50: 50, P90: 60, Least: 38, Most: 75, Meaning: "charging mark above the tuyere", Source: markewitz2016, field: func(d *Drawn) *float64 { return &d.StackCm }},
	{Name: "wall", Unit: "cm", P10: 4, P50: 5, P90: 7, Least: 3, Most: 10, Meaning: "thickness of the wall", Source: markewitz2016, field: func(d *Drawn) *float64 { return &d.WallCm }},
	{Name: "tuyere_base", Unit: "cm", P10: 14, P50: 15, P90: 18, Least: 12, Most: 22, Meaning: "tuyere over the floor of the hearth", Source: markewitz2016, field: func(d *Drawn) *float64 { return &d.TuyereBaseCm }},
	{Name: "blast_per_area", Unit: "l/min/cm2", P10: 0.9, P50: 1.2, P90: 1.5, Least: 0.7, Most: 2.0, Meaning: "blast the crew sets, as its meter reads", Source: "published: Markewitz 2015, Icelandic 6, 1.2 to 1.5 advised; smelts with a bloom at 0.8 to 2.1", field: func(d *Drawn) *float64 { return &d.BlastPerArea }},
	{Name: "ore", Unit: "kg", P10: 18, P50: 24, P90: 32, Least: 12, Most: 42, Meaning: "ore of the whole smelt, as charged", Source: crews, field: func(d *Drawn) *float64 { return &d.OreKg }},
	{Name: "ore_start", Unit: "1", P10: 3, P50: 5, P90: 8, Least: 2, Most: 11, Meaning: "charges of charcoal alone before the first ore", Source: "published: logs of 2005 to 2022, 2 to 11 measures (testdata/logs)", field: func(d *Drawn) *float64 { return &d.OreStart }},

	{Name: "bore_off", Unit: "1", P10: -0.02, P50: 0, P90: 0.03, Least: -0.06, Most: 0.10, Meaning: "how much wider the bore is than was measured; liners shrink back in the preheat", Source: "published: Markewitz 2015, a bore that grew from 33 to 36 cm", field: func(d *Drawn) *float64 { return &d.BoreOff }},
	{Name: "stack_off", Unit: "1", P10: -0.03, P50: 0, P90: 0.03, Least: -0.08, Most: 0.08, Meaning: "the same of the mark's height", Source: assumed, field: func(d *Drawn) *float64 { return &d.StackOff }},
	{Name: "assay_off", Unit: "1", P10: -0.04, P50: 0, P90: 0.04, Least: -0.10, Most: 0.10, Meaning: "iron share of the ore less that of its assay, before the lot's own variation", Source: "published: one analogue ore with assays of 51, 53 and 55 % (Markewitz, data sheets 2016 to 2021)", field: func(d *Drawn) *float64 { return &d.AssayOff }},
	{Name: "air_share", Unit: "1", P10: 0.75, P50: 0.92, P90: 1.12, Log: true, Least: 0.5, Most: 1.4, Meaning: "air that gets into the fire over what the meter reads", Source: "published: charge intervals of 2016 and 2021 tell 1.15, 0.93 and 0.66 (Markewitz, data sheets)", field: func(d *Drawn) *float64 { return &d.AirShare }},
	{Name: "bucket_off", Unit: "1", P10: 0.90, P50: 1, P90: 1.10, Log: true, Least: 0.75, Most: 1.3, Meaning: "what a bucket holds on the whole over what the crew takes it to hold", Source: markewitz2013 + ", 10 to 15 % between charcoals", field: func(d *Drawn) *float64 { return &d.BucketOff }},

	{Name: "moisture", Unit: "1", P10: 0.04, P50: 0.07, P90: 0.12, Log: true, Least: 0.02, Most: 0.2, Meaning: "water on dry charcoal", Source: fuel2011, field: func(d *Drawn) *float64 { return &d.Moisture }},
	{Name: "carbon", Unit: "1", P10: 0.80, P50: 0.85, P90: 0.90, Least: 0.72, Most: 0.94, Meaning: "carbon of dry charcoal", Source: fuel2011, field: func(d *Drawn) *float64 { return &d.Carbon }},
	{Name: "ash", Unit: "1", P10: 0.015, P50: 0.03, P90: 0.05, Log: true, Least: 0.01, Most: 0.06, Meaning: "ash of dry charcoal", Source: fuel2011, field: func(d *Drawn) *float64 { return &d.Ash }},
	{Name: "charcoal_bulk", Unit: "kg/m3", P10: 180, P50: 200, P90: 220, Least: 150, Most: 260, Meaning: "dry charcoal that fills a cubic metre", Source: fuel2011, field: func(d *Drawn) *float64 { return &d.CharcoalBulk }},
	{Name: "lump", Unit: "mm", P10: 22, P50: 30, P90: 42, Log: true, Least: 15, Most: 60, Meaning: "largest common lump of charcoal", Source: "published: DARC 2011, oak of 5 to 25 mm; ungraded charcoal is coarser", field: func(d *Drawn) *float64 { return &d.LumpMm }},
	{Name: "ore_iron", Unit: "1", P10: 0.44, P50: 0.51, P90: 0.58, Least: 0.36, Most: 0.63, Meaning: "iron of dry roasted ore by its assay", Source: "published: analogues and roasted bog ores of 46 to 63 % iron (Markewitz, data sheets 2008 to 2022)", field: func(d *Drawn) *float64 { return &d.OreIron }},
	{Name: "ore_moisture", Unit: "1", P10: 0.02, P50: 0.05, P90: 0.12, Log: true, Least: 0.01, Most: 0.2, Meaning: "water on dry ore", Source: markewitz2018 + ", 10 to 13 % in an analogue ore", field: func(d *Drawn) *float64 { return &d.OreMoisture }},
	{Name: "silica", Unit: "1", P10: 0.60, P50: 0.70, P90: 0.80, Least: 0.45, Most: 0.9, Meaning: "silica of the gangue; the rest as alumina and lime, two to one", Source: "assumed: between the published bog ores, 1 to 14 % silica beside 0.5 to 2.5 % alumina", field: func(d *Drawn) *float64 { return &d.Silica }},

	{Name: "air_tuyere_side", Unit: "1", P10: 0.54, P50: 0.60, P90: 0.68, Least: 0.5, Most: 0.8, Meaning: "share of the air that rises on the tuyere side", Source: "assumed: the burden sinks faster on that side, " + markewitz2013, field: func(d *Drawn) *float64 { return &d.AirTuyereSide }},
	{Name: "burden_tuyere_side", Unit: "1", P10: 0.44, P50: 0.50, P90: 0.56, Least: 0.35, Most: 0.65, Meaning: "share of a charge that falls on the tuyere side where both stand level", Source: assumed, field: func(d *Drawn) *float64 { return &d.BurdenTuyereSide }},
	{Name: "burn_length", Unit: "m", P10: 0.04, P50: 0.06, P90: 0.09, Log: true, Least: 0.02, Most: 0.12, Meaning: "height over which half of the oxygen is gone", Source: "published: Saravanakumar 2011, oxygen gone within a tenth of a metre of an updraft bed of char", field: func(d *Drawn) *float64 { return &d.BurnLength }},
	{Name: "solution_length", Unit: "m", P10: 0.02, P50: 0.03, P90: 0.05, Log: true, Least: 0.01, Most: 0.1, Meaning: "height over which half of the carbon dioxide that could take up carbon does, 200 K above where that stops", Source: assumed, field: func(d *Drawn) *float64 { return &d.SolutionLength }},
	{Name: "solution_stops", Unit: "K", P10: 1050, P50: 1120, P90: 1200, Least: 980, Most: 1280, Meaning: "heat below which carbon dioxide takes up no more carbon", Source: "assumed: charcoal blast furnaces lose their carbon dioxide above some 800 to 900 C (Ebelmen 1841, for its shape)", field: func(d *Drawn) *float64 { return &d.SolutionStops }},
	{Name: "exchange", Unit: "m", P10: 0.025, P50: 0.04, P90: 0.065, Log: true, Least: 0.015, Most: 0.1, Meaning: "height of burden over which gas gives up half of what it is hotter", Source: "assumed: so that the top runs at some 650 to 750 C as probes read, " + darc2011, field: func(d *Drawn) *float64 { return &d.Exchange }},
	{Name: "mixing", Unit: "W/m/K", P10: 6, P50: 12, P90: 25, Log: true, Least: 2, Most: 50, Meaning: "conduction along the hot part of the shaft, glow and whirl together", Source: assumed, field: func(d *Drawn) *float64 { return &d.Mixing }},
	{Name: "side_mixing", Unit: "W/m2/K", P10: 15, P50: 30, P90: 60, Log: true, Least: 5, Most: 120, Meaning: "exchange of heat between the two sides", Source: "assumed: two rows of probes in one furnace read up to 460 K apart, 30 Oct 2021", field: func(d *Drawn) *float64 { return &d.SideMixing }},
	{Name: "wall_inside", Unit: "W/m2/K", P10: 22, P50: 30, P90: 40, Log: true, Least: 12, Most: 60, Meaning: "burden to the middle of the wall", Source: "assumed: half of 5 cm of clay at 1 W/m/K behind a glowing bed", field: func(d *Drawn) *float64 { return &d.WallInside }},
	{Name: "wall_outside", Unit: "W/m2/K", P10: 10, P50: 14, P90: 18, Log: true, Least: 6, Most: 28, Meaning: "middle of the wall to the air", Source: "assumed: the other half, and some 20 W/m2/K outside", field: func(d *Drawn) *float64 { return &d.WallOutside }},
	{Name: "wall_heat", Unit: "J/m3/K", P10: 1.3e6, P50: 1.6e6, P90: 1.9e6, Least: 1e6, Most: 2.4e6, Meaning: "heat that the wall stores", Source: "assumed: 1600 kg/m3 of 1000 J/kg/K, dry clay with straw (from memory)", field: func(d *Drawn) *float64 { return &d.WallHeat }},
	{Name: "preheat_bottom", Unit: "K", P10: 620, P50: 740, P90: 860, Least: 500, Most: 1000, Meaning: "wall at the tuyere after the wood fire", Source: assumed, field: func(d *Drawn) *float64 { return &d.PreheatBottom }},
	{Name: "preheat_top", Unit: "K", P10: 370, P50: 430, P90: 520, Least: 320, Most: 700, Meaning: "wall at the mark after the wood fire", Source: assumed, field: func(d *Drawn) *float64 { return &d.PreheatTop }},
	{Name: "hearth_heat", Unit: "J/K", P10: 2.0e4, P50: 3.0e4, P90: 4.5e4, Log: true, Least: 1e4, Most: 8e4, Meaning: "heat that the hearth's packing and ground store, without slag and iron", Source: assumed, field: func(d *Drawn) *float64 { return &d.HearthHeat }},
	{Name: "hearth_gain", Unit: "W/K", P10: 10, P50: 13, P90: 17, Log: true, Least: 6, Most: 25, Meaning: "from the fire before the tuyere down into the hearth", Source: "published: DARC 2011, 328 C ten cm below the tuyere of a fire of two hours; slag and iron carry the rest down", field: func(d *Drawn) *float64 { return &d.HearthGain }},
	{Name: "hearth_loss", Unit: "W/K", P10: 0.8, P50: 1.1, P90: 1.5, Log: true, Least: 0.4, Most: 3, Meaning: "from the hearth into the ground", Source: assumed, field: func(d *Drawn) *float64 { return &d.HearthLoss }},

	{Name: "reduction_minutes", Unit: "min", P10: 4, P50: 6.5, P90: 10, Log: true, Least: 2, Most: 20, Meaning: "time in which rich gas at 1000 C takes half of an ore lump's oxygen", Source: "assumed: pea-sized lumps, tens of minutes (from memory, unverified)", field: func(d *Drawn) *float64 { return &d.ReductionMinutes }},
	{Name: "reduction_energy", Unit: "J/mol", P10: 6e4, P50: 8e4, P90: 1.1e5, Least: 4e4, Most: 1.5e5, Meaning: "how that time falls with heat", Source: "assumed: between diffusion and reaction (from memory, unverified)", field: func(d *Drawn) *float64 { return &d.ReductionEnergy }},
	{Name: "yield", Unit: "1", P10: 0.08, P50: 0.20, P90: 0.40, Log: true, Least: 0.03, Most: 0.55, Meaning: "kg of bloom from a kg of dry ore of an ordinary day on this furnace", Source: crews, field: func(d *Drawn) *float64 { return &d.Yield }},
	{Name: "no_bloom", Unit: "1", P10: 0.05, P50: 0.10, P90: 0.20, Log: true, Least: 0.02, Most: 0.4, Meaning: "chance that the iron does not come together, in an ordinary day", Source: "assumed: a crew that has smelted elsewhere, about 1 in 10; one open meeting had 7 of 10 (2007)", field: func(d *Drawn) *float64 { return &d.NoBloom }},
	{Name: "fragments", Unit: "1", P10: 0.05, P50: 0.15, P90: 0.30, Least: 0, Most: 0.5, Meaning: "share of the iron not in slag that stays in bits beside the bloom", Source: "published: 1 kg of bits beside 2.9 kg (2009), 3 beside 12 (2015)", field: func(d *Drawn) *float64 { return &d.Fragments }},
	{Name: "slag_void", Unit: "1", P10: 0.35, P50: 0.5, P90: 0.65, Least: 0.25, Most: 0.8, Meaning: "share of the hearth that slag can fill", Source: assumed, field: func(d *Drawn) *float64 { return &d.SlagVoid }},
	{Name: "liquidus_off", Unit: "K", P10: -50, P50: 0, P90: 50, Least: -100, Most: 100, Meaning: "how much hotter the slag melts than its table says", Source: "published: the spread of melts of silicates of iron about the diagram of Bowen and Schairer 1932", field: func(d *Drawn) *float64 { return &d.LiquidusOff }},
	{Name: "wall_wear", Unit: "cm/h", P10: 0.05, P50: 0.15, P90: 0.4, Log: true, Least: 0.01, Most: 1, Meaning: "wall lost round the tuyere into the slag", Source: "published: Markewitz 2021, walls of 6 down to 3 cm after smelts", field: func(d *Drawn) *float64 { return &d.WallWear }},

	{Name: "hang_rate", Unit: "1/h", P10: 1.5, P50: 3, P90: 6, Log: true, Least: 0, Most: 20, Noise: true, Meaning: "hangings an hour were the lumps as wide as the shaft", Source: jams, field: func(d *Drawn) *float64 { return &d.HangRate }},
	{Name: "hang_lump", Unit: "1", P10: 0.4, P50: 0.5, P90: 0.6, Least: 0.2, Most: 1, Meaning: "by how much rarer they are with each lump more across the bore, as a logarithm", Source: jams, field: func(d *Drawn) *float64 { return &d.HangLump }},
	{Name: "hang_minutes", Unit: "min", P10: 5, P50: 12, P90: 25, Log: true, Least: 2, Most: 60, Meaning: "how long a hanging holds that nobody pokes", Source: assumed, field: func(d *Drawn) *float64 { return &d.HangMinutes }},
	{Name: "skull_rate", Unit: "1/h", P10: 0.03, P50: 0.08, P90: 0.2, Log: true, Least: 0, Most: 0.6, Noise: true, Meaning: "how fast slag shuts the tuyere of a hot furnace; four times that in a cold one", Source: "assumed: one furnace of 2005 was rodded five times in 33 minutes, most not at all", field: func(d *Drawn) *float64 { return &d.SkullRate }},
	{Name: "rod_leaves", Unit: "1", P10: 0.05, P50: 0.15, P90: 0.3, Least: 0, Most: 0.6, Meaning: "share of what shuts the tuyere that a rod leaves", Source: assumed, field: func(d *Drawn) *float64 { return &d.RodLeaves }},
	{Name: "top_out", Unit: "1", P10: 0.02, P50: 0.05, P90: 0.12, Log: true, Least: 0, Most: 0.4, Noise: true, Meaning: "chance that a charge puts the flame at the top out", Source: "published: Wealden Iron Research Group 2015 and others, the gas had to be lit", field: func(d *Drawn) *float64 { return &d.TopOut }},

	{Name: "air_drift", Unit: "1/sqrt(h)", P10: 0.015, P50: 0.03, P90: 0.06, Log: true, Least: 0, Most: 0.2, Noise: true, Meaning: "how far the blower wanders", Source: "published: log 05 of 2021, 791 to 802 l/min at one setting within two hours", field: func(d *Drawn) *float64 { return &d.AirDrift }},
	{Name: "leak_drift", Unit: "1/sqrt(h)", P10: 0.02, P50: 0.05, P90: 0.1, Log: true, Least: 0, Most: 0.3, Noise: true, Meaning: "how far the share of the air that leaks wanders", Source: "assumed: charge intervals of 2021 tell 0.93 at one setting and 0.66 two hours later", field: func(d *Drawn) *float64 { return &d.LeakDrift }},
	{Name: "bucket_scatter", Unit: "1", P10: 0.03, P50: 0.05, P90: 0.08, Log: true, Least: 0, Most: 0.2, Noise: true, Meaning: "scatter of one bucket of charcoal to the next", Source: markewitz2013 + ", 5 to 10 % by how full it is", field: func(d *Drawn) *float64 { return &d.BucketScatter }},
	{Name: "scoop_scatter", Unit: "1", P10: 0.03, P50: 0.05, P90: 0.08, Log: true, Least: 0, Most: 0.2, Noise: true, Meaning: "the same of the ore of a charge", Source: assumed, field: func(d *Drawn) *float64 { return &d.ScoopScatter }},
	{Name: "lot_scatter", Unit: "1", P10: 0.005, P50: 0.015, P90: 0.03, Log: true, Least: 0, Most: 0.08, Noise: true, Meaning: "scatter of the iron share from one charge to the next", Source: "published: Markewitz, one ore of 51 to 55 % by three assays, 2016 to 2021", field: func(d *Drawn) *float64 { return &d.LotScatter }},
	{Name: "split_scatter", Unit: "1", P10: 0.03, P50: 0.06, P90: 0.1, Log: true, Least: 0, Most: 0.2, Noise: true, Meaning: "scatter of the share of a charge that falls on the tuyere side", Source: assumed, field: func(d *Drawn) *float64 { return &d.SplitScatter }},
	{Name: "misread", Unit: "1", P10: 0.03, P50: 0.07, P90: 0.15, Log: true, Least: 0, Most: 0.5, Noise: true, Meaning: "chance that a look is told a shade hotter or colder than it was", Source: assumed, field: func(d *Drawn) *float64 { return &d.Misread }},
	{Name: "mark_scatter", Unit: "cm", P10: 1.5, P50: 2.5, P90: 4, Log: true, Least: 0, Most: 8, Noise: true, Meaning: "how far off the mark the burden stands after a charge to the mark", Source: "assumed: several cm by eye, common practice", field: func(d *Drawn) *float64 { return &d.MarkScatter }},
	{Name: "dip_scatter", Unit: "cm", P10: 0.7, P50: 1, P90: 1.5, Log: true, Least: 0, Most: 4, Noise: true, Meaning: "how far off a dip is", Source: assumed, field: func(d *Drawn) *float64 { return &d.DipScatter }},
	{Name: "crew_late", Unit: "min", P10: 0.3, P50: 0.8, P90: 2, Log: true, Least: 0, Most: 6, Noise: true, Meaning: "how long on the mean a charge waits once there is room for it", Source: assumed, field: func(d *Drawn) *float64 { return &d.CrewLate }},
	{Name: "look_every", Unit: "min", P10: 8, P50: 12, P90: 20, Log: true, Least: 4, Most: 40, Meaning: "how often somebody looks, listens and says so", Source: "assumed: published logs note less, crews look more", field: func(d *Drawn) *float64 { return &d.LookEvery }},
	{Name: "meter", Unit: "1", P10: 0.1, P50: 0.5, P90: 0.9, Least: 0, Most: 1, Meaning: "below 0.7: the air is metered; above: only a mark on the gate", Source: "assumed: of eleven published logs seven have volumes", field: func(d *Drawn) *float64 { return &d.Meter }},
}
