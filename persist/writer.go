package persist

import (
	"cmp"
	"errors"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
)

// writer is the one goroutine that writes. Nothing else touches its fields.
type writer struct {
	b       *Book
	streams map[string]*stream
	unread  []entry.Entry // taken from the queue, but their streams cannot be read yet
	held    []held        // numbered and not kept, in order
	cause   error         // why the last try failed
	stale   []string      // streams whose summary is to be renewed in a pause
	making  bool          // a summary
	made    chan struct{} // it was made

	rest   []string // streams that were not compared yet
	astray bool     // a file went: they are, before the end
}

// held is one entry on its way to the disk.
type held struct {
	e       entry.Entry
	line    []byte
	refused error // then there is no line
}

// start sets the writer going.
func (b *Book) start(rest []string) {
	w := &writer{b: b, streams: map[string]*stream{}, rest: rest, made: make(chan struct{}, 1)}
	go w.run()
}

// How streams are compared that opening has not looked at: not while the first picture
// is made, and leaving most of a processor to the keys.
const (
	compareAfter = 2 * time.Second
	comparePause = time.Millisecond // after each stream
)

func (w *writer) run() {
	defer close(w.b.done)
	if said := w.b.Mended(); len(said) > 0 {
		w.b.opt.Acked(Ack{Noted: said})
	}
	pause := time.NewTimer(w.b.opt.idle)
	defer pause.Stop()
	var compare <-chan time.Time
	after := w.b.opt.compareAfter
	for {
		if compare == nil && len(w.rest) > 0 {
			compare = time.After(after)
		}
		select {
		case <-w.b.wake: // what is keyed goes before all else
			if w.serve() {
				return
			}
		default:
			select {
			case <-w.b.wake:
				if w.serve() {
					return
				}
			case job := <-w.b.jobs:
				job(w)
			case <-w.made:
				w.making = false
			case <-compare:
				compare = nil
				after = w.compareNext()
			case <-pause.C:
				if w.waiting() > 0 {
					w.take(nil)
				} else {
					w.renewNext()
				}
			}
		}
		switch {
		case w.waiting() > 0:
			pause.Reset(w.b.opt.retryEvery)
		case len(w.stale) > 0 && !w.making:
			pause.Reset(w.b.opt.idle)
		}
	}
}

// serve takes what is queued, and tells whether the writer has ended.
func (w *writer) serve() (ended bool) {
	entries, closing := w.b.taken()
	if closing {
		w.b.closed = w.drain(entries)
		return true
	}
	w.take(entries)
	return false
}

// take numbers entries, after those that wait already, and tries to keep all that
// is held.
func (w *writer) take(entries []entry.Entry) {
	entries = append(w.unread, entries...)
	w.unread, w.cause = nil, nil
	blocked := map[string]bool{} // streams that cannot be read: the others go on
	for _, e := range entries {
		if !blocked[e.Stream] {
			if err := w.overcome(func() error { return w.load(e.Stream) }); err != nil {
				w.cause = cmp.Or(w.cause, err)
				blocked[e.Stream] = true
			}
		}
		if blocked[e.Stream] {
			w.unread = append(w.unread, e)
		} else {
			w.held = append(w.held, w.prepare(e))
		}
	}
	booked, twinned := w.write()
	w.cause = cmp.Or(booked, twinned, w.cause)
	if booked == nil {
		w.settle()
	}
	if w.cause != nil {
		w.complain()
	}
}

// write brings the held lines to book and twins at the same time. Each side
// remembers how far it has come, so that a second try repeats nothing. What the
// book has and the twin too is kept, though another twin failed.
func (w *writer) write() (err, twinned error) {
	if !slices.ContainsFunc(w.held, func(h held) bool { return h.refused == nil }) {
		return nil, nil
	}
	twins := make(chan error, 1)
	var away error
	before := w.b.store.book()
	go func() {
		err := w.writeTwins()
		away = before.There()
		twins <- err
	}()
	err = w.writeBook()
	twinned = <-twins
	if err == nil {
		err = away
	}
	// Only now: a book that takes over changes what the twins are written from.
	err = w.afterwards(err, w.writeBook)
	if err == nil || !errors.Is(twinned, disk.ErrGone) { // else the twins went with the book
		twinned = w.withTwins(twinned, w.b.store.book() != before)
	}
	return err, twinned
}

// writeTwins runs beside writeBook and touches the twins only.
func (w *writer) writeTwins() (err error) {
	for name, lines := range w.lacking(func(s *stream) uint64 { return s.twin.Seq }) {
		err = disk.Both(err, w.streams[name].twin.Append(lines))
	}
	return err
}

// writeBook puts everything that is held into one transaction.
func (w *writer) writeBook() error {
	tails := w.lacking(func(s *stream) uint64 { return s.booked })
	if len(tails) == 0 {
		return nil
	}
	err := w.b.store.book().Update(func(tx boltfile.Tx) error {
		for name, lines := range tails {
			if err := tx.PutLines(name, lines, w.streams[name].rec); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	for name, lines := range tails {
		w.streams[name].booked += uint64(len(lines))
	}
	return nil
}

// lacking gives the held lines beyond where a side of each stream has come to.
func (w *writer) lacking(upTo func(*stream) uint64) map[string][][]byte {
	tails := map[string][][]byte{}
	for _, h := range w.held {
		if h.refused == nil && h.e.Seq > upTo(w.streams[h.e.Stream]) {
			tails[h.e.Stream] = append(tails[h.e.Stream], h.line)
		}
	}
	return tails
}

// drain ends the writer: it keeps what it can, a few times if need be, renews
// the summaries and closes everything.
func (w *writer) drain(entries []entry.Entry) error {
	w.take(entries)
	for try := 1; w.waiting() > 0 && try < w.b.opt.closeTries; try++ {
		time.Sleep(w.b.opt.retryEvery)
		w.take(nil)
	}
	var err error
	if n := w.waiting(); n > 0 {
		lost := &NotKeptError{Count: n, Cause: w.cause}
		for _, h := range w.held {
			if h.refused == nil {
				lost.Entries = append(lost.Entries, h.e)
			}
		}
		lost.Entries = append(lost.Entries, w.unread...)
		err = lost
	} else {
		w.renewAll()
	}
	err = disk.Both(err, w.bringAll())
	if w.making {
		<-w.made // it reads the book
	}
	for _, s := range w.streams {
		s.twin.Close()
	}
	err = disk.Both(err, w.closeBooks())
	w.b.release()
	return err
}

// closeBooks closes the book, and those that gave way to it.
func (w *writer) closeBooks() (err error) {
	for _, b := range w.b.store.books() {
		if cerr := b.Close(); !b.Poisoned() {
			err = disk.Both(err, cerr) // of one that could not be flushed nothing is expected any more
		}
	}
	return err
}
