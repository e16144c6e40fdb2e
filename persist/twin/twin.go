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
	There(size int64) error // a *disk.GoneError when its path leads to it no longer, or it has another length
	Close() error
}

// osFile is a file of the operating system.
type osFile struct {
	*os.File
	Place disk.Watched
}

func (f osFile) Flush() error           { return disk.Flush(f.File) }
func (f osFile) There(size int64) error { return f.Place.ThereWith(size) }

// OpenFile opens a segment for appending and makes sure that its name is on
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
	return osFile{f, disk.Watch(f)}, nil
}

// Twin appends to the plain text of one stream.
type Twin struct {
	Folder, Stream string
	Seq            uint64 // the last flushed line
	Lost           bool   // the path leads no longer to what was written
	Moved          string // why it goes on in a new segment, until that was told

	open    func(path string) (File, error)
	f       File  // nil until needed
	segment int   // the one appended to
	size    int64 // its length up to the last flushed line
	ragged  bool  // bytes beyond size may stand in the file
}

// File is the segment that is appended to.
func (t *Twin) File() string { return SegmentFile(t.Folder, t.Stream, t.segment) }

// Append writes and flushes lines that follow on the last. When it fails,
// nothing of them counts as written. A segment whose flush has failed is never
// written again: the next one takes over at once. A twin that is not found any
// more at its path is lost, and has to be made anew from the book.
func (t *Twin) Append(lines [][]byte) error {
	if len(lines) == 0 {
		return nil
	}
	err, flushFailed := t.try(lines)
	if gone := new(disk.GoneError); errors.As(err, &gone) {
		t.Close()
		t.Lost = true
		return err
	}
	if errors.Is(err, disk.ErrReadOnlyFile) && t.nextSegment() {
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

func (t *Twin) try(lines [][]byte) (err error, flushFailed bool) {
	if t.f == nil {
		name := SegmentFile(t.Folder, t.Stream, t.segment)
		f, err := t.open(name)
		switch {
		case errors.Is(err, os.ErrNotExist): // it would be made: the folder is gone
			return &disk.GoneError{Path: name, Why: words.GoneFolder}, false
		case errors.Is(err, disk.ErrNoFile):
			return &disk.GoneError{Path: name, Why: words.GoneReplaced}, false
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

// leaveSegment gives a segment up after a failed flush. What it holds beyond
// its last flushed line is overruled by the next segment, so cutting it back is
// only tidy.
func (t *Twin) leaveSegment() {
	_ = t.f.Truncate(t.size)
	t.Close()
	t.ragged = false
	if t.size == 0 {
		_ = os.Remove(SegmentFile(t.Folder, t.Stream, t.segment)) // it never held a kept line
		return
	}
	t.segment++
	t.size, t.Moved = 0, words.TwinUnflushed
}

// nextSegment goes on in a new segment where the present one may not be written,
// if a new one may be made.
func (t *Twin) nextSegment() bool {
	if t.size == 0 {
		return false
	}
	f, err := t.open(SegmentFile(t.Folder, t.Stream, t.segment+1))
	if err != nil {
		return false
	}
	t.segment++
	t.f, t.size, t.ragged, t.Moved = f, 0, false, words.TwinReadOnly
	return true
}

// Remake writes the twin anew from its lines, in one segment.
func (t *Twin) Remake(lines [][]byte) error {
	t.Close()
	if err := Write(t.Folder, t.Stream, lines); err != nil {
		return err
	}
	t.segment, t.size, t.Seq = 1, ByteCount(lines), LastSeq(lines)
	t.ragged, t.Lost = false, false
	return nil
}

// Close lets go of the file. The next append opens it again.
func (t *Twin) Close() {
	if t.f != nil {
		_ = t.f.Close() // all that counts is flushed
		t.f = nil
	}
}
