package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"

	"chargehand/model/words"
	"chargehand/persist/repair"
)

func rescueCommand() command {
	return command{name: "rescue", does: words.RescueDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			path, err := bookPath(c, w.getenv)
			if err != nil {
				return err
			}
			r, err := repair.Rescue(path, repair.Options{Clock: w.clock})
			if err != nil {
				return err
			}
			if c.json {
				if err := json.NewEncoder(w.out).Encode(r); err != nil {
					return err
				}
			} else {
				tellRescued(w.out, r)
			}
			loose := 0
			for _, s := range r.Streams {
				loose += s.Loose
			}
			if loose > 0 {
				return errors.New(words.RescuedLoose(loose))
			}
			return nil
		}
	}}
}

// tellRescued says stream by stream what was brought back.
func tellRescued(out io.Writer, r repair.Rescued) {
	fmt.Fprintln(out, words.RescuedFrom(r.Path, r.Trouble))
	for _, s := range r.Streams {
		fmt.Fprintln(out, words.RescuedStream(s.Stream, s.Entries, s.Book, s.Twin, s.Loose))
		for _, m := range s.Mended {
			fmt.Fprintln(out, words.RescuedStep(m))
		}
	}
	fmt.Fprintln(out, words.Rescued(r.Path, len(r.Streams), r.Entries, r.Aside))
}
