package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"slices"

	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/twin"
)

func rescueCommand() command {
	return command{name: "rescue", does: words.RescueDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		file := flags.String("take", "", words.FlagTake)
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			if *file != "" {
				return take(w, c, *file)
			}
			path, err := bookPath(c, w.getenv)
			if err != nil {
				return err
			}
			r, err := persist.Rescue(path, persist.Options{Clock: w.clock, Progress: showProgress(w, c, words.Rescuing)})
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
func tellRescued(out io.Writer, r persist.Rescued) {
	fmt.Fprintln(out, words.RescuedFrom(r.Path, r.Trouble))
	for _, s := range r.Streams {
		fmt.Fprintln(out, words.RescuedStream(s.Stream, s.Entries, s.Loose))
		for _, m := range s.Mended {
			fmt.Fprintln(out, words.RescuedStep(m))
		}
		for _, g := range s.Gaps {
			fmt.Fprintln(out, words.RescuedStep(words.GapSaid(g)))
		}
	}
	fmt.Fprintln(out, words.Rescued(r.Path, len(r.Streams), r.Entries, r.Aside))
}

// take takes the lines of a file in, each stream that it finds as one of its own.
func take(w world, c common, file string) error {
	found, err := twin.Salvage(file)
	if err != nil {
		return err
	}
	if len(found) == 0 {
		return errors.New(words.CannotRead(file, errors.New(words.LineNoEntry)))
	}
	book, err := writer(w, c, nil)
	if err != nil {
		return err
	}
	for _, stream := range slices.Sorted(maps.Keys(found)) {
		name, r, terr := book.Take(stream, found[stream])
		if terr != nil {
			err = errors.Join(err, terr)
			continue
		}
		fmt.Fprintln(w.out, words.Taken(file, name, len(r.Lines)))
		for _, g := range r.Gaps {
			fmt.Fprintln(w.out, words.RescuedStep(words.GapSaid(g)))
		}
	}
	return errors.Join(err, shut(w, book))
}
