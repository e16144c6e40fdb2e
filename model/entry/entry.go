package entry

import "time"

// Version is the version of the wire form that this program writes.
const Version = 1

// House is the stream of everything outside a smelt: stores, furnaces, plans,
// settings, and the keys pressed where no smelt is open.
const House = "house"

// Stamp is one reading of the clocks: the wall clock, and the boot clock that
// runs on through sleep but starts anew with each start of the machine.
type Stamp struct {
	Wall time.Time
	Boot string        // which start of the machine; empty when there is no boot clock (an imported log)
	Mono time.Duration // since that start
}

// Ref names another entry of the same stream. On the wire it is the sequence
// alone. An act about an entry that the writer has not numbered yet carries
// that entry's local id, which the writer turns into the sequence (see
// Entry.Resolve).
type Ref struct {
	Seq   uint64 `json:"seq"`
	Local string `json:"-"`
}

// Entry is one line of the journal: when it happened, when and how it was
// taken down, and at most one event.
type Entry struct {
	Version   int
	Stream    string
	Seq       uint64        // gapless from 1 within the stream; given by the writer, 0 until then
	Prev      string        // the hash of the stored bytes of the entry before, which chains the stream
	Happened  time.Time     // wall time, with the offset of the place
	Uncertain time.Duration // half the width within which the time is known; 0 is as good as the clock
	Kept      time.Time     // wall time of acceptance
	Boot      string
	Mono      time.Duration // boot clock at acceptance, whole milliseconds
	By        string        // initials, when somebody gave them
	Screen    string        // where it was keyed
	Key       string        // the key as typed
	Group     string        // entries that belong together, as the cells of one row of a log
	Local     string        // the screen's own name for it before it had a number
	Sure      string        // which doubt about it was answered yes
	From      Origin        // the entry that it was taken over or moved from
	Event     Event         // nil for none
}

// Origin is where an entry stood before: in another book that it was taken over from, or in
// another smelt of this one that it was moved from.
type Origin struct {
	Book   string `json:"book,omitempty"`   // the book's uid
	Stream string `json:"stream,omitempty"` // the smelt, where it is one of this book
	Seq    uint64 `json:"seq,omitempty"`
}

// Kind is the kind of the entry's event, or empty.
func (e Entry) Kind() Kind {
	if e.Event == nil {
		return ""
	}
	return e.Event.Kind()
}

// Resolve puts the sequence in place of each local id that the event names, as
// told by seqOf. It reports the first local id that seqOf does not know.
func (e Entry) Resolve(seqOf func(local string) (uint64, bool)) (Entry, string) {
	ev, ok := e.Event.(referring)
	if !ok {
		return e, ""
	}
	r := ev.target()
	if r.Local == "" {
		return e, ""
	}
	seq, known := seqOf(r.Local)
	if !known {
		return e, r.Local
	}
	e.Event = ev.aimed(Ref{Seq: seq})
	return e, ""
}

// Aim points an event that names another entry by its local id at the number that
// this entry has or is going to have, as told by seqOf. The local id stays.
func (e Entry) Aim(seqOf func(local string) (uint64, bool)) Entry {
	ev, ok := e.Event.(referring)
	if !ok {
		return e
	}
	r := ev.target()
	if r.Local == "" {
		return e
	}
	if seq, known := seqOf(r.Local); known {
		r.Seq = seq
		e.Event = ev.aimed(r)
	}
	return e
}

// Unnamed is the entry without local ids, its own and that of the entry it names: two
// that say the same are then the same, whether they are kept or not.
func (e Entry) Unnamed() Entry {
	e.Local = ""
	if ev, ok := e.Event.(referring); ok && ev.target().Local != "" {
		e.Event = ev.aimed(Ref{Seq: ev.target().Seq})
	}
	return e
}

// referring is an event that names another entry.
type referring interface {
	Event
	target() Ref
	aimed(Ref) Event
}
