package solve_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/solve"
)

// tenHours is an invented smelt of ten hours in a taller shaft: fifty charges,
// about eighty layers.
func tenHours() *day {
	d := newDay(entry.Furnace{Bore: cm(25), Stack: cm(70), Wall: cm(6)}).key(entry.Fill{Parts: entry.Parts{buckets(3.5)}}).key(blast(700)).wait(10 * time.Minute)
	for i := range 50 {
		kg := 1.5
		if i < 6 {
			kg = 0
		}
		d.key(charge(buckets(1), ore(kg))).wait(708 * time.Second)
	}
	return d
}

func timeline(d *day, at time.Duration) fold.Timeline { return fold.Trace(d.entries, fold.All, at) }

// A smelt of ten hours solved from its entries: the fold's timeline, the events
// and every step.
func BenchmarkSolveTenHours(b *testing.B) {
	d := tenHours()
	layers := 0
	b.ReportAllocs()
	for b.Loop() {
		s := d.fresh(d.now)
		layers = len(s.Profile)
	}
	b.ReportMetric(float64(layers), "layers")
}

// One step of the live screen, without the timeline, which the screen's own
// reading costs as well.
func BenchmarkSolveStep(b *testing.B) {
	d := tenHours()
	var v solve.Solver
	c := timeline(d, d.now)
	v.Solve(&c)
	timelines := make([]fold.Timeline, 200)
	for i := range timelines {
		timelines[i] = timeline(d, d.now+time.Duration(i%100)*5*time.Second)
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		v.Solve(&timelines[i%100])
	}
}

// The timeline that a solution is read from.
func BenchmarkTimeline(b *testing.B) {
	d := tenHours()
	for b.Loop() {
		timeline(d, d.now)
	}
}

// One more charge at the end of the day.
func BenchmarkSolveOneMoreEntry(b *testing.B) {
	d := tenHours()
	more := *d
	more.key(charge(buckets(1), ore(1.5)))
	before, after := timeline(d, d.now), timeline(&more, d.now)
	var v solve.Solver
	b.ReportAllocs()
	for b.Loop() {
		v.Solve(&before)
		v.Solve(&after)
	}
}

// A charge one hour back is struck, and the strike struck.
func BenchmarkSolveStrikeAnHourBack(b *testing.B) {
	d := tenHours()
	struck := *d
	struck.key(entry.Strike{Target: entry.Ref{Seq: d.entries[len(d.entries)-6].Seq}})
	before, after := timeline(d, d.now), timeline(&struck, d.now)
	var v solve.Solver
	b.ReportAllocs()
	for b.Loop() {
		v.Solve(&before)
		v.Solve(&after)
	}
}
