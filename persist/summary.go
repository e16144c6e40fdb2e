package persist

import (
	"os"
	"slices"

	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Summary is the shelf's line of a smelt.
type Summary = boltfile.Summary

// noteSummary lays a copy of a record beside the twin, so that readers who
// cannot have the book need not read every twin for the shelf. It is a help
// only: when it cannot be written, they read the twin.
func (s store) noteSummary(stream string, rec boltfile.Record) {
	b, err := rec.Marshal()
	if err != nil {
		return
	}
	name := twin.SummaryFile(s.folder, stream)
	f, err := disk.Unfinished(name)
	if err != nil {
		return
	}
	_, err = f.Write(b)
	if f.Close() != nil || err != nil || os.Rename(f.Name(), name) != nil {
		_ = os.Remove(f.Name())
	}
}

// notedSummary reads what noteSummary laid beside a twin, if it still stands
// for all of the twin.
func notedSummary(folder, stream string, size int64) (Summary, bool) {
	b, err := os.ReadFile(twin.SummaryFile(folder, stream))
	if err != nil {
		return Summary{}, false
	}
	if rec, ok := boltfile.ReadRecord(b); ok && rec.Bytes == size {
		return rec.Stored()
	}
	return Summary{}, false
}

// summaries gives those of all smelts, sorted by id. Stale ones are made anew from
// their entries, but not stored; said is what was found to be wrong then, unread why
// one is not among them, and err why not all could be listed in the book.
func (s store) summaries(f boltfile.Summariser) (all []Summary, said []string, unread, err error) {
	recs, sizes, err := s.listed()
	for _, stream := range named(recs, sizes) {
		if isHouse(stream) {
			continue
		}
		sum, ok := recs[stream].Stored()
		if size := sizes[stream]; !ok || size > recs[stream].Bytes {
			sum, ok = notedSummary(s.folder, stream, size)
		}
		if !ok {
			r, rerr := s.read(stream)
			said = append(said, r.said(stream)...)
			if rerr != nil {
				unread = rerr
				continue
			}
			sum = f.Of(stream, r.Lines, boltfile.RecordOf(r.Lines, r.Gaps))
		}
		all = append(all, sum)
	}
	return all, said, unread, err
}

// madeSummary is a record with a summary that was made beside the writer.
type madeSummary struct {
	stream string
	rec    boltfile.Record
	err    error
}

// renewNext has one summary made, beside the writer. When it cannot be stored it
// stays stale in the book, and the next opening tries again.
func (w *writer) renewNext() {
	if len(w.stale) == 0 || w.making != "" {
		return
	}
	name := w.stale[0]
	w.stale, w.making = w.stale[1:], name
	w.reading.Add(1)
	go func() {
		r, err := w.b.store.read(name)
		w.reading.Done()
		rec := boltfile.RecordOf(r.Lines, r.Gaps)
		if err == nil {
			rec, err = rec.With(w.b.opt.Summarise.Of(name, r.Lines, rec))
		}
		w.made <- madeSummary{name, rec, err}
	}()
}

// store stores a summary in book and twin, unless an entry came since: then it is among
// the stale again. Where it cannot be stored, whoever reads the smelt makes it anew.
func (w *writer) store(m madeSummary) {
	w.making = ""
	recs, err := w.b.store.records()
	if now := recs[m.stream]; err != nil || m.err != nil || now.Length != m.rec.Length || now.Head != m.rec.Head {
		return
	}
	if w.b.store.book().Update(func(tx boltfile.Tx) error { return tx.PutRecord(m.stream, m.rec) }) == nil {
		w.b.store.noteSummary(m.stream, m.rec)
	}
}

// maxRenewed bounds, in bytes, the smelts whose summary is renewed while the
// book is being closed. A day of smelting has a tenth of it.
const maxRenewed = 4 << 20

// renewAll renews the summaries of the smelts in use that are still stale.
func (w *writer) renewAll() {
	w.stale = slices.DeleteFunc(w.stale, func(name string) bool { return w.streams[name] == nil || w.streams[name].rec.Bytes > maxRenewed })
	for w.renewNext(); w.making != ""; w.renewNext() {
		w.store(<-w.made)
	}
}
