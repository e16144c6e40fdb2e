// Package stores is the screen of what there is: the lots with what came, went and is
// left, and the deeds that made them so.
package stores

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/act"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen is the list of the lots, one of them picked by its name for good, so that the
// mark stays with it whatever is keyed.
type Screen struct{ picked entry.UID }

// Keys are the keys of the stores. The letters of the acts of a fire are left to it.
type Keys struct {
	screen.MoveKeys
	New, Done, Count, Moisture, Assay, PutRight, CrossOut, Measures, Describe, Sample key.Binding
}

// Map are those keys.
var Map = Keys{
	MoveKeys: screen.Move,
	New:      screen.Bind(words.DoNewLot, "n"),
	Done:     screen.Bind(words.DoDeed, "o"),
	Count:    screen.Bind(words.DoCount, "w"),
	Moisture: screen.Bind(words.DoWater, "m"),
	Assay:    screen.Bind(words.DoAssay, "a"),
	PutRight: screen.Bind(words.DoMendStores, "e"),
	CrossOut: screen.Bind(words.DoStrikeStores, "x"),
	Measures: screen.Bind(words.DoMeasures, "k"),
	Describe: screen.Bind(words.DoDescribe, "l"),
	Sample:   screen.Bind(words.DoSampleResult, "i"),
}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.New, k.Done, k.Count, k.Moisture, k.Assay, k.PutRight, k.CrossOut, k.Measures, k.Describe, k.Sample}, k.MoveKeys.All()...)
}

// New is the list at its top.
func New() Screen { return Screen{} }

func (Screen) ID() screen.ID       { return screen.Stores }
func (Screen) Keys() screen.KeyMap { return Map }

// Beside the fire it stands.
func (Screen) Beside() {}

// Listed always.
func (Screen) Listed(*screen.Shared) string { return words.DoStores }

// Hints are what can be done.
func (Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	if len(lots(sh)) == 0 {
		return screen.Hints(Map.New, Map.Measures, screen.Global.Views, screen.Global.Back)
	}
	k := Map
	return append([]draw.KeyHint{
		screen.Short(k.New, words.ShortNew), screen.Short(k.Done, words.ShortDone), screen.Short(k.Count, words.ShortCount), screen.Short(k.Moisture, words.ShortWater),
		screen.Short(k.Assay, words.ShortAssay), screen.Short(k.PutRight, words.ShortMend), screen.Short(k.CrossOut, words.ShortCrossOut)},
		screen.Short(screen.Global.Views, words.ShortViews))
}

// ranks are the materials in the order in which they are listed.
var ranks = []entry.Material{entry.LotOre, entry.LotCharcoal, entry.LotWood, entry.LotClay, entry.LotSand, entry.LotIronSlag, entry.LotFlux, entry.LotFragments}

// lots are those of the house by material, the newest last; what is used up after the rest.
func lots(sh *screen.Shared) []house.Lot {
	all := slices.Clone(sh.House().Lots)
	rank := func(l house.Lot) int {
		r := slices.Index(ranks, l.Of())
		if r < 0 {
			r = len(ranks)
		}
		if spent(l) {
			r += 2 * len(ranks)
		}
		return r
	}
	slices.SortStableFunc(all, func(a, b house.Lot) int { return rank(a) - rank(b) })
	return all
}

// spent tells whether all of a lot is gone.
func spent(l house.Lot) bool {
	_, short := l.Short()
	return len(l.Changes) > 0 && l.Left.Known() && l.Left.Kg < 0.05 && !short
}

// at is the place of the picked lot.
func (s Screen) at(ls []house.Lot) int {
	return max(slices.IndexFunc(ls, func(l house.Lot) bool { return l.ID == s.picked }), 0)
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	ls := lots(sh)
	at := s.at(ls)
	if to, ok := Map.Moved(t, at, len(ls), rowsAt(sh)); ok {
		if len(ls) > 0 {
			s.picked = ls[max(to, 0)].ID
		}
		return s, nil
	}
	switch k := Map; {
	case key.Matches(t, k.New):
		return s, s.newLot(sh)
	case key.Matches(t, k.Measures):
		return s, measures(sh)
	case key.Matches(t, k.CrossOut):
		return s, act.CrossOutInHouse(sh, entry.OnStores, says)
	case key.Matches(t, k.Sample):
		return s, sampleResult(sh)
	case !key.Matches(t, k.All()...):
		return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
	case len(ls) == 0:
		return s, screen.Refuse(words.StoresNothing)
	}
	l := ls[at]
	s.picked = l.ID
	switch k := Map; {
	case key.Matches(t, k.Done):
		return s, s.deeds(sh, l)
	case key.Matches(t, k.Count):
		return s, count(sh, l)
	case key.Matches(t, k.Moisture):
		return s, moisture(sh, l)
	case key.Matches(t, k.Assay):
		return s, assay(sh, l)
	case key.Matches(t, k.Describe):
		return s, describe(sh, l)
	}
	return s, putRight(sh, l)
}

// chosen is the effect with the mark on a lot.
func (s Screen) chosen(id entry.UID, e screen.Effect) screen.Effect {
	s.picked = id
	return screen.Each{e, screen.Put{Screen: s}}
}
