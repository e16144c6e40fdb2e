package forecast

import (
	"math"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/model/fold"
	between "chargehand/model/pace"
)

// day builds invented smelts, minute by minute after light.
type day []entry.Entry

var lit = time.Date(2026, 5, 9, 12, 0, 0, 0, time.UTC)

func (d *day) key(minute float64, ev entry.Event) {
	*d = append(*d, entry.Entry{
		Version: 1, Stream: "s", Seq: uint64(len(*d) + 1), Happened: lit.Add(minutes(minute)), Event: ev,
	})
}

// minutes are to the second, so that a shifted clock is shifted exactly.
func minutes(m float64) time.Duration { return time.Duration(math.Round(m*60)) * time.Second }

func light() day {
	var d day
	d.key(0, entry.Light{UID: "u"})
	return d
}

// charged charges at a minute and again after so many minutes each. It gives the
// minute of the last.
func (d *day) charged(from float64, after ...float64) float64 {
	d.charge(from)
	for _, m := range after {
		from += m
		d.charge(from)
	}
	return from
}

func (d *day) charge(minute float64) {
	d.key(minute, entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}}})
}

func (d day) state(minute float64) fold.State { return fold.Fold(d, fold.All, minutes(minute)) }

func (d day) due(t testing.TB, minute float64) Due {
	t.Helper()
	due, ok := Next(d.state(minute))
	if !ok {
		t.Fatalf("no forecast at minute %v", minute)
	}
	return due
}

func width(a Ahead) float64 { return a.Minutes.P90 - a.Minutes.P10 }

func blow(volume entry.LitrePerMinute) entry.Blast { return entry.Blast{Volume: entry.Some(volume)} }

func even(n int, m float64) []float64 { return slices.Repeat([]float64{m}, n) }

func TestSteadySmeltNarrows(t *testing.T) {
	before := math.Inf(1)
	for _, n := range []int{1, 2, 3, 5, 10, 30} {
		d := light()
		due := d.due(t, d.charged(60, even(n, 14)...))
		if width(due.Next) >= before {
			t.Errorf("after %d even intervals the band is %.2f min wide, %.2f before", n, width(due.Next), before)
		}
		before = width(due.Next)
		if n >= settled && due.Next.Minutes.P50 != 14 {
			t.Errorf("after %d intervals of 14 min the next is expected in %v", n, due.Next.Minutes.P50)
		}
		if due.Intervals != n || slices.Contains(due.Doubts, FewIntervals) != (n < settled) {
			t.Errorf("%d intervals: %+v", n, due)
		}
	}
}

// Before the fourth interval the prior is worth half an interval.
func TestColdStart(t *testing.T) {
	if _, ok := Next(light().state(60)); ok {
		t.Error("a forecast before the first charge")
	}
	d := light()
	at := d.charged(60)
	for n, want := range []float64{
		shared.Prior, (shared.Prior/2 + 20) / 1.5, (shared.Prior/2 + 40) / 2.5, 20,
	} {
		due := d.due(t, at)
		if math.Abs(due.Next.Minutes.P50-want) > 1e-9 || math.Abs(due.Three.Minutes.P50-3*want) > 1e-9 {
			t.Errorf("after %d intervals of 20 min: %v and %v, want %v and three times that",
				n, due.Next.Minutes.P50, due.Three.Minutes.P50, want)
		}
		at += 20
		d.charge(at)
	}
}

func TestChangeOfAirBeginsANewLevel(t *testing.T) {
	noisy := []float64{15, 14, 16, 15, 15, 16, 14, 15}
	with := func(blasts ...entry.Blast) Due {
		d := light()
		d.key(50, blow(600))
		at := d.charged(60, noisy...)
		for _, b := range blasts {
			d.key(at+1, b)
		}
		at += 9
		d.charge(at)
		return d.due(t, at)
	}
	same := with()
	if same.Intervals != 9 || same.Next.Minutes.P50 < 13 {
		t.Errorf("one short interval by itself begins no level: %+v", same)
	}
	more := with(blow(900))
	if more.Intervals != 1 || more.Next.Minutes.P50 > 11.5 || !slices.Contains(more.Doubts, NewLevel) {
		t.Errorf("more blast and a short interval begin one: %+v", more)
	}
	if ear := with(entry.Blast{Gate: "D"}); ear.Intervals != 1 {
		t.Errorf("so does a blast of unknown volume: %+v", ear)
	}
	for _, tried := range []Due{with(blow(640)), with(blow(900), blow(600)), with(entry.Blast{State: entry.BlastOff}, entry.Blast{State: entry.BlastOn})} {
		if tried.Intervals != 9 {
			t.Errorf("a change that is small, undone or a stop begins none: %+v", tried)
		}
	}
}

func TestChangeOfAirThatChangesNothing(t *testing.T) {
	d := light()
	d.key(50, blow(600))
	at := d.charged(60, 15, 14, 16, 15)
	d.key(at+1, blow(900))
	if due := d.due(t, at+2); !slices.Equal(due.Doubts, []Doubt{BlastChanged}) || due.Intervals != 4 {
		t.Errorf("until the next charge it is a doubt: %+v", due)
	}
	d.charge(at + 15)
	if due := d.due(t, at+15); len(due.Doubts) > 0 || due.Intervals != 5 {
		t.Errorf("an interval as before keeps the level: %+v", due)
	}
}

func TestDoubts(t *testing.T) {
	for _, c := range []struct {
		ev   entry.Event
		want []Doubt
	}{
		{entry.Note{Text: "a note"}, nil},
		{entry.Rod{}, nil},
		{entry.Poke{}, []Doubt{Poked}},
		{entry.Tap{}, []Doubt{Tapped}},
		{entry.Tuyere{Angle: entry.Some(entry.Degree(20))}, []Doubt{TuyereChanged}},
		{entry.Pause{}, []Doubt{Paused}},
		{entry.Blast{State: entry.BlastOff}, []Doubt{BlastOff}},
		{blow(610), nil},
		{blow(800), []Doubt{BlastChanged}},
		{entry.Blast{Pressure: entry.Some(entry.Pascal(900))}, nil},
	} {
		d := light()
		d.key(50, blow(600))
		at := d.charged(60, even(5, 14)...)
		quiet := d.due(t, at+3)
		d.key(at+3, c.ev)
		if due := d.due(t, at+3); !slices.Equal(due.Doubts, c.want) || due.Next != quiet.Next {
			t.Errorf("%T: doubts %v, want %v", c.ev, due.Doubts, c.want)
		}
		if due := d.due(t, at+2); len(due.Doubts) > 0 {
			t.Errorf("%T: doubted before it happened: %v", c.ev, due.Doubts)
		}
		if _, poked := c.ev.(entry.Poke); poked {
			d.charge(at + 14)
			if due := d.due(t, at+14); len(due.Doubts) > 0 {
				t.Errorf("%T: doubted after the next charge: %v", c.ev, due.Doubts)
			}
		}
	}
}

func TestChargesWithinTwoMinutesAreOne(t *testing.T) {
	once, twice := light(), light()
	at := once.charged(60, even(6, 14)...)
	twice.charged(60, even(3, 14)...)
	for m := 60.0 + 3*14; m < at; m += 14 {
		twice.charge(m + 1.5)
		twice.charge(m + 14)
	}
	twice.charge(at + 2)
	if a, b := once.due(t, at+3), twice.due(t, at+3); a.Next != b.Next || a.Intervals != b.Intervals {
		t.Errorf("keyed in two goes %+v, in one %+v", b, a)
	}
	twice.charge(at + 2.1)
	if due := twice.due(t, at+3); due.Intervals != 7 {
		t.Errorf("more than two minutes after the first is another: %+v", due)
	}
}

func TestGapsTeachLittle(t *testing.T) {
	level := func(gap float64, during ...entry.Event) Due {
		d := light()
		at := d.charged(60, even(5, 14)...)
		for i, ev := range during {
			d.key(at+10+20*float64(i), ev)
		}
		at += gap
		d.charge(at)
		return d.due(t, at)
	}
	if due := level(45, entry.Pause{}, entry.Resume{}); due.Next.Minutes.P50 != 14 || due.Intervals != 5 {
		t.Errorf("an interval with a pause teaches nothing: %+v", due)
	}
	if due := level(45, entry.Blast{State: entry.BlastOff}, blow(600)); due.Next.Minutes.P50 != 14 || due.Intervals != 5 {
		t.Errorf("nor one with the blast off: %+v", due)
	}
	missed, week := level(Missed*14), level(7*24*60)
	if missed.Next != (Ahead{missed.Next.From, week.Next.Minutes}) {
		t.Errorf("a week counts for no more than %v usual intervals: %v, %v", Missed, week.Next.Minutes, missed.Next.Minutes)
	}
}

func TestNothingIsDueInTheBurnDown(t *testing.T) {
	d := light()
	at := d.charged(60, even(5, 14)...)
	d.key(at+5, entry.BurnDown{})
	if due, ok := Next(d.state(at + 6)); ok {
		t.Errorf("due in the burn-down: %+v", due)
	}
}

func TestLeftRoundsOutwards(t *testing.T) {
	a := Ahead{From: minutes(100)}
	a.Minutes.P10, a.Minutes.P50, a.Minutes.P90 = 10.9, 13.4, 16.1
	if low, mid, high := a.Left(minutes(105)); low != 5 || mid != 8 || high != 12 {
		t.Errorf("5.9, 8.4, 11.1 min left shown as %d, %d, %d", low, mid, high)
	}
	if low, _, high := a.Left(minutes(117)); low != -7 || high != 0 {
		t.Errorf("passed by 6.1 and 0.9 min shown as %d, %d", low, high)
	}
}

// Whatever was keyed: the percentiles are in order, lie after the last charge
// and are numbers, and the clock's beginning does not matter.
func TestAnySmelt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shift := rapid.Float64Range(0, 5000).Draw(t, "shift")
		var here, there day
		here.key(0, entry.Light{UID: "u"})
		there.key(0, entry.Light{UID: "u"})
		at := 0.0
		for range rapid.IntRange(1, 40).Draw(t, "acts") {
			at += rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0, 3), rapid.Float64Range(5, 30),
				rapid.Float64Range(0, 1e7)).Draw(t, "after")
			ev := rapid.SampledFrom([]entry.Event{
				blow(600), blow(900), blow(0), entry.Blast{}, entry.Blast{State: entry.BlastOn}, entry.Poke{},
				entry.Tap{}, entry.Pause{}, entry.Resume{}, entry.Fill{}, nil, nil, nil, nil, nil, nil, nil,
			}).Draw(t, "act")
			for _, p := range []struct {
				d  *day
				at float64
			}{{&here, at}, {&there, at + math.Round(shift)}} {
				if ev == nil {
					p.d.charge(p.at)
				} else {
					p.d.key(p.at, ev)
				}
			}
		}
		s := here.state(at)
		due, ok := Next(s)
		if ok != (len(s.Charges) > 0) {
			t.Fatalf("%d charges, forecast: %v", len(s.Charges), ok)
		}
		moved, _ := Next(there.state(at + math.Round(shift)))
		if !ok {
			return
		}
		for _, a := range []Ahead{due.Next, due.Three} {
			b := a.Minutes
			if !(0 < b.P10 && b.P10 <= b.P50 && b.P50 <= b.P90 && b.P90 < math.Inf(1)) {
				t.Fatalf("%+v", b)
			}
			p10, p50, p90 := a.At()
			if p10 < a.From || p10 > p50 || p50 > p90 {
				t.Fatalf("%v %v %v after %v", p10, p50, p90, a.From)
			}
			if last := s.Charges[len(s.Charges)-1].At; a.From > s.At || last-a.From > between.Together {
				t.Fatalf("counts from %v, the last charge was at %v", a.From, last)
			}
		}
		if due.Next.Minutes != moved.Next.Minutes || due.Three.Minutes != moved.Three.Minutes ||
			due.Intervals != moved.Intervals || !slices.Equal(due.Doubts, moved.Doubts) {
			t.Fatalf("shifted by %v min: %+v became %+v", shift, due, moved)
		}
	})
}

// Nothing burns without blast (common practice): the next charge is due later by
// the time that it was off, and no nearer while it is.
func TestTimeWithoutBlastMovesTheNextCharge(t *testing.T) {
	due := func(minute float64, turns ...float64) Due {
		d := light()
		d.key(50, blow(600))
		last := d.charged(60, 12, 12, 12, 12, 12)
		for i, at := range turns {
			d.key(last+at, entry.Blast{State: []entry.BlastState{entry.BlastOff, entry.BlastOn}[i%2]})
		}
		next, ok := Next(d.state(last + minute))
		if !ok {
			t.Fatal("no forecast")
		}
		return next
	}
	usual := due(5).Next
	for name, c := range map[string]struct {
		got  Due
		want time.Duration
	}{
		"off for eleven minutes":         {due(18, 6, 17), 11 * time.Minute},
		"off since four minutes":         {due(10, 6), 4 * time.Minute},
		"off since ten":                  {due(16, 6), 10 * time.Minute},
		"off twice":                      {due(18, 2, 5, 8, 10), 5 * time.Minute},
		"off before the last charge":     {due(5, -3, -1), 0},
		"off over the last charge":       {due(5, -3, 2), 2 * time.Minute},
		"on again when it never was off": {due(5, 2, 2), 0},
	} {
		if moved := c.got.Next.From - usual.From; moved != c.want || c.got.Three.From != c.got.Next.From {
			t.Errorf("%s: moved by %v, want %v", name, moved, c.want)
		}
	}
}

func BenchmarkNext60(b *testing.B) {
	d := light()
	d.key(50, blow(600))
	var after []float64
	for i := range 59 {
		after = append(after, 13+float64(i%4))
	}
	s := d.state(d.charged(60, after...))
	if len(s.Charges) != 60 {
		b.Fatalf("%d charges", len(s.Charges))
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := Next(s); !ok {
			b.Fatal("no forecast")
		}
	}
}
