package twin

import (
	"errors"
	"io"
	"os"

	"chargehand/model/entry"
	"chargehand/persist/disk"
)

// window is how much of a file is searched at a time. Two windows overlap by the
// length of an entry, so that none is cut in both.
const window = 32 << 20

// Salvage searches a file of any kind, that can be read only as bytes, for lines of any
// stream, and gives them by the stream that they name.
func Salvage(path string) (map[string][][]byte, error) {
	f, err := disk.Open(path)
	if err != nil {
		return nil, disk.AccessError(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, disk.AccessError(path, err)
	}
	found := map[string][][]byte{}
	for at := int64(0); ; at += window - entry.MaxBytes {
		at = nextData(f, at)
		b := make([]byte, max(1, min(window, info.Size()-at+1))) // with one byte more, to meet the end
		n, err := f.ReadAt(b, at)
		Scan(b[:n], func(line []byte) {
			if l, ok := LinkOf(line); ok && ValidStream(l.Stream) == nil {
				found[l.Stream] = append(found[l.Stream], line)
			}
		})
		switch {
		case errors.Is(err, io.EOF):
			return found, nil
		case err != nil:
			return found, disk.AccessError(path, err)
		}
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
