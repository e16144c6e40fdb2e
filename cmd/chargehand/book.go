package main

import (
	"errors"
	"fmt"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/shelf"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/twin"
)

// reader opens the book to read. It works while another program writes it.
func reader(w world, c common) (*persist.Reader, error) {
	path, err := bookPath(c, w.getenv)
	if err != nil {
		return nil, err
	}
	return persist.OpenReader(path, persist.Options{Summarise: shelf.Of})
}

// writer opens the book to write, and holds it.
func writer(w world, c common, acked func(persist.Ack)) (*persist.Book, error) {
	path, err := bookPath(c, w.getenv)
	if err != nil {
		return nil, err
	}
	return persist.Open(path, persist.Options{Clock: w.clock, Summarise: shelf.Of, Acked: acked, Progress: showProgress(w, c, words.Importing)})
}

// shut closes the book, and says what had to be put right in it meanwhile.
func shut(w world, book *persist.Book) error {
	err := book.Close()
	for _, said := range book.Mended() {
		fmt.Fprintln(w.err, "chargehand:", words.OneLine(said))
	}
	return err
}

// smelt finds the entries of a smelt by its name or the beginning of it. The
// demonstration smelt is found by its name though it stands in no book.
func smelt(w world, c common, name string) ([]entry.Entry, error) {
	entries, _, err := smeltWithGaps(w, c, name)
	return entries, err
}

// smeltWithGaps is smelt with what is lost of it. What was found to be wrong is
// said beside the output, which is as it was kept.
func smeltWithGaps(w world, c common, name string) ([]entry.Entry, []twin.Gap, error) {
	if demo, err := invented.Smelt(); err == nil && len(demo) > 0 && demo[0].Stream == name {
		return demo, nil, nil
	}
	r, err := reader(w, c)
	if err != nil {
		return nil, nil, err
	}
	defer tellFaults(w, r)
	stream, err := match(r, name)
	if err != nil {
		return nil, nil, err
	}
	reading, err := r.Read(stream)
	if err != nil {
		return nil, nil, err
	}
	entries, err := reading.Entries(stream)
	return entries, reading.Gaps, err
}

// tellFaults says what was found to be wrong while reading, each fault once, though a
// subcommand reads a smelt and the house.
func tellFaults(w world, r *persist.Reader) {
	for _, said := range r.Faults() {
		if !w.told[said] {
			fmt.Fprintln(w.err, "chargehand:", words.OneLine(said))
			w.told[said] = true
		}
	}
}

// match finds the one stream that a name or the beginning of one means; where none
// begins so, a part of one, such as the furnace.
func match(r *persist.Reader, name string) (string, error) {
	streams, err := r.Streams()
	if err != nil {
		return "", err
	}
	var found, hold []string
	for _, s := range streams {
		if s == name {
			return s, nil
		}
		if strings.HasPrefix(s, name) && s != entry.House {
			found = append(found, s)
		}
		if strings.Contains(s, name) && s != entry.House {
			hold = append(hold, s)
		}
	}
	if len(found) == 0 {
		found = hold
	}
	switch len(found) {
	case 0:
		return "", fmt.Errorf("%s", words.NoSuchSmelt(name, r.Path()))
	case 1:
		return found[0], nil
	}
	return "", errors.New(words.ManySuchSmelts(name, found))
}
