package house

import (
	"cmp"
	"slices"
	"time"

	"chargehand/model/entry"
)

// Piece is a piece of iron with what was done to it.
type Piece struct {
	entry.Piece
	Said     time.Time                   // when it was last described
	Made     time.Time                   // when it was first said or met
	Worked   time.Time                   // when it was last worked
	Mass     entry.Maybe[entry.Kilogram] // as last weighed or said; of one that others were made of, before that
	Stages   []Stage                     // its masses, in order
	Weighed  []entry.PieceWeighed
	Tested   []Tested
	Sessions []Session
	Heats    int               // keyed one by one, of those that no session tells of
	OldHeats []entry.ForgeHeat // those that the smelt's own stream holds
	InFire   uint64            // the entry of the heat that it is in now, 0 for none
	Spent    bool              // it was cut, welded or made into another
}

// Stage is what a piece weighed at a moment.
type Stage struct {
	At      time.Time
	Mass    float64 // kg
	State   entry.PieceState
	Session bool // at the end of a session or a heat
	AtFire  bool // keyed in its smelt, of the bloom
}

// Tested is a test with its day.
type Tested struct {
	At time.Time
	entry.PieceTested
}

// Session is a session with what it is to one of its pieces.
type Session struct {
	At  time.Time
	Seq uint64
	entry.ForgeSession
	Before entry.Maybe[entry.Kilogram] // what the piece weighed
	Part   float64                     // of the session that the piece takes, by mass; alike where one is not known
}

// First is what a piece weighed when it came to be: as it was weighed before anybody worked
// it, of several weighings the last, since a bloom weighed cold after it was weighed hot has
// lost loose slag and was not hammered; else as it was said.
func (p Piece) First() (kg float64, known bool) {
	for _, s := range p.Stages {
		if s.Session || s.State == entry.Compacted {
			break
		}
		if s.Mass > 0 {
			kg = s.Mass
		}
	}
	switch {
	case kg > 0:
		return kg, true
	case len(p.Weighed) > 0 && p.Weighed[0].Mass > 0:
		return float64(p.Weighed[0].Mass), true
	case p.Piece.Mass.Positive():
		return float64(p.Piece.Mass.Value), true
	}
	return float64(p.Mass.Value), p.Mass.Positive()
}

// AllHeats are the heats of a piece, those that sessions tell of and those keyed one by
// one.
func (p Piece) AllHeats() int {
	n := p.Heats
	for _, s := range p.Sessions {
		n += int(s.Heats.Value)
	}
	return n
}

// weighs sets what a piece weighs.
func (p *Piece) weighs(kg entry.Kilogram, s Stage) {
	s.Mass = float64(kg)
	p.Mass, p.Stages = entry.Some(kg), append(p.Stages, s)
}

// piece gives the place of a piece, which may have been worked before anybody
// said what it is.
func (f *folder) piece(id entry.UID, at time.Time) *Piece {
	var p *Piece
	f.Pieces, p = known(f.Pieces, func(p Piece) bool { return p.UID == id })
	if p.UID = id; p.Made.IsZero() {
		p.Made = at
	}
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
	p := f.piece(id, l.at)
	if p.Form == "" {
		p.Form, p.From, p.Said = entry.BloomPiece, []entry.PieceFrom{{Smelt: said.uid}}, l.at
	}
	if h := said.Heat; h != nil {
		p.Heats, p.Worked, p.OldHeats = p.Heats+1, l.at, append(p.OldHeats, *h)
		if h.After.Known {
			p.weighs(h.After.Value, Stage{At: l.at, Session: true})
		}
		return
	}
	p.weighs(said.Weighed.Value, Stage{At: l.at, State: said.State, AtFire: true})
	p.Weighed = append(p.Weighed, entry.PieceWeighed{Piece: id, Mass: said.Weighed.Value, State: said.State})
}

// forged takes in what is said and done of pieces.
func (f *folder) forged(l line) {
	switch ev := l.ev.(type) {
	case ofBloom:
		f.bloom(l, ev)
	case entry.Piece:
		f.described(l, ev)
	case entry.PieceWeighed:
		p := f.piece(ev.Piece, l.at)
		p.Weighed = append(p.Weighed, ev)
		p.weighs(ev.Mass, Stage{At: l.at, State: ev.State})
	case entry.PieceTested:
		p := f.piece(ev.Piece, l.at)
		p.Tested = append(p.Tested, Tested{l.at, ev})
	case entry.ForgeSession:
		f.session(l, ev)
	case entry.Heat:
		for _, id := range ev.Pieces {
			p := f.piece(id, l.at)
			p.Heats, p.Worked, p.InFire = p.Heats+1, l.at, l.seq
		}
	case entry.HeatOver:
		for i, p := range f.Pieces {
			if p.InFire != 0 && p.InFire == ev.Heat.Seq {
				f.Pieces[i].InFire = 0
			}
		}
		for _, m := range ev.Pieces {
			if m.After.Known {
				f.piece(m.Piece, l.at).weighs(m.After.Value, Stage{At: l.at, Session: true})
			}
		}
	}
}

// described takes in what a piece is. Said again, its mass is set only where another one
// is said; what it is made of is then made into it.
func (f *folder) described(l line, ev entry.Piece) {
	p := f.piece(ev.UID, l.at)
	first, was := p.Said.IsZero(), p.Piece.Mass
	p.Piece, p.Said = ev, l.at
	if ev.Mass.Known && (first || ev.Mass != was) {
		p.weighs(ev.Mass.Value, Stage{At: l.at})
	}
	if !first {
		return
	}
	for _, from := range ev.From {
		if from.Piece == "" || from.Piece == ev.UID {
			continue
		}
		of := f.piece(from.Piece, l.at)
		of.InFire = 0
		switch {
		case ev.Form != entry.CropEnd:
			of.Spent = true
			of.Worked = l.at
		case !of.Spent && of.Mass.Known && ev.Mass.Known: // cut off what goes on
			of.weighs(max(of.Mass.Value-ev.Mass.Value, 0), Stage{At: l.at, Session: true})
		}
	}
	if len(ev.From) > 0 && ev.From[0].Piece != "" {
		f.piece(ev.UID, l.at).Worked = l.at
	}
}

// session is work at the forge. Its fuel is taken from a lot where it names one.
func (f *folder) session(l line, ev entry.ForgeSession) {
	total, all := 0.0, true
	for _, id := range ev.Pieces {
		m := f.piece(id, l.at).Mass
		total, all = total+float64(m.Value), all && m.Positive()
	}
	for _, id := range ev.Pieces {
		p := f.piece(id, l.at)
		s := Session{At: l.at, Seq: l.seq, ForgeSession: ev, Before: p.Mass, Part: 1 / float64(len(ev.Pieces))}
		if all {
			s.Part = float64(p.Mass.Value) / total
		}
		p.Sessions, p.Worked, p.InFire = append(p.Sessions, s), l.at, 0
		if ev.Heats.Known { // it tells of those that were keyed on the way
			p.Heats = len(p.OldHeats)
		}
	}
	for _, m := range ev.After {
		f.piece(m.Piece, l.at).weighs(m.Mass, Stage{At: l.at, Session: true})
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

// Piece finds a piece by its uid.
func (s State) Piece(id entry.UID) (Piece, bool) {
	i := slices.IndexFunc(s.Pieces, func(p Piece) bool { return p.UID == id })
	if i < 0 {
		return Piece{}, false
	}
	return s.Pieces[i], true
}
