package words

import "chargehand/model/rule"

// weekCautions are those of the week before, each at its deed: facts with the usual care.
var weekCautions = map[string]said{
	rule.Digging: {title: "digging", evidence: "ground has an owner, bogs are often protected, finds belong to the state in many lands, and cables lie anywhere",
		remedy: "ask the owner and the authority first; call for the plan of cables; stop at a find and report it"},
	rule.Dust: {title: "silica dust", evidence: "dry clay and ore give fine quartz dust when they are crushed, sieved or mixed; 0.05 mg/m³ is a legal limit",
		remedy: "wet it; a fitted P3 or P100 mask; outdoors, wind from behind; no dry sweeping"},
	rule.BurnGas: {title: "burns and roasts", evidence: "smouldering wood and roasting ore give carbon monoxide, which has no smell and gathers in hollows and sheds",
		remedy: "never in a building or a hollow; somebody awake while it smoulders; heed fire ban and wind; water at hand"},
	rule.FreshCharcoal: {title: "fresh charcoal", evidence: "charcoal that was just burnt can light again by itself, hours after it feels cold",
		remedy: "a day or two outdoors in shut tins, away from walls and wood, before it is stored or carried"},
	rule.Quicklime: {title: "lime", evidence: "burnt lime burns eyes and wet skin, and boils with water",
		remedy: "goggles and gloves; keep it dry and shut; lime in an eye: water at once, for long, and a doctor"},
	rule.DryingFires: {title: "drying", evidence: "steam bursts a clay wall that is heated too fast, and a wet wall slumps under its load",
		remedy: "days of air first, then small fires until no steam comes; keep off a wall that steams"},
	rule.DampOre: {title: "damp ore", evidence: "rained-on ore steams and spits when it is charged, and cools the top of the shaft",
		remedy: "spread it out in sun and wind, never close beside the fire; stand back when doubtful ore goes in; charge it dry"},
	rule.Generator: {title: "generator and gas", evidence: "an engine and a gas burner give carbon monoxide; a lead lies in the wet",
		remedy: "both outdoors and away from people and fuel; residual current device; leads off the ground"},
}
