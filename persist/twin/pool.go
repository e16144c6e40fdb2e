package twin

import (
	"bytes"
	"cmp"
	"errors"
	"maps"
	"regexp"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// Origin is where a line was found; several may be set.
type Origin uint8

// The two places of a line.
const (
	InBook Origin = 1 << iota
	InTwin
)

// Found is one line, wherever it was found.
type Found struct {
	Line []byte
	Seq  uint64
	In   Origin
	prev string
	hash string
	next bool // some line links to it, so that it is as it was kept
}

// Pool holds lines of one stream by their hash. A line's link names the hash of
// the one before it, so that whatever is whole puts itself in order.
type Pool struct {
	lines map[string]*Found
	named map[string]bool // hashes that stand as links in what is no line any more
}

var linkMark = regexp.MustCompile(`"prev":"([0-9a-f]{64})"`)

// Add takes lines of a stream in. What is none is left.
func (p *Pool) Add(stream string, in Origin, lines ...[]byte) {
	if p.lines == nil {
		p.lines, p.named = map[string]*Found{}, map[string]bool{}
	}
	for _, line := range lines {
		l, ok := LinkOf(line)
		if !ok {
			for _, m := range linkMark.FindAllSubmatch(line, -1) {
				p.named[string(m[1])] = true
			}
			Scan(line, func(inner []byte) {
				if _, ok := LinkOf(inner); ok {
					p.Add(stream, in, inner)
				}
			})
			continue
		}
		if !OfStream(stream, l.Stream) {
			continue
		}
		hash := HashOf(line)
		if f := p.lines[hash]; f != nil {
			f.In |= in
			continue
		}
		p.lines[hash] = &Found{Line: line, Seq: l.Seq, In: in, prev: l.Prev, hash: hash}
	}
}

// Union is what the lines of a pool come to.
type Union struct {
	Main   []*Found   // the stream, in order of sequence
	Gaps   []Gap      // entries of it that are nowhere
	Others [][]*Found // whole chains that part from it: somebody went on elsewhere
	Loose  int        // further lines, that fit nowhere
}

// Lines are those of the stream.
func (u Union) Lines() [][]byte { return linesOf(u.Main) }

// OtherLines are those of the other chains.
func (u Union) OtherLines() (all [][][]byte) {
	for _, o := range u.Others {
		all = append(all, linesOf(o))
	}
	return all
}

func linesOf(fs []*Found) [][]byte {
	lines := make([][]byte, len(fs))
	for i, f := range fs {
		lines[i] = f.Line
	}
	return lines
}

// Join puts the lines in order. heads are hashes that were counted as those of
// last lines, with their sequences where these are known. A line counts when the one after it links to it, or when it is such
// a head; one that neither vouches for and that another contradicts was changed,
// and is left out.
func (p *Pool) Join(heads map[string]uint64) Union {
	all := slices.SortedFunc(maps.Values(p.lines), func(a, b *Found) int {
		return cmp.Or(cmp.Compare(a.Seq, b.Seq), cmp.Compare(a.hash, b.hash))
	})
	linked := map[string]bool{}
	for _, f := range all {
		linked[f.prev] = true
	}
	vouched := func(f *Found) bool { _, head := heads[f.hash]; return f.next || head || p.named[f.hash] }
	for _, f := range all {
		if !linked[f.hash] && !vouched(f) && !readable(f.Line) {
			delete(p.lines, f.hash) // what nobody could have kept: it was changed
		}
	}
	best := map[string]*Found{} // by the first line of what hangs together, its best end
	root := map[string]string{}
	var ends []*Found
	for _, f := range all {
		before := p.lines[f.prev]
		switch {
		case p.lines[f.hash] == nil:
		case before == nil && (f.prev != "" || f.Seq == 1 || all[0].Seq < f.Seq && (linked[f.hash] || vouched(f) || f.In == InBook|InTwin)):
			root[f.hash] = f.hash // without a link it stands behind an end that was lost with its hash
		case before != nil && before.Seq+1 == f.Seq && root[before.hash] != "":
			root[f.hash] = root[before.hash]
			before.next = true
		default:
			continue // it says that it follows what it cannot follow
		}
	}
	for _, f := range all {
		if root[f.hash] == "" || f.next {
			continue
		}
		ends = append(ends, f)
		if b := best[root[f.hash]]; b == nil || better(f, b, heads) {
			best[root[f.hash]] = f
		}
	}
	var u Union
	for _, r := range slices.SortedFunc(maps.Keys(best), func(a, b string) int {
		return cmp.Or(cmp.Compare(p.lines[a].Seq, p.lines[b].Seq), cmp.Compare(best[b].Seq, best[a].Seq), cmp.Compare(a, b))
	}) {
		u.lay(p.back(best[r]), heads)
	}
	counted, other := uint64(0), map[uint64]bool{}
	for hash, seq := range heads {
		if p.lines[hash] == nil {
			counted, other[seq] = max(counted, seq), true
		}
	}
	u.Main = slices.DeleteFunc(u.Main, func(f *Found) bool { return !vouched(f) && other[f.Seq] }) // another line was counted as this one
	used := map[*Found]bool{}
	for _, f := range u.Main {
		used[f] = true
	}
	for _, f := range ends {
		if used[f] {
			continue
		}
		chain := p.back(f)
		from := slices.IndexFunc(chain, func(f *Found) bool { return !used[f] })
		own := chain[from:]
		if _, head := heads[f.hash]; chain[0].Seq == 1 && len(u.Main) > 0 && (len(own) > 1 || head || !u.hurt(f)) && (f.Seq != counted || len(own) > 1) {
			u.Others = append(u.Others, chain)
			for _, f := range own {
				used[f] = true
			}
		}
	}
	u.count(all, used, counted, func(f *Found) bool { return vouched(f) || f.In == InBook|InTwin })
	return u
}

// back follows the links from a line to the first.
func (p *Pool) back(f *Found) (chain []*Found) {
	for ; f != nil; f = p.lines[f.prev] {
		chain = append(chain, f)
	}
	slices.Reverse(chain)
	return chain
}

// better judges between two ends of what hangs together: the one that was
// counted as the last, else the longer, else the one in more places, else the
// book's.
func better(a, b *Found, heads map[string]uint64) bool {
	_, ofA := heads[a.hash]
	_, ofB := heads[b.hash]
	if ofA != ofB {
		return ofA
	}
	rank := []int{0, 2, 1, 3}
	return cmp.Or(cmp.Compare(a.Seq, b.Seq), cmp.Compare(rank[a.In], rank[b.In])) > 0
}

// lay puts the next piece behind what there is, over a gap. Of two that
// contradict each other a single line that nothing vouches for gives way.
func (u *Union) lay(piece []*Found, heads map[string]uint64) {
	unsure := func(f *Found) bool { _, head := heads[f.hash]; return !f.next && !head }
	first := piece[0].Seq
	last := func() *Found {
		if n := len(u.Main); n > 0 && u.Main[n-1].Seq+1 >= first {
			return u.Main[n-1]
		}
		return nil
	}
	if last() != nil && len(piece) == 1 && unsure(piece[0]) {
		return
	}
	for f := last(); f != nil && unsure(f); f = last() {
		u.Main = u.Main[:len(u.Main)-1]
	}
	if f := last(); f == nil || f.Seq < first {
		u.Main = append(u.Main, piece...)
	}
}

// hurt tells whether a line that parts from the stream is one of its own with a
// few bytes changed, and not what somebody keyed elsewhere.
func (u *Union) hurt(f *Found) bool {
	const few = 16 // bytes; two entries that were keyed differ in more
	i, has := slices.BinarySearchFunc(u.Main, f.Seq, func(m *Found, seq uint64) int { return cmp.Compare(m.Seq, seq) })
	if !has {
		return true
	}
	own, start, end := u.Main[i].Line, 0, 0
	least := min(len(own), len(f.Line))
	for start < least && own[start] == f.Line[start] {
		start++
	}
	for end < least-start && own[len(own)-1-end] == f.Line[len(f.Line)-1-end] {
		end++
	}
	differ := max(len(own), len(f.Line)) - least
	for k := range least {
		if own[k] != f.Line[k] {
			differ++
		}
	}
	return differ <= few || len(f.Line) < len(own) && start+end >= least-few // changed in place, or a piece is missing
}

// readable tells whether a line is an entry, of this version or a newer.
func readable(line []byte) bool {
	_, err := entry.Decode(line)
	return err == nil || errors.Is(err, entry.ErrNewer)
}

// count finds the gaps of the stream and what is left over.
func (u *Union) count(all []*Found, used map[*Found]bool, counted uint64, sure func(*Found) bool) {
	loose := map[uint64]bool{}
	has := map[uint64]bool{}
	for _, f := range u.Main {
		has[f.Seq] = true
	}
	for _, f := range all {
		if !used[f] {
			loose[f.Seq] = true
		}
	}
	at := &Found{}
	gap := func(next *Found) {
		if next.Seq > at.Seq+1 {
			g := Gap{After: at.Seq, Before: next.Seq, Why: words.GapLost, Head: at.hash, Unsure: at.Seq > 0 && !sure(at)}
			if loose[at.Seq+1] {
				g.Why = words.GapChanged
			}
			u.Gaps = append(u.Gaps, g)
		}
		at = next
	}
	for _, f := range u.Main {
		gap(f)
	}
	if len(u.Main) > 0 {
		gap(&Found{Seq: counted + 1})
	}
	for s := range loose {
		if !has[s] {
			u.Loose++
		}
	}
}

// Scan gives every line that stands somewhere in a text, in whatever else there
// is. Lines of any stream are given.
func Scan(b []byte, line func([]byte)) {
	for {
		at := bytes.Index(b, opening)
		if at < 0 {
			return
		}
		b = b[at:]
		n := objectLength(b)
		if n == 0 {
			b = b[1:]
			continue
		}
		line(bytes.Clone(b[:n]))
		b = b[n:]
	}
}

// opening is how every line of the program's own begins.
var opening = []byte(`{"v":`)

// objectLength is how long the JSON object is with which b begins; 0 where it
// does not end within the length of an entry.
func objectLength(b []byte) int {
	depth, inString := 0, false
	b = b[:min(len(b), entry.MaxBytes)]
	for i := 0; i < len(b); i++ {
		switch c := b[i]; {
		case inString && c == '\\':
			i++
		case c == '"':
			inString = !inString
		case inString && c < ' ':
			return 0 // no string goes over such a byte
		case inString:
		case c == '{':
			depth++
		case c == '}':
			if depth--; depth == 0 {
				return i + 1
			}
		}
	}
	return 0
}
