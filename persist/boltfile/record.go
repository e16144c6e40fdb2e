package boltfile

import (
	"encoding/json"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/persist/twin"
)

// Record is what the book holds of a stream beside its lines.
type Record struct {
	Length  uint64          `json:"length"` // entries
	Bytes   int64           `json:"bytes"`  // of its lines in the twin
	Head    string          `json:"head"`   // hash of the last line
	UID     string          `json:"uid,omitempty"`
	Source  string          `json:"source_hash,omitempty"`
	Rule    int             `json:"rule,omitempty"`    // what made the summary
	Summary json.RawMessage `json:"summary,omitempty"` // left out when entries came since
}

// RecordOf is the record of a stream that holds exactly the lines.
func RecordOf(lines [][]byte) Record {
	r := Record{Length: uint64(len(lines)), Bytes: twin.ByteCount(lines), Head: twin.HeadOf(lines)}
	r.UID, r.Source = twin.Identity(lines)
	return r
}

// Fresh tells whether the record's summary stands for all of its entries.
func (r Record) Fresh() bool { return r.Rule == shelf.Rule && len(r.Summary) > 0 }

// Stored reads the summary in a record, when it is a fresh one.
func (r Record) Stored() (s Summary, ok bool) {
	ok = r.Fresh() && json.Unmarshal(r.Summary, &s) == nil
	return s, ok
}

// With is the record with a summary in it.
func (r Record) With(s Summary) (Record, error) {
	b, err := json.Marshal(s)
	r.Rule, r.Summary = shelf.Rule, b
	return r, err
}

// Summary is the shelf's line of a smelt.
type Summary = shelf.Summary

// Summariser makes the summary of a smelt from its entries; nil leaves all but
// id, number of entries and head empty.
type Summariser func(stream string, entries []entry.Entry) Summary

// Of makes a stream's summary from its lines. A line that cannot be read ends
// it there: the shelf shows what it can.
func (f Summariser) Of(stream string, lines [][]byte, rec Record) Summary {
	var s Summary
	if f != nil {
		entries, _ := twin.DecodeAll(stream, "", lines)
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
