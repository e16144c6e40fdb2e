package plan

import (
	"time"

	"chargehand/model/plan"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// slagCheck is the slag to expect of the way shown: what comes together in it, how it
// melts and runs, and what could be put in, in the trade's order, each with its price.
type slagCheck struct{ of plan.Slag }

// checkSlag opens it.
func (s Screen) checkSlag() screen.Effect {
	if !s.made {
		return screen.Refuse(words.BeingReckoned)
	}
	if s.way >= len(s.plan.Ways) {
		return screen.Refuse(words.NoOreGivesIt)
	}
	var f plan.Foreseen
	if s.foresee != nil {
		f = s.foresee[s.way]
	}
	return screen.Ask{Dialog: slagCheck{s.plan.Slag(s.plan.Ways[s.way], f)}}
}

func (slagCheck) Typing() bool { return false }

// Stays as long as it takes to read.
func (slagCheck) Stays() time.Duration { return 2 * screen.Readable }

func (c slagCheck) Update(sh *screen.Shared, k screen.Pressed) (screen.Dialog, screen.Effect) {
	_, e := screen.Choice{Title: words.DoSlagCheck}.Update(sh, k)
	if past, is := e.(screen.Past); is {
		return c, screen.Past{Closed: words.SlagClosed, Else: past.Else}
	}
	return nil, screen.Said(words.SlagClosed)
}

func (slagCheck) Ask(*screen.Shared) *draw.Ask {
	return &draw.Ask{Label: words.SlagAsks}
}

func (slagCheck) Hints() []draw.KeyHint {
	return []draw.KeyHint{screen.Hint(screen.Global.Back)}
}

// Paint draws nothing over the screen: the check takes its place.
func (slagCheck) Paint(cell.Grid, *screen.Shared) {}

// Whole is the check.
func (c slagCheck) Whole(g cell.Grid, sh *screen.Shared) {
	th, u, s := sh.Theme, sh.Units, c.of
	screen.TopBeside(g, sh, words.DoSlagCheck, "")
	w, h := g.Size()
	y := 3
	line := func(text string, role theme.Role) {
		if y < h-2 {
			y += g.Wrap(cell.Rect{X: 2, Y: y, W: w - 4, H: h - 2 - y}, text, th.Style(role))
		}
	}
	line(words.SlagComes(u, s), theme.Strong)
	line(words.SlagOf(s), theme.Text)
	line(words.SlagMelts(u, s), theme.Text)
	line(words.SlagIndex(s), theme.Text)
	line(words.SlagVerdict(s), theme.Strong)
	y++
	if y < h-3 {
		g.Text(2, y, words.RemediesHead, th.Style(theme.Quiet))
		y++
	}
	name, melts := 20, 12
	for _, r := range s.Remedies {
		if y >= h-3 {
			break
		}
		role := theme.Text
		if r.Helps {
			role = theme.Strong
		}
		g.TextIn(cell.Rect{X: 2, Y: y, W: name - 2, H: 1}, words.RemedyName(r), th.Style(role))
		g.TextIn(cell.Rect{X: 2 + name, Y: y, W: melts, H: 1}, words.RemedyDoes(u, r), th.Style(role))
		y += max(1, g.Wrap(cell.Rect{X: 2 + name + melts, Y: y, W: w - name - melts - 4, H: h - 2 - y}, words.RemedyPrice(u, r), th.Style(role)))
	}
}
