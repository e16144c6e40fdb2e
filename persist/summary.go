package persist

import (
	"maps"
	"os"

	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Summary is the shelf's line of a smelt.
type Summary = boltfile.Summary

// putSummaries writes records that hold new summaries. Only the writer does.
func (s store) putSummaries(recs map[string]boltfile.Record) error {
	small := s.writing()
	if small != s.book { // what only the book has that may not be written stays stale there
		maps.DeleteFunc(recs, func(stream string, _ boltfile.Record) bool { return s.at(stream) != small })
	}
	err := small.Update(func(tx boltfile.Tx) error {
		for stream, rec := range recs {
			if err := tx.PutRecord(stream, rec); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	for stream, rec := range recs {
		s.noteSummary(stream, rec)
	}
	return nil
}

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
func notedSummary(folder, stream string, size twin.Size) (Summary, bool) {
	b, err := os.ReadFile(twin.SummaryFile(folder, stream))
	if err != nil {
		return Summary{}, false
	}
	if rec, ok := boltfile.ReadRecord(b); ok && rec.Bytes == size.Bytes && size.Segments == 1 {
		return rec.Stored()
	}
	return Summary{}, false
}

// summaries gives those of all smelts, sorted by id. Stale ones are made anew
// from their entries, but not stored.
func (s store) summaries(f boltfile.Summariser) ([]Summary, error) {
	recs, err := s.records()
	if err != nil {
		return nil, err
	}
	var all []Summary
	for _, stream := range sortedKeys(recs) {
		if isHouse(stream) {
			continue
		}
		sum, ok := recs[stream].Stored()
		if !ok {
			lines, err := s.lines(stream)
			if err != nil {
				return nil, err
			}
			sum = f.Of(stream, lines, recs[stream])
		}
		all = append(all, sum)
	}
	return all, nil
}
