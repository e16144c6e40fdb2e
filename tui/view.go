package tui

import (
	"slices"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/session"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// View is the screen as the terminal takes it: exactly as many lines as the
// window has, each as wide as it. Before the first size it is empty.
func (m Model) View() string { return m.drawn(&cell.Grid{}) }

// drawn is View on the sheet of the last frame, where that will do: a new one each
// second is most of what an idle screen asks of the memory.
func (m Model) drawn(sheet *cell.Grid) string {
	if m.w <= 0 || m.h <= 0 {
		return ""
	}
	*sheet = m.theme.GridFrom(*sheet, m.w, m.h)
	m.paint(*sheet)
	return sheet.Encode(m.theme.Palette())
}

func (m Model) paint(g cell.Grid) {
	sh := m.Shared()
	p := sh.Pen()
	if p.TooSmall(g) {
		return
	}
	if d, ok := m.dialog.(interface {
		Whole(cell.Grid, *screen.Shared)
	}); ok {
		d.Whole(g, sh)
	} else {
		m.screens[m.active].Paint(g, sh)
		m.paintOther(g, sh)
	}
	foot, body := g.Bounds().CutBottom(draw.FootRows)
	keys := m.screens[m.active].Hints(sh)
	if m.calm() {
		at := min(3, len(keys)) // behind the weightiest
		keys = slices.Concat(keys[:at], screen.Hints(paceKeys.All()...), keys[at:])
	}
	if m.unread > 0 {
		keys = append([]draw.KeyHint{{Key: m.toBook(), Does: words.MessagesWait(m.unread)}}, keys...)
	}
	var ask *draw.Ask
	if m.dialog != nil {
		_, body = body.CutTop(draw.TopRows)
		m.dialog.Paint(g.Sub(body), sh)
		keys, ask = m.dialog.Hints(), m.dialog.Ask(sh)
	}
	if m.locked.is() {
		ask, keys = m.locked.ask(m.theme), nil
	}
	p.Foot(g.Sub(foot), m.said(), ask, keys, m.helpHint())
}

// helpHint is the key that shows the help just now: none in a list, a field or
// behind the lock, where every key has its own meaning.
func (m Model) helpHint() draw.KeyHint {
	switch {
	case m.dialog != nil || m.locked.is():
		return draw.KeyHint{}
	case m.typing():
		return screen.Hint(screen.Global.HelpTyping)
	}
	return screen.Hint(screen.Global.Help)
}

// said is the answer with what became of its entries.
func (m Model) said() draw.Answer {
	a := draw.Answer{Text: m.answer.text}
	if len(m.answer.about) > 0 && m.other.Running() && !m.looked.Is() { // which fire it was is seen without looking up
		a.Text = words.AtFire(screen.NameOf(m.Shared(), m.running.Session), a.Text)
	}
	switch {
	case m.reminds():
		return draw.Answer{Text: words.ComesUp(m.comeUp()[0], screen.Global.Reminded.Help().Key)}
	case m.turning() != "" && a.Text == "":
		return draw.Answer{Text: ansi.Strip(m.turning()) + " " + words.BeingRead}
	case len(m.told) > 0:
		return draw.Answer{Text: words.Told(m.told, m.toBook())}
	case m.answer.refused:
		a.State = draw.Refused
	case len(m.answer.about) == 0:
		a.State = draw.Said
	case !m.ledger.waiting(m.answer.about):
		a.State = draw.IsKept
	case m.tally().NotKept > 0:
		a.State = draw.Unsafe
	default:
		a.State = draw.Working
	}
	return a
}

// toBook are the keys that lead to the Book from any screen.
func (Model) toBook() string {
	return screen.Global.Views.Help().Key + " " + screen.Letters[screen.Book]
}

// initials of who is in charge.
func (m Model) initials() string {
	if by := m.running.Reading().By; by != "" {
		return by
	}
	return m.by
}

// Shared is what screens and dialogs may look at.
func (m Model) Shared() *screen.Shared {
	sh := &screen.Shared{
		W: m.w, H: m.h, Theme: m.theme, Units: m.units, Now: m.now, By: m.initials(), Smelt: m.shown(), Running: m.running.Session,
		Heard: m.heard, Shelf: m.shelf, Tally: m.tally(), Careful: m.careful, Chemistry: m.chem, Spinner: m.turning(),
		Messages: m.messages, Unread: m.unread,
		House: m.folded, Home: m.home, Accounts: m.accounts, NewUID: m.newUID, Answers: m.cfg.Rehearsal != "", Full: m.full, Mark: m.marked(),
	}
	if m.dialog != nil {
		if a := m.dialog.Ask(sh); a != nil {
			sh.Asked = a.Label
		}
	}
	if !m.running.Running() {
		sh.Running = session.Session{}
	}
	if m.other.Running() {
		sh.Other = m.other.Session
	}
	if n := len(m.behind); n > 0 {
		sh.Behind = m.screens[m.behind[n-1]]
	}
	if m.looksAtWeek() {
		sh = m.inWeek(sh)
	}
	return sh
}

// tally counts the entries that are kept and those that are not.
func (m Model) tally() screen.Tally {
	t := screen.Tally{Kept: m.house, Trouble: m.ledger.trouble}
	if s := m.shown(); s.Is() && !s.ToLook() { // that one is in no book: what is kept then is of the house
		t.Kept = s.Kept()
	}
	n := len(m.ledger.pending)
	late := m.cfg.Rehearsal == "" && m.ledger.late(m.now) // a rehearsal's clock runs ahead of any disk
	if late && t.Trouble == "" {
		t.Trouble = words.SlowDisk
	}
	if n > 0 && t.Trouble != "" {
		t.NotKept = n
	} else {
		t.Keeping = n
	}
	return t
}

// Unkept is how many entries were handed to the book and not acknowledged.
func (m Model) Unkept() int { return len(m.ledger.pending) }
