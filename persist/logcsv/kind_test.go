package logcsv

import (
	"slices"
	"testing"

	"chargehand/model/entry"
)

// The kinds that the table of kinds gives a place here are those with rows.
func TestTheKindsWithAPlaceHaveRows(t *testing.T) {
	for _, k := range entry.Kinds() {
		written := entry.TraitsOfKind(k).CSV.Written() && k != entry.KindLight
		if _, ok := writers[k]; ok != written {
			t.Errorf("%s: the table of kinds says %q", k, entry.TraitsOfKind(k).CSV)
		}
	}
	for k := range writers {
		if !slices.Contains(entry.Kinds(), k) {
			t.Errorf("rows for %s, which is no kind", k)
		}
	}
}

// Wall and weather are notes in words.
func TestWallAndWeatherAreNotes(t *testing.T) {
	for want, ev := range map[string]entry.Event{
		"wall: patched, at the tuyere, wet clay":  entry.WallSeen{What: entry.WallPatched, Where: "at the tuyere", With: "wet clay"},
		"weather: rain heavy, wind gusts, 8.5 °C": entry.Weather{Rain: entry.RainHeavy, Wind: entry.WindGusts, Air: entry.Some(entry.Celsius(8.5))},
	} {
		if rows := rowsOf(ev, vessels{}); len(rows) != 1 || rows[0].note != want {
			t.Errorf("%+v, want %q", rows, want)
		}
	}
}
