package tui

import (
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/model/words"
)

// take does what a step says: entries first, then where to go, then what to
// answer.
func (m Model) take(st step, k Pressed, closed bool) (Model, []entry.Entry, tea.Cmd) {
	var out []entry.Entry
	acts := len(st.acts) > 0 || st.light != nil || st.setting.Name != ""
	if !acts {
		m, out = m.note(k, false)
	}
	if acts || closed || st.quit || st.open != "" {
		var es []entry.Entry
		m, es = m.flush()
		out = append(out, es...)
	}
	var about []string
	if st.light != nil {
		var e entry.Entry
		m.by = st.by
		m, e = m.begin(*st.light, k)
		out, about = append(out, e), append(about, e.Local)
	}
	if st.setting.Name != "" {
		var e entry.Entry
		m, e = m.chosen(st.setting).hand(entry.House, act{event: st.setting}, m.active, k.Key.String())
		out, about = append(out, e), append(about, e.Local)
	}
	m, es := m.handAll(st.acts, k)
	for _, e := range es {
		out, about = append(out, e), append(about, e.Local)
	}
	if st.again != nil {
		st.ask = st.again(m.shared()).ask
	}
	if st.ask != nil {
		m.dialog = st.ask
		if d, ok := st.ask.(interface{ opened(shared) dialog }); ok {
			m.dialog = d.opened(m.shared())
		}
	}
	if st.replayAt.set {
		r := m.screens[replayScreen].(replay)
		r.jump = st.replayAt
		m = m.withScreen(r)
	}
	if st.set != nil {
		m = m.withScreen(st.set)
	}
	m.answer = answer{} // a key that only moves about shows what it did
	m, cmd := m.move(st)
	m = m.reply(st, about)
	return m, out, tea.Batch(st.cmd, cmd)
}

// reply sets the answer of a step that has one of its own.
func (m Model) reply(st step, about []string) Model {
	switch {
	case st.refuse != "":
		return m.refuse(st.refuse)
	case st.say != nil:
		m.answer = answer{text: st.say(m.shared()), about: about}
	}
	return m
}

// move goes where a step says.
func (m Model) move(st step) (Model, tea.Cmd) {
	switch {
	case st.quit:
		return m.quit(st.anyway)
	case st.open != "":
		to := fireScreen
		if st.replays {
			to = replayScreen
		}
		return m.open(st.open, to)
	case st.shown:
		m.looked = session.Session{}
		return m.goTo(fireScreen)
	case st.chem:
		m.chem = !m.chem
	case st.far:
		return m.toggleFar()
	case st.lock:
		m.locked = locking(m.ledger.count)
	case st.to != "":
		return m.goTo(st.to)
	case st.back:
		return m.back()
	}
	return m, nil
}

// goTo makes a screen active. Fire and start begin a new way back.
func (m Model) goTo(id screenID) (Model, tea.Cmd) {
	switch {
	case id == m.active:
		return m, nil
	case id == fireScreen || id == startScreen:
		m.behind = nil
	default:
		m.behind = append(slices.Clone(m.behind), m.active)
	}
	m.active = id
	return m.arrived()
}

// back goes to the screen before: at last to the smelt at work, else the start.
func (m Model) back() (Model, tea.Cmd) {
	n := len(m.behind)
	switch {
	case m.active == fireScreen && m.far():
		return m.withScreen(fire{}), nil
	case n > 0:
		m.active, m.behind = m.behind[n-1], m.behind[:n-1]
	case m.active == fireScreen && m.looked.Is():
		m.looked = session.Session{}
		if !m.running.Is() {
			m.active = startScreen
		}
	case m.active == startScreen && m.running.Is():
		m.active = fireScreen
	case m.active != fireScreen:
		m.active = startScreen
	default:
		return m.refuse(words.NowhereBack), nil
	}
	return m.arrived()
}

// arrived reads the shelf anew where it is shown.
func (m Model) arrived() (Model, tea.Cmd) {
	if s, ok := m.screens[m.active].(interface{ entered(shared) screen }); ok {
		m = m.withScreen(s.entered(m.shared()))
	}
	switch m.active {
	case startScreen, shelfScreen:
		return m, m.readShelf()
	case lightScreen:
		return m, m.readStarters()
	}
	return m, nil
}

// quit leaves once all is kept.
func (m Model) quit(anyway bool) (Model, tea.Cmd) {
	if anyway || len(m.ledger.pending) == 0 {
		return m, tea.Quit
	}
	m.leaving = true
	m.answer = answer{text: words.Leaving}
	if m.tally().notKept > 0 && m.dialog == nil {
		m.dialog = leaveUnkept(m.shared()).ask
	}
	return m, nil
}

// begin lights a fire: a new stream, whose first entry is the light.
func (m Model) begin(l entry.Light, k Pressed) (Model, entry.Entry) {
	l.UID, l.Solver = m.cfg.NewUID(), solve.Version
	id := SmeltID(k.At.Wall, l.Furnace.Name, m.taken())
	if !m.stand.known { // the letter may be taken, so the uid tells them apart
		id += "-" + slug(l.UID)
	}
	m.running, m.looked = session.Open(id, nil), session.Session{}
	m, e := m.hand(id, act{event: l}, m.active, k.Key.String())
	m.running = m.running.Tick(m.now)
	m, _ = m.goTo(fireScreen)
	return m, e
}

func (m Model) taken() []string {
	ids := []string{m.running.ID()}
	for _, l := range m.stand.lines {
		ids = append(ids, l.ID)
	}
	return ids
}

// handAll makes entries of the acts of one key, into the smelt shown.
func (m Model) handAll(acts []act, k Pressed) (Model, []entry.Entry) {
	var out []entry.Entry
	for _, a := range acts {
		var e entry.Entry
		m, e = m.hand(m.shown().ID(), a, m.active, k.Key.String())
		out = append(out, e)
	}
	return m.refolded(out), out
}

// note takes a key down that is no act.
func (m Model) note(k Pressed, held bool) (Model, []entry.Entry) {
	var out []entry.Entry
	if m.batch.elsewhere(m.active) {
		m, out = m.flush()
	}
	m.batch = m.batch.with(k, m.active, held)
	return m, out
}

// flush writes down the keys that were no acts.
func (m Model) flush() (Model, []entry.Entry) {
	if m.batch.empty() {
		return m, nil
	}
	b := m.batch
	m.batch = batch{}
	stream := m.stream()
	if b.screen == replayScreen { // looking back is none of the smelt's own day
		stream = entry.House
	}
	m, e := m.hand(stream, act{event: b.event(), happened: b.from.Wall}, b.screen, "")
	return m.refolded([]entry.Entry{e}), []entry.Entry{e}
}

// stream is where keys and jumps of the clock are written down.
func (m Model) stream() string {
	if rightsIn(m.running) == own {
		return m.running.ID()
	}
	return entry.House
}

// hand makes an entry and puts it among those of its smelt, not yet kept.
func (m Model) hand(stream string, a act, on screenID, keyed string) (Model, entry.Entry) {
	at := a.happened
	if at.IsZero() {
		at = m.now.Wall
	}
	e := entry.Entry{
		Version: entry.Version, Stream: stream, Happened: entry.Wall(at), Uncertain: a.uncertain, By: m.initials(),
		Kept: entry.Wall(m.now.Wall), Boot: m.now.Boot, Mono: m.now.Mono.Truncate(time.Millisecond),
		Screen: string(on), Key: keyed, Event: a.event,
	}
	m.ledger, e = m.ledger.handed(e)
	switch stream {
	case m.running.ID():
		m.running, e = m.running.Add(e)
	case m.looked.ID():
		m.looked, e = m.looked.Add(e)
	}
	return m, e
}

// refolded reads those smelts anew that entries went into.
func (m Model) refolded(es []entry.Entry) Model {
	read := func(s session.Session) session.Session {
		if !s.Is() || !slices.ContainsFunc(es, func(e entry.Entry) bool { return e.Stream == s.ID() }) {
			return s
		}
		return s.Tick(m.now)
	}
	m.running, m.looked = read(m.running), read(m.looked)
	return m
}
