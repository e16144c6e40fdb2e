package persist

import (
	"errors"
	"os"
	"time"

	"chargehand/model/entry"
)

// Reader reads a book without holding it: each call opens the book for a
// moment, or, when another program has it or it is damaged, reads the twins.
// The last line of a twin may be one that is not yet called kept.
type Reader struct {
	path    string
	opt     Options
	trouble error
}

// glance is how long a reader waits for the lock: it asks once.
const glance = time.Millisecond

// OpenReader makes a reader of the book that a path means. It fails when
// neither book nor twins are there.
func OpenReader(path string, opt Options) (*Reader, error) {
	r := &Reader{path: BookFile(path), opt: opt.filled()}
	if !exists(r.path) && !exists(TwinFolder(r.path)) {
		return nil, accessError(r.path, os.ErrNotExist)
	}
	return r, nil
}

// Path is the book's file.
func (r *Reader) Path() string { return r.path }

// Trouble is why the book itself could not be read at the last call, so that
// the twins were; nil when it could, or was only in use.
func (r *Reader) Trouble() error { return r.trouble }

// look runs fromBook on the book, or fromTwins where it cannot be had.
func (r *Reader) look(fromBook func(store) error, fromTwins func(folder string) error) error {
	r.trouble = nil
	if len(takeOvers(r.path)) > 0 {
		return fromTwins(TwinFolder(r.path)) // the book does not have what was kept since
	}
	v, err := openVault(r.path, true, glance, r.opt.openBook)
	if err == nil {
		_, err = readMetaBucket(r.path, v)
		if err == nil {
			safe := &safeVault{path: r.path, vault: v}
			err = fromBook(store{path: r.path, folder: TwinFolder(r.path), vault: safe})
		}
		v.Close()
		var unknown *NoStreamError
		if err == nil || errors.As(err, &unknown) {
			return err
		}
	}
	if !errors.Is(err, ErrHeld) {
		r.trouble = err
	}
	return fromTwins(TwinFolder(r.path))
}

// Streams lists the streams that hold entries, the house included, sorted.
func (r *Reader) Streams() (names []string, err error) {
	err = r.look(func(s store) error {
		names, err = s.streams()
		return err
	}, func(folder string) error {
		sizes, err := twinSizes(folder)
		names = sortedKeys(sizes)
		return err
	})
	return names, err
}

// Lines gives the stored lines of a stream.
func (r *Reader) Lines(stream string) ([][]byte, error) {
	lines, _, err := r.lines(stream)
	return lines, err
}

// Entries gives all entries of a stream in their order.
func (r *Reader) Entries(stream string) ([]entry.Entry, error) {
	lines, file, err := r.lines(stream)
	if err != nil {
		return nil, err
	}
	return decodeAll(stream, file, lines)
}

func (r *Reader) lines(stream string) (lines [][]byte, file string, err error) {
	if ValidStream(stream) != nil {
		return nil, "", &NoStreamError{Stream: stream}
	}
	err = r.look(func(s store) error {
		lines, err = s.lines(stream)
		return err
	}, func(folder string) error {
		file = segmentFile(folder, stream, 1)
		lines, err = twinLines(folder, stream)
		return err
	})
	return lines, file, err
}

// twinLines reads a stream from its twin alone and checks the chain, since
// nothing else vouches for it.
func twinLines(folder, stream string) ([][]byte, error) {
	text, err := readTwin(folder, stream)
	if err != nil {
		return nil, err
	}
	if len(text.lines) == 0 && text.fault == "" {
		return nil, &NoStreamError{Stream: stream}
	}
	n, why := wholeChain(stream, text.lines)
	at := text.faultAt
	if why != "" {
		at = text.at[n]
	} else {
		why = text.fault
	}
	if why != "" {
		return text.lines[:n], &LineError{File: at.file, Line: at.line, Stream: stream, Seq: uint64(n + 1), What: why}
	}
	return text.lines, nil
}

// Summaries gives the shelf's line of every smelt, sorted by id.
func (r *Reader) Summaries() (all []Summary, err error) {
	f := summariser(r.opt.Summarise)
	err = r.look(func(s store) error {
		all, err = s.summaries(f)
		return err
	}, func(folder string) error {
		all, err = twinSummaries(folder, f)
		return err
	})
	return all, err
}

// twinSummaries makes the shelf from what was noted beside the twins, and from
// the twins themselves where that is out of date. Of a twin with a bad line the
// shelf shows what stands before it.
func twinSummaries(folder string, f summariser) ([]Summary, error) {
	sizes, err := twinSizes(folder)
	if err != nil {
		return nil, err
	}
	var all []Summary
	for _, stream := range sortedKeys(sizes) {
		if stream == entry.House {
			continue
		}
		sum, ok := notedSummary(folder, stream, sizes[stream])
		if !ok {
			lines, err := twinLines(folder, stream)
			var bad *LineError
			if err != nil && !errors.As(err, &bad) {
				continue // no line in it yet
			}
			sum = f.of(stream, lines, recordOf(lines))
		}
		all = append(all, sum)
	}
	return all, nil
}
