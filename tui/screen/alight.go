package screen

import (
	"time"

	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/tui/words"
)

// NameOf is what a fire is called among those that burn: its furnace, or its smelt where
// both burn in furnaces of one name.
func NameOf(sh *Shared, s session.Session) string {
	name := words.FireName(s.Light(), s.ID())
	for _, o := range []session.Session{sh.Running, sh.Other} {
		if o.Is() && o.ID() != s.ID() && words.FireName(o.Light(), o.ID()) == name {
			return s.ID()
		}
	}
	return name
}

// Urgent is the fire of the two that needs somebody first: that with the graver warning
// that nobody has seen, else the one whose next charge is due first.
func Urgent(sh *Shared) session.Session {
	switch {
	case !sh.Other.Is():
		return sh.Running
	case !sh.Running.Is():
		return sh.Other
	}
	a, b := gravest(sh.Running), gravest(sh.Other)
	if a > b || a == b && left(sh.Running) <= left(sh.Other) {
		return sh.Running
	}
	return sh.Other
}

// gravest is the grade of the gravest warning that stands and was not seen, below all
// grades for none.
func gravest(s session.Session) rule.Grade {
	worst := rule.Note - 1
	for _, w := range s.Standing() {
		if w.Raised() && !w.Acknowledged {
			worst = max(worst, w.Grade)
		}
	}
	return worst
}

// left is the time until the next charge is due, long where none is waited for.
func left(s session.Session) time.Duration {
	r := s.Reading()
	if !r.HasDue || r.Paused || r.LastOre {
		return time.Duration(1) << 60
	}
	_, middle, _ := r.Due.Next.At()
	return middle - r.At
}
