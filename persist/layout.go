package persist

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// Names on the disk, beside the book.
const (
	defaultBook   = "book.db"
	twinsSuffix   = ".twins"
	twinExt       = ".jsonl"
	summaryExt    = ".summary.json"
	unfinishedExt = ".new"
	asideExt      = ".aside-"
	takeOverExt   = ".takeover-"
)

// maxStreamName bounds the name of a stream, which is also the name of a file.
const maxStreamName = 100

// BookFile is the bbolt file that a path of the user's means: the path itself,
// or book.db in it when it is a folder.
func BookFile(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return filepath.Join(path, defaultBook)
	}
	return path
}

// TwinFolder is the folder of the twins of the book that a path means. It
// stands beside the book.
func TwinFolder(path string) string {
	file := BookFile(path)
	return strings.TrimSuffix(file, filepath.Ext(file)) + twinsSuffix
}

// ValidStream tells why a name cannot be that of a stream, or nil. A stream's
// name is a file's name on any system: lower-case letters, digits and hyphens,
// a letter or digit first.
func ValidStream(name string) error {
	if name == "" || len(name) > maxStreamName {
		return fmt.Errorf("the name of a stream has 1 to %d letters, not %d", maxStreamName, len(name))
	}
	for i, c := range []byte(name) {
		plain := c >= 'a' && c <= 'z' || c >= '0' && c <= '9'
		if !plain && (c != '-' || i == 0) {
			return fmt.Errorf("the name of a stream has lower-case letters, digits and hyphens only, unlike %q", name)
		}
	}
	return nil
}

// segmentFile is the name of one segment of a stream's twin. The first is
// STREAM.jsonl; the second, begun when a flush of the first failed,
// STREAM.2.jsonl.
func segmentFile(folder, stream string, segment int) string {
	if segment > 1 {
		stream += "." + strconv.Itoa(segment)
	}
	return filepath.Join(folder, stream+twinExt)
}

// segmentOf undoes segmentFile for a bare file name.
func segmentOf(file string) (stream string, segment int, ok bool) {
	base, ok := strings.CutSuffix(file, twinExt)
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

// twinSize is what a listing of the folder tells of a stream's twin.
type twinSize struct {
	bytes    int64
	segments int
}

// twinSizes lists the twins of a folder. A folder that is not there has none,
// and an empty file is none: nothing was ever kept in it.
func twinSizes(folder string) (map[string]twinSize, error) {
	files, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		return nil, err
	}
	sizes := make(map[string]twinSize, len(files))
	for _, f := range files {
		stream, _, ok := segmentOf(f.Name())
		if !ok {
			continue
		}
		info, err := f.Info()
		if err != nil || info.Size() == 0 { // gone since the listing
			continue
		}
		s := sizes[stream]
		sizes[stream] = twinSize{bytes: s.bytes + info.Size(), segments: s.segments + 1}
	}
	return sizes, nil
}
