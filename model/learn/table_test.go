package learn_test

import (
	"os"
	"path/filepath"
	"testing"

	"chargehand/model/learn"
	"chargehand/persist/smeltcsv"
)

// table reads a table of testdata.
func table(t *testing.T, name string) []learn.Smelt {
	t.Helper()
	f, err := os.Open(filepath.Join("../../testdata/smelts", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	read, err := smeltcsv.Read(f, name)
	if err != nil {
		t.Fatal(err)
	}
	return read.Smelts
}

// from leaves out the smelts with less ore, kg.
func from(least float64, smelts []learn.Smelt) []learn.Smelt {
	kept, _ := learn.From(least, smelts)
	return kept
}

// The forecasts of the published tables, each from the rows before it, score
// hardly worse than one band for all (goal: at most 1.05 of it on tables of
// under 30 rows, where few smelts have any of their own before them).
func TestPublishedTables(t *testing.T) {
	for _, c := range []struct {
		name   string
		smelts []learn.Smelt
		blooms int
	}{
		{"smelts.csv from 9 kg", from(9, table(t, "smelts.csv")), 21},
		{"smelts.csv", table(t, "smelts.csv"), 22},
		{"series.csv", table(t, "series.csv"), 16},
	} {
		h := learn.Score(learn.Trials(c.smelts))
		t.Logf("%s: %d blooms, in band %.2f (fixed %.2f), width %.3f (%.3f), error %.3f (%.3f), score %.4f (%.4f), of the fixed band's %.3f; none: %d smelts, Brier %.3f, base %.3f",
			c.name, h.N, h.InBand, h.Fixed.InBand, h.Width, h.Fixed.Width, h.MeanError, h.Fixed.MeanError,
			h.IntervalScore, h.Fixed.IntervalScore, h.IntervalScore/h.Fixed.IntervalScore, h.None.N, h.None.Brier, h.None.Base)
		if h.N != c.blooms {
			t.Errorf("%s: %d blooms, counted by hand %d", c.name, h.N, c.blooms)
		}
		if h.IntervalScore > 1.05*h.Fixed.IntervalScore {
			t.Errorf("%s: score %.4f, more than 1.05 of %.4f", c.name, h.IntervalScore, h.Fixed.IntervalScore)
		}
	}
}
