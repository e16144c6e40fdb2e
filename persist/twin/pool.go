package twin

import (
	"bytes"
	"cmp"
	"errors"
	"maps"
	"math"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// Found is one line, wherever it was found.
type Found struct {
	Line []byte
	Seq  uint64
	prev string
	hash string
	next bool // a line that fits links to it
	sure bool // it is as it was kept: its sum says so, the line after it, or a count
	fits bool // it follows what it says it follows, as far as that is there
}

// Pool holds lines of one stream by their hash. A line's link names the hash of
// the one before it, so that whatever is whole puts itself in order.
type Pool map[string]*Found

// Add takes lines of a stream in. What is none, or was changed, is left.
func (p Pool) Add(stream string, lines ...[]byte) {
	for _, line := range lines {
		l, ok := LinkOf(line)
		if !ok { // two that have become one, perhaps
			Scan(line, func(inner []byte) {
				if _, ok := LinkOf(inner); ok {
					p.Add(stream, inner)
				}
			})
			continue
		}
		if hash := HashOf(line); OfStream(stream, l.Stream) {
			_, sealed := Intact(line)
			p[hash] = &Found{Line: line, Seq: l.Seq, prev: l.Prev, hash: hash, sure: sealed}
		}
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
// line without a sum counts when the one after it links to it, or when it is such a
// head; one that nothing vouches for and that another contradicts was changed, and is
// left out.
func (p Pool) Join(heads map[string]uint64) (u Union) {
	all := slices.SortedFunc(maps.Values(p), func(a, b *Found) int {
		return cmp.Or(cmp.Compare(a.Seq, b.Seq), cmp.Compare(a.hash, b.hash))
	})
	counted, lost := uint64(0), map[uint64]bool{} // sequences of heads that are nowhere
	for hash, seq := range heads {
		if p[hash] == nil {
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
		if chain[0].Seq == 1 && len(u.Main) > 0 && (len(own) > 1 || f.sure) {
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
func (p Pool) vouch(all []*Found, heads map[string]uint64, lost map[uint64]bool) {
	for _, f := range all {
		_, head := heads[f.hash]
		f.sure = f.sure || head
		if before := p[f.prev]; before != nil && before.Seq+1 == f.Seq {
			before.sure = true
		}
	}
	for _, f := range all {
		before := p[f.prev]
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
// was counted as the last, else the highest. None does right below, for the other names
// the one that stood there.
func (p Pool) end(all []*Found, above *Found, heads map[string]uint64) (best *Found) {
	limit := above.Seq
	if above.prev != "" {
		limit--
	}
	for i, f := range all {
		if !f.fits || f.Seq >= limit || f.next && f.Seq+1 < limit {
			continue
		}
		if before := p[f.prev]; before == nil && !f.sure && i > 0 && all[i-1].Seq+1 == f.Seq && all[i-1].fits {
			continue // a single one that contradicts what stands there
		}
		if best != nil {
			_, is := heads[f.hash]
			_, was := heads[best.hash]
			if was && !is || was == is && f.Seq <= best.Seq {
				continue
			}
		}
		best = f
	}
	return best
}

// back follows the links from a line to the first.
func (p Pool) back(f *Found) (chain []*Found) {
	for ; f != nil; f = p[f.prev] {
		chain = append(chain, f)
	}
	slices.Reverse(chain)
	return chain
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
