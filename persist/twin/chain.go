package twin

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// HashOf is the link of the chain: the SHA-256 of a stored line, in hex.
func HashOf(line []byte) string {
	sum := sha256.Sum256(line)
	return hex.EncodeToString(sum[:])
}

// HeadOf is the hash of the last line, empty for no lines.
func HeadOf(lines [][]byte) string {
	if len(lines) == 0 {
		return ""
	}
	return HashOf(lines[len(lines)-1])
}

// Link is what the chain needs of a line. It is read without the rest, so that
// lines of a newer version are linked like any other.
type Link struct {
	Stream string `json:"stream"`
	Seq    uint64 `json:"seq"`
	Prev   string `json:"prev"`
}

// LinkOf reads the link of a line; false for what is no line of a stream.
func LinkOf(line []byte) (l Link, ok bool) {
	ok = json.Unmarshal(line, &l) == nil && l.Stream != "" && l.Seq > 0
	return l, ok
}

// WholeChain counts how many lines from the start are a gapless chain of the
// stream, and says what is wrong with the next one (nothing when all are).
func WholeChain(stream string, lines [][]byte) (int, string) {
	prev := ""
	for i, line := range lines {
		var l Link
		if err := json.Unmarshal(line, &l); err != nil {
			return i, words.LineNoJSON(err)
		}
		switch {
		case l.Stream != stream:
			return i, words.LineOfAnother(l.Stream, stream)
		case l.Seq != uint64(i+1):
			return i, words.LineOutOfOrder(l.Seq, uint64(i+1))
		case l.Prev != prev:
			return i, words.LineChanged(i)
		}
		prev = HashOf(line)
	}
	return len(lines), ""
}

// DecodeAll reads the entries of a stream from its lines.
func DecodeAll(stream, file string, lines [][]byte) ([]entry.Entry, error) {
	entries := make([]entry.Entry, len(lines))
	for i, line := range lines {
		e, err := entry.Decode(line)
		if err != nil {
			return entries[:i], &LineError{File: file, Line: i + 1, Stream: stream, Seq: uint64(i + 1), What: err.Error(), Cause: err}
		}
		entries[i] = e
	}
	return entries, nil
}

// Identity is by what a smelt is recognised when it is imported again: the uid
// and the source hash of its light. Both are empty where there is no light.
func Identity(lines [][]byte) (uid, source string) {
	mark := []byte(`"kind":"light"`)
	for _, line := range lines {
		if !bytes.Contains(line, mark) {
			continue
		}
		if e, err := entry.Decode(line); err == nil {
			if l, ok := e.Event.(entry.Light); ok {
				return l.UID, l.SourceHash
			}
		}
	}
	return "", ""
}

// SamePrefix is how many lines agree from the start.
func SamePrefix(a, b [][]byte) int {
	n := min(len(a), len(b))
	for i := range n {
		if !bytes.Equal(a[i], b[i]) {
			return i
		}
	}
	return n
}
