package scenes

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	"chargehand/model/rule"
	"chargehand/physics"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/words"
)

// more are scenes of the far view, the cards and Replay.
func more() []Scene {
	far := of("far", MidSmelt())
	due := of("far-due", MidSmelt())
	due.V.Due = Ahead(due.R, 12.3, forecast.Poked)
	warned := of("far-warned", MidSmelt())
	warned.V.Due = Ahead(warned.R, 12.3)
	warned.V.Warnings = []rule.Warning{Standing(warned.R, rule.TuyereBlocked, rule.Evidence{{Name: "seen", Word: "dark"}})}
	late := of("far-late", MidSmelt())
	late.V.Due = Ahead(late.R, 4.5)
	late.V.Warnings = []rule.Warning{Standing(late.R, rule.BlastLost, rule.Evidence{{Name: "off", Number: 3, Unit: rule.Minutes}})}
	lost := of("far-notkept", MidSmelt())
	lost.V.Due, lost.V.NotKept, lost.V.Trouble = Ahead(lost.R, 12.3), 3, DiskFull
	lost.Answer.State = draw.Unsafe
	adding := of("far-adding", MidSmelt())
	adding.V.Adding = &draw.Adding{Count: 2.5, What: "scoops of ore"}
	farDown, down := of("far-down", ReadyDown()), of("down", ReadyDown())
	for _, s := range []*Scene{&farDown, &down} {
		s.V.Ending.Flame = &draw.Sight{Sees: entry.FlameYellow, At: s.R.At - 4*time.Minute}
		s.V.Ending.Ready, s.V.Ending.Closer = []bool{true, true, false, true, false}, "MK"
	}
	warnedDown := of("down-warned", ReadyDown())
	warnedDown.V.Ending.Flame, warnedDown.V.Ending.Ready, warnedDown.V.Ending.Closer = down.V.Ending.Flame, down.V.Ending.Ready, down.V.Ending.Closer
	warnedDown.V.Warnings = []rule.Warning{Standing(warnedDown.R, rule.BlastLost, rule.Evidence{{Name: "off", Number: 3, Unit: rule.Minutes}})}
	decide, early := of("decide", ReadyDown()), of("decide-early", MidSmelt())
	decide.V.Ending.Flame = &draw.Sight{Sees: entry.FlamePale, At: decide.R.At - 4*time.Minute}
	early.R.BlastOff, early.R.BlastAt = true, early.R.At-14*time.Minute
	early.V.Warnings = []rule.Warning{
		Standing(early.R, rule.BlastLost, rule.Evidence{{Name: "off", Number: 14, Unit: rule.Minutes}}),
		Standing(early.R, rule.HearthCold, rule.Evidence{{Name: "seen", Word: "red"}})}
	back, forth := of("replay", MidSmelt()), of("replay-known", MidSmelt())
	forth.V.Past = words.PastImported
	forth.V.Warnings = warned.V.Warnings
	caution, farCaution := of("caution", JustLit()), of("far-caution", JustLit())
	for _, s := range []*Scene{&caution, &farCaution} {
		s.V.Caution = CautionOf(rule.CarbonMonoxide)
	}
	blow := of("caution-blow", late.R)
	blow.V.Warnings, blow.V.Caution = late.V.Warnings, CautionOf(rule.BlowBack)
	chem := of("chemistry", SolvedShaft())
	chem.V.Chemistry = true
	return []Scene{chem, far, due, warned, late, lost, adding, farDown, down, warnedDown, decide, early, back, forth, caution, farCaution, blow}
}

// solvedShaft is the main burn with what a solver would say of its zones.
func SolvedShaft() *figure.Reading {
	r := MidSmelt()
	for i, co := range []float64{55, 58, 61, 70, 84, 92, 40} {
		z := &r.Zones[i]
		z.Basis, z.WallSide = figure.Estimated, entry.Some(entry.Celsius(z.Degrees-80))
		z.Spread = physics.Band{P10: z.Degrees - 150, P50: z.Degrees, P90: z.Degrees + 150}
		z.WallSpread = physics.Band{P10: z.Degrees - 230, P50: z.Degrees - 80, P90: z.Degrees + 70}
		z.Gas = figure.Gas{HasCO: true, CO: physics.Band{P10: co - 12, P50: co, P90: co + 6}, Needs: z.What.LeastCO(z.Degrees)}
	}
	return r
}

func Standing(r *figure.Reading, id rule.ID, e rule.Evidence) rule.Warning {
	for _, row := range rule.Table {
		if row.ID == id {
			return rule.Warning{Rule: id, Grade: row.Grade, Onset: r.At - 3*time.Minute, Evidence: e}
		}
	}
	panic(id)
}

func CautionOf(id string) *draw.CautionText { return scene.CautionText(id) }

// readyDown is a burn-down near its end, with a little burden left.
func ReadyDown() *figure.Reading {
	r := MidSmelt()
	r.Phase, r.Since, r.LastOre = entry.BurnsDown, r.At-29*time.Minute, true
	for i := range r.Charges {
		r.Charges[i].At -= 36 * time.Minute
	}
	r.Figures[figure.StackHeight] = Known(8, 11, 14, figure.Estimated)
	r.Layers = r.Layers[:2]
	r.Layers[0].Top, r.Layers[0].Bottom, r.Layers[1].Top, r.Layers[1].Bottom = 11, 6, 6, 0
	r.Zones = r.Zones[4:]
	r.Zones[0].Top, r.Zones[0].Bottom, r.Zones[1].Top, r.Zones[1].Bottom, r.Zones[2].Top = 11, 9, 9, 6, 6
	return r
}

// dayOf is the time line of a smelt that has two hours more to come.
func DayOf(r *figure.Reading, seen bool) draw.Day {
	tl := draw.Day{
		Lit: r.Lit, Span: r.At + 2*time.Hour, Now: r.At, AsSeen: seen, Only: !seen, Speed: 60, Back: seen, Steps: "by warning",
		Phases: []draw.PhaseAt{{At: 0, Phase: entry.Preheat}, {At: 95 * time.Minute, Phase: entry.Filling}, {At: r.Since, Phase: entry.MainBurn}, {At: r.At + 80*time.Minute, Phase: entry.BurnsDown}},
		Taps:   []time.Duration{r.At - 70*time.Minute, r.At + 30*time.Minute},
	}
	for _, c := range r.Charges {
		tl.Charges = append(tl.Charges, c.At, c.At+4*time.Hour+15*time.Minute)
	}
	for i, id := range []rule.ID{rule.BurnSlower, rule.BlastLost, rule.MeterOdd} {
		w := Standing(r, id, nil)
		w.Onset = time.Duration(i+2) * time.Hour
		tl.Warnings = append(tl.Warnings, w)
	}
	return tl
}
