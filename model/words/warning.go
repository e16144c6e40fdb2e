package words

import (
	"math"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/physics"
)

// said is what a rule says: a title of at most three words, for five metres
// away; the evidence, with {name} for a value with its unit and {name:} for it
// without; and the usual remedy. The evidence is as it was when the warning was
// raised and stands for as long as it does, so a time that runs on is said as the
// least.
type said struct{ title, evidence, remedy string }

// trends are the titles of what the solver sees going up or down: a title follows it.
var trends = map[rule.ID]map[string]string{
	rule.HearthCools: {"rising": "hearth warms again", "steady": "hearth cooler?"},
	rule.TopHot:      {"rising": "top gets hotter", "falling": "top cools again"},
}

var warnings = map[rule.ID]said{
	rule.BlastLost: {
		"blast lost", "off for {off}, on a hot shaft",
		"take the blower off: gas runs back into it and explodes. Blow it clear in the open before it goes on, then light the top",
	},
	rule.TuyereBlocked: {
		"tuyere blocked", "peep {seen}, no blast goes in",
		"rod the tuyere, then look again; if it stays dark, tap",
	},
	rule.SlagAt: {
		"slag at tuyere", "slag seen {seen}, it will shut it",
		"tap or drop the bowl now, then rod the tuyere",
	},
	rule.WallOpen: {
		"wall open", "{what}, {where}; not patched yet",
		"everybody off that side; blast low, ram clay in and hold it, with wire or a plate; then key it as patched",
	},
	rule.WallCracked: {
		"wall cracked", "{what}, {where}; a crack that shows flame lets the blast out",
		"press wet clay over it from the side, mind the jet; watch whether a bucket lasts longer",
	},
	rule.TopGasUnlit: {
		"top gas out", "seen {seen}; the gas is poison and lights with a thump",
		"stand back, upwind; light it with a long flame",
	},
	rule.TuyereDim: {
		"tuyere dim", "{where} {seen}, something stands before the blast",
		"rod the tuyere, then look and listen again",
	},
	rule.SlagNear: {
		"slag is near", "the blast has a {seen}, slag stands at the tuyere's height",
		"look in the peep; tap or drop the bowl, then rod the tuyere",
	},
	rule.SlagThick: {
		"slag stiff", "seen {seen}, so too cold, or too little iron left in it",
		"a charge or two without ore, a step more blast; the first slag of a day is often thick",
	},
	rule.HearthCold: {
		"hearth cold", "peep {seen}, slag freezes there",
		"hold the ore for a charge or two; clear the tuyere; a step more blast",
	},
	rule.FireFell: {
		"fire falls", "peep {seen}, {before} {apart} before",
		"hear the blast; dip: if it hangs, poke, face away from the mouth; weigh a bucket; no ore until it is bright",
	},
	rule.SlagUnseen: {
		"slag not seen", "for {since} nobody has said how it runs; only the model has the hearth at {hearth}",
		"hook some out or look at the next tap, look in the peep, and say so (l)",
	},
	rule.ChargeOverdue: {
		"charge late", "{since} since the last, usual is {usual}",
		"charge if the burden has sunk; if not, look in the peep, then dip and poke: it may hang",
	},
	rule.AirShort: {
		"less air in?", "{last} for a charge and {since} for the next, usual is {usual}",
		"look into the tuyere, rod it if it is dim; feel along hose and wall; else poke: it may hang",
	},
	rule.EntryMissing: {
		"missed an entry?", "{since} since the last, usual is {usual}",
		"enter late what went in (o, e); if nothing did, look in the peep, then charge, charcoal first",
	},
	rule.HangUp: {
		"burden hangs", "dip {height} above the tuyere, {low:} to {high} expected: a hollow forms below",
		"look in the peep; if it is bright, poke, face away from the mouth, and dip again",
	},
	rule.Slip: {
		"burden slipped", "dip {height} above the tuyere, {low:} to {high} expected: cold burden fell on the hearth",
		"charcoal to the mark without ore; watch the peep",
	},
	rule.StackLow: {
		"stack low", "{height} above the tuyere, the mark is at {mark}: ore passes too fast",
		"charcoal to the mark, then go on as planned",
	},
	rule.BurnSlower: {
		"burning slower", "{before:} and {last}, this smelt's usual is {low:} to {high:}",
		"look in the peep; rod the tuyere; else a step more blast",
	},
	rule.BurnFaster: {
		"burning faster", "{before:} and {last}, this smelt's usual is {low:} to {high:}",
		"look for fines in the charcoal; else a step less blast, or more ore",
	},
	rule.RatioOff: {
		"ratio off plan", "{ratio} over three charges, planned {plan}",
		"count the scoops; change the next charge if it is meant",
	},
	rule.StoresShort: {
		"stores short", "{what}: {left} left, {needed} needed",
		"fetch more, or end sooner (o, r, p): keep charcoal to cover the last ore",
	},
	rule.DoubleCharge: {
		"charge keyed twice?", "charge {number} after only {apart}, usual is {usual}",
		"cross it out if it was keyed twice; else leave it",
	},
	rule.MeasureDoubtful: {
		"weight in doubt", "{measure} weighs {weighed}, taken as {believed} until now: {off} off",
		"weigh two more; say if it is wetter, fuller or another lot",
	},
	rule.TopGasQuestion: {
		"top gas alight?", "not said since the fill or restart, {since} ago",
		"look from aside and upwind; light it if it does not burn",
	},
	rule.CarbonHigh: {
		"carbon high?", "slag {seen}, the iron may take up carbon, as far as cast iron",
		"a little more ore to the charcoal, or slag rich in iron back in at the top",
	},
	rule.PlanLate: {
		"behind the plan", "at the pace so far the bloom is out {apart} later than planned",
		"o, r, then p plans the rest of the day again from here",
	},
	rule.OtherOre: {
		"other ore", "it comes of {what}: the plan was made for another lot",
		"o, r, then p plans the rest of the day again from here",
	},
	rule.CharcoalDamp: {
		"charcoal damp", "{measure} {weighed}, was {believed}: water. The top steams and is cooler, the hearth hardly changes",
		"dry the rest in sun and wind, never beside the fire; a damp charge can put the top flame out",
	},
	rule.DampHearth: {
		"hearth fell, damp", "peep {seen}, {before} before the damp charcoal",
		"a step less ore in the next charges until it is back, as crews do",
	},
	rule.MeterOdd: {
		"meter is odd", "{factor:} times the carbon that the metered air can burn ({low:} to {high:})",
		"nothing at the fire; check the meter, the joints and the bucket's weight later",
	},
	rule.ClockJumped: {
		"clock was set", "set {by}; the smelt's own clock ran on",
		"nothing; if it had been wrong since the machine started: o, then v moves all since then",
	},
	rule.PressureHigh: {
		"blast held back", "{pressure} before the tuyere, about {clear} is usual for this blast",
		"look in the peep; rod the tuyere; if it stays high, poke: fines, a bridge or slag stands before it",
	},
	rule.PressureLow: {
		"blast goes astray?", "{pressure} before the tuyere, about {clear} is usual for this blast",
		"feel along hose and joints; look over the rim for a hole in the burden, from aside; dip and poke",
	},
	rule.SlagRises: {
		"slag is rising", "{slag} of slag should stand about as high as the tuyere",
		"listen for a gurgle and look in the peep; tap or drop the bowl if it is so",
	},
	rule.HearthCools: {
		"hearth cools?", "{hearth} in the hearth, {fall} below its last hour",
		"look in the peep; if it is not white, hold the ore for a charge and a step more blast",
	},
	rule.MixRich: {
		"mix too rich?", "{ratio} over five charges and {each} a measure: the ore has no time",
		"less ore to the charcoal for some charges; a step less blast",
	},
	rule.RatioHigh: {
		"much ore", "{ratio} since the first ore: blooms come of less than {most}",
		"a charge or two without ore, then less of it to the charcoal",
	},
	rule.AirWeak: {
		"too little air?", "{air} over the bore and {each} a measure; blooms come of {least:} and more",
		"look in the peep, rod the tuyere, feel along the hose; then a step more blast",
	},
	rule.AirStrong: {
		"too much air?", "{air} over the bore and {each} a measure; most blooms come of {most:} and less",
		"a step less blast; look for fines in the charcoal",
	},
	rule.AirOdd: {
		"unusual blast", "{air} over the bore; most blooms come of {least:} to {most:}",
		"nothing while the burn is as it should be; check the meter and the bore",
	},
	rule.OreEarly: {
		"ore too early?", "peep {seen} while the hearth is still warming",
		"charcoal alone until the peep is white, then begin the ore",
	},
	rule.SlagStiffens: {
		"slag stiffens?", "slag with {iron} iron at {hearth} hardly runs",
		"watch the next tap; if it is stiff, slag rich in iron back in at the top, or a step more blast",
	},
	rule.TopHot: {
		"top is hot", "{top} over the burden",
		"charge sooner or more at a time, to the mark; else a step less blast",
	},
	rule.CarbonRises: {
		"carbon rises?", "the model has the iron as {carbon}; the slag {protects} it",
		"look at the slag; if it is pale and glassy, a little more ore to the charcoal",
	},
}

// partlyUnblown is the evidence of a charge that was waited for with the blast off
// for a while.
const partlyUnblown = "{since} since the last, {unblown} of it without blast; usual is {usual}"

// byReading is the evidence of a cold hearth that was read and not seen.
const byReading = "{fire} in the peep: slag freezes below about {least}"

// Warning is what a warning says.
func (u Units) Warning(w rule.Warning) (title, evidence, remedy string) {
	s, ok := warnings[w.Rule]
	if !ok {
		return string(w.Rule), "", ""
	}
	if _, read := w.Evidence.Of("fire"); read {
		s.evidence = byReading
	}
	if trend, ok := w.Evidence.Of("trend"); ok {
		s.title = orElse(trends[w.Rule][trend.Word], s.title)
	}
	if _, stood := w.Evidence.Of("unblown"); stood {
		s.evidence = partlyUnblown
	}
	return s.title, u.filled(s.evidence, w.Evidence), s.remedy
}

// Grade is the word before a warning.
func Grade(g rule.Grade) string { return strings.ToUpper(g.String()) }

// filled puts the values into a sentence. A gap that nothing fills stays.
func (u Units) filled(sentence string, values rule.Evidence) string {
	var b strings.Builder
	for {
		before, rest, open := strings.Cut(sentence, "{")
		b.WriteString(before)
		gap, after, shut := strings.Cut(rest, "}")
		if !open || !shut {
			return b.String()
		}
		name, bare := strings.CutSuffix(gap, ":")
		if v, ok := values.Of(name); ok {
			b.WriteString(u.value(v, !bare))
		} else {
			b.WriteString("{" + gap + "}")
		}
		sentence = after
	}
}

// value is one piece of evidence, with its unit or without.
func (u Units) value(v rule.Value, unit bool) string {
	with := func(s, u string) string {
		if unit {
			return s + u
		}
		return s
	}
	switch v.Unit {
	case rule.Minutes:
		return lasted(v, with)
	case rule.Kilograms:
		return u.Kg(entry.Kilogram(v.Number))
	case rule.Centimetres:
		return u.valued(v, "cm", unit)
	case rule.Pascals:
		if v.Name == "clear" { // reckoned, and known to a factor
			v.Number = Rough(v.Number)
		}
		return u.valued(v, "Pa", unit)
	case rule.Degrees:
		if v.Low != v.High {
			return u.About(v.Low, v.Number, v.High)
		}
		return u.valued(v, "°C", unit)
	case rule.Kelvin:
		return u.degreesApart(v.Number)
	case rule.PerArea:
		if !unit {
			return Number(u.Shown(v.Number, "l/min/cm2"), 2)
		}
		return u.PerArea(v.Number)
	case rule.Ratio:
		return with(Number(v.Number, 2), " : 1")
	case rule.Percent:
		return with(Number(math.Abs(v.Number), 0), " %")
	case rule.CarbonShare:
		return carbonBetween(figure.CarbonSpan{Low: physics.CarbonClassOf(v.Low), High: physics.CarbonClassOf(v.High)})
	case rule.Count:
		return Number(v.Number, 2)
	}
	return v.Word
}

// valued is a number in the person's unit, with its name or without.
func (u Units) valued(v rule.Value, of string, named bool) string {
	s := u.Value(v.Number, of, 0)
	if !named {
		s = strings.TrimSuffix(s, " "+u.Name(of))
	}
	return s
}

// lasted is a stretch of time. The ends of a band are rounded inwards, so that
// what lies outside of it never reads as within.
func lasted(v rule.Value, with func(s, u string) string) string {
	switch {
	case v.Name == "by":
		return By(time.Duration(v.Number * float64(time.Minute)))
	case v.Name == "low":
		return with(Number(math.Ceil(v.Number), 0), " min")
	case v.Name == "high":
		return with(Number(math.Floor(v.Number), 0), " min")
	case v.Number < 1:
		return Number(v.Number*60, 0) + " s"
	}
	return with(Number(math.Floor(v.Number), 0), " min")
}

// LocalRules stands under every caution.
const LocalRules = "local rules and licensed trades come before anything said here"

// cautions are facts with the usual care, not instruction.
var cautions = map[string]said{
	rule.CarbonMonoxide: {title: "carbon monoxide", evidence: "top gas is rich in it and it has no smell; 400 ppm can kill in three hours, 1200 at once",
		remedy: "outdoors, upwind, never alone; alarm at head height; headache or sickness: everybody away"},
	rule.WetClay: {title: "wet clay", evidence: "steam bursts a wall that is heated too fast, and a wet wall slumps",
		remedy: "a small wood fire for one to three hours; keep off a wall that steams"},
	rule.FireSpread: {title: "fire spread", evidence: "sparks fly at every charge; dry grass, turf and sheds catch",
		remedy: "cleared ground, water and sand at hand; heed wind and fire ban; somebody watches after the end"},
	rule.BlowerInRain: {title: "blower in rain", evidence: "an electric blower and its lead lie near rain, wet ground and hot slag",
		remedy: "residual current device, leads off the ground, blower covered; a generator away from fuel and people"},
	rule.Noise: {title: "noise", evidence: "a blower or a hammer can pass 85 dB(A), where laws ask for ear protection",
		remedy: "ear protection beside both; agree on hand signs"},
	rule.Zinc: {title: "zinc", evidence: "galvanised pipe, sheet or buckets near heat give a white fume that makes ill",
		remedy: "no zinc and no brass near the fire; stay out of the plume"},
	rule.BurnThrough: {title: "wall burn-through", evidence: "the wall is thinnest and hottest over the tuyere: it cracks, and fire or slag breaks out",
		remedy: "nobody stands on that side; wet clay and sheet steel ready; a crack gets clay at once"},
	rule.Tiredness: {title: "tiredness", evidence: "a smelt takes 7 to 23 hours beside great heat; tired people slip and forget",
		remedy: "turns at blower and top, food, water, shade; somebody fresh for the bloom"},
	rule.Onlookers: {title: "onlookers", evidence: "people press in when the bloom comes; some have pulled a furnace apart",
		remedy: "a rope, one person who leads and one who closes; nobody untrained inside it"},
	rule.UnlitGas: {title: "unlit gas", evidence: "gas that does not burn at the top is poison, and lights with a thump",
		remedy: "light it at once, from aside, with a long flame, after every fill too; no face over the mouth"},
	rule.Glare: {title: "glare", evidence: "the fire in the peep is 1150 to 1350 °C: it burns the eye and throws sparks",
		remedy: "look through a shade; clear glasses on everybody all day"},
	rule.BlowBack: {title: "blow-back", evidence: "without blast, furnace gas runs back through the tuyere and can explode in the blower",
		remedy: "blower off the tuyere first; blow it clear in the open before it goes on again"},
	rule.MoltenSlag: {title: "molten slag", evidence: "on wet ground, snow or a wet tool it flashes to steam and throws drops",
		remedy: "dry pit, dry sand, dry hooks; nobody in line with the arch"},
	rule.HotWork: {title: "hot work", evidence: "open top, white hot bloom, sparks; freeing a bloom can take half an hour at the mouth",
		remedy: "leather or wool, face shield, long tools, turns, water to drink; cleared ground and water at hand"},
	rule.Silica: {title: "silica dust", evidence: "dry clay, ore and slag give fine quartz dust when broken; 0.05 mg/m³ is a legal limit",
		remedy: "damp it down, a fitted P3 or P100 mask, no dry sweeping"},
}

// Caution is what a caution says: its title, the fact, and the usual care.
func Caution(id string) (title, fact, care string) {
	c, ok := cautions[id]
	if !ok {
		c, ok = weekCautions[id]
	}
	if !ok {
		return id, "", ""
	}
	return c.title, c.evidence, c.remedy
}

// Warned is a warning with what shows it.
func Warned(title, evidence string) string {
	if evidence == "" {
		return title
	}
	return Titled(title) + evidence
}

// Titled is the title of a warning before what is said of it.
func Titled(title string) string {
	if strings.HasSuffix(title, "?") {
		return title + " "
	}
	return title + ": "
}

func joinedBy(s, by, more string) string {
	if more == "" {
		return s
	}
	return s + by + more
}
