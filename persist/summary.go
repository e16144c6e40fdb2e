package persist

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
)

// Summary is the shelf's line of a smelt: what is shown of it without reading
// its entries. It can be made anew from them at any time.
type Summary struct {
	ID         string                      `json:"id"`
	UID        string                      `json:"uid"`
	Furnace    string                      `json:"furnace"`
	Light      time.Time                   `json:"light,omitzero"`
	Phase      entry.Phase                 `json:"phase"`
	Charges    int                         `json:"charges"` // in force, that hold charcoal
	Charcoal   entry.Maybe[entry.Kilogram] `json:"charcoal_kg"`
	Ore        entry.Maybe[entry.Kilogram] `json:"ore_kg"`
	Bloom      entry.Maybe[entry.Kilogram] `json:"bloom_kg"`
	Practice   bool                        `json:"practice,omitempty"`
	Invented   bool                        `json:"invented,omitempty"`
	Imported   bool                        `json:"imported,omitempty"`
	Undated    bool                        `json:"undated,omitempty"`
	SourceHash string                      `json:"source_hash,omitempty"`
	Entries    uint64                      `json:"entries"` // how many there are, those struck out included
	Head       string                      `json:"head"`    // hash of the last stored line
}

// summaryRule counts the ways of making a summary. A stored one of another rule
// is made anew; raise it when a field is added or means something else.
const summaryRule = 1

type summariser func(stream string, entries []entry.Entry) Summary

// of makes a stream's summary from its lines. A line that cannot be read ends
// it there: the shelf shows what it can.
func (f summariser) of(stream string, lines [][]byte, rec record) Summary {
	var s Summary
	if f != nil {
		entries, _ := decodeAll(stream, "", lines)
		s = f(stream, entries)
	}
	s.ID, s.Entries, s.Head = stream, rec.Length, rec.Head
	if s.UID == "" {
		s.UID = rec.UID
	}
	if s.SourceHash == "" {
		s.SourceHash = rec.Source
	}
	return s
}

// stored reads the summary in a record, when it is a fresh one.
func (r record) stored() (s Summary, ok bool) {
	ok = r.fresh() && json.Unmarshal(r.Summary, &s) == nil
	return s, ok
}

// with is the record with a summary in it.
func (r record) with(s Summary) (record, error) {
	b, err := json.Marshal(s)
	r.Rule, r.Summary = summaryRule, b
	return r, err
}

// putSummaries writes records that hold new summaries. Only the writer does.
func (s store) putSummaries(recs map[string]record) error {
	small := s.writing()
	if small != s.vault { // what only the book has that may not be written stays stale there
		maps.DeleteFunc(recs, func(stream string, _ record) bool { return s.at(stream) != small })
	}
	err := small.Update(func(tx *bolt.Tx) error {
		for stream, rec := range recs {
			if err := putRecord(tx, stream, rec); err != nil {
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
func (s store) noteSummary(stream string, rec record) {
	b, err := json.Marshal(rec)
	if err != nil {
		return
	}
	name := filepath.Join(s.folder, stream+summaryExt)
	if os.WriteFile(name+unfinishedExt, b, 0o600) == nil {
		_ = os.Rename(name+unfinishedExt, name)
	}
}

// notedSummary reads what noteSummary laid beside a twin, if it still stands
// for all of the twin.
func notedSummary(folder, stream string, size twinSize) (Summary, bool) {
	b, err := os.ReadFile(filepath.Join(folder, stream+summaryExt))
	var rec record
	if err != nil || json.Unmarshal(b, &rec) != nil || rec.Bytes != size.bytes || size.segments != 1 {
		return Summary{}, false
	}
	return rec.stored()
}

// summaries gives those of all smelts, sorted by id. Stale ones are made anew
// from their entries, but not stored.
func (s store) summaries(f summariser) ([]Summary, error) {
	recs, err := s.records()
	if err != nil {
		return nil, err
	}
	var all []Summary
	for _, stream := range sortedKeys(recs) {
		if stream == entry.House {
			continue
		}
		sum, ok := recs[stream].stored()
		if !ok {
			lines, err := s.lines(stream)
			if err != nil {
				return nil, err
			}
			sum = f.of(stream, lines, recs[stream])
		}
		all = append(all, sum)
	}
	return all, nil
}
