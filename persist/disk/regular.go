package disk

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"chargehand/model/words"
)

// ErrNoFile: what stands at a path is a folder, a device, a pipe or a socket.
// Opening some of them would wait for ever, or do something.
var ErrNoFile = errors.New(words.NoRegularFile)

// Regular is nil for a regular file, ErrNoFile for anything else that is there,
// and the system's error else.
func Regular(path string) error {
	info, err := os.Stat(path)
	if err == nil && !info.Mode().IsRegular() {
		return fmt.Errorf("%s: %w", path, ErrNoFile)
	}
	return err
}

// Open opens a regular file to read.
func Open(path string) (*os.File, error) {
	if err := Regular(path); err != nil {
		return nil, err
	}
	return os.Open(path)
}

// Unfinished makes a new file, under a name that nobody can have laid a trap at,
// for what is to be called path once it is whole.
func Unfinished(path string) (*os.File, error) {
	dir, base := filepath.Split(path)
	return os.CreateTemp(dir, base+UnfinishedExt+"*")
}

// sweepAfter is how old an unfinished file is when whoever made it must be gone.
const sweepAfter = time.Hour

// Sweep removes the files of a folder that a killed program left unfinished.
func Sweep(folder, prefix string) {
	files, _ := os.ReadDir(folder) // what cannot be listed stays
	for _, f := range files {
		rest, ours := strings.CutPrefix(f.Name(), prefix)
		_, digits, unfinished := strings.Cut(rest, UnfinishedExt)
		if _, err := strconv.ParseUint(digits, 10, 64); !ours || !unfinished || err != nil {
			continue // most are: asking the system about each would hold up the opening
		}
		if info, err := f.Info(); err == nil && info.Mode().IsRegular() && time.Since(info.ModTime()) > sweepAfter {
			_ = os.Remove(filepath.Join(folder, f.Name()))
		}
	}
}
