package persist

import (
	"errors"
	"os"
	"time"

	"chargehand/model/entry"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
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
	r := &Reader{path: boltfile.BookFile(path), opt: opt.filled()}
	if !disk.Exists(r.path) && !disk.Exists(twin.Folder(r.path)) {
		return nil, disk.AccessError(r.path, os.ErrNotExist)
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
	if len(boltfile.TakeOvers(r.path)) > 0 {
		return fromTwins(twin.Folder(r.path)) // the book does not have what was kept since
	}
	book, err := r.opt.open(r.path, true, glance)
	if err == nil {
		_, err = book.Meta()
		if err == nil {
			err = fromBook(store{path: r.path, folder: twin.Folder(r.path), book: book})
		}
		book.Close()
		var unknown *NoStreamError
		if err == nil || errors.As(err, &unknown) {
			return err
		}
	}
	if !errors.Is(err, ErrHeld) {
		r.trouble = err
	}
	return fromTwins(twin.Folder(r.path))
}

// Streams lists the streams that hold entries, the house included, sorted.
func (r *Reader) Streams() (names []string, err error) {
	err = r.look(func(s store) error {
		names, err = s.streams()
		return err
	}, func(folder string) error {
		sizes, err := twin.Sizes(folder)
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
	return twin.DecodeAll(stream, file, lines)
}

func (r *Reader) lines(stream string) (lines [][]byte, file string, err error) {
	if twin.ValidStream(stream) != nil {
		return nil, "", &NoStreamError{Stream: stream}
	}
	err = r.look(func(s store) error {
		lines, err = s.lines(stream)
		return err
	}, func(folder string) error {
		file = twin.SegmentFile(folder, stream, 1)
		lines, err = twin.Lines(folder, stream)
		return err
	})
	return lines, file, err
}

// Summaries gives the shelf's line of every smelt, sorted by id.
func (r *Reader) Summaries() (all []Summary, err error) {
	f := r.opt.Summarise
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
func twinSummaries(folder string, f boltfile.Summariser) ([]Summary, error) {
	sizes, err := twin.Sizes(folder)
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
			lines, err := twin.Lines(folder, stream)
			var bad *LineError
			if err != nil && !errors.As(err, &bad) {
				continue // no line in it yet
			}
			sum = f.Of(stream, lines, boltfile.RecordOf(lines))
		}
		all = append(all, sum)
	}
	return all, nil
}
