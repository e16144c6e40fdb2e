package fold

import (
	"sort"
	"sync"
	"sync/atomic"
	"time"

	"chargehand/model/entry"
	"chargehand/model/grow"
)

// Journal is the entries of one smelt with their places on its clock. It is a value:
// With and Cut give another one and share what both have in common, so that an entry
// more costs the same on a long day as on a short one.
//
// What becomes of an entry (struck, amended, a remark about its level) is not written
// into it; AsKnown reads it off the few entries that speak of others.
type Journal struct {
	records grow.Pages[record]
	aside   asides
	shift   map[string]time.Duration // by how much clock jumps move each start of the machine
	shifted uint64                   // a hash of that
	cache   *cache
}

// record is one entry and what follows from it and those before it.
type record struct {
	entry    entry.Entry
	id       uint64        // tells this entry from every other; the same once it is kept as it was handed over
	at       time.Duration // when it happened, and when it was taken down, counted from the first acceptance
	accepted time.Duration
	clock    clock
	latest   time.Duration // the latest acceptance so far, the first one left out
	unbooted bool          // one of them has no boot clock: it is of a log
	inOrder  bool          // it is read, and happened after all that are read and in order before it
	top      time.Duration // when the last of those happened
	sum      uint64        // of the hashes of all of those
	counts   counts        // how many of each are aside by then
	side     uint64        // a hash of all that are aside by then
	chain    uint64        // a hash of all entries by then
}

// asides are the places of the entries that have to be looked at one by one.
type asides struct {
	acts   grow.List[int] // strikes and amendments
	levels grow.List[int] // remarks about a level
	jumps  grow.List[int] // clock jumps
	about  grow.List[int] // what holds for the whole smelt
	late   grow.List[int] // read, and out of order
	// These are only found by them.
	told  grow.List[int] // testimonies
	words grow.List[int] // all but testimonies, temperatures and keys
}

type counts struct{ acts, levels, jumps, about, late, told, words int }

// cache keeps what was made of a Journal, for all its copies.
type cache struct {
	ids    atomic.Uint64
	mu     sync.Mutex
	turned map[uint64]*turned
	about  map[uint64]*About
	placed map[uint64]Journal
}

// most is how much of one sort a cache holds.
const most = 64

func newCache() *cache {
	return &cache{turned: map[uint64]*turned{}, about: map[uint64]*About{}, placed: map[uint64]Journal{}}
}

// kept is what a cache holds under a key, made anew when it does not.
func kept[V any](c *cache, in map[uint64]V, key uint64, make func() V) V {
	c.mu.Lock()
	v, ok := in[key]
	c.mu.Unlock()
	if ok {
		return v
	}
	v = make()
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(in) >= most {
		clear(in)
	}
	in[key] = v
	return v
}

// NewJournal is a Journal without entries.
func NewJournal() Journal { return Journal{cache: newCache()} }

// JournalOf is the Journal of some entries, those of one stream in order.
func JournalOf(entries []entry.Entry) Journal {
	j := NewJournal()
	for _, e := range entries {
		j = j.With(e)
	}
	return j.inForce()
}

// With is the journal with one entry more.
func (j Journal) With(e entry.Entry) Journal { return j.with(e, j.cache.ids.Add(1)) }

// Again is With for an entry that stood at that place before, as handed over, and
// says the same, after the same others: nothing that follows from it is worked out
// anew.
func (j Journal) Again(e entry.Entry, was Journal) Journal {
	n := j.Len()
	if n < was.Len() && j.cache == was.cache && (n == 0 || j.records.At(n-1).chain == was.records.At(n-1).chain) && says(was.records.At(n).entry, e) {
		return j.with(e, was.records.At(n).id)
	}
	return j.With(e)
}

// says tells whether two entries say the same, whether kept or not.
func says(a, b entry.Entry) bool {
	plain := func(e entry.Entry) entry.Entry {
		e.Prev = ""
		return e.Unnamed()
	}
	return same(plain(a), plain(b))
}

// Cut is the beginning of the journal.
func (j Journal) Cut(n int) Journal {
	j.records = j.records.Cut(n)
	var c counts
	if n > 0 {
		c = j.records.At(n - 1).counts
	}
	j.aside = j.aside.cut(c)
	return j
}

func (a asides) cut(c counts) asides {
	return asides{a.acts.Cut(c.acts), a.levels.Cut(c.levels), a.jumps.Cut(c.jumps), a.about.Cut(c.about), a.late.Cut(c.late), a.told.Cut(c.told), a.words.Cut(c.words)}
}

// Len is how many entries there are.
func (j Journal) Len() int { return j.records.Len() }

// Entry is one of them, counted from 0.
func (j Journal) Entry(i int) entry.Entry { return j.records.At(i).entry }

func (j Journal) with(e entry.Entry, id uint64) Journal {
	n := j.Len()
	r := record{entry: e, id: id, latest: never, top: never, unbooted: e.Boot == ""}
	if n > 0 {
		before := j.records.At(n - 1)
		r.clock, r.latest, r.top, r.sum, r.side = before.clock, before.latest, before.top, before.sum, before.side
		r.unbooted, r.counts, r.chain = r.unbooted || before.unbooted, before.counts, before.chain
	} else {
		r.clock.zero = acceptedWall(e)
	}
	r.at, r.accepted = r.clock.place(e, j.shift)
	r.chain = mix(r.chain, id)
	if n > 0 {
		r.latest = max(r.latest, r.accepted)
	}
	late := false
	if reads(e.Event) {
		if r.inOrder, late = r.at >= r.top, r.at < r.top; r.inOrder {
			r.top, r.sum = r.at, r.sum+r.hash()
		}
	}
	aside := late
	note := func(l *grow.List[int], n *int, is bool) {
		if is {
			l.Append(j.Len())
			*n++
			aside = true
		}
	}
	note(&j.aside.late, &r.counts.late, late)
	note(&j.aside.about, &r.counts.about, tells(e.Event))
	switch e.Event.(type) {
	case entry.Strike, entry.Amend:
		note(&j.aside.acts, &r.counts.acts, true)
	case entry.Level:
		note(&j.aside.levels, &r.counts.levels, true)
	case entry.ClockJump:
		note(&j.aside.jumps, &r.counts.jumps, true)
	}
	if aside {
		r.side = mix(r.side, r.hash())
	}
	switch e.Event.(type) {
	case entry.Testimony:
		note(&j.aside.told, &r.counts.told, true)
	case entry.Temperature, entry.Keys, nil:
	default:
		note(&j.aside.words, &r.counts.words, true)
	}
	j.records.Append(r)
	switch e.Event.(type) {
	case entry.Strike, entry.Amend:
		if j.ofLog() {
			j.records = j.redated()
		}
	}
	return j
}

// never is before everything.
const never = time.Duration(-1 << 62)

func (r *record) hash() uint64 { return mix(mix(r.id, uint64(r.at)), uint64(r.accepted)) }

// mix is one hash of two (the finish of splitmix64, a textbook one).
func mix(a, b uint64) uint64 {
	z := a*0x9e3779b97f4a7c15 + b + 0x632be59bd9b4e019
	z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9
	z = (z ^ (z >> 27)) * 0x94d049bb133111eb
	return z ^ (z >> 31)
}

// base is the line of an entry of which nobody speaks.
func (r *record) base(lit time.Duration) Line {
	return Line{Entry: r.entry, Event: r.entry.Event, At: r.at - lit, Accepted: r.accepted - lit, Uncertain: r.entry.Uncertain}
}

// upTo is how many entries there are up to one.
func (j Journal) upTo(known uint64) int {
	n := j.Len()
	if n == 0 || j.records.At(n-1).entry.Seq <= known {
		return n
	}
	return sort.Search(n, func(i int) bool { return j.records.At(i).entry.Seq > known })
}

// place is where an entry stands.
func (j Journal) place(seq uint64) (int, bool) {
	n := j.Len()
	if i := int(seq) - 1; i >= 0 && i < n && j.records.At(i).entry.Seq == seq { // as ever
		return i, true
	}
	i := sort.Search(n, func(i int) bool { return j.records.At(i).entry.Seq >= seq })
	return i, i < n && j.records.At(i).entry.Seq == seq
}

// inForce is the journal with its entries placed by the clock jumps that are in
// force.
func (j Journal) inForce() Journal { return j.AsKnown(All).journal }

// moved is the journal with its entries placed by other clock jumps.
func (j Journal) moved(shift map[string]time.Duration) Journal {
	var shifted uint64
	for boot, by := range shift {
		h := mix(0, uint64(by))
		for _, b := range []byte(boot) {
			h = mix(h, uint64(b))
		}
		shifted += h
	}
	return kept(j.cache, j.cache.placed, mix(j.records.At(j.Len()-1).chain, shifted), func() Journal {
		o := Journal{shift: shift, shifted: shifted, cache: j.cache}
		for i := range j.Len() {
			r := j.records.At(i)
			o = o.with(r.entry, r.id)
		}
		return o
	})
}

// Elapsed is the smelt's clock at a reading of the clocks: what a line taken
// down just then would be accepted at.
func (j Journal) Elapsed(now entry.Stamp) time.Duration {
	n := j.Len()
	if n == 0 {
		return 0
	}
	at := j.records.At(n - 1).clock
	_, accepted := at.place(entry.Entry{Happened: now.Wall, Kept: now.Wall, Boot: now.Boot, Mono: now.Mono}, j.shift)
	return accepted - j.AsKnown(All).lit()
}

// KnownAt is the last entry that had been taken down by a moment of the smelt:
// what "as we saw it" knew, and its light at the least, which is taken down a
// breath after it begins. An imported log knows only its whole.
func (j Journal) KnownAt(at time.Duration) uint64 {
	n := j.Len()
	if n == 0 {
		return 0
	}
	at += j.AsKnown(All).lit()
	i := max(1, sort.Search(n, func(i int) bool { return j.records.At(i).latest > at }))
	if j.records.At(min(i, n-1)).unbooted {
		return All
	}
	return j.records.At(i - 1).entry.Seq
}
