package forge

import (
	"time"

	"chargehand/model/entry"
)

// Taken is what the forge took on the way to a piece: of the sessions on it and on what
// it was made of. What was done to a piece that was cut later is parted by mass among
// what was cut of it; crop ends bear nothing of it.
type Taken struct {
	Sessions float64 // how many, parts counted
	Heats    float64
	Hours    Sum
	Fuels    []Fuel // by what burned, as first met
	Costs    []Cost // by currency
}

// Sum is a sum of what was keyed, with of how many sessions it was.
type Sum struct {
	Of    float64
	Keyed float64 // sessions, parts counted
}

// Fuel is what burned, in kg.
type Fuel struct {
	What string // charcoal, coal, gas
	Sum
}

// Cost is money in one currency. It is never turned into another.
type Cost struct {
	Currency string
	Sum
}

func (s *Sum) add(v, part float64) { s.Of, s.Keyed = s.Of+v*part, s.Keyed+part }

// Taken is what the forge took on the way to a piece.
func (b Bench) Taken(i int) Taken { return b.takes[i] }

// taken lets every session flow from the piece that it was done to into what came of it.
func (b Bench) taken() []Taken {
	all := make([]Taken, len(b.Pieces))
	for i, p := range b.Pieces {
		for _, s := range p.Sessions {
			b.flow(i, s.At, s.Part, 0, func(i int, part float64) {
				t := &all[i]
				t.Sessions += part
				t.Heats += part * float64(s.Heats.Value)
				if s.Hours.Known {
					t.Hours.add(float64(s.Hours.Value), part)
				}
				if s.Fuel.Kg.Known {
					t.fuel(b.FuelOf(s.Fuel.What)).add(float64(s.Fuel.Kg.Value), part)
				}
				if s.Cost != nil {
					t.cost(s.Cost.Currency).add(float64(s.Cost.Amount), part)
				}
			})
		}
		if p.Cost != nil {
			b.flow(i, p.Made, 1, 0, func(i int, part float64) { all[i].cost(p.Cost.Currency).add(float64(p.Cost.Amount), part) })
		}
	}
	return all
}

func (t *Taken) fuel(what string) *Sum {
	for i := range t.Fuels {
		if t.Fuels[i].What == what {
			return &t.Fuels[i].Sum
		}
	}
	t.Fuels = append(t.Fuels, Fuel{What: what})
	return &t.Fuels[len(t.Fuels)-1].Sum
}

func (t *Taken) cost(currency string) *Sum {
	for i := range t.Costs {
		if t.Costs[i].Currency == currency {
			return &t.Costs[i].Sum
		}
	}
	t.Costs = append(t.Costs, Cost{Currency: currency})
	return &t.Costs[len(t.Costs)-1].Sum
}

// deepest bounds how far down a thing flows: a ring of pieces would have no end.
const deepest = 64

// flow gives part of something done to a piece to it, and on to what was made of it from
// then on.
func (b Bench) flow(i int, since time.Time, part float64, depth int, give func(int, float64)) {
	give(i, part)
	if depth > deepest {
		return
	}
	var into []int
	total, all := 0.0, true
	for _, k := range b.kids[i] {
		if p := b.Pieces[k]; p.Form != entry.CropEnd && !p.Made.Before(since) {
			kg, known := b.of(k, i)
			into, total, all = append(into, k), total+kg, all && known
		}
	}
	for _, k := range into {
		share := 1 / float64(len(into))
		if kg, _ := b.of(k, i); all && total > 0 {
			share = kg / total
		}
		b.flow(k, since, part*share, depth+1, give)
	}
}

// of is how much of a piece is of one of its sources, in kg of the piece as it came to be.
func (b Bench) of(k, source int) (kg float64, known bool) {
	p := b.Pieces[k]
	first, known := p.First()
	if len(b.Sources(k)) == 1 {
		return first, known
	}
	total, mine := 0.0, 0.0
	for _, from := range p.From {
		j, ok := b.at[from.Piece]
		if !ok {
			continue
		}
		took := float64(from.Mass.Value)
		if !from.Mass.Known {
			was := b.Pieces[j].Mass
			if known = known && was.Positive(); !known {
				return 0, false
			}
			took = float64(was.Value)
			if from.Share.Known {
				took *= float64(from.Share.Value)
			}
		}
		total += took
		if j == source {
			mine += took
		}
	}
	if total <= 0 {
		return 0, false
	}
	return first * mine / total, known
}
