package rule_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/rule"
)

// randomDay is any smelt that a person might key, sensible or not.
func randomDay(t *rapid.T) *day {
	l := entry.Light{Measures: []entry.Measure{bucketOf(1.9)}, Recipe: entry.Parts{buckets(1), ore(2)}}
	if rapid.Bool().Draw(t, "stored") {
		l.Lots = []entry.Lot{{Name: "bog ore", What: entry.Ore, Mass: entry.Some(entry.Kilogram(20))}}
	}
	d := newDay(l)
	at := 0.0
	for range rapid.IntRange(0, 80).Draw(t, "acts") {
		at += float64(rapid.IntRange(0, 900).Draw(t, "seconds")) / 60
		ago := 0.0
		if rapid.IntRange(0, 9).Draw(t, "late") == 0 {
			ago = float64(rapid.IntRange(0, 40).Draw(t, "minutes"))
		}
		d.late(at, max(0, at-ago), randomEvent(t, d, at))
	}
	return d
}

func randomEvent(t *rapid.T, d *day, at float64) entry.Event {
	amount := func() float64 { return float64(rapid.IntRange(0, 40).Draw(t, "amount")) / 10 }
	switch rapid.IntRange(0, 21).Draw(t, "event") {
	case 0:
		return entry.Fill{Parts: entry.Parts{coal(amount())}}
	case 1:
		return entry.Dip{AboveTuyere: cm(10 * amount())}
	case 2:
		return entry.Poke{}
	case 3:
		return blast(300 * amount())
	case 4:
		return entry.Blast{State: rapid.SampledFrom([]entry.BlastState{entry.BlastOn, entry.BlastOff}).Draw(t, "state")}
	case 5:
		return entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: entry.Kilogram(amount()), FromNow: rapid.Bool().Draw(t, "now")}
	case 6:
		return entry.Weigh{What: entry.WeighLot, Name: "bog ore", Mass: entry.Kilogram(5 * amount())}
	case 7:
		return entry.OreHeld{Again: rapid.Bool().Draw(t, "again")}
	case 8:
		target := entry.Ref{Seq: uint64(rapid.IntRange(1, len(d.entries)).Draw(t, "target"))}
		return entry.Level{Charge: target, Remark: entry.NotToMark}
	case 9:
		return rapid.SampledFrom([]entry.Event{entry.Pause{}, entry.Resume{}, entry.Rod{}, entry.Tap{}, entry.Tuyere{}}).Draw(t, "act")
	case 10, 11, 12:
		place := rapid.SampledFrom(entry.LookPlaces()).Draw(t, "place")
		return look(place, rapid.SampledFrom(entry.LookWords(place)).Draw(t, "sees"))
	case 13:
		return entry.Temperature{Degrees: entry.Celsius(1000 + 100*amount()), Where: entry.WherePeep}
	case 14:
		target := entry.Ref{Seq: uint64(rapid.IntRange(1, len(d.entries)).Draw(t, "target"))}
		return entry.Strike{Target: target}
	case 15:
		return rapid.SampledFrom([]entry.Event{entry.LastOre{}, entry.BurnDown{}, entry.ClockJump{ByMs: 60000}}).Draw(t, "rare")
	case 16:
		ws := d.walk(at)
		if len(ws) == 0 {
			return entry.Note{}
		}
		w := rapid.SampledFrom(ws).Draw(t, "warning")
		return entry.Acknowledge{Rule: string(w.Rule), OnsetMs: w.Onset.Milliseconds()}
	}
	return charge(buckets(1), ore(amount()))
}

// No rule flaps: it stands for half a minute at least, stays away for as long,
// and never stands twice at once.
func TestNoRuleFlaps(t *testing.T) {
	const dwell = 30 * time.Second
	rapid.Check(t, func(t *rapid.T) {
		d := randomDay(t)
		last := map[rule.ID]rule.Warning{}
		for _, w := range d.walk(d.last + 60) {
			if w.Onset%rule.Grid != 0 || w.Cleared%rule.Grid != 0 {
				t.Errorf("%s off the grid: %v to %v", w.Rule, w.Onset, w.Cleared)
			}
			if !w.Raised() && w.Cleared-w.Onset < dwell {
				t.Errorf("%s stood from %v to %v only", w.Rule, w.Onset, w.Cleared)
			}
			if before, ok := last[w.Rule]; ok && (before.Raised() || w.Onset-before.Cleared < dwell) {
				t.Errorf("%s raised at %v, and before that from %v to %v", w.Rule, w.Onset, before.Onset, before.Cleared)
			}
			last[w.Rule] = w
		}
	})
}

// What was raised and cleared by a moment is the same however far the walk
// goes on.
func TestAWalkIsTheBeginningOfALongerOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDay(t)
		known := uint64(rapid.IntRange(1, len(d.entries)).Draw(t, "known"))
		far := time.Duration(rapid.IntRange(0, int(d.last*60)+7200).Draw(t, "far")) * time.Second
		near := time.Duration(rapid.IntRange(0, int(far/time.Second)).Draw(t, "near")) * time.Second
		want := cutTo(d.walkKnown(known, near), near)
		got := cutTo(d.walkKnown(known, far), near)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("to %v, and to %v cut there (-near +far):\n%s", near, far, diff)
		}
	})
}

// cutTo is what a walk knew at an earlier moment, but for what was acknowledged, and for
// how grave what stands then is and what it rests on: these may have come later.
func cutTo(ws []rule.Warning, at time.Duration) []rule.Warning {
	var cut []rule.Warning
	for _, w := range ws {
		if w.Onset > at {
			continue
		}
		if w.Cleared > at {
			w.Cleared = 0
		}
		if w.Raised() {
			w.Grade, w.Evidence = rule.Note, nil
		}
		w.Acknowledged = false
		cut = append(cut, w)
	}
	return cut
}

// An entry that is not known yet changes nothing.
func TestAWalkKnowsNoLaterEntry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDay(t)
		known := rapid.IntRange(1, len(d.entries)).Draw(t, "known")
		at := clock(d.last)
		short := &day{entries: d.entries[:known]}
		if diff := cmp.Diff(short.walkKnown(fold.All, at), d.walkKnown(uint64(known), at)); diff != "" {
			t.Error(diff)
		}
	})
}

func TestActivePutsTheGravestFirst(t *testing.T) {
	d := steady().with(75, look(entry.AtSlag, entry.SlagStiff)).with(91, look(entry.AtSlag, entry.SlagStiff)).with(92, look(entry.AtPeep, entry.PeepDim)).
		with(93, entry.ClockJump{ByMs: 1}).with(94, entry.Blast{State: entry.BlastOff}).
		with(95, entry.Acknowledge{Rule: string(rule.SlagThick), OnsetMs: clock(75).Milliseconds()})
	var got []rule.ID
	for _, w := range rule.Active(d.walk(96)) {
		got = append(got, w.Rule)
		if w.Acknowledged != (w.Rule == rule.SlagThick) {
			t.Errorf("%s acknowledged: %v", w.Rule, w.Acknowledged)
		}
	}
	want := []rule.ID{rule.BlastLost, rule.TuyereDim, rule.SlagThick, rule.ClockJumped}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A charge overdue is acknowledged two seconds after it comes up, and the time of light is
// put right by any number of seconds: the same warning is acknowledged, and no other.
func TestAnAcknowledgementStaysWhenTheLightIsPutRight(t *testing.T) {
	for earlier := range 50 {
		d := steady().with(105+2./60, entry.Acknowledge{Rule: string(rule.ChargeOverdue), OnsetMs: clock(105).Milliseconds()})
		d.with(107, charge(coal(1.9))).with(140, entry.Note{Text: "late again"})
		d.key(141, entry.Amend{Target: entry.Ref{Seq: 1}, Happened: lit.Add(-time.Duration(20*earlier) * time.Second)})
		var seen []bool
		for _, w := range d.walk(141) {
			if w.Rule == rule.ChargeOverdue {
				seen = append(seen, w.Acknowledged)
			}
		}
		if diff := cmp.Diff([]bool{true, false}, seen); diff != "" {
			t.Errorf("light %d s earlier: %s", 20*earlier, diff)
		}
	}
}

// The charge overdue at 105 is acknowledged; then a late entry moves the onset.
func TestAnAcknowledgementOutlivesAMovedOnset(t *testing.T) {
	d := steady().with(106, entry.Acknowledge{Rule: string(rule.ChargeOverdue), OnsetMs: clock(105).Milliseconds()})
	d.late(107, 88, charge(coal(1.9)))
	for _, w := range d.walk(107) {
		if w.Rule == rule.ChargeOverdue && !w.Acknowledged {
			t.Errorf("raised at %v, not acknowledged", w.Onset)
		}
	}
}

// A smelt that nobody closed is left for a month.
func TestAWalkSleepsOverADayWithoutEntries(t *testing.T) {
	d := steady().with(60*24*30, look(entry.AtPeep, entry.PeepDark))
	var rules []rule.ID
	for _, w := range d.walk(60*24*30 + 1) {
		rules = append(rules, w.Rule)
	}
	want := []rule.ID{rule.ChargeOverdue, rule.EntryMissing, rule.TuyereBlocked}
	if diff := cmp.Diff(want, rules); diff != "" {
		t.Error(diff)
	}
}

func TestNoLightNoWarning(t *testing.T) {
	if ws := rule.Walk(fold.Timeline{}); ws != nil {
		t.Error(ws)
	}
}

// benchDay is 10 h and 500 entries: charges of a bucket and scoops one by one,
// looks, readings of the blast and notes between them.
func benchDay() *day {
	d := newDay(entry.Light{
		Measures: []entry.Measure{bucketOf(1.9), {Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(0.25))}},
		Lots:     []entry.Lot{{Name: "bog ore", What: entry.Ore, Mass: entry.Some(entry.Kilogram(60))}},
	}).with(10, entry.Fill{Parts: entry.Parts{coal(5)}})
	d.key(15, entry.Recipe{Ramp: []entry.RecipeStep{{Charges: 70, Parts: entry.Parts{buckets(1), ore(1)}}}})
	scoop := charge(entry.Part{What: entry.Ore, Measure: "scoop", Count: entry.Some(entry.Count(1))})
	for at := 20.0; len(d.entries) < 500; at += 10 {
		d.key(at, charge(buckets(1)))
		for i := range 4 {
			d.key(at+0.5+float64(i)/4, scoop)
		}
		d.with(at+3, blast(700)).with(at+6, look(entry.AtPeep, entry.PeepWhite)).with(at+7, entry.Dip{AboveTuyere: cm(38)}).with(at+8, entry.Note{Text: "n"})
	}
	return d
}

func BenchmarkWalk(b *testing.B) {
	d := benchDay()
	c := fold.Trace(d.entries, fold.All, clock(600))
	b.ReportMetric(float64(len(c.Charges)), "charges")
	for b.Loop() {
		rule.Walk(c)
	}
}

func BenchmarkTrace(b *testing.B) {
	d := benchDay()
	for b.Loop() {
		fold.Trace(d.entries, fold.All, clock(600))
	}
}

func BenchmarkFold(b *testing.B) {
	d := benchDay()
	for b.Loop() {
		fold.Fold(d.entries, fold.All, clock(600))
	}
}
