package logcsv

import (
	"bufio"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"hash"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Bounds of a file, in bytes but for MaxRows. A day's log is some kilobytes; a file beyond
// these is no log, and reading it must not eat the memory of the machine that
// keeps a smelt. MaxRemarks keeps the entry of the light, which carries the
// remarks, within what the journal takes.
const (
	MaxLine    = 64 << 10
	MaxCell    = 16 << 10 // also of one remark
	MaxRemarks = 128 << 10
	MaxFile    = 4 << 20 // a reading each second of a long day is 1.5 MB
	MaxRows    = 100_000 // a reading each second of a long day is 60,000
)

// lines reads a file line by line within bounds and sums up its bytes.
type lines struct {
	r    *bufio.Reader
	sum  hash.Hash
	size int
	n    int // number of the line last read, from 1
}

func newLines(r io.Reader) *lines {
	return &lines{r: bufio.NewReaderSize(r, MaxLine), sum: sha256.New()}
}

// next gives the next line without its end, and false after the last.
func (l *lines) next() (string, bool, *complaint) {
	b, err := l.r.ReadSlice('\n')
	if len(b) == 0 && err == io.EOF {
		return "", false, nil
	}
	l.n++
	l.size += len(b)
	l.sum.Write(b)
	switch {
	case errors.Is(err, bufio.ErrBufferFull):
		return "", false, lineTooLong()
	case err != nil && err != io.EOF:
		return "", false, unreadable(err)
	case l.size > MaxFile:
		return "", false, fileTooLong()
	}
	s := strings.TrimSuffix(strings.TrimSuffix(string(b), "\n"), "\r")
	if l.n == 1 {
		s = strings.TrimPrefix(s, "\ufeff") // the mark some editors put before UTF-8
	}
	return s, true, nil
}

// hash gives the SHA-256 of all bytes read so far, in hexadecimal.
func (l *lines) hash() string { return hex.EncodeToString(l.sum.Sum(nil)) }

// checkText finds what no cell and no remark may hold.
func checkText(s string) *complaint {
	if len(s) > MaxCell {
		return cellTooLong()
	}
	if !utf8.ValidString(s) {
		return notText(s)
	}
	for _, r := range s {
		if isForeign(r) {
			return controlCharacter(r)
		}
	}
	return nil
}

// isForeign tells whether a character has no business in words.
func isForeign(r rune) bool { return unicode.IsControl(r) && r != '\t' }

// plainText makes text that checkText passes and that is one line.
func plainText(s string) string {
	s = strings.Map(func(r rune) rune {
		if isForeign(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
	if len(s) > MaxCell {
		s = strings.ToValidUTF8(s[:MaxCell], "")
	}
	return strings.TrimSpace(s)
}
