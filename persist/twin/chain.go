package twin

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"hash/crc32"
	"strconv"
	"strings"

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

// sumMark is where the sum of an object stands in it: at its end.
const sumMark = `,"sum":"`

// Sealed is a JSON object with a sum over all that stands before it, so that it can be
// told from a changed one by itself, also where nothing comes after it.
func Sealed(object []byte) []byte {
	object = object[:len(object)-1]
	return fmt.Appendf(object, "%s%08x\"}", sumMark, crc32.ChecksumIEEE(object))
}

// Intact tells whether the sum of an object is right. Those of before have none: then
// it is not sealed, and nothing is known.
func Intact(object []byte) (intact, sealed bool) {
	at := bytes.LastIndex(object, []byte(sumMark))
	if at < 0 {
		return true, false
	}
	return string(object[at+len(sumMark):]) == fmt.Sprintf("%08x\"}", crc32.ChecksumIEEE(object[:at])), true
}

// Link is what the chain needs of a line. It is read without the rest, so that
// lines of a newer version are linked like any other.
type Link struct {
	Stream string `json:"stream"`
	Seq    uint64 `json:"seq"`
	Prev   string `json:"prev"`
}

// LinkOf reads the link of a line; false for what is no line of a stream, or was
// changed.
func LinkOf(line []byte) (l Link, ok bool) {
	l, why := linkOf(line)
	return l, why == "" && l.Stream != "" && l.Seq > 0
}

func linkOf(line []byte) (l Link, why string) {
	if err := json.Unmarshal(line, &l); err != nil {
		return l, words.LineNoJSON(err)
	}
	if intact, _ := Intact(line); !intact {
		return l, words.LineSum
	}
	return l, ""
}

// Gap is a place where entries of a stream are lost.
type Gap = entry.Gap

// LastSeq is the sequence of the last line, 0 for no lines.
func LastSeq(lines [][]byte) uint64 {
	if len(lines) == 0 {
		return 0
	}
	l, _ := LinkOf(lines[len(lines)-1])
	return l.Seq
}

// UpTo is the lines up to a sequence.
func UpTo(lines [][]byte, seq uint64) [][]byte {
	n := len(lines)
	for n > 0 && LastSeq(lines[:n]) > seq {
		n--
	}
	return lines[:n]
}

// Alone tells whether nothing vouches for the last line, as it was made before there
// were sums: heads are hashes that were counted as those of last lines.
func Alone(lines [][]byte, heads map[string]uint64) bool {
	if len(lines) == 0 {
		return false
	}
	_, head := heads[HeadOf(lines)]
	_, sealed := Intact(lines[len(lines)-1])
	return !head && !sealed
}

// WholeChain counts how many lines from the start are a chain of the stream, and
// says what is wrong with the next one (nothing when all are). Entries that are
// lost break no chain: they are gaps, and given as such.
func WholeChain(stream string, lines [][]byte) (n int, why string, gaps []Gap) {
	prev, seq := "", uint64(0)
	for i, line := range lines {
		l, why := linkOf(line)
		switch {
		case why != "":
			return i, why, gaps
		case !OfStream(stream, l.Stream):
			return i, words.LineOfAnother(l.Stream, stream), gaps
		case l.Seq <= seq:
			return i, words.LineOutOfOrder(l.Seq, seq+1), gaps
		case l.Seq > 1 && seq == 0 && l.Prev == "": // only the first has none before it
			return i, words.LineOutOfOrder(l.Seq, 1), gaps
		case l.Seq > seq+1:
			gaps = append(gaps, Gap{After: seq, Before: l.Seq, Why: words.GapLost, Head: prev, Unsure: seq > 0})
		case l.Prev != prev:
			return i, words.LineChanged(int(seq)), gaps
		}
		prev, seq = HashOf(line), l.Seq
	}
	return len(lines), "", gaps
}

// OfStream tells whether a line that names a stream may stand in one: its own, or
// a second one of the same name, whose lines stay as they are.
func OfStream(stream, named string) bool {
	number, second := strings.CutPrefix(stream, named+"-")
	_, err := strconv.ParseUint(number, 10, 32)
	return stream == named || second && err == nil
}

// DecodeAll reads the entries of a stream from its lines. They are of the stream
// that the lines stand in.
func DecodeAll(stream, file string, lines [][]byte) ([]entry.Entry, error) {
	entries := make([]entry.Entry, len(lines))
	for i, line := range lines {
		e, err := entry.Decode(line)
		if err != nil {
			l, _ := LinkOf(line)
			return entries[:i], &LineError{File: file, Line: i + 1, Stream: stream, Seq: max(l.Seq, uint64(i+1)), What: err.Error(), Cause: err}
		}
		e.Stream = stream
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
