package twin

import (
	"cmp"
	"errors"
	"os"

	"chargehand/persist/disk"
)

// Text is what a stream's twin says.
type Text struct {
	Stream string
	File   string
	Lines  [][]byte
	Torn   []byte   // a half-written line after them
	Fault  string   // why reading stopped early
	Beyond [][]byte // what was found where it could not be followed any more
	Unread error    // why it could not be read
}

// Read reads a stream's twin. A stream without one has no lines.
func Read(folder, stream string) Text {
	t := Text{Stream: stream, File: TextFile(folder, stream)}
	f, err := disk.Open(t.File)
	if err == nil {
		defer f.Close()
		t.Lines, t.Torn, err = ReadLines(f)
	}
	switch {
	case errors.Is(err, os.ErrNotExist):
	case errors.Is(err, ErrLong):
		t.Fault = err.Error()
		found, err := Salvage(t.File)
		t.Beyond, t.Unread = found[stream], err
	case err != nil:
		t.Unread = err
	}
	return t
}

// Wrong is what is wrong with a twin by itself (a *LineError, or why it could not be
// read), or nil.
func (t Text) Wrong(stream string) error {
	n, why, _ := WholeChain(stream, t.Lines)
	if why = cmp.Or(why, t.Fault); why == "" {
		return t.Unread
	}
	return &LineError{File: t.File, Line: n + 1, Stream: stream, Seq: LastSeq(t.Lines[:n]) + 1, What: why}
}

// Write makes a stream's twin anew from its lines: under another name first,
// so that a twin is whole or not there. What stood in its place is set aside, or
// overwritten.
func Write(folder, stream string, lines [][]byte, aside bool) error {
	d, err := NewDraft(folder, stream, lines)
	if err != nil {
		return err
	}
	defer d.Drop()
	return d.Place(aside)
}

// Draft is a stream's twin under another name, whole and flushed.
type Draft struct{ folder, stream, file string }

// NewDraft writes one, in a folder made anew if need be.
func NewDraft(folder, stream string, lines [][]byte) (Draft, error) {
	if err := disk.MakeFolder(folder); err != nil {
		return Draft{}, err
	}
	f, err := disk.Unfinished(TextFile(folder, stream))
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

// Place gives it its name. What stood in its place is set aside, or overwritten.
func (d Draft) Place(aside bool) error {
	file := TextFile(d.folder, d.stream)
	there, err := disk.IsThere(file)
	if there && aside {
		_, err = disk.SetAside(file, file)
	}
	if err == nil {
		err = os.Rename(d.file, file)
	}
	if err != nil {
		return err
	}
	return disk.FlushFolder(d.folder)
}

// SetAside gives it the name of what gave way in the twin's place.
func (d Draft) SetAside() (aside string, err error) {
	return disk.SetAside(d.file, TextFile(d.folder, d.stream))
}

// TakeBack undoes Place.
func (d Draft) TakeBack() { _ = os.Rename(TextFile(d.folder, d.stream), d.file) }

// Drop removes it, unless it was placed.
func (d Draft) Drop() { _ = os.Remove(d.file) }
