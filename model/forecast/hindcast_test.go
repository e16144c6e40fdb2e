package forecast

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"

	"chargehand/model/fold"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
)

// The figures of the naive rules and of the plain rule were reckoned apart from
// this program on the same ten logs, by sums that are not kept: they hold the
// scorer to what it said then.
func TestScorerAgainstSumsReckonedApart(t *testing.T) {
	logs := published(t)
	var all int
	var last, plain, threePlain []float64
	for _, l := range logs {
		is := intervals(&l.State)
		all += len(is)
		for i := range is { // the plain rule: no stop or top-up left out, no new level
			is[i].Stopped, is[i].NewAir, is[i].Filled = false, false, false
		}
		for i, tr := range trials(shared, is) {
			last = append(last, math.Abs(tr.actual-is[i+scoredFrom-1].Minutes)/tr.mean)
			plain = append(plain, miss(tr.next, tr.actual)/tr.mean)
			if tr.hasThree {
				threePlain = append(threePlain, miss(tr.three, tr.actual3)/(3*tr.mean))
			}
		}
	}
	r := score(logs, without(logs))
	if all != 113 || r.Pooled.Intervals != 84 {
		t.Errorf("%d intervals, %d scored; reckoned apart 113 and 84", all, r.Pooled.Intervals)
	}
	for _, c := range []struct {
		what      string
		got, want float64 // %, but for minutes and the interval score
		decimals  float64
	}{
		{"last interval", 100 * stat.Mean(last, nil), 18.4, 1},
		{"mean of three", 100 * r.Pooled.Mean3Error.Value, 17.0, 1},
		{"mean of three in minutes", r.Pooled.Mean3Minutes.Value, 2.23, 2},
		{"halfway between mean of two and median", 100 * stat.Mean(plain, nil), 15.9, 1},
		{"mean of three, three ahead", 100 * r.Pooled.Mean3ThreeError.Value, 14.8, 1},
		{"halfway, three ahead", 100 * stat.Mean(threePlain, nil), 13.9, 1},
		{"interval score of mean of three", r.Pooled.Mean3IntervalScore.Value, 0.88, 2},
	} {
		if unit := math.Pow(10, c.decimals); math.Round(c.got*unit) != math.Round(c.want*unit) {
			t.Errorf("%s: %.4f, reckoned apart %v", c.what, c.got, c.want)
		}
	}
}

func TestFiguresAreTheFit(t *testing.T) {
	f := fit(published(t))
	t.Logf("fitted on the logs of testdata: prior %v, scatter %.3v, next from %.2f to %.2f, third from %.2f to %.2f of the middle", f.Prior, f.Scatter, f.Next.Low, f.Next.High, f.Three.Low, f.Three.High)
	if f.Prior != shared.Prior {
		t.Errorf("prior %v, fitted %v", shared.Prior, f.Prior)
	}
	for _, c := range []struct {
		what       string
		have, want float64
	}{
		{"scatter 0", shared.Scatter[0], f.Scatter[0]}, {"scatter 1", shared.Scatter[1], f.Scatter[1]},
		{"scatter 2", shared.Scatter[2], f.Scatter[2]}, {"scatter 3", shared.Scatter[3], f.Scatter[3]},
		{"next low", shared.Next.Low, f.Next.Low}, {"next high", shared.Next.High, f.Next.High},
		{"three low", shared.Three.Low, f.Three.Low}, {"three high", shared.Three.High, f.Three.High},
		{"mean3 low", shared.Mean3.Low, f.Mean3.Low}, {"mean3 high", shared.Mean3.High, f.Mean3.High},
	} {
		if math.Abs(c.have-c.want) > 0.01 {
			t.Errorf("%s is %v, fitted %.4f", c.what, c.have, c.want)
		}
	}
}

// What these logs can support, each smelt scored with figures fitted on the
// other nine.
func TestReachOnPublishedLogs(t *testing.T) {
	logs := published(t)
	p := score(logs, without(logs)).Pooled
	if got, most := p.ErrorCapped.Value, 0.96*p.Mean3ErrorCapped.Value; got > most {
		t.Errorf("capped error %.4f, want at most %.4f", got, most)
	}
	if got := p.Coverage.Value; got < 0.72 || got > 0.90 {
		t.Errorf("coverage %.3f, want 0.72 to 0.90", got)
	}
	if got, most := p.IntervalScore.Value, p.Mean3IntervalScore.Value; got > most {
		t.Errorf("interval score %.3f, that of the mean of three %.3f", got, most)
	}
	if got, most := p.ThreeError.Value, p.Mean3ThreeError.Value; got > most {
		t.Errorf("error three ahead %.3f, that of the mean of three %.3f", got, most)
	}
}

// A live forecast, made with no entry after its charge, is the one that the
// hindcast scores.
func TestLiveIsHindcast(t *testing.T) {
	for name, entries := range logcsvtest.All(t, logcsv.Options{Stream: "s", UID: "u"}) {
		whole := fold.Fold(entries, fold.All, fold.End(entries))
		is, trials := whole.Pace.Whole(), trials(shared, intervals(&whole))
		for i, tr := range trials {
			due, ok := Next(fold.Fold(entries, fold.All, is[i+scoredFrom].From))
			if !ok || due.Next.Minutes != tr.next || (tr.hasThree && due.Three.Minutes != tr.three) {
				t.Errorf("log %s, charge %d: live %+v, hindcast %+v", name, i+scoredFrom+1, due, tr)
			}
		}
	}
}

// An invented smelt of even intervals and one slip, reckoned by hand.
func TestScoreByHand(t *testing.T) {
	is := make([]interval, 5)
	for i := range is {
		is[i].Minutes = 10
	}
	is[4].Minutes = 20 // mean 12
	f := fitted{
		Prior: 10, Scatter: [settled + 1]float64{1, 1, 1, 1},
		Next: tails{offBy(0.85, 1), offBy(1.01, 1)}, Mean3: tails{offBy(0.5, 1), offBy(2, 1)},
	}
	// Fourth: off 0, so scatter the root of 2/3 after the third forecast hit, times 1 + 0.6606/3.
	// Fifth: the root of 2/4, times 1 + 0.6606/4.
	ts := trials(f, is)
	if len(ts) != 2 {
		t.Fatalf("%d trials, want 2", len(ts))
	}
	s := sumUp(ts)
	third, half := math.Sqrt(2.0/3)*(1+0.6606/3), math.Sqrt(2.0/4)*(1+0.6606/4)
	cubed := func(share, scatter float64) float64 { return 10 * math.Pow(1+scatter*(math.Cbrt(share)-1), 3) }
	low, high := cubed(0.85, half), cubed(1.01, half)
	fourth := cubed(1.01, third) - cubed(0.85, third)
	for _, c := range []struct {
		what      string
		got       Average
		want, eps float64
	}{
		{"error", s.Error, (0 + 10.0/12) / 2, 1e-12},
		{"capped", s.ErrorCapped, (0 + 0.5) / 2, 1e-12},
		{"minutes", s.Minutes, 5, 1e-12},
		{"coverage", s.Coverage, 0.5, 0},
		{"interval score", s.IntervalScore, (fourth + high - low + 10*(20-high)) / 12 / 2, 1e-4},
		{"of the reference", s.Mean3IntervalScore, 15.0 / 12, 1e-12}, // 5 to 20 holds both
	} {
		if !c.got.Known || math.Abs(c.got.Value-c.want) > c.eps {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	if got := covers(tails{offBy(0.99, 1), offBy(1.01, 1)}.around(10, 1), 11); got != 1 {
		t.Errorf("9.9 to 10.1 min is 9 to 11 in whole minutes, and holds 11")
	}
}

func TestReportOnTheWire(t *testing.T) {
	b, err := json.Marshal(Score([]Log{{Name: "short"}}))
	if err != nil {
		t.Fatal(err)
	}
	want := `{"logs":[{"log":"short","intervals":0,"error":null,"error_capped":null,"mean3_error":null,` +
		`"mean3_error_capped":null,"coverage":null,"interval_score":null,"mean3_interval_score":null,"minutes":null,`
	if !strings.HasPrefix(string(b), want) {
		t.Errorf("got %s\nwant %s...", b, want)
	}
	if b, _ := json.Marshal(Score(nil)); !strings.HasPrefix(string(b), `{"logs":[],"pooled":{"intervals":0,`) {
		t.Errorf("of no smelts: %s", b)
	}
}
