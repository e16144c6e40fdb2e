package fire

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// askReady is the list of what must be ready: a key ticks a line off, or undoes
// that. The list ends with enter and with its last tick.
func askReady(sh *screen.Shared) screen.Effect {
	ticked := scene.Ready(sh.Smelt)
	m, marks := sh.Theme.Marks(), make([]string, len(words.ReadyChecks))
	list := screen.Lettered(0, len(words.ReadyChecks), func(i int) (string, func(*screen.Shared) screen.Effect) {
		check, mark, name := words.ReadyChecks[i], m.Open, scene.IsReady
		if ticked[i] {
			mark, name = m.Ticked, scene.IsNotReady
		}
		marks[i] = mark + " " + check
		return check, func(*screen.Shared) screen.Effect { // its letter is of its own words, ticked or not
			return screen.Each{
				screen.Did(entry.Setting{Name: name, Value: check}, func(*screen.Shared) string { return words.Ticked(check, name == scene.IsReady) }),
				screen.Again(func(sh *screen.Shared) screen.Effect {
					if slices.Contains(scene.Ready(sh.Smelt), false) {
						return askReady(sh)
					}
					return screen.Said(words.Ticked(check, true) + "; " + words.AllReady)
				}),
			}
		}
	})
	for i := range list {
		list[i].SetHelp(list[i].Help().Key, marks[i])
	}
	return screen.Ask{Dialog: screen.Choice{
		Title: words.ReadyAsks, Options: list, Done: func(*screen.Shared) screen.Effect { return screen.Said(words.ReadyDone) },
	}}
}

func askCloser(sh *screen.Shared) screen.Effect {
	return screen.AskWords(words.DoCloser, scene.Closer(sh.Smelt), func(who string) screen.Effect {
		return screen.Did(entry.Setting{Name: scene.Closes, Value: who}, func(*screen.Shared) string { return words.Closes(who) })
	})
}
