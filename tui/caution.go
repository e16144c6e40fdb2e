package tui

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/screen"
)

// cautionsApart is how long a caution of a rehearsal waits after another one, on its clock: at its usual pace two minutes are
// two seconds, and nobody reads four cautions in ten.
const cautionsApart = 20 * time.Minute

// sinceCaution is how long ago the last caution of the smelt was shown, by its entries; very long if none was.
func (m Model) sinceCaution() time.Duration {
	ago := time.Duration(math.MaxInt64)
	for l := range m.running.Of(entry.KindCaution) {
		ago = m.running.At() - l.At
	}
	return ago
}

// caution shows the next caution that is due beside the furnace, and writes
// down that it was shown. It comes with a tick and not with a key, so that quick
// keys do not drive several past unread; the next key takes it away, and acts.
// One that presses does not wait for the next key.
func (m Model) caution() (Model, []entry.Entry) {
	if _, beside := m.screens[m.active].(screen.Beside); beside {
		return m.weekCaution()
	}
	s := m.running.Session
	shows, careful := m.screens[m.active].(screen.Careful)
	free := careful && m.dialog == nil && !m.looked.Is() && !m.locked.is()
	if !free || !s.Running() {
		return m, nil
	}
	next, due := s.Caution()
	if !due || m.careful != "" && !next.Moment.Presses() || !shows.ShowsCaution(m.Shared()) {
		return m, nil
	}
	if m.cfg.Rehearsal != "" && !next.Moment.Presses() && m.sinceCaution() < cautionsApart {
		return m, nil
	}
	m.careful = next.ID
	m, e := m.hand(s.ID(), screen.Act{Event: entry.CautionShown{Caution: m.careful}}, m.active, "")
	return m.refolded([]entry.Entry{e}), []entry.Entry{e}
}
