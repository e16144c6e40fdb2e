package persist

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"chargehand/model/entry"
)

// hashOf is the link of the chain: the SHA-256 of a stored line, in hex.
func hashOf(line []byte) string {
	sum := sha256.Sum256(line)
	return hex.EncodeToString(sum[:])
}

// headOf is the hash of the last line, empty for no lines.
func headOf(lines [][]byte) string {
	if len(lines) == 0 {
		return ""
	}
	return hashOf(lines[len(lines)-1])
}

// link is what the chain needs of a line. It is read without the rest, so that
// lines of a newer version are linked like any other.
type link struct {
	Stream string `json:"stream"`
	Seq    uint64 `json:"seq"`
	Prev   string `json:"prev"`
}

func linkOf(line []byte) (l link, ok bool) {
	ok = json.Unmarshal(line, &l) == nil && l.Stream != "" && l.Seq > 0
	return l, ok
}

// wholeChain counts how many lines from the start are a gapless chain of the
// stream, and says what is wrong with the next one (nothing when all are).
func wholeChain(stream string, lines [][]byte) (int, string) {
	prev := ""
	for i, line := range lines {
		var l link
		if err := json.Unmarshal(line, &l); err != nil {
			return i, "the line is no JSON: " + err.Error()
		}
		switch {
		case l.Stream != stream:
			return i, fmt.Sprintf("the line belongs to %q, not to %q", l.Stream, stream)
		case l.Seq != uint64(i+1):
			return i, fmt.Sprintf("sequence %d stands where %d should", l.Seq, i+1)
		case l.Prev != prev:
			return i, fmt.Sprintf("the hash of the line before does not agree, so entry %d or %d was changed", i, i+1)
		}
		prev = hashOf(line)
	}
	return len(lines), ""
}

// decodeAll reads the entries of a stream from its lines.
func decodeAll(stream, file string, lines [][]byte) ([]entry.Entry, error) {
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

// identity is by what a smelt is recognised when it is imported again: the uid
// and the source hash of its light. Both are empty where there is no light.
func identity(lines [][]byte) (uid, source string) {
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
