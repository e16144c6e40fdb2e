package rule

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/solve"
)

// What a pressure before the tuyere tells. The model of the shaft knows what
// burden and tuyere hold against a blast only to a factor of two, but it knows
// how that goes with the blast and the burden; so each reading is held against
// the smelt's own readings before it, and only the first against the model alone.
const (
	// highAgain is from how many times the usual it is high, and backAgain below
	// which it is so no more; lowAgain and upAgain likewise. Guesses: a step of
	// the gauge or a heap of charcoal moves it by a third.
	highAgain, backAgain = 1.6, 1.3
	lowAgain, upAgain    = 0.5, 0.7
	// highAlone is beyond what the model's factor of two explains, on the first
	// reading of a smelt.
	highAlone = 4.0
)

// pressed is one reading of the pressure before the tuyere.
type pressed struct {
	at    time.Duration
	pa    float64
	holds float64 // what it should have been by the model; 0 when that is not known
}

// press takes a reading down.
func (m *moment) press(at time.Duration, b entry.Blast) {
	if b.Pressure.Positive() && !b.Off() {
		m.presses = append(m.presses, pressed{at: at, pa: float64(b.Pressure.Value)})
	}
}

// modelled looks up what the model said when the last readings were taken, as
// soon as it has got there.
func (m *moment) modelled() {
	for i := len(m.presses) - 1; i >= 0 && m.presses[i].holds == 0; i-- {
		p := &m.presses[i]
		for j := m.samples - 1; j >= 0; j-- {
			if g := m.history[j]; g.At <= p.at {
				if p.at-g.At < solve.Blind {
					p.holds = g.Holds
				}
				break
			}
		}
	}
}

// pressure holds the last reading against the usual one: how many times that it
// is, whether the usual is this smelt's own, and whether there is anything to
// say. A reading is old after a while, and answered by rodding or poking.
func (m *moment) pressure() (times float64, last pressed, own, ok bool) {
	m.modelled()
	n := len(m.presses)
	if n == 0 || !m.charging() {
		return 0, pressed{}, false, false
	}
	last = m.presses[n-1]
	if last.holds <= 0 || !m.within(last.at, stale) || m.rod >= last.at || m.poke >= last.at || m.off() {
		return 0, pressed{}, false, false
	}
	var before []float64
	for _, p := range m.presses[:n-1] {
		if p.holds > 0 {
			before = append(before, p.pa/p.holds)
		}
	}
	usual := 1.0
	if own = len(before) > 0; own {
		slices.Sort(before)
		usual = before[(len(before)-1)/2]
	}
	last.holds *= usual
	return last.pa / last.holds, last, own, true
}

func pressureEvidence(p pressed) Evidence {
	return Evidence{number("pressure", p.pa, Pascals), number("clear", p.holds, Pascals)}
}

// pressureHigh: something stands before the blast.
func pressureHigh(m *moment) (Evidence, bool) {
	times, last, own, ok := m.pressure()
	return pressureEvidence(last), ok && (times > highAlone || own && times > highAgain)
}

func pressureUsual(m *moment, _ Warning) bool {
	times, _, _, ok := m.pressure()
	return !ok || times < backAgain
}

// pressureLow: the blast goes another way.
func pressureLow(m *moment) (Evidence, bool) {
	times, last, own, ok := m.pressure()
	return pressureEvidence(last), ok && own && times < lowAgain
}

func pressureUp(m *moment, _ Warning) bool {
	times, _, _, ok := m.pressure()
	return !ok || times > upAgain
}
