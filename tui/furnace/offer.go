package furnace

import (
	"maps"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Entered offers another version of a furnace whose wall did something in a smelt since the
// last one. Left as it is, it is not asked again before the wall does more.
func (s Screen) Entered(sh *screen.Shared, _ any) (screen.Screen, screen.Effect) {
	for _, f := range sh.House().Furnaces {
		if sh.Running.Is() && sh.Running.Light().Furnace.ID() == f.ID {
			continue // it burns: nobody measures it now
		}
		walls := wallsOf(sh, f)
		if len(walls) == 0 || !walls[0].At.After(s.offered[f.ID]) {
			continue
		}
		s.offered = maps.Clone(s.offered)
		if s.offered == nil {
			s.offered = map[entry.UID]time.Time{}
		}
		s.offered[f.ID], s.picked = walls[0].At, f.ID
		return s, s.offer(sh, f, walls[0])
	}
	return s, nil
}

// offer asks what became of the furnace: mended, worn and measured anew, or as it was.
func (s Screen) offer(sh *screen.Shared, f house.Furnace, last wallThen) screen.Effect {
	is := f.Last().Furnace
	return screen.Choose(words.OfferVersion(is.Name, sh.Units.Event(last.Seen), last.smelt),
		screen.Opt("p", words.VersionPatched, func(*screen.Shared) screen.Effect { return keep(is, entry.Repaired) }),
		screen.Opt("w", words.VersionWorn, func(*screen.Shared) screen.Effect { return sizes(sh.Units, is) }),
		screen.Opt("n", words.VersionNone, func(*screen.Shared) screen.Effect { return screen.Said(words.VersionStays) }))
}
