package figure_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
)

// stopped is a steady smelt of charges of 1.9 kg of charcoal and 1 kg of ore every ten
// minutes from minute 20 to 90; then, if asked for, an hour without blast from minute
// 92 on, and two more charges ten minutes of blast apart.
func stopped(stop bool) (entries []entry.Entry, last float64) {
	lit := entry.Wall(time.Date(2026, 5, 9, 8, 0, 0, 0, time.UTC))
	key := func(minute float64, ev entry.Event) {
		at := time.Duration(minute * float64(time.Minute))
		entries = append(entries, entry.Entry{Version: entry.Version, Stream: "s", Seq: uint64(len(entries) + 1),
			Kept: lit.Add(at), Happened: lit.Add(at), Boot: "b", Mono: at, Event: ev})
	}
	cm := func(v float64) entry.Maybe[entry.Centimetre] { return entry.Some(entry.Centimetre(v)) }
	coal := entry.Part{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(1)), Mass: entry.Some(entry.Kilogram(1.9))}
	full := entry.Charge{Parts: entry.Parts{coal, {What: entry.Ore, Mass: entry.Some(entry.Kilogram(1))}}}
	key(0, entry.Light{Furnace: entry.Furnace{Name: "invented", Bore: cm(25), Stack: cm(50), Rim: cm(55)}})
	key(5, entry.Blast{Volume: entry.Some(entry.LitrePerMinute(600))})
	key(10, entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(5))}}})
	for at := 20.0; at <= 90; at += 10 {
		key(at, full)
	}
	off := 0.0
	if stop {
		key(92, entry.Blast{State: entry.BlastOff})
		key(152, entry.Blast{State: entry.BlastOn})
		off = 60
	}
	key(100+off, full)
	key(110+off, full)
	return entries, 110 + off
}

// An hour without blast is no hour of burning: every figure that goes by the pace says
// after it what it says of the same smelt without the stop.
func TestAnHourWithoutBlastIsNoBurning(t *testing.T) {
	read := func(stop bool, after float64) *figure.Reading {
		entries, last := stopped(stop)
		return figure.From(fold.Fold(entries, fold.All, time.Duration((last+after)*float64(time.Minute))))
	}
	for _, after := range []float64{0, 5, 30} {
		with, without := read(true, after), read(false, after)
		for _, n := range []figure.Name{figure.BurnRate, figure.MinutesPerMeasure, figure.StackHeight, figure.SinceCharge, figure.NextCharge,
			figure.NextThree, figure.RatioLast, figure.RatioSmelt, figure.AirPerCharcoal, figure.BurnLeast, figure.BurnMost, figure.CharcoalCharged} {
			a, b := with.Figure(n), without.Figure(n)
			if n == figure.NextCharge || n == figure.NextThree { // the interval with the stop taught nothing: the band rests on one fewer
				if math.Abs(a.P50-b.P50) > 0.5 {
					t.Errorf("%v min after the last charge %s is %v, without the stop %v", after, n.Key(), a.Band, b.Band)
				}
				continue
			}
			near := 0.02 * math.Abs(b.P50)
			if n == figure.StackHeight { // a few millimetres, where it has sunk to the tuyere
				near = max(near, 0.5)
			}
			if !a.Known() || math.Abs(a.P50-b.P50) > near {
				t.Errorf("%v min after the last charge %s is %v, without the stop %v", after, n.Key(), a.Band, b.Band)
			}
		}
		if with.Usual != without.Usual || with.Usual != 10*time.Minute {
			t.Errorf("usual is %v, without the stop %v", with.Usual, without.Usual)
		}
	}
	// 1.9 kg charged is 1.79 kg dry every ten minutes: in 30 minutes 5.4 kg burn away, most of a shaft of 50 cm. That nobody
	// has charged says that it has not sunk as far, and it is not known well.
	if f := read(true, 30).Figure(figure.StackHeight); f.P50 > 40 || f.P10 > 20 {
		t.Errorf("half an hour after the last charge the burden stands at %v cm", f.Band)
	}
	// While the blast is off next to nothing burns.
	entries, _ := stopped(true)
	at := func(minute int) float64 {
		return figure.From(fold.Fold(entries, fold.All, time.Duration(minute)*time.Minute)).Figure(figure.StackHeight).P50
	}
	if before, after := at(92), at(152); after < before-12 || after >= before {
		t.Errorf("in an hour without blast it sank from %.1f to %.1f cm", before, after)
	}
}

// On again after a stop it blows as it was measured before: nobody measured it when it went on. While it is off the
// moment is that from which it has been.
func TestABlastOnAgainWasMeasuredBefore(t *testing.T) {
	entries, _ := stopped(true)
	for minute, want := range map[float64]float64{91: 5, 100: 92, 160: 5} {
		r := figure.From(fold.Fold(entries, fold.All, time.Duration(minute*float64(time.Minute))))
		if got := r.BlastAt.Minutes(); got != want {
			t.Errorf("at minute %v the blast is of minute %v, want %v", minute, got, want)
		}
	}
}
