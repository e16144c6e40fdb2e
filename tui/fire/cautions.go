package fire

import (
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/rule"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// cautionCards shows every caution again, one after the other.
type cautionCards struct{ at int }

func rereadCautions(*screen.Shared) screen.Effect { return screen.Ask{Dialog: cautionCards{}} }

func (c cautionCards) Typing() bool { return false }

// Update goes to the next with any key that is no act.
func (c cautionCards) Update(_ *screen.Shared, k screen.Pressed) (screen.Dialog, screen.Effect) {
	if key.Matches(screen.TypedOf(k.Key), screen.Global.Back) {
		return nil, nil
	}
	past := screen.Past{Closed: words.CautionsClosed}
	if c.at+1 >= len(rule.Cautions) {
		return nil, past
	}
	return cautionCards{c.at + 1}, past
}

// Stays as long as it takes to read one.
func (c cautionCards) Stays() time.Duration { return screen.Readable }

func (c cautionCards) Ask(*screen.Shared) *draw.Ask {
	return &draw.Ask{Label: words.CautionOf(c.at+1, len(rule.Cautions)), Hint: words.AnyKeyNext}
}

func (c cautionCards) Hints() []draw.KeyHint { return screen.Hints(screen.Global.Back) }

// Paint covers the picture of the shaft, or where there is none the figures and
// the log: never the timer, the next charge or the foot.
func (c cautionCards) Paint(g cell.Grid, sh *screen.Shared) {
	w, _ := g.Size()
	room := scene.CautionRoom(scene.LayoutOf(w, sh.H))
	room.Y -= draw.TopRows // the grid of a dialog begins below the top
	text := *scene.CautionText(rule.Cautions[c.at].ID)
	text.Goes = "" // the foot says it
	sh.Pen().Caution(g.Sub(room), text)
}
