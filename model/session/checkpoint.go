package session

import (
	"hash/maphash"
	"slices"
	"sort"
	"sync"
	"time"

	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/solve"
)

// every is the time between the checkpoints that are kept longest: to any moment it is no
// further than that from one of them.
const every = 2 * time.Minute

// How many checkpoints are kept of those, and how many of the last others.
const (
	mostCheckpoints = 1024
	mostRecent      = 16
)

// checkpoint is a smelt at a grid point: the state and the rules when all had happened that
// happened by then.
type checkpoint struct {
	walker *rule.Walker
	care   rule.Care
	at     time.Duration // the grid point; before light for the very first
	key    uint64        // a hash of all that it follows from
	used   uint64
}

// checkpoints are those of one smelt, for all Sessions that came of it. What a Session says
// follows from its entries alone; the checkpoints only save time.
type checkpoints struct {
	seed   maphash.Seed
	mu     sync.Mutex
	count  uint64
	steady []*checkpoint // by moment
	recent []*checkpoint // the last ones, by use
}

func newCheckpoints() *checkpoints { return &checkpoints{seed: maphash.MakeSeed()} }

// beforeLight is when a walk begins: before everything.
const beforeLight = time.Duration(-1 << 62)

// begin is a checkpoint before light.
func begin(about *fold.About) *checkpoint {
	return &checkpoint{walker: rule.Begin(about), at: beforeLight}
}

// clone is a copy that may go on.
func (m *checkpoint) clone() *checkpoint {
	return &checkpoint{walker: m.walker.Clone(), care: m.care, at: m.at}
}

// nearest is the latest checkpoint up to a moment that came of the same; nil for none.
func (ms *checkpoints) nearest(at time.Duration, key func(time.Duration) uint64) *checkpoint {
	ms.mu.Lock()
	defer ms.mu.Unlock()
	var best *checkpoint
	for _, m := range ms.recent {
		if m.at <= at && (best == nil || m.at > best.at) && m.key == key(m.at) {
			best = m
		}
	}
	n := sort.Search(len(ms.steady), func(i int) bool { return ms.steady[i].at > at })
	of, is := beforeLight, uint64(0)
	for i := n - 1; i >= 0; i-- {
		m := ms.steady[i]
		if best != nil && m.at <= best.at {
			break
		}
		if m.at != of {
			of, is = m.at, key(m.at)
		}
		if m.key == is {
			best = m
			break
		}
	}
	if best != nil {
		ms.count++
		best.used = ms.count
	}
	return best
}

// leave keeps a checkpoint. Nobody changes it any more.
func (ms *checkpoints) leave(m *checkpoint) {
	ms.mu.Lock()
	defer ms.mu.Unlock()
	ms.count++
	m.used = ms.count
	if m.at%every != 0 {
		ms.recent = append(ms.recent, m)
		if len(ms.recent) > mostRecent {
			ms.recent = slices.Delete(ms.recent, 0, 1)
		}
		return
	}
	i := sort.Search(len(ms.steady), func(i int) bool { return ms.steady[i].at > m.at })
	ms.steady = slices.Insert(ms.steady, i, m)
	if len(ms.steady) > mostCheckpoints {
		oldest := 0
		for i, m := range ms.steady {
			if m.used < ms.steady[oldest].used {
				oldest = i
			}
		}
		ms.steady = slices.Delete(ms.steady, oldest, oldest+1)
	}
}

// history is what the shaft solver saw, with a hash of it up to each.
type history struct {
	seen []solve.Sample
	sums []uint64
}

func (ms *checkpoints) historyOf(seen []solve.Sample) history {
	t := history{seen: seen, sums: make([]uint64, len(seen))}
	var h maphash.Hash
	h.SetSeed(ms.seed)
	for i, g := range seen {
		maphash.WriteComparable(&h, g)
		t.sums[i] = h.Sum64()
	}
	return t
}

// sum is the hash of what was seen by a moment.
func (t history) sum(at time.Duration) uint64 {
	i := sort.Search(len(t.seen), func(i int) bool { return t.seen[i].At > at })
	if i == 0 {
		return 0
	}
	return t.sums[i-1]
}

// moment is a smelt at one moment.
type moment struct {
	timeline   fold.Timeline
	care       rule.Care
	checkpoint *checkpoint // the last grid point
	since      []fold.Line // what happened since then
}

// to goes to a moment, from the nearest checkpoint that holds.
func (s Session) to(k fold.Known, at time.Duration) moment {
	key := func(at time.Duration) uint64 {
		return maphash.Comparable(s.checkpoints.seed, [3]uint64{k.Key(at), s.solver.history.sum(at), uint64(at)})
	}
	m := s.checkpoints.nearest(at, key)
	if m == nil {
		m = begin(k.About())
	}
	var lines []fold.Line // since the checkpoint
	for m.walker.Next() <= at {
		next := m.clone()
		steady := min(at, (m.walker.Next()+every-1)/every*every)
		lines = slices.AppendSeq(lines[:0], k.Between(m.at, steady))
		n := next.walker.Go(steady, lines, s.solver.history.seen)
		if next.walker.Next() == m.walker.Next() { // it sleeps until something happens
			lines = slices.AppendSeq(lines[:0], k.Between(m.at, at))
			n = next.walker.Go(at, lines, s.solver.history.seen)
		}
		if next.walker.Next() == m.walker.Next() {
			break
		}
		for _, l := range lines[:n] {
			next.care.Take(l)
		}
		next.at = next.walker.Next() - rule.Grid
		next.key = key(next.at)
		s.checkpoints.leave(next)
		m = next
	}
	lines = slices.Collect(k.Between(m.at, at))
	o := moment{timeline: m.walker.Timeline().Clone(), care: m.care, checkpoint: m, since: lines}
	for _, l := range lines {
		o.timeline.Take(l)
		o.care.Take(l)
	}
	o.timeline = o.timeline.To(at)
	o.timeline.Known = k.Last()
	return o
}
