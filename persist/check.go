package persist

import (
	"bytes"
	"encoding/json"
	"errors"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Report is what a check of a book has found. It changes nothing.
type Report struct {
	Path     string    `json:"path"`
	Streams  int       `json:"streams"`
	Entries  uint64    `json:"entries"`
	Findings []Finding `json:"findings"`
}

// OK tells whether nothing is wrong.
func (r Report) OK() bool { return len(r.Findings) == 0 }

// Finding is one thing that is wrong: what, where, and what to do.
type Finding struct {
	Stream string `json:"stream,omitempty"`
	Seq    uint64 `json:"seq,omitempty"`
	File   string `json:"file"`
	Line   int    `json:"line,omitempty"`
	What   string `json:"what"`
	Do     string `json:"do"`
}

func (f Finding) String() string {
	return words.Found(f.File, f.Line, f.Stream, f.Seq, f.What, f.Do)
}

// Check reads all of a book and its twins: the pages, the gapless sequences,
// the chains, that twin and book say the same, and the summaries. The error
// says why there was nothing to check: the book is held, or not there.
func Check(path string, opt Options) (Report, error) {
	opt = opt.filled()
	file := boltfile.BookFile(path)
	r := Report{Path: file, Findings: []Finding{}}
	s, uid := storeOf(file), ""
	book, err := opt.openSound(file)
	if err == nil {
		defer book.Close()
		uid = book.Meta.UID
		s.replace(book)
	}
	var bad *disk.FileError
	gone := errors.Is(err, disk.ErrMissing) && disk.Exists(twin.Find(file, ""))
	switch {
	case errors.As(err, &bad) && (gone || errors.Is(bad.Kind, disk.ErrDamaged)):
		r.add(Finding{File: file, What: bad.What, Do: bad.Do})
	case err != nil:
		return r, err
	}
	s.folder = twin.Find(file, uid)
	names, err := s.streams()
	if err != nil {
		r.add(Finding{File: file, What: err.Error(), Do: words.FindingSave})
	}
	done := opt.gauge(s.folder)
	for _, stream := range names {
		done(r.checkStream(s, stream, opt.Summarise))
	}
	done(nil)
	return r, nil
}

func (r *Report) add(f Finding) { r.Findings = append(r.Findings, f) }

// checkStream checks one stream in book and twin, or, without a book, the twin by
// itself, and gives its lines.
func (r *Report) checkStream(s store, stream string, f Summariser) (lines [][]byte) {
	c, err := s.gather(stream)
	at, do := Finding{Stream: stream, File: s.path}, words.FindingOpen
	var fault error
	switch {
	case err != nil:
		r.fault(at, err, words.FindingSave)
		return nil
	case s.book() == nil:
		r := c.judge(stream)
		lines, fault = r.Lines, disk.Both(r.Fault, r.alone)
		at.File, do = c.text.File, words.FindingSave
	case len(c.book) == 0 && len(c.text.Lines) > 0:
		fault = errors.New(words.FoundTwinOnly)
	default:
		lines = c.book
		fault = c.fault
	}
	r.Streams++
	r.Entries += uint64(len(lines))
	r.fault(at, fault, do)
	if s.book() == nil {
		return lines
	}
	entries, err := twin.DecodeAll(stream, "", lines)
	if do = words.FindingSave; errors.Is(err, entry.ErrNewer) {
		do = words.FindingNewer
	}
	r.fault(at, err, do)
	r.fault(at, c.inTwin(), words.FindingOpen)
	if sum, ok := s.stored(stream, c.record, 0); ok && f != nil && err == nil && len(entries) == len(lines) {
		made, _ := json.Marshal(f.of(stream, lines, c.record))
		kept, _ := json.Marshal(sum)
		if !bytes.Equal(made, kept) {
			r.fault(at, errors.New(words.FoundSummary), words.FindingRenew)
		}
	}
	return lines
}

// fault adds what is wrong with a line, or with all of a stream; nothing for nil.
func (r *Report) fault(at Finding, fault error, do string) {
	if fault == nil {
		return
	}
	at.What, at.Do = fault.Error(), do
	if bad := new(twin.LineError); errors.As(fault, &bad) {
		at.Seq, at.What = bad.Seq, bad.What
		if bad.File != "" {
			at.File, at.Line = bad.File, bad.Line
		}
	}
	r.add(at)
}
