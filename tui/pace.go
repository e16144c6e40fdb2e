package tui

import (
	"github.com/charmbracelet/bubbles/key"

	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// PaceKeys set the clock of a rehearsal. They are no act and are not written down: the same keys at another pace are the same
// smelt. They stand apart from all layouts of letters.
type PaceKeys struct{ Hold, Slower, Faster key.Binding }

var paceKeys = PaceKeys{
	Hold:   screen.Bind(words.DoHold, "f2"),
	Slower: screen.Bind(words.DoSlower, "f3"),
	Faster: screen.Bind(words.DoFaster, "f4"),
}

// All of them.
func (k PaceKeys) All() []key.Binding { return []key.Binding{k.Hold, k.Slower, k.Faster} }

// paces are seconds of a rehearsal in one of the hand; usualPace is a minute in a second.
var paces = []int{1, 10, 60, 600}

const usualPace = 2

// calm tells whether a rehearsal may run at its pace: beside the fire, with nothing asked. Elsewhere it runs as a hand does,
// so that nothing closes itself and no charge is missed while one reads.
func (m Model) calm() bool {
	return m.cfg.Rehearsal != "" && m.active == screen.Fire && m.dialog == nil && !m.locked.is() && !m.looked.Is() && m.running.Is()
}

// cautioned tells whether a caution lies over the fire: nobody looks at both.
func (m Model) cautioned() bool { return m.careful != "" }

// hasRead puts it away.
func (m Model) hasRead() Model {
	m.careful = ""
	m.version++
	return m
}

// pacedAs is the root with what its screens say of the clock.
func (m Model) pacedAs(said string) Model {
	if said != m.paced {
		m.paced = said
		m.version++
	}
	return m
}
