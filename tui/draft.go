package tui

import (
	"maps"
	"time"

	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
)

// draft is what stands half typed since a field closed by itself.
type draft struct {
	text string
	at   time.Time
}

// drafted keeps what is typed into a field until the field opens again.
func (m Model) drafted(f screen.Field) Model {
	m.drafts = maps.Clone(m.drafts)
	if m.drafts == nil {
		m.drafts = map[string]draft{}
	}
	m.drafts[f.Label] = draft{f.Half(), m.touched.Wall}
	return m
}

// resumed shows it in the field that has just opened.
func (m Model) resumed() Model {
	f, ok := m.dialog.(screen.Field)
	d, half := m.drafts[f.Label]
	if !ok || !half {
		return m
	}
	m.drafts = maps.Clone(m.drafts)
	delete(m.drafts, f.Label)
	m.dialog = f.Resumed(d.text, d.at.Format(modelwords.Clock))
	return m
}
