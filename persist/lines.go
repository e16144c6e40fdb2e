package persist

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"

	"chargehand/model/entry"
)

// errLong is a line beyond what an entry may have.
var errLong = fmt.Errorf("the line is longer than the %d bytes of an entry", entry.MaxBytes)

// readLines gives copies of the whole lines of r, without their ends, and the
// number of bytes after the last line's end (a line only half written). It
// reads with a bound: errLong comes with the good lines before the long one.
func readLines(r io.Reader) (lines [][]byte, torn int64, err error) {
	br := bufio.NewReaderSize(r, 64<<10)
	var part []byte
	for {
		chunk, err := br.ReadSlice('\n')
		if len(part)+len(chunk) > entry.MaxBytes+1 {
			return lines, 0, errLong
		}
		part = append(part, chunk...)
		switch {
		case err == nil:
			lines = append(lines, bytes.Clone(part[:len(part)-1]))
			part = part[:0]
		case errors.Is(err, io.EOF):
			return lines, int64(len(part)), nil
		case !errors.Is(err, bufio.ErrBufferFull):
			return lines, 0, err
		}
	}
}

// joined is lines as they stand in a file.
func joined(lines [][]byte) []byte {
	b := make([]byte, 0, byteCount(lines))
	for _, l := range lines {
		b = append(append(b, l...), '\n')
	}
	return b
}

// byteCount is how long lines are in a file, ends included.
func byteCount(lines [][]byte) int64 {
	var n int64
	for _, l := range lines {
		n += int64(len(l)) + 1
	}
	return n
}
