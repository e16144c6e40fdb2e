package repair

import (
	"os"
	"time"

	"chargehand/model/entry"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// Options is what a check or a rescue is given. The zero value works.
type Options struct {
	// Clock stamps a book that is made anew; nil is the machine's.
	Clock func() entry.Stamp
	// Summarise makes the shelf's line of a smelt, to be held against the one
	// that is stored; nil compares none.
	Summarise boltfile.Summariser
	// LockWait is how long another program is waited for; 0 is 1 s.
	LockWait time.Duration
	// Progress is told how far it is, in kB of lines; nil is none.
	Progress func(done, of int)

	// Places for the faults of tests.
	OpenTwin func(path string) (twin.File, error)
	OpenBook boltfile.OpenFunc
	Wrap     func(boltfile.Vault) boltfile.Vault
}

func (o Options) filled() Options {
	if o.Clock == nil {
		o.Clock = func() entry.Stamp { return entry.Stamp{Wall: time.Now()} }
	}
	if o.Progress == nil {
		o.Progress = func(int, int) {}
	}
	if o.LockWait == 0 {
		o.LockWait = time.Second
	}
	if o.OpenTwin == nil {
		o.OpenTwin = twin.OpenFile
	}
	if o.OpenBook == nil {
		o.OpenBook = os.OpenFile
	}
	return o
}

// toRead is how a book is opened to be looked at.
func (o Options) toRead() boltfile.Options {
	return boltfile.Options{ReadOnly: true, Wait: o.LockWait, OpenFile: o.OpenBook}
}

// gauge tells how far a check or a rescue is: which part of as much text as the
// twins have is done.
type gauge struct {
	done, of int64 // bytes
	tell     func(done, of int)
}

func (o Options) gauge(folder string, atLeast int64) *gauge {
	g := &gauge{tell: o.Progress}
	sizes, _ := twin.Sizes(folder) // what cannot be listed is not foreseen
	for _, s := range sizes {
		g.of += s.Bytes
	}
	g.of = max(g.of, atLeast)
	return g
}

func (g *gauge) add(lines [][]byte) {
	g.done = min(g.done+twin.ByteCount(lines), g.of)
	g.tell(int(g.done>>10), int(g.of>>10))
}

func (g *gauge) end() { g.tell(int(g.of>>10), int(g.of>>10)) }
