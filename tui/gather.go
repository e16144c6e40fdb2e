package tui

import (
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// A key of scoops, minutes or arrows may come as fast as a hand presses it, and
// so may one that a glove leans on. The first press acts at once. Those that
// follow each other quickly are gathered and act as one every so often, so that
// the book and the screen keep up; more than a hand can press are held back.
const (
	gatherWithin = 150 * time.Millisecond // like keys closer than this are one run
	gatherEvery  = 250 * time.Millisecond
	mostPresses  = 30 // what no hand does
	mostWithin   = 10 * time.Second
)

// run is a key that came quickly, again and again.
type run struct {
	key     screen.Typed
	last    Pressed     // its last press
	first   string      // the own name of the first entry, which names the run
	waits   int         // presses that have not acted yet
	from    entry.Stamp // when the presses began to be counted
	presses int         // since then
	held    bool        // more came than a hand presses: none acts any more
}

// Gathered says that it is time for the presses of a run to act.
type Gathered struct{}

// gathers tells whether a press goes on with a run.
func (m Model) gathers(k Pressed, t screen.Typed) bool {
	return m.gathered(t) && t == m.run.key && screen.Since(m.run.last.At, k.At) < gatherWithin
}

// gathered tells whether the screen takes a key gathered. Locked keys begin no run: its
// later presses would act.
func (m Model) gathered(t screen.Typed) bool {
	g, ok := m.takes(t).(screen.Gatherer)
	return ok && m.dialog == nil && !m.locked.is() && g.Gathers(t)
}

// begins begins a run with a press that has acted.
func (m Model) begins(k Pressed, t screen.Typed, out []entry.Entry) Model {
	m.run = run{}
	if !m.gathered(t) {
		return m
	}
	m.run = run{key: t, last: k, from: k.At, presses: 1}
	if i := slices.IndexFunc(out, func(e entry.Entry) bool { return e.Key != "" && e.Key == k.Key.String() }); i >= 0 {
		m.run.first = out[i].Local
	}
	return m
}

// gather takes one more press into the run. It is written down with the keys that
// are no acts, since many presses make one.
func (m Model) gather(k Pressed) (Model, []entry.Entry, tea.Cmd) {
	m.now, m.leaving, m.told = k.At, false, nil
	r := m.run
	r.last = k
	r.presses++
	if screen.Since(r.from, k.At) > mostWithin {
		r.from, r.presses = k.At, 1
	}
	r.held = r.held || r.presses > mostPresses
	m, out := m.note(k, r.held)
	m.version-- // nothing to be seen of it yet
	if r.held {
		m.run = r
		return m.refuse(words.RunHeldBack(screen.KeyLabel(string(r.key)), mostPresses, mostWithin)), out, nil
	}
	r.waits++
	m.run = r
	return m, out, nil
}

// gathering tells whether presses wait for Gathered.
func (m Model) gathering() bool { return m.run.waits > 0 }

// settle lets the presses that wait act as one, at the time of the last.
func (m Model) settle() (Model, []entry.Entry, tea.Cmd) {
	n := m.run.waits
	m.run.waits = 0
	if n == 0 {
		return m, nil, nil
	}
	k := m.run.last
	k.Times = n
	now := m.now
	m.now = k.At
	m, out := m.flush() // the presses, in their order
	next, e := m.takes(screen.TypedOf(k.Key)).Update(m.Shared(), k)
	m, e = m.With(next).judged(inRun(e, m.run.first), nil)
	m, es, cmd := m.perform(e, "")
	if screen.Since(m.now, now) > 0 {
		m.now = now
	}
	return m, append(out, es...), cmd
}

// inRun is an effect whose acts belong to a run.
func inRun(e screen.Effect, name string) screen.Effect {
	var all screen.Each
	for _, one := range screen.Flat(e) {
		if keep, ok := one.(screen.Keep); ok {
			keep = slices.Clone(keep)
			for i := range keep {
				keep[i].Group = name
			}
			one = keep
		}
		all = append(all, one)
	}
	return all
}
