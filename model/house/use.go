package house

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Use is what one smelt took from the stores and said of them, what it was lit in and by,
// and what is said in it of its bloom.
type Use struct {
	Smelt   string    `json:"smelt"`          // its stream
	UID     string    `json:"uid"`            // the smelt's
	Lit     time.Time `json:"light,omitzero"` // zero where its day is not this house's: a log from elsewhere
	Furnace entry.UID `json:"furnace,omitempty"`
	Plan    entry.UID `json:"plan,omitempty"` // by which it was lit
	Takes   []Taken   `json:"takes,omitempty"`
	Bloom   []OfBloom `json:"bloom,omitempty"`
}

// OfBloom is one thing said of a bloom in a smelt's own stream: a weighing, or a
// heat as the first version wrote it.
type OfBloom struct {
	At      time.Time                   `json:"at"`
	Piece   entry.UID                   `json:"piece,omitempty"` // where the weighing names one
	Weighed entry.Maybe[entry.Kilogram] `json:"weighed_kg,omitzero"`
	State   entry.PieceState            `json:"state,omitempty"`
	Heat    *entry.ForgeHeat            `json:"heat,omitempty"`
}

// Taken is a lot drawn on, or counted again, at one moment of a smelt.
type Taken struct {
	At    time.Time `json:"at"`
	Lot   entry.UID `json:"lot"`
	Dry   Mass      `json:"dry"`
	Count bool      `json:"count,omitempty"` // what there is, instead of what was taken
}

// briefly is for how long what is taken of a lot counts as taken at once.
const briefly = time.Hour

// Brief is the same with what was taken of a lot within an hour taken together, at the
// first of it, so that a long smelt is told in few lines.
func (u Use) Brief() Use {
	var brief []Taken
	last := map[entry.UID]int{} // the line of a lot that may still grow
	for _, t := range u.Takes {
		i, open := last[t.Lot]
		if !open || t.Count || t.At.Sub(brief[i].At) > briefly {
			if last[t.Lot] = len(brief); t.Count {
				delete(last, t.Lot)
			}
			brief = append(brief, t)
			continue
		}
		brief[i].Dry = brief[i].Dry.Plus(t.Dry)
	}
	u.Takes = brief
	return u
}

// UsedBy gives what a smelt used, from all its entries. A smelt that burned
// nothing of the house (practice, an invented one, a rehearsal) used nothing.
func UsedBy(entries []entry.Entry) Use {
	if len(entries) == 0 {
		return Use{}
	}
	u := Use{Smelt: entries[0].Stream}
	c := fold.Trace(entries, fold.All, fold.Latest(entries))
	u.UID = c.Light.UID
	if l := c.Light; c.Phase == "" || l.Practice || l.Invented || l.Rehearsal {
		return u
	}
	if l := c.Light; l.Plan != nil {
		u.Plan = l.Plan.ID()
	}
	if l := c.Light; !l.Imported && !l.Undated {
		u.Lit, u.Furnace = c.Lit, l.Furnace.UID
	}
	lots := append([]entry.Lot(nil), c.Light.Lots...)
	lines := fold.InForce(entries, fold.All)
	named := map[string]bool{}
	for _, line := range lines {
		for _, ref := range entry.LotsIn(line.Event) {
			named[ref] = true
		}
		if w, ok := line.Event.(entry.Weigh); ok {
			named[w.Name] = true
		}
	}
	for _, line := range lines {
		at := c.Lit.Add(line.At)
		for _, p := range entry.PartsIn(line.Event) {
			u.Takes = append(u.Takes, taken(&c, lots, p, line.At, at)...)
		}
		switch ev := line.Event.(type) {
		case entry.ForgeHeat:
			u.Bloom = append(u.Bloom, OfBloom{At: at, Heat: &ev})
		case entry.LotStored:
			if named[string(ev.Lot.ID())] || named[ev.Lot.Name] { // else what named it was crossed out
				lots = append(lots, ev.Lot)
			}
		case entry.Weigh:
			if ev.What == entry.WeighBloom && !ev.Closed {
				u.Bloom = append(u.Bloom, OfBloom{At: at, Piece: ev.Piece, Weighed: entry.Some(ev.Mass), State: ev.State})
			}
			if ev.What == entry.WeighLot && !ev.Closed {
				i := LotNamed(lots, ev.Name)
				if i < 0 {
					i, lots = len(lots), append(lots, entry.Lot{Name: ev.Name})
				}
				u.Takes = append(u.Takes, counted(lots[i], ev.Mass, at))
			}
		}
	}
	return u
}

func counted(l entry.Lot, kg entry.Kilogram, at time.Time) Taken {
	return Taken{At: at, Lot: l.ID(), Dry: DryOf(l, kg), Count: true}
}

// DryOf is the dry mass of so much of a lot, weighed as it lies.
func DryOf(l entry.Lot, kg entry.Kilogram) Mass {
	return dried(Mass{Kg: float64(kg), SD: scaleSD * float64(kg)}, moistureOf(l))
}

// Weight is what a dry mass of a lot weighs as it lies: with its water.
func Weight(l entry.Lot, dry float64) float64 { return dry * (1 + moistureOf(l)) }

// taken is what a part of a charge draws on.
func taken(c *fold.Timeline, lots []entry.Lot, p entry.Part, smelt time.Duration, at time.Time) []Taken {
	if p.None() {
		return nil
	}
	from := PartLots(lots, p)
	if len(from) == 0 && p.Lot != "" { // named, but not as it was lit
		return []Taken{{At: at, Lot: idOf(p.Lot), Dry: DryPart(c, entry.Lot{Name: p.Lot}, p, smelt)}}
	}
	ts := make([]Taken, len(from))
	for i, n := range from {
		ts[i] = Taken{At: at, Lot: lots[n].ID(), Dry: Some}
		if len(from) == 1 {
			ts[i].Dry = DryPart(c, lots[n], p, smelt)
		}
	}
	return ts
}

// DryPart is the dry mass of a part that went in at a moment of a smelt, being of
// a lot.
func DryPart(c *fold.Timeline, of entry.Lot, p entry.Part, at time.Duration) Mass {
	p.Lot = of.Name
	if of.UID != "" {
		p.Lot = string(of.UID)
	}
	m, _ := c.PartOf(p, at)
	if m.Dry.Unknown {
		return Some
	}
	return Mass{Kg: m.Dry.Kg, SD: sqrt(m.Dry.Variance())}
}

// PartLots are the lots, by their place among those given, that a part of a
// charge may be of: the one it names by uid or name, else every one of its
// material. Of several nobody knows which.
func PartLots(lots []entry.Lot, p entry.Part) []int {
	if p.Lot != "" {
		if i := LotNamed(lots, p.Lot); i >= 0 {
			return []int{i}
		}
		return nil
	}
	var of []int
	for i, l := range lots {
		if l.What == p.What && LotNamed(lots, string(l.ID())) == i {
			of = append(of, i)
		}
	}
	return of
}

// LotNamed finds a lot by its uid, then by its name; -1 for none. What was said
// last comes first.
func LotNamed(lots []entry.Lot, ref string) int {
	for _, is := range []func(entry.Lot) bool{
		func(l entry.Lot) bool { return string(l.ID()) == ref },
		func(l entry.Lot) bool { return l.Name == ref },
	} {
		for i := len(lots) - 1; i >= 0; i-- {
			if is(lots[i]) {
				return i
			}
		}
	}
	return -1
}

// idOf is the uid in a reference that may be a uid or a bare name.
func idOf(ref string) entry.UID {
	if u := entry.UID(ref); u.Valid() {
		return u
	}
	return entry.NameUID(ref)
}

// moistureOf is the moisture of a lot on its dry mass: its own, else the usual.
func moistureOf(l entry.Lot) float64 {
	if l.Moisture.Known {
		return float64(l.Moisture.Value)
	}
	usual, _ := fold.UsualMoisture(l.What)
	if l.What == "" {
		usual, _ = fold.UsualMoisture(entry.What(l.Material))
	}
	return usual
}
