package fold

import (
	"cmp"
	"slices"
	"sort"
	"time"

	"chargehand/model/entry"
)

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
