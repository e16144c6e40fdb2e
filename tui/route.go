package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// handful is how many different keys one read may bring that a hand has typed.
// Some terminals send a paste as keys. Where the program stood still for a while a hand
// may have typed more, but hardly one of seldom among them: most longer words have one.
const (
	handful = 6
	seldom  = "ahjkoqvxyz" // letters that open lists and screens, or that are said once a day
)

// burst is keys that came in one read, each in its turn.
func (m Model) burst(keys Burst) (Model, []entry.Entry, tea.Cmd) {
	different, word := map[string]bool{}, false
	for _, k := range keys {
		t := string(screen.TypedOf(k.Key))
		different[t] = true
		word = word || strings.Contains(seldom, t)
	}
	if len(different) > handful && word && !m.typing() {
		var out []entry.Entry
		for _, k := range keys {
			next, es := m.note(k, true)
			m, out = next, append(out, es...)
		}
		return m.refuse(words.PasteIgnored), out, nil
	}
	var out []entry.Entry
	var cmds []tea.Cmd
	for _, k := range keys {
		next, es, cmd := m.press(k)
		m, out, cmds = next, append(out, es...), append(cmds, cmd)
	}
	return m, out, tea.Batch(cmds...)
}

// press is one key: guarded, then taken by the dialog, by the keys of every
// screen, or by the screen itself.
func (m Model) press(k Pressed) (Model, []entry.Entry, tea.Cmd) {
	t := screen.TypedOf(k.Key)
	if m.gathers(k, t) {
		return m.gather(k)
	}
	m, out, first := m.settle()
	m, es, then := m.pressed(k, t)
	return m.begins(k, t, es), append(out, es...), tea.Batch(first, then)
}

// pressed is a key that is not gathered with those before it.
func (m Model) pressed(k Pressed, t screen.Typed) (Model, []entry.Entry, tea.Cmd) {
	m.now, m.leaving, m.told = k.At, false, nil
	typing := m.typing()
	g, glove := m.guard.leans(press{t, k.ByHand(), typing, m.repeats(t)})
	m.guard = g
	if m.locked.is() {
		return m.held(k, t)
	}
	switch {
	case glove != meant:
		return m.leanedOn(k, t, glove)
	case k.Key.Paste && !typing:
		m, out := m.note(k, true)
		return m.refuse(words.PasteIgnored), out, nil
	}
	m = m.unattended(k.At)
	m.touched, typing = k.At, m.typing()
	m.careful = ""
	if late := m.late(k, t); late != "" {
		if m.shut.list != nil { // said once; of digits more may come
			m.shut = shut{}
		}
		return m.take(screen.Refuse(late), k, false)
	}
	asked := m.dialog
	m, e, step := m.route(k, t, typing)
	m, e = m.judged(e, step)
	m, out, cmd := m.take(e, k, asked != nil && m.dialog == nil)
	left, closed := typing && !m.typing(), asked != nil && m.dialog == nil
	m.shut = shut{}
	if left || closed && step == nil && !isDigit(t) { // by an act: a weight may be on its way still
		m.shut = shut{since: k.At, deaf: deafFor}
	}
	if m.dialog == nil {
		m.steps, m.sure = nil, nil
	}
	if left || closed {
		var es []entry.Entry
		m, es = m.drafted()
		out = append(out, es...)
	}
	return m, out, cmd
}

// route hands a key to whom it is for. The step is the dialog whose answer it is.
func (m Model) route(k Pressed, t screen.Typed, typing bool) (next Model, e screen.Effect, step screen.Dialog) {
	sh := m.Shared()
	if key.Matches(t, screen.Global.Leave) {
		return m.setAside(), act.Leave(sh), nil
	}
	if step = m.dialog; step != nil {
		m.dialog, e = step.Update(sh, k)
		if past, ok := e.(screen.Past); ok {
			m, e = m.past(past, k, t)
			return m, e, nil
		}
		return m, e, step
	}
	m, e = m.undisturbed(k, t, typing)
	return m, e, nil
}

// past hands a key that the open dialog has no use for to the screen, when it is
// one of the screen's: an open list must not swallow an act.
func (m Model) past(p screen.Past, k Pressed, t screen.Typed) (Model, screen.Effect) {
	g := screen.Global
	if !key.Matches(t, m.takes(t).Keys().All()...) && !key.Matches(t, g.Views, g.Far, g.Help, g.HelpTyping, g.Other) {
		return m, p.Else
	}
	if p.Was != nil {
		m.dialog = p.Was
	}
	m = m.closes(p.Closed)
	return m.undisturbed(k, t, m.typing())
}

// undisturbed hands a key to whom it is for while nothing is asked.
func (m Model) undisturbed(k Pressed, t screen.Typed, typing bool) (Model, screen.Effect) {
	if e, everywhere := m.everywhere(t, typing); everywhere {
		return m, e
	}
	next, e := m.takes(t).Update(m.Shared(), k)
	return m.With(next), e
}

// everywhere is what a key does on every screen, if it does anything there.
func (m Model) everywhere(t screen.Typed, typing bool) (screen.Effect, bool) {
	here := m.active == screen.Help
	switch {
	case key.Matches(t, screen.Global.Back):
		return screen.Back{}, true
	case !here && key.Matches(t, screen.Global.HelpTyping), !here && !typing && key.Matches(t, screen.Global.Help):
		return screen.Go{To: screen.Help}, true
	case typing:
		return nil, false
	case key.Matches(t, screen.Global.Other):
		return screen.Other{}, true
	case key.Matches(t, screen.Global.Reminded) && len(m.comeUp()) > 0:
		return m.answerReminder(), true
	case key.Matches(t, screen.Global.Help, screen.Global.HelpTyping): // the key that opened it
		return screen.Back{}, true
	case key.Matches(t, screen.Global.Views):
		return m.views(), true
	case key.Matches(t, screen.Global.Far) && !(m.active == screen.Fire && m.shown().Is()): // there it is the screen's own
		return screen.Far{}, true
	}
	return nil, false
}

// typing tells whether keys are text just now.
func (m Model) typing() bool {
	if m.dialog != nil {
		return m.dialog.Typing()
	}
	s, ok := m.screens[m.active].(screen.Typer)
	return ok && s.Typing()
}

// repeats tells whether a key may come as fast as a hand can.
func (m Model) repeats(t screen.Typed) bool {
	switch {
	case key.Matches(t, screen.Global.Back):
		return true
	case m.typing():
		return !key.Matches(t, screen.FieldKeys.Done)
	case m.dialog != nil:
		return key.Matches(t, screen.Move.All()...)
	}
	return key.Matches(t, m.takes(t).Keys().Repeating()...)
}
