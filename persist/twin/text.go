package twin

import (
	"errors"
	"os"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// Text is what the segments of a stream's twin say together.
type Text struct {
	Lines    [][]byte
	At       []Place // where each line stands
	Segments int
	Size     int64  // whole lines of the last segment, in bytes
	Torn     int64  // bytes of a half-written line after them
	Fault    string // why reading stopped early, at FaultAt
	FaultAt  Place
}

// Place is a line of a file; 1 is the first.
type Place struct {
	File string
	Line int
}

// Read reads a stream's twin. A stream without one has no lines. Of
// segments that overlap the later holds: it was begun because the earlier could
// not be flushed.
func Read(folder, stream string) (Text, error) {
	var t Text
	for {
		name := SegmentFile(folder, stream, t.Segments+1)
		f, err := os.Open(name)
		if errors.Is(err, os.ErrNotExist) {
			return t, nil
		}
		if err != nil {
			return t, err
		}
		lines, torn, err := ReadLines(f)
		f.Close()
		t.Segments++
		if errors.Is(err, ErrLong) {
			t.Fault, t.FaultAt = err.Error(), Place{name, len(lines) + 1}
		} else if err != nil {
			return t, err
		}
		t.join(name, lines)
		t.Size, t.Torn = ByteCount(lines), torn
	}
}

// join lays the lines of the next segment over those before it.
func (t *Text) join(name string, lines [][]byte) {
	keep := len(t.Lines)
	if t.Segments > 1 && len(lines) > 0 {
		first, ok := LinkOf(lines[0])
		if !ok || first.Seq > uint64(keep+1) {
			t.Fault, t.FaultAt = words.SegmentAstray(keep), Place{name, 1}
			return
		}
		keep = int(first.Seq - 1)
	}
	t.Lines, t.At = append(t.Lines[:keep:keep], lines...), t.At[:keep:keep]
	for i := range lines {
		t.At = append(t.At, Place{name, i + 1})
	}
}

// Lines reads a stream from its twin alone and checks the chain, since
// nothing else vouches for it.
func Lines(folder, stream string) ([][]byte, error) {
	text, err := Read(folder, stream)
	if err != nil {
		return nil, err
	}
	if len(text.Lines) == 0 && text.Fault == "" {
		return nil, &NoStreamError{Stream: stream}
	}
	n, why := WholeChain(stream, text.Lines)
	at := text.FaultAt
	if why != "" {
		at = text.At[n]
	} else {
		why = text.Fault
	}
	if why != "" {
		return text.Lines[:n], &LineError{File: at.File, Line: at.Line, Stream: stream, Seq: uint64(n + 1), What: why}
	}
	return text.Lines, nil
}

// Write makes a stream's twin anew from its lines: under another name first,
// so that a twin is whole or not there. What stood in its place is set aside.
func Write(folder, stream string, lines [][]byte) error {
	name := SegmentFile(folder, stream, 1)
	f, err := os.OpenFile(name+disk.UnfinishedExt, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	_, err = f.Write(Joined(lines))
	if err == nil {
		err = disk.Flush(f)
	}
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		err = setAside(folder, stream)
	}
	if err == nil {
		err = os.Rename(name+disk.UnfinishedExt, name)
	}
	if err != nil {
		_ = os.Remove(name + disk.UnfinishedExt)
		return err
	}
	return disk.FlushFolder(folder)
}

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
		aside, err := disk.FreeName(name)
		if err == nil {
			err = os.Rename(name, aside)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
