package persist

import (
	"errors"
	"os"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Open opens the book that a path means for writing, or makes it. A book of a
// newer version opens for reading only (see Book.ReadOnly). Errors are
// *HeldError, *FileError, or the system's own with the path in it.
func Open(path string, opt Options) (*Book, error) {
	opt = opt.filled()
	file := boltfile.BookFile(path)
	merged, err := merge(file, opt)
	if err != nil {
		return nil, err
	}
	if _, err := os.Stat(file); errors.Is(err, os.ErrNotExist) {
		if err := boltfile.Create(file, opt.Clock().Wall); err != nil {
			return nil, disk.AccessError(file, err)
		}
	}
	book, err := opt.open(file, false, opt.LockWait)
	if err != nil {
		return nil, err
	}
	meta, err := book.Meta()
	if err == nil && meta.Schema > boltfile.Schema {
		book.Close()
		if book, err = opt.open(file, true, opt.LockWait); err == nil {
			return readOnlyBook(book, meta, opt), nil
		}
		return nil, err
	}
	if err != nil {
		book.Close()
		return nil, err
	}
	b := newBook(book, meta, opt)
	b.mended = merged
	if err := disk.MakeFolder(b.store.folder); err != nil {
		b.store.book.Close()
		return nil, disk.AccessError(b.store.folder, err)
	}
	stale, err := b.compareAtOpening(meta.Last)
	if err != nil {
		b.store.book.Close()
		return nil, err
	}
	b.start(stale)
	return b, nil
}

// compareAtOpening compares the length of every twin with what the book says of
// it, and line by line those that differ, those asked for, and the smelt
// written last. It gives the streams whose summary is to be made anew.
func (b *Book) compareAtOpening(last string) (stale []string, err error) {
	recs, err := b.store.records()
	if err != nil {
		return nil, disk.Damaged(b.store.path, words.FileDamaged(err))
	}
	sizes, err := twin.Sizes(b.store.folder)
	if err != nil {
		return nil, disk.AccessError(b.store.folder, err)
	}
	asked := map[string]bool{last: true}
	if b.opt.Compare != nil {
		clear(asked)
		for _, s := range b.opt.Compare {
			asked[s] = true
		}
	}
	all := map[string]bool{}
	for s := range recs {
		all[s] = true
	}
	for s := range sizes {
		all[s] = true
	}
	for _, stream := range sortedKeys(all) {
		rec := recs[stream]
		if !rec.Fresh() && stream != entry.House {
			stale = append(stale, stream)
		}
		if sizes[stream].Bytes == rec.Bytes && !asked[stream] {
			continue
		}
		t, _, _, said, err := reconcile(b.store, stream)
		if err != nil {
			// The stream can be looked at as it is; keeping in it tries again.
			b.noteMended(append(said, words.OfStream(stream, words.NotCompared(err))))
			continue
		}
		b.noteMended(said)
		t.Close()
		if len(said) > 0 && rec.Fresh() && stream != entry.House {
			stale = append(stale, stream)
		}
	}
	return stale, nil
}
