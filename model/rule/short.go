package rule

// twiceSlow is how many usual intervals each of two in a row takes at the least before less air than before is thought of: one
// long interval is as often a burden that hung, a crew that was away or a charge nobody keyed (assumed).
const twiceSlow = 1.6

// airShort: one charge took far longer than usual and the next is as late, with nothing done at the tuyere or the blast since.
// The charcoal burns in the air that gets in, so the pace tells of it where nobody looks; no meter before a leak does.
func airShort(m *moment) (Evidence, bool) {
	since, ok := m.waiting()
	n := m.charges - 1
	if !ok || n < 2 || m.tended() >= m.lastCharge() {
		return nil, false
	}
	last, before := m.paces.All()[n], m.paces.All()[n-1]
	took := m.c.Pace.Intervals()[n-1]
	if before.own < fewestOwn || last.epoch != before.epoch || last.next != last.epoch || took.TopUp || took.Double || took.Stopped() ||
		last.minutes < twiceSlow*before.usual || since < twiceSlow*before.usual {
		return nil, false
	}
	return Evidence{number("last", last.minutes, Minutes), number("since", since, Minutes), number("usual", before.usual, Minutes)}, true
}

// airEnough: something was done about it, a charge came about when it should, or none is waited for.
func airEnough(m *moment, w Warning) bool {
	usual, _ := w.Evidence.Of("usual")
	_, ok := m.waiting()
	return !ok || m.tended() > w.Onset || m.lastCharge() > w.Onset && m.paces.All()[m.charges-1].minutes < twiceSlow*usual.Number
}
