// Package shelf is the one summary of a smelt: what is shown of it in a list,
// looked for and learnt from without reading its entries.
package shelf

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/house"
)

// Rule counts the ways of making a summary. A stored one of another rule is made
// anew; it rises when a field is added or means something else.
const Rule = 9

// Summary is what the shelf shows of a smelt. It can be made from the entries at
// any time.
type Summary struct {
	ID         string                      `json:"id"` // which is also its stream
	UID        string                      `json:"uid"`
	Furnace    string                      `json:"furnace"`
	FurnaceUID entry.UID                   `json:"furnace_uid,omitempty"`
	Lit        time.Time                   `json:"light,omitzero"` // in the smelt's own offset
	Phase      entry.Phase                 `json:"phase"`
	Charges    int                         `json:"charges"`     // in force, that hold charcoal
	Charcoal   entry.Maybe[entry.Kilogram] `json:"charcoal_kg"` // charged, fill included
	Ore        entry.Maybe[entry.Kilogram] `json:"ore_kg"`      // charged
	OreDry     entry.Maybe[entry.Kilogram] `json:"ore_dry_kg,omitzero"`
	Mix        string                      `json:"mix,omitempty"` // the ore mix, where all ore charged is of one
	Bloom      entry.Maybe[entry.Kilogram] `json:"bloom_kg"`
	Lasted     time.Duration               `json:"lasted_ns,omitempty"`           // from light to the end, or to the last entry
	Day        []HalfHour                  `json:"day,omitempty"`                 // from light
	NoBloom    bool                        `json:"no_bloom,omitempty"`            // opened, and there was none
	BloomNever bool                        `json:"bloom_never_weighed,omitempty"` // it was said that it will not be weighed, and it was not
	SlagNever  bool                        `json:"slag_never_weighed,omitempty"`  // the same of its slag, or of the rest of it
	// The bloom as it was weighed loose, hot or cold, and as it was weighed compacted:
	// the two are never taken for one another.
	BloomLoose     entry.Maybe[entry.Kilogram] `json:"bloom_loose_kg,omitzero"`
	BloomCompacted entry.Maybe[entry.Kilogram] `json:"bloom_compacted_kg,omitzero"`
	// What went in and how, by which smelts are compared.
	Tried      string                            `json:"tried,omitempty"`       // what was tried this time
	Wanted     entry.Maybe[entry.Kilogram]       `json:"wanted_kg,omitzero"`    // by the plan that it was lit by
	Blast      entry.Maybe[entry.LitrePerMinute] `json:"blast_l_min,omitzero"`  // the middle of what blew while charges went in
	Interval   entry.Maybe[entry.Minute]         `json:"interval_min,omitzero"` // from charge to charge, the usual
	Rise       entry.Maybe[entry.Minute]         `json:"ore_rise_min,omitzero"` // from the first ore to the first charge of nine tenths of the most
	Slag       entry.Maybe[entry.Kilogram]       `json:"slag_kg,omitzero"`      // as weighed
	Practice   bool                              `json:"practice,omitempty"`    // set aside from the shelf
	Rehearsal  bool                              `json:"rehearsal,omitempty"`
	Invented   bool                              `json:"invented,omitempty"`
	Imported   bool                              `json:"imported,omitempty"`
	Undated    bool                              `json:"undated,omitempty"` // the day is unknown
	SourceHash string                            `json:"source_hash,omitempty"`
	Wall       []WallThen                        `json:"wall,omitempty"` // what was seen of it and done about it
	Used       house.Use                         `json:"used,omitzero"`  // of the stores, and what is said of its bloom
	Entries    uint64                            `json:"entries"`        // how many there are, those struck out included
	Head       string                            `json:"head"`           // hash of the last stored line
}

// WallThen is what was seen of the wall, or done about it, at a time of the day.
type WallThen struct {
	At   time.Time      `json:"at"`
	Seen entry.WallSeen `json:"seen"`
}

// In tells whether it was smelted in a furnace: by its uid, or by its name where the smelt
// keeps none.
func (s Summary) In(f entry.Furnace) bool {
	if s.FurnaceUID == "" || f.UID == "" {
		return s.Furnace != "" && s.Furnace == f.Name
	}
	return s.FurnaceUID == f.UID
}

// MayBurn tells whether its fire may burn still at a time: it was not closed, and the last
// that is known of it is no longer ago than so much.
func (s Summary) MayBurn(now time.Time, goesOut time.Duration) bool {
	ago := now.Sub(s.Lit.Add(s.Lasted))
	return s.Unfinished() && !s.Practice && !s.Rehearsal && !s.Undated && ago < goesOut && ago > -goesOut
}

// Ended is when it was over, zero while it is not or its day is unknown.
func (s Summary) Ended() time.Time {
	if s.Undated || s.Invented || s.Rehearsal || s.Practice || !s.Phase.Over() {
		return time.Time{}
	}
	return s.Lit.Add(s.Lasted)
}

// Light is as much of the light as a summary keeps: what counts and what does not.
func (s Summary) Light() entry.Light {
	return entry.Light{UID: s.UID, Practice: s.Practice, Rehearsal: s.Rehearsal, Invented: s.Invented, Imported: s.Imported, Undated: s.Undated, SourceHash: s.SourceHash}
}

// Unfinished tells whether the smelt is this house's own and can go on.
func (s Summary) Unfinished() bool { return !s.Imported && !s.Invented && !s.Phase.Over() }

// Teaches tells whether something can be learnt of the yield of an ore mix: a
// smelt of this house that is over, of a mix that is named, and of which is
// known what went in and what came out. Practice and what was never smelted
// teach nothing.
func (s Summary) Teaches() bool {
	return s.Mix != "" && s.Phase.Over() && s.OreDry.Positive() && (s.BloomLoose.Positive() || s.BloomCompacted.Positive() || s.NoBloom) && !s.Practice && !s.Rehearsal && !s.Invented
}

// Of makes the summary of a smelt from its entries. What the book alone knows,
// Entries and Head, is left to it.
func Of(stream string, entries []entry.Entry) Summary {
	s := From(stream, fold.Fold(entries, fold.All, fold.Latest(entries)))
	s.Used = house.UsedBy(entries).Brief()
	return s
}

// From makes the summary of a smelt from its state, which does not say what it used.
func From(stream string, s fold.State) Summary {
	l := s.Light
	sum := Summary{
		ID: stream, UID: l.UID, Furnace: l.Furnace.Name, FurnaceUID: l.Furnace.UID, Lit: s.Lit, Phase: s.Phase, Charges: len(s.Charges),
		Charcoal: known(s.Charcoal.Charged), Ore: known(s.Ore.Charged), Bloom: s.Bloom, BloomNever: s.BloomNever, Mix: mixOf(s),
		Practice: l.Practice, Rehearsal: l.Rehearsal, Invented: l.Invented, Imported: l.Imported, Undated: l.Undated, SourceHash: l.SourceHash,
	}
	sum.Day, sum.Lasted = dayOf(s)
	sum.went(s)
	if s.Phase != "" {
		sum.OreDry = known(s.Ore.Dry)
	}
	for line := range s.Lines.All() {
		switch ev := line.Event.(type) {
		case entry.WallSeen:
			sum.Wall = append(sum.Wall, WallThen{s.Lit.Add(line.At), ev})
		case entry.Extract:
			sum.NoBloom = ev.None
		case entry.Weigh:
			switch {
			case ev.What == entry.WeighSlag && ev.Closed:
				sum.SlagNever = true
			case ev.What != entry.WeighBloom || ev.Closed:
			case ev.State == entry.Compacted:
				sum.BloomCompacted = entry.Some(ev.Mass)
			default:
				sum.BloomLoose = entry.Some(ev.Mass)
			}
		}
	}
	return sum
}

// known is a mass, unless part of it is unknown.
func known(m fold.Mass) entry.Maybe[entry.Kilogram] {
	if m.Unknown {
		return entry.None[entry.Kilogram]()
	}
	return entry.Some(entry.Kilogram(m.Kg))
}

// mixOf is the mix that all the ore of a smelt is of: that of its lots, where
// they agree.
func mixOf(s fold.State) string {
	lots := append([]entry.Lot(nil), s.Light.Lots...)
	for line := range s.Lines.All() {
		if ev, ok := line.Event.(entry.LotStored); ok {
			lots = append(lots, ev.Lot)
		}
	}
	mix, any := "", false
	for line := range s.Lines.All() {
		for _, p := range entry.PartsIn(line.Event) {
			if p.What != entry.Ore || p.None() {
				continue
			}
			of := house.PartLots(lots, p)
			if len(of) == 0 {
				return ""
			}
			for _, i := range of {
				if any && lots[i].Mix != mix {
					return ""
				}
				mix, any = lots[i].Mix, true
			}
		}
	}
	return mix
}
