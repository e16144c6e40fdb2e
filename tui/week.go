package tui

import (
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/lot"
	"chargehand/model/rule"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// justNow is how long after a deed its caution still comes.
const justNow = 3 * time.Minute

// weekCaution shows the caution that a deed of the week brings, once to a person, and
// writes down that it did. It comes with a tick and not with the key of the deed, so that
// it stands in the way of no key that comes with it.
func (m Model) weekCaution() (Model, []entry.Entry) {
	if m.dialog != nil || m.locked.is() {
		return m, nil
	}
	of := func(uid entry.UID) entry.Material {
		l, _ := m.folded().Lot(string(uid))
		return l.Of()
	}
	damp := func(uid entry.UID) bool {
		l, _ := m.folded().Lot(string(uid))
		return lot.DampToCharge(l)
	}
	for _, e := range m.home.Lately() {
		if m.now.Wall.Sub(e.Kept) > justNow {
			break
		}
		for _, c := range rule.WeekCautions(e.Event, of, damp) {
			if m.home.Cautioned(c.ID, m.initials()) {
				continue
			}
			m.dialog, m.touched = weekCard(c.ID), m.now
			m, shown := m.hand(entry.House, screen.Act{Event: entry.CautionShown{Caution: c.ID}}, m.active, "")
			return m, []entry.Entry{shown}
		}
	}
	return m, nil
}

// weekCard is a caution of the week, over the lower part of a screen. Any key puts it away,
// and does what it does.
type weekCard string

func (weekCard) Typing() bool { return false }

func (c weekCard) Update(_ *screen.Shared, k screen.Pressed) (screen.Dialog, screen.Effect) {
	if key.Matches(screen.TypedOf(k.Key), screen.Global.Back) {
		return nil, nil
	}
	return nil, screen.Past{Closed: words.CautionRead}
}

// Stays as long as it takes to read.
func (weekCard) Stays() time.Duration { return screen.Readable }

// Ask is nothing: the foot goes on saying what became of the deed.
func (weekCard) Ask(*screen.Shared) *draw.Ask { return nil }

func (weekCard) Hints() []draw.KeyHint { return screen.Hints(screen.Global.Back) }

// cautionRows is how much room it takes.
const cautionRows = 10

// Paint covers the lower part.
func (c weekCard) Paint(g cell.Grid, sh *screen.Shared) {
	w, h := g.Size()
	room := cell.Rect{Y: max(0, h-cautionRows), W: w, H: min(cautionRows, h)}
	g.Fill(room, ' ', sh.Theme.Style(theme.Text))
	rule, in := room.CutTop(1)
	g.Fill(rule, sh.Theme.Marks().HLine, sh.Theme.Style(theme.Frame))
	sh.Pen().Caution(g.Sub(cell.Rect{X: 2, Y: in.Y, W: w - 4, H: in.H}), *scene.CautionText(string(c)))
}
