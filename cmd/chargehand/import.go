package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/disk"
	"chargehand/tui/screen"
)

func importCommand() command {
	return command{name: "import", usage: "FILE", does: words.ImportDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		furnace := flags.String("furnace", "", words.FlagFurnace)
		date := flags.String("date", "", words.FlagDate)
		var measures measureList
		flags.Var(&measures, "measure", words.FlagMeasure)
		var o others
		o.flags(flags)
		return func(w world, c common, operands []string) error {
			path, err := one(operands, words.AFile)
			if err != nil {
				return err
			}
			take := func(book *persist.Book) (string, int, error) { return takePackage(w, book, path) }
			if _, err := os.Stat(filepath.Join(path, descriptor)); err != nil {
				if at, err := os.Stat(path); err == nil && at.IsDir() {
					return errors.New(words.FolderNoPackage(path, descriptor))
				}
				f, err := disk.Open(path)
				if err != nil {
					return fmt.Errorf("%s", words.CannotRead(path, err))
				}
				defer f.Close()
				in := bufio.NewReader(f)
				if start, _ := in.Peek(4); slices.Contains(workbooks, string(start)) {
					return errors.New(words.IsWorkbook(path))
				}
				if o.asked(in, path) {
					goesOn, err := o.read(w, c, &in, path)
					if err != nil || !goesOn {
						return err
					}
				}
				take = func(book *persist.Book) (string, int, error) {
					return takeIn(w, book, in, filepath.Base(path), *furnace, *date, measures)
				}
			}
			var refused error
			book, err := writer(w, c, func(a persist.Ack) {
				if len(a.Entries) > 0 {
					refused = errors.Join(refused, a.Err)
				}
			})
			if err != nil {
				return err
			}
			id, n, err := take(book)
			if err == nil {
				o.keep(book, w.clock().Wall)
			}
			err = errors.Join(err, shut(w, book)) // waits for what became of all
			if err := errors.Join(err, refused); err != nil {
				return err
			}
			if c.json {
				return json.NewEncoder(w.out).Encode(map[string]any{"smelt": id, "entries": n})
			}
			fmt.Fprintln(w.out, words.Imported(path, id, n))
			return tellDoubts(w, c, id)
		}
	}}
}

// workbooks are how the files begin in which spreadsheets keep more than a table: xlsx and
// ods (a zip archive), and xls (a compound file).
var workbooks = []string{"PK\x03\x04", "\xd0\xcf\x11\xe0"}

// takeIn reads a log or a journal and keeps it whole, or not at all.
func takeIn(w world, book *persist.Book, in *bufio.Reader, name, furnace, date string, measures []entry.Measure) (string, int, error) {
	if first, _ := in.Peek(1); len(first) == 1 && first[0] == '{' {
		j, err := persist.ReadJSON(in)
		if err != nil {
			return "", 0, err
		}
		return j.Stream, len(j.Lines), book.ImportJSON(j)
	}
	as := screen.TakenAs{Furnace: furnace, Measures: measures}
	if date != "" {
		var err error
		if as.Day, err = time.Parse(time.DateOnly, date); err != nil {
			return "", 0, wrongUse{errors.New(words.BadDate(date))}
		}
	}
	return takeLog(w, book, in, name, as)
}

// dayOf is the day of a log; none where the log does not say.
func dayOf(entries []entry.Entry) time.Time {
	if light, ok := entries[0].Event.(entry.Light); ok && light.Undated {
		return time.Time{}
	}
	return entries[0].Happened
}

// measureList gathers --measure NAME=KG.
type measureList []entry.Measure

func (m *measureList) String() string { return "" }

func (m *measureList) Set(s string) error {
	name, kg, ok := strings.Cut(s, "=")
	mass, err := strconv.ParseFloat(strings.Replace(kg, ",", ".", 1), 64)
	if !ok || name == "" || err != nil || !(mass > 0) || mass > 1000 {
		return errors.New(words.BadMeasure(s))
	}
	*m = append(*m, entry.Measure{Name: name, Mass: entry.Some(entry.Kilogram(mass))})
	return nil
}
