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
	Close() error
}

// osFile is a file of the operating system.
type osFile struct{ *os.File }

func (f osFile) Flush() error { return flush(f.File) }

// openTwinFile opens a segment for appending and makes sure that its name is on
// the disk when it is new.
func openTwinFile(path string) (file, error) {
	_, err := os.Stat(path)
	isNew := errors.Is(err, os.ErrNotExist)
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600)
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
	return osFile{f}, nil
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
}

// append writes and flushes lines that follow on the last. When it fails,
// nothing of them counts as written. A segment whose flush has failed is never
// written again: the next one takes over at once.
func (t *twin) append(lines [][]byte) error {
	if len(lines) == 0 {
		return nil
	}
	err, flushFailed := t.try(lines)
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
		if t.f, err = t.open(segmentFile(t.folder, t.stream, t.segment)); err != nil {
			return err, false
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
	t.size = 0
}

// close lets go of the file. The next append opens it again.
func (t *twin) close() {
	if t.f != nil {
		_ = t.f.Close() // all that counts is flushed
		t.f = nil
	}
}
