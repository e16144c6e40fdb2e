package paint

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// screens are the invented scenes of the far view, the cards and Replay.
func screens() []scene {
	did := foot{answer: Answer{Text: "charge 24: 1 bucket 1.9 kg, 4 scoops 2 kg", State: IsKept}}
	of := func(name string, r figure.Reading, paint func(cell.Grid, theme.Theme, figure.Reading, FireView)) scene {
		return scene{name: name, r: r, v: viewOf(r), foot: did, paint: paint}
	}
	far := of("far", midSmelt(), Far)
	due := of("far-due", midSmelt(), Far)
	due.v.Due = ahead(due.r, 12.3, forecast.Poked)
	warned := of("far-warned", midSmelt(), Far)
	warned.v.Due = ahead(warned.r, 12.3)
	warned.v.Warnings = []rule.Warning{standing(warned.r, rule.TuyereBlocked, rule.Evidence{{Name: "seen", Word: "dark"}})}
	late := of("far-late", midSmelt(), Far)
	late.v.Due = ahead(late.r, 4.5)
	late.v.Warnings = []rule.Warning{standing(late.r, rule.BlastLost, rule.Evidence{{Name: "off", Number: 3, Unit: rule.Minutes}})}
	lost := of("far-notkept", midSmelt(), Far)
	lost.v.Due, lost.v.NotKept, lost.v.Trouble = ahead(lost.r, 12.3), 3, "the disk is full. Free some room; it is tried again by itself"
	lost.foot.answer.State = Unsafe
	adding := of("far-adding", midSmelt(), Far)
	adding.v.Adding = &Adding{Count: 2.5, What: "scoops of ore"}
	farDown, down := of("far-down", readyDown(), Far), of("down", readyDown(), nil)
	for _, s := range []*scene{&farDown, &down} {
		s.v.Flame = &Sight{Sees: entry.FlameYellow, At: s.r.At - 4*time.Minute}
		s.v.Ready, s.v.Closer = []bool{true, true, false, true, false}, "MK"
	}
	warnedDown := of("down-warned", readyDown(), nil)
	warnedDown.v.Flame, warnedDown.v.Ready, warnedDown.v.Closer = down.v.Flame, down.v.Ready, down.v.Closer
	warnedDown.v.Warnings = []rule.Warning{standing(warnedDown.r, rule.BlastLost, rule.Evidence{{Name: "off", Number: 3, Unit: rule.Minutes}})}
	decide, early := of("decide", readyDown(), Decision), of("decide-early", midSmelt(), Decision)
	decide.v.Flame = &Sight{Sees: entry.FlamePale, At: decide.r.At - 4*time.Minute}
	early.r.BlastOff, early.r.BlastAt = true, early.r.At-14*time.Minute
	early.v.Warnings = []rule.Warning{
		standing(early.r, rule.BlastLost, rule.Evidence{{Name: "off", Number: 14, Unit: rule.Minutes}}),
		standing(early.r, rule.HearthCold, rule.Evidence{{Name: "seen", Word: "red"}})}
	for _, s := range []*scene{&decide, &early} {
		s.v.Decide = DecideKeys{Extract: "e", Wait: "w", GiveUp: "g"}
	}
	replayed := func(seen bool) func(cell.Grid, theme.Theme, figure.Reading, FireView) {
		return func(g cell.Grid, th theme.Theme, r figure.Reading, v FireView) {
			Replay(g, th, r, v, dayOf(r, seen))
		}
	}
	back, forth := of("replay", midSmelt(), replayed(true)), of("replay-known", midSmelt(), replayed(false))
	forth.v.Past = words.PastImported
	forth.v.Warnings = warned.v.Warnings
	caution, farCaution := of("caution", justLit(), nil), of("far-caution", justLit(), Far)
	for _, s := range []*scene{&caution, &farCaution} {
		s.v.Caution = cautionOf(rule.CarbonMonoxide)
	}
	blow := of("caution-blow", late.r, nil)
	blow.v.Warnings, blow.v.Caution = late.v.Warnings, cautionOf(rule.BlowBack)
	chem := of("chemistry", solvedShaft(), nil)
	chem.v.Chemistry = true
	return []scene{chem, far, due, warned, late, lost, adding, farDown, down, warnedDown, decide, early, back, forth, caution, farCaution, blow}
}

// solvedShaft is the main burn with what a solver would say of its zones.
func solvedShaft() figure.Reading {
	r := midSmelt()
	for i, co := range []float64{55, 58, 61, 70, 84, 92, 40} {
		z := &r.Zones[i]
		z.Basis, z.WallSide = figure.Estimated, entry.Some(entry.Celsius(z.Degrees-80))
		z.Gas = figure.Gas{CO: entry.Some(co), Needs: z.What.LeastCO(z.Degrees)}
	}
	return r
}

func standing(r figure.Reading, id rule.ID, e rule.Evidence) rule.Warning {
	for _, row := range rule.Table {
		if row.ID == id {
			return rule.Warning{Rule: id, Grade: row.Grade, Onset: r.At - 3*time.Minute, Evidence: e}
		}
	}
	panic(id)
}

func cautionOf(id string) *CautionText {
	title, fact, care := words.Caution(id)
	return &CautionText{title, fact, care, words.LocalRules}
}

// readyDown is a burn-down near its end, with a little burden left.
func readyDown() figure.Reading {
	r := midSmelt()
	r.Phase, r.Since, r.LastOre = entry.BurnsDown, r.At-29*time.Minute, true
	for i := range r.Charges {
		r.Charges[i].At -= 36 * time.Minute
	}
	r.Figures[figure.StackHeight] = known(8, 11, 14, figure.Estimated)
	r.Layers = r.Layers[:2]
	r.Layers[0].Top, r.Layers[0].Bottom, r.Layers[1].Top, r.Layers[1].Bottom = 11, 6, 6, 0
	r.Zones = r.Zones[4:]
	r.Zones[0].Top, r.Zones[0].Bottom, r.Zones[1].Top, r.Zones[1].Bottom, r.Zones[2].Top = 11, 9, 9, 6, 6
	return r
}

// dayOf is the time line of a smelt that has two hours more to come.
func dayOf(r figure.Reading, seen bool) TimeLine {
	tl := TimeLine{
		Lit: r.Lit, Span: r.At + 2*time.Hour, Now: r.At, AsSeen: seen, Only: !seen, Speed: 60, Back: seen, Steps: "by warning",
		Phases: []PhaseAt{{0, entry.Preheat}, {95 * time.Minute, entry.Filling}, {r.Since, entry.MainBurn}, {r.At + 80*time.Minute, entry.BurnsDown}},
		Taps:   []time.Duration{r.At - 70*time.Minute, r.At + 30*time.Minute},
	}
	for _, c := range r.Charges {
		tl.Charges = append(tl.Charges, c.At, c.At+4*time.Hour+15*time.Minute)
	}
	for i, id := range []rule.ID{rule.BurnSlower, rule.BlastLost, rule.MeterOdd} {
		w := standing(r, id, nil)
		w.Onset = time.Duration(i+2) * time.Hour
		tl.Warnings = append(tl.Warnings, w)
	}
	return tl
}
