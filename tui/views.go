package tui

import (
	"slices"

	"chargehand/tui/act"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// views is the list of screens: those that can be gone to now, and what else is
// one letter away on every screen.
func (m Model) views() screen.Effect {
	sh := m.Shared()
	var list []screen.Option
	for _, id := range m.order {
		if word := m.screens[id].Listed(sh); word != "" {
			list = append(list, screen.Opt(screen.Letters[id], word, func(*screen.Shared) screen.Effect { return screen.Go{To: id} }))
		}
	}
	if sh.Running.Is() && sh.Running.ID() != sh.Smelt.ID() {
		list = append(list, screen.Opt(screen.LetterRunning, words.DoRunning, func(*screen.Shared) screen.Effect { return screen.Running{} }))
	} else if sh.Other.Is() {
		list = append(list, screen.Opt(screen.LetterRunning, words.DoOtherFire, func(*screen.Shared) screen.Effect { return screen.Other{} }))
	}
	return screen.Choose(words.DoViews, append(list,
		screen.Opt(screen.LetterBackground, words.DoFlip, flip),
		screen.Opt(screen.LetterRemind, words.DoRemind, act.AskRemind),
		screen.Opt(screen.LetterSettings, words.DoSettings, settings),
		screen.Opt(screen.LetterLeave, words.DoQuit, act.Leave))...)
}

// askUnkept asks whether to wait for entries that are not kept, unless something
// else is asked.
func (m Model) askUnkept() Model {
	n := m.tally()
	if n.NotKept == 0 || m.dialog != nil {
		return m
	}
	m, _ = m.move(screen.Choose(words.LeaveUnkept(n.Keeping+n.NotKept),
		screen.Opt("w", words.LeaveWait, func(*screen.Shared) screen.Effect { return screen.Quit{} }),
		screen.Opt("t", words.LeaveStay, func(*screen.Shared) screen.Effect { return screen.Said(words.NothingDone) }),
		screen.Opt("x", words.LeaveAnyway, func(*screen.Shared) screen.Effect { return screen.Quit{Anyway: true} })))
	return m
}

// Screens are the screens, as they are listed.
func (m Model) Screens() []screen.ID { return slices.Clone(m.order) }
