package twin

import (
	"errors"
	"os"
	"path/filepath"
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

// TextFile is the name of a stream's twin.
func TextFile(folder, stream string) string { return filepath.Join(folder, stream+ext) }

// Sizes lists the twins of a folder and how long they are, in bytes. A folder that
// is not there has none, and an empty file is none: nothing was ever kept in it.
func Sizes(folder string) (map[string]int64, error) {
	files, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		return nil, err
	}
	sizes := make(map[string]int64, len(files))
	for _, f := range files {
		stream, ours := strings.CutSuffix(f.Name(), ext)
		if !ours || ValidStream(stream) != nil {
			continue
		}
		info, err := f.Info()
		if err == nil && info.Mode().IsRegular() && info.Size() > 0 { // else gone since the listing, or never a twin
			sizes[stream] = info.Size()
		}
	}
	return sizes, nil
}
