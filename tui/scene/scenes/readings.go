package scenes

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/physics"
)

// The smelts painted in these tests are invented. Their figures are set by
// hand, not read from entries, so that a picture changes only with the Pen.

func Known(p10, p50, p90 float64, b figure.Basis) figure.Figure {
	return figure.Figure{Band: physics.Band{P10: p10, P50: p50, P90: p90}, Basis: b}
}

func Exactly(v float64) figure.Figure { return Known(v, v, v, figure.Measured) }

// justLit is a smelt that holds nothing but its light.
func JustLit() *figure.Reading {
	r := &figure.Reading{
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
	r.Figures[figure.Elapsed] = Exactly(r.At.Seconds())
	r.Figures[figure.CharcoalCharged], r.Figures[figure.OreCharged] = Exactly(0), Exactly(0)
	r.Next = []figure.Part{
		{Part: entry.Part{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1))}, Mass: Exactly(1.9)},
		{Part: entry.Part{What: entry.Ore, Measure: "scoop", Count: entry.Some(entry.Count(4))}, Mass: Exactly(2)},
	}
	r.NextRatio = Known(0.97, 1.05, 1.13, figure.Estimated)
	return r
}

// midSmelt is the main burn after 24 charges.
func MidSmelt() *figure.Reading {
	r := JustLit()
	r.At, r.Known, r.Phase = 5*time.Hour+27*time.Minute, 214, entry.MainBurn
	r.Since = r.At - (3*time.Hour + 12*time.Minute)
	r.Usual = 11 * time.Minute
	at := r.At - 8*time.Minute - 40*time.Second
	minutes := []float64{0, 9, 10, 12, 9, 9, 10, 12, 13, 9, 10, 13, 12, 11, 10, 14, 9, 11, 12, 41, 11, 12, 10, 13}
	for i := len(minutes) - 1; i >= 0; i-- {
		ore := math.Min(0.5*float64(i/3), 2)
		r.Charges = append([]figure.Charge{{Number: i + 1, At: at, Minutes: minutes[i], Charcoal: Exactly(1.9), Ore: Exactly(ore), Measures: 1}}, r.Charges...)
		at -= time.Duration(minutes[i] * float64(time.Minute))
	}
	top := 43.6
	for n := 24; top > 0; n-- {
		l := figure.Layer{Charge: n, Top: top, Bottom: math.Max(top-5.2, 0), Charcoal: Exactly(1.9), Ore: Exactly(r.Charges[n-1].Ore.P50)}
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
	r.Figures[figure.SinceCharge] = Exactly((8*time.Minute + 40*time.Second).Seconds())
	r.Figures[figure.CharcoalCharged] = Known(57.1, 58.4, 59.7, figure.Measured)
	r.Figures[figure.OreCharged] = Known(29.2, 30, 30.8, figure.Measured)
	r.Figures[figure.RatioFive] = Known(0.93, 0.97, 1.01, figure.Estimated)
	r.Figures[figure.RatioSmelt] = Known(0.69, 0.71, 0.73, figure.Estimated)
	r.Figures[figure.BurnRate] = Known(9.2, 10.4, 11.8, figure.Estimated)
	r.Figures[figure.BurnLeast], r.Figures[figure.BurnMost] = Known(4.5, 5.4, 6.3, figure.Estimated), Known(9.1, 10.8, 12.6, figure.Estimated)
	r.Figures[figure.MinutesPerMeasure] = Known(10.4, 11.2, 12, figure.Estimated)
	r.Figures[figure.StackHeight] = Known(40.8, 43.6, 46.4, figure.Estimated)
	r.Figures[figure.Air] = Known(680, 720, 760, figure.Measured)
	r.Figures[figure.AirPerArea] = Known(1.1, 1.17, 1.24, figure.Estimated)
	return r
}

// unweighed is the same with buckets and scoops that nobody has weighed and a
// furnace that nobody has measured.
func Unweighed() *figure.Reading {
	r := MidSmelt()
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
func BurnDown() *figure.Reading {
	r := MidSmelt()
	r.Phase, r.Since, r.LastOre = entry.BurnsDown, r.At-11*time.Minute, true
	r.Light.Furnace.TuyereRight = true
	r.Light.Furnace.BoreTop = entry.Some(entry.Centimetre(20))
	r.BlastOff, r.Paused = true, true
	return r
}
