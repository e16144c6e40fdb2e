package repair

import (
	"bytes"
	"cmp"
	"regexp"
	"slices"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

// place where a line was found; several may be set.
type origin uint8

const (
	ofBook origin = 1 << iota
	ofTwin
)

// found is one line, wherever it was found.
type found struct {
	line []byte
	seq  uint64
	prev string
	in   origin
}

// pool holds the lines of one stream by their hash. A line's link names the hash
// of the one before it, so that whatever is whole puts itself in order.
type pool map[string]*found

// pools are those of all streams.
type pools map[string]pool

// add takes a line in. What is no line of a stream is left.
func (p pools) add(line []byte, in origin) {
	l, ok := twin.LinkOf(line)
	if !ok || twin.ValidStream(l.Stream) != nil {
		return
	}
	if p[l.Stream] == nil {
		p[l.Stream] = pool{}
	}
	hash := twin.HashOf(line)
	if f := p[l.Stream][hash]; f != nil {
		f.in |= in
		return
	}
	p[l.Stream][hash] = &found{line: bytes.Clone(line), seq: l.Seq, prev: l.Prev, in: in}
}

// addText takes in the lines of a text; those that are not whole are searched
// for what is.
func (p pools) addText(text []byte, in origin) {
	for line := range bytes.SplitSeq(text, []byte("\n")) {
		if _, ok := twin.LinkOf(line); ok {
			p.add(line, in)
		} else {
			p.scan(line, in)
		}
	}
}

// opening is how every line of the program's own begins.
var opening = []byte(`{"v":`)

// scan takes in every line that stands somewhere in b.
func (p pools) scan(b []byte, in origin) {
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
		p.add(b[:n], in)
		b = b[n:]
	}
}

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

// chain gives the longest whole chain from entry 1. Of two that are equally long
// that holds whose last line was counted as such somewhere (heads), else the one
// found in more places, else the one of the book.
func (p pool) chain(heads map[string]bool) []*found {
	whole := map[string]bool{"": true} // hashes from where the chain goes back to entry 1
	ordered := make([]string, 0, len(p))
	for hash := range p {
		ordered = append(ordered, hash)
	}
	slices.SortFunc(ordered, func(a, b string) int { return cmp.Or(cmp.Compare(p[a].seq, p[b].seq), cmp.Compare(a, b)) })
	last := ""
	for _, hash := range ordered {
		f := p[hash]
		before := p[f.prev]
		if first := f.prev == "" && f.seq == 1; !first && (before == nil || !whole[f.prev] || before.seq+1 != f.seq) {
			continue
		}
		whole[hash] = true
		if last == "" || f.seq > p[last].seq || p.better(hash, last, heads) {
			last = hash
		}
	}
	if last == "" {
		return nil
	}
	lines := make([]*found, p[last].seq)
	for f := p[last]; f != nil; f = p[f.prev] {
		lines[f.seq-1] = f
	}
	return lines
}

// better judges between two whole chains of one length by their last lines.
func (p pool) better(a, b string, heads map[string]bool) bool {
	if p[a].seq != p[b].seq || heads[a] != heads[b] {
		return p[a].seq > p[b].seq || p[a].seq == p[b].seq && heads[a]
	}
	rank := func(in origin) int { return []int{0, 2, 1, 3}[in] }
	return rank(p[a].in) > rank(p[b].in)
}

var headMark = regexp.MustCompile(`"head":"([0-9a-f]{64})"`)

// headsIn collects the hashes that were counted as those of last lines.
func headsIn(b []byte, heads map[string]bool) {
	for _, m := range headMark.FindAllSubmatch(b, -1) {
		heads[string(m[1])] = true
	}
}
