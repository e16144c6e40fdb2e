package house

import (
	"cmp"
	"math"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"chargehand/model/entry"
)

var lotIDs = []entry.UID{"00000000000000a1", "00000000000000a2", "name:heap"}

func anyAmount(t *rapid.T) entry.Amount {
	a := entry.Amount{Lot: rapid.SampledFrom(lotIDs).Draw(t, "lot")}
	switch rapid.IntRange(0, 4).Draw(t, "how") {
	case 0:
		a.Some = true
	case 1:
		a.Measure, a.Count = "bucket", entry.Some(entry.Count(rapid.IntRange(0, 9).Draw(t, "count")))
	default:
		a.Mass = kg(float64(rapid.IntRange(0, 400).Draw(t, "hg")) / 10)
	}
	if rapid.Bool().Draw(t, "damp") {
		a.Moisture = share(float64(rapid.IntRange(0, 60).Draw(t, "moisture")) / 100)
	}
	return a
}

func anyEvent(t *rapid.T) entry.Event {
	switch rapid.IntRange(0, 5).Draw(t, "kind") {
	case 0:
		return entry.LotStored{Lot: entry.Lot{UID: lotIDs[0], Name: "pond", What: entry.Ore, Mass: rapid.SampledFrom([]entry.Maybe[entry.Kilogram]{{}, kg(20)}).Draw(t, "mass"), Moisture: share(0.1)}}
	case 1:
		return entry.MeasureNamed{Measure: entry.Measure{Name: "bucket", What: entry.Ore, Mass: kg(float64(rapid.IntRange(1, 9).Draw(t, "bucket")))}}
	}
	return entry.Deed{Does: rapid.SampledFrom(entry.Choices[entry.Does]()).Draw(t, "does"),
		In: rapid.SliceOfN(rapid.Custom(anyAmount), 0, 2).Draw(t, "in"), Out: rapid.SliceOfN(rapid.Custom(anyAmount), 0, 2).Draw(t, "out")}
}

// alike compares what is left, but for how sums round.
func alike(t *rapid.T, a, b State) {
	t.Helper()
	near := func(x, y Mass) bool {
		return math.Abs(x.Kg-y.Kg) < 1e-6 && math.Abs(x.SD-y.SD) < 1e-6 && x.More == y.More && x.Less == y.Less
	}
	byID := func(ls []Lot) []Lot {
		return slices.SortedFunc(slices.Values(ls), func(a, b Lot) int { return cmp.Compare(a.ID, b.ID) })
	}
	as, bs := byID(a.Lots), byID(b.Lots)
	if len(as) != len(bs) {
		t.Fatalf("%d lots and %d", len(as), len(bs))
	}
	for i := range as {
		if as[i].ID != bs[i].ID || !near(as[i].Left, bs[i].Left) || !near(as[i].Came, bs[i].Came) || !near(as[i].Went, bs[i].Went) || len(as[i].Changes) != len(bs[i].Changes) {
			t.Fatalf("lot %s:\n%+v\n%+v", as[i].ID, as[i], bs[i])
		}
	}
}

// The house depends on what happened and when, not on when it was keyed; an
// entry that was crossed out might never have been.
func TestLateAndStruckLeaveNoTrace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		evs := rapid.SliceOfN(rapid.Custom(anyEvent), 1, 12).Draw(t, "events")
		order := rapid.Permutation(indices(len(evs))).Draw(t, "keyed in this order")
		entryOf := func(seq int, at int, ev entry.Event) entry.Entry {
			return entry.Entry{Version: 1, Stream: entry.House, Seq: uint64(seq), Happened: day.Add(time.Duration(at) * time.Hour), Event: ev}
		}
		first := entryOf(1, -1, entry.Note{Text: "the book begins"})
		straight, late := []entry.Entry{first}, []entry.Entry{first}
		for i, ev := range evs {
			straight = append(straight, entryOf(i+2, i, ev))
		}
		for n, i := range order {
			late = append(late, entryOf(n+2, i, evs[i]))
		}
		end := day.AddDate(0, 1, 0)
		want := Fold(straight, nil, end)
		alike(t, want, Fold(late, nil, end))
		struck := append(slices.Clone(straight), entryOf(len(straight)+1, 3, anyEvent(t)), entryOf(len(straight)+2, 50, entry.Strike{Target: entry.Ref{Seq: uint64(len(straight) + 1)}}))
		alike(t, want, Fold(struck, nil, end))
	})
}

func indices(n int) []int {
	is := make([]int, n)
	for i := range is {
		is[i] = i
	}
	return is
}
