package persist

import (
	"errors"
	"fmt"
	"os"
)

// twinText is what the segments of a stream's twin say together.
type twinText struct {
	lines    [][]byte
	at       []place // where each line stands
	segments int
	size     int64  // whole lines of the last segment, in bytes
	torn     int64  // bytes of a half-written line after them
	fault    string // why reading stopped early, at faultAt
	faultAt  place
}

type place struct {
	file string
	line int
}

// readTwin reads a stream's twin. A stream without one has no lines. Of
// segments that overlap the later holds: it was begun because the earlier could
// not be flushed.
func readTwin(folder, stream string) (twinText, error) {
	var t twinText
	for {
		name := segmentFile(folder, stream, t.segments+1)
		f, err := os.Open(name)
		if errors.Is(err, os.ErrNotExist) {
			return t, nil
		}
		if err != nil {
			return t, err
		}
		lines, torn, err := readLines(f)
		f.Close()
		t.segments++
		if errors.Is(err, errLong) {
			t.fault, t.faultAt = err.Error(), place{name, len(lines) + 1}
		} else if err != nil {
			return t, err
		}
		t.join(name, lines)
		t.size, t.torn = byteCount(lines), torn
	}
}

// join lays the lines of the next segment over those before it.
func (t *twinText) join(name string, lines [][]byte) {
	keep := len(t.lines)
	if t.segments > 1 && len(lines) > 0 {
		first, ok := linkOf(lines[0])
		if !ok || first.Seq > uint64(keep+1) {
			t.fault, t.faultAt = fmt.Sprintf("the segment does not follow on entry %d", keep), place{name, 1}
			return
		}
		keep = int(first.Seq - 1)
	}
	t.lines, t.at = append(t.lines[:keep:keep], lines...), t.at[:keep:keep]
	for i := range lines {
		t.at = append(t.at, place{name, i + 1})
	}
}

// writeTwin makes a stream's twin anew from its lines: under another name first,
// so that a twin is whole or not there. What stood in its place is set aside.
func writeTwin(folder, stream string, lines [][]byte) error {
	name := segmentFile(folder, stream, 1)
	f, err := os.OpenFile(name+unfinishedExt, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	_, err = f.Write(joined(lines))
	if err == nil {
		err = flush(f)
	}
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		err = setTwinAside(folder, stream)
	}
	if err == nil {
		err = os.Rename(name+unfinishedExt, name)
	}
	if err != nil {
		_ = os.Remove(name + unfinishedExt)
		return err
	}
	return flushFolder(folder)
}

// setTwinAside gives all segments of a twin another name. The last goes first,
// so that what is left at any moment is the start of the twin.
func setTwinAside(folder, stream string) error {
	n := 0
	for {
		yes, err := there(segmentFile(folder, stream, n+1))
		if err != nil {
			return err
		}
		if !yes {
			break
		}
		n++
	}
	for ; n > 0; n-- {
		name := segmentFile(folder, stream, n)
		aside, err := freeName(name)
		if err == nil {
			err = os.Rename(name, aside)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
