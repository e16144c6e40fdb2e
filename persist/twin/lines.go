package twin

import (
	"bufio"
	"bytes"
	"errors"
	"io"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// ErrLong is a line beyond what an entry may have.
var ErrLong = errors.New(words.LineLong(entry.MaxBytes))

// ReadLines gives copies of the whole lines of r, without their ends, and the
// bytes after the last line's end (a line only half written). It
// reads with a bound: ErrLong comes with the good lines before the long one.
func ReadLines(r io.Reader) (lines [][]byte, torn []byte, err error) {
	br := bufio.NewReaderSize(r, 64<<10)
	var part []byte
	for {
		chunk, err := br.ReadSlice('\n')
		if len(part)+len(chunk) > entry.MaxBytes+1 {
			return lines, nil, ErrLong
		}
		part = append(part, chunk...)
		switch {
		case err == nil:
			lines = append(lines, bytes.Clone(part[:len(part)-1]))
			part = part[:0]
		case errors.Is(err, io.EOF):
			return lines, bytes.Clone(part), nil
		case !errors.Is(err, bufio.ErrBufferFull):
			return lines, nil, err
		}
	}
}

// Joined is lines as they stand in a file.
func Joined(lines [][]byte) []byte {
	b := make([]byte, 0, ByteCount(lines))
	for _, l := range lines {
		b = append(append(b, l...), '\n')
	}
	return b
}

// ByteCount is how long lines are in a file, ends included.
func ByteCount(lines [][]byte) int64 {
	var n int64
	for _, l := range lines {
		n += int64(len(l)) + 1
	}
	return n
}
