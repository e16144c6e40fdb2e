package act

import (
	"strings"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// remindIn is after how many minutes something comes up: a minute to a day.
var remindIn = screen.Limits{Unit: "min", Least: 1, Most: 1440}

// AskRemind asks what one wants to be reminded of: in how many minutes, a word, once or
// each time that so many have gone by. It is kept in the house, with a smelt alight or
// without.
func AskRemind(*screen.Shared) screen.Effect {
	return screen.AskNumber(words.RemindIn, remindIn, entry.None[float64](), func(v float64) screen.Effect {
		minutes := entry.Minute(v)
		return screen.AskWords(words.RemindWord, "", func(word string) screen.Effect {
			word = strings.TrimSpace(word)
			ask := func(each bool) func(*screen.Shared) screen.Effect {
				return func(sh *screen.Shared) screen.Effect {
					r := house.RemindIn(sh.Now.Wall, minutes, word, each)
					return screen.Each{screen.House{{Event: r}}, screen.Said(words.WillRemind(r))}
				}
			}
			return screen.ChooseOr("o", words.RemindHow, screen.Opt("o", words.RemindOnce, ask(false)), screen.Opt("e", words.RemindEach, ask(true)))
		})
	})
}
