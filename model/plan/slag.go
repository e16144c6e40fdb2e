package plan

import (
	"math"

	"chargehand/physics"
)

// What the slag of a plan is reckoned of where nobody has analysed it.
var (
	// usualOre is roasted bog ore, shares of its dry mass: the 48 % iron that is taken for
	// unassayed ore, and what bog ores in print hold beside it (Kayhausen and L'Anse aux
	// Meadows, rules of the references section 12, between them; assumed for any other).
	usualOre = physics.Oxides{Fe2O3: 0.686, SiO2: 0.08, Al2O3: 0.02, CaO: 0.01, MgO: 0.003, MnO: 0.03, P2O5: 0.02}
	// ash is that of hardwood (from memory, unverified; wood ash varies by a factor of two in
	// each).
	ash = physics.Oxides{SiO2: 0.25, Al2O3: 0.05, Fe2O3: 0.04, MnO: 0.02, MgO: 0.08, CaO: 0.40, K2O: 0.12, P2O5: 0.04}
	// wallClay is what wears off a wall of clay and sand (assumed: 65 % silica).
	wallClay = physics.Oxides{SiO2: 0.65, Al2O3: 0.17, Fe2O3: 0.06, CaO: 0.03, MgO: 0.02, K2O: 0.04, TiO2: 0.01}
	// oldSlag is tap slag rich in iron, as old slags in print (Freiberger Forschungshefte D 6,
	// table 2, the middle of 13).
	oldSlag = physics.Oxides{FeO: 0.60, SiO2: 0.24, Al2O3: 0.04, CaO: 0.03, MgO: 0.01, MnO: 0.07, P2O5: 0.01}
	sand    = physics.Oxides{SiO2: 1}
	// lime is slaked or burnt, counted as what it brings to the slag.
	lime = physics.Oxides{CaO: 1}
)

// wornOfOre is the clay that wears from the wall, as a share of the ore (assumed; nothing
// published tells it from ash).
const wornOfOre = 0.05

// usualHearth is the heat that a slag is held against where the solver has not said, K: 1150
// to 1350 C are published of the peep (logs of 2004 to 2021).
var usualHearth = physics.Normal(1250+273.15, 80)

// metalShare is that of a bloom, 0.6 to 0.9 (common practice of the published smelts).
var metalShare = physics.Band{P10: 0.6, P50: 0.75, P90: 0.9}

// Where a slag is told to hold too little silica or too little iron, by its reducible-iron
// index: most old slags in print lie between (the same table).
const (
	ironRich = 0.7
	ironPoor = 1.5
)

// Slag is the slag to expect of a plan, in the middle of what its bloom may be.
type Slag struct {
	Of               physics.Oxides // kg of the whole smelt
	Ore, Ash, Wall   float64        // kg that each brings but for the iron that stays in
	Seed             float64        // kg of iron-rich slag that is put in before the ore
	Iron             float64        // kg of iron in it
	Melts            physics.Band   // K; zero for not known
	Runs             physics.Running
	Index, IndexMn   float64      // 2.39 SiO2/FeO, and with MnO beside it
	Indices          physics.Band // of the index, over what the bloom may be
	Assumed          bool         // the ore was not analysed
	Stiff, PoorOfOre bool         // told to be helped: it stands, or it holds little but iron
	Remedies         []Remedy
}

// Remedy is what could be put in with the ore, a kg of it.
type Remedy struct {
	Name   RemedyName
	Melts  physics.Band // of the slag with it, K
	Index  float64
	Takes  physics.Band // kg of iron that its silica takes
	Brings float64      // kg of iron that it brings
	Helps  bool         // against what this slag has
}

// RemedyName names a remedy.
type RemedyName string

// The remedies in the order in which they are tried (common practice).
const (
	IronSlag RemedyName = "iron-rich slag"
	WoodAsh  RemedyName = "wood ash"
	Sand     RemedyName = "sand"
	Lime     RemedyName = "lime"
)

// Slag is what the ore, the ash of the charcoal and the clay worn from the wall come to by
// one way to charge, at the heat that the solver foresees for it, or a usual one.
func (p Plan) Slag(w Charging, f Foreseen) Slag {
	heat := usualHearth
	if f.Known {
		heat = f.Hearth
	}
	ore, assumed := p.oxidesOfOre()
	ore = ore.Scale(w.Ore)
	seed := oldSlag.Scale(p.Seed.Value / oldSlag.Sum())
	iron := ironIn(ore) + ironIn(seed)
	gangue := ore
	gangue.FeO, gangue.Fe2O3 = 0, 0
	s := Slag{Assumed: assumed, Ore: gangue.Sum(), Ash: w.Charcoal * physics.DefaultAshShare, Wall: w.Ore * wornOfOre, Seed: p.Seed.Value}
	seed.FeO, seed.Fe2O3 = 0, 0
	rest := gangue.Plus(seed).Plus(ash.Scale(s.Ash / ash.Sum())).Plus(wallClay.Scale(s.Wall / wallClay.Sum()))
	at := func(yield, metal float64) physics.Oxides {
		return rest.WithIron(max(0, iron-w.Ore*yield*metal))
	}
	s.Of = at(p.Yield.P50, metalShare.P50)
	s.Iron = ironIn(s.Of)
	s.Melts, s.Runs = s.Of.Liquidus(), s.Of.Running(heat)
	s.Index, s.IndexMn = s.Of.ReducibleIron(), s.Of.ReducibleIronIndex()
	s.Indices = physics.Band{P10: at(p.Yield.P10, metalShare.P10).ReducibleIron(), P50: s.Index, P90: at(p.Yield.P90, metalShare.P90).ReducibleIron()}
	s.Stiff = s.Index > ironPoor || s.Runs != physics.Running{} && s.Runs.Runs < 0.5
	s.PoorOfOre = s.Index < ironRich
	for _, r := range []struct {
		name  RemedyName
		of    physics.Oxides
		helps bool
	}{{IronSlag, oldSlag, s.Stiff}, {WoodAsh, ash, s.Stiff}, {Sand, sand, s.PoorOfOre && !s.Stiff}, {Lime, lime, s.Stiff}} {
		one := r.of.Scale(1 / r.of.Sum())
		with := s.Of.Plus(one)
		s.Remedies = append(s.Remedies, Remedy{
			Name: r.name, Melts: with.Liquidus(), Index: with.ReducibleIron(), Helps: r.helps,
			Takes: physics.SilicaTakes(one.SiO2), Brings: ironIn(one),
		})
	}
	return s
}

// oxidesOfOre are shares of the dry ore: its analysis, or the usual.
func (p Plan) oxidesOfOre() (o physics.Oxides, assumed bool) {
	if p.Ore.Assay == nil {
		return usualOre, true
	}
	return p.Ore.Assay.Oxides().Scale((1 - ignited(*p.Ore.Assay)) / 100), false
}

// ignited is the loss by which shares of ignited ore are brought back to dry.
func ignited(a physics.Assay) float64 {
	if a.LossKnown && (a.Basis == physics.Ignited || a.Basis == physics.Normalised) {
		return math.Min(1, math.Max(0, a.Loss/100))
	}
	return 0
}

func ironIn(o physics.Oxides) float64 { return physics.IronShareFromOxides(o.FeO, o.Fe2O3) }
