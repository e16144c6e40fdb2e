package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"text/tabwriter"

	"chargehand/model/words"
	"chargehand/persist"
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
				return json.NewEncoder(w.out).Encode(shelf(list))
			}
			if len(list) == 0 {
				fmt.Fprintln(w.out, words.ShelfEmpty)
				return nil
			}
			t := tabwriter.NewWriter(w.out, 0, 0, 2, ' ', 0)
			fmt.Fprintln(t, words.ShelfHead)
			for _, s := range list {
				fmt.Fprintln(t, words.ShelfRow(s.ID, string(s.Phase), s.Charges, s.Charcoal, s.Ore, s.Bloom))
			}
			return t.Flush()
		}
	}}
}

// summaries lists the smelts. No book yet is an empty shelf, unless one was named.
func summaries(w world, c common) ([]persist.Summary, error) {
	r, err := reader(w, c)
	if errors.Is(err, persist.ErrMissing) && c.book == "" {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return r.Summaries()
}

// shelfLine is one smelt of the JSON list.
type shelfLine struct {
	ID       string  `json:"id"`
	UID      string  `json:"uid"`
	Furnace  string  `json:"furnace"`
	Light    *string `json:"light"`
	Phase    string  `json:"phase"`
	Charges  int     `json:"charges"`
	Charcoal *number `json:"charcoal_kg"`
	Ore      *number `json:"ore_kg"`
	Bloom    *number `json:"bloom_kg"`
	Practice bool    `json:"practice,omitempty"`
	Imported bool    `json:"imported,omitempty"`
}

func shelf(list []persist.Summary) []shelfLine {
	lines := make([]shelfLine, len(list))
	for i, s := range list {
		lines[i] = shelfLine{
			ID: s.ID, UID: s.UID, Furnace: s.Furnace, Phase: string(s.Phase), Charges: s.Charges,
			Charcoal: pointer(s.Charcoal), Ore: pointer(s.Ore), Bloom: pointer(s.Bloom),
			Practice: s.Practice, Imported: s.Imported,
		}
		if !s.Undated && !s.Light.IsZero() {
			lit := s.Light.Format(timeForm)
			lines[i].Light = &lit
		}
	}
	return lines
}
