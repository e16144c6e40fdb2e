package scene

import (
	"cmp"
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Of is what is shown of a smelt besides its reading. The key is the one that
// books the next charge, where one can be booked.
func Of(g cell.Grid, sh *screen.Shared, s session.Session, charge key.Binding) View {
	r := s.Reading()
	v := View{
		Chemistry: sh.Chemistry,
		Now:       r.Wall(r.At), Title: cmp.Or(r.Light.Furnace.Name, s.ID()), Past: past(s), Tag: cmp.Or(sh.Mark, modelwords.Mark(r.Light)),
		Lost: words.EntriesLost(s.Lost()), NoBook: s.ToLook(), Kept: sh.Tally.Kept, Keeping: sh.Tally.Keeping, NotKept: sh.Tally.NotKept, Trouble: sh.Tally.Trouble,
		Adding: adding(s), Log: Log(sh.Units, s, LayoutOf(g.Size()).logRows()),
		Warnings: s.Standing(),
	}
	if sh.Other.Is() && s.ID() == sh.Running.ID() { // which of the two is what matters
		v.Title = screen.NameOf(sh, s)
	}
	if !s.Past() && screen.RightsIn(s) == screen.Own {
		v.NextKey = charge.Help().Key
	}
	for _, l := range s.Supplies() {
		v.Left = append(v.Left, draw.Left{What: l.What, Kg: l.Left, Needed: l.Need, Each: l.Each.Value})
	}
	if w, h := g.Size(); SizeOf(w, h) == Large {
		v.Ahead, v.Plan = ahead(sh.Units, s)
	}
	if r.Phase == entry.BurnsDown {
		v.Ending = EndingOf(s)
	}
	if r.HasDue && (s.Running() || s.Past() || s.ToLook()) {
		v.Due = &r.Due
	}
	if o, over := s.Outcome(); over {
		v.Result = came(sh, s, o)
	}
	if s.Running() {
		v.Now = sh.Now.Wall.Add(s.Off(sh.Now)).In(r.Lit.Location())
	}
	return v
}

// came is what came of a smelt that is over: its iron, where that can be told, and the line
// kept for next time.
func came(sh *screen.Shared, s session.Session, o session.Outcome) *draw.Came {
	c := &draw.Came{Outcome: o}
	if sh.House == nil || !o.Bloom.Positive() {
		return c
	}
	if a, err := sh.AccountOf(s); err == nil {
		c.Iron = a.Yield(account.BloomIron, account.OreIron)
	}
	for _, l := range sh.House().Lessons {
		if l.Smelt != "" && l.Smelt == s.Light().UID {
			c.Lesson = l.Text
		}
	}
	c.MayLearn = screen.RightsIn(s) != screen.LookOnly && !s.Light().Practice
	return c
}

// past says that this is not a smelt at work.
func past(s session.Session) string {
	switch {
	case s.Running():
		return ""
	case screen.ShownOnly(s):
		return words.PastInvented
	case s.Light().Imported:
		return words.PastImported
	}
	return words.PastOver
}

// addingFor is how long the count of an open measure stays after the last
// scoop.
const addingFor = 90 * time.Second

// adding is the open measure: the scoops that went to the last charge, while
// scoops are the last thing that was done.
func adding(s session.Session) *draw.Adding {
	l, ok := s.LastAct()
	ev, charge := l.Event.(entry.Charge)
	if !ok || !charge || ev.Parts.Holds(entry.Charcoal) {
		return nil
	}
	r := s.Reading()
	if r.At-l.At > addingFor || len(r.Charges) == 0 {
		return nil
	}
	last := r.Charges[len(r.Charges)-1]
	n, counted := last.Parts.Count(entry.Ore)
	m, named := s.Measure(entry.Ore)
	if !counted || !named {
		return nil
	}
	return &draw.Adding{Count: float64(n), What: words.Scoops(m.Name, float64(n))}
}

// Log holds the last n acts as the log shows them, newest first. Of several
// scoops in a row, and of several changes to the next charge, only the last is
// shown: the count stands beside the charge.
func Log(u modelwords.Units, s session.Session, n int) []draw.LogLine {
	var log []draw.LogLine
	now, stands := s.At(), s.Past() || s.ToLook()
	var above fold.Line
	for l := range s.Backward() {
		if len(log) == n {
			break
		}
		if stands && l.At > now || !entry.IsAct(l.Event) && !OfKind(l, entry.KindLight, entry.KindClockJump) {
			continue
		}
		if !runOn(l, above) {
			log = append(log, draw.LogLine{At: s.Wall(l).Format(modelwords.Clock), Text: act.Describe(u, s, l), Brief: act.Brief(u, s, l), Struck: l.Struck(), Late: l.Late() && !s.Light().Practice})
		}
		above = l
	}
	return log
}

// runOn tells whether a line is only a step to the one after it: a scoop before
// another, a change of the next charge before another.
func runOn(l, next fold.Line) bool {
	scoop := func(l fold.Line) bool {
		c, ok := l.Event.(entry.Charge)
		return ok && !c.Parts.Holds(entry.Charcoal)
	}
	alike := OfKind(l, entry.KindRecipe) && OfKind(next, entry.KindRecipe) || scoop(l) && scoop(next)
	return alike && !l.Struck() && !next.Struck()
}

// OfKind tells whether a line's event is of one of these kinds.
func OfKind(l fold.Line, ks ...entry.Kind) bool {
	return l.Event != nil && slices.Contains(ks, l.Event.Kind())
}
