package entry

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"time"
)

// MaxBytes bounds one stored entry. A longer line is no entry of ours.
const MaxBytes = 1 << 20

// ErrNewer says that an entry was written by a newer version of the program
// whose frame this one cannot read. (A newer kind in a known frame is no
// error: it is kept as Unknown.)
var ErrNewer = errors.New("written by a newer version")

// wire is the frame of an entry. The order of the fields is the order on the
// line; changing it changes the bytes and with them the hash chain of new
// entries, which is allowed, but not of kept ones, which are never rewritten.
type wire struct {
	V          int             `json:"v"`
	Stream     string          `json:"stream"`
	Seq        uint64          `json:"seq"`
	Prev       string          `json:"prev,omitempty"`
	Happened   string          `json:"happened"`
	UncertainS float64         `json:"uncertain_s,omitempty"`
	Kept       string          `json:"kept,omitempty"`
	Boot       string          `json:"boot,omitempty"`
	MonoMs     int64           `json:"mono_ms,omitempty"`
	By         string          `json:"by,omitempty"`
	Screen     string          `json:"screen,omitempty"`
	Key        string          `json:"key,omitempty"`
	Group      string          `json:"group,omitempty"`
	Local      string          `json:"local,omitempty"`
	Sure       string          `json:"sure,omitempty"`
	From       Origin          `json:"from,omitzero"`
	Kind       Kind            `json:"kind,omitempty"`
	Event      json.RawMessage `json:"event,omitempty"`
}

// Encode gives the wire form of an entry: one line of JSON without the line's
// end.
func Encode(e Entry) ([]byte, error) {
	w := wire{
		V: Version, Stream: e.Stream, Seq: e.Seq, Prev: e.Prev, Happened: formatTime(e.Happened), UncertainS: e.Uncertain.Seconds(),
		Boot: e.Boot, MonoMs: e.Mono.Milliseconds(), By: e.By, Screen: e.Screen, Key: e.Key, Group: e.Group, Local: e.Local,
		Sure: e.Sure, From: e.From, Kind: e.Kind(),
	}
	if !e.Kept.IsZero() {
		w.Kept = formatTime(e.Kept)
	}
	var err error
	if w.Event, err = encodeEvent(e.Event); err != nil {
		return nil, err
	}
	return marshal(w)
}

// encodeEvent gives the bytes of an event, or none where it says no more than
// its kind.
func encodeEvent(ev Event) (json.RawMessage, error) {
	if ev == nil {
		return nil, nil
	}
	b, err := marshal(ev)
	if said := string(b); err != nil || said == "{}" || said == "null" {
		return nil, err
	}
	return b, nil
}

// marshal writes JSON with the letters of HTML left as they are.
func marshal(v any) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	err := enc.Encode(v)
	return bytes.TrimSuffix(b.Bytes(), []byte("\n")), err
}

// Decode reads one line of the journal. Bytes it does not understand are an
// error that says what is wrong; they are never half read.
func Decode(line []byte) (Entry, error) {
	if len(line) > MaxBytes {
		return Entry{}, fmt.Errorf("the line is %d bytes long; an entry has at most %d", len(line), MaxBytes)
	}
	var w wire
	if err := json.Unmarshal(line, &w); err != nil {
		return Entry{}, err
	}
	if w.V > Version {
		return Entry{}, fmt.Errorf("version %d: %w", w.V, ErrNewer)
	}
	if w.V < 1 || w.Stream == "" || w.Seq == 0 {
		return Entry{}, errors.New("not an entry: version, stream or sequence is missing")
	}
	e := Entry{
		Version: w.V, Stream: w.Stream, Seq: w.Seq, Prev: w.Prev, Uncertain: seconds(w.UncertainS),
		Boot: w.Boot, Mono: time.Duration(w.MonoMs) * time.Millisecond, By: w.By, Screen: w.Screen,
		Key: w.Key, Group: w.Group, Local: w.Local, Sure: w.Sure, From: w.From,
	}
	var err error
	if e.Happened, err = parseTime(w.Happened); err != nil {
		return Entry{}, fmt.Errorf("happened: %w", err)
	}
	if w.Kept != "" {
		if e.Kept, err = parseTime(w.Kept); err != nil {
			return Entry{}, fmt.Errorf("kept: %w", err)
		}
	}
	if e.Event, err = decodeEvent(w.Kind, w.Event); err != nil {
		return Entry{}, fmt.Errorf("%s: %w", w.Kind, err)
	}
	return e, nil
}

func decodeEvent(k Kind, raw json.RawMessage) (Event, error) {
	if k == "" {
		return nil, nil
	}
	if t, ok := rows[k]; ok {
		return t.decode(raw)
	}
	return Unknown{Name: k, Raw: bytes.Clone(raw)}, nil
}

// timeForm is RFC 3339 to the millisecond.
const timeForm = "2006-01-02T15:04:05.000Z07:00"

func formatTime(t time.Time) string { return t.Format(timeForm) }

func parseTime(s string) (time.Time, error) {
	t, err := time.Parse(time.RFC3339Nano, s)
	if err != nil {
		return time.Time{}, fmt.Errorf("%q is not a time like 2026-05-09T14:32:05.000+02:00", s)
	}
	return Wall(t), nil
}

// Wall strips a time to what the journal keeps: whole milliseconds and the
// offset, without the name of a zone and without the reading of a monotonic
// clock. Times on an entry are made with it, so that what is read back equals
// what was written.
func Wall(t time.Time) time.Time {
	t = t.Round(0).Truncate(time.Millisecond)
	_, off := t.Zone()
	if off == 0 {
		return t.UTC()
	}
	return t.In(time.FixedZone("", off))
}

// seconds turns seconds on the wire into a duration of whole milliseconds.
func seconds(s float64) time.Duration {
	if math.IsNaN(s) || s < 0 || s > 1e9 {
		return 0
	}
	return time.Duration(math.Round(s*1000)) * time.Millisecond
}
