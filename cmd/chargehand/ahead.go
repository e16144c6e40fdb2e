package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"

	"chargehand/model/ahead"
	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/physics"
)

func aheadCommand() command {
	return command{name: "ahead", usage: "SMELT", does: words.AheadDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		at := flags.String("at", "", words.FlagAt)
		return func(w world, c common, operands []string) error {
			name, err := one(operands, words.ASmelt)
			if err != nil {
				return err
			}
			entries, err := smelt(w, c, name)
			if err != nil {
				return err
			}
			moment, err := momentOf(*at, entries, w.clock())
			if err != nil {
				return err
			}
			assayed, err := assayedIn(w, c)
			if err != nil {
				return err
			}
			s := session.Open(name, entries).Assayed(assayed)
			s = s.AsOf(s.KnownAt(moment), moment)
			if s.Phase().Over() {
				return errors.New(words.AheadOver)
			}
			a := ahead.Of(s)
			if c.json {
				return json.NewEncoder(w.out).Encode(aheadOf(s, a))
			}
			_, err = fmt.Fprint(w.out, words.Units{}.Ahead(a, s.Reading().Wall(a.At).Format(words.Clock)))
			return err
		}
	}}
}

// aheadJSON is the next hour as it prints.
type aheadJSON struct {
	At      string       `json:"at"`
	Asked   int          `json:"furnaces"`
	Choices []choiceJSON `json:"choices"`
	Advice  adviceJSON   `json:"advice"`
}

type choiceJSON struct {
	Name    ahead.Name    `json:"name"`
	Charge  entry.Parts   `json:"charge"`
	Blast   *number       `json:"blast_l_min"`
	Hearth  *quantityJSON `json:"hearth"`
	Shift   *quantityJSON `json:"hearth_shift"`
	Runs    *quantityJSON `json:"runs"`
	OreDown *quantityJSON `json:"ore_down"`
	Minutes *quantityJSON `json:"minutes"`
	Cold    int           `json:"cold"` // of the furnaces asked
	Cast    int           `json:"cast"`
}

type adviceJSON struct {
	Choice *ahead.Name `json:"choice"` // null: no difference worth acting on
	Why    string      `json:"why"`
	Sure   number      `json:"sure"`
}

func aheadOf(s session.Session, a ahead.Ahead) aheadJSON {
	j := aheadJSON{At: s.Reading().Wall(a.At).Format(timeForm), Asked: a.Asked, Choices: []choiceJSON{}, Advice: adviceJSON{Why: words.AheadWhy(a.Advice), Sure: number(a.Advice.Sure)}}
	if a.Advice.Choice != "" {
		j.Advice.Choice = &a.Advice.Choice
	}
	if !a.Known() {
		return j
	}
	for _, o := range a.Outcomes {
		k := choiceJSON{Name: o.Name, Charge: append(entry.Parts{}, o.Parts...), Cold: o.Cold, Cast: o.Cast}
		if o.LMin > 0 {
			k.Blast = some(o.LMin)
		}
		for _, q := range []struct {
			to   **quantityJSON
			band physics.Band
			unit string
		}{{&k.Hearth, o.Hearth, "hearth"}, {&k.Shift, o.Shift, "shift"}, {&k.Runs, o.Runs, "runs"}, {&k.OreDown, o.OreDown, "ore_down"}, {&k.Minutes, o.Minutes, "minutes"}} {
			*q.to = &quantityJSON{Unit: ahead.Unit[q.unit], Basis: string(entry.BasisUnknown)}
			if !q.band.IsZero() {
				**q.to = quantityJSON{some(q.band.P10), some(q.band.P50), some(q.band.P90), ahead.Unit[q.unit], string(entry.BasisGuessed)}
			}
		}
		j.Choices = append(j.Choices, k)
	}
	return j
}
