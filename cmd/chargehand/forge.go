package main

import (
	"encoding/json"
	"fmt"

	"chargehand/model/entry"
	"chargehand/model/forge"
	"chargehand/model/words"
)

func forgeCommand() command {
	return command{name: "forge", does: words.ForgeDoes, setUp: wing{where: entry.OnForge, examples: forgeExamples}.setUp(func(w world, c common) error {
		h, err := theHouse(w, c)
		if err != nil {
			return err
		}
		b := forge.Of(h.State, h.smelts)
		if c.json {
			return json.NewEncoder(w.out).Encode(map[string]any{"pieces": piecesOf(b)})
		}
		_, err = fmt.Fprint(w.out, words.Forge(b))
		return err
	})}
}

// forgeExamples are invented: an old bloom cut in two, one half made a billet.
func forgeExamples() []entry.Event {
	mass := func(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }
	bloom, left, right, billet := entry.NameUID("old bloom"), entry.NameUID("old bloom, left"), entry.NameUID("old bloom, right"), entry.NameUID("old billet")
	heat := entry.Heat{Pieces: []entry.UID{left}}
	return []entry.Event{
		entry.Piece{UID: bloom, Form: entry.BloomPiece, Name: "old bloom", WhereFrom: "invented: a gift", Year: 2019, Mass: mass(2.7)},
		entry.PieceWeighed{Piece: bloom, Mass: 2.7, State: entry.Cold, InWater: mass(2.1)},
		entry.Piece{UID: left, Form: entry.HalfPiece, Name: "old bloom, left", From: []entry.PieceFrom{{Piece: bloom}}, Mass: mass(1.5)},
		entry.Piece{UID: right, Form: entry.HalfPiece, Name: "old bloom, right", From: []entry.PieceFrom{{Piece: bloom}}, Mass: mass(1.2)},
		heat,
		entry.ForgeSession{Pieces: []entry.UID{left}, Did: []entry.Forged{entry.Folded, entry.Welded}, Heats: entry.Some(entry.Count(4)), Hours: entry.Some(entry.Hour(2.5)), Fuel: entry.ForgeFuel{What: "charcoal", Kg: mass(6)}, Flux: mass(0.05), Cost: &entry.Cost{Amount: 12, Currency: "EUR"}},
		entry.Piece{UID: billet, Form: entry.Billet, Name: "old billet", From: []entry.PieceFrom{{Piece: left}}, Mass: mass(1.1), Size: []entry.Millimetre{25, 25, 230}},
		entry.PieceTested{Piece: billet, Place: "4 cm from the left end", Test: forge.Spark, Result: "long plain rays"},
		entry.PieceTested{Piece: billet, Place: "middle", Test: forge.File, Result: "bites"},
	}
}

// pieceJSON is a piece as JSON has it, indented under what it was made of by depth.
// Unknown is null.
type pieceJSON struct {
	UID     string       `json:"uid"`
	Kind    string       `json:"kind"`
	Name    string       `json:"name"`
	Depth   int          `json:"depth"`
	From    []string     `json:"from"`   // pieces
	Smelts  []string     `json:"smelts"` // the uids of those that iron of it is of
	Mass    *number      `json:"mass_kg"`
	First   *number      `json:"first_kg"` // when it came to be
	State   string       `json:"state"`
	EndsAs  string       `json:"ends_as,omitempty"`
	To      string       `json:"to,omitempty"`
	Heats   int          `json:"heats"`
	Yields  []pieceYield `json:"yields"`
	OfOre   *number      `json:"of_ore_dry"`
	IfAlike bool         `json:"if_the_rest_goes_alike,omitempty"`
	Took    takenJSON    `json:"took"` // at the forge on the way to it
	Tests   []testedJSON `json:"tests"`
	Metal   string       `json:"metal"`
	Slag    *[2]number   `json:"slag_share,omitempty"` // by density, a band
	Odd     []string     `json:"odd"`
	Costs   []pieceCost  `json:"costs,omitempty"`
}

type pieceYield struct {
	What  string  `json:"what"`
	Kg    number  `json:"kg"`
	Share *number `json:"share"`
	Base  string  `json:"base"`
	Part  bool    `json:"share_with_the_other_parts,omitempty"`
}

type takenJSON struct {
	Sessions number     `json:"sessions"`
	Hours    *number    `json:"hours"`
	Fuels    []fuelJSON `json:"fuels"`
}

type fuelJSON struct {
	What  string  `json:"what"`
	Kg    number  `json:"kg"`
	PerKg *number `json:"kg_per_kg"`
	Keyed number  `json:"keyed_sessions"`
}

type pieceCost struct {
	Currency string `json:"currency"`
	Amount   number `json:"amount"`
	Keyed    number `json:"keyed_sessions"`
}

type testedJSON struct {
	Test   string `json:"test"`
	Place  string `json:"place"`
	Result string `json:"result"`
	Note   string `json:"note,omitempty"`
}

func piecesOf(b forge.Bench) []pieceJSON {
	all := []pieceJSON{}
	for _, r := range b.Rows() {
		if r.Compacted == nil {
			all = append(all, pieceOf(b, r.At, r.Depth))
		}
	}
	return all
}

func pieceOf(b forge.Bench, i, depth int) pieceJSON {
	p := b.Pieces[i]
	j := pieceJSON{
		UID: string(p.UID), Kind: string(p.Form), Name: words.PieceCalled(b, i), Depth: depth, From: []string{}, Smelts: append([]string{}, b.Smelts(i)...),
		State: words.PieceState(b, i), EndsAs: string(p.EndsAs), To: p.To, Heats: p.AllHeats(), Yields: []pieceYield{}, Tests: []testedJSON{}, Odd: []string{},
		Metal: words.MetalFound(forge.FoundIn(p)), Took: takenJSON{Fuels: []fuelJSON{}},
	}
	for _, k := range b.Sources(i) {
		j.From = append(j.From, string(b.Pieces[k].UID))
	}
	if p.Mass.Known {
		j.Mass = some(float64(p.Mass.Value))
	}
	if kg, known := p.First(); known {
		j.First = some(kg)
	}
	steps := b.Chain(i)
	for n, s := range steps {
		name, _ := words.ChainStep(b, steps, n)
		y := pieceYield{What: name, Kg: number(s.Kg), Base: words.ChainBase(b, steps, n), Part: s.Cut}
		if n > 0 && s.Share > 0 {
			y.Share = some(s.Share)
		}
		j.Yields = append(j.Yields, y)
	}
	if share, alike, known := b.OfOre(i); known {
		j.OfOre, j.IfAlike = some(share), alike
	}
	t := b.Taken(i)
	j.Took.Sessions = number(t.Sessions)
	if t.Hours.Keyed > 0 {
		j.Took.Hours = some(t.Hours.Of)
	}
	for _, f := range t.Fuels {
		one := fuelJSON{What: f.What, Kg: number(f.Of), Keyed: number(f.Keyed)}
		if p.Mass.Positive() {
			one.PerKg = some(f.Of / float64(p.Mass.Value))
		}
		j.Took.Fuels = append(j.Took.Fuels, one)
	}
	for _, c := range t.Costs {
		j.Costs = append(j.Costs, pieceCost{c.Currency, number(c.Of), number(c.Keyed)})
	}
	for _, one := range p.Tested {
		j.Tests = append(j.Tests, testedJSON{one.Test, one.Place, one.Result, one.Note})
	}
	for n := len(p.Weighed) - 1; n >= 0 && j.Slag == nil; n-- {
		if low, high, known := forge.SlagIn(p.Weighed[n]); known {
			j.Slag = &[2]number{number(low), number(high)}
		}
	}
	for _, r := range b.Remarks(i) {
		j.Odd = append(j.Odd, words.Units{}.Remark(r))
	}
	return j
}
