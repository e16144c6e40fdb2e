package twin

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"chargehand/model/words"
)

// Names on the disk, beside the book.
const (
	suffix     = ".twins"
	ext        = ".jsonl"
	summaryExt = ".summary.json"
)

// maxStreamName bounds the name of a stream, which is also the name of a file.
const maxStreamName = 100

// ValidStream tells why a name cannot be that of a stream, or nil. A stream's
// name is a file's name on any system: lower-case letters, digits and hyphens,
// a letter or digit first.
func ValidStream(name string) error {
	if name == "" || len(name) > maxStreamName {
		return errors.New(words.BadNameLength(maxStreamName, len(name)))
	}
	for i, c := range []byte(name) {
		plain := c >= 'a' && c <= 'z' || c >= '0' && c <= '9'
		if !plain && (c != '-' || i == 0) {
			return errors.New(words.BadName(name))
		}
	}
	return nil
}

// SummaryFile is where a copy of a stream's record is laid beside its twin.
func SummaryFile(folder, stream string) string { return filepath.Join(folder, stream+summaryExt) }

// SegmentFile is the name of one segment of a stream's twin. The first is
// STREAM.jsonl; the second, begun when a flush of the first failed,
// STREAM.2.jsonl.
func SegmentFile(folder, stream string, segment int) string {
	if segment > 1 {
		stream += "." + strconv.Itoa(segment)
	}
	return filepath.Join(folder, stream+ext)
}

// segmentOf undoes SegmentFile for a bare file name.
func segmentOf(file string) (stream string, segment int, ok bool) {
	base, ok := strings.CutSuffix(file, ext)
	if !ok {
		return "", 0, false
	}
	stream, number, more := strings.Cut(base, ".")
	segment = 1
	if more {
		n, err := strconv.Atoi(number)
		if err != nil || n < 2 {
			return "", 0, false
		}
		segment = n
	}
	return stream, segment, ValidStream(stream) == nil
}

// Size is what a listing of the folder tells of a stream's twin.
type Size struct {
	Bytes    int64
	Segments int
}

// Sizes lists the twins of a folder. A folder that is not there has none,
// and an empty file is none: nothing was ever kept in it.
func Sizes(folder string) (map[string]Size, error) {
	files, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		return nil, err
	}
	sizes := make(map[string]Size, len(files))
	for _, f := range files {
		stream, _, ok := segmentOf(f.Name())
		if !ok {
			continue
		}
		info, err := f.Info()
		if err != nil || info.Size() == 0 || !info.Mode().IsRegular() { // gone since the listing, or never a twin
			continue
		}
		s := sizes[stream]
		sizes[stream] = Size{Bytes: s.Bytes + info.Size(), Segments: s.Segments + 1}
	}
	return sizes, nil
}

// Any tells whether a folder holds twins.
func Any(folder string) bool {
	sizes, _ := Sizes(folder)
	return len(sizes) > 0
}
