package boltfile

import (
	"bytes"
	"encoding/json"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/persist/twin"
)

// Record is what the book holds of a stream beside its lines.
type Record struct {
	Length  uint64          `json:"length"`              // entries
	Bytes   int64           `json:"bytes"`               // of its lines in the twin
	Head    string          `json:"head"`                // hash of the last line
	Lost    string          `json:"lost_head,omitempty"` // that of the last entry, where the end is lost and Head is empty
	UID     string          `json:"uid,omitempty"`
	Source  string          `json:"source_hash,omitempty"`
	Gaps    []twin.Gap      `json:"gaps,omitempty"`    // entries that are lost for good
	Rule    int             `json:"rule,omitempty"`    // what made the summary
	Summary json.RawMessage `json:"summary,omitempty"` // left out when entries came since
}

// RecordOf is the record of a stream that holds exactly the lines, and lacks what
// the gaps say.
func RecordOf(lines [][]byte, gaps []twin.Gap) Record {
	r := Record{Length: twin.LastSeq(lines), Bytes: twin.ByteCount(lines), Head: twin.HeadOf(lines), Gaps: gaps}
	if n := len(gaps); n > 0 && gaps[n-1].After == r.Length { // numbers are not given twice
		r.Length, r.Head = gaps[n-1].Before-1, ""
	}
	r.UID, r.Source = twin.Identity(lines)
	return r
}

// Speaks tells whether the record is that of the lines.
func (r Record) Speaks(lines [][]byte) bool {
	if r.Head == "" {
		return r.Length > twin.LastSeq(lines) && len(r.Gaps) > 0
	}
	return r.Length == twin.LastSeq(lines) && r.Head == twin.HeadOf(lines)
}

// Knows tells whether the record says of the gaps already that they are there.
func (r Record) Knows(gaps []twin.Gap) bool {
	for _, g := range gaps {
		if !slices.ContainsFunc(r.Gaps, func(k twin.Gap) bool {
			return k.After == g.After && k.Before == g.Before && (k.Head == g.Head || k.Head == "")
		}) {
			return false
		}
	}
	return true
}

// Marshal is the record as it is stored: sealed, since nothing else tells whether it
// was changed.
func (r Record) Marshal() ([]byte, error) {
	b, err := json.Marshal(r)
	if err != nil {
		return nil, err
	}
	return twin.Sealed(b), nil
}

// summaryMark is where the summary of a record begins. It stands last, and no name or
// text in front of it can hold the mark: a quotation mark has a backslash there.
const summaryMark = `,"summary":`

// parted gives what a record says beside its summary, and the summary, for which its
// sum vouches; false for one that was changed. Those of before have no sum.
func parted(b []byte) (head, summary []byte, ok bool) {
	intact, sealed := twin.Intact(b)
	if !intact || !sealed {
		return b, nil, intact
	}
	head, summary, _ = bytes.Cut(twin.Unsealed(b), []byte(summaryMark))
	return append(head[:len(head):len(head)], '}'), summary, true
}

// ReadRecord reads a stored record; false for one that was changed.
func ReadRecord(b []byte) (r Record, ok bool) {
	head, summary, ok := parted(b)
	if !ok || json.Unmarshal(head, &r) != nil {
		return Record{}, false
	}
	if summary != nil {
		r.Summary = bytes.Clone(summary)
	}
	return r, true
}

// Opened is what opening has to know of a stream: less than its record, since a large
// book has many.
type Opened struct {
	Bytes int64 `json:"bytes"` // as in Record, and so is the rule
	Rule  int   `json:"rule"`
	Fresh bool  `json:"-"` // it has a summary that stands for all of its entries
}

// openedAs reads that from a stored record; zero for one that was changed.
func openedAs(b []byte) (o Opened) {
	head, summary, ok := parted(b)
	if !ok || json.Unmarshal(head, &o) != nil {
		return Opened{}
	}
	o.Fresh = o.Rule == shelf.Rule && len(summary) > 0
	return o
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
