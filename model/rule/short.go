package rule

// twiceSlow is how many usual intervals each of two in a row takes at the least before less air than before is thought of: one
// long interval is as often a burden that hung, a crew that was away or a charge nobody keyed (assumed). Where they stray further
// by themselves, each is as long as one in twenty is.
const twiceSlow = 1.6

// slow is after how many minutes an interval is one of them.
func (p interval) slow() float64 { return max(twiceSlow*p.usual, p.high()) }

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
		last.minutes < before.slow() || since < before.slow() {
		return nil, false
	}
	return Evidence{number("last", last.minutes, Minutes), number("since", since, Minutes), number("usual", before.usual, Minutes)}, true
}

// airEnough: something was done about it, a charge came about when it should, or none is waited for.
func airEnough(m *moment, w Warning) bool {
	usual, _ := w.Evidence.Of("usual")
	_, ok := m.waiting()
	if !ok || m.tended() > w.Onset {
		return true
	}
	n := m.charges - 1
	return m.lastCharge() > w.Onset && m.paces.All()[n].minutes < max(twiceSlow*usual.Number, m.paces.All()[n-1].high())
}
