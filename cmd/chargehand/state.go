package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/model/words"
	"chargehand/persist/twin"
	"chargehand/physics"
)

// timeForm is how the command line writes a moment: RFC 3339 to the second, in
// the smelt's own offset.
const timeForm = time.RFC3339

func stateCommand() command {
	return command{name: "state", usage: "SMELT", does: words.StateDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		at := flags.String("at", "", words.FlagAt)
		as := flags.String("known", "", words.FlagKnown)
		return func(w world, c common, operands []string) error {
			name, err := one(operands, words.ASmelt)
			if err != nil {
				return err
			}
			entries, gaps, err := smeltWithGaps(w, c, name)
			if err != nil {
				return err
			}
			moment, err := momentOf(*at, entries, w.clock())
			if err != nil {
				return err
			}
			known, err := knownOf(*as)
			if err != nil {
				return err
			}
			assayed, err := assayedIn(w, c)
			if err != nil {
				return err
			}
			s := session.Open(name, entries).Taught(historyOf(w, c)).Assayed(assayed)
			if *at != "" || known != fold.All || !s.Reading().Phase.Over() {
				s = s.AsOf(known, moment)
			}
			if j, ok := s.Job(); ok {
				s = s.Solved(j.Run(new(solve.Solver)))
			}
			if err := s.SolverErr(); err != nil {
				fmt.Fprintln(w.err, "chargehand:", words.SolverBroke(err))
			}
			r := s.Reading()
			if c.json {
				state := stateOf(r, s.Standing(), gaps)
				state.Sure = sureOf(s)
				return json.NewEncoder(w.out).Encode(state)
			}
			_, err = fmt.Fprint(w.out, words.State(r), words.Solved(r), words.Standing(r, s.Standing()))
			for _, one := range sureOf(s) {
				fmt.Fprintf(w.out, "  %s\n", words.SureLine(one.Seq, one.Says, strings.Join(one.Doubts, " ")))
			}
			for _, g := range gaps {
				fmt.Fprintf(w.out, "  %s: %s\n", words.GapSaid(g), g.Why)
			}
			return err
		}
	}}
}

func knownOf(s string) (uint64, error) {
	if s == "" {
		return fold.All, nil
	}
	n, err := strconv.ParseUint(s, 10, 64)
	if err != nil || n == 0 {
		return 0, wrongUse{fmt.Errorf("%s", words.BadKnown(s))}
	}
	return n, nil
}

// stateJSON is a reading as state prints it. Unknown is null.
type stateJSON struct {
	Smelt string `json:"smelt"`
	MarksJSON
	At      string                `json:"at"`
	Known   uint64                `json:"known"`
	Phase   string                `json:"phase"`
	Bloom   *number               `json:"bloom_weighed_kg"`
	Figures map[string]figureJSON `json:"figures"`
	Layers  []layerJSON           `json:"layers"`
	Zones   []zoneJSON            `json:"zones"`
	Slag    []slagJSON            `json:"slag_by_iron"`      // how stiff it would be with other shares of iron
	Runs    *runsJSON             `json:"slag_runs"`         // how it runs, as chances; null before there is enough of it
	Carbon  *string               `json:"carbon"`            // of the iron so far: what a smith would call it, and whether the slag protects it
	OfPlan  bool                  `json:"bloom_end_of_plan"` // from the ore planned, else from the ore in so far
	Own     ownJSON               `json:"own_smelts"`        // what of the house's smelts stands behind the yield and the chance of none
	Warns   []warningJSON         `json:"warnings"`          // that stand, gravest first
	Meter   bool                  `json:"meter_believed"`    // false when more carbon burned than the metered blast can burn, or less than it must
	Sure    []sureJSON            `json:"sure"`              // what was doubted when it was keyed, and kept all the same
	Gaps    []twin.Gap            `json:"gaps"`              // entries that are lost
	Lack    *string               `json:"solver_lacks"`      // why the shaft solver gives no figures, or none to be trusted
}

// ownJSON counts own smelts: those with a bloom on the same ore mix, all that are
// known to have ended, and those that gave none.
type ownJSON struct {
	OnMix  int `json:"on_this_mix"`
	Smelts int `json:"smelts"`
	None   int `json:"without_bloom"`
}

// MarksJSON says why a smelt counts for nothing.
type MarksJSON struct {
	Practice  bool `json:"practice"`
	Rehearsal bool `json:"rehearsal"`
	Invented  bool `json:"invented"`
}

func marksOf(l entry.Light) MarksJSON { return MarksJSON{l.Practice, l.Rehearsal, l.Invented} }

type figureJSON struct {
	P10     *number `json:"p10"`
	P50     *number `json:"p50"`
	P90     *number `json:"p90"`
	Unit    string  `json:"unit"`
	Basis   string  `json:"basis"`
	AtLeast *number `json:"at_least"`
}

type layerJSON struct {
	Charge   int     `json:"charge"`
	Top      number  `json:"top_cm"`
	Bottom   number  `json:"bottom_cm"`
	Charcoal *number `json:"charcoal_kg"`
	Ore      *number `json:"ore_kg"`
	Age      number  `json:"age_s"`
}

type zoneJSON struct {
	What     string  `json:"what"`
	Top      number  `json:"top_cm"`
	Bottom   number  `json:"bottom_cm"`
	Middle   number  `json:"middle_c"`
	Low      number  `json:"middle_p10_c"`
	High     number  `json:"middle_p90_c"`
	WallSide *number `json:"wall_side_c"`
	Basis    string  `json:"basis"`
}

// warningJSON is a warning that stands.
type warningJSON struct {
	Rule         rule.ID `json:"rule"`
	Grade        string  `json:"grade"`
	Since        string  `json:"since"`
	Title        string  `json:"title"`
	Evidence     string  `json:"evidence"`
	Remedy       string  `json:"remedy"`
	Acknowledged bool    `json:"acknowledged"`
}

// sureJSON is an entry that somebody was asked about and was sure of.
type sureJSON struct {
	Seq    uint64   `json:"seq"`
	At     string   `json:"at"`
	Doubts []string `json:"doubts"`
	Says   string   `json:"says"`
}

// sureOf are those in force, as known at the moment of a session.
func sureOf(s session.Session) []sureJSON {
	sure := []sureJSON{}
	for l := range s.Lines() {
		if doubts := strings.Fields(s.Sure(l)); len(doubts) > 0 && !l.Struck() && l.Event.Kind() != entry.KindAmend {
			sure = append(sure, sureJSON{l.Seq(), s.Wall(l).Format(timeForm), doubts, words.Units{}.Event(l.Event)})
		}
	}
	return sure
}

type slagJSON struct {
	Ferrous   float64 `json:"feo_percent"`
	Stiffness float64 `json:"pa_s"`
}

func stateOf(r *figure.Reading, standing []rule.Warning, gaps []twin.Gap) stateJSON {
	s := stateJSON{
		Smelt: r.Smelt, MarksJSON: marksOf(r.Light), At: r.Wall(r.At).Format(timeForm), Known: r.Known, Phase: string(r.Phase),
		Bloom: pointer(r.Bloom), Figures: map[string]figureJSON{}, Layers: []layerJSON{}, Zones: []zoneJSON{}, Slag: []slagJSON{}, Warns: []warningJSON{}, Meter: !r.MeterDoubted(), Gaps: append([]twin.Gap{}, gaps...),
		Own: ownJSON{r.OwnYields, r.OwnSmelts, r.OwnFailures},
	}
	for n := range figure.Count {
		f := r.Figure(n)
		j := figureJSON{Unit: figure.Table[n].Unit, Basis: f.Basis.String(), AtLeast: pointer(f.AtLeast)}
		if f.Known() {
			j.P10, j.P90 = some(f.P10), some(f.P90)
			if n.HasMiddle() {
				j.P50 = some(f.P50)
			}
		}
		s.Figures[n.Key()] = j
	}
	for _, w := range standing {
		title, evidence, remedy := words.Units{}.Warning(w)
		s.Warns = append(s.Warns, warningJSON{w.Rule, w.Grade.String(), r.Wall(w.Onset).Format(timeForm), title, evidence, remedy, w.Acknowledged})
	}
	for _, l := range r.Layers {
		s.Layers = append(s.Layers, layerJSON{l.Charge, number(l.Top), number(l.Bottom), middle(l.Charcoal), middle(l.Ore), number(l.Age.Seconds())})
	}
	for _, z := range r.Zones {
		s.Zones = append(s.Zones, zoneJSON{words.Process(z.What), number(z.Top), number(z.Bottom), number(z.Degrees), number(z.Spread.P10), number(z.Spread.P90), pointer(z.WallSide), z.Basis.String()})
	}
	for _, p := range r.Poorer {
		s.Slag = append(s.Slag, slagJSON(p))
	}
	if r.Figure(figure.BloomCarbon).Known() {
		span := words.CarbonSpan(r.Carbon)
		s.Carbon = &span
	}
	if g := r.Running; g != (physics.Running{}) {
		s.Runs = &runsJSON{number(g.Runs), number(g.Creeps), number(g.Not)}
	}
	_, s.OfPlan = r.OreToCome()
	if lack := words.SolverTrouble(r); lack != "" {
		s.Lack = &lack
	}
	return s
}

// middle is the middle value of a figure, or none.
func middle(f figure.Figure) *number {
	if !f.Known() {
		return nil
	}
	return some(f.P50)
}

func some(v float64) *number { return pointer(entry.Some(v)) }
