package disk

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

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
