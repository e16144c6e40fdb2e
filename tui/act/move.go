package act

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Movable tells whether a line can be moved to the other fire: it was booked here while both
// burn, is in force, and speaks of no other entry.
func Movable(sh *screen.Shared, l fold.Line) bool {
	return sh.Other.Is() && sh.Smelt.ID() == sh.Running.ID() && !l.Struck() && entry.TraitsOf(l.Event).Amend == entry.Whole
}

// MoveToOther books a line in the smelt of the other fire, at the time at which it
// happened, and strikes it out in this one.
func MoveToOther(sh *screen.Shared, l fold.Line) screen.Effect {
	other, name := sh.Other, screen.NameOf(sh, sh.Other)
	if int(l.Seq()) > sh.Smelt.Kept() {
		return screen.Refuse(words.MoveNotKept)
	}
	at := happenedWall(sh, l)
	lit := other.Reading().Wall(0)
	if shown := sh.Smelt.Wall(l); shown.Before(lit) {
		return screen.Refuse(words.OtherLitLater(name, lit.Format(modelwords.Clock)))
	}
	said := words.MovedTo(Describe(sh.Units, sh.Smelt, l), name, sh.Smelt.Wall(l).Format(modelwords.Clock))
	return screen.Each{
		screen.Rebook{
			Act: screen.Act{Event: l.Event, Happened: at, Uncertain: l.Uncertain, Sure: sh.Smelt.Sure(l),
				From: entry.Origin{Stream: sh.Smelt.ID(), Seq: l.Seq()}},
			Strike: entry.Strike{Target: sh.Smelt.Ref(l.Seq()), Moved: other.ID()},
		},
		screen.Said(said),
	}
}
