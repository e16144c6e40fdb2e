package forge

import (
	"cmp"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/shelf"
)

// Bench is all pieces with how they hang together.
type Bench struct {
	Pieces []house.Piece // as first met
	house  house.State
	smelts map[string]shelf.Summary
	at     map[entry.UID]int
	kids   [][]int // what was made of a piece, in the order in which it was
	takes  []Taken
}

// Of lays out the pieces of a house, with its smelts for what they are blooms of.
func Of(h house.State, smelts []shelf.Summary) Bench {
	pieces := h.Pieces
	b := Bench{Pieces: pieces, house: h, smelts: map[string]shelf.Summary{}, at: map[entry.UID]int{}, kids: make([][]int, len(pieces))}
	for _, s := range smelts {
		if s.UID != "" {
			b.smelts[s.UID] = s
		}
	}
	for i, p := range pieces {
		b.at[p.UID] = i
	}
	for i, p := range pieces {
		for _, from := range p.From {
			if j, ok := b.at[from.Piece]; ok && from.Piece != "" && j != i && !slices.Contains(b.kids[j], i) {
				b.kids[j] = append(b.kids[j], i)
			}
		}
	}
	for _, ks := range b.kids {
		slices.SortStableFunc(ks, func(x, y int) int { return pieces[x].Made.Compare(pieces[y].Made) })
	}
	b.takes = b.taken()
	return b
}

// Find is the place of a piece, -1 for none.
func (b Bench) Find(id entry.UID) int {
	if i, ok := b.at[id]; ok {
		return i
	}
	return -1
}

// Kids are what was made of a piece, in the order in which it was.
func (b Bench) Kids(i int) []int { return b.kids[i] }

// Sources are the pieces that a piece was made of.
func (b Bench) Sources(i int) (all []int) {
	for _, from := range b.Pieces[i].From {
		if j, ok := b.at[from.Piece]; ok && from.Piece != "" && j != i {
			all = append(all, j)
		}
	}
	return all
}

// Smelt is the smelt whose bloom a piece is.
func (b Bench) Smelt(i int) (shelf.Summary, bool) {
	for _, from := range b.Pieces[i].From {
		if s, ok := b.smelts[from.Smelt]; ok && from.Smelt != "" {
			return s, true
		}
	}
	return shelf.Summary{}, false
}

// Smelts are the uids of the smelts that iron of a piece is of.
func (b Bench) Smelts(i int) (uids []string) {
	seen := map[int]bool{}
	var walk func(int)
	walk = func(i int) {
		if seen[i] {
			return
		}
		seen[i] = true
		for _, from := range b.Pieces[i].From {
			if from.Smelt != "" && !slices.Contains(uids, from.Smelt) {
				uids = append(uids, from.Smelt)
			}
		}
		for _, j := range b.Sources(i) {
			walk(j)
		}
	}
	walk(i)
	return uids
}

// FuelOf is what a fuel is that was keyed as a word or as a lot.
func (b Bench) FuelOf(what string) string {
	if l, ok := b.house.Lot(what); ok && what != "" {
		return string(l.Of())
	}
	return what
}

// Welded tells whether a piece was made of several.
func (b Bench) Welded(i int) bool { return len(b.Sources(i)) > 1 }

// Row is a line of the list of pieces.
type Row struct {
	At    int // the place of the piece
	Depth int // generations down
	// Compacted is the mass of a bloom once it was worked, on a line of its own under it;
	// nil on the line of the piece itself.
	Compacted *house.Stage
}

// Rows are the pieces as indented lines, each under what it was made of; of what was
// welded of several under the first. The tree last worked stands first.
func (b Bench) Rows() []Row {
	var rows []Row
	seen := make([]bool, len(b.Pieces))
	var walk func(i, depth int) time.Time
	walk = func(i, depth int) time.Time {
		seen[i] = true
		last := time.Time{}
		if p := b.Pieces[i]; !p.Spent {
			last = p.Worked
		}
		rows = append(rows, Row{At: i, Depth: depth})
		if s, ok := b.Compacted(i); ok {
			depth++
			rows = append(rows, Row{At: i, Depth: depth, Compacted: &s})
		}
		for _, k := range b.kids[i] {
			if seen[k] || b.Sources(k)[0] != i {
				continue
			}
			if at := walk(k, depth+1); at.After(last) {
				last = at
			}
		}
		return last
	}
	type tree struct {
		rows  []Row
		last  time.Time
		begun time.Time
	}
	var trees []tree
	grow := func(i int) {
		rows = nil
		last := walk(i, 0)
		trees = append(trees, tree{rows, last, b.Pieces[i].Made})
	}
	for i := range b.Pieces {
		if len(b.Sources(i)) == 0 {
			grow(i)
		}
	}
	for i := range b.Pieces { // said to come of themselves, in a ring
		if !seen[i] {
			grow(i)
		}
	}
	slices.SortStableFunc(trees, func(x, y tree) int { return cmp.Or(y.last.Compare(x.last), y.begun.Compare(x.begun)) })
	var all []Row
	for _, t := range trees {
		all = append(all, t.rows...)
	}
	return all
}

// Last is the place of the piece last worked, of those still in the house where there are
// any; -1 for none.
func (b Bench) Last() int {
	last, here := -1, false
	for i, p := range b.Pieces {
		in := p.EndsAs == "" && !p.Spent && p.Form != entry.CropEnd
		if last < 0 || in && !here || in == here && cmp.Or(p.Worked.Compare(b.Pieces[last].Worked), p.Made.Compare(b.Pieces[last].Made)) > 0 {
			last, here = i, in
		}
	}
	return last
}

// Compacted is what a bloom weighed once it was worked, where that is another mass than
// when it came.
func (b Bench) Compacted(i int) (house.Stage, bool) {
	p := b.Pieces[i]
	if p.Form != entry.BloomPiece || len(p.Stages) < 2 {
		return house.Stage{}, false
	}
	last := p.Stages[len(p.Stages)-1]
	return last, last.Session || last.State == entry.Compacted
}

// Same is within what a scale outdoors tells apart.
func same(x, y float64) bool { return x > 0.995*y && x < 1.005*y }
