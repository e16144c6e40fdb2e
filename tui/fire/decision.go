package fire

import (
	"time"

	"chargehand/model/entry"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// decision is the card for the question whether to take the bloom out, wait or
// give the smelt up. It decides nothing; giving up asks once more.
type decision struct{}

// ways are what can be decided.
func (decision) ways() screen.Choice {
	return screen.Choice{Title: words.DoDecide, Options: []screen.Option{
		screen.Opt(decideKeys.extract, words.DecideExtract, act.Now(act.AskExtract)),
		screen.Opt(decideKeys.wait, words.DecideWait, func(*screen.Shared) screen.Effect { return act.Book(entry.Note{Text: words.DecidedWait}) }),
		screen.Opt(decideKeys.giveUp, words.DecideGiveUp, func(*screen.Shared) screen.Effect {
			return screen.Question(words.Sure(words.GiveUpAsks), func(*screen.Shared) screen.Effect { return giveUp() })
		}),
	}}
}

// giveUp opens and closes a smelt without a bloom.
func giveUp() screen.Effect {
	return screen.Each{
		screen.Keep{{Event: entry.Extract{None: true}}, {Event: entry.PhaseSet{Phase: entry.Closed}}},
		screen.Said(words.GivenUp),
		act.ThenLesson,
	}
}

func (decision) Typing() bool { return false }

func (d decision) Update(sh *screen.Shared, k screen.Pressed) (screen.Dialog, screen.Effect) {
	next, e := d.ways().Update(sh, k)
	if next != nil {
		return d, e
	}
	return nil, e
}

// Stays as long as it takes to read the card.
func (decision) Stays() time.Duration { return screen.Readable }

func (d decision) Ask(sh *screen.Shared) *draw.Ask { return d.ways().Ask(sh) }

func (d decision) Hints() []draw.KeyHint {
	var hs []draw.KeyHint
	for _, o := range d.ways().Options {
		hs = append(hs, screen.Hint(o.Binding))
	}
	return append(hs, screen.Hint(screen.Global.Back))
}

// Paint draws nothing over the screen: the card takes its place.
func (decision) Paint(cell.Grid, *screen.Shared) {}

// Whole is the card.
func (decision) Whole(g cell.Grid, sh *screen.Shared) {
	v := scene.Of(g, sh, sh.Smelt, Map.Charge)
	v.Ending = scene.EndingOf(sh.Smelt)
	paintDecision(g, pen{sh.Pen()}, sh.Smelt.Reading(), v)
}
