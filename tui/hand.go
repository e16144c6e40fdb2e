package tui

import (
	"slices"
	"time"

	"chargehand/model/entry"
	lots "chargehand/model/lot"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/tui/screen"
)

// begin lights a fire: a new stream, whose first entry is the light.
func (m Model) begin(of screen.Kindle, keyed string) (Model, []entry.Entry) {
	l := of.Light
	l.UID, l.Solver = m.cfg.NewUID(), solve.Version
	lit := of.Lit
	if lit.IsZero() {
		lit = m.now.Wall
	}
	id := SmeltID(lit, l.Furnace.Name, m.taken())
	if m.shelf.Err != nil || !m.shelf.Known { // the letter may be taken, so the uid tells them apart
		id += "-" + slug(l.UID)
	}
	if m.shelf.Known && m.shelf.Err == nil && !l.Practice && !l.Rehearsal && !l.Invented {
		l.Taught = session.Open(id, []entry.Entry{{Version: entry.Version, Stream: id, Seq: 1, Happened: entry.Wall(lit), Event: l}}).Taught(m.taught).TaughtNow()
	}
	next := session.Open(id, nil).Taught(m.taught).Assayed(m.assayed)
	m = m.putToWork(next, l.Practice || l.Rehearsal)
	m, e := m.hand(id, screen.Act{Event: l, Happened: lit, Uncertain: of.Uncertain, Sure: of.Sure}, m.active, keyed)
	m.running.Session = m.running.Tick(m.now)
	form := m.here()
	m, _ = m.goTo(screen.Fire, nil)
	m = m.forgotten(form)
	return m, []entry.Entry{e}
}

func (m Model) taken() []string {
	ids := []string{m.running.ID(), m.other.ID()}
	for _, l := range m.shelf.Lines {
		ids = append(ids, l.ID)
	}
	return ids
}

// handAll makes entries of acts, into the smelt shown. The first names the key.
func (m Model) handAll(acts []screen.Act, keyed string) (Model, []entry.Entry) {
	var out []entry.Entry
	for _, a := range m.withLots(acts) {
		var e entry.Entry
		m, e = m.hand(m.shown().ID(), a, m.active, keyed)
		out, keyed = append(out, e), ""
	}
	return m.refolded(out), out
}

// withLots puts before acts what the stores say of the lots that they are the first of
// their smelt to name: a smelt keeps copies, with what was left then, as of those it was lit
// with.
func (m Model) withLots(acts []screen.Act) (all []screen.Act) {
	told := map[string]bool{}
	for _, l := range m.shown().Lots() {
		told[string(l.UID)] = true
	}
	for _, a := range acts {
		for _, lot := range entry.LotsIn(a.Event) {
			if told[lot] || !entry.UID(lot).Valid() {
				continue
			}
			told[lot] = true
			if l, ok := m.folded().Lot(lot); ok {
				all = append(all, screen.Act{Event: entry.LotStored{Lot: lots.Snapshot(l)}, Happened: a.Happened})
			}
		}
		all = append(all, a)
	}
	return all
}

// note takes a key down that is no act.
func (m Model) note(k Pressed, held bool) (Model, []entry.Entry) {
	if m.watches() {
		return m, nil
	}
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
	if b.on == screen.Replay { // looking back is none of the smelt's own day
		stream = entry.House
	}
	m, e := m.hand(stream, screen.Act{Event: b.event(), Happened: b.from.Wall}, b.on, "")
	return m.refolded([]entry.Entry{e}), []entry.Entry{e}
}

// stream is where keys and jumps of the clock are written down.
func (m Model) stream() string {
	if screen.RightsIn(m.running.Session) == screen.Own {
		return m.running.ID()
	}
	return entry.House
}

// hand makes an entry and puts it among those of its smelt, not yet kept.
func (m Model) hand(stream string, a screen.Act, on screen.ID, keyed string) (Model, entry.Entry) {
	at := a.Happened
	if at.IsZero() {
		at = m.now.Wall
	}
	e := entry.Entry{
		Version: entry.Version, Stream: stream, Happened: entry.Wall(at), Uncertain: a.Uncertain, By: m.initials(),
		Kept: entry.Wall(m.now.Wall), Boot: m.now.Boot, Mono: m.now.Mono.Truncate(time.Millisecond),
		Screen: string(on), Key: keyed, Group: a.Group, Sure: a.Sure, From: a.From, Event: a.Event,
	}
	m.ledger, e = m.ledger.handed(e)
	if stream == entry.House {
		m.home, e = m.home.Add(e)
	} else {
		m.fires = m.in(stream, func(s session.Session) session.Session {
			s, e = s.Add(e)
			return s
		})
	}
	m = m.rehoused()
	if stream == entry.House && mayAssay(a.Event) {
		m = m.reassayed()
	}
	return m, e
}

// refolded reads those smelts anew that entries went into.
func (m Model) refolded(es []entry.Entry) Model {
	m.fires = m.each(func(s session.Session) session.Session {
		if !s.Is() || !slices.ContainsFunc(es, func(e entry.Entry) bool { return e.Stream == s.ID() }) {
			return s
		}
		return s.Tick(m.now)
	})
	return m
}
