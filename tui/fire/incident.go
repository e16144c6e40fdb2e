package fire

import (
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
	"chargehand/tui/act"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// askIncident books what happened and then says what to do first, before any figure.
func askIncident(sh *screen.Shared) screen.Effect {
	asks := act.AskIncident(sh, nil, func(ev entry.Event) screen.Effect {
		i := ev.(entry.Incident)
		said := screen.Say(func(sh *screen.Shared) string { return act.SayLast(sh) + words.IncidentKept })
		if words.IncidentTitle(i.What) == "" {
			return screen.Each{screen.Keep{{Event: ev}}, said}
		}
		return screen.Each{screen.Keep{{Event: ev}}, said, screen.Ask{Dialog: firstAid{i.What}}}
	})
	ask, _ := asks.(screen.Ask)
	list, isList := ask.Dialog.(screen.Choice)
	what, any := lastIncident(sh)
	if !isList || !any {
		return asks
	}
	list.Options = append(list.Options, screen.Opt("r", words.IncidentAgain, func(*screen.Shared) screen.Effect {
		return screen.Ask{Dialog: firstAid{what}}
	}))
	return screen.Ask{Dialog: list}
}

// lastIncident is the last incident of which there is something to read.
func lastIncident(sh *screen.Shared) (what entry.IncidentWhat, any bool) {
	for l := range sh.Smelt.Of(entry.KindIncident) {
		if i := l.Event.(entry.Incident); words.IncidentTitle(i.What) != "" {
			what, any = i.What, true
		}
	}
	return what, any
}

// firstAid says what to do first. It stays until a key is pressed, and an act keyed then
// is done.
type firstAid struct{ what entry.IncidentWhat }

func (firstAid) Typing() bool { return false }

// Stays as long as nobody is back at the keys.
func (firstAid) Stays() time.Duration { return 24 * time.Hour }

func (f firstAid) Update(_ *screen.Shared, k screen.Pressed) (screen.Dialog, screen.Effect) {
	if key.Matches(screen.TypedOf(k.Key), screen.Global.Back, screen.FieldKeys.Done) {
		return nil, screen.Said(words.IncidentClosed)
	}
	return f, screen.Past{Closed: words.IncidentClosed, Else: screen.Refuse(words.IncidentTitle(f.what))}
}

func (f firstAid) Ask(*screen.Shared) *draw.Ask {
	return &draw.Ask{Label: words.IncidentTitle(f.what), Hint: words.IncidentRead}
}

func (firstAid) Hints() []draw.KeyHint { return screen.Hints(screen.Global.Back) }

// Paint leaves the minutes and the charge where all its words fit under them, and
// covers them too where they do not: nothing of it is ever cut.
func (f firstAid) Paint(g cell.Grid, sh *screen.Shared) {
	w, h := g.Size()
	why, care := words.IncidentFirst(f.what)
	text := draw.CautionText{Title: string(f.what), Fact: why, Care: care, Local: modelwords.LocalRules}
	from := scene.LayoutOf(w, sh.H).Head().Bottom() - draw.TopRows // the grid of a dialog begins below the top
	if h-from < sh.Pen().FirstAidRows(w, text) {
		from = 0
	}
	sh.Pen().FirstAid(g.Sub(cell.Rect{Y: from, W: w, H: h - from}), words.IncidentLarge(f.what), text)
}
