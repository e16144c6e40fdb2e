package plan_test

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/plan"
)

// Of 50 kg of charcoal 4 fell through the sieve: of 30 kg that came unsieved another 8 per cent
// are taken off; what is sieved already, and a burn whose fines were weighed, is all there.
func TestFinesAreTakenOffWhatIsNotSieved(t *testing.T) {
	kg := func(id entry.UID, v float64) entry.Amount {
		return entry.Amount{Lot: id, Mass: entry.Some(entry.Kilogram(v))}
	}
	lot := func(name string, m entry.Material) entry.Lot {
		return entry.Lot{Name: name, Material: m, What: entry.What(m), Moisture: entry.Some(entry.Share(0))}
	}
	evs := []entry.Event{
		entry.LotStored{Lot: lot("alder", entry.LotCharcoal)}, entry.LotStored{Lot: lot("oak", entry.LotCharcoal)}, entry.LotStored{Lot: lot("burn", entry.LotCharcoal)},
		entry.LotStored{Lot: house.AsFines(lot("fines", entry.LotCharcoal))}, entry.LotStored{Lot: lot("wood", entry.LotWood)},
		entry.Deed{Does: entry.Bought, Out: []entry.Amount{kg("name:alder", 50)}},
	}
	fold := func() house.State {
		var j house.Journal
		at := time.Date(2026, 5, 1, 8, 0, 0, 0, time.UTC)
		for i, ev := range evs {
			at = at.Add(time.Hour)
			j, _ = j.Add(entry.Entry{Version: 1, Stream: entry.House, Seq: uint64(i + 1), Happened: at, Kept: at, Boot: "b", Mono: time.Duration(i) * time.Hour, Event: ev})
		}
		return j.Fold(nil)
	}
	left := func(want float64) {
		t.Helper()
		got, _, any := plan.Chargeable(fold(), entry.LotCharcoal)
		if !any || math.Abs(got.Kg-want) > 0.01 {
			t.Errorf("%.2f kg can be charged, want %.2f", got.Kg, want)
		}
	}
	left(50) // nobody ever sieved: nothing is made up
	evs = append(evs, entry.Deed{Does: entry.Sieved, In: []entry.Amount{kg("name:alder", 50)}, Out: []entry.Amount{kg("name:alder", 46), kg("name:fines", 4)}})
	left(46)
	evs = append(evs, entry.Deed{Does: entry.Bought, Out: []entry.Amount{kg("name:oak", 30)}})
	left(46 + 30*0.92)
	evs = append(evs, entry.Deed{Does: entry.Bought, Out: []entry.Amount{kg("name:alder", 10)}})
	left(46 + 40*0.92)
	evs = append(evs, entry.Deed{Does: entry.Sieved, In: []entry.Amount{kg("name:oak", 30)}, Out: []entry.Amount{kg("name:oak", 27.6), kg("name:fines", 2.4)}})
	left(46 + 27.6 + 10*0.92)
	evs = append(evs, entry.Deed{Does: entry.Burnt, In: []entry.Amount{kg("name:wood", 100)}, Out: []entry.Amount{kg("name:burn", 10), kg("name:fines", 1)}})
	left(46 + 27.6 + 10*0.92 + 10)
}
