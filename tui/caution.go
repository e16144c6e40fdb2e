package tui

import (
	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/paint"
)

// caution shows the next caution that is due beside the furnace, and writes
// down that it was shown. It comes with a tick and not with a key, so that quick
// keys do not drive several past unread; the next key takes it away, and acts.
// That of a lost blast does not wait for the next key.
func (m Model) caution() (Model, []entry.Entry) {
	s := m.running
	free := m.active == fireScreen && m.dialog == nil && !m.looked.Is() && !m.locked.is()
	if !free || !s.Running() || len(s.Cautions()) == 0 || m.careful != "" && s.Cautions()[0].Moment != rule.AtBlastLost ||
		!paint.CautionShows(m.w, m.h, m.far(), len(s.Standing()) > 0) {
		return m, nil
	}
	m.careful = s.Cautions()[0].ID
	m, e := m.hand(s.ID(), act{event: entry.CautionShown{Caution: m.careful}}, m.active, "")
	return m.refolded([]entry.Entry{e}), []entry.Entry{e}
}

// cautionText is what a caution says; nil for none.
func cautionText(id string) *paint.CautionText {
	if id == "" {
		return nil
	}
	title, fact, care := words.Caution(id)
	return &paint.CautionText{Title: title, Fact: fact, Care: care, Local: words.LocalRules}
}

// cautionCards shows every caution again, one after the other.
type cautionCards struct{ at int }

func rereadCautions(shared) step { return step{ask: cautionCards{}} }

func (c cautionCards) typing() bool { return false }

// update goes to the next with any key.
func (c cautionCards) update(_ shared, k Pressed) (dialog, step) {
	if c.at+1 >= len(rule.Cautions) || typedOf(k.Key) == typed(global.Back.Keys()[0]) {
		return nil, step{}
	}
	return cautionCards{c.at + 1}, step{}
}

func (c cautionCards) ask(shared) *paint.Ask {
	return &paint.Ask{Label: words.CautionOf(c.at+1, len(rule.Cautions)), Hint: words.AnyKeyNext}
}

func (c cautionCards) hints() []paint.KeyHint { return hints(global.Back) }

func (c cautionCards) paint(g cell.Grid, sh shared) {
	t := cautionText(rule.Cautions[c.at].ID)
	paint.Caution(g, sh.theme, t.Title, t.Fact, t.Care, t.Local)
}
