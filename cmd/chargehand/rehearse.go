package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"slices"
	"time"

	"chargehand/model/rehearse"
	"chargehand/model/rule"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/tui/screen"
)

func rehearseCommand() command {
	return command{name: "rehearse", usage: "[--auto | --score N]", does: words.RehearseDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		number := flags.Int64("furnace-number", 0, words.FlagFurnaceNo)
		mishap := flags.String("mishap", byChance, words.FlagMishap+words.MishapNames())
		auto := flags.Bool("auto", false, words.FlagAuto)
		var sc scoring
		flags.IntVar(&sc.furnaces, "score", 0, words.FlagScore)
		flags.StringVar(&sc.path, "scores", "", words.FlagScores)
		flags.Float64Var(&sc.noise, "noise", 1, words.FlagNoise)
		flags.BoolVar(&sc.nextHour, "next-hour", false, words.FlagNextHour)
		by := flags.String("truth", string(rehearse.Columns), words.FlagTruth+words.AnswererNames())
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			sc.by = rehearse.Answerer(*by)
			if !slices.Contains(rehearse.Answerers(), sc.by) {
				return wrongUse{errors.New(words.BadAnswerer(*by))}
			}
			if sc.furnaces != 0 {
				return sc.run(w, c)
			}
			if sc.nextHour {
				return wrongUse{errors.New(words.NextHourWants)}
			}
			n := *number
			if n < 0 || n >= 1<<53 {
				return wrongUse{errors.New(words.BadFurnaceNumber(n))}
			}
			if !*auto {
				if c.json {
					return wrongUse{errors.New(words.RehearseJSON)}
				}
				if sc.by != rehearse.Columns {
					return wrongUse{errors.New(words.RehearseTruth)}
				}
				if _, _, err := mishapsOf(*mishap, max(n, 1)); err != nil {
					return err
				}
				r := screen.Rehearse{Number: n, Mishap: *mishap, Fresh: n > 0 || *mishap != byChance}
				_, err := rehearseOnScreen(w, c, r)
				return err
			}
			if n == 0 {
				n = anyFurnace(w)
			}
			mishaps, chosen, err := mishapsOf(*mishap, n)
			if err != nil {
				return err
			}
			d, err := rehearse.Run(n, mishaps, rehearse.Options{Chance: !chosen, By: sc.by})
			if err != nil {
				return err
			}
			if c.book != "" {
				if err := keepRehearsal(w, c, d); err != nil {
					return err
				}
			}
			if c.json {
				return json.NewEncoder(w.out).Encode(rehearsalOf(d))
			}
			_, err = fmt.Fprint(w.out, words.Rehearsed(d))
			return err
		}
	}}
}

// byChance is what goes wrong of itself.
const byChance = "by-chance"

// anyFurnace is the number of the day's own furnace.
func anyFurnace(w world) int64 { return w.clock().Wall.Unix()%999_999 + 1 }

// mishapsOf are those that a flag names for a furnace, and whether somebody chose them.
func mishapsOf(s string, number int64) (ms []rehearse.Mishap, chosen bool, err error) {
	switch m := rehearse.Mishap(s); {
	case s == byChance, s == "":
		return rehearse.ByChance(number), false, nil
	case s == "none":
		return nil, true, nil
	case slices.Contains(rehearse.Mishaps(), m):
		return []rehearse.Mishap{m}, true, nil
	}
	return nil, false, wrongUse{errors.New(words.BadMishap(s))}
}

// keepRehearsal puts what was keyed into a book, byte for byte.
func keepRehearsal(w world, c common, d rehearse.Day) error {
	lines, err := persist.LinesOf(d.Entries)
	if err != nil {
		return err
	}
	book, err := writer(w, c, nil)
	if err != nil {
		return err
	}
	return errors.Join(book.ImportJSON(persist.Journal{Stream: rehearse.Stream(d.Number), Lines: lines}), shut(w, book))
}

// rehearsalJSON is a rehearsal as it prints. Moments are on its own clock, since light.
type rehearsalJSON struct {
	Number   int64                    `json:"number"`
	Mishaps  []befallenJSON           `json:"mishaps"`
	Warnings []raisedJSON             `json:"warnings"`
	Bloom    number                   `json:"bloom_kg"`
	Believed map[string]*believedJSON `json:"believed"`
	Truth    map[string]*number       `json:"truth"`
	Inside   map[string][2]int        `json:"inside"`
	Hash     string                   `json:"hash"`
}

type befallenJSON struct {
	Name   string   `json:"name"`
	At     *string  `json:"at"`
	HarmAt *string  `json:"harm_at"`
	Warned *string  `json:"warned_at"`
	Rule   *rule.ID `json:"rule"`
}

type raisedJSON struct {
	Rule rule.ID `json:"rule"`
	At   string  `json:"at"`
}

type believedJSON struct {
	P10 number `json:"p10"`
	P50 number `json:"p50"`
	P90 number `json:"p90"`
}

func rehearsalOf(d rehearse.Day) rehearsalJSON {
	j := rehearsalJSON{
		Number: d.Number, Mishaps: []befallenJSON{}, Warnings: []raisedJSON{}, Bloom: number(d.BloomKg),
		Believed: map[string]*believedJSON{}, Truth: map[string]*number{}, Inside: map[string][2]int{}, Hash: d.Hash,
	}
	at := func(d time.Duration, is bool) *string {
		if !is {
			return nil
		}
		said := words.AfterLightSaid(d)
		return &said
	}
	for _, m := range d.Mishaps {
		one := befallenJSON{Name: string(m.Name), At: at(m.At, m.Began), HarmAt: at(m.HarmAt, m.Harms), Warned: at(m.Warned, m.IsWarned)}
		if m.IsWarned {
			one.Rule = &m.Rule
		}
		j.Mishaps = append(j.Mishaps, one)
	}
	for _, w := range d.Warnings {
		j.Warnings = append(j.Warnings, raisedJSON{w.Rule, words.AfterLightSaid(w.Onset)})
	}
	for _, n := range rehearse.Judged {
		j.Believed[n.Key()], j.Truth[n.Key()] = nil, nil
		if b, ok := d.Believed[n]; ok {
			j.Believed[n.Key()] = &believedJSON{number(b.P10), number(b.P50), number(b.P90)}
		}
		if v, ok := d.True[n]; ok {
			j.Truth[n.Key()] = some(v)
		}
		o := d.Inside[n]
		j.Inside[n.Key()] = [2]int{o.In, o.Of}
	}
	return j
}
