package persist

import (
	"chargehand/model/entry"
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
		done = done[n:]
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
}

// waiting counts the entries that are not kept, those still queued included.
func (w *writer) waiting() int {
	w.b.mu.Lock()
	defer w.b.mu.Unlock()
	return countOf(w.held) + len(w.unread) + len(w.b.queue)
}

func countOf(hs []held) (n int) {
	for _, h := range hs {
		if h.refused == nil {
			n++
		}
	}
	return n
}
