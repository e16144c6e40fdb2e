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

// found is one line, wherever it was found.
type found struct {
	line []byte
	seq  uint64
	prev string
	hash string
	next bool // a line that fits links to it
	sure bool // it is as it was kept: its sum says so, the line after it, or a count
	fits bool // it follows what it says it follows, as far as that is there
}

// Pool holds lines of one stream by their hash. A line's link names the hash of
// the one before it, so that whatever is whole puts itself in order.
type Pool map[string]*found

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
			p[hash] = &found{line: line, seq: l.Seq, prev: l.Prev, hash: hash, sure: sealed}
		}
	}
}

// Union is what the lines of a pool come to.
type Union struct {
	Lines  [][]byte   // the stream, in order of sequence
	Gaps   []Gap      // entries of it that are nowhere
	Others [][][]byte // whole chains that part from it: somebody went on elsewhere
	Loose  int        // further lines, that fit nowhere
}

func linesOf(fs []*found) [][]byte {
	lines := make([][]byte, len(fs))
	for i, f := range fs {
		lines[i] = f.line
	}
	return lines
}

// Join puts the lines in order, from the last back to the first. heads are hashes that
// were counted as those of last lines, with their sequences where these are known. A
// line without a sum counts when the one after it links to it, or when it is such a
// head; one that nothing vouches for and that another contradicts was changed, and is
// left out.
func (p Pool) Join(heads map[string]uint64) (u Union) {
	all := slices.SortedFunc(maps.Values(p), func(a, b *found) int {
		return cmp.Or(cmp.Compare(a.seq, b.seq), cmp.Compare(a.hash, b.hash))
	})
	counted, lost := uint64(0), map[uint64]bool{} // sequences of heads that are nowhere
	for hash, seq := range heads {
		if p[hash] == nil {
			counted, lost[seq] = max(counted, seq), true
		}
	}
	p.vouch(all, heads, lost)
	var main []*found
	used, above := map[*found]bool{}, &found{seq: math.MaxUint64}
	for f := p.end(all, above, heads); f != nil; f = p.end(all, above, heads) {
		piece := p.back(f)
		main, above = append(piece, main...), piece[0]
	}
	for _, f := range main {
		used[f] = true
	}
	for _, f := range all {
		if !f.fits || f.next || used[f] {
			continue
		}
		chain := p.back(f)
		own := chain[slices.IndexFunc(chain, func(f *found) bool { return !used[f] }):]
		if chain[0].seq == 1 && len(main) > 0 && (len(own) > 1 || f.sure) {
			u.Others = append(u.Others, linesOf(chain))
			for _, f := range own {
				used[f] = true
			}
		}
	}
	u.Lines = linesOf(main)
	u.count(all, main, used, counted)
	return u
}

// vouch notes which lines fit behind what they name, and for which something vouches.
func (p Pool) vouch(all []*found, heads map[string]uint64, lost map[uint64]bool) {
	for _, f := range all {
		_, head := heads[f.hash]
		f.sure = f.sure || head
		if before := p[f.prev]; before != nil && before.seq+1 == f.seq {
			before.sure = true
		}
	}
	for _, f := range all {
		before := p[f.prev]
		switch {
		case !f.sure && (lost[f.seq] || !readable(f.line)): // another was counted as this one, or nobody could have kept it
		case before == nil: // without a link it stands behind an end that was lost with its hash
			f.fits = f.prev != "" || f.seq == 1 || all[0].seq < f.seq && f.sure
		default:
			f.fits = before.fits && before.seq+1 == f.seq
			before.next = before.next || f.fits
		}
	}
}

// end gives the best line that what stands below another may end with: the one that
// was counted as the last, else the highest. None does right below, for the other names
// the one that stood there.
func (p Pool) end(all []*found, above *found, heads map[string]uint64) (best *found) {
	limit := above.seq
	if above.prev != "" {
		limit--
	}
	for i, f := range all {
		if !f.fits || f.seq >= limit || f.next && f.seq+1 < limit {
			continue
		}
		if before := p[f.prev]; before == nil && !f.sure && i > 0 && all[i-1].seq+1 == f.seq && all[i-1].fits {
			continue // a single one that contradicts what stands there
		}
		if best != nil {
			_, is := heads[f.hash]
			_, was := heads[best.hash]
			if was && !is || was == is && f.seq <= best.seq {
				continue
			}
		}
		best = f
	}
	return best
}

// back follows the links from a line to the first.
func (p Pool) back(f *found) (chain []*found) {
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
func (u *Union) count(all, main []*found, used map[*found]bool, counted uint64) {
	has, loose := map[uint64]bool{}, map[uint64]bool{}
	for _, f := range main {
		has[f.seq] = true
	}
	for _, f := range all {
		loose[f.seq] = loose[f.seq] || !used[f]
		if loose[f.seq] && !has[f.seq] {
			has[f.seq] = true // once
			u.Loose++
		}
	}
	if len(main) == 0 {
		return
	}
	at := &found{sure: true}
	for _, next := range append(slices.Clone(main), &found{seq: counted + 1}) {
		if next.seq > at.seq+1 {
			g := Gap{After: at.seq, Before: next.seq, Why: words.GapLost, Head: at.hash, Unsure: !at.sure}
			if loose[at.seq+1] {
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
