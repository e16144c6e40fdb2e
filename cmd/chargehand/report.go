package main

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"chargehand/model/report"
	"chargehand/model/session"
	"chargehand/model/words"
)

func reportCommand() command {
	return command{name: "report", usage: "SMELT --out FILE", does: words.ReportDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		to := flags.String("out", "", words.FlagOut)
		replace := flags.Bool("replace", false, words.FlagReplace)
		var o report.Options
		flags.BoolVar(&o.Names, "names", false, words.FlagNames)
		flags.BoolVar(&o.Places, "places", false, words.FlagPlaces)
		flags.BoolVar(&o.Incidents, "incidents", false, words.FlagIncidents)
		photos := flags.String("photos", "", words.FlagPhotos)
		clock := flags.String("clock-photo", "", words.FlagClockPhoto)
		return func(w world, c common, operands []string) error {
			name, err := one(operands, words.ASmelt)
			if err != nil {
				return err
			}
			if *to == "" {
				return wrongUse{errors.New(words.ReportWantsOut)}
			}
			entries, gaps, err := smeltWithGaps(w, c, name)
			if err != nil {
				return err
			}
			house, err := houseEntries(w, c)
			if err != nil {
				return err
			}
			s := session.Open(entries[0].Stream, entries, session.Lacking(gaps...)).Taught(historyOf(w, c)).Assayed(assayedOf(house))
			if err := withPhotos(w, s, *photos, *clock, &o); err != nil {
				return err
			}
			r, broke := report.Of(s, entries, house, o)
			if broke != nil {
				fmt.Fprintln(w.err, "chargehand:", words.SolverBroke(broke))
			}
			printed := words.ReportPrinted(programVersion(), w.clock().Wall)
			return writeWhole(w, c, *to, *replace, func(out io.Writer) error { return r.Page(out, printed) })
		}
	}}
}
