package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"text/tabwriter"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/forecast"
	"chargehand/model/words"
	"chargehand/persist/disk"
	"chargehand/persist/logcsv"
)

func hindcastCommand() command {
	return command{name: "hindcast", usage: "FILE|SMELT...", does: words.HindcastDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		blooms := flags.Bool("blooms", false, words.FlagBlooms)
		least := flags.Float64("least-ore", 0, words.FlagLeast)
		return func(w world, c common, operands []string) error {
			if *blooms {
				return hindcastBlooms(w, c, operands, *least)
			}
			if len(operands) == 0 {
				return wrongUse{errors.New(words.WantsSome(words.LogsOrSmelts))}
			}
			var logs []forecast.Log
			for _, name := range operands {
				entries, err := logOrSmelt(w, c, name)
				if err != nil {
					return err
				}
				s := fold.Fold(entries, fold.All, fold.End(entries))
				logs = append(logs, forecast.Log{Name: strings.TrimSuffix(filepath.Base(name), ".csv"), State: s, Aside: words.Mark(s.Light)})
			}
			report := forecast.Score(logs)
			if c.json {
				return json.NewEncoder(w.out).Encode(report)
			}
			t := tabwriter.NewWriter(w.out, 0, 0, 2, ' ', tabwriter.AlignRight)
			fmt.Fprintln(t, words.HindcastHead)
			for _, l := range report.Logs {
				fmt.Fprintln(t, words.HindcastRow(words.Marked(l.Log, l.Aside), l.Scores))
			}
			fmt.Fprintln(t, words.HindcastRow(words.HindcastPooled, report.Pooled))
			return t.Flush()
		}
	}}
}

// logOrSmelt reads a log from a file, when there is one of that name, else a
// smelt of the book.
func logOrSmelt(w world, c common, name string) ([]entry.Entry, error) {
	f, err := disk.Open(name)
	if errors.Is(err, os.ErrNotExist) && filepath.Ext(name) == "" && filepath.Base(name) == name {
		return smelt(w, c, name)
	}
	if err != nil {
		return nil, errors.New(words.CannotRead(name, err))
	}
	defer f.Close()
	return logcsv.Read(f, logcsv.Options{Name: filepath.Base(name), Stream: "looked-at"})
}
