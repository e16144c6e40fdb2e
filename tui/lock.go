package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// lock keeps passing hands out: every key is written down as held back and
// does nothing, until the word on the screen is typed. No two letters of a word
// touch on a keyboard, so that nothing that leans on one unlocks.
type lock struct {
	word  string
	typed int // letters of it, so far
}

// locking takes the words in turn, so that no hand learns one.
func locking(n int) lock { return lock{word: words.LockWords[n%len(words.LockWords)]} }

func (l lock) is() bool { return l.word != "" }

// with is the lock after a key: open after the last letter, begun anew after a
// wrong one.
func (l lock) with(t screen.Typed) lock {
	switch string(t) {
	case l.word[l.typed : l.typed+1]:
		l.typed++
	case l.word[:1]:
		l.typed = 1
	default:
		l.typed = 0
	}
	if l.typed == len(l.word) {
		return lock{}
	}
	return l
}

func (l lock) ask(th theme.Theme) *draw.Ask {
	typed := th.Component(theme.Field).Render(l.word[:l.typed])
	return &draw.Ask{Label: words.Locked, Value: func(int) string { return typed }, Hint: words.Unlocks(l.word)}
}

// held writes a key down that the lock holds back.
func (m Model) held(k Pressed, t screen.Typed) (Model, []entry.Entry, tea.Cmd) {
	m, out := m.note(k, true)
	if m.locked = m.locked.with(t); !m.locked.is() {
		m.answer = answer{text: words.Unlocked}
	}
	m, es := m.flush()
	return m, append(out, es...), nil
}
