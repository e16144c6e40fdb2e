package persist

import (
	"cmp"
	"encoding/json"
	"os"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Summary is the shelf's line of a smelt.
type Summary = shelf.Summary

// Summariser makes the summary of a smelt from its entries; nil leaves all but
// id, number of entries and head empty.
type Summariser func(stream string, entries []entry.Entry) Summary

// of makes a stream's summary from its lines. A line that cannot be read ends
// it there: the shelf shows what it can.
func (f Summariser) of(stream string, lines [][]byte, rec boltfile.Record) Summary {
	var s Summary
	if f != nil {
		entries, _ := twin.DecodeAll(stream, "", lines)
		s = f(stream, entries)
	}
	s.ID, s.Entries, s.Head = stream, rec.Length, rec.Head
	s.UID, s.SourceHash = cmp.Or(s.UID, rec.UID), cmp.Or(s.SourceHash, rec.Source)
	return s
}

// noted is what is laid beside the twin of a smelt, so that the shelf can be shown
// without its entries: the summary, and of which lines. It is a help only: where it
// cannot be written or was changed, the entries are read.
type noted struct {
	boltfile.Record
	Rule    int      `json:"rule"` // what made the summary
	Summary *Summary `json:"summary"`
}

// noteSummary lays a summary beside the twin.
func (s store) noteSummary(stream string, rec boltfile.Record, sum Summary) {
	b, err := json.Marshal(noted{rec, shelf.Rule, &sum})
	if err != nil {
		return
	}
	name := twin.SummaryFile(s.folder, stream)
	f, err := disk.Unfinished(name)
	if err != nil {
		return
	}
	_, err = f.Write(twin.Sealed(b))
	if f.Close() != nil || err != nil || os.Rename(f.Name(), name) != nil {
		_ = os.Remove(f.Name())
	}
}

// noted reads what was laid beside a twin, if it was not changed.
func (s store) noted(stream string) (n noted, ok bool) {
	b, err := os.ReadFile(twin.SummaryFile(s.folder, stream))
	if intact, _ := twin.Intact(b); err != nil || !intact || json.Unmarshal(b, &n) != nil {
		return noted{}, false
	}
	return n, true
}

// stored is the summary of a smelt that was laid beside its twin, if it stands for all
// that the book has counted, and for a twin of a size.
func (s store) stored(stream string, rec boltfile.Record, size int64) (sum Summary, ok bool) {
	n, ok := s.noted(stream)
	if !ok || n.Summary == nil || n.Rule != shelf.Rule || n.Bytes != max(rec.Bytes, size) || n.Bytes == rec.Bytes && n.Head != rec.Head {
		return sum, false
	}
	return *n.Summary, true
}

// summaries gives those of all smelts, sorted by id. Stale ones are made anew from
// their entries, but not stored; said is what was found to be wrong then, unread why
// one is not among them, and err why not all could be listed in the book.
func (s store) summaries(f Summariser) (all []Summary, said []string, unread, err error) {
	recs, sizes, err := s.listed()
	for _, stream := range named(recs, sizes) {
		if isHouse(stream) {
			continue
		}
		sum, ok := s.stored(stream, recs[stream], sizes[stream])
		if !ok {
			r, rerr := s.read(stream)
			said = append(said, r.said(stream)...)
			if rerr != nil {
				said = append(said, words.OfStream(stream, words.NotListed(rerr)))
				unread = rerr
				continue
			}
			sum = f.of(stream, r.Lines, boltfile.RecordOf(r.Lines, r.Gaps))
		}
		all = append(all, sum)
	}
	return all, said, unread, err
}

// renewNext has one summary made and stored, beside the writer. When it cannot be
// stored, whoever reads the smelt makes it anew, and the next opening tries again.
func (w *writer) renewNext() {
	if len(w.stale) == 0 || w.making {
		return
	}
	name := w.stale[0]
	w.stale, w.making = w.stale[1:], true
	go func() {
		if r, err := w.b.store.read(name); err == nil {
			rec := boltfile.RecordOf(r.Lines, r.Gaps)
			w.b.store.noteSummary(name, rec, w.b.opt.Summarise.of(name, r.Lines, rec))
		}
		w.made <- struct{}{}
	}()
}

// maxRenewed bounds, in bytes, the smelts whose summary is renewed while the
// book is being closed. A day of smelting has a tenth of it.
const maxRenewed = 4 << 20

// renewAll renews the summaries of the smelts in use that are still stale.
func (w *writer) renewAll() {
	w.stale = slices.DeleteFunc(w.stale, func(name string) bool { return w.streams[name] == nil || w.streams[name].rec.Bytes > maxRenewed })
	for w.renewNext(); w.making; w.renewNext() {
		<-w.made
		w.making = false
	}
}
