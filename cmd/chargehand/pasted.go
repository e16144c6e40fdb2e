package main

import (
	"bytes"
	"time"
)

// Marks of a paste, as terminals put them round one where they know how to (bracketed paste).
var pasteBegins, pasteEnds = []byte("\x1b[200~"), []byte("\x1b[201~")

const (
	// atOnce is how many characters that come at once no hand has typed: at fifteen keys a second they would have had to
	// pile up for more than four seconds. Of them manyKinds are different: a key that is held down piles up too.
	atOnce, manyKinds = 64, 12
	// together is how close what is read lies to what was read before to have come at once with it: the keys of a hand lie
	// some 60 ms apart, those of one that is held down 30.
	together = 10 * time.Millisecond
	// quiet is how long nothing comes after a paste before it is over.
	quiet = 100 * time.Millisecond
)

// pasteMarks finds the pastes of a terminal that sends them as if they were typed, and marks
// them. What a hand types passes as it came, at once.
type pasteMarks struct {
	count  int           // characters that came at once so far
	kinds  map[rune]bool // the different ones among them
	last   time.Time     // when something was last read
	inside bool          // a paste is being marked
	theirs bool          // the terminal marks one itself
	tail   []byte        // the end of what was read, where a mark of the terminal's may have begun
}

// mark looks at n bytes just read into p and puts the marks round them where they are of a
// paste; p has room for both. More waits until something else comes or it is quiet, and
// tells which.
func (m *pasteMarks) mark(p []byte, n int, now time.Time, more func() bool) int {
	read := p[:n]
	if !m.inside {
		if m.marked(read) || !m.pasted(read, now) {
			return n
		}
		m.inside = true
		copy(p[len(pasteBegins):], read)
		n = copy(p, pasteBegins) + n
	}
	if m.inside = more(); !m.inside {
		n += copy(p[n:], pasteEnds)
		m.count = 0
	}
	return n
}

// marked tells whether the terminal marks what was read itself, and notes where that ends.
func (m *pasteMarks) marked(read []byte) bool {
	seen := append(m.tail, read...)
	was := m.theirs
	begins, ends := bytes.LastIndex(seen, pasteBegins), bytes.LastIndex(seen, pasteEnds)
	if begins >= 0 || ends >= 0 {
		m.theirs = begins > ends
	}
	m.tail = bytes.Clone(seen[max(0, len(seen)-len(pasteBegins)+1):])
	return was || m.theirs || begins >= 0
}

// pasted tells whether what was read, with what came at once before it, is more than a hand
// types. Keys that are no characters (arrows, escape, ctrl+c) are no paste's.
func (m *pasteMarks) pasted(read []byte, now time.Time) bool {
	if now.Sub(m.last) >= together || m.count == 0 {
		m.count, m.kinds = 0, map[rune]bool{}
	}
	m.last = now
	for _, r := range string(read) {
		if r < ' ' && r != '\r' && r != '\n' && r != '\t' || r == '\x7f' {
			m.count = 0
			return false
		}
		m.count++
		m.kinds[r] = true
	}
	return m.count >= atOnce && len(m.kinds) >= manyKinds
}
