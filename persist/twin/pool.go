package twin

import (
	"bytes"
	"cmp"
	"errors"
	"maps"
	"math"
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
	in   Origin
	prev string
	hash string
	next bool // a line that fits links to it
	sure bool // something vouches for it: it is as it was kept
	fits bool // it follows what it says it follows, as far as that is there
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
		if p.lines[hash] == nil {
			p.lines[hash] = &Found{Line: line, Seq: l.Seq, prev: l.Prev, hash: hash}
		}
		p.lines[hash].in |= in
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

// Join puts the lines in order, from the last back to the first. heads are hashes that
// were counted as those of last lines, with their sequences where these are known. A
// line counts when the one after it links to it, when it is such a head, or when both
// copies have it; one that nothing vouches for and that another contradicts was
// changed, and is left out.
func (p *Pool) Join(heads map[string]uint64) (u Union) {
	all := slices.SortedFunc(maps.Values(p.lines), func(a, b *Found) int {
		return cmp.Or(cmp.Compare(a.Seq, b.Seq), cmp.Compare(a.hash, b.hash))
	})
	counted, lost := uint64(0), map[uint64]bool{} // sequences of heads that are nowhere
	for hash, seq := range heads {
		if p.lines[hash] == nil {
			counted, lost[seq] = max(counted, seq), true
		}
	}
	p.vouch(all, heads, lost)
	above := &Found{Seq: math.MaxUint64}
	for {
		f := p.end(all, above, heads)
		if f == nil {
			break
		}
		piece := p.back(f)
		u.Main = append(piece, u.Main...)
		above = piece[0]
	}
	used := map[*Found]bool{}
	for _, f := range u.Main {
		used[f] = true
	}
	for _, f := range all {
		if !f.fits || f.next || used[f] {
			continue
		}
		chain := p.back(f)
		own := chain[slices.IndexFunc(chain, func(f *Found) bool { return !used[f] }):]
		_, head := heads[f.hash]
		if chain[0].Seq == 1 && len(u.Main) > 0 && (len(own) > 1 || f.Seq != counted && (head || !u.hurt(f))) {
			u.Others = append(u.Others, chain)
			for _, f := range own {
				used[f] = true
			}
		}
	}
	u.count(all, used, counted)
	return u
}

// vouch notes which lines fit behind what they name, and for which something vouches.
func (p *Pool) vouch(all []*Found, heads map[string]uint64, lost map[uint64]bool) {
	for _, f := range all {
		_, head := heads[f.hash]
		before := p.lines[f.prev]
		f.sure = f.sure || head || p.named[f.hash] || f.in == InBook|InTwin
		if before != nil && before.Seq+1 == f.Seq {
			before.sure = true
		}
	}
	for _, f := range all {
		before := p.lines[f.prev]
		switch {
		case !f.sure && (lost[f.Seq] || !readable(f.Line)): // another was counted as this one, or nobody could have kept it
		case before == nil: // without a link it stands behind an end that was lost with its hash
			f.fits = f.prev != "" || f.Seq == 1 || all[0].Seq < f.Seq && f.sure
		default:
			f.fits = before.fits && before.Seq+1 == f.Seq
			before.next = before.next || f.fits
		}
	}
}

// end gives the best line that what stands below another may end with: the one that
// was counted as the last, else the highest, else the one in more places, else the
// book's. None does right below, for the other names the one that stood there.
func (p *Pool) end(all []*Found, above *Found, heads map[string]uint64) (best *Found) {
	limit := above.Seq
	if above.prev != "" {
		limit--
	}
	rank := []int{0, 2, 1, 3}
	for i, f := range all {
		if !f.fits || f.Seq >= limit || f.next && f.Seq+1 < limit {
			continue
		}
		if before := p.lines[f.prev]; before == nil && !f.sure && i > 0 && all[i-1].Seq+1 == f.Seq && all[i-1].fits {
			continue // a single one that contradicts what stands there
		}
		if best != nil {
			_, is := heads[f.hash]
			_, was := heads[best.hash]
			if was && !is || was == is && cmp.Or(cmp.Compare(f.Seq, best.Seq), cmp.Compare(rank[f.in], rank[best.in])) <= 0 {
				continue
			}
		}
		best = f
	}
	return best
}

// back follows the links from a line to the first.
func (p *Pool) back(f *Found) (chain []*Found) {
	for ; f != nil; f = p.lines[f.prev] {
		chain = append(chain, f)
	}
	slices.Reverse(chain)
	return chain
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
func (u *Union) count(all []*Found, used map[*Found]bool, counted uint64) {
	has, loose := map[uint64]bool{}, map[uint64]bool{}
	for _, f := range u.Main {
		has[f.Seq] = true
	}
	for _, f := range all {
		loose[f.Seq] = loose[f.Seq] || !used[f]
		if loose[f.Seq] && !has[f.Seq] {
			has[f.Seq] = true // once
			u.Loose++
		}
	}
	if len(u.Main) == 0 {
		return
	}
	at := &Found{sure: true}
	for _, next := range append(slices.Clone(u.Main), &Found{Seq: counted + 1}) {
		if next.Seq > at.Seq+1 {
			g := Gap{After: at.Seq, Before: next.Seq, Why: words.GapLost, Head: at.hash, Unsure: !at.sure}
			if loose[at.Seq+1] {
				g.Why = words.GapChanged
			}
			u.Gaps = append(u.Gaps, g)
		}
		at = next
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
