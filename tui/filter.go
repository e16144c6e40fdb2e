package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
)

// Filter stamps each key with the clocks at its arrival. Keys that the terminal
// delivered in one read arrive merged in one message; they are split again, so
// that fast scoops are all counted. A paste stays whole: it is for fields only.
func Filter(clock func() entry.Stamp) func(tea.Model, tea.Msg) tea.Msg {
	return func(_ tea.Model, msg tea.Msg) tea.Msg {
		k, ok := msg.(tea.KeyMsg)
		if !ok {
			return msg
		}
		at := clock()
		if k.Type != tea.KeyRunes || k.Paste || len(k.Runes) < 2 {
			return Pressed{Key: k, At: at}
		}
		burst := make(Burst, len(k.Runes))
		for i, r := range k.Runes {
			burst[i] = Pressed{Key: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: k.Alt && i == 0}, At: at}
		}
		return burst
	}
}
