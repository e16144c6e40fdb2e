package main

import (
	"encoding/json"
	"flag"
	"fmt"

	"chargehand/model/words"
	"chargehand/persist"
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
			r, err := persist.Rescue(path, persist.Options{Clock: w.clock})
			if err != nil {
				return err
			}
			if c.json {
				return json.NewEncoder(w.out).Encode(r)
			}
			fmt.Fprintln(w.out, words.RescuedFrom(r.Path, r.Trouble))
			loose := 0
			for _, s := range r.Streams {
				fmt.Fprintln(w.out, words.RescuedStream(s.Stream, s.Entries, s.Book, s.Twin, s.Loose))
				for _, m := range s.Mended {
					fmt.Fprintln(w.out, words.RescuedStep(m))
				}
				loose += s.Loose
			}
			fmt.Fprintln(w.out, words.Rescued(r.Path, len(r.Streams), r.Entries, r.Aside))
			if loose > 0 {
				return fmt.Errorf("%s", words.RescuedLoose(loose))
			}
			return nil
		}
	}}
}
