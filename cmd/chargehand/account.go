package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"slices"

	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/persist/disk"
	"chargehand/physics"
)

func accountCommand() command {
	return command{name: "account", usage: "SMELT", does: words.AccountDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			name, err := one(operands, words.ASmelt)
			if err != nil {
				return err
			}
			entries, err := smelt(w, c, name)
			if err != nil {
				return err
			}
			house, err := houseEntries(w, c)
			if err != nil {
				return err
			}
			a, err := account.Of(account.Read(entries, house))
			if err != nil {
				return fmt.Errorf("%s", words.AccountFailed(name, err))
			}
			if c.json {
				return json.NewEncoder(w.out).Encode(accountOf(a))
			}
			fmt.Fprint(w.out, words.Account(a))
			s := session.Open(entries[0].Stream, entries)
			if o, over := s.Outcome(); over {
				if promised := words.Promised(words.Units{}, s.Light().Plan, o); len(promised) > 0 {
					fmt.Fprintln(w.out, words.PromisedLine(promised))
				}
			}
			return nil
		}
	}}
}

// houseEntries gives the entries of the house. A book without any, or no book where
// none was named, has none.
func houseEntries(w world, c common) ([]entry.Entry, error) {
	r, err := reader(w, c)
	if errors.Is(err, disk.ErrMissing) && c.book == "" {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	streams, err := r.Streams()
	if err != nil || !slices.Contains(streams, entry.House) {
		return nil, err
	}
	return r.Entries(entry.House)
}

// accountJSON is an account as JSON has it. Unknown is null.
type accountJSON struct {
	Smelt      string           `json:"smelt"`
	In         sideJSON         `json:"in"`
	Out        sideJSON         `json:"out"`
	Closure    closuresJSON     `json:"closure"`
	Redundancy int              `json:"redundancy"`
	Verdict    string           `json:"verdict"`
	Words      []string         `json:"verdict_words"`
	Sought     []soughtJSON     `json:"solved_for"`
	Minus      []minusJSON      `json:"below_nought"`
	WouldClose []ifJSON         `json:"would_close"` // with one balance: each alone, naming nobody
	Doubtful   []doubtfulJSON   `json:"doubtful"`    // with two or more: the likeliest first
	Yields     []accountShareOf `json:"yields"`
}

// sideJSON is what went in, or came out.
type sideJSON struct {
	Rows   []rowJSON     `json:"rows"`
	Iron   *quantityJSON `json:"iron"`
	Silica *quantityJSON `json:"silica"`
	Carbon *quantityJSON `json:"carbon"`
	Mass   *quantityJSON `json:"mass"` // without charcoal and wall
}

type rowJSON struct {
	What   string        `json:"what"`
	Lot    string        `json:"lot,omitempty"`
	Mass   *quantityJSON `json:"mass"`
	Share  *quantityJSON `json:"iron_share"`
	Iron   *quantityJSON `json:"iron"`
	Fitted *quantityJSON `json:"iron_fitted"` // after the least squares
	Silica *quantityJSON `json:"silica"`
}

type quantityJSON struct {
	P10   *number `json:"p10"`
	P50   *number `json:"p50"`
	P90   *number `json:"p90"`
	Unit  string  `json:"unit"`
	Basis string  `json:"basis"`
}

type closuresJSON struct {
	Iron   closureJSON   `json:"iron"`
	Silica closureJSON   `json:"silica"`
	Carbon passageJSON   `json:"carbon"`
	Mass   passageJSON   `json:"mass"`
	Oxygen *quantityJSON `json:"oxygen_of_metal"` // that left as gas, were the ore hematite
}

type closureJSON struct {
	Tested bool          `json:"tested"`
	Open   *quantityJSON `json:"open"`
	Share  *quantityJSON `json:"share"` // out over in
}

type passageJSON struct {
	Tested bool          `json:"tested"`
	Gas    *quantityJSON `json:"gas"`   // or not weighed
	Share  *quantityJSON `json:"share"` // out over in
}

type soughtJSON struct {
	What   string        `json:"what"`
	Lot    string        `json:"lot,omitempty"`
	Of     string        `json:"of"`
	Amount *quantityJSON `json:"amount"`
}

type minusJSON struct {
	What   string        `json:"what"`
	Amount *quantityJSON `json:"amount"`
	Beyond bool          `json:"beyond_spread"`
}

type ifJSON struct {
	What    string  `json:"what"`
	Lot     string  `json:"lot,omitempty"`
	Of      string  `json:"of"` // mass, iron, silica
	Is      *number `json:"is"`
	Would   number  `json:"would_be"`
	Unit    string  `json:"unit"`
	Assumed bool    `json:"assumed"`
}

type doubtfulJSON struct {
	Odds    number   `json:"odds"`
	Figures []ifJSON `json:"figures"` // that cannot be told apart
}

type accountShareOf struct {
	What  string        `json:"what"`
	Base  string        `json:"base"`
	Share *quantityJSON `json:"share"`
}

func accountOf(a account.Account) accountJSON {
	kg := func(x account.Amount) *quantityJSON { return quantityOf(x, "kg") }
	share := func(x account.Amount) *quantityJSON { return quantityOf(x, "1") }
	j := accountJSON{
		Smelt:      a.Name,
		In:         sideJSON{Rows: rowsOf(a.In), Iron: kg(a.Iron.In), Silica: kg(a.Silica.In), Carbon: kg(a.Carbon.In), Mass: kg(a.Mass.In)},
		Out:        sideJSON{Rows: rowsOf(a.Out), Iron: kg(a.Iron.Out), Silica: kg(a.Silica.Out), Carbon: kg(a.Carbon.Out), Mass: kg(a.Mass.Out)},
		Redundancy: a.Verdict.Redundancy, Verdict: a.Verdict.Kind.String(), Words: words.AccountVerdict(a),
		Sought: []soughtJSON{}, Minus: []minusJSON{}, WouldClose: ifsOf(a.Verdict.Ifs), Doubtful: []doubtfulJSON{}, Yields: []accountShareOf{},
	}
	j.Closure = closuresJSON{
		Iron:   closureJSON{a.Iron.Tested, kg(a.Iron.Open), share(a.Iron.Share)},
		Silica: closureJSON{a.Silica.Tested, kg(a.Silica.Open), share(a.Silica.Share)},
		Carbon: passageJSON{false, kg(a.Carbon.Rest), share(a.Carbon.Share)},
		Mass:   passageJSON{false, kg(a.Mass.Rest), share(a.Mass.Share)},
		Oxygen: kg(a.Oxygen),
	}
	for _, s := range a.Verdict.Sought {
		j.Sought = append(j.Sought, soughtJSON{words.AccountPlace(s.Place), s.Name, s.Figure.String(), kg(s.Amount)})
	}
	for _, m := range a.Verdict.Minus {
		what := words.AccountPlace(m.Place)
		if m.More {
			what = "iron in less out"
			m.Amount.Value = -m.Amount.Value
		}
		j.Minus = append(j.Minus, minusJSON{what, kg(m.Amount), m.Beyond})
	}
	for _, g := range a.Verdict.Suspects {
		j.Doubtful = append(j.Doubtful, doubtfulJSON{number(g.Odds), ifsOf(g.Ifs)})
	}
	for _, y := range a.Yields {
		unit := "1"
		if y.What == account.CharcoalDry || y.What == account.SlagMass {
			unit = "kg/kg"
		}
		j.Yields = append(j.Yields, accountShareOf{words.AccountBase(y.What), words.AccountBase(y.Base), quantityIn(y.Band(), y.Share.Standing, unit)})
	}
	return j
}

func quantityOf(a account.Amount, unit string) *quantityJSON {
	if !a.Known() {
		return nil
	}
	return quantityIn(a.Band(), a.Standing, unit)
}

func quantityIn(b physics.Band, rests account.Standing, unit string) *quantityJSON {
	return &quantityJSON{some(b.P10), some(b.P50), some(b.P90), unit, string(basisOf(rests))}
}

// basisOf is what an amount rests on, in the words of the wire.
func basisOf(s account.Standing) entry.Basis {
	switch s {
	case account.Measured:
		return entry.BasisMeasured
	case account.Assumed:
		return entry.BasisAssumed
	case account.Solved:
		return entry.BasisEstimated
	}
	return entry.BasisUnknown
}

func rowsOf(rows []account.Row) []rowJSON {
	all := []rowJSON{}
	for _, r := range rows {
		all = append(all, rowJSON{
			words.AccountPlace(r.Place), r.Name, quantityOf(r.Mass, "kg"), quantityOf(r.Share, "1"),
			quantityOf(r.Iron, "kg"), quantityOf(r.Fitted, "kg"), quantityOf(r.Silica, "kg"),
		})
	}
	return all
}

func ifsOf(ifs []account.If) []ifJSON {
	all := []ifJSON{}
	for _, f := range ifs {
		j := ifJSON{What: words.AccountPlace(f.Place), Lot: f.Name, Of: f.Figure.String(), Would: number(f.Would), Unit: "kg", Assumed: f.Assumed}
		if f.Leak {
			j.What = words.NotWeighedOrKeyed
		} else {
			j.Is = some(f.Is)
		}
		if !f.Leak && !f.InKg() {
			j.Unit = "1"
		}
		all = append(all, j)
	}
	return all
}
