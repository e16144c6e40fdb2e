package disk

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"chargehand/model/words"
)

// What a file is called while it is made, and when it had to give way.
const (
	UnfinishedExt = ".new"
	AsideExt      = ".aside-"
)

// Watched is an open file with the path that led to it. A file that was removed,
// renamed or replaced takes writes and flushes as before, but whoever follows
// the path afterwards does not find them. So the path is followed with every
// flush, before anything is called kept; it costs a microsecond or two. What goes
// a moment later is noticed at the next, and loses nothing either: the lines of
// streams in use are written again.
type Watched struct {
	path string
	was  os.FileInfo // nil where the system gives files no lasting identity
}

// Watch remembers which open file a path leads to.
func Watch(f *os.File, path string) Watched {
	was, err := f.Stat()
	now, nerr := os.Stat(path)
	if err != nil || nerr != nil || !os.SameFile(was, now) {
		return Watched{path: path}
	}
	return Watched{path: path, was: was}
}

// There is an ErrGone unless the path still leads to the file.
func (w Watched) There() error {
	_, err := w.look()
	return err
}

// ThereWith is There for a file that must also be of a certain length: nobody
// else has cut it or written in it.
func (w Watched) ThereWith(size int64) error {
	now, err := w.look()
	if err == nil && w.was != nil && now != size {
		return Gone(w.path, words.GoneLength(now, size))
	}
	return err
}

// look follows the path and gives how long the file is.
func (w Watched) look() (size int64, err error) {
	if w.was == nil {
		return 0, nil
	}
	same, size, err := follow(w.path, w.was)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return 0, Gone(w.path, words.GoneRemoved)
	case err != nil:
		return 0, Gone(w.path, err.Error())
	case !same:
		return 0, Gone(w.path, words.GoneReplaced)
	}
	return size, nil
}

// followByTimes is follow by what every system has.
func followByTimes(path string, was os.FileInfo) (same bool, size int64, err error) {
	now, err := os.Stat(path)
	if err != nil {
		return false, 0, err
	}
	return os.SameFile(was, now), now.Size(), nil
}

// IsThere tells whether something is at a path. Where the system cannot say, that
// is an error, and not a no.
func IsThere(path string) (bool, error) {
	_, err := os.Stat(path)
	if errors.Is(err, os.ErrNotExist) {
		return false, nil
	}
	return err == nil, err
}

// MakeFolder makes a folder, and those it stands in, and makes sure that their
// names are on the disk.
func MakeFolder(path string) error {
	if yes, err := IsThere(path); yes || err != nil {
		return err
	}
	in := filepath.Dir(path)
	if err := MakeFolder(in); err != nil {
		return err
	}
	if err := os.Mkdir(path, 0o700); err != nil && !errors.Is(err, os.ErrExist) {
		return err
	}
	if err := FlushFolder(in); !errors.Is(err, os.ErrPermission) { // one that may not be listed cannot be flushed
		return err
	}
	return nil
}

// Exists is IsThere where a doubtful answer does no harm.
func Exists(path string) bool {
	yes, _ := IsThere(path)
	return yes
}

// FreeName is the first name for setting a file aside that is not taken.
func FreeName(name string) (string, error) {
	for i := 1; ; i++ {
		aside := fmt.Sprintf("%s%s%d", name, AsideExt, i)
		if taken, err := IsThere(aside); !taken {
			return aside, err
		}
	}
}

// SetAside gives a file the first free name for what gave way in the place of
// another.
func SetAside(file, of string) (aside string, err error) {
	if aside, err = FreeName(of); err == nil {
		err = os.Rename(file, aside)
	}
	return aside, err
}
