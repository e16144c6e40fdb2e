package columns_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"chargehand/model/columns"
	"chargehand/model/entry"
)

// A guess goes by the name and its unit, else by the figures; what a name does not say
// plainly is left to whoever looks.
func TestGuesses(t *testing.T) {
	for _, c := range []struct {
		head  string
		cells []string
		want  string
		why   columns.Why
	}{
		{"Time of day", []string{"10:00", "10:12"}, "clock", columns.ByName},
		{"Time", []string{"11:40", "12:10", "1:05"}, "clock:12h", columns.ByName},
		{"Time", []string{"22:40", "0:10"}, "clock", columns.ByName},
		{"Time", []string{"8:00", "7:50", "8:10"}, "clock", columns.ByName}, // a slip: at 19:50 nothing had stood in it for half a day
		{"Minutes", []string{"0", "12", "25"}, "clock:min", columns.ByName},
		{"Elapsed (h)", []string{"0", "0.2", "0.5"}, "clock:h", columns.ByName},
		{"t", []string{"10:00", "10:12"}, "clock", columns.ByFigures},
		{"Date", []string{"9/5/2026"}, "date:d/m/y", columns.ByName},
		{"Date", []string{"9/25/2026"}, "date:m/d/y", columns.ByName},
		{"day", []string{"2026-05-09"}, "date", columns.ByName},
		{"Coal, lb", []string{"4", "4.2"}, "charcoal:lb", columns.ByName},
		{"charcoal_kg", []string{"1.8"}, "charcoal:kg", columns.ByName},
		{"Charcoal", []string{"1800", "1900"}, "charcoal:g", columns.ByFigures},
		{"ore", []string{"2", "2.5"}, "ore:kg", columns.ByName},
		{"Ore (oz)", []string{"40"}, "ore:oz", columns.ByName},
		{"Ore total lb", []string{"4", "8"}, "", columns.RunsUp},
		{"Scoops of ore", []string{"4"}, "scoops", columns.ByName},
		{"Buckets", []string{"1"}, "measures", columns.ByName},
		{"Blower", []string{"16", "17"}, "air:cfm", columns.ByFigures},
		{"Airflow m³/h", []string{"43"}, "air:m3/h", columns.ByName},
		{"Air (psi)", []string{"3"}, "", columns.OtherUnit},
		{"Blower", []string{"low", "high", "high"}, "note", columns.ByFigures},
		{"Air temp", []string{"12"}, "", columns.NotKnown},
		{"Temperature", []string{"2200", "2350"}, "temp:F", columns.ByFigures},
		{"Temp °C", []string{"1200"}, "temp:C", columns.ByName},
		{"Stack height in", []string{"20"}, "height:in", columns.ByName},
		{"Height", []string{"0.5"}, "height:m", columns.ByFigures},
		{"What", []string{"charge"}, "event", columns.ByName},
		{"Remarks", []string{"windy"}, "note", columns.ByName},
		{"Moon", []string{"full"}, "", columns.NotKnown},
		{"", []string{"3"}, "", columns.NotKnown},
	} {
		rows := make([][]string, len(c.cells))
		for i, cell := range c.cells {
			rows[i] = []string{cell}
		}
		g := columns.Guesses([]string{c.head}, rows, false)[0]
		got := g.Mapped.Ours
		if u := g.Mapped.Unit; u != "" {
			got += ":" + u
		}
		if got != c.want || g.Why != c.why {
			t.Errorf("%q with %q: %s by %d, want %s by %d", c.head, c.cells, got, g.Why, c.want, c.why)
		}
	}
}

// Two columns that say the same are not both taken, and what was guessed is a mapping that
// can be written out and read again.
func TestGuessesAreAMapping(t *testing.T) {
	heads := []string{"Time", "Coal, lb", "Coal bags lb", "Ore", "Remarks", "Seen"}
	gs := columns.Guesses(heads, [][]string{{"10:00", "4", "9", "2", "a", "b"}}, false)
	if gs[2].Why != columns.Twice || gs[2].Mapped.Ours != "" {
		t.Errorf("%+v", gs[2])
	}
	m := columns.Mapping(heads, gs)
	spec := columns.Written(heads, m)
	again, err := columns.Parse(spec)
	if err != nil || len(again) != len(m) || again["Coal, lb"] != (entry.Mapped{Ours: "charcoal", Unit: "lb"}) {
		t.Errorf("%s: %v %v", spec, again, err)
	}
	kept, ok := columns.Kept(heads, map[string]entry.Mapping{
		"small": {Name: "small", Columns: map[string]entry.Mapped{"time": {Ours: "clock"}, "Ore": {Ours: "ore", Unit: "kg"}}},
		"whole": {Name: "whole", Columns: m},
		"other": {Name: "other", Columns: map[string]entry.Mapped{"Time": {Ours: "clock"}, "Erz": {Ours: "ore", Unit: "kg"}}},
	})
	if !ok || kept.Name != "whole" {
		t.Errorf("%v %v", kept, ok)
	}
}

// A day is read in the order that was said, and nothing else is made one.
func TestDays(t *testing.T) {
	for _, c := range [][3]string{
		{"9/5/2026", "d/m/y", "2026-05-09"}, {"9/5/2026", "m/d/y", "2026-09-05"}, {"9.5.26", "d/m/y", "2026-05-09"},
		{"31/4/2026", "d/m/y", "31/4/2026"}, {"9/5/2026", "", "9/5/2026"}, {"May 9", "d/m/y", "May 9"},
	} {
		if got := columns.Day(c[0], c[1]); got != c[2] {
			t.Errorf("%q by %s: %q", c[0], c[1], got)
		}
	}
}

func TestNumbersWithThousands(t *testing.T) {
	for _, c := range []struct {
		cell    string
		decimal bool // comma
		want    float64
		is      bool
	}{
		{"1,900.5", false, 1900.5, true}, {"1,900.5", true, 1900.5, true}, {"1.900,5", true, 1900.5, true}, {"1.900,5", false, 1900.5, true},
		{"1,900", false, 1900, true}, {"1,900", true, 1.9, true}, {"1.900", true, 1.9, true}, {"1,234,567", false, 1234567, true},
		{"1'900.5", false, 1900.5, true}, {"1 900,5", true, 1900.5, true}, {"1\u00a0900,5", true, 1900.5, true}, {"-1,900.5", false, -1900.5, true},
		{"1,9", false, 0, false}, {"1,9", true, 1.9, true}, {"19,00.5", false, 0, false}, {"1234,567.5", false, 0, false}, {"8.5.2026", false, 0, false}, {"9-5", false, 0, false}, {"", false, 0, false}, {"1.9", false, 1.9, true}, {".5", false, 0.5, true}, {"12 13", false, 0, false},
	} {
		v, is := columns.Number(c.cell, c.decimal)
		if is != c.is || is && math.Abs(v-c.want) > 1e-9 {
			t.Errorf("%q, decimal comma %v: %g, %v, want %g, %v", c.cell, c.decimal, v, is, c.want, c.is)
		}
	}
}

// What parts the columns does not say which sign is the decimal one where it is a tab.
func TestDecimalComma(t *testing.T) {
	for _, c := range []struct {
		between rune
		cells   []string
		want    bool
	}{
		{',', []string{"1.9"}, false}, {';', []string{"1,9"}, true}, {'\t', []string{"1,9", "12"}, true},
		{'\t', []string{"1,900", "1,850.5"}, false}, {'\t', []string{"1,900"}, true}, {'\t', []string{"08:00", "1.9"}, false},
	} {
		if got := columns.DecimalComma(c.between, [][]string{c.cells}); got != c.want {
			t.Errorf("%q %v: %v", c.between, c.cells, got)
		}
	}
}

// Spreadsheets keep a time as the share of a day: 0.3333 is eight in the morning, and 46151 is 9 May
// 2026 (day 1 is 1 January 1900, counted with a 29 February that year had not: common practice).
func TestTimesAsSharesOfADay(t *testing.T) {
	for cell, want := range map[string]string{"0.3333": "08:00:00", "0.375": "09:00:00", "0": "00:00:00", "0.9999": "23:59:00", "0.347233796": "08:20:01", "46151.3333": "2026-05-09 08:00:00"} {
		secs, date, ok := columns.ShareOfDay(cell, false)
		if got := strings.TrimSpace(date + fmt.Sprintf(" %02d:%02d:%02d", secs/3600, secs/60%60, secs%60)); !ok || got != want {
			t.Errorf("%s is %q, want %q", cell, got, want)
		}
	}
	for _, cell := range []string{"1.5", "24", "600", "-0.2", "noon"} {
		if _, _, ok := columns.ShareOfDay(cell, false); ok {
			t.Errorf("%s is a share of a day", cell)
		}
	}
	unit := func(head string, cells ...string) string {
		var rows [][]string
		for _, c := range cells {
			rows = append(rows, []string{c, "1.9"})
		}
		return columns.Guesses([]string{head, "charcoal"}, rows, false)[0].Mapped.Unit
	}
	for _, c := range []struct {
		head, want string
		cells      []string
	}{
		{"Time", "day", []string{"0.3333", "0.3403", "0.9993", "0.0035"}}, {"Time", "day", []string{"46151.3333", "46151.34"}},
		{"Time", "h", []string{"0", "0.5", "1.25"}}, {"Elapsed (h)", "h", []string{"0", "0.25", "0.5"}}, {"Minutes", "min", []string{"0", "10", "95"}},
	} {
		if got := unit(c.head, c.cells...); got != c.want {
			t.Errorf("%s %v is read as %q, want %q", c.head, c.cells, got, c.want)
		}
	}
}
