package entry

import (
	"encoding/json"
	"time"
)

// Estimate is a quantity with its spread, as it was reckoned and kept: the 10th,
// 50th and 90th percentile, the unit, and what it rests on. One that is unknown
// has no numbers.
type Estimate struct {
	P10   Maybe[Number] `json:"p10,omitzero"`
	P50   Maybe[Number] `json:"p50,omitzero"`
	P90   Maybe[Number] `json:"p90,omitzero"`
	Unit  string        `json:"unit"`
	Basis Basis         `json:"basis"`
}

func (e Estimate) trouble() string {
	if e.P10.Known && e.P50.Known && e.P10.Value > e.P50.Value || e.P50.Known && e.P90.Known && e.P50.Value > e.P90.Value {
		return "has percentiles that do not rise"
	}
	return ""
}

// Basis is what a quantity rests on.
type Basis string

// What a quantity can rest on.
const (
	BasisMeasured  Basis = "measured"
	BasisEstimated Basis = "estimated"
	BasisAssumed   Basis = "assumed" // published or usual, not of this thing
	BasisGuessed   Basis = "guessed" // only defaults behind it
	BasisUnknown   Basis = "unknown"
)

// When is a wall time within an event, to the millisecond; on the wire as those
// of the frame.
type When struct{ time.Time }

// MarshalJSON writes the time as the frame's are written.
func (w When) MarshalJSON() ([]byte, error) { return json.Marshal(formatTime(w.Time)) }

// UnmarshalJSON reads a time as the frame's are read.
func (w *When) UnmarshalJSON(b []byte) error {
	var s string
	if err := json.Unmarshal(b, &s); err != nil {
		return err
	}
	t, err := parseTime(s)
	w.Time = t
	return err
}

func (w When) trouble() string {
	if y := w.Year(); y < 1 || y > 9999 {
		return "is in no year of four digits"
	}
	return ""
}
