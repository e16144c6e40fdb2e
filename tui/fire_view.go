package tui

import (
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
	"chargehand/tui/theme"
)

func (f fire) paint(g cell.Grid, sh shared) {
	s := sh.smelt
	if !s.Is() {
		top(g, sh, words.DoFire, "")
		g.Text(2, paint.TopRows+1, words.NoSmelt, sh.theme.Style(theme.Text))
		return
	}
	v := fireView(g, sh, s)
	v.Warnings = f.turn.of(v.Warnings, sh.now)
	v.Caution = cautionText(sh.careful)
	if f.far {
		paint.Far(g, sh.theme, s.Reading(), v)
		return
	}
	paint.Fire(g, sh.theme, s.Reading(), v)
}

// fireView is what Fire shows of a smelt besides its reading.
func fireView(g cell.Grid, sh shared, s session.Session) paint.FireView {
	v := paint.FireView{
		Chemistry: sh.chemistry,
		Now:       s.Reading().Wall(s.Reading().At), Title: s.ID(), Past: past(s),
		NoBook: s.ToLook(), Kept: sh.tally.kept, Keeping: sh.tally.keeping, NotKept: sh.tally.notKept, Trouble: sh.tally.trouble,
		NextKey: nextKey(s), Adding: adding(s), Log: lastEntries(sh.theme.Units, s, paint.LayoutOf(g.Size()).Notice.H),
		Warnings: s.Standing(), Flame: flame(s), Ready: ready(s), Closer: closer(s), Decide: decideKeys,
	}
	if r := s.Reading(); r.HasDue && (s.Running() || s.Past() || s.ToLook()) {
		v.Due = &r.Due
	}
	if s.Running() {
		v.Now = sh.now.Wall.In(s.Reading().Lit.Location())
	}
	return v
}

// nextKey is the key that books the next charge, where one can be booked.
func nextKey(s session.Session) string {
	if s.Past() || rightsIn(s) < own {
		return ""
	}
	return fireMap.Charge.Help().Key
}

// hints are the keys that make sense in this phase, the weightiest first, in
// words short enough that most of them fit. What answers a warning comes first.
func (f fire) hints(sh shared) []paint.KeyHint {
	return append(warningHints(sh.smelt), f.phaseHints(sh)...)
}

func (fire) phaseHints(sh shared) []paint.KeyHint {
	s, k := sh.smelt, fireMap
	if rightsIn(s) == lookOnly {
		return []paint.KeyHint{short(global.Views, words.ShortViews), hint(global.Far), hint(global.Back), chemistryHint(sh)}
	}
	if rightsIn(s) < own {
		return []paint.KeyHint{short(k.Weigh, words.DoWeigh), short(k.Note, words.DoNote), short(k.Rare, words.ShortOthers), short(global.Views, words.ShortViews), hint(global.Back), chemistryHint(sh)}
	}
	crossOut, look, blast := short(k.CrossOut, words.ShortCrossOut), short(k.Look, words.DoLook), short(k.Blast, words.DoBlast)
	more, screens := short(k.Rare, words.ShortOthers), short(global.Views, words.ShortViews)
	note, tap := short(k.Note, words.DoNote), short(k.Tap, words.DoTap)
	switch p := s.Phase(); {
	case filling(p):
		return []paint.KeyHint{short(k.Charcoal, words.DoFill), short(k.Charge, words.ShortCharge), blast, crossOut, more, screens, look, note, chemistryHint(sh)}
	case p.Over():
		return []paint.KeyHint{short(k.Weigh, words.DoWeigh), note, crossOut, more, screens}
	case p == entry.BurnsDown:
		return []paint.KeyHint{short(k.Dip, words.DoDip), look, tap, blast, crossOut, more, screens, note, chemistryHint(sh)}
	}
	return []paint.KeyHint{
		short(k.Charge, words.ShortCharge), short(k.Scoop, words.ShortScoop), crossOut, blast, tap, more, screens,
		short(k.Charcoal, words.ShortCharcoal), look, short(k.Rod, words.ShortRod), short(k.Half, words.DoHalf), short(k.Earlier, words.ShortEarlier),
		short(k.NotToMark, words.ShortNotToMark), note, short(k.Poke, words.ShortPoke), short(k.Dip, words.DoDip), short(k.Weigh, words.DoWeigh),
		short(global.Far, words.ShortFar), chemistryHint(sh),
	}
}

// short is a binding in the keys line, in a shorter word than in the help.
func short(b key.Binding, word string) paint.KeyHint {
	return paint.KeyHint{Key: b.Help().Key, Does: word}
}

// past says that this is not a smelt at work.
func past(s session.Session) string {
	switch {
	case s.Running():
		return ""
	case rightsIn(s) == lookOnly:
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
func adding(s session.Session) *paint.Adding {
	l, ok := s.LastAct()
	ev, charge := l.Event.(entry.Charge)
	if !ok || !charge || ev.Parts.Holds(entry.Charcoal) || s.Reading().At-l.At > addingFor || len(s.Reading().Charges) == 0 {
		return nil
	}
	last := s.Reading().Charges[len(s.Reading().Charges)-1]
	n, counted := last.Parts.Count(entry.Ore)
	m, named := s.Measure(entry.Ore)
	if !counted || !named {
		return nil
	}
	return &paint.Adding{Count: float64(n), What: words.Scoops(m.Name)}
}

// lastEntries are the last n acts as the log shows them, newest first. Of several
// scoops in a row, and of several changes to the next charge, only the last is
// shown: the count stands beside the charge.
func lastEntries(u words.Units, s session.Session, n int) []paint.LogLine {
	var log []paint.LogLine
	var above fold.Line
	for l := range s.Backward() {
		if len(log) == n {
			break
		}
		if l.At > s.Reading().At && (s.Past() || s.ToLook()) || !entry.IsAct(l.Event) && !ofKind(l, entry.KindLight, entry.KindClockJump) {
			continue
		}
		if !runOn(l, above) {
			log = append(log, paint.LogLine{At: s.Wall(l).Format(words.Clock), Text: describe(u, s, l), Struck: l.Struck(), Late: l.Late()})
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
	alike := ofKind(l, entry.KindRecipe) && ofKind(next, entry.KindRecipe) || scoop(l) && scoop(next)
	return alike && !l.Struck() && !next.Struck()
}
