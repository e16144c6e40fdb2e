package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/invented"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/disk"
	"chargehand/persist/logcsv"
)

func exportCommand() command {
	return command{name: "export", usage: "SMELT", does: words.ExportDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		to := flags.String("out", "", words.FlagOut)
		folder := flags.String("package", "", words.FlagPackage)
		replace := flags.Bool("replace", false, words.FlagReplace)
		return func(w world, c common, operands []string) error {
			name, err := one(operands, words.ASmelt)
			if err != nil {
				return err
			}
			switch {
			case *folder != "" && *to != "":
				return wrongUse{errors.New(words.PackageOutTo)}
			case *folder != "":
				return exportPackage(w, c, name, *folder, *replace)
			}
			put := func(out io.Writer) error { return exportCSV(w, c, name, out) }
			if c.json {
				put = func(out io.Writer) error { return exportJSON(w, c, name, out) }
			}
			if *to == "" {
				return put(w.out)
			}
			return writeWhole(w, c, *to, *replace, put)
		}
	}}
}

// exportJSON writes the journal's own lines: exact.
func exportJSON(w world, c common, name string, out io.Writer) error {
	if demo, err := invented.Smelt(); err == nil && len(demo) > 0 && demo[0].Stream == name { // it stands in no book
		lines, err := persist.LinesOf(demo)
		if err != nil {
			return err
		}
		return persist.ExportJSON(out, lines)
	}
	r, err := reader(w, c)
	if err != nil {
		return err
	}
	stream, err := match(r, name)
	if err != nil {
		return err
	}
	defer tellFaults(w, r)
	smelt, err := r.Read(stream)
	if err != nil {
		return err
	}
	return persist.ExportJSON(out, smelt.Lines)
}

// exportCSV writes the entries in force as a log, and says what had no place.
func exportCSV(w world, c common, name string, out io.Writer) error {
	entries, err := smelt(w, c, name)
	if err != nil {
		return err
	}
	lost, err := logcsv.Write(out, resolved(entries))
	if err == nil && lost != (logcsv.Lost{}) {
		fmt.Fprintln(w.err, words.LostInCSV(lost.Entries, lost.Partly))
	}
	return err
}

// resolved gives the entries in force as plain entries: amended events and
// times in place.
func resolved(entries []entry.Entry) []entry.Entry {
	lit := fold.Fold(entries, fold.All, 0).Lit
	var out []entry.Entry
	s := session.Open("", entries)
	for _, l := range fold.InForce(entries, fold.All) {
		e := l.Entry
		e.Event, e.Happened, e.Uncertain, e.Sure = l.Event, lit.Add(l.At), l.Uncertain, s.Sure(l)
		out = append(out, e)
	}
	return out
}

// writeWhole writes a file under another name first, so that a file is there
// whole or not at all. The book and its twins are never written over, another file
// only when asked.
func writeWhole(w world, c common, path string, replace bool, put func(io.Writer) error) (err error) {
	book, err := bookPath(c, w.getenv)
	if err != nil {
		return err
	}
	switch err := disk.Regular(path); {
	case persist.Owns(book, path):
		return errors.New(words.OwnFile(path))
	case err == nil && !replace:
		return errors.New(words.FileExists(path))
	case errors.Is(err, disk.ErrNoFile):
		return errors.New(words.CannotWrite(path, err))
	}
	f, err := os.CreateTemp(filepath.Dir(path), filepath.Base(path)+".*.part")
	if err != nil {
		return fmt.Errorf("%s", words.CannotWrite(path, err))
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	if err := put(f); err != nil {
		f.Close()
		return err
	}
	if err := f.Sync(); err != nil {
		f.Close()
		return fmt.Errorf("%s", words.CannotWrite(path, err))
	}
	if err := f.Close(); err != nil {
		return fmt.Errorf("%s", words.CannotWrite(path, err))
	}
	if err := os.Rename(f.Name(), path); err != nil {
		return fmt.Errorf("%s", words.CannotWrite(path, err))
	}
	_, err = fmt.Fprintln(w.out, words.Written(path))
	return err
}
