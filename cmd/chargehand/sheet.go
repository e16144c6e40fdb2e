package main

import (
	"errors"
	"flag"
	"io"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/plan"
	"chargehand/model/sheet"
	"chargehand/model/words"
)

func sheetCommand() command {
	return command{name: "sheet", usage: "[--plan NAME] --out FILE", does: words.SheetDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		to := flags.String("out", "", words.FlagOut)
		replace := flags.Bool("replace", false, words.FlagReplace)
		name := flags.String("plan", "", words.FlagSheetPlan)
		blank := flags.Bool("blank", false, words.FlagBlank)
		at := flags.String("at", "", words.FlagWoodFire)
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			if *to == "" {
				return wrongUse{errors.New(words.SheetWantsOut)}
			}
			h, err := theHouse(w, c)
			if err != nil {
				return err
			}
			var p *house.Plan
			if !*blank {
				if p, err = h.planned(*name); err != nil {
					return err
				}
			}
			begins := plan.Begins("")
			switch {
			case *at != "":
				lit, err := time.Parse(words.Clock, *at)
				if err != nil {
					return wrongUse{errors.New(words.BadWoodFire(*at))}
				}
				begins = plan.Begins(lit.Format(words.Clock))
			case p != nil:
				begins = plan.Begins(p.Begins)
			}
			s := sheet.Of(sheet.FromHouse(h.State, p, begins))
			printed := words.ReportPrinted(programVersion(), w.clock().Wall)
			return writeWhole(w, c, *to, *replace, func(out io.Writer) error { return s.Page(out, printed) })
		}
	}}
}

// planned is the plan of a name, the last so called; without a name the newest, and nil
// where there is none.
func (h household) planned(name string) (*house.Plan, error) {
	var have []string
	for i := len(h.Plans) - 1; i >= 0; i-- {
		p := &h.Plans[i]
		if name == "" || p.Name == name || p.UID == entry.UID(name) {
			return p, nil
		}
		have = append(have, p.Name)
	}
	if name == "" {
		return nil, nil
	}
	return nil, errors.New(words.NoSuchPlan(name, have))
}
