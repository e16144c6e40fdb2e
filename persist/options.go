package persist

import (
	"cmp"
	"time"

	"chargehand/model/entry"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// Options is what the book is given by the program. The zero value works.
type Options struct {
	// Clock stamps an entry as kept. Wall and boot clock are taken at the same
	// instant, since the fold holds them against each other; an entry that came
	// without a boot clock (an imported log) is left without. nil is the
	// machine's wall clock alone, which leaves the boot clock as keyed.
	Clock func() entry.Stamp
	// AsStamped keeps the clocks that an entry came with: those of a rehearsal are its own.
	AsStamped bool
	// Acked is told what became of entries, on the writer's goroutine and in
	// the order of Keep. It must not block, nor wait for the book. nil is none.
	Acked func(Ack)
	// Summarise makes the shelf's line of a smelt from its entries; nil leaves
	// all but id, number of entries and head empty.
	Summarise Summariser
	// Progress is told how far an import, a check or a rescue has come, on its
	// goroutine: in entries, or kB of lines. nil is none.
	Progress func(done, of int)

	// Shorter or longer in tests, and places for their faults.
	lockWait     time.Duration // for another program to let go of the book at opening
	retryEvery   time.Duration // before entries that could not be kept are tried again
	closeTries   int           // how often Close tries to keep what is held
	idle         time.Duration // pause in keying after which summaries are renewed
	compareAfter time.Duration // before what opening has not looked at is compared
	openTwin     func(path string) (twin.File, error)
	openBook     boltfile.OpenFunc
	wrapCommit   func(boltfile.Commit) boltfile.Commit
}

// Ack says what became of entries.
type Ack struct {
	// Entries are as kept and numbered when Err is nil; those dropped when Err
	// is a *RefusedError or ErrClosed; else none.
	Entries []entry.Entry
	// Err is a *RefusedError for an entry that can never be kept, a
	// *NotKeptError while entries are held and tried again.
	Err error
	// Waiting is how many entries are not kept at this moment.
	Waiting int
	// Noted is what was put right or took over, one sentence each, as Mended
	// has it too: at opening, and the moment it happens. Entries and Err are
	// empty then.
	Noted []string
}

func (o Options) filled() Options {
	if o.Clock == nil {
		o.Clock = func() entry.Stamp { return entry.Stamp{Wall: time.Now()} }
	}
	if o.Acked == nil {
		o.Acked = func(Ack) {}
	}
	if o.Progress == nil {
		o.Progress = func(int, int) {}
	}
	o.lockWait = cmp.Or(o.lockWait, time.Second)
	o.retryEvery = cmp.Or(o.retryEvery, time.Second)
	o.closeTries = cmp.Or(o.closeTries, 3)
	o.idle = cmp.Or(o.idle, 5*time.Second)
	o.compareAfter = cmp.Or(o.compareAfter, compareAfter)
	if o.openTwin == nil {
		o.openTwin = twin.OpenFile
	}
	return o
}

// stamp is when an entry is kept.
func (o Options) stamp(e entry.Entry) entry.Stamp {
	if o.AsStamped && !e.Kept.IsZero() {
		return entry.Stamp{Wall: e.Kept, Boot: e.Boot, Mono: e.Mono}
	}
	return o.Clock()
}

// open opens one of the book's files.
func (o Options) open(file string, readOnly bool, wait time.Duration) (*boltfile.File, error) {
	return boltfile.Open(file, boltfile.Options{ReadOnly: readOnly, Wait: wait, OpenFile: o.openBook, Wrap: o.wrapCommit})
}

// openSound opens a book to be looked at, once all its pages were followed: bbolt would
// follow a bad one to the end of the program.
func (o Options) openSound(file string) (book *boltfile.File, err error) {
	return boltfile.Open(file, boltfile.Options{ReadOnly: true, Wait: o.lockWait, Whole: true, OpenFile: o.openBook})
}

// begin makes a book for what is to be called file, under another name. With noSync
// nothing is flushed before it is closed: nobody knows it yet.
func (o Options) begin(file, uid string, noSync bool) (*boltfile.File, error) {
	return boltfile.New(file, uid, o.Clock().Wall, boltfile.Options{Wait: o.lockWait, NoSync: noSync, OpenFile: o.openBook, Wrap: o.wrapCommit})
}
