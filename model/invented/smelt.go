// Package invented holds one invented smelt to look at.
package invented

import (
	"time"

	"chargehand/model/entry"
)

// ID names the invented smelt.
const ID = "2026-05-09-reed-hollow-demo"

// row is one line of the smelt: when it was keyed, and, when that
// differs, when it happened.
type row struct {
	keyed, happened string
	event           entry.Event
}

// Smelt gives the invented smelt, marked so in its first entry: nobody smelted it.
// It has what a day has: a slow start, a bucket that was weighed late, a charge
// entered twice and crossed out, one put in late, a tuyere to rod, a tap.
func Smelt() ([]entry.Entry, error) {
	zone := time.FixedZone("", 2*60*60)
	clock := func(s string) (time.Time, error) {
		t, err := time.ParseInLocation("2006-01-02 15:04:05", "2026-05-09 "+s, zone)
		return entry.Wall(t), err
	}
	var entries []entry.Entry
	lit, err := clock(rows[0].keyed)
	if err != nil {
		return nil, err
	}
	by := "MK"
	for i, r := range rows {
		keyed, err := clock(r.keyed)
		if err != nil {
			return nil, err
		}
		happened := keyed
		if r.happened != "" {
			if happened, err = clock(r.happened); err != nil {
				return nil, err
			}
		}
		entries = append(entries, entry.Entry{
			Version: entry.Version, Stream: ID, Seq: uint64(i + 1), Happened: happened, Kept: keyed,
			Boot: "invented", Mono: time.Hour + keyed.Sub(lit), By: by, Screen: "fire", Event: r.event,
		})
		if h, ok := r.event.(entry.HandOver); ok {
			by = h.To
		}
	}
	return entries, nil
}

// Light is what the invented smelt was lit with: its furnace, measures and lots.
func Light() entry.Light { return rows[0].event.(entry.Light) }

func buckets(n entry.Count) entry.Part {
	return entry.Part{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(n)}
}

func scoops(n entry.Count) entry.Part {
	return entry.Part{What: entry.Ore, Lot: "pond meadow", Measure: "scoop", Count: entry.Some(n)}
}

func charge(parts ...entry.Part) entry.Charge { return entry.Charge{Parts: parts} }

func next(parts ...entry.Part) entry.Recipe { return entry.Recipe{Next: parts} }

func metered(lMin entry.LitrePerMinute, gate string) entry.Blast {
	return entry.Blast{Volume: entry.Some(lMin), Gate: gate}
}

func ref(seq uint64) entry.Ref { return entry.Ref{Seq: seq} }

var rows = []row{
	{"08:40:00", "", entry.Light{
		UID: "invented-reed-hollow", Invented: true,
		Furnace: entry.Furnace{
			Name: "Reed Hollow", Bore: entry.Some(entry.Centimetre(26)), Stack: entry.Some(entry.Centimetre(52)),
			Rim: entry.Some(entry.Centimetre(57)), TuyereBase: entry.Some(entry.Centimetre(16)),
			TuyereAngle: entry.Some(entry.Degree(20)), TuyereBore: entry.Some(entry.Millimetre(22)),
			TuyereProud: entry.Some(entry.Centimetre(4)), Wall: entry.Some(entry.Centimetre(6)), Practice: entry.SlagBowl,
		},
		Measures: []entry.Measure{
			{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8)), Guessed: true},
			{Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(0.5))},
		},
		Lots: []entry.Lot{
			{Name: "pond meadow", What: entry.Ore, Mass: entry.Some(entry.Kilogram(34)), Moisture: entry.Some(entry.Share(0.04)), Iron: entry.Some(entry.Share(0.54))},
			{Name: "hornbeam", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(75))},
		},
		Recipe: entry.Parts{buckets(1)},
	}},
	{"08:40:20", "", entry.PhaseSet{Phase: entry.Preheat}},
	{"08:41:00", "", entry.Note{Text: "split birch, gentle fire, wall still dark at the back"}},
	{"09:25:00", "", entry.Blast{State: entry.BlastOn, Gate: "2"}},
	{"10:05:00", "", entry.Fill{Parts: entry.Parts{buckets(4)}}},
	{"10:06:30", "", metered(610, "5")},
	{"10:07:00", "", entry.Look{At: entry.AtTopGas, Sees: "alight"}},
	{"10:31:00", "", charge(buckets(1))},
	{"10:44:10", "", charge(buckets(1))},
	{"10:45:00", "", entry.Look{At: entry.AtPeep, Sees: "yellow"}},
	{"10:56:40", "", charge(buckets(1))},
	{"11:02:00", "", metered(700, "7")},
	{"11:08:20", "", charge(buckets(1))},
	{"11:10:00", "", entry.Look{At: entry.AtPeep, Sees: "white"}},
	{"11:12:00", "", next(buckets(1), scoops(2))},
	{"11:19:30", "", charge(buckets(1), scoops(2))},
	{"11:30:40", "", charge(buckets(1), scoops(2))},
	{"11:41:10", "", charge(buckets(1), scoops(2))},
	{"11:52:00", "", charge(buckets(1), scoops(2))},
	{"11:53:10", "", charge(buckets(1), scoops(2))},
	{"11:53:30", "", entry.Strike{Target: ref(20)}},
	{"11:54:00", "", entry.Note{Text: "pressed twice, once for real"}},
	{"12:02:30", "", charge(buckets(1), scoops(2))},
	{"12:05:00", "", next(buckets(1), scoops(3))},
	{"12:12:40", "", charge(buckets(1), scoops(3))},
	{"12:20:00", "", entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 1.9, Why: entry.Fuller}},
	{"12:23:10", "", charge(buckets(1), scoops(3))},
	{"12:33:40", "", charge(buckets(1), scoops(3))},
	{"12:34:30", "", entry.Dip{BelowRim: entry.Some(entry.Centimetre(6))}},
	{"12:55:00", "12:43:50", charge(buckets(1), scoops(3))},
	{"12:55:30", "", charge(buckets(1), scoops(3))},
	{"12:58:00", "", next(buckets(1), scoops(4))},
	{"13:06:00", "", charge(buckets(1), scoops(4))},
	{"13:16:10", "", charge(buckets(1), scoops(4))},
	{"13:20:00", "", entry.HandOver{To: "TO"}},
	{"13:26:50", "", charge(buckets(1), scoops(4))},
	{"13:38:30", "", charge(buckets(1), scoops(4))},
	{"13:50:10", "", entry.Look{At: entry.AtPeep, Sees: "dim"}},
	{"13:50:50", "", entry.Rod{}},
	{"13:51:20", "", entry.Look{At: entry.AtPeep, Sees: "white"}},
	{"13:52:00", "", charge(buckets(1), scoops(4))},
	{"14:02:20", "", charge(buckets(1), scoops(4))},
	{"14:06:00", "", entry.Look{At: entry.AtSound, Sees: "gurgle"}},
	{"14:08:00", "", entry.Arch{Open: true}},
	{"14:09:00", "", entry.Tap{Mass: entry.Some(entry.Kilogram(2.6))}},
	{"14:11:00", "", entry.Arch{}},
	{"14:14:40", "", charge(buckets(1), scoops(4))},
	{"14:25:10", "", charge(buckets(1), scoops(4))},
	{"14:36:00", "", charge(buckets(1), scoops(5))},
	{"14:46:30", "", charge(buckets(1), scoops(5))},
	{"14:47:00", "", entry.LastOre{}},
	{"14:57:10", "", charge(buckets(1))},
	{"14:58:00", "", entry.BurnDown{}},
	{"15:20:00", "", metered(450, "4")},
	{"15:28:00", "", entry.Extract{From: "top"}},
	{"15:55:00", "", entry.Weigh{What: entry.WeighBloom, Mass: 5.6}},
	{"15:57:00", "", entry.Weigh{What: entry.WeighFragments, Mass: 0.9}},
	{"16:10:00", "", entry.PhaseSet{Phase: entry.Closed}},
}
