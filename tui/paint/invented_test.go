package paint

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	"chargehand/model/rule"
	"chargehand/physics"
	"chargehand/tui/cell"
	"chargehand/tui/theme"
)

// The smelts painted in these tests are invented. Their figures are set by
// hand, not read from entries, so that a picture changes only with the painter.

func known(p10, p50, p90 float64, b figure.Basis) figure.Figure {
	return figure.Figure{Band: physics.Band{P10: p10, P50: p50, P90: p90}, Basis: b}
}

func exactly(v float64) figure.Figure { return known(v, v, v, figure.Measured) }

// justLit is a smelt that holds nothing but its light.
func justLit() figure.Reading {
	r := figure.Reading{
		Smelt: "2026-05-09-reedhollow-a", At: 14 * time.Minute, Known: 3,
		Lit: time.Date(2026, 5, 9, 9, 5, 0, 0, time.FixedZone("", 2*3600)), Phase: entry.Preheat,
		Light: entry.Light{Invented: true, Furnace: entry.Furnace{
			Name: "Reed Hollow", Bore: entry.Some(entry.Centimetre(28)), Stack: entry.Some(entry.Centimetre(50)),
			Rim: entry.Some(entry.Centimetre(56)), TuyereBase: entry.Some(entry.Centimetre(15)), TuyereAngle: entry.Some(entry.Degree(20)),
		}},
		Measures: []entry.Measure{
			{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.9))},
			{Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(0.5))},
		},
		By: "MK",
	}
	for n := range r.Figures {
		r.Figures[n] = figure.Figure{Basis: figure.Unknown}
	}
	r.Figures[figure.Elapsed] = exactly(r.At.Seconds())
	r.Figures[figure.CharcoalCharged], r.Figures[figure.OreCharged] = exactly(0), exactly(0)
	r.Next = []figure.Part{
		{Part: entry.Part{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))}, Mass: exactly(1.9)},
		{Part: entry.Part{What: entry.Ore, Measure: "scoop", Count: entry.Some(entry.Count(4))}, Mass: exactly(2)},
	}
	r.NextRatio = known(0.97, 1.05, 1.13, figure.Estimated)
	return r
}

// midSmelt is the main burn after 24 charges.
func midSmelt() figure.Reading {
	r := justLit()
	r.At, r.Known, r.Phase = 5*time.Hour+27*time.Minute, 214, entry.MainBurn
	r.Since = r.At - (3*time.Hour + 12*time.Minute)
	r.Usual = 11 * time.Minute
	at := r.At - 8*time.Minute - 40*time.Second
	minutes := []float64{0, 9, 10, 12, 9, 9, 10, 12, 13, 9, 10, 13, 12, 11, 10, 14, 9, 11, 12, 41, 11, 12, 10, 13}
	for i := len(minutes) - 1; i >= 0; i-- {
		ore := math.Min(0.5*float64(i/3), 2)
		r.Charges = append([]figure.Charge{{Number: i + 1, At: at, Minutes: minutes[i], Charcoal: exactly(1.9), Ore: exactly(ore), Measures: 1}}, r.Charges...)
		at -= time.Duration(minutes[i] * float64(time.Minute))
	}
	top := 43.6
	for n := 24; top > 0; n-- {
		l := figure.Layer{Charge: n, Top: top, Bottom: math.Max(top-5.2, 0), Charcoal: exactly(1.9), Ore: exactly(r.Charges[n-1].Ore.P50)}
		r.Layers = append(r.Layers, l)
		top = l.Bottom
	}
	for i, z := range []struct{ top, degrees float64 }{{43.6, 110}, {40, 280}, {35, 490}, {30, 690}, {24, 940}, {17, 1220}, {12, 1340}} {
		zone := figure.Zone{What: figure.Process(i), Top: z.top, Degrees: z.degrees, Basis: figure.Guessed}
		if i > 0 {
			r.Zones[i-1].Bottom = z.top
		}
		r.Zones = append(r.Zones, zone)
	}
	r.Blast, r.BlastAt = entry.Blast{Volume: entry.Some(entry.LitrePerMinute(720))}, r.At-22*time.Minute
	r.Figures[figure.SinceCharge] = exactly((8*time.Minute + 40*time.Second).Seconds())
	r.Figures[figure.CharcoalCharged] = known(57.1, 58.4, 59.7, figure.Measured)
	r.Figures[figure.OreCharged] = known(29.2, 30, 30.8, figure.Measured)
	r.Figures[figure.RatioFive] = known(0.93, 0.97, 1.01, figure.Estimated)
	r.Figures[figure.RatioSmelt] = known(0.69, 0.71, 0.73, figure.Estimated)
	r.Figures[figure.BurnRate] = known(9.2, 10.4, 11.8, figure.Estimated)
	r.Figures[figure.BurnLeast], r.Figures[figure.BurnMost] = known(4.5, 5.4, 6.3, figure.Estimated), known(9.1, 10.8, 12.6, figure.Estimated)
	r.Figures[figure.MinutesPerMeasure] = known(10.4, 11.2, 12, figure.Estimated)
	r.Figures[figure.StackHeight] = known(40.8, 43.6, 46.4, figure.Estimated)
	r.Figures[figure.Air] = known(680, 720, 760, figure.Measured)
	r.Figures[figure.AirPerArea] = known(1.1, 1.17, 1.24, figure.Estimated)
	return r
}

// unweighed is the same with buckets and scoops that nobody has weighed and a
// furnace that nobody has measured.
func unweighed() figure.Reading {
	r := midSmelt()
	none := figure.Figure{Basis: figure.Unknown}
	for n := figure.CharcoalDry; n < figure.Count; n++ {
		if n != figure.MinutesPerMeasure {
			r.Figures[n] = none
		}
	}
	r.Figures[figure.CharcoalCharged] = figure.Figure{Basis: figure.Unknown, AtLeast: entry.Some(5.7)}
	r.Measures = []entry.Measure{{Name: "bucket", What: entry.Charcoal}, {Name: "scoop", What: entry.Ore}}
	r.Light.Furnace = entry.Furnace{Name: "Reed Hollow"}
	r.Layers, r.Zones, r.NextRatio = nil, nil, none
	r.Blast, r.BlastAt = entry.Blast{Gate: "8"}, r.At-time.Hour
	for i := range r.Charges {
		r.Charges[i].Charcoal, r.Charges[i].Ore = none, none
	}
	for i := range r.Next {
		r.Next[i].Mass = none
	}
	return r
}

// burning down, with the tuyere on the right.
func burnDown() figure.Reading {
	r := midSmelt()
	r.Phase, r.Since, r.LastOre = entry.BurnsDown, r.At-11*time.Minute, true
	r.Light.Furnace.TuyereRight = true
	r.Light.Furnace.BoreTop = entry.Some(entry.Centimetre(20))
	r.BlastOff, r.Paused = true, true
	return r
}

// viewOf is what stands around a reading.
func viewOf(r figure.Reading) FireView {
	return FireView{
		Now: r.Wall(r.At), Title: r.Smelt, Kept: 214, NextKey: "c",
		Log: []LogLine{
			{At: "14:23", Text: "charge 24: 1 bucket of charcoal, 4 scoops of ore"},
			{At: "14:19", Text: "looked at the flame: yellow, a hand high", Late: true},
			{At: "14:10", Text: "charge 23: 1 bucket of charcoal, 4 scoops of ore"},
			{At: "14:10", Text: "blast 720 l/min"},
			{At: "14:04", Text: "tapped slag", Struck: true},
			{At: "14:00", Text: "charge 22: 1 bucket of charcoal, 4 scoops of ore"},
			{At: "13:58", Text: "looked in the peep: white"},
		},
	}
}

// foot is what stands below Fire.
type foot struct {
	answer Answer
	ask    *Ask
}

var keys = []KeyHint{{"c", "charge as shown"}, {"s", "a scoop of ore"}, {"f", "charcoal only"}, {"b", "blast"},
	{"t", "tap"}, {"r", "rod the tuyere"}, {"p", "poke the burden"}, {"d", "dip"}, {"l", "look"}, {"x", "cross out the last"}}

// scene is one of the pictures of these tests.
type scene struct {
	name string
	r    figure.Reading
	v    FireView
	foot foot

	paint func(cell.Grid, theme.Theme, figure.Reading, FireView) // Fire when there is none
}

func scenes() []scene {
	did := foot{answer: Answer{Text: "charge 24: 1 bucket 1.9 kg, 4 scoops 2 kg", State: IsKept}}
	of := func(name string, r figure.Reading, f foot) scene {
		return scene{name: name, r: r, v: viewOf(r), foot: f}
	}
	lit, vague, down := of("lit", justLit(), foot{}), of("unweighed", unweighed(), did), of("burndown", burnDown(), did)
	lit.v.Log, vague.v.Log, down.v.Log = nil, vague.v.Log[:1], down.v.Log[:2]
	down.v.Past = "imported, as it stood at its end"

	lost := of("notkept", midSmelt(), did)
	lost.v.NotKept, lost.v.Trouble = 3, "the disk is full. Free some room; it is tried again by itself"
	lost.v.Adding = &Adding{Count: 2.5, What: "scoops of ore"}
	lost.foot.answer.State = Unsafe

	due := of("due", midSmelt(), foot{ask: &Ask{Label: "blast", Value: "72", Hint: "l/min; enter when done, esc to leave it"}})
	due.v.Due = ahead(due.r, 12.3, forecast.BlastChanged)
	due.v.Warnings = []rule.Warning{{Rule: rule.TuyereDim, Grade: rule.Look, Onset: due.r.At - 11*time.Minute, Acknowledged: true,
		Evidence: rule.Evidence{{Name: "where", Word: string(entry.AtPeep)}, {Name: "seen", Word: "dark on one side"}}}}

	late := of("late", midSmelt(), did)
	late.v.Due = ahead(late.r, 2.5, forecast.BlastChanged)
	late.v.Warnings = []rule.Warning{
		{Rule: rule.BlastLost, Grade: rule.Act, Onset: late.r.At - 3*time.Minute, Evidence: rule.Evidence{{Name: "off", Number: 3, Unit: rule.Minutes}}},
		{Rule: rule.TuyereDim, Grade: rule.Look, Onset: late.r.At - 12*time.Minute}}
	late.r.OreHeld = true
	late.r.Next = late.r.Next[:1]

	pressed := of("pressed", midSmelt(), did)
	pressed.v.Warnings = []rule.Warning{standing(pressed.r, rule.PressureHigh, rule.Evidence{
		{Name: "pressure", Number: 1180, Unit: rule.Pascals}, {Name: "clear", Number: 642, Unit: rule.Pascals}})}
	pressed.r.PressedAt = pressed.r.At - 3*time.Minute
	pressed.r.Figures[figure.BackPressure] = figure.Figure{Band: physics.Exact(1180)}
	pressed.r.Figures[figure.BackPressureUsual] = figure.Figure{Band: physics.LogNormal(578, 0.54), Basis: figure.Guessed}
	pressed.r.Blast = entry.Blast{Gate: "8"}
	pressed.r.Figures[figure.Air] = figure.Figure{Band: physics.LogNormal(610, 0.18), Basis: figure.Estimated}
	return []scene{of("midsmelt", midSmelt(), did), lit, vague, down, lost, due, late, pressed}
}

// ahead is a forecast so many minutes after the last charge, give or take a
// seventh.
func ahead(r figure.Reading, minutes float64, doubts ...forecast.Doubt) *forecast.Due {
	from := r.Charges[len(r.Charges)-1].At
	in := func(m float64) forecast.Ahead {
		return forecast.Ahead{From: from, Minutes: physics.Band{P10: m * 6 / 7, P50: m, P90: m * 8 / 7}}
	}
	return &forecast.Due{Next: in(minutes), Three: in(3 * minutes), Intervals: 8, Doubts: doubts}
}
