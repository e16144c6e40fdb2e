package forecast

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"

	"chargehand/model/fold"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
)

// published are the ten logs of testdata/logs, whole; each names its source.
func published(t testing.TB) []Log {
	t.Helper()
	var logs []Log
	for name, entries := range logcsvtest.All(t, logcsv.Options{Stream: "s", UID: "u"}) {
		logs = append(logs, Log{Name: name, State: fold.Fold(entries, fold.All, fold.End(entries))})
	}
	slices.SortFunc(logs, func(a, b Log) int { return cmp.Compare(a.Name, b.Name) })
	return logs
}

// fit finds the figures of some logs anew. The level of some intervals hangs on
// the band (a change of air makes a new one when an interval lies clearly out),
// so it goes round until nothing moves.
func fit(logs []Log) fitted {
	f := shared
	for range 20 {
		before := f
		f = refit(logs, f)
		if f == before {
			break
		}
	}
	return f
}

func refit(logs []Log, f fitted) fitted {
	var usual, next, three, mean3 []float64
	var off [settled + 1][]float64
	for _, l := range logs {
		is := intervals(&l.State)
		var minutes []float64
		for _, i := range is {
			minutes = append(minutes, i.Minutes)
		}
		usual = append(usual, median(slices.Sorted(slices.Values(minutes))))
		p := newPace(f)
		for i := range is {
			far := offBy(minutes[i], p.level())
			off[min(i, settled)] = append(off[min(i, settled)], math.Abs(far))
			if i >= scoredFrom {
				next = append(next, far/p.scatter())
				mean3 = append(mean3, offBy(minutes[i], stat.Mean(minutes[i-3:i], nil)))
				if i+3 <= len(is) {
					three = append(three, offBy(minutes[i]+minutes[i+1]+minutes[i+2], 3*p.level())/p.scatter())
				}
			}
			p.take(is[i])
		}
	}
	f.Prior = median(slices.Sorted(slices.Values(usual)))
	for n := range off {
		f.Scatter[n] = stat.Mean(off[n], nil)
	}
	f.Next, f.Three, f.Mean3 = aheadOf(next), aheadOf(three), tailsOf(mean3)
	return f
}

// tailsOf are the 10th and 90th percentile of values, straight between
// neighbours.
func tailsOf(v []float64) tails {
	last := float64(len(v) - 1)
	return tailsAt(v, 0.1*last, 0.9*last)
}

// aheadOf are those between which the next value lies in eight of ten cases: of
// n values alike it lies below the k-th by k in n+1 (order statistics).
func aheadOf(v []float64) tails {
	next := float64(len(v) + 1)
	return tailsAt(v, 0.1*next-1, 0.9*next-1)
}

func tailsAt(v []float64, low, high float64) tails {
	v = slices.Sorted(slices.Values(v))
	at := func(x float64) float64 {
		i := max(0, min(len(v)-2, int(x)))
		return v[i] + (v[i+1]-v[i])*(x-float64(i))
	}
	return tails{at(low), at(high)}
}

// without is the fit to all logs but one.
func without(logs []Log) func(int) fitted {
	return func(i int) fitted { return fit(slices.Delete(slices.Clone(logs), i, i+1)) }
}
