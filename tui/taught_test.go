package tui_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/theme"
)

// What own smelts teach is copied into the light of the next one; practice keeps nothing.
func TestTheLightKeepsWhatWasTaught(t *testing.T) {
	lit := desk.Noon.Wall.Add(-72 * time.Hour)
	book := desk.Memory{"2026-05-06-reedhollow-a": {
		{Version: entry.Version, Stream: "2026-05-06-reedhollow-a", Seq: 1, Happened: entry.Wall(lit), Event: entry.Light{UID: "a", Furnace: entry.Furnace{Name: "Reed Hollow"}, Lots: []entry.Lot{{Name: "pond", What: entry.Ore, Mix: "reed", Moisture: entry.Some(entry.Share(0))}}}},
		{Version: entry.Version, Stream: "2026-05-06-reedhollow-a", Seq: 2, Happened: entry.Wall(lit.Add(time.Hour)), Event: entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}, {What: entry.Ore, Lot: "pond", Mass: entry.Some(entry.Kilogram(10))}}}},
		{Version: entry.Version, Stream: "2026-05-06-reedhollow-a", Seq: 3, Happened: entry.Wall(lit.Add(2 * time.Hour)), Event: entry.Extract{None: true}},
	}}
	d := desk.SitAt(t, book, desk.Noon, theme.Theme{})
	d.Press("r", "right", "pgdown", "up") // the next to begin with is a starter with measures
	d.Write("MK")
	d.Press("pgdown", "enter", "y")
	if got := d.M.Running().Light().Taught; got == nil || got.Smelts != 1 || got.Failures != 1 {
		t.Errorf("the light keeps %+v\n%s", got, d.Picture())
	}
	practice := desk.Practising(t)
	if got := practice.M.Running().Light().Taught; got != nil {
		t.Errorf("practice keeps %+v", got)
	}
}
