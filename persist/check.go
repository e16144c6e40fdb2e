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
	var meta boltfile.Meta
	book, err := opt.openSound(file)
	if err == nil {
		defer book.Close()
		meta, err = book.Meta()
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
	folder := twin.Find(file, meta.UID)
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
	if book.OneHead {
		r.add(Finding{File: book.Path, What: words.FileOneHead, Do: words.FindingOpen})
	}
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

// checkStream checks one stream in book and twin.
func (r *Report) checkStream(book *boltfile.File, folder, stream string, f boltfile.Summariser, g *gauge) {
	if book == nil {
		r.checkText(folder, stream, g)
		return
	}
	here := Finding{Stream: stream, File: book.Path}
	found := func(at Finding, seq uint64, what, do string) {
		at.Seq, at.What, at.Do = seq, what, do
		r.add(at)
	}
	rec, lines, err := book.Stream(stream)
	if err != nil {
		found(here, 0, err.Error(), words.FindingSave)
		return
	}
	r.Streams++
	r.Entries += uint64(len(lines))
	defer g.add(lines)
	var bad *twin.LineError
	if len(lines) == 0 {
		found(here, 0, words.FoundTwinOnly, words.FindingOpen)
	} else if _, fault := (copies{record: rec, book: lines}).whole(stream); errors.As(fault, &bad) {
		found(here, bad.Seq, bad.What, words.FindingOpen)
	}
	entries, err := twin.DecodeAll(stream, "", lines)
	if errors.As(err, &bad) {
		do := words.FindingSave
		if errors.Is(err, entry.ErrNewer) {
			do = words.FindingNewer
		}
		found(here, bad.Seq, bad.What, do)
	}
	r.checkTwin(folder, stream, lines)
	if sum, ok := rec.Stored(); ok && f != nil && len(entries) == len(lines) {
		made, _ := json.Marshal(f.Of(stream, lines, rec))
		kept, _ := json.Marshal(sum)
		if !bytes.Equal(made, kept) {
			found(here, 0, words.FoundSummary, words.FindingRenew)
		}
	}
}

// checkTwin compares a twin with the lines of the book.
func (r *Report) checkTwin(folder, stream string, lines [][]byte) {
	text := twin.Read(folder, stream)
	at := Finding{Stream: stream, File: text.File}
	if text.Unread != nil {
		at.What, at.Do = text.Unread.Error(), words.FindingOpen
		r.add(at)
		return
	}
	same := twin.SamePrefix(lines, text.Lines)
	at.Seq = twin.LastSeq(lines[:same]) + 1
	switch {
	case same < len(text.Lines):
		at.Line = same + 1
		at.What, at.Do = words.FoundNotHere, words.FindingOpen
	case text.Fault != "":
		at.Line = len(text.Lines) + 1
		at.What, at.Do = text.Fault, words.FindingOpen
	case same < len(lines):
		at.What, at.Do = words.FoundBehind(len(lines)-same), words.FindingOpen
	case len(text.Torn) > 0:
		at.What, at.Do = words.FoundTorn, words.FindingOpen
	default:
		return
	}
	r.add(at)
}

// checkText checks the chain of a twin by itself.
func (r *Report) checkText(folder, stream string, g *gauge) {
	lines, _, err := twin.Read(folder, stream).Verified(stream)
	r.Streams++
	r.Entries += uint64(len(lines))
	g.add(lines)
	at := Finding{Stream: stream, Do: words.FindingSave}
	var bad *twin.LineError
	switch {
	case errors.As(err, &bad):
		at.Seq, at.File, at.Line, at.What = bad.Seq, bad.File, bad.Line, bad.What
	case err != nil:
		at.File, at.What = twin.TextFile(folder, stream), err.Error()
	default:
		return
	}
	r.add(at)
}
