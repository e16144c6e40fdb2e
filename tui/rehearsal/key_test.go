package rehearsal_test

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/tui/screen"
)

var named = map[string]tea.KeyType{"left": tea.KeyLeft, "right": tea.KeyRight, "enter": tea.KeyEnter}

// pressed is a screen after a key.
func pressed(s screen.Screen, sh *screen.Shared, k string) screen.Screen {
	msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
	if t, ok := named[k]; ok {
		msg = tea.KeyMsg{Type: t}
	}
	s, _ = s.Update(sh, screen.Pressed{Key: msg, At: sh.Now})
	return s
}
