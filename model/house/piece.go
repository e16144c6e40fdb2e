package house

import (
	"cmp"
	"slices"

	"chargehand/model/entry"
)

// piece gives the place of a piece, which may have been worked before anybody
// said what it is.
func (f *folder) piece(id entry.UID) *Piece {
	var p *Piece
	f.Pieces, p = known(f.Pieces, func(p Piece) bool { return p.UID == id })
	p.UID = id
	return p
}

// ofBloom is what a smelt says of its bloom, as a line of the house.
type ofBloom struct {
	OfBloom
	stream, uid string
}

// Kind is none on the wire.
func (ofBloom) Kind() entry.Kind { return "" }

// nameBloom notes which piece is the bloom of a smelt.
func (f *folder) nameBloom(p entry.Piece) {
	for _, from := range p.From {
		if p.Form == entry.BloomPiece && from.Smelt != "" {
			f.blooms[from.Smelt] = p.UID
		}
	}
}

// bloom takes in what a smelt says of its bloom: under the piece that somebody
// made of it, else under one that goes by the smelt's name.
func (f *folder) bloom(l line, said ofBloom) {
	id := cmp.Or(said.Piece, f.blooms[said.uid], entry.NameUID(said.stream))
	p := f.piece(id)
	if p.Form == "" {
		p.Form, p.From, p.Said = entry.BloomPiece, []entry.PieceFrom{{Smelt: said.uid}}, l.at
	}
	if h := said.Heat; h != nil {
		p.Heats, p.Worked, p.OldHeats = p.Heats+1, l.at, append(p.OldHeats, *h)
		if h.After.Known {
			p.Mass = h.After
		}
		return
	}
	p.Mass = said.Weighed
	p.Weighed = append(p.Weighed, entry.PieceWeighed{Piece: id, Mass: said.Weighed.Value, State: said.State})
}

// forged takes in what is said and done of pieces.
func (f *folder) forged(l line) {
	switch ev := l.ev.(type) {
	case ofBloom:
		f.bloom(l, ev)
	case entry.Piece:
		p := f.piece(ev.UID)
		p.Piece, p.Said = ev, l.at
		if ev.Mass.Known {
			p.Mass = ev.Mass
		}
	case entry.PieceWeighed:
		p := f.piece(ev.Piece)
		p.Weighed, p.Mass = append(p.Weighed, ev), entry.Some(ev.Mass)
	case entry.PieceTested:
		p := f.piece(ev.Piece)
		p.Tested = append(p.Tested, ev)
	case entry.ForgeSession:
		f.session(l, ev)
	case entry.Heat:
		for _, id := range ev.Pieces {
			p := f.piece(id)
			p.Heats, p.Worked = p.Heats+1, l.at
		}
	case entry.HeatOver:
		for _, m := range ev.Pieces {
			if p := f.piece(m.Piece); m.After.Known {
				p.Mass = m.After
			}
		}
	}
}

// session is work at the forge. Its fuel is taken from a lot where it names one.
func (f *folder) session(l line, ev entry.ForgeSession) {
	for _, id := range ev.Pieces {
		p := f.piece(id)
		p.Sessions, p.Worked = append(p.Sessions, ev), l.at
	}
	for _, m := range ev.After {
		f.piece(m.Piece).Mass = entry.Some(m.Mass)
	}
	if i := f.lot(idOf(ev.Fuel.What)); ev.Fuel.What != "" && i >= 0 {
		lot := &f.Lots[i]
		lot.take(Change{At: l.at, Seq: l.seq, Dry: f.dry(lot, entry.Amount{Mass: ev.Fuel.Kg})})
	}
}

// Worked are the pieces in the house, the one last worked first.
func (s *State) Worked() []Piece {
	ps := slices.DeleteFunc(slices.Clone(s.Pieces), func(p Piece) bool { return p.EndsAs != "" })
	slices.SortStableFunc(ps, func(a, b Piece) int { return b.Worked.Compare(a.Worked) })
	return ps
}
