package tui

import (
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
)

// View is the screen as the terminal takes it: exactly as many lines as the
// window has, each as wide as it. Before the first size it is empty.
func (m Model) View() string {
	if m.w <= 0 || m.h <= 0 {
		return ""
	}
	g := m.theme.Grid(m.w, m.h)
	m.paint(g)
	return g.Encode(m.theme.Palette())
}

func (m Model) paint(g cell.Grid) {
	if m.w < paint.MinW || m.h < paint.MinH {
		paint.TooSmall(g, m.theme)
		return
	}
	sh := m.shared()
	if d, ok := m.dialog.(interface{ whole(cell.Grid, shared) }); ok {
		d.whole(g, sh)
	} else {
		m.screens[m.active].paint(g, sh)
	}
	foot, body := g.Bounds().CutBottom(paint.FootRows)
	keys := m.hints(sh)
	var ask *paint.Ask
	if m.dialog != nil {
		_, body = body.CutTop(paint.TopRows)
		m.dialog.paint(g.Sub(body), sh)
		keys, ask = m.dialog.hints(), m.dialog.ask(sh)
	}
	if m.locked.is() {
		ask, keys = m.locked.ask(), nil
	}
	paint.Foot(g.Sub(foot), m.theme, m.said(), ask, keys, m.helpHint())
}

// helpHint is the key that shows the help just now: none in a list, a field or
// behind the lock, where every key has its own meaning.
func (m Model) helpHint() paint.KeyHint {
	switch {
	case m.dialog != nil || m.locked.is():
		return paint.KeyHint{}
	case m.typing():
		return hint(global.HelpTyping)
	}
	return hint(global.Help)
}

// hints are the keys that make sense on this screen.
func (m Model) hints(sh shared) []paint.KeyHint {
	s := m.screens[m.active]
	if own, ok := s.(interface {
		hints(shared) []paint.KeyHint
	}); ok {
		return own.hints(sh)
	}
	return append(hints(s.keys().all()...), hint(global.Views))
}

// said is the answer with what became of its entries.
func (m Model) said() paint.Answer {
	a := paint.Answer{Text: m.answer.text}
	switch {
	case len(m.told) > 0:
		return paint.Answer{Text: words.Told(m.told)}
	case m.answer.refused:
		a.State = paint.Refused
	case len(m.answer.about) == 0:
		a.State = paint.Said
	case !m.ledger.waiting(m.answer.about):
		a.State = paint.IsKept
	case m.tally().notKept > 0:
		a.State = paint.Unsafe
	default:
		a.State = paint.Working
	}
	return a
}

// shown is the smelt on the screen: another than the one at work when one is
// looked at.
func (m Model) shown() session.Session {
	if m.looked.Is() {
		return m.looked
	}
	return m.running
}

// initials of who is in charge.
func (m Model) initials() string {
	if by := m.running.Reading().By; by != "" {
		return by
	}
	return m.by
}

// shared is what screens and dialogs may look at.
func (m Model) shared() shared {
	sh := shared{
		w: m.w, h: m.h, theme: m.theme, now: m.now, by: m.initials(), smelt: m.shown(), running: m.running,
		shelf: m.stand.lines, shelfErr: m.stand.err, shelfKnown: m.stand.known || m.stand.err != nil, demo: m.stand.shown, starters: m.starters, usual: m.cfg.Starters[0],
		tally: m.tally(), careful: m.careful, chemistry: m.chem,
	}
	if !m.running.Running() {
		sh.running = session.Session{}
	}
	if n := len(m.behind); n > 0 {
		sh.behind = m.behind[n-1]
		sh.behindKeys = m.screens[sh.behind].keys()
	}
	return sh
}

// tally counts the entries that are kept and those that are not.
func (m Model) tally() tally {
	t := tally{kept: m.house, trouble: m.ledger.trouble}
	if s := m.shown(); s.Is() && !s.ToLook() { // that one is in no book: what is kept then is of the house
		t.kept = s.Kept()
	}
	n := len(m.ledger.pending)
	late := m.ledger.late(m.now)
	if late && t.trouble == "" {
		t.trouble = words.SlowDisk
	}
	if n > 0 && t.trouble != "" {
		t.notKept = n
	} else {
		t.keeping = n
	}
	return t
}

// Unkept is how many entries were handed to the book and not acknowledged.
func (m Model) Unkept() int { return len(m.ledger.pending) }
