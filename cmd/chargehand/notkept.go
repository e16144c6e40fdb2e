package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/charmbracelet/x/term"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/twin"
)

// lastResort offers to write entries that could not be kept to another place,
// when the screen is left and somebody is there to say where.
func lastResort(w world, err error) {
	lost := new(persist.NotKeptError)
	if !errors.As(err, &lost) || len(lost.Entries) == 0 || !term.IsTerminal(w.in.Fd()) {
		return
	}
	offer(w.in, w.err, lost.Entries)
}

// offer asks for a file until the entries are written to one, or the answer is
// empty.
func offer(in io.Reader, out io.Writer, entries []entry.Entry) {
	answers := bufio.NewScanner(in)
	for {
		fmt.Fprint(out, words.WhereElse(len(entries)))
		if !answers.Scan() || strings.TrimSpace(answers.Text()) == "" {
			fmt.Fprintln(out)
			return
		}
		path := strings.TrimSpace(answers.Text())
		err := writeElsewhere(path, entries)
		if err == nil {
			fmt.Fprintln(out, words.WrittenElsewhere(len(entries), path))
			return
		}
		fmt.Fprintln(out, words.OneLine(words.CannotWrite(path, err)))
	}
}

// writeElsewhere writes entries as lines of a journal to a file that is not there
// yet, as rescue --take reads them.
func writeElsewhere(path string, entries []entry.Entry) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	type end struct {
		seq  uint64
		hash string
	}
	last := map[string]end{}
	for _, e := range entries {
		if e.Seq == 0 { // it was not numbered yet
			e.Version, e.Seq, e.Prev = entry.Version, last[e.Stream].seq+1, last[e.Stream].hash
		}
		line, eerr := entry.Encode(e)
		if eerr == nil {
			line = twin.Sealed(line)
			_, eerr = f.Write(append(line, '\n'))
		}
		last[e.Stream] = end{e.Seq, twin.HashOf(line)}
		err = errors.Join(err, eerr)
	}
	err = errors.Join(err, f.Sync(), f.Close())
	if err != nil {
		_ = os.Remove(path)
	}
	return err
}
