package persist

import (
	"errors"
	"io"
	"os"
	"regexp"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// salvaged is what was found in a file that can be read only as bytes: lines by
// the stream that they name, and hashes that were counted as those of last lines.
type salvaged struct {
	lines map[string][][]byte
	heads map[string]uint64
}

var headMark = regexp.MustCompile(`"head":"([0-9a-f]{64})"`)

// window is how much of a file is searched at a time. Two windows overlap by the
// length of an entry, so that none is cut in both.
const window = 32 << 20

// Salvage searches a file of any kind for lines of any stream.
func Salvage(path string) (lines map[string][][]byte, err error) {
	s := newSalvaged()
	return s.lines, s.search(path)
}

func newSalvaged() *salvaged { return &salvaged{map[string][][]byte{}, map[string]uint64{}} }

func (s salvaged) search(path string) error {
	f, err := disk.Open(path)
	if err != nil {
		return disk.AccessError(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return disk.AccessError(path, err)
	}
	for at := int64(0); ; {
		at = nextData(f, at)
		b := make([]byte, max(1, min(window, info.Size()-at+1))) // with one byte more, to meet the end
		n, err := f.ReadAt(b, at)
		b = b[:n]
		twin.Scan(b, func(line []byte) {
			if l, ok := twin.LinkOf(line); ok && twin.ValidStream(l.Stream) == nil {
				s.lines[l.Stream] = append(s.lines[l.Stream], line)
			}
		})
		for _, m := range headMark.FindAllSubmatch(b, -1) {
			s.heads[string(m[1])] = 0
		}
		switch {
		case errors.Is(err, io.EOF):
			return nil
		case err != nil:
			return disk.AccessError(path, err)
		}
		at += window - entry.MaxBytes
	}
}

// nextData skips what was never written in a file that is mostly holes, where
// the system can tell.
func nextData(f *os.File, at int64) int64 {
	const seekData = 3 // SEEK_DATA of lseek(2)
	if data, err := f.Seek(at, seekData); err == nil && data > at {
		return data
	}
	return at
}
