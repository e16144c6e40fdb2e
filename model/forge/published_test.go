package forge_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/model/forge"
	"chargehand/model/house"
	"chargehand/model/words"
)

var day = time.Date(2026, 5, 9, 12, 0, 0, 0, time.UTC)

func kg(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }

// keyed folds events of the house, an hour apart.
func keyed(evs ...entry.Event) house.State {
	var es []entry.Entry
	for i, ev := range evs {
		es = append(es, entry.Entry{Version: 1, Stream: entry.House, Seq: uint64(i + 1), Happened: day.Add(time.Duration(i) * time.Hour), Event: ev})
	}
	return house.Fold(es, nil, day.AddDate(1, 0, 0))
}

// Every published chain: its yield recomputed, and a doubt raised of what does not belong
// together in print, and of nothing else.
func TestPublishedChains(t *testing.T) {
	f, err := os.Open(filepath.Join("..", "..", "testdata", "forge", "chains.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	wanted := map[string][]doubt.Name{"lost": {doubt.PrintDisagrees}, "share": {doubt.PrintDisagrees}, "lost_share": {doubt.PrintDisagrees}, "density": {doubt.DenserThanIron}}
	says := map[string]string{
		"lost": "a loss of 0.091 kg in print: the masses differ by 0.805 kg", "share": "34 % in print: of the ore it is 29 %, so of what, 20.6 kg",
		"lost_share": "45 % in print is what was lost: 55 % of the ore is left", "density": "denser than iron",
	}
	doubted := 0
	for _, row := range rows[1:] {
		at := func(name string) string {
			for i, h := range rows[0] {
				if h == name {
					return row[i]
				}
			}
			t.Fatalf("no column %s", name)
			return ""
		}
		number := func(name string) (float64, bool) {
			v, err := strconv.ParseFloat(at(name), 64)
			return v, err == nil
		}
		from, _ := number("from_g")
		to, _ := number("to_g")
		source := entry.Piece{UID: "00000000000000a1", Form: entry.BloomPiece, WhereFrom: at("source"), Mass: kg(from / 1000)}
		made := entry.Piece{UID: "00000000000000a2", Form: entry.Billet, From: []entry.PieceFrom{{Piece: source.UID}}, Mass: kg(to / 1000)}
		printed := entry.Printed{Of: at("from_stage"), Mass: kg(from / 1000)}
		if v, ok := number("yield_pct"); ok {
			printed.Percent = entry.Some(entry.Percent(v))
		}
		if v, ok := number("lost_g"); ok {
			printed.Lost = kg(v / 1000)
		}
		made.Printed = []entry.Printed{printed}
		for _, side := range strings.Split(at("size_cm"), "x") {
			if v, err := strconv.ParseFloat(side, 64); err == nil {
				made.Size = append(made.Size, entry.Millimetre(10*v))
			}
		}
		b := forge.Of(keyed(source, made), nil)
		steps := b.Chain(b.Find(made.UID))
		want, _ := number("recomputed_pct")
		if len(steps) != 2 || math.Abs(100*steps[1].Share-want) > 0.0501 {
			t.Errorf("%s: %+v, want %v %%", at("id"), steps, want)
		}
		ds := doubt.InHouse(made, keyed(source))
		names := wanted[at("doubt")]
		if len(ds) != len(names) {
			t.Errorf("%s: doubts %+v, want %v", at("id"), ds, names)
		}
		for i, name := range names {
			doubted++
			if said := (words.Units{}).Doubt(ds[i]); ds[i].Name != name || !strings.Contains(said, says[at("doubt")]) {
				t.Errorf("%s: %s: %s", at("id"), ds[i].Name, said)
			}
		}
		if rs := b.Remarks(b.Find(made.UID)); len(rs) != len(names) {
			t.Errorf("%s: remarks %+v", at("id"), rs)
		}
	}
	if len(rows) < 25 || doubted != 6 {
		t.Errorf("%d rows, %d doubted", len(rows), doubted)
	}
}

// The share of slag by density as published for a piece of 5.0 g/cm3: 48 to 69 % without
// pores, 22 to 31 % with a fifth of pores, so a band of about 20 to 70 % (computed from
// the densities of iron and of slags of 3.6 to 4.3).
func TestSlagByDensityIsABand(t *testing.T) {
	low, high, known := forge.SlagIn(entry.PieceWeighed{Mass: 5, InWater: kg(4)})
	if !known || math.Abs(low-0.22) > 0.02 || math.Abs(high-0.69) > 0.02 {
		t.Errorf("%v to %v", low, high)
	}
	if _, _, known := forge.SlagIn(entry.PieceWeighed{Mass: 5}); known {
		t.Error("known though it was not weighed in water")
	}
	// A bar of 7.1 g/cm3, the median of one team's.
	if low, high, _ := forge.SlagIn(entry.PieceWeighed{Mass: 7.1, InWater: kg(6.1)}); low > 0.01 || high > 0.25 {
		t.Errorf("a bar: %v to %v", low, high)
	}
	d, _ := forge.DensityInWater(entry.PieceWeighed{Mass: 8, InWater: kg(7)})
	if !forge.TooDense(d) {
		t.Errorf("%v kg/m3 is no doubt", d)
	}
}
