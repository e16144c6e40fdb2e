package persist

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"path/filepath"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
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
	where := f.File
	if f.Line > 0 {
		where += fmt.Sprintf(":%d", f.Line)
	}
	if f.Stream != "" && f.Seq > 0 {
		where += fmt.Sprintf(" (%s, entry %d)", f.Stream, f.Seq)
	} else if f.Stream != "" {
		where += " (" + f.Stream + ")"
	}
	return where + ": " + f.What + "; " + f.Do
}

// What to do about findings.
const (
	doOpen  = "open the book once with this program, which puts it right and sets aside what has to give way"
	doSave  = "copy book and twins to a safe place, then run: chargehand rescue"
	doMerge = "open the book once with this program, which merges it"
	doNewer = "read it with the newer version of the program"
	doRenew = "no entry is wrong: the summary is made anew when the smelt is next written to"
)

// maxPages bounds the findings about pages that are listed.
const maxPages = 20

// Check reads all of a book and its twins: the pages, the gapless sequences,
// the chains, that twin and book say the same, and the summaries. The error
// says why there was nothing to check: the book is held, or not there.
func Check(path string, opt Options) (Report, error) {
	opt = opt.filled()
	file := BookFile(path)
	r := Report{Path: file, Findings: []Finding{}}
	for _, small := range takeOvers(file) {
		r.add(Finding{File: small, What: "a small book that took over when the book could not be flushed is not merged yet", Do: doMerge})
	}
	v, err := openVault(file, true, opt.LockWait, opt.openBook)
	if err == nil {
		defer v.Close()
		if err = soundPages(file); err == nil { // bbolt would follow a bad page to the end of the program
			_, err = readMetaBucket(file, v)
		}
	}
	var bad *FileError
	gone := errors.Is(err, ErrMissing) && exists(TwinFolder(file))
	if errors.As(err, &bad) && (gone || errors.Is(bad.Kind, ErrDamaged)) {
		r.add(Finding{File: file, What: bad.What, Do: bad.Do})
		return r, r.checkTwinsAlone(TwinFolder(file))
	}
	if err != nil {
		return r, err
	}
	s := store{path: file, folder: TwinFolder(file), vault: &safeVault{path: file, vault: v}}
	r.checkPages(s)
	recs, err := s.records()
	if err != nil {
		r.add(Finding{File: file, What: "the summaries cannot be read: " + err.Error(), Do: doSave})
	}
	names, err := s.named(recs)
	if err != nil {
		r.add(Finding{File: file, What: err.Error(), Do: doSave})
	}
	for _, stream := range names {
		r.checkStream(s, stream, recs[stream], opt.Summarise)
	}
	return r, nil
}

func (r *Report) add(f Finding) { r.Findings = append(r.Findings, f) }

// named lists every stream that the records, the buckets or the twins name.
func (s store) named(recs map[string]record) ([]string, error) {
	all := map[string]bool{}
	sizes, err := twinSizes(s.folder)
	if err != nil {
		return sortedKeys(recs), err
	}
	for name := range recs {
		all[name] = true
	}
	for name := range sizes {
		all[name] = true
	}
	err = s.vault.View(func(tx *bolt.Tx) error {
		streams, err := top(tx, bucketStreams)
		if err != nil {
			return err
		}
		return streams.ForEachBucket(func(k []byte) error { all[string(k)] = true; return nil })
	})
	return sortedKeys(all), err
}

// checkPages runs bbolt's own check.
func (r *Report) checkPages(s store) {
	n := 0
	err := s.vault.View(func(tx *bolt.Tx) error {
		for err := range tx.Check() {
			if n++; n <= maxPages {
				r.add(Finding{File: s.path, What: err.Error(), Do: doSave})
			}
		}
		return nil
	})
	if err != nil {
		r.add(Finding{File: s.path, What: err.Error(), Do: doSave})
	}
}

// checkStream checks one stream in book and twin.
func (r *Report) checkStream(s store, stream string, rec record, f summariser) {
	here := Finding{Stream: stream, File: s.path}
	found := func(at Finding, seq int, what, do string) {
		at.Seq, at.What, at.Do = uint64(seq), what, do
		r.add(at)
	}
	lines, err := s.lines(stream)
	var gap *LineError
	var absent *NoStreamError
	switch {
	case errors.As(err, &gap):
		found(here, int(gap.Seq), gap.What, doOpen)
	case errors.As(err, &absent):
		found(here, 0, "the stream is in the twin alone", doOpen)
	case err != nil:
		found(here, 0, err.Error(), doSave)
		return
	}
	r.Streams++
	r.Entries += uint64(len(lines))
	if n, why := wholeChain(stream, lines); why != "" {
		found(here, n+1, why, doOpen)
	} else if gap == nil && rec.Length != uint64(len(lines)) {
		found(here, len(lines), fmt.Sprintf("%s here where %d were counted", entriesOf(len(lines)), rec.Length), doOpen)
	} else if gap == nil && rec.Head != headOf(lines) {
		found(here, len(lines), "the last entry is not the one that was kept", doOpen)
	}
	entries, err := decodeAll(stream, "", lines)
	if err != nil {
		do := doSave
		if errors.Is(err, entry.ErrNewer) {
			do = doNewer
		}
		found(here, len(entries)+1, errors.Unwrap(err).Error(), do)
	}
	r.checkTwin(s.folder, stream, lines)
	if sum, ok := rec.stored(); ok && f != nil && err == nil {
		made, _ := json.Marshal(f.of(stream, lines, rec))
		kept, _ := json.Marshal(sum)
		if !bytes.Equal(made, kept) {
			found(here, 0, "the summary does not agree with the entries", doRenew)
		}
	}
}

// checkTwin compares a twin with the lines of the book.
func (r *Report) checkTwin(folder, stream string, lines [][]byte) {
	text, err := readTwin(folder, stream)
	at := Finding{Stream: stream, File: segmentFile(folder, stream, max(text.segments, 1))}
	if err != nil {
		at.What, at.Do = err.Error(), doSave
		r.add(at)
		return
	}
	same := samePrefix(lines, text.lines)
	at.Seq = uint64(same + 1)
	switch {
	case same < len(text.lines):
		at.File, at.Line = text.at[same].file, text.at[same].line
		at.What, at.Do = "the line is not in the book as it stands here", doOpen
	case text.fault != "":
		at.File, at.Line = text.faultAt.file, text.faultAt.line
		at.What, at.Do = text.fault, doOpen
	case same < len(lines):
		at.What, at.Do = fmt.Sprintf("%s of the book missing in the twin", entriesOf(len(lines)-same)), doOpen
	case text.torn > 0:
		at.What, at.Do = "the last line is only half written", doOpen
	default:
		return
	}
	r.add(at)
}

// checkTwinsAlone checks the chains of the twins where the book cannot be read.
func (r *Report) checkTwinsAlone(folder string) error {
	sizes, err := twinSizes(folder)
	if err != nil {
		return err
	}
	for _, stream := range sortedKeys(sizes) {
		lines, err := twinLines(folder, stream)
		r.Streams++
		r.Entries += uint64(len(lines))
		var bad *LineError
		switch {
		case errors.As(err, &bad):
			r.add(Finding{Stream: stream, Seq: bad.Seq, File: bad.File, Line: bad.Line, What: bad.What, Do: doSave})
		case err != nil:
			r.add(Finding{Stream: stream, File: filepath.Join(folder, stream+twinExt), What: err.Error(), Do: doSave})
		}
	}
	return nil
}
