package solve

import (
	"hash/maphash"
	"time"

	"chargehand/model/fold"
	"chargehand/physics/shaft"
)

// Grid is how often the solver has something new to say between events, on its
// fine grid.
const Grid = time.Duration(shaft.Step * float64(time.Second))

// every is the time between checkpoints: a change is solved again from at most
// so long before it, in some 8 ms; each holds 55 kB.
const every = 20 * time.Minute

// Solver solves one smelt, now and again. The zero Solver is ready. It is owned
// by whoever asks, and by one at a time.
type Solver struct {
	// Grid is the shaft's own; zero is the fine one. A solver keeps to one: what
	// it gives depends on the entries and the grid alone.
	Grid shaft.Grid
	// Irons are of the lots that were assayed since the smelt was lit. They may be others each time.
	Irons Irons

	seed  maphash.Seed
	ready bool
	marks []*mark // by number of checkpoint; nil for none
	head  mark    // where the last answer stands
}

// mark is a run with the hash of the events that led to it.
type mark struct {
	run  run
	done int // events applied
	key  uint64
	ok   bool
}

// Solve gives the shaft at the timeline's moment.
func (v *Solver) Solve(c *fold.Timeline) Solution {
	if !v.ready {
		v.seed, v.ready = maphash.MakeSeed(), true
		if v.Grid == (shaft.Grid{}) {
			v.Grid = shaft.Fine
		}
	}
	events := eventsOf(c, v.Irons)
	if len(events) == 0 {
		return Solution{Known: c.Known, Asked: c.At, Status: NoFire}
	}
	keys := v.keys(events)
	m := v.nearest(events, keys, c.At)
	for m.done < len(events) {
		v.advance(&m, events[m.done].At)
		m.run.apply(events[m.done])
		m.done++
		m.key = keys[m.done]
	}
	v.advance(&m, c.At)
	v.head = m
	s := m.run.solution()
	s.Known, s.Asked = c.Known, c.At
	return s
}

// advance goes on to a moment, leaving a checkpoint at each of their moments on
// the way. Marks of other events are overwritten as it passes.
func (v *Solver) advance(m *mark, to time.Duration) {
	if m.done == 0 {
		return // not lit
	}
	for {
		n := int(m.at()/every) + 1
		at := time.Duration(n) * every
		if at > to || m.run.resting(at) {
			break
		}
		m.run.advance(at.Seconds())
		for len(v.marks) <= n {
			v.marks = append(v.marks, nil)
		}
		m.ok = true
		if v.marks[n] == nil {
			v.marks[n] = new(mark)
		}
		*v.marks[n] = *m
	}
	m.run.advance(to.Seconds())
	m.ok = true
}

// at is the moment of the mark.
func (m *mark) at() time.Duration { return seconds(m.run.shaft.Time()) }

// resting tells whether nothing changes any more by itself before a moment.
func (r *run) resting(at time.Duration) bool {
	return r.failed || r.over || at > seconds(r.last)+asleep
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

// nearest is the mark from which the least is left to solve: the latest that
// came of the beginning of these events and lies before the rest of them.
func (v *Solver) nearest(events []Event, keys []uint64, at time.Duration) mark {
	best := &mark{key: keys[0], run: run{grid: v.Grid}}
	try := func(m *mark) {
		switch {
		case !m.ok || m.done > len(events) || m.key != keys[m.done] || m.at() > at:
		case m.done < len(events) && m.at() > events[m.done].At:
		case m.done > best.done || m.done == best.done && m.at() > best.at():
			best = m
		}
	}
	try(&v.head)
	for _, m := range v.marks {
		if m != nil {
			try(m)
		}
	}
	return *best
}

// keys are the hashes of the beginnings of the events: of none, of one, ...
func (v *Solver) keys(events []Event) []uint64 {
	keys := make([]uint64, len(events)+1)
	var h maphash.Hash
	h.SetSeed(v.seed)
	keys[0] = h.Sum64()
	for i, ev := range events {
		maphash.WriteComparable(&h, ev.At)
		ev.act.sum(&h)
		keys[i+1] = h.Sum64()
	}
	return keys
}
