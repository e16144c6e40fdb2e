package tui

import (
	"slices"
	"time"

	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// judged is what a key asks for as it may be done: here all that is keyed comes by, and
// nothing of it is half done. Where an event is out of bounds it is a refusal, and where
// it can hardly be it is a question; either way the step that asked for it, nil for none,
// stays as it was, with what was typed. What was answered yes carries its mark.
func (m Model) judged(e screen.Effect, step screen.Dialog) (Model, screen.Effect) {
	all := slices.Clone(screen.Flat(e))
	for i, one := range all {
		var s stop
		switch one := one.(type) {
		case screen.Sure:
			m.sure = append(m.sure[:len(m.sure):len(m.sure)], doubt.Name(one))
		case screen.SoFar:
			_, s = m.weighed(one)
		case screen.Keep:
			one, s = m.weighed(one)
			all[i] = one
		case screen.House:
			one, s = m.weighedInHouse(one)
			all[i] = one
		case screen.Kindle:
			var acts []screen.Act
			acts, s = m.weighed([]screen.Act{{Event: one.Light}})
			if len(acts) > 0 {
				one.Sure = acts[0].Sure
			}
			all[i] = one
		case screen.Set:
			s.refused = outOfBounds(one.Setting)
		}
		switch {
		case s.refused != "":
			m.dialog = step
			return m, screen.Refuse(s.refused)
		case s.doubt.Name != "":
			return m, screen.Ask{Dialog: doubtful(m.units.Doubt(s.doubt), s.doubt.Name, e, step)}
		}
	}
	return m, screen.Each(all)
}

// stop is what stands in the way of an act: a refusal, or a doubt.
type stop struct {
	refused string
	doubt   doubt.Doubt
}

func outOfBounds(ev entry.Event) string {
	if err := entry.CheckKept(ev); err != nil {
		return modelwords.OutOfBounds(err)
	}
	return ""
}

// weighed marks acts with the doubts that were answered, or says what stops them.
func (m Model) weighed(acts []screen.Act) ([]screen.Act, stop) {
	acts = slices.Clone(acts)
	for i, a := range acts {
		if refused := outOfBounds(a.Event); refused != "" {
			return nil, stop{refused: refused}
		}
		if l, same := m.unchanged(a.Event); same { // its time is moved, or it is said again
			acts[i].Sure = m.shown().Sure(l)
			continue
		}
		var names []doubt.Name
		for _, d := range m.doubts(a) {
			if !slices.Contains(m.sure, d.Name) && !m.answered(d.Name, a.Event) {
				return nil, stop{doubt: d}
			}
			names = append(names, d.Name)
		}
		acts[i].Sure = doubt.Join(names)
	}
	return acts, stop{}
}

// weighedInHouse is the same of acts of the house.
func (m Model) weighedInHouse(acts []screen.Act) ([]screen.Act, stop) {
	acts = slices.Clone(acts)
	for i, a := range acts {
		if refused := outOfBounds(a.Event); refused != "" {
			return nil, stop{refused: refused}
		}
		var names []doubt.Name
		for _, d := range doubt.InHouse(a.Event, m.folded()) {
			if !slices.Contains(m.sure, d.Name) {
				return nil, stop{doubt: d}
			}
			names = append(names, d.Name)
		}
		acts[i].Sure = doubt.Join(names)
	}
	return acts, stop{}
}

// unchanged is the line that an amendment leaves saying what it said.
func (m Model) unchanged(ev entry.Event) (fold.Line, bool) {
	a, ok := ev.(entry.Amend)
	if !ok || a.Event == nil {
		return fold.Line{}, false
	}
	l, found := m.shown().Line(a.Target.Seq)
	return l, found && doubt.Same(l.Event, a.Event)
}

// doubts are those about an act, in the smelt as it stood just before it happened.
func (m Model) doubts(a screen.Act) []doubt.Doubt {
	s := m.shown()
	if !s.Is() {
		return doubt.Of(a.Event, &figure.Reading{})
	}
	at := s.Clock(m.now) - m.now.Wall.Sub(a.Happened)
	am, amends := a.Event.(entry.Amend)
	switch l, found := s.Line(am.Target.Seq); {
	case amends && (am.Event == nil || !found):
		return nil
	case amends:
		at = l.At
	case a.Happened.IsZero():
		return doubt.Of(a.Event, s.Reading())
	}
	return doubt.Of(a.Event, s.AsOf(fold.All, at-time.Millisecond).Reading())
}

// answered tells whether the same was said before in this smelt, and that doubt answered.
func (m Model) answered(n doubt.Name, ev entry.Event) bool {
	if a, ok := ev.(entry.Amend); ok {
		ev = a.Event
	}
	s := m.shown()
	for l := range s.Backward() {
		if slices.Contains(doubt.Split(s.Sure(l)), n) && doubt.Same(l.Event, ev) {
			return true
		}
	}
	return false
}

// doubting asks once whether what can hardly be is so. Answered no, it goes back to the
// step that it came of.
type doubting struct {
	screen.Choice
	step screen.Dialog
}

// doubtful asks whether it is so, and then does all that was asked for.
func doubtful(says string, n doubt.Name, then screen.Effect, step screen.Dialog) doubting {
	return doubting{screen.Choice{Title: words.Really(says), Question: true, Options: []screen.Option{
		screen.Yes(func(*screen.Shared) screen.Effect { return screen.Each{screen.Sure(n), then} }),
		screen.No(func(*screen.Shared) screen.Effect { return screen.Said(words.NothingDone) }),
	}}, step}
}

// Update takes the answer.
func (d doubting) Update(sh *screen.Shared, k Pressed) (screen.Dialog, screen.Effect) {
	next, e := d.Choice.Update(sh, k)
	_, yes := screen.First[screen.Sure](e)
	switch past, closes := e.(screen.Past); {
	case closes:
		past.Closed = words.DoubtNotKept
		return d, past
	case next != nil:
		return d, e
	case yes || d.step == nil:
		return nil, e
	}
	return d.step, screen.Said(words.StepAgain)
}
