// Package forge is the screen of the pieces of iron: what became of each bloom, what was
// made of what, what it took, and what tests say of the metal.
package forge

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/forge"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is the list of the pieces, one of them picked by its uid, so that the mark stays
// with it whatever is keyed; the one last worked until another is.
type Screen struct {
	picked  entry.UID
	careful string // the caution at the last deed, until another key
}

// Keys are the keys of the forge. The letters of the acts of a fire are left to it.
type Keys struct {
	screen.MoveKeys
	Session, New, Cut, Weld, Test, Fire, Deed, PutRight, CrossOut key.Binding
}

// Map are those keys.
var Map = Keys{
	MoveKeys: screen.Move,
	Session:  screen.Bind(words.DoSession, "enter"),
	New:      screen.Bind(words.DoNewPiece, "n"),
	Cut:      screen.Bind(words.DoCut, "k"),
	Weld:     screen.Bind(words.DoWeld, "w"),
	Test:     screen.Bind(words.DoTestPiece, "e"),
	Fire:     screen.Bind(words.DoFireInOut, "i"),
	Deed:     screen.Bind(words.DoPieceDeed, "o"),
	PutRight: screen.Bind(words.DoMendForge, "m"),
	CrossOut: screen.Bind(words.DoStrikeForge, "x"),
}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.Session, k.New, k.Cut, k.Weld, k.Test, k.Fire, k.Deed, k.PutRight, k.CrossOut}, k.MoveKeys.All()...)
}

// New is the list with the piece last worked picked.
func New() Screen { return Screen{} }

func (Screen) ID() screen.ID       { return screen.Forge }
func (Screen) Keys() screen.KeyMap { return Map }

// Beside the fire it stands.
func (Screen) Beside() {}

// Listed always.
func (Screen) Listed(*screen.Shared) string { return words.DoForge }

// Hints are what can be done.
func (Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	k := Map
	if len(sh.House().Pieces) == 0 {
		return screen.Hints(k.New, screen.Global.Views, screen.Global.Back)
	}
	return []draw.KeyHint{
		screen.Short(k.Session, words.ShortSession), screen.Short(k.New, words.ShortNewPiece), screen.Short(k.Cut, words.ShortCut), screen.Short(k.Weld, words.ShortWeld),
		screen.Short(k.Test, words.ShortTest), screen.Short(k.Fire, words.ShortFire), screen.Short(k.Deed, words.ShortPieceDeed), screen.Short(k.PutRight, words.ShortMend),
		screen.Short(k.CrossOut, words.ShortCrossOut), screen.Short(screen.Global.Views, words.ShortViews),
	}
}

// bench is all pieces as they hang together now.
func bench(sh *screen.Shared) forge.Bench { return forge.Of(sh.House(), sh.Shelf.Lines) }

// at is the place of the picked piece: the one last worked where none was picked.
func (s Screen) at(b forge.Bench) int {
	if i := b.Find(s.picked); i >= 0 && s.picked != "" {
		return i
	}
	return b.Last()
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	s.careful = ""
	b := bench(sh)
	rows := pieceRows(b)
	i := s.at(b)
	at := slices.IndexFunc(rows, func(r forge.Row) bool { return r.At == i })
	if to, ok := Map.Moved(t, at, len(rows), rowsAt(sh)); ok {
		if len(rows) > 0 {
			s.picked = b.Pieces[rows[max(to, 0)].At].UID
		}
		return s, nil
	}
	switch k := Map; {
	case key.Matches(t, k.New):
		return s, s.newPiece(sh)
	case key.Matches(t, k.CrossOut):
		return s, act.CrossOutInHouse(sh, entry.OnForge, says)
	case !key.Matches(t, k.All()...):
		return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
	case i < 0:
		return s, screen.Refuse(words.ForgeNothing)
	}
	s.picked = b.Pieces[i].UID
	switch k := Map; {
	case key.Matches(t, k.Deed):
		return s, s.deeds(sh, b, i)
	case key.Matches(t, k.PutRight):
		return s, putRight(sh, b, i)
	case key.Matches(t, k.Test):
		return s, s.test(sh, b, i)
	case b.Pieces[i].EndsAs != "":
		return s, screen.Refuse(words.IsGone(called(b, i)))
	case b.Pieces[i].Spent:
		return s, screen.Refuse(words.IsSpent(called(b, i)))
	case key.Matches(t, k.Session):
		return s, screen.Ask{Dialog: s.newSession(sh, b, i)}
	case key.Matches(t, k.Cut):
		return s, s.cut(sh, b, i)
	case key.Matches(t, k.Weld):
		return s, s.weld(sh, b, i)
	}
	return s, s.fire(sh, b, i)
}

// pieceRows are the rows of pieces, without those of what a bloom was compacted to.
func pieceRows(b forge.Bench) []forge.Row {
	return slices.DeleteFunc(b.Rows(), func(r forge.Row) bool { return r.Compacted != nil })
}
