package twin

import (
	"errors"
	"os"

	"chargehand/persist/disk"
)

// Text is what the segments of a stream's twin say together.
type Text struct {
	Lines    [][]byte
	At       []Place // where each line stands
	Segments int
	Size     int64  // whole lines of the last segment, in bytes
	Torn     []byte // a half-written line after them
	Fault    string // why reading stopped early, at FaultAt
	FaultAt  Place
	Unread   error // why a segment could not be read that no later one replaces
	Foreign  bool  // and it is no file: nothing was ever kept in it
}

// Place is a line of a file; 1 is the first.
type Place struct {
	File string
	Line int
}

// Read reads a stream's twin. A stream without one has no lines. Of
// segments that overlap the later holds: it was begun because the earlier could
// not be flushed, or not be read.
func Read(folder, stream string) Text {
	var t Text
	for {
		name := SegmentFile(folder, stream, t.Segments+1)
		lines, torn, err := readSegment(name)
		missing := errors.Is(err, os.ErrNotExist)
		if missing && !disk.Exists(SegmentFile(folder, stream, t.Segments+2)) {
			return t
		}
		t.Segments++
		if missing { // what stood there was no twin, and somebody took it away
			continue
		}
		t.Size, t.Torn = ByteCount(lines), torn
		switch {
		case errors.Is(err, ErrLong):
			t.Fault, t.FaultAt = err.Error(), Place{name, len(lines) + 1}
		case err != nil:
			t.Unread, t.Foreign = err, errors.Is(err, disk.ErrNoFile)
			if !t.Foreign && !disk.Exists(name) {
				return t // it cannot even be told what is there
			}
			continue
		}
		t.join(name, lines)
	}
}

func readSegment(name string) (lines [][]byte, torn []byte, err error) {
	f, err := disk.Open(name)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	return ReadLines(f)
}

// join lays the lines of the next segment over those before it.
func (t *Text) join(name string, lines [][]byte) {
	if len(lines) == 0 {
		return
	}
	keep := len(t.Lines)
	if first, ok := LinkOf(lines[0]); ok && t.Segments > 1 {
		keep = len(UpTo(t.Lines, first.Seq-1))
		if first.Seq == 1 {
			t.Unread, t.Fault = nil, ""
		}
	}
	t.Lines, t.At = append(t.Lines[:keep:keep], lines...), t.At[:keep:keep]
	for i := range lines {
		t.At = append(t.At, Place{name, i + 1})
	}
}

// Verified is what a twin says by itself, with a fault (a *LineError, or why it
// could not be read) where it is not whole.
func (t Text) Verified(stream string) (lines [][]byte, gaps []Gap, fault error) {
	n, why, gaps := WholeChain(stream, t.Lines)
	at := t.FaultAt
	switch {
	case why != "":
		at = t.At[n]
	case t.Fault != "":
		why = t.Fault
	case t.Unread != nil:
		return t.Lines, gaps, t.Unread
	case len(t.Lines) == 0:
		return nil, nil, &NoStreamError{Stream: stream}
	default:
		return t.Lines, gaps, nil
	}
	return t.Lines[:n], gaps, &LineError{File: at.File, Line: at.Line, Stream: stream, Seq: LastSeq(t.Lines[:n]) + 1, What: why}
}

// Write makes a stream's twin anew from its lines: under another name first,
// so that a twin is whole or not there. What stood in its place is set aside.
func Write(folder, stream string, lines [][]byte) error {
	d, err := NewDraft(folder, stream, lines)
	if err != nil {
		return err
	}
	defer d.Drop()
	return d.Place()
}

// Draft is a stream's twin under another name, whole and flushed.
type Draft struct{ folder, stream, file string }

// NewDraft writes one.
func NewDraft(folder, stream string, lines [][]byte) (Draft, error) {
	f, err := disk.Unfinished(SegmentFile(folder, stream, 1))
	if err != nil {
		return Draft{}, err
	}
	_, err = f.Write(Joined(lines))
	if err == nil {
		err = disk.Flush(f)
	}
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err != nil {
		_ = os.Remove(f.Name())
	}
	return Draft{folder, stream, f.Name()}, err
}

// Place gives it its name. What stood in its place is set aside.
func (d Draft) Place() error {
	err := setAside(d.folder, d.stream)
	if err == nil {
		err = os.Rename(d.file, SegmentFile(d.folder, d.stream, 1))
	}
	if err != nil {
		return err
	}
	return disk.FlushFolder(d.folder)
}

// TakeBack undoes Place.
func (d Draft) TakeBack() { _ = os.Rename(SegmentFile(d.folder, d.stream, 1), d.file) }

// Drop removes it, unless it was placed.
func (d Draft) Drop() { _ = os.Remove(d.file) }

// setAside gives all segments of a twin another name. The last goes first,
// so that what is left at any moment is the start of the twin.
func setAside(folder, stream string) error {
	n := 0
	for {
		yes, err := disk.IsThere(SegmentFile(folder, stream, n+1))
		if err != nil {
			return err
		}
		if !yes {
			break
		}
		n++
	}
	for ; n > 0; n-- {
		name := SegmentFile(folder, stream, n)
		if _, err := disk.SetAside(name, name); err != nil {
			return err
		}
	}
	return nil
}
