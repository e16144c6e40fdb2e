package act

import (
	"fmt"

	"chargehand/model/entry"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// AskSample asks of what a sample is, and for its label: by it the lab's answer finds the
// smelt, months later.
func AskSample(sh *screen.Shared, from entry.Event, then func(entry.Event) screen.Effect) screen.Effect {
	was := as[entry.Sample](from)
	given := was.Label
	if from == nil {
		given = nextLabel(sh)
	}
	of := func(what string) screen.Effect {
		was.Of = what
		return screen.Ask{Dialog: screen.Field{Label: words.SampleMark, Blank: words.SampleNoMark, Input: screen.Prefilled(given, false), Done: func(_ *screen.Shared, in screen.Input) (screen.Effect, error) {
			was.Label = in.Trimmed()
			return then(was), nil
		}}}
	}
	list := screen.Lettered('q', len(words.SampleWhats), func(i int) (string, func(*screen.Shared) screen.Effect) {
		return words.SampleWhats[i], func(*screen.Shared) screen.Effect { return of(words.SampleWhats[i]) }
	})
	return screen.Choose(words.SampleOf, append(list, screen.Opt(otherLetter, words.InOtherWords, func(*screen.Shared) screen.Effect {
		return screen.AskWords(words.SampleOf, was.Of, of)
	}))...)
}

// nextLabel is the label of the next sample of the smelt: the number of the smelt among
// one's own and that of the sample, 7-S3.
func nextLabel(sh *screen.Shared) string {
	smelt, sample := 1, 1
	lit := sh.Smelt.Reading().Lit
	for _, l := range sh.Shelf.Lines {
		if !l.Practice && !l.Rehearsal && !l.Invented && l.ID != sh.Smelt.ID() && l.Lit.Before(lit) {
			smelt++
		}
	}
	for range sh.Smelt.Of(entry.KindSample) {
		sample++
	}
	return fmt.Sprintf("%d-S%d", smelt, sample)
}
