package tui

import (
	"chargehand/tui/cell"
	"chargehand/tui/screen"
)

// paintOther tells, under the top line of the screens that do not stand beside the fire by
// themselves, of the other fire: at Fire of the one that is not shown, elsewhere of the one
// that is more urgent. The far view shows both by itself.
func (m Model) paintOther(g cell.Grid, sh *screen.Shared) {
	s := m.screens[m.active]
	if _, house := s.(screen.Beside); house || !sh.Other.Is() {
		return
	}
	if m.active != screen.Fire || m.looked.Is() {
		screen.RowOf(g, sh, screen.Urgent(sh))
		return
	}
	if far, is := s.(interface{ IsFar() bool }); !is || !far.IsFar() {
		screen.RowOf(g, sh, sh.Other)
	}
}
