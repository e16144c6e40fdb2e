package tui

import (
	"cmp"
	"maps"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// where is a screen, and the smelt that it shows; place is a field there, by its words.
type (
	where struct {
		on    screen.ID
		smelt string
	}
	place struct {
		where
		field string
	}
	// typed is what is half typed, by field.
	typed map[string]string
	// draft is what was left half typed, and when.
	draft struct {
		text string
		at   time.Time
	}
)

// drafting is what was left half typed.
type drafting struct {
	drafts map[place]draft
	inBook map[where]typed // as the book has them
}

// draftsLast is for how long what was left half typed is shown again. It stays in the
// book.
const draftsLast = 24 * time.Hour

// here is where something is typed now.
func (m Model) here() where {
	if form, ok := m.screens[m.active].(screen.Drafter); ok && !form.OfSmelt() {
		return where{on: m.active}
	}
	return where{m.active, m.shown().ID()}
}

// halfTyped is what is typed on the way to an act that is not kept yet: the steps
// answered, then what stands in the open field.
func (m Model) halfTyped() []screen.Answered {
	if form, ok := m.screens[m.active].(screen.Drafter); ok {
		return form.Half(m.Shared())
	}
	half := slices.Clone(m.steps)
	d := m.dialog
	if asks, ok := d.(doubting); ok {
		d = asks.step
	}
	switch f := d.(type) {
	case screen.HalfTyped:
		if text := f.Half(m.Shared()); text != "" {
			half = append(half, screen.Answered{Label: f.Place(), Text: text})
		}
	case screen.Form:
		half = append(half, f.Half(m.Shared())...)
	}
	return half
}

// setAside keeps what is half typed until it is asked for again.
func (m Model) setAside() Model {
	half := m.halfTyped()
	if len(half) == 0 {
		return m
	}
	m.drafts = maps.Clone(m.drafts)
	if m.drafts == nil {
		m.drafts = map[place]draft{}
	}
	for _, h := range half {
		m.drafts[place{m.here(), h.Label}] = draft{h.Text, m.touched.Wall}
	}
	m.steps = nil
	return m
}

// resumed shows in the field that has just opened what was left half typed in it.
func (m Model) resumed() Model {
	if form, ok := m.dialog.(screen.Form); ok {
		return m.resumedIn(form)
	}
	f, ok := m.dialog.(screen.HalfTyped)
	if !ok {
		return m
	}
	at := place{m.here(), f.Place()}
	d, half := m.drafts[at]
	if !half {
		return m
	}
	m.drafts = maps.Clone(m.drafts)
	delete(m.drafts, at)
	m.dialog = f.Resumed(d.text, d.at.Format(modelwords.Clock))
	return m
}

// resumedIn is the same of a form that has just opened in the foot.
func (m Model) resumedIn(form screen.Form) Model {
	left := typed{}
	m.drafts = maps.Clone(m.drafts)
	for _, label := range form.Labels() {
		at := place{m.here(), label}
		if d, half := m.drafts[at]; half {
			left[label] = d.text
			delete(m.drafts, at)
		}
	}
	if len(left) > 0 {
		m.dialog = form.Resumed(left)
	}
	return m
}

// resumedForm shows in the form that has just been entered what was left half typed in
// it.
func (m Model) resumedForm() Model {
	form, ok := m.screens[m.active].(screen.Drafter)
	if !ok {
		return m
	}
	left, last := typed{}, time.Time{}
	for p, d := range m.drafts {
		if p.where == m.here() {
			left[p.field] = d.text
			if d.at.After(last) {
				last = d.at
			}
		}
	}
	if len(left) == 0 {
		return m
	}
	m = m.forgotten(m.here()).With(form.Resumed(left))
	m.answer = answer{text: words.FormHalfTyped(last.Format(modelwords.Clock))}
	return m
}

// forgotten drops what was left half typed at a place: it is typed on, or done.
func (m Model) forgotten(w where) Model {
	m.drafts = maps.Clone(m.drafts)
	maps.DeleteFunc(m.drafts, func(p place, _ draft) bool { return p.where == w })
	return m
}

// drafted writes down what has become half typed, or is no more, since that was last
// written down: it outlives the program.
func (m Model) drafted() (Model, []entry.Entry) {
	if m.watches() {
		return m, nil
	}
	now := map[where]typed{}
	put := func(w where, field, text string) {
		if now[w] == nil {
			now[w] = typed{}
		}
		now[w][field] = text
	}
	for p, d := range m.drafts {
		put(p.where, p.field, d.text)
	}
	for _, h := range m.halfTyped() {
		put(m.here(), h.Label, h.Text)
	}
	all := maps.Clone(now)
	for w := range m.inBook {
		all[w] = now[w]
	}
	var out []entry.Entry
	for _, w := range slices.SortedFunc(maps.Keys(all), func(a, b where) int {
		return cmp.Or(cmp.Compare(a.on, b.on), cmp.Compare(a.smelt, b.smelt))
	}) {
		if maps.Equal(m.inBook[w], now[w]) {
			continue
		}
		var e entry.Entry
		m, e = m.hand(entry.House, screen.Act{Event: entry.Draft{Screen: string(w.on), Smelt: w.smelt, Typed: now[w]}}, m.active, "")
		out = append(out, e)
	}
	if len(out) > 0 {
		m.inBook = now
	}
	return m, out
}

// draftsRead takes up what the house holds of that, from this day.
func (m Model) draftsRead(entries []entry.Entry) Model {
	m.drafts, m.inBook = maps.Clone(m.drafts), map[where]typed{}
	if m.drafts == nil {
		m.drafts = map[place]draft{}
	}
	for _, d := range house.Drafts(entries) {
		if m.now.Wall.Sub(d.At) > draftsLast {
			continue
		}
		w := where{screen.ID(d.Screen), d.Smelt}
		m.inBook[w] = d.Typed
		for field, text := range d.Typed {
			p := place{w, field}
			if _, newer := m.drafts[p]; !newer {
				m.drafts[p] = draft{text, d.At}
			}
		}
	}
	if id := m.shown().ID(); m.answer.text == words.Opened(id) { // somebody was quicker than the book
		m.answer.text = m.opened(id)
	}
	if len(m.halfTyped()) > 0 {
		return m
	}
	return m.resumed().resumedForm() // the same
}

// opened says which smelt goes on, and what was left half typed in it, on whichever screen:
// the last of it first.
func (m Model) opened(id string) string {
	said := words.Opened(id)
	var left []place
	for p := range m.drafts {
		if p.smelt == id {
			left = append(left, p)
		}
	}
	if len(left) == 0 {
		return said
	}
	last := slices.MinFunc(left, func(a, b place) int {
		return cmp.Or(m.drafts[b].at.Compare(m.drafts[a].at), cmp.Compare(a.field, b.field), cmp.Compare(a.on, b.on))
	})
	d := m.drafts[last]
	return said + words.StandsHalfTyped(last.field, d.text, d.at.Format(modelwords.Clock), len(left)-1)
}
