package persist

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Open opens the book that a path means for writing, or makes it. A book of a
// newer version opens for reading only (see Book.ReadOnly). Errors are
// *disk.FileError, or the system's own with the path in it.
func Open(path string, opt Options) (*Book, error) {
	opt = opt.filled()
	file := boltfile.BookFile(path)
	if _, err := os.Stat(file); errors.Is(err, os.ErrNotExist) {
		made, err := opt.begin(file, twin.UID(twin.Find(file, "")), false)
		if err == nil {
			err = made.Place(file)
		}
		if err != nil {
			return nil, disk.AccessError(file, err)
		}
	}
	var mended []string
	book, err := opt.open(file, false, opt.lockWait)
	if errors.Is(err, disk.ErrDamaged) {
		if twins, _ := twin.Sizes(twin.Find(file, "")); len(twins) > 0 {
			if mended, err = makeAnew(file, opt); err == nil {
				book, err = opt.open(file, false, opt.lockWait)
			}
		}
	}
	if err != nil {
		return nil, err
	}
	meta := book.Meta
	if meta.Schema > boltfile.Schema {
		book.Close()
		if book, err = opt.open(file, true, opt.lockWait); err == nil {
			return readOnlyBook(book, opt), nil
		}
		return nil, err
	}
	b := newBook(book, opt)
	folder, release, said, err := twin.Claim(file, meta.UID, b.store.ours)
	b.store.folder, b.release, b.mended = folder, release, append(mended, said...)
	if err != nil {
		release()
		book.Close()
		return nil, disk.AccessError(folder, err)
	}
	disk.Sweep(filepath.Dir(file), filepath.Base(file))
	disk.Sweep(folder, "")
	rest, err := b.compareAtOpening()
	if err != nil {
		release()
		book.Close()
		return nil, err
	}
	b.start(rest)
	return b, nil
}

// makeAnew makes a damaged book anew from its twins and what can be read of it, and
// tells what became of it.
func makeAnew(file string, opt Options) (said []string, err error) {
	opt.Progress = nil // nobody asked for it
	r, err := Rescue(file, opt)
	if err != nil {
		return nil, err
	}
	said = append(said, words.MadeAnew(r.Path, r.Trouble, int(r.Entries), strings.Join(r.Aside, "")))
	for _, s := range r.Streams {
		for _, m := range s.Mended {
			said = append(said, words.OfStream(s.Stream, m))
		}
	}
	return said, nil
}

// compareAtOpening compares the length of every twin with what the book says of
// it, and line by line those that differ. It gives all streams: their lines are held
// against each other when they are read or written to, or in a pause.
func (b *Book) compareAtOpening() (rest []string, err error) {
	recs, err := b.store.book().Records()
	if err != nil {
		return nil, err
	}
	sizes, err := twin.Sizes(b.store.folder)
	if err != nil {
		return nil, disk.AccessError(b.store.folder, err)
	}
	rest = named(recs, sizes)
	for _, stream := range rest {
		if sizes[stream] == recs[stream].Bytes {
			continue
		}
		a, err := b.store.reconcile(stream)
		b.noteMended(a.told(stream))
		switch {
		case err == nil:
			a.twin.Close()
		case !errors.Is(err, disk.ErrPoisoned): // else the writer puts another in its place
			// The stream can be looked at as it is; keeping in it tries again.
			b.noteMended([]string{words.OfStream(stream, words.NotCompared(err))})
		}
	}
	return rest, nil
}
