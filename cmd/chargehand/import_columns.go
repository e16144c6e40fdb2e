package main

import (
	"bufio"
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
	"time"

	"github.com/charmbracelet/x/term"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/mapcsv"
)

// others is how a log with columns of its own is read.
type others struct {
	columns, save, begin string
	preview, yes         bool
	mapping              entry.Mapping
}

func (o *others) flags(flags *flag.FlagSet) {
	flags.StringVar(&o.columns, "columns", "", words.FlagColumns+mapcsv.Names())
	flags.StringVar(&o.save, "save", "", words.FlagSaveMapping)
	flags.StringVar(&o.begin, "begin", "00:00", words.FlagBegin)
	flags.BoolVar(&o.preview, "preview", false, words.FlagPreview)
	flags.BoolVar(&o.yes, "yes", false, words.FlagYes)
}

func (o *others) asked() bool { return o.columns != "" }

// read turns the file into our table and shows what was read of it; it goes on to keep it
// when that is asked for, or when somebody at a terminal says yes.
func (o *others) read(w world, c common, in **bufio.Reader, path string) (goesOn bool, err error) {
	if err := o.named(w, c); err != nil {
		return false, err
	}
	begin, err := time.Parse(words.Clock, o.begin)
	if err != nil {
		return false, wrongUse{errors.New(words.BadBegin(o.begin))}
	}
	t, err := mapcsv.Read(*in, path, o.mapping.Columns, begin.Hour()*60+begin.Minute())
	if err != nil {
		return false, err
	}
	shown := w.out
	if c.json && !o.preview {
		shown = w.err
	}
	showTable(shown, t)
	*in = bufio.NewReader(bytes.NewReader(t.CSV))
	switch {
	case o.preview:
		_, err := fmt.Fprintln(shown, words.PreviewOnly)
		return false, err
	case o.yes:
		return true, nil
	case !term.IsTerminal(w.in.Fd()):
		return false, errors.New(words.ImportWantsYes)
	}
	fmt.Fprint(w.out, words.AskImport)
	answer, _ := bufio.NewReader(w.in).ReadString('\n')
	if goesOn = strings.EqualFold(strings.TrimSpace(answer), "y"); !goesOn {
		fmt.Fprintln(w.out, words.NothingImported)
	}
	return goesOn, nil
}

// named finds the mapping: as it is written, or one of the house by its name.
func (o *others) named(w world, c common) error {
	if strings.Contains(o.columns, "=") {
		columns, err := mapcsv.Parse(o.columns)
		if err != nil {
			return wrongUse{err}
		}
		o.mapping = entry.Mapping{Name: o.save, Columns: columns}
		return nil
	}
	h, err := theHouse(w, c)
	if err != nil {
		return err
	}
	m, ok := h.Mappings[o.columns]
	if !ok {
		var have []string
		for name := range h.Mappings {
			have = append(have, name)
		}
		return errors.New(words.NoSuchMapping(o.columns, have))
	}
	o.mapping = m
	return mapcsv.Check(m.Columns)
}

// keep saves the mapping under the name that was given, once the log is taken in.
func (o *others) keep(book *persist.Book, at time.Time) {
	if o.save == "" || !o.asked() {
		return
	}
	o.mapping.Name = o.save
	book.Keep(entry.Entry{Version: entry.Version, Stream: entry.House, Happened: entry.Wall(at), Event: o.mapping})
}

// showTable prints the first rows as they stood and as they are read, and the totals.
func showTable(out io.Writer, t mapcsv.Table) {
	for _, r := range t.Shown {
		fmt.Fprintln(out, words.RowTheirs(r.Line, r.Theirs))
		fmt.Fprintln(out, words.RowOurs(r.Ours))
	}
	fmt.Fprintln(out, words.RowsRead(t.Rows))
	for _, c := range t.Totals {
		fmt.Fprintln(out, words.ColumnRead(c.Theirs, c.Unit, c.Ours, c.Our, c.N, c.Sum, c.Middle))
		if c.Beyond {
			fmt.Fprintln(out, words.ColumnDoubt(c.Theirs, c.Middle, c.Our, c.Doubt))
		}
	}
	if len(t.Left) > 0 {
		fmt.Fprintln(out, words.ColumnsLeft(t.Left))
	}
}
