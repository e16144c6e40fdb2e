// Package week holds the invented week before the invented smelt, from digging to the morning.
package week

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/invented"
	"chargehand/model/learn"
	"chargehand/model/plan"
)

// Things of the invented week.
const (
	dugOre   entry.UID = "1d00000000000001"
	ore      entry.UID = "1d00000000000002"
	oreFines entry.UID = "1d00000000000003"
	wood     entry.UID = "1d00000000000004"
	charcoal entry.UID = "1d00000000000005"
	brands   entry.UID = "1d00000000000006"
	dust     entry.UID = "1d00000000000007"
	furnace  entry.UID = "1d00000000000008"
	bucket   entry.UID = "1d00000000000009"
	scoop    entry.UID = "1d0000000000000a"
	planned  entry.UID = "1d0000000000000b"
)

// plannedOre is the ore that the invented plan is for, kg dry: what there is of it, less a
// reserve.
const plannedOre = 30

// Morning is the morning of the invented smelt, up to which its week goes.
func Morning() time.Time {
	return time.Date(2026, 5, 9, 7, 45, 0, 0, time.FixedZone("", 2*60*60))
}

// Entries gives the invented house in the week before the invented smelt: ore dug, roasted,
// assayed and sieved, charcoal burnt, a furnace built and dried, a plan made, and the list
// before lighting gone through on the morning. Nobody did any of it. It is for looking at
// and goes into no book.
func Entries() []entry.Entry {
	w := keying{at: time.Date(2026, 4, 24, 9, 0, 0, 0, Morning().Location())}
	w.measures()
	w.stores()
	w.furnace()
	w.plan()
	return w.all
}

type keying struct {
	at  time.Time
	all []entry.Entry
}

// on sets the clock to a day and hour of the week: days before the morning.
func (w *keying) on(before, hour int) {
	m := Morning()
	w.at = time.Date(m.Year(), m.Month(), m.Day()-before, hour, 0, 0, 0, m.Location())
}

// keep keeps what one key says.
func (w *keying) keep(at string, evs ...entry.Event) {
	group := ""
	if len(evs) > 1 {
		group = "invented " + w.at.Format(time.RFC3339)
	}
	for _, ev := range evs {
		e := entry.Entry{Version: entry.Version, Stream: entry.House, Seq: uint64(len(w.all) + 1), Happened: entry.Wall(w.at), Kept: entry.Wall(w.at), Boot: "invented", By: "MK", Screen: at, Group: group, Event: ev}
		e.Mono = time.Hour
		if len(w.all) > 0 {
			e.Mono += w.at.Sub(w.all[0].Kept)
		}
		w.all = append(w.all, e)
		w.at = w.at.Add(2 * time.Second)
	}
	w.at = w.at.Add(20 * time.Minute)
}

func (w *keying) measures() {
	w.keep("stores", entry.MeasureNamed{Measure: entry.Measure{UID: bucket, Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}})
	w.keep("stores", entry.MeasureNamed{Measure: entry.Measure{UID: scoop, Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(0.5))}})
}

// of is so much of a lot, as a scale shows it, with its moisture on the dry mass.
func of(lot entry.UID, kg, moisture float64) entry.Amount {
	return entry.Amount{Lot: lot, Mass: entry.Some(entry.Kilogram(kg)), Moisture: entry.Some(entry.Share(moisture))}
}

func (w *keying) stores() {
	made := func(uid entry.UID, name string, m entry.Material, what entry.What, moisture float64) entry.LotStored {
		return entry.LotStored{Lot: entry.Lot{UID: uid, Name: name, Material: m, What: what, Moisture: entry.Some(entry.Share(moisture))}}
	}
	w.on(14, 9)
	dug := made(dugOre, "pond meadow, as dug", entry.LotOre, entry.Ore, 0.5)
	dug.Lot.Origin, dug.Lot.Mix = "invented: under the turf of the pond meadow", "pond meadow"
	w.keep("stores", dug, entry.Deed{Does: entry.Dug, Out: []entry.Amount{of(dugOre, 71, 0.5)}, People: entry.Some(entry.Count(2)), Hours: entry.Some(entry.Hour(5))})
	w.on(12, 11)
	roasted := made(ore, "pond meadow", entry.LotOre, entry.Ore, 0.04)
	roasted.Lot.Mix = "pond meadow"
	w.keep("stores", roasted, entry.Deed{Does: entry.Roasted, In: []entry.Amount{of(dugOre, 60, 0.5)}, Out: []entry.Amount{of(ore, 37, 0.04)}, Hours: entry.Some(entry.Hour(4)), Weather: "dry, light wind"})
	w.on(11, 10)
	fines := made(oreFines, "pond meadow, under 3 mm", entry.LotOre, entry.Ore, 0.04)
	fines.Lot = house.AsFines(fines.Lot)
	lump := roasted
	lump.Lot.Lump = entry.Some(entry.Millimetre(9))
	lump.Lot.Sizes = []entry.SizeShare{{Over: 3, Share: 1}}
	w.keep("stores", fines, entry.Deed{Does: entry.Sieved, In: []entry.Amount{of(ore, 37, 0.04)}, Out: []entry.Amount{of(ore, 34, 0.04), of(oreFines, 3, 0.04)}}, lump)
	w.on(4, 18)
	w.keep("stores", entry.Assay{Lot: ore, Basis: entry.AsRoasted, Parts: map[string]entry.Assayed{
		"Fe2O3": {Percent: 77.2}, "SiO2": {Percent: 12.1}, "Al2O3": {Percent: 3.2}, "CaO": {Percent: 1.4}, "MnO": {Percent: 2.6}, "P2O5": {Percent: 1.9},
	}, By: "invented"})
	w.on(13, 10)
	split := made(wood, "hornbeam, split", entry.LotWood, "", 0.22)
	split.Lot.Species = "hornbeam"
	w.keep("stores", split, entry.Deed{Does: entry.Bought, Out: []entry.Amount{of(wood, 620, 0.22)}})
	coal, left, dusty := made(charcoal, "hornbeam", entry.LotCharcoal, entry.Charcoal, 0.07), made(brands, "hornbeam, brands", entry.LotWood, "", 0.1), made(dust, "hornbeam, fines", entry.LotCharcoal, entry.Charcoal, 0.07)
	coal.Lot.Species, dusty.Lot = "hornbeam", house.AsFines(dusty.Lot)
	for i, burn := range []struct{ in, out, brands, dust float64 }{{310, 42, 9, 3}, {270, 37, 6, 2.5}} {
		w.on(10-3*i, 17)
		evs := []entry.Event{coal, left, dusty}[:3*(1-i)]
		w.keep("stores", append(evs, entry.Deed{Does: entry.Burnt, In: []entry.Amount{of(wood, burn.in, 0.22)},
			Out: []entry.Amount{of(charcoal, burn.out, 0.07), of(brands, burn.brands, 0.1), of(dust, burn.dust, 0.07)}, Hours: entry.Some(entry.Hour(7))})...)
	}
	w.on(1, 16)
	w.keep("stores", entry.Deed{Does: entry.CountedAgain, Out: []entry.Amount{of(charcoal, 77, 0.07)}})
	w.keep("stores", entry.Deed{Does: entry.CountedAgain, Out: []entry.Amount{of(ore, 34, 0.04)}})
}

func (w *keying) furnace() {
	w.on(13, 15)
	f := invented.Light().Furnace
	f.UID = furnace
	f.Clay = []entry.ShareOf{{What: "clay", Share: 0.4}, {What: "sand", Share: 0.5}, {What: "horse dung", Share: 0.1}}
	w.keep("furnace", entry.FurnaceBuilt{Furnace: f, Why: entry.Built})
	for _, d := range []struct {
		before, day, fires int
		cracks             string
	}{{9, 5, 0, ""}, {6, 8, 1, "hair cracks at the back, rubbed shut"}, {3, 11, 2, ""}, {2, 12, 2, "none new; no steam"}} {
		w.on(d.before, 19)
		w.keep("furnace", entry.Drying{Furnace: furnace, Day: entry.Some(entry.Count(d.day)), Fires: entry.Some(entry.Count(d.fires)), Weather: "dry", Cracks: d.cracks})
	}
	w.on(2, 20)
	f.Blower = []entry.Blast{{Volume: entry.Some(entry.LitrePerMinute(630))}}
	w.keep("furnace", entry.FurnaceBuilt{Furnace: f, Why: entry.Measured})
}

// plan is made of what the week has so far, as the program makes one.
func (w *keying) plan() {
	w.on(1, 17)
	h := house.Fold(w.all, nil, w.at)
	f, _ := h.Furnace(string(furnace))
	l, _ := h.Lot(string(ore))
	a := plan.Ask{}.FromHouse(h, &f, &l, learn.Lessons{})
	a.Want = plan.Want{What: entry.BloomPiece}.Of(a, plannedOre)
	p := plan.Of(a)
	e := p.Kept(h, plan.WayNames()[1])
	e.UID, e.Furnace, e.Name, e.Day, e.Begins = planned, string(furnace), "bloom of the invented smelt", Morning().Format(time.DateOnly), "08:40"
	w.keep("plan", e)
	w.keep("plan", entry.WallWords{Wall: []string{"invented: the far corner of the reed meadow", "112", "the stream, ten paces east", "the fire brigade, on Thursday"}})
	w.on(0, 7)
	for _, item := range []string{"somebody is named who closes", "water and a burn kit at hand", "carbon monoxide alarm on", "ore and charcoal dry and under cover", "bucket and scoop weighed", "blower and a spare tried", "fire ban and wind looked up"} {
		w.keep("plan", entry.PlanTicked{Plan: planned, Item: item, Done: true, By: "MK"})
		w.at = w.at.Add(-18 * time.Minute)
	}
}
