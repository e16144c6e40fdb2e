package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"math"
	"strconv"
	"strings"

	"chargehand/model/words"
	"chargehand/physics"
)

func assayCommand() command {
	return command{name: "assay", usage: words.AssayUsage, does: words.AssayDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		basis := flags.String("basis", "", words.FlagBasis)
		loss := flags.String("loi", "", words.FlagLoss)
		heat := flags.String("heat", "", words.FlagHeat)
		return func(w world, c common, operands []string) error {
			a, err := readAssay(operands, *basis, *loss)
			if err != nil {
				return wrongUse{err}
			}
			at, err := heatOf(*heat)
			if err != nil {
				return wrongUse{err}
			}
			if c.json {
				return json.NewEncoder(w.out).Encode(assayAsJSON(a, at))
			}
			for _, line := range words.AssaySays(a, at) {
				if _, err := fmt.Fprintln(w.out, line); err != nil {
					return err
				}
			}
			return nil
		}
	}}
}

// readAssay takes what was typed.
func readAssay(operands []string, basis, loss string) (a physics.Assay, err error) {
	if len(operands) < 2 || operands[0] != words.SlagWord && operands[0] != words.OreWord {
		return a, errors.New(words.AssayWantsMaterial)
	}
	a.Slag, a.Parts = operands[0] == words.SlagWord, map[string]float64{}
	for _, o := range operands[1:] {
		key, value, _ := strings.Cut(o, "=")
		v, ok := finite(strings.TrimSuffix(value, "%"))
		if !ok {
			return a, errors.New(words.BadShare(o))
		}
		name, ok := physics.AssayPartNamed(key)
		if !ok {
			return a, errors.New(words.BadOxide(key))
		}
		if _, twice := a.Parts[name]; twice {
			return a, errors.New(words.OxideTwice(name))
		}
		a.Parts[name] = v
	}
	if basis != "" {
		b, ok := words.AssayBases[basis]
		if !ok {
			return a, errors.New(words.BadBasis(basis))
		}
		a.Basis = b
	}
	if loss != "" {
		if a.Loss, a.LossKnown = finite(loss); !a.LossKnown {
			return a, errors.New(words.BadNumber("loi", loss))
		}
	}
	return a, nil
}

// heatOf is a temperature typed in C.
func heatOf(text string) (*physics.Band, error) {
	if text == "" {
		return nil, nil
	}
	v, ok := finite(text)
	if !ok {
		return nil, errors.New(words.BadNumber("heat", text))
	}
	b := physics.Exact(physics.FromCelsius(v))
	return &b, nil
}

// finite reads a number that is one.
func finite(text string) (float64, bool) {
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

// assayJSON is an assay on the wire: per cent, C, and kg of iron from 100 kg of
// ore; what does not apply is null.
type assayJSON struct {
	Iron          *number   `json:"iron"`
	Sum           *number   `json:"sum"`
	Doubts        []string  `json:"doubts"`
	ReducibleIron *number   `json:"reducible_iron"`
	Melts         *bandJSON `json:"melts_c"`
	Runs          *runsJSON `json:"runs"`
	IronToBeHad   *bandJSON `json:"iron_to_be_had"`
}

type bandJSON struct {
	P10 number `json:"p10"`
	P50 number `json:"p50"`
	P90 number `json:"p90"`
}

type runsJSON struct {
	Runs   number `json:"runs"`
	Creeps number `json:"creeps"`
	Not    number `json:"not"`
}

func assayAsJSON(a physics.Assay, heat *physics.Band) assayJSON {
	sum, known := a.Sum()
	out := assayJSON{Sum: numberIf(sum, known), Doubts: []string{}}
	iron, known := a.Iron()
	out.Iron = numberIf(iron, known)
	index, known := a.ReducibleIron()
	out.ReducibleIron = numberIf(index, known)
	if b, ok := a.Melts(); ok {
		out.Melts = &bandJSON{number(physics.ToCelsius(b.P10)), number(physics.ToCelsius(b.P50)), number(physics.ToCelsius(b.P90))}
	}
	if heat != nil {
		if r, ok := a.Runs(*heat); ok {
			out.Runs = &runsJSON{number(r.Runs), number(r.Creeps), number(r.Not)}
		}
	}
	if b, ok := a.IronToBeHad(); ok {
		out.IronToBeHad = &bandJSON{number(b.P10), number(b.P50), number(b.P90)}
	}
	for _, d := range a.Doubts() {
		out.Doubts = append(out.Doubts, words.AssayDoubt(d))
	}
	return out
}

// numberIf is a number on the wire, null where it is none.
func numberIf(v float64, known bool) *number {
	if !known || math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	n := number(v)
	return &n
}
