package rule

import (
	"math"
	"time"
)

// fewestBand is how many undisturbed intervals make a band that others are
// held against.
const fewestBand = 6

// burnSlower: the last two intervals both longer than this smelt's own band.
// Published limits in minutes a bucket are of one bore and one blast; good
// blooms were made far outside them.
func burnSlower(m *moment) (Evidence, bool) {
	return burnOff(m, func(minutes float64, band interval) bool { return minutes > band.high() })
}

// burnFaster: the same, shorter.
func burnFaster(m *moment) (Evidence, bool) {
	return burnOff(m, func(minutes float64, band interval) bool { return minutes < band.low() })
}

// burnOff holds the last two intervals against the band of those before. What
// was done since at the tuyere or the blast is given its time to tell.
func burnOff(m *moment, out func(minutes float64, band interval) bool) (Evidence, bool) {
	n := m.charges - 1
	if n < 3 || !m.charging() || m.paused || m.tended() >= m.lastCharge() {
		return nil, false
	}
	last, before, band := m.paces.All()[n], m.paces.All()[n-1], m.paces.All()[n-2]
	if !last.clean || !before.clean || last.epoch != band.epoch || band.own < fewestBand ||
		!out(last.minutes, band) || !out(before.minutes, band) {
		return nil, false
	}
	return Evidence{
		number("before", before.minutes, Minutes), number("last", last.minutes, Minutes),
		number("low", band.low(), Minutes), number("high", band.high(), Minutes),
	}, true
}

// burnAsUsual: an interval within the band that was left, something done about
// it, nothing more to burn, or so many intervals that this is its pace now.
func burnAsUsual(m *moment, w Warning) bool {
	if !m.charging() || m.tended() > w.Onset {
		return true
	}
	since := 0
	for m.charges-1-since > 0 && m.c.Charges[m.charges-1-since].At > w.Onset {
		since++
	}
	if since == 0 {
		return false
	}
	low, _ := w.Evidence.Of("low")
	high, _ := w.Evidence.Of("high")
	last := m.paces.All()[m.charges-1]
	return !last.clean || since >= fewestBand || (last.minutes >= low.Number && last.minutes <= high.Number)
}

// tended is when the fire was last seen to: rodded, poked, tapped, or the blast
// set.
func (m *moment) tended() time.Duration {
	return max(m.rod, m.poke, m.tap, m.blastSet)
}

// waiting is how long the charge has been waited for with the blast on, in
// minutes, and whether one is waited for at all: not with the blast off, in a
// pause, or once the last ore is in. What stands without blast burns nothing
// that counts, so a dead blower makes no charge late.
func (m *moment) waiting() (float64, bool) {
	if m.charges == 0 || !m.charging() || m.paused || m.lastOre || m.off() {
		return 0, false
	}
	return (m.at - m.lastCharge() - m.unblown()).Minutes(), true
}

// unblown is how long the blast was off since the last charge.
func (m *moment) unblown() time.Duration { return m.c.Unblown(m.lastCharge(), m.at) }

// waited is the evidence of a charge that was waited for: how long ago the last
// one went in, and for how long of that no blast was on.
func (m *moment) waited(usual float64) Evidence {
	e := Evidence{minutes("since", m.at-m.lastCharge()), number("usual", usual, Minutes)}
	if off := m.unblown(); off > 0 {
		e = append(e, minutes("unblown", off))
	}
	return e
}

// chargeOverdue: the charge is late by what this smelt does, but not so late
// that rather an entry is missing.
func chargeOverdue(m *moment) (Evidence, bool) {
	since, ok := m.waiting()
	if !ok {
		return nil, false
	}
	p := m.paces.All()[m.charges-1]
	if !p.banded() || since < p.late() || since >= missing*p.usual {
		return nil, false
	}
	if _, short := airShort(m); short {
		return nil, false
	}
	return append(m.waited(p.usual), number("high", p.high(), Minutes)), true
}

// chargeIn: no charge is waited for, or it has become an entry that is missing.
func chargeIn(m *moment, w Warning) bool {
	since, ok := m.waiting()
	return !ok || m.lastCharge() > w.Onset || since >= missing*m.paces.All()[m.charges-1].usual
}

// entryMissing: nobody leaves a shaft for two and a half times the usual, so it
// is the entry that is missing. Where charges come in twos, or as they may, the
// usual interval says less: what this smelt's own band reaches is no gap in its book.
func entryMissing(m *moment) (Evidence, bool) {
	since, ok := m.waiting()
	if !ok {
		return nil, false
	}
	p := m.paces.All()[m.charges-1]
	usual := p.usual
	if usual == 0 || since < missing*usual || p.banded() && since < p.late() {
		return nil, false
	}
	if _, short := airShort(m); short {
		return nil, false
	}
	return append(m.waited(usual), number("missed", math.Floor(since/usual), Count)), true
}

// entryFound: a charge is down, or none is waited for.
func entryFound(m *moment, w Warning) bool {
	_, ok := m.waiting()
	return !ok || m.lastCharge() > w.Onset
}
