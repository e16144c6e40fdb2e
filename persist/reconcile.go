package persist

import (
	"cmp"
	"errors"
	"slices"
	"strconv"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// agreed is what the copies of a stream come to, once they say the same.
type agreed struct {
	Reading
	twin *twin.Twin // ready for appending
	rec  boltfile.Record
	said []string // what was put right, one sentence each
}

// told is what was put right, with the stream named.
func (a agreed) told(stream string) (all []string) {
	for _, said := range a.said {
		all = append(all, words.OfStream(stream, said))
	}
	return all
}

func (a *agreed) say(said string) { a.said = append(a.said, said) }

// reconcile makes the book and the twin of a stream say what all of its copies come
// to together. What has to give way is set aside beside the twin, and a whole chain
// that parts from the stream becomes one of its own.
func (s store) reconcile(stream string) (a agreed, err error) {
	c, err := s.gather(stream)
	if err != nil {
		return a, err
	}
	if c.text.Unread != nil && !errors.Is(c.text.Unread, disk.ErrNoFile) && (c.fault != nil || len(c.book) == 0) && !s.rescues() {
		return a, c.text.Unread // nothing vouches for what it may hold
	}
	a.Reading = c.judge(stream)
	if len(a.Lines) == 1 && twin.LastSeq(a.Lines) > 1 && len(c.book)+len(c.text.Lines) == 0 {
		a.Reading = Reading{Union: twin.Union{Loose: 1}} // one stray line that names a stream of which there is nothing else
	}
	if a.alone != nil {
		a.say(a.alone.Error())
	}
	for _, other := range a.Others {
		second, err := s.keepSecond(stream, other)
		if err != nil {
			return a, err
		}
		if second != "" {
			a.say(words.MendedSecond(second, len(other)))
		}
	}
	a.rec = c.counted(a.Reading)
	if err := s.mendBook(stream, c, &a); err != nil {
		return a, err
	}
	a.twin, err = twin.Mend(s.folder, stream, c.text, a.Lines, s.openTwin, a.say)
	return a, err
}

// rescues tells whether lines of a file that is no book any more are brought into a new one:
// that is told as a whole.
func (s store) rescues() bool { return s.found != nil }

// counted is the record of what the copies come to. Numbers are not given twice: where all
// lines are lost, or the last with its hash, it goes on from what was counted.
func (c copies) counted(r Reading) boltfile.Record {
	rec := boltfile.RecordOf(r.Lines, r.Gaps)
	if len(r.Lines) == 0 {
		rec = c.record
	}
	if rec.Head == "" && rec.Length == c.record.Length {
		rec.Lost = cmp.Or(c.record.Head, c.record.Lost)
	}
	return rec
}

// mendBook brings into the book what it lacks of what the copies come to, sets aside what
// has to give way, and says so.
func (s store) mendBook(stream string, c copies, a *agreed) error {
	kept := twin.SamePrefix(c.book, a.Lines)
	givesWay := kept < len(c.book)
	switch {
	case givesWay:
		aside, err := setAside(s.folder, stream, c.book)
		if err != nil {
			return err
		}
		if len(a.Gaps) > len(c.record.Gaps) {
			a.say(words.MendedGap(a.Gaps[len(a.Gaps)-1], aside))
		} else {
			a.say(words.MendedByTwin(int(twin.LastSeq(c.book[:kept]))+1, len(a.Lines), aside))
		}
	case s.rescues():
	case len(a.Lines) > kept:
		a.say(words.MendedFromTwin(len(a.Lines) - kept))
	case c.fault != nil:
		a.say(words.MendedCount(len(c.book), c.record.Length))
	}
	if givesWay || !c.own {
		kept = 0
	}
	if givesWay || len(a.Lines) > kept || c.fault != nil || !c.own && a.rec.Length > 0 {
		return s.put(stream, a.Lines[kept:], a.rec, givesWay && c.own)
	}
	return nil
}

// put adds lines to a stream of the book, or puts them in the place of what it has,
// and writes its record.
func (s store) put(stream string, lines [][]byte, rec boltfile.Record, replace bool) error {
	return s.book().Update(func(tx boltfile.Tx) error {
		if replace {
			return tx.Replace(stream, lines, rec)
		}
		return tx.PutLines(stream, lines, rec)
	})
}

// setAside writes lines of the book that have to give way to a file beside the
// twin.
func setAside(folder, stream string, lines [][]byte) (aside string, err error) {
	d, err := twin.NewDraft(folder, stream, lines)
	if err != nil {
		return "", err
	}
	return d.SetAside()
}

// keepSecond keeps a whole chain that parts from a stream as a stream of its own;
// its name is empty where it is kept already.
func (s store) keepSecond(stream string, lines [][]byte) (second string, err error) {
	names, err := s.streams()
	if err != nil {
		return "", err
	}
	for _, n := range names {
		if twin.OfStream(n, stream) && n != stream {
			if had, _ := s.read(n); twin.SamePrefix(had.Lines, lines) == len(lines) {
				return "", nil
			}
		}
	}
	second = secondName(stream, names)
	if err := twin.Write(s.folder, second, lines, true); err != nil {
		return "", err
	}
	return second, s.put(second, lines, boltfile.RecordOf(lines, nil), false)
}

// secondName is what a second chain of a stream is called.
func secondName(name string, taken []string) string {
	for n := 2; ; n++ {
		if second := name + "-" + strconv.Itoa(n); !slices.Contains(taken, second) {
			return second
		}
	}
}
