package scene

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/draw"
)

// How many charges to come are shown: of a plan as many as have room, else those of
// which the forecast speaks.
const mostPlanned, mostForeseen = 10, 3

// ahead are the charges to come of a smelt at work, and whether a plan is behind them.
func ahead(u modelwords.Units, s session.Session) ([]draw.Ahead, bool) {
	r := s.Reading()
	charges, plan := s.Coming(mostPlanned)
	if !plan {
		charges = charges[:min(len(charges), mostForeseen)]
	}
	var all []draw.Ahead
	for i, parts := range charges {
		if len(parts) == 0 {
			return all, plan
		}
		a := draw.Ahead{Number: len(r.Charges) + 1 + i, Text: u.PartsBrief(keyed(parts)), Ore: holdsOre(parts)}
		if at, ok := foreseen(r, i); ok {
			a.At = r.Wall(at).Format(modelwords.Clock)
		}
		all = append(all, a)
	}
	return all, plan
}

// foreseen is about when the charge after so many more is due, never before now: the
// forecast speaks of the next and of the third, and the pace between them goes on.
func foreseen(r *figure.Reading, more int) (time.Duration, bool) {
	if !r.HasDue || r.BlastOff || r.Paused {
		return 0, false
	}
	_, next, _ := r.Due.Next.At()
	_, third, _ := r.Due.Three.At()
	return max(next, r.At) + time.Duration(more)*(third-next)/2, true
}

func keyed(parts []fold.Part) (ps entry.Parts) {
	for _, p := range parts {
		ps = append(ps, p.Part)
	}
	return ps
}

func holdsOre(parts []fold.Part) bool { return keyed(parts).Holds(entry.Ore) }
