package main

import (
	"encoding/json"
	"flag"
	"fmt"

	"chargehand/model/entry"
	"chargehand/model/learn"
	"chargehand/model/words"
	"chargehand/physics"
)

func learnCommand() command {
	return command{name: "learn", does: words.LearnDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			h, err := theHouse(w, c)
			if err != nil {
				return err
			}
			history := learn.HistoryOf(h.smelts, h.Pieces...)
			if c.json {
				return json.NewEncoder(w.out).Encode(learnOf(history))
			}
			_, err = fmt.Fprint(w.out, words.Learnt(history))
			return err
		}
	}}
}

// learnJSON is what own smelts teach as JSON has it.
type learnJSON struct {
	Smelts     int       `json:"smelts"` // of which is known how they ended
	Failures   int       `json:"failures"`
	ChanceNone number    `json:"chance_none"`
	Mixes      []mixJSON `json:"mixes"`
}

type mixJSON struct {
	Mix       string       `json:"mix"`
	Yields    []number     `json:"yields"`    // bloom per ore, dry
	Compacted []number     `json:"compacted"` // compacted bloom per ore, never pooled with those
	Next      quantityJSON `json:"next"`
	Billets   []number     `json:"billets"` // billet per ore, dry, of blooms all of which was worked and weighed
	Billet    quantityJSON `json:"next_billet"`
	Few       bool         `json:"too_few_to_tell"`
}

func learnOf(h learn.History) learnJSON {
	smelts, failures := h.Ends()
	j := learnJSON{Smelts: smelts, Failures: failures, ChanceNone: number(learn.ChanceOfNone(failures, smelts).P50), Mixes: []mixJSON{}}
	for _, t := range h.Told() {
		m := mixJSON{Mix: t.Mix, Yields: []number{}, Compacted: []number{}, Next: shareOf(t.Next, len(t.Yields)), Billets: []number{}, Billet: shareOf(t.NextBillet, len(t.Billets)), Few: t.Few()}
		for _, y := range t.Yields {
			m.Yields = append(m.Yields, number(y))
		}
		for _, y := range t.Compacted {
			m.Compacted = append(m.Compacted, number(y))
		}
		for _, y := range t.Billets {
			m.Billets = append(m.Billets, number(y))
		}
		j.Mixes = append(j.Mixes, m)
	}
	return j
}

// shareOf is a forecast of the bloom per ore; without own smelts it is assumed.
func shareOf(b physics.Band, own int) quantityJSON {
	basis := entry.BasisAssumed
	if own > 0 {
		basis = entry.BasisEstimated
	}
	return quantityJSON{some(b.P10), some(b.P50), some(b.P90), "kg/kg", string(basis)}
}
