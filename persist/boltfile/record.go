package boltfile

import (
	"encoding/json"
	"slices"

	"chargehand/persist/twin"
)

// Record is what the book holds of a stream beside its lines.
type Record struct {
	Length uint64     `json:"length"`              // entries
	Bytes  int64      `json:"bytes"`               // of its lines in the twin
	Head   string     `json:"head"`                // hash of the last line
	Lost   string     `json:"lost_head,omitempty"` // that of the last entry, where the end is lost and Head is empty
	UID    string     `json:"uid,omitempty"`
	Source string     `json:"source_hash,omitempty"`
	Gaps   []twin.Gap `json:"gaps,omitempty"` // entries that are lost for good
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

// ReadRecord reads a stored record; false for one that was changed. Those of before have
// no sum.
func ReadRecord(b []byte) (r Record, ok bool) {
	if intact, _ := twin.Intact(b); !intact || json.Unmarshal(b, &r) != nil {
		return Record{}, false
	}
	return r, true
}
