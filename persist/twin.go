package persist

import (
	"errors"
	"os"
	"path/filepath"
)

// file is what a twin asks of the file under it.
type file interface {
	Write([]byte) (int, error)
	Truncate(size int64) error
	Flush() error
	There(size int64) error // a *GoneError when its path leads to it no longer, or it has another length
	Close() error
}

// osFile is a file of the operating system.
type osFile struct {
	*os.File
	place watched
}

func (f osFile) Flush() error           { return flush(f.File) }
func (f osFile) There(size int64) error { return f.place.thereWith(size) }

// openTwinFile opens a segment for appending and makes sure that its name is on
// the disk when it is new.
func openTwinFile(path string) (file, error) {
	_, err := os.Stat(path)
	isNew := errors.Is(err, os.ErrNotExist)
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600)
	if errors.Is(err, os.ErrPermission) || isReadOnlySystem(err) {
		return nil, accessError(path, err)
	}
	if err != nil {
		return nil, err
	}
	if isNew {
		if err := flushFolder(filepath.Dir(path)); err != nil {
			f.Close()
			_ = os.Remove(path) // so that the next try flushes its name again
			return nil, err
		}
	}
	return osFile{f, watch(f)}, nil
}

// twin appends to the plain text of one stream.
type twin struct {
	folder, stream string
	open           func(path string) (file, error)

	f       file   // nil until needed
	segment int    // the one appended to
	size    int64  // its length up to the last flushed line
	seq     uint64 // the last flushed line
	ragged  bool   // bytes beyond size may stand in the file
	lost    bool   // the path leads no longer to what was written
	moved   string // why it goes on in a new segment, until that was told
}

// append writes and flushes lines that follow on the last. When it fails,
// nothing of them counts as written. A segment whose flush has failed is never
// written again: the next one takes over at once. A twin that is not found any
// more at its path is lost, and has to be made anew from the book.
func (t *twin) append(lines [][]byte) error {
	if len(lines) == 0 {
		return nil
	}
	err, flushFailed := t.try(lines)
	if gone := new(GoneError); errors.As(err, &gone) {
		t.close()
		t.lost = true
		return err
	}
	if errors.Is(err, ErrReadOnlyFile) && t.nextSegment() {
		err, flushFailed = t.try(lines)
	}
	if flushFailed {
		t.leaveSegment()
		err, flushFailed = t.try(lines)
		if flushFailed {
			t.leaveSegment()
		}
	}
	return err
}

func (t *twin) try(lines [][]byte) (err error, flushFailed bool) {
	if t.f == nil {
		name := segmentFile(t.folder, t.stream, t.segment)
		if t.f, err = t.open(name); errors.Is(err, os.ErrNotExist) { // it would be made: the folder is gone
			return &GoneError{Path: name, Why: "its folder is gone"}, false
		} else if err != nil {
			return err, false
		}
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
	text := joined(lines)
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
	t.seq += uint64(len(lines))
	return nil, false
}

// leaveSegment gives a segment up after a failed flush. What it holds beyond
// its last flushed line is overruled by the next segment, so cutting it back is
// only tidy.
func (t *twin) leaveSegment() {
	_ = t.f.Truncate(t.size)
	t.close()
	t.ragged = false
	if t.size == 0 {
		_ = os.Remove(segmentFile(t.folder, t.stream, t.segment)) // it never held a kept line
		return
	}
	t.segment++
	t.size, t.moved = 0, "could not be flushed to the disk"
}

// nextSegment goes on in a new segment where the present one may not be written,
// if a new one may be made.
func (t *twin) nextSegment() bool {
	if t.size == 0 {
		return false
	}
	f, err := t.open(segmentFile(t.folder, t.stream, t.segment+1))
	if err != nil {
		return false
	}
	t.segment++
	t.f, t.size, t.ragged, t.moved = f, 0, false, "cannot be written"
	return true
}

// remake writes the twin anew from its lines, in one segment.
func (t *twin) remake(lines [][]byte) error {
	t.close()
	if err := writeTwin(t.folder, t.stream, lines); err != nil {
		return err
	}
	t.segment, t.size, t.seq = 1, byteCount(lines), uint64(len(lines))
	t.ragged, t.lost = false, false
	return nil
}

// close lets go of the file. The next append opens it again.
func (t *twin) close() {
	if t.f != nil {
		_ = t.f.Close() // all that counts is flushed
		t.f = nil
	}
}
