package twin

import (
	"errors"
	"os"
	"path/filepath"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// File is what a twin asks of the file under it.
type File interface {
	Write([]byte) (int, error)
	Truncate(size int64) error
	Flush() error
	There(size int64) error // a disk.ErrGone when its path leads to it no longer, or it has another length
	Close() error
}

// osFile is a file of the operating system.
type osFile struct {
	*os.File
	Place disk.Watched
}

func (f osFile) Flush() error           { return disk.Flush(f.File) }
func (f osFile) There(size int64) error { return f.Place.ThereWith(size) }

// OpenFile opens a twin for appending and makes sure that its name is on
// the disk when it is new.
func OpenFile(path string) (File, error) {
	err := disk.Regular(path)
	isNew := errors.Is(err, os.ErrNotExist)
	if err != nil && !isNew {
		return nil, err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600)
	if errors.Is(err, os.ErrPermission) || disk.IsReadOnlySystem(err) {
		return nil, disk.AccessError(path, err)
	}
	if err != nil {
		return nil, err
	}
	if isNew {
		if err := disk.FlushFolder(filepath.Dir(path)); err != nil {
			f.Close()
			_ = os.Remove(path) // so that the next try flushes its name again
			return nil, err
		}
	}
	return osFile{f, disk.Watch(f, path)}, nil
}

// Twin appends to the plain text of one stream.
type Twin struct {
	Folder, Stream string
	Seq            uint64 // the last flushed line
	Lost           error  // why it is not written any more: it has to be made anew

	open   func(path string) (File, error)
	f      File  // nil until needed
	size   int64 // its length up to the last flushed line
	ragged bool  // bytes beyond size may stand in the file

	unflushed bool // it is lost because the disk did not take what was written
}

// File is where it stands.
func (t *Twin) File() string { return TextFile(t.Folder, t.Stream) }

// Append writes and flushes lines that follow on the last. When it fails,
// nothing of them counts as written. A twin that could not be flushed, may not be
// written or is not found any more at its path is lost: it is not written again.
func (t *Twin) Append(lines [][]byte) error {
	if len(lines) == 0 || t.Lost != nil {
		return t.Lost
	}
	err, unflushed := t.try(lines)
	if t.unflushed = unflushed; unflushed {
		err = &disk.FileError{Path: t.File(), What: words.TwinUnflushed, Do: words.NotFlushedDo, Cause: err}
	}
	if unflushed || errors.Is(err, disk.ErrGone) || errors.Is(err, disk.ErrReadOnlyFile) {
		t.Close()
		t.Lost = err
	}
	return err
}

func (t *Twin) try(lines [][]byte) (err error, flushFailed bool) {
	if t.f == nil {
		name := t.File()
		f, err := t.open(name)
		switch {
		case errors.Is(err, os.ErrNotExist): // it would be made: the folder is gone
			return disk.Gone(name, words.GoneFolder), false
		case errors.Is(err, disk.ErrNoFile):
			return disk.Gone(name, words.GoneReplaced), false
		}
		if err != nil {
			return err, false
		}
		t.f = f
		if !t.ragged {
			if err := t.f.There(t.size); err != nil {
				return err, false
			}
		}
	}
	if t.ragged {
		if err := t.f.Truncate(t.size); err != nil {
			return err, false
		}
		t.ragged = false
	}
	text := Joined(lines)
	if _, err := t.f.Write(text); err != nil {
		t.ragged = t.f.Truncate(t.size) != nil
		return err, false
	}
	if err := t.f.Flush(); err != nil {
		return err, true
	}
	if err := t.f.There(t.size + int64(len(text))); err != nil {
		return err, false
	}
	t.size += int64(len(text))
	t.Seq = LastSeq(lines)
	return nil, false
}

// Remake writes the twin anew from its lines. What stands in its place is set
// aside, but for what could not be flushed: it is the same, and may come each second.
func (t *Twin) Remake(lines [][]byte) error {
	t.Close()
	if err := Write(t.Folder, t.Stream, lines, !t.unflushed); err != nil {
		return err
	}
	t.size, t.Seq = ByteCount(lines), LastSeq(lines)
	t.ragged, t.Lost = false, nil
	return nil
}

// Close lets go of the file. The next append opens it again.
func (t *Twin) Close() {
	if t.f != nil {
		_ = t.f.Close() // all that counts is flushed
		t.f = nil
	}
}
