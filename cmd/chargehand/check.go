package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"

	"chargehand/model/shelf"
	"chargehand/model/words"
	"chargehand/persist"
)

func checkCommand() command {
	return command{name: "check", does: words.CheckDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			path, err := bookPath(c, w.getenv)
			if err != nil {
				return err
			}
			report, err := persist.Check(path, persist.Options{Summarise: shelf.Of, Progress: showProgress(w, c, words.Checking)})
			if err != nil {
				return err
			}
			if c.json {
				if err := json.NewEncoder(w.out).Encode(report); err != nil {
					return err
				}
			} else {
				for _, f := range report.Findings {
					fmt.Fprintln(w.out, f)
				}
				fmt.Fprintln(w.out, words.Checked(report.Path, report.Streams, report.Entries, len(report.Findings)))
			}
			if !report.OK() {
				return errors.New(words.CheckFailed(len(report.Findings)))
			}
			return nil
		}
	}}
}
