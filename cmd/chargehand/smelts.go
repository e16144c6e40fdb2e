package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"text/tabwriter"

	"chargehand/model/shelf"
	"chargehand/model/words"
	"chargehand/persist/disk"
)

func smeltsCommand() command {
	return command{name: "smelts", does: words.SmeltsDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			list, err := summaries(w, c)
			if err != nil {
				return err
			}
			if c.json {
				return json.NewEncoder(w.out).Encode(listOf(list))
			}
			if len(list) == 0 {
				fmt.Fprintln(w.out, words.ShelfEmpty)
				return nil
			}
			t := tabwriter.NewWriter(w.out, 0, 0, 2, ' ', 0)
			fmt.Fprintln(t, words.ShelfHead)
			for _, s := range list {
				fmt.Fprintln(t, words.ShelfRow(s.ID, string(s.Phase), s.Charges, s.Charcoal, s.OreDry, s.Bloom, words.Mark(s.Light())))
			}
			return t.Flush()
		}
	}}
}

// summaries lists the smelts. No book yet is an empty shelf, unless one was named.
func summaries(w world, c common) ([]shelf.Summary, error) {
	r, err := reader(w, c)
	if errors.Is(err, disk.ErrMissing) && c.book == "" {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer tellFaults(w, r)
	return r.Summaries()
}

// listed is one smelt of the JSON list: its summary, with masses as they are
// said and the time of its light where the day is known, else null.
type listed struct {
	shelf.Summary
	Light    *string `json:"light"`
	Charcoal *number `json:"charcoal_kg"`
	Ore      *number `json:"ore_kg"`
	OreDry   *number `json:"ore_dry_kg"`
	Bloom    *number `json:"bloom_kg"`
}

func listOf(all []shelf.Summary) []listed {
	list := make([]listed, len(all))
	for i, s := range all {
		list[i] = listed{Summary: s, Charcoal: pointer(s.Charcoal), Ore: pointer(s.Ore), OreDry: pointer(s.OreDry), Bloom: pointer(s.Bloom)}
		if !s.Undated && !s.Lit.IsZero() {
			lit := s.Lit.Format(timeForm)
			list[i].Light = &lit
		}
	}
	return list
}
