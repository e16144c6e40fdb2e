package fold

import (
	"cmp"
	"slices"
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

// turned is what became of the entries that others speak of.
type turned struct {
	lit   time.Duration // when the light began, counted from the first acceptance
	shift map[string]time.Duration
	lines map[int]Line // by place
	gone  run          // of those in order: they do not count there
	held  run          // what is read and in force of them, and of what is out of order
	key   uint64       // of what holds for the whole smelt
	about *About
}

// run is lines in the order in which they happened, with the sums of their hashes.
type run struct {
	lines []Line
	sums  []uint64
}

func (r *run) add(l Line, hash uint64) {
	r.lines, r.sums = append(r.lines, l), append(r.sums, hash)
}

// order sorts the lines and adds the hashes up.
func (r *run) order() {
	sort.Sort(byTime(*r))
	for i := 1; i < len(r.sums); i++ {
		r.sums[i] += r.sums[i-1]
	}
}

type byTime run

func (r byTime) Len() int           { return len(r.lines) }
func (r byTime) Less(i, j int) bool { return earlier(r.lines[i], r.lines[j]) < 0 }
func (r byTime) Swap(i, j int) {
	r.lines[i], r.lines[j] = r.lines[j], r.lines[i]
	r.sums[i], r.sums[j] = r.sums[j], r.sums[i]
}

func earlier(a, b Line) int {
	return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Seq(), b.Seq()))
}

// upTo is how many of the lines had happened by a moment.
func (r run) upTo(at time.Duration) int {
	return sort.Search(len(r.lines), func(i int) bool { return r.lines[i].At > at })
}

// sum is that of the hashes of those.
func (r run) sum(at time.Duration) uint64 {
	if n := r.upTo(at); n > 0 {
		return r.sums[n-1]
	}
	return 0
}

// turn works out what became of the entries up to a place.
func (j Journal) turn(n int) *turned {
	aside := j.aside.cut(j.records.At(n - 1).counts)
	changes := j.resolve(n, aside.acts.All())
	t := &turned{lines: map[int]Line{}}
	t.shift = j.shifts(aside.jumps.All(), changes)
	t.lit = j.records.At(0).at
	if c := changes[0]; c != nil {
		t.lit = j.happened(0, c, changes)
	}
	j.remark(n, aside.levels.All(), changes, t.lit)
	var about []Line
	for i, c := range changes {
		r := j.records.At(i)
		l := r.base(t.lit)
		l.Event, l.Uncertain, l.Remark = c.event, c.uncertain, c.remark
		l.At = j.happened(i, c, changes) - t.lit
		hash := mix(r.hash(), uint64(l.At))
		for _, by := range []int{c.struckBy, c.amendedBy, c.remarkBy} {
			hash = mix(hash, j.idOf(by))
		}
		if c.struckBy >= 0 {
			l.StruckBy = j.records.At(c.struckBy).entry.Seq
		}
		if c.amendedBy >= 0 {
			l.AmendedBy = j.records.At(c.amendedBy).entry.Seq
		}
		t.lines[i] = l
		if r.inOrder {
			t.gone.add(r.base(t.lit), r.hash())
		}
		if !l.Struck() && reads(l.Event) {
			t.held.add(l, hash)
		}
		if !l.Struck() && tells(l.Event) {
			about = append(about, l)
			t.key += hash
		}
	}
	for _, i := range aside.late.All() {
		if changes[i] == nil {
			r := j.records.At(i)
			t.held.add(r.base(t.lit), r.hash())
		}
	}
	for _, i := range aside.about.All() {
		if changes[i] == nil {
			r := j.records.At(i)
			about = append(about, r.base(t.lit))
			t.key += r.hash()
		}
	}
	t.gone.order()
	t.held.order()
	t.key = mix(t.key, uint64(t.lit))
	t.about = kept(j.cache, j.cache.about, t.key, func() *About {
		slices.SortFunc(about, earlier)
		return j.aboutOf(about, changes)
	})
	return t
}

func (j Journal) idOf(i int) uint64 {
	if i < 0 {
		return 0
	}
	return j.records.At(i).id
}

func (j Journal) aboutOf(held []Line, changes map[int]*change) *About {
	for _, l := range held {
		if _, ok := l.Event.(entry.Light); !ok {
			continue
		}
		lit := l.Entry.Happened
		if by, ok := j.place(l.AmendedBy); ok && l.AmendedBy != 0 {
			if a, ok := j.eventOf(by, changes).(entry.Amend); ok && !a.Happened.IsZero() {
				lit = a.Happened
			}
		}
		return aboutOf(l, lit, held)
	}
	return &About{}
}
