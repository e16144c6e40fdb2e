package smeltcsv

import (
	"errors"
	"strings"
	"testing"

	"chargehand/model/learn"
	"chargehand/persist/logcsv"
)

func TestRead(t *testing.T) {
	table, err := Read(strings.NewReader(`# an invented table
id,source,date,ore_type,ore_fe_pct,ore_kg,bloom_kg,iron_slag_kg,note
1,"Reed Hollow, a page",1998-2000,red bog ore,50-60,20 (damp),4.1,,ore weighed damp
2,"Reed Hollow, another",2005-05-25 (listed),,,18-22,0,,
3,Mill,,limonite 5 + red 15,48,10,2,2.4,
4,Mill,2004,red,,,2,,ore not weighed
5,Mill,2004,red,,10,,,
6,Mill,2004,red,,100,30,,"NOT ONE RUN: typical figures"
`), "t.csv")
	if err != nil {
		t.Fatal(err)
	}
	if table.Left != (learn.LeftOut{NoSmelts: 1, Unknown: 2}) {
		t.Errorf("left out %+v", table.Left)
	}
	want := []learn.Smelt{
		{Date: "1998", Crew: "Reed Hollow", Mix: learn.Mix{"red bog ore": 1}, Ore: 20, Bloom: 4.1},
		{Date: "2005-05-25", Crew: "Reed Hollow", Ore: 20},
		{Crew: "Mill", Mix: learn.Mix{"limonite": 0.25, "red": 0.75}, Ore: 12.5, Bloom: 2},
	}
	if len(table.Smelts) != len(want) {
		t.Fatalf("%d smelts: %+v", len(table.Smelts), table.Smelts)
	}
	for i, w := range want {
		got := table.Smelts[i]
		if got.Date != w.Date || got.Crew != w.Crew || got.Ore != w.Ore || got.Bloom != w.Bloom || len(got.Mix) != len(w.Mix) || len(w.Mix) > 0 && !got.Mix.Same(w.Mix) {
			t.Errorf("row %d: %+v, want %+v", i+1, got, w)
		}
	}
}

// Without a column for it the mix is the ore that the notes name.
func TestMixFromNotes(t *testing.T) {
	table, err := Read(strings.NewReader(`team,furnace,ore_kg,bloom_kg,notes
a,pit,10,2,"no 1; roasted bog ore A6 C4; printed ore:charcoal 1:1.9"
a,pit,10,2,"experiment 32; DD1 55 % Fe; 6.9 min per kg charcoal and per kg ore"
a,pit,10,2,"60 lb ore + 8 lb fluff"
a,"pit, YEAR TOTAL",210,62,21 runs
`), "t.csv")
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []learn.Mix{{"a": 0.6, "c": 0.4}, {"dd1": 1}, nil} {
		if got := table.Smelts[i].Mix; len(got) != len(want) || len(want) > 0 && !got.Same(want) {
			t.Errorf("row %d: %v, want %v", i+1, got, want)
		}
	}
}

func TestReadWithSemicolons(t *testing.T) {
	table, err := Read(strings.NewReader("\ufeffore_kg;bloom_kg;team\r\n20;4,5;a\r\n"), "t.csv")
	if err != nil || len(table.Smelts) != 1 || table.Smelts[0].Bloom != 4.5 {
		t.Errorf("%+v, %v", table, err)
	}
}

// What is wrong is named by file, line and column.
func TestReadErrors(t *testing.T) {
	for text, want := range map[string]string{
		"":                              "no row of column names (t.csv line 1)",
		"ore_kg,date\n":                 "no column bloom_kg (t.csv line 1, column bloom_kg)",
		"ore_kg,bloom_kg,ore_kg\n":      "the column ore_kg stands twice (t.csv line 1, column ore_kg)",
		"ore_kg,bloom_kg\n1,2\n1x,2\n":  `"1x" is not a number (t.csv line 3, column ore_kg)`,
		"ore_kg,bloom_kg\n1,-2\n":       `"-2" is not a number (t.csv line 2, column bloom_kg)`,
		"ore_kg,bloom_kg\n1,1e99\n":     `"1e99" is not a number`,
		"ore_kg,bloom_kg\n1,9999999\n":  `is more than 100000 (t.csv line 2, column bloom_kg)`,
		"ore_kg,bloom_kg\n\n1,2,3\n":    "more or fewer cells than the first row has columns (t.csv line 3)",
		"ore_kg,bloom_kg\n\"1,2\n3,4\n": "a quote is left open",
		"ore_kg,bloom_kg\n" + strings.Repeat("1,2\n", maxRows+1): "more than 20000 rows",
		"# a\nore_kg,bloom_kg\n\n#b\nx,2\n":                      `(t.csv line 5, column ore_kg)`,
	} {
		table, err := Read(strings.NewReader(text), "t.csv")
		var e *logcsv.Error
		if !errors.As(err, &e) || !strings.Contains(err.Error(), want) || len(table.Smelts) > 0 {
			t.Errorf("%q: %v, want ... %s ...", text, err, want)
		}
	}
}
