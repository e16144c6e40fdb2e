package figure

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// smelt builds an imported-like invented smelt: entries at whole minutes.
func smelt(f entry.Furnace, rows ...entry.Event) []entry.Entry {
	day := time.Date(2026, 5, 9, 9, 0, 0, 0, time.UTC)
	es := []entry.Entry{{Version: 1, Stream: "s", Seq: 1, Happened: day, Event: entry.Light{Furnace: f}}}
	for _, ev := range rows {
		if w, ok := ev.(wait); ok {
			day = day.Add(time.Duration(w) * time.Minute)
			continue
		}
		es = append(es, entry.Entry{Version: 1, Stream: "s", Seq: uint64(len(es) + 1), Happened: day, Event: ev})
	}
	return es
}

type wait int

func (wait) Kind() entry.Kind { return "" }

func load(coal, ore float64) entry.Charge {
	return entry.Charge{Parts: entry.Parts{
		{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(coal)), Count: entry.Some(entry.Count(1))},
		{What: entry.Ore, Mass: entry.Some(entry.Kilogram(ore))},
	}}
}

func read(es []entry.Entry, at time.Duration) *Reading { return From(fold.Fold(es, fold.All, at)) }

func TestRatiosLeaveOutCharcoalBeforeAndAfterTheOre(t *testing.T) {
	r := read(smelt(entry.Furnace{}, load(2, 0), wait(10), load(2, 1), wait(10), load(2, 3), wait(10), load(2, 0)), time.Hour)
	for name, want := range map[Name]float64{RatioLast: 0, RatioFive: 0.5, RatioSmelt: 1} {
		if got := r.Figure(name); !got.Known() || math.Abs(got.P50-want) > 1e-12 {
			t.Errorf("%s is %+v, want %v", name.Key(), got, want)
		}
	}
}

func TestAnUnknownPartLeavesTheKnownOneAsAtLeast(t *testing.T) {
	unknown := entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}, {What: entry.Ore}}}
	r := read(smelt(entry.Furnace{}, load(2, 1), wait(10), unknown), time.Hour)
	ore := r.Figure(OreCharged)
	if ore.Known() || !ore.AtLeast.Known || ore.AtLeast.Value != 1 || ore.P50 != 0 {
		t.Errorf("ore is %+v, want unknown and at least 1 kg", ore)
	}
	if r.Figure(RatioLast).Known() || r.Figure(RatioSmelt).Known() {
		t.Error("a ratio with unknown ore is unknown")
	}
	if !r.Figure(CharcoalCharged).Known() {
		t.Error("the charcoal is known all the same")
	}
}

func TestTheBurnRateIsOverThreeIntervals(t *testing.T) {
	r := read(smelt(entry.Furnace{}, load(9, 0), wait(30), load(2, 1), wait(10), load(2, 1), wait(10), load(2, 1), wait(10), load(2, 1)), 2*time.Hour)
	dry := 6.0 / 1.06 // three charges of 2 kg with 6 % moisture on the dry mass
	if got := r.Figure(BurnRate).P50; math.Abs(got-dry/0.5) > 1e-9 {
		t.Errorf("burn rate %v kg/h, want %v", got, dry/0.5)
	}
	if got := r.Figure(MinutesPerMeasure).P50; math.Abs(got-10) > 1e-9 {
		t.Errorf("%v min per measure, want 10", got)
	}
	if r.Figure(SinceCharge).P50 != 3600 {
		t.Errorf("since the last charge %v s, want an hour", r.Figure(SinceCharge).P50)
	}
}

func TestChargesKeyedTogetherTellNoBurnRate(t *testing.T) {
	r := read(smelt(entry.Furnace{}, load(2, 1), wait(1), load(2, 1)), time.Hour)
	for _, n := range []Name{BurnRate, MinutesPerMeasure, AirPerCharcoal} {
		if f := r.Figure(n); f.Known() {
			t.Errorf("%s is %+v after two charges a minute apart", n.Key(), f)
		}
	}
}

func TestTimeWithoutBlastIsNoBurning(t *testing.T) {
	off, on := entry.Blast{State: entry.BlastOff}, entry.Blast{State: entry.BlastOn}
	r := read(smelt(entry.Furnace{}, load(2, 1), wait(10), load(2, 1), wait(4), off, wait(11), on, wait(6), load(2, 1), wait(10), load(2, 1)), 2*time.Hour)
	if got := r.Figure(MinutesPerMeasure).P50; math.Abs(got-10) > 1e-9 {
		t.Errorf("%v min per measure over 41 min of which 11 without blast, want 10", got)
	}
}

// The bound of a blast: 12.769 kg of carbon an hour for 1000 l/min of air at
// 15 C and one atmosphere, all oxygen to CO, and half of it to CO2 (computed
// from atomic masses and ISO 2533 air; the table of testdata/physics), over
// 0.85 kg of carbon in a kg of dry charcoal.
func TestWhatTheBlastCanBurn(t *testing.T) {
	blast := entry.Blast{Volume: entry.Some(entry.LitrePerMinute(1000))}
	r := read(smelt(entry.Furnace{Bore: entry.Some(entry.Centimetre(30))}, blast), time.Hour)
	if most := r.Figure(BurnMost).P50; math.Abs(most-12.769/0.85) > 1e-3 {
		t.Errorf("at most %v kg/h, want %v", most, 12.769/0.85)
	}
	if least := r.Figure(BurnLeast).P50; math.Abs(least-12.769/2/0.85) > 1e-3 {
		t.Errorf("at least %v kg/h, want %v", least, 12.769/2/0.85)
	}
	// Markewitz 2015 works the same sum for a bore of 30 cm: about 700 cm2.
	if area := r.Figure(AirPerArea).P50; math.Abs(area-1000/706.86) > 1e-3 {
		t.Errorf("%v l/min per cm2", area)
	}
}

func TestWithoutSizesThereIsNoStack(t *testing.T) {
	r := read(smelt(entry.Furnace{Name: "unmeasured"}, load(2, 1), wait(10), load(2, 1)), time.Hour)
	if r.Figure(StackHeight).Known() || r.Layers != nil || r.Zones != nil {
		t.Error("a furnace of unknown sizes has no stack height, layers or zones")
	}
}

func TestLayersAndZonesTileTheStack(t *testing.T) {
	f := entry.Furnace{Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(60))}
	rows := []entry.Event{entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(6))}}}}
	for range 8 {
		rows = append(rows, wait(12), load(1.9, 1.5))
	}
	es := smelt(f, rows...)
	for at := time.Duration(0); at < 3*time.Hour; at += 7 * time.Minute {
		r := read(es, at)
		h := r.Figure(StackHeight)
		if !h.Known() {
			t.Fatalf("%v: no stack height", at)
		}
		top := h.P50
		for _, l := range r.Layers {
			if math.Abs(l.Top-top) > 1e-9 || l.Bottom > l.Top {
				t.Errorf("%v: a layer from %v to %v under %v", at, l.Top, l.Bottom, top)
			}
			top = l.Bottom
		}
		if len(r.Layers) > 0 && math.Abs(top) > 0.2 {
			t.Errorf("%v: the layers end %v cm above the tuyere", at, top)
		}
		for i, z := range r.Zones {
			if z.Basis != Guessed {
				t.Errorf("%v: zone temperatures are guesses, not %v", at, z.Basis)
			}
			if i > 0 && (z.Top != r.Zones[i-1].Bottom || z.Degrees < r.Zones[i-1].Degrees) {
				t.Errorf("%v: zone %d does not follow the one above", at, i)
			}
		}
	}
}

func TestEveryFigureIsDefined(t *testing.T) {
	seen := map[string]bool{}
	for n := range Count {
		d := Table[n]
		if d.Key == "" || d.Unit == "" || d.Meaning == "" || seen[d.Key] {
			t.Errorf("figure %d: %+v", n, d)
		}
		seen[d.Key] = true
	}
}
