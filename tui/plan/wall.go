package plan

import (
	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// wall is the list of what stands on the page for the wall in the person's own words,
// kept from smelt to smelt. The sheet itself is printed by the command line.
func wall(sh *screen.Shared) screen.Effect {
	h := sh.House()
	own := h.WallWords.Own()
	n := entry.WallQuestions
	list := screen.Lettered('k', n+len(own)+1, func(i int) (string, func(*screen.Shared) screen.Effect) {
		if i < n {
			q := entry.WallQuestion(i)
			asks, says := modelwords.WallAsks(q), h.WallWords.Answer(q)
			return words.WallSays(asks, says), func(*screen.Shared) screen.Effect {
				return screen.AskWords(asks, says, func(text string) screen.Effect { return onWall(h.WallWords.Answered(q, text), text) })
			}
		}
		if i < n+len(own) {
			was := own[i-n]
			return was, func(*screen.Shared) screen.Effect {
				return screen.Question(words.OffTheWall(was), func(*screen.Shared) screen.Effect { return onWall(h.WallWords.Without(i), was) })
			}
		}
		return words.AnotherLine, func(*screen.Shared) screen.Effect {
			return screen.AskWords(words.AnotherLine, "", func(text string) screen.Effect { return onWall(h.WallWords.With(text), text) })
		}
	})
	return screen.Ask{Dialog: screen.Choice{Title: words.WallTitle, Options: list, Done: func(*screen.Shared) screen.Effect { return screen.Said(words.WallPrints) }}}
}

// onWall keeps the words as they stand now, and shows the list again.
func onWall(w entry.WallWords, text string) screen.Effect {
	return screen.Each{screen.House{{Event: w}}, screen.Again(wall), screen.Said(words.WallKept(text))}
}
