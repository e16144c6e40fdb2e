package fold

import (
	"iter"
	"maps"
	"slices"
	"sort"
	"time"

	"chargehand/model/entry"
)

// Known is a Journal as known by one of its entries.
type Known struct {
	journal Journal // all of it, placed by the clock jumps that were known
	n       int     // how many entries are known
	turned  *turned
}

// AsKnown is the journal as known by one of its entries (All for every one).
func (j Journal) AsKnown(known uint64) Known {
	n := j.upTo(known)
	if n == 0 {
		return Known{journal: j, turned: &turned{about: &About{}}}
	}
	t := j.turned(n)
	if !maps.Equal(t.shift, j.shift) {
		j = j.moved(t.shift)
		t = j.turned(n)
	}
	return Known{journal: j, n: n, turned: t}
}

// turned is what became of the entries up to a place.
func (j Journal) turned(n int) *turned {
	key := mix(mix(j.records.At(n-1).side, j.records.At(0).id), j.shifted)
	return kept(j.cache, j.cache.turned, key, func() *turned { return j.turn(n) })
}

// Journal is the whole journal, placed by the clock jumps that are known.
func (k Known) Journal() Journal { return k.journal }

func (k Known) lit() time.Duration { return k.turned.lit }

// Len is how many entries are known.
func (k Known) Len() int { return k.n }

// Last is the sequence of the last one; 0 for none.
func (k Known) Last() uint64 {
	if k.n == 0 {
		return 0
	}
	return k.journal.records.At(k.n - 1).entry.Seq
}

// At is the line of an entry, counted from 0.
func (k Known) At(i int) Line {
	if l, ok := k.turned.lines[i]; ok {
		return l
	}
	return k.journal.records.At(i).base(k.turned.lit)
}

// Line is the line of an entry by its sequence.
func (k Known) Line(seq uint64) (Line, bool) {
	i, ok := k.journal.place(seq)
	if !ok || i >= k.n {
		return Line{}, false
	}
	return k.At(i), true
}

// Lines are all of them, in the order of their sequence.
func (k Known) Lines() iter.Seq[Line] {
	return func(yield func(Line) bool) {
		for i := range k.n {
			if !yield(k.At(i)) {
				return
			}
		}
	}
}

// Backward are all of them from the last one on.
func (k Known) Backward() iter.Seq[Line] {
	return func(yield func(Line) bool) {
		for i := k.n - 1; i >= 0; i-- {
			if !yield(k.At(i)) {
				return
			}
		}
	}
}

// Of are the lines in force of one kind, in the order of their sequence. It is quick
// for all kinds but those of which a machine makes very many.
func (k Known) Of(kind entry.Kind) iter.Seq[Line] {
	return func(yield func(Line) bool) {
		is := func(l Line) bool { return !l.Struck() && l.Event != nil && l.Event.Kind() == kind }
		if k.n == 0 {
			return
		}
		switch kind {
		case entry.KindTestimony, entry.KindTemperature, entry.KindKeys:
			for l := range k.Lines() {
				if is(l) && !yield(l) {
					return
				}
			}
			return
		}
		places := slices.Clone(k.journal.aside.cut(k.journal.records.At(k.n - 1).counts).words.All())
		for i := range k.turned.lines { // one may have become of this kind
			if at, found := slices.BinarySearch(places, i); !found {
				places = slices.Insert(places, at, i)
			}
		}
		for _, i := range places {
			if l := k.At(i); is(l) && !yield(l) {
				return
			}
		}
	}
}

// Told are the testimonies as they were written down, the last first.
func (j Journal) Told() iter.Seq[entry.Testimony] {
	return func(yield func(entry.Testimony) bool) {
		for _, i := range slices.Backward(j.aside.told.All()) {
			if t, ok := j.records.At(i).entry.Event.(entry.Testimony); ok && !yield(t) {
				return
			}
		}
	}
}

// About is what holds for the whole smelt.
func (k Known) About() *About { return k.turned.about }

// Key is a hash of all that a state at a moment follows from: of what is known for
// the whole smelt, and of every line read that had happened by then. Where two keys
// are the same, so are the states.
func (k Known) Key(at time.Duration) uint64 {
	t := k.turned
	sum := t.held.sum(at) - t.gone.sum(at)
	if i := k.inOrder(at); i > 0 {
		sum += k.journal.records.At(i - 1).sum
	}
	return mix(sum, t.key)
}

// inOrder is how many entries there are before the first one in order that happened
// after a moment.
func (k Known) inOrder(at time.Duration) int {
	at += k.turned.lit
	if k.n == 0 || k.journal.records.At(k.n-1).top <= at {
		return k.n
	}
	return sort.Search(k.n, func(i int) bool { return k.journal.records.At(i).top > at })
}

// Between are the lines that are read and in force and happened after one moment and
// up to another, in the order in which they did.
func (k Known) Between(after, to time.Duration) iter.Seq[Line] {
	return func(yield func(Line) bool) {
		held := k.turned.held.lines[k.turned.held.upTo(after):]
		for i := k.inOrder(after); i < k.n; i++ {
			r := k.journal.records.At(i)
			if !r.inOrder {
				continue
			}
			at := r.at - k.turned.lit
			if at > to {
				break
			}
			if at <= after {
				continue
			}
			if _, is := k.turned.lines[i]; is {
				continue
			}
			l := r.base(k.turned.lit)
			for len(held) > 0 && earlier(held[0], l) < 0 {
				if !yield(held[0]) {
					return
				}
				held = held[1:]
			}
			if !yield(l) {
				return
			}
		}
		for _, l := range held {
			if l.At > to || !yield(l) {
				return
			}
		}
	}
}

// Trace gives the timeline to a moment.
func (k Known) Trace(at time.Duration) Timeline {
	c := NewTimeline(k.turned.about)
	for l := range k.Between(never, at) {
		c.Take(l)
	}
	c = c.To(at)
	c.Known = k.Last()
	return c
}

// InForce gives the lines that hold, in the order in which they happened.
func (k Known) InForce() []Line {
	var held []Line
	for l := range k.Lines() {
		switch l.Event.(type) {
		case nil, entry.Strike, entry.Amend:
			continue
		}
		if !l.Struck() {
			held = append(held, l)
		}
	}
	slices.SortFunc(held, earlier)
	return held
}

// End is when the last act of the smelt happened: what is weighed, noted or
// mended afterwards is not of the smelt's own time.
func (k Known) End() time.Duration {
	var end time.Duration
	for l := range k.Lines() {
		if !l.Struck() && l.At > end && entry.TraitsOf(l.Event).AfterClose != entry.Yes {
			end = l.At
		}
	}
	return end
}

// Latest is the last moment that any entry speaks of: everything has happened
// by then.
func (k Known) Latest() time.Duration {
	var latest time.Duration
	for l := range k.Lines() {
		latest = max(latest, l.At, l.Accepted)
	}
	return latest
}

// Lines gives every entry up to known, in the order of their sequence, with
// what became of it. The entries are those of one stream, in order.
func Lines(entries []entry.Entry, known uint64) []Line {
	return slices.Collect(JournalOf(entries).AsKnown(known).Lines())
}

// InForce gives the lines that hold among the entries up to known, in the
// order in which they happened.
func InForce(entries []entry.Entry, known uint64) []Line {
	return JournalOf(entries).AsKnown(known).InForce()
}

// ElapsedAt is the smelt's clock at a reading of the clocks; see Journal.Elapsed.
func ElapsedAt(entries []entry.Entry, now entry.Stamp) time.Duration {
	return JournalOf(entries).Elapsed(now)
}

// KnownAt is the last entry that had been taken down by a moment of the smelt; see
// Journal.KnownAt.
func KnownAt(entries []entry.Entry, at time.Duration) uint64 { return JournalOf(entries).KnownAt(at) }

// End is when the last act of the smelt happened; see Known.End.
func End(entries []entry.Entry) time.Duration { return JournalOf(entries).AsKnown(All).End() }

// Latest is the last moment that any entry speaks of.
func Latest(entries []entry.Entry) time.Duration { return JournalOf(entries).AsKnown(All).Latest() }
