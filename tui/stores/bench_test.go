package stores

import (
	"fmt"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/cell"
	"chargehand/tui/screen"
)

// Opening the stores of a house of 500 lots, which a thousand smelts drew on: the house
// folded, and the screen painted.
func BenchmarkOpen(b *testing.B) {
	at := time.Date(2026, 1, 1, 8, 0, 0, 0, time.UTC)
	var j house.Journal
	id := func(n int) entry.UID { return entry.UID(fmt.Sprintf("%016x", n+1)) }
	add := func(ev entry.Event) {
		at = at.Add(time.Hour)
		j, _ = j.Add(entry.Entry{Version: 1, Stream: entry.House, Happened: at, Kept: at, Boot: "b", Mono: at.Sub(time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)), Event: ev})
	}
	for n := range 500 {
		l := entry.Lot{UID: id(n), Name: fmt.Sprint("lot ", n), What: entry.Ore, Material: entry.LotOre, Moisture: entry.Some(entry.Share(0.1))}
		if n%2 == 1 {
			l.What, l.Material = entry.Charcoal, entry.LotCharcoal
		}
		add(entry.LotStored{Lot: l})
		add(entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: id(n), Mass: entry.Some(entry.Kilogram(100))}}})
	}
	uses := make([]house.Use, 1000)
	for n := range uses {
		uses[n].Smelt = fmt.Sprint("smelt ", n)
		for hour := range 8 {
			for of := range 2 {
				uses[n].Takes = append(uses[n].Takes, house.Taken{At: at.Add(time.Duration(n*24+hour) * time.Hour), Lot: id((2*n + of) % 500), Dry: house.Mass{Kg: 3, SD: 0.1}})
			}
		}
	}
	for b.Loop() {
		state := j.Fold(uses)
		sh := &screen.Shared{W: 120, H: 36, House: func() house.State { return state }, Home: j}
		New().Paint(cell.New(120, 36, false), sh)
	}
}
