package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"slices"

	"chargehand/model/compare"
	"chargehand/model/invented"
	"chargehand/model/shelf"
	"chargehand/model/words"
)

func compareCommand() command {
	return command{name: "compare", usage: "SMELT SMELT...", does: words.CompareDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			if n := len(operands); n < 2 || n > 4 {
				return wrongUse{errors.New(words.CompareWants)}
			}
			all, err := summaries(w, c)
			if err != nil {
				return err
			}
			var chosen []shelf.Summary
			for _, name := range operands {
				s, err := summaryOf(w, c, all, name)
				if err != nil {
					return err
				}
				if slices.ContainsFunc(chosen, func(o shelf.Summary) bool { return o.ID == s.ID }) {
					return wrongUse{errors.New(words.CompareTwice)}
				}
				chosen = append(chosen, s)
			}
			made := compare.Of(chosen, all)
			if c.json {
				return json.NewEncoder(w.out).Encode(comparedOf(made))
			}
			_, err = fmt.Fprint(w.out, words.Compared(words.Units{}, made))
			return err
		}
	}}
}

// summaryOf finds the summary of a smelt by its name or the beginning of it; the invented
// one stands in no book.
func summaryOf(w world, c common, all []shelf.Summary, name string) (shelf.Summary, error) {
	if demo, err := invented.Smelt(); err == nil && demo[0].Stream == name {
		return shelf.Of(name, demo), nil
	}
	r, err := reader(w, c)
	if err != nil {
		return shelf.Summary{}, err
	}
	id, err := match(r, name)
	if err != nil {
		return shelf.Summary{}, err
	}
	i := slices.IndexFunc(all, func(s shelf.Summary) bool { return s.ID == id })
	if i < 0 {
		return shelf.Summary{}, errors.New(words.NoSuchSmelt(name, r.Path()))
	}
	return all[i], nil
}

// comparedJSON is a comparison as JSON has it. What is not known is null.
type comparedJSON struct {
	Smelts   []map[string]any `json:"smelts"`
	Own      int              `json:"own_smelts"`
	Few      bool             `json:"too_few_to_tell"`
	Differed []differedJSON   `json:"differed"`
	Trends   []trendJSON      `json:"trends"`
}

type differedJSON struct {
	What    string `json:"what"`
	Spreads number `json:"spreads"` // in standard deviations of own smelts
	Low     number `json:"low"`
	High    number `json:"high"`
}

type trendJSON struct {
	What   string `json:"what"`
	N      int    `json:"n"`
	Rank   number `json:"rank"`   // Spearman's correlation with the yield
	Chance number `json:"chance"` // of as strong a one, over all measures looked at
	Stands bool   `json:"stands"`
}

func comparedOf(c compare.Compared) comparedJSON {
	j := comparedJSON{Smelts: []map[string]any{}, Own: c.Own, Few: c.Own < compare.Few, Differed: []differedJSON{}, Trends: []trendJSON{}}
	for _, s := range c.Smelts {
		one := map[string]any{"id": s.ID, "mix": s.Mix, "tried": s.Tried, "ore_dry": s.OreDry.Positive()}
		for _, m := range compare.All {
			one[string(m)] = nil
			if v, known := compare.Value(s, m); known {
				one[string(m)] = number(v)
			}
		}
		j.Smelts = append(j.Smelts, one)
	}
	for _, d := range c.Differed {
		j.Differed = append(j.Differed, differedJSON{string(d.Measure), number(d.Spreads), number(d.Low), number(d.High)})
	}
	for _, t := range c.Trends {
		j.Trends = append(j.Trends, trendJSON{string(t.Measure), t.N, number(t.Rank), number(t.Chance), t.Stands()})
	}
	return j
}
