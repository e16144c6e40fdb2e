package figure

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

// rows reads a table of testdata, whose remark lines begin with #.
func rows(t *testing.T, name string) [][]string {
	f, err := os.Open(filepath.Join("../../testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment, r.FieldsPerRecord, r.LazyQuotes = '#', -1, true
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// The usual length of a burn-down holds in the published logs that name both
// its ends (Markewitz 2008, 2009 and 2016; testdata/logs).
func TestUsualBurnDownIsThatOfTheLogs(t *testing.T) {
	checked := 0
	for _, log := range []string{"01-vinland3-2009-11-07", "02-heltborg-2008-05-04", "03-norse-course-2016-11-30"} {
		var began, out time.Time
		for _, row := range rows(t, "logs/"+log+".csv") {
			at, _ := time.Parse("15:04", row[0])
			switch row[1] {
			case "burndown":
				began = at
			case "extract":
				out = at
			}
		}
		minutes := out.Sub(began).Minutes()
		if minutes < BurnDownLeast || minutes > BurnDownMost {
			t.Errorf("%s burned down for %v min", log, minutes)
		}
		checked++
	}
	if checked != 3 {
		t.Error("not every log was looked at")
	}
}

// No published bloom of a kilogram or more came of less ore
// (testdata/physics/published_blooms.csv, source in each row).
func TestLeastOreIsThatOfThePublishedBlooms(t *testing.T) {
	table := rows(t, "physics/published_blooms.csv")
	column := map[string]int{}
	for i, name := range table[0] {
		column[name] = i
	}
	least := 1e9
	for _, row := range table[1:] {
		ore, err := strconv.ParseFloat(row[column["ore_kg"]], 64)
		bloom, err2 := strconv.ParseFloat(row[column["bloom_kg"]], 64)
		if err == nil && err2 == nil && bloom >= 1 {
			least = min(least, ore)
		}
	}
	if least != float64(LeastOre) {
		t.Errorf("the least is %v kg of ore, not %v", least, LeastOre)
	}
}
