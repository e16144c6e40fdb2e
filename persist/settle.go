package persist

import (
	"chargehand/model/entry"
	"chargehand/persist/disk"
)

// settle acknowledges what is held and is in the book and its twin, in the order
// of each stream.
func (w *writer) settle() {
	var done, still []held
	waits := map[string]bool{}
	for _, h := range w.held {
		s := w.streams[h.e.Stream]
		if waits[h.e.Stream] || h.refused == nil && h.e.Seq > min(s.booked, s.twin.Seq) {
			waits[h.e.Stream] = true
			still = append(still, h)
		} else {
			done = append(done, h)
		}
	}
	w.held = still
	for len(done) > 0 {
		n := 1
		if done[0].refused == nil {
			for n < len(done) && done[n].refused == nil {
				n++
			}
		}
		ack := Ack{Entries: make([]entry.Entry, n), Err: done[0].refused, Waiting: w.waiting() + countOf(done[n:])}
		for i, h := range done[:n] {
			ack.Entries[i] = h.e
			if h.refused == nil {
				w.markStale(h.e.Stream)
			}
		}
		w.b.opt.Acked(ack)
		for _, h := range done[:n] {
			h.call.settleOne(h)
		}
		done = done[n:]
	}
}

func (c *call) settleOne(h held) {
	c.open--
	if h.refused != nil {
		c.refused = disk.Both(c.refused, h.refused)
	} else {
		c.kept = append(c.kept, h.e)
	}
	if c.open == 0 {
		c.tell(settled{kept: c.kept, err: c.refused})
	}
}

// tell answers whoever waits for the call, once.
func (c *call) tell(s settled) {
	if c.settled != nil {
		c.settled <- s
		c.settled = nil
	}
}

// say notes what was put right or took over, and tells it at once.
func (w *writer) say(said ...string) {
	if len(said) > 0 {
		w.b.noteMended(said)
		w.b.opt.Acked(Ack{Noted: said, Waiting: w.waiting()})
	}
}

// complain says that entries are not kept, and why.
func (w *writer) complain() {
	err := &NotKeptError{Count: w.waiting(), Cause: w.cause}
	w.b.opt.Acked(Ack{Err: err, Waiting: err.Count})
	for _, h := range w.held {
		h.call.tell(settled{err: err})
	}
	for _, c := range w.unread {
		c.tell(settled{err: err})
	}
}

// waiting counts the entries that are not kept, those still queued included.
func (w *writer) waiting() int {
	n := countOf(w.held)
	for _, c := range w.unread {
		n += len(c.entries)
	}
	w.b.mu.Lock()
	defer w.b.mu.Unlock()
	for _, c := range w.b.queue {
		n += len(c.entries)
	}
	return n
}

func countOf(hs []held) (n int) {
	for _, h := range hs {
		if h.refused == nil {
			n++
		}
	}
	return n
}
