package tui

import (
	"chargehand/model/entry"
	"chargehand/tui/screen"
)

// caution shows the next caution that is due beside the furnace, and writes
// down that it was shown. It comes with a tick and not with a key, so that quick
// keys do not drive several past unread; the next key takes it away, and acts.
// One that presses does not wait for the next key.
func (m Model) caution() (Model, []entry.Entry) {
	if _, beside := m.screens[m.active].(screen.Beside); beside {
		return m.weekCaution()
	}
	s := m.running
	shows, careful := m.screens[m.active].(screen.Careful)
	free := careful && m.dialog == nil && !m.looked.Is() && !m.locked.is()
	if !free || !s.Running() {
		return m, nil
	}
	next, due := s.Caution()
	if !due || m.careful != "" && !next.Moment.Presses() || !shows.ShowsCaution(m.Shared()) {
		return m, nil
	}
	m.careful = next.ID
	m, e := m.hand(s.ID(), screen.Act{Event: entry.CautionShown{Caution: m.careful}}, m.active, "")
	return m.refolded([]entry.Entry{e}), []entry.Entry{e}
}
