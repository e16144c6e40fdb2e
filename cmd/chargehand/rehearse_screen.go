package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"chargehand/model/rehearse"
	"chargehand/model/shelf"
	"chargehand/persist"
	"chargehand/tui"
	"chargehand/tui/screen"
)

// practicePath is where rehearsals are kept: in a book of their own beside the person's.
func practicePath(book string) string {
	return strings.TrimSuffix(book, filepath.Ext(book)) + ".practice" + filepath.Ext(book)
}

// rehearseOnScreen runs a rehearsal on the screen until it is left, and then others that it is left for; gone when the terminal
// is gone too. One that was held goes on, unless a fresh one is wanted.
func rehearseOnScreen(w world, c common, r screen.Rehearse) (gone bool, err error) {
	for {
		l, err := openRehearsal(w, c, r)
		if err != nil || l.rehearsal == nil {
			return l.gone, err
		}
		r = *l.rehearsal
	}
}

func openRehearsal(w world, c common, r screen.Rehearse) (left, error) {
	out, err := readyTerminal(w)
	if err != nil {
		return left{}, err
	}
	path, err := bookPath(c, w.getenv)
	if err != nil {
		return left{}, err
	}
	acks := make(chan persist.Ack, 1024)
	book, err := persist.Open(practicePath(path), persist.Options{Clock: w.clock, AsStamped: true, Summarise: shelf.Of, Acked: func(a persist.Ack) { acks <- a }})
	if err != nil {
		return left{}, err
	}
	store := shelfStore{book}
	stream, held, err := rehearsalOn(w, book, r)
	if err != nil {
		return left{}, errors.Join(err, shut(w, book))
	}
	seconds, err := standsAt(book, stream)
	if err != nil {
		return left{}, errors.Join(err, shut(w, book))
	}
	cfg := configOf(w, c, out, store, store.Path(), rehearse.Moment(seconds))
	cfg.Rehearsal = stream
	model, keys := tui.Rehearsal(tui.New(cfg), store, seconds, held)
	return runScreen(w, out, book, acks, model, keys)
}

// rehearsalOn is the smelt to rehearse: the one that was held, else a new one.
func rehearsalOn(w world, book *persist.Book, r screen.Rehearse) (stream string, held bool, err error) {
	smelts, err := book.Summaries()
	if err != nil {
		return "", false, err
	}
	newest, last := "", 0
	count := 0
	for _, s := range smelts {
		var k int
		var number int64
		if _, err := fmt.Sscanf(s.ID, rehearsalName, &k, &number); err != nil {
			continue
		}
		count = max(count, k)
		if s.Unfinished() && k > last {
			newest, last = s.ID, k
		}
	}
	if newest != "" && !r.Fresh {
		return newest, true, nil
	}
	if r.Number == 0 {
		r.Number = anyFurnace(w)
	}
	mishaps, chosen, err := mishapsOf(r.Mishap, r.Number)
	if err != nil {
		return "", false, err
	}
	stream = fmt.Sprintf(rehearsalName, count+1, r.Number)
	entries, err := rehearse.Begin(rehearse.Beginning{Number: r.Number, Mishaps: mishaps, Chosen: chosen, Stream: stream, UnderWay: r.UnderWay})
	if err != nil {
		return "", false, err
	}
	lines, err := persist.LinesOf(entries)
	if err != nil {
		return "", false, err
	}
	return stream, false, book.ImportJSON(persist.Journal{Stream: stream, Lines: lines})
}

// rehearsalName is a rehearsal by its count and the number of its furnace.
const rehearsalName = "rehearsal-%d-furnace-%d"

// standsAt is where the clock of a rehearsal stands: at its last entry.
func standsAt(book *persist.Book, stream string) (seconds float64, err error) {
	entries, err := book.Entries(stream)
	for _, e := range entries {
		seconds = max(seconds, rehearse.SecondsOf(e))
	}
	return seconds, err
}
