package persist

import (
	"slices"
	"sync"

	"chargehand/model/entry"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Book is an open journal. All methods may be called from any goroutine, Keep
// from any one at a time whose order matters.
type Book struct {
	store    store
	opt      Options
	uid      string
	readOnly error

	importing sync.Mutex // one import at a time

	mu      sync.Mutex
	mended  []string
	queue   []entry.Entry // not yet taken by the writer
	closing bool
	wake    chan struct{} // holds at most one: there is something in the queue, or closing
	jobs    chan func(*writer)
	release func()        // lets go of the folder of the twins
	done    chan struct{} // closed when the writer has ended
	closed  error         // what the writer ended with; read after done
}

func newBook(book *boltfile.File, opt Options) *Book {
	s := storeOf(book.Path, book)
	s.folder, s.openTwin = twin.Folder(book.Path), opt.openTwin
	return &Book{store: s, opt: opt, uid: book.Meta.UID, release: func() {},
		wake: make(chan struct{}, 1), jobs: make(chan func(*writer)), done: make(chan struct{})}
}

// readOnlyBook is a book without a writer.
func readOnlyBook(book *boltfile.File, opt Options) *Book {
	b := newBook(book, opt)
	b.readOnly = book.Meta.Newer(book.Path)
	b.closing = true
	close(b.done)
	return b
}

// Path is the book's file.
func (b *Book) Path() string { return b.store.path }

// UID is the random name that the book got when it was made.
func (b *Book) UID() string { return b.uid }

// ReadOnly is nil, or says why nothing can be kept in this book.
func (b *Book) ReadOnly() error { return b.readOnly }

// Mended says what had to be put right between book and twins, one sentence
// each.
func (b *Book) Mended() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return slices.Clone(b.mended)
}

func (b *Book) noteMended(said []string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.mended = append(b.mended, said...)
}

// Keep queues entries for keeping and returns at once. Those of one call are
// kept together. What becomes of them is told to Options.Acked. The writer
// gives version, sequence, link and time of keeping, and replaces local
// references by sequences.
func (b *Book) Keep(entries ...entry.Entry) {
	if len(entries) == 0 {
		return
	}
	b.mu.Lock()
	closing := b.closing
	if !closing {
		b.queue = append(b.queue, entries...)
	}
	b.mu.Unlock()
	if closing {
		err := ErrClosed
		if b.readOnly != nil {
			err = b.readOnly
		}
		b.opt.Acked(Ack{Entries: slices.Clone(entries), Err: err})
		return
	}
	b.ring()
}

// ring wakes the writer. One ring is enough for whatever is queued.
func (b *Book) ring() {
	select {
	case b.wake <- struct{}{}:
	default:
	}
}

// taken empties the queue for the writer.
func (b *Book) taken() (entries []entry.Entry, closing bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	entries, b.queue = b.queue, nil
	return entries, b.closing
}

// onWriter runs f on the writer's goroutine, between two commits.
func (b *Book) onWriter(f func(*writer) error) error {
	if b.readOnly != nil {
		return b.readOnly
	}
	result := make(chan error, 1)
	select {
	case b.jobs <- func(w *writer) { result <- f(w) }:
		return <-result
	case <-b.done:
		return ErrClosed
	}
}

// Close keeps what is queued, renews the summaries, and closes the book. When
// entries could not be kept it gives a *NotKeptError that holds them.
func (b *Book) Close() error {
	b.mu.Lock()
	first := !b.closing
	b.closing = true
	b.mu.Unlock()
	if b.readOnly != nil {
		return b.store.book().Close()
	}
	if first {
		b.ring()
	}
	<-b.done
	return b.closed
}

// Streams lists the streams that hold entries, the house included, sorted.
func (b *Book) Streams() ([]string, error) { return b.store.streams() }

// Entries gives all entries of a stream in their order.
func (b *Book) Entries(stream string) ([]entry.Entry, error) {
	r, err := b.Read(stream)
	if err != nil {
		return nil, err
	}
	return r.Entries(stream)
}

// Read gives a stream as it was kept, with its gaps. When something is found to
// be wrong it is put right at once, and that is told.
func (b *Book) Read(stream string) (Reading, error) {
	r, err := b.store.read(stream)
	if r.Fault == nil && r.alone == nil || b.readOnly != nil {
		return r, err
	}
	if b.onWriter(func(w *writer) error { return w.compare(stream) }) == nil {
		return b.store.read(stream)
	}
	return r, err
}

// Summaries gives the shelf's line of every smelt, sorted by id.
func (b *Book) Summaries() ([]Summary, error) {
	all, _, unread, err := b.store.summaries(b.opt.Summarise) // what is wrong is put right in the background
	return all, disk.Both(err, unread)
}
