package persist

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"slices"

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

// maxPages bounds the findings about pages that are listed.
const maxPages = 20

// Check reads all of a book and its twins: the pages, the gapless sequences,
// the chains, that twin and book say the same, and the summaries. The error
// says why there was nothing to check: the book is held, or not there.
func Check(path string, opt Options) (Report, error) {
	opt = opt.filled()
	file := boltfile.BookFile(path)
	r := Report{Path: file, Findings: []Finding{}}
	for _, small := range boltfile.TakeOvers(file) {
		r.add(Finding{File: small, What: words.FoundTakeOver, Do: words.FindingMerge})
	}
	uid := ""
	book, err := opt.openSound(file)
	if err == nil {
		defer book.Close()
		uid = book.Meta.UID
	}
	var bad *disk.FileError
	gone := errors.Is(err, disk.ErrMissing) && disk.Exists(twin.Find(file, ""))
	switch {
	case errors.As(err, &bad) && (gone || errors.Is(bad.Kind, disk.ErrDamaged)):
		r.add(Finding{File: file, What: bad.What, Do: bad.Do})
		book = nil
	case err != nil:
		return r, err
	default:
		r.checkPages(book)
	}
	folder := twin.Find(file, uid)
	names, err := named(book, folder)
	if err != nil {
		r.add(Finding{File: file, What: err.Error(), Do: words.FindingSave})
	}
	g := opt.gauge(folder, 0)
	for _, stream := range names {
		r.checkStream(book, folder, stream, opt.Summarise, g)
	}
	g.end()
	return r, nil
}

func (r *Report) add(f Finding) { r.Findings = append(r.Findings, f) }

// named lists every stream that the book, where it can be read, or the twins have.
func named(book *boltfile.File, folder string) ([]string, error) {
	sizes, err := twin.Sizes(folder)
	names := slices.Collect(maps.Keys(sizes))
	if book != nil {
		recs, berr := book.Records()
		names, err = slices.AppendSeq(names, maps.Keys(recs)), disk.Both(err, berr)
	}
	slices.Sort(names)
	return slices.Compact(names), err
}

// checkPages runs bbolt's own check.
func (r *Report) checkPages(book *boltfile.File) {
	n := 0
	err := book.View(func(tx boltfile.Tx) error {
		tx.Check(func(err error) {
			if n++; n <= maxPages {
				r.add(Finding{File: book.Path, What: err.Error(), Do: words.FindingSave})
			}
		})
		return nil
	})
	if err != nil {
		r.add(Finding{File: book.Path, What: err.Error(), Do: words.FindingSave})
	}
}

// checkStream checks one stream in book and twin, or, without a book, the twin by
// itself.
func (r *Report) checkStream(book *boltfile.File, folder, stream string, f boltfile.Summariser, g *gauge) {
	c, do := copies{text: twin.Read(folder, stream)}, words.FindingSave
	at := Finding{Stream: stream, File: c.text.File}
	lines, _, fault := c.text.Verified(stream)
	if book != nil {
		at.File = book.Path
		var err error
		if c.record, c.book, err = book.Stream(stream); err != nil {
			at.What, at.Do = err.Error(), do
			r.add(at)
			return
		}
		lines, fault, do = c.book, nil, words.FindingOpen
		if len(lines) == 0 {
			fault = errors.New(words.FoundTwinOnly)
		} else {
			_, fault = c.whole(stream)
		}
	}
	r.Streams++
	r.Entries += uint64(len(lines))
	defer g.add(lines)
	r.fault(at, fault, do)
	if book == nil {
		return
	}
	entries, err := twin.DecodeAll(stream, "", lines)
	if do = words.FindingSave; errors.Is(err, entry.ErrNewer) {
		do = words.FindingNewer
	}
	r.fault(at, err, do)
	r.checkTwin(c)
	if sum, ok := c.record.Stored(); ok && f != nil && err == nil && len(entries) == len(lines) {
		made, _ := json.Marshal(f.Of(stream, lines, c.record))
		kept, _ := json.Marshal(sum)
		if !bytes.Equal(made, kept) {
			at.What, at.Do = words.FoundSummary, words.FindingRenew
			r.add(at)
		}
	}
}

// fault adds what is wrong with a line, or with all of a stream; nothing for nil.
func (r *Report) fault(at Finding, fault error, do string) {
	if fault == nil {
		return
	}
	at.What, at.Do = fault.Error(), do
	if bad := new(twin.LineError); errors.As(fault, &bad) {
		at.Seq, at.Line, at.What = bad.Seq, 0, bad.What
		if bad.File != "" {
			at.Line = bad.Line
		}
	}
	r.add(at)
}

// checkTwin compares a twin with the lines of the book.
func (r *Report) checkTwin(c copies) {
	lines, text := c.book, c.text
	same := twin.SamePrefix(lines, text.Lines)
	at := Finding{Stream: text.Stream, File: text.File, Do: words.FindingOpen, Seq: twin.LastSeq(lines[:same]) + 1}
	switch {
	case text.Unread != nil:
		at.Seq, at.What = 0, text.Unread.Error()
	case same < len(text.Lines):
		at.Line, at.What = same+1, words.FoundNotHere
	case text.Fault != "":
		at.Line, at.What = len(text.Lines)+1, text.Fault
	case same < len(lines):
		at.What = words.FoundBehind(len(lines) - same)
	case len(text.Torn) > 0:
		at.What = words.FoundTorn
	default:
		return
	}
	r.add(at)
}
