package words

import (
	"fmt"
	"strings"

	"chargehand/model/rehearse"
)

// Scored tells what many rehearsals come to.
func Scored(s rehearse.Sum) string {
	var b strings.Builder
	line := func(form string, a ...any) { fmt.Fprintf(&b, form+"\n", a...) }
	line("%d furnaces (%s), noise %g, held against %s; the crew lets every warning be", s.Furnaces, s.Truth, s.Noise, s.Solver)
	line("%-16s %6s %6s %7s %6s %8s %9s %6s %9s", "MISHAP", "BEGAN", "HARM", "WARNED", "ALOUD", "IN TIME", "LEAD MIN", "ASKED", "COAL OFF")
	for _, m := range s.Mishaps {
		lead := "-"
		if m.Warned > 0 {
			lead = fmt.Sprintf("%.0f", m.MedianLead)
		}
		line("%-16s %6d %6d %7d %6d %8d %9s %6d %+8.0f%%", Mishap(m.Name), m.Began, m.Harms, m.Warned, m.Loud, m.InTime, lead, m.Asked, 100*(m.CoalOff-1))
	}
	line("warned, aloud (a look or an act) and in time (before the harm) are of those that did harm; lead is the median of those warned of, minus after the")
	line("harm; asked: the bucket or the missing charge was asked about, of all that began; coal off: charcoal by the figures over what it was, the median")
	if missed, warned := untold(s.Mishaps); missed != "" {
		line("nothing that was keyed up to the harm told the day from the same day without the mishap, of those not warned of: %s", missed)
		line("and of those warned of, by luck then: %s", warned)
	}
	line("days without a mishap: %d; a day %.1f looks, %.1f acts, of both %.1f without a cause; at most one such on %d days; at most one look and no act on %d days", s.Calm.Days, s.Calm.Looks, s.Calm.Acts, s.Calm.False, s.Calm.Within, s.Calm.Quiet)
	line("on %d of them the furnace went wrong of itself%s; at most one look and no act on %d of those", s.Calm.Amiss, amissBy(s.Calm), s.Calm.AmissQuiet)
	line("on the %d truly calm days, at most one look and no act on %d", s.Calm.Truly, s.Calm.TrulyQuiet)
	for _, n := range rehearse.Judged {
		o := s.Counts[n.Key()]
		line("band of %s held the truth %d times of %d (%.0f %%)", strings.ReplaceAll(n.Key(), "_", " "), o[0], o[1], s.Shares[n.Key()])
	}
	line("blooms of days without a mishap: %.1f, %.1f, %.1f kg (10, 50, 90 %%); none on %d", s.Blooms.P10, s.Blooms.P50, s.Blooms.P90, s.None)
	if h := s.NextHour; h != nil {
		b.WriteString(heeded(*h))
	}
	return b.String()
}

// untold tells of how many that did harm nothing that was keyed told: of those not warned of, and of those warned of.
func untold(all []rehearse.MishapSum) (missed, warned string) {
	var of [2][]string
	for _, m := range all {
		if n := m.Harms - m.Warned; n > 0 {
			of[0] = append(of[0], fmt.Sprintf("%s %d of %d", Mishap(m.Name), m.Untold, n))
		}
		if m.Warned > 0 {
			of[1] = append(of[1], fmt.Sprintf("%s %d of %d", Mishap(m.Name), m.LuckyWarned, m.Warned))
		}
	}
	return strings.Join(of[0], ", "), strings.Join(of[1], ", ")
}

// amissBy tells on how many days what went wrong; several may have on one.
func amissBy(s rehearse.CalmSum) string {
	var of []string
	for _, a := range rehearse.AmissAll() {
		if n := s.By[a]; n > 0 {
			of = append(of, fmt.Sprintf("%s %d", amiss[a], n))
		}
	}
	if len(of) == 0 {
		return ""
	}
	return " (" + strings.Join(of, ", ") + ")"
}

// amiss are the words for what goes wrong in a made-up furnace of itself.
var amiss = map[rehearse.Amiss]string{
	rehearse.FireOut: "fire out for ten minutes", rehearse.SlagStood: "slag at the tuyere", rehearse.Shut: "tuyere nearly shut",
	rehearse.TooCold: "hearth too cold for half an hour with ore in it", rehearse.Hung: "burden hung for ten minutes", rehearse.Bare: "shaft bare for ten minutes",
}

// heeded tells what going by the next hour came to.
func heeded(h rehearse.HeedSum) string {
	var b strings.Builder
	line := func(form string, a ...any) { fmt.Fprintf(&b, form+"\n", a...) }
	line("the next hour against the plan, on %d calm furnaces; there was advice on %d of them, %d times", h.Furnaces, h.Advised, h.Advice)
	line("%-16s %12s %9s %10s %6s %7s %9s %8s", "THE CREW GOES BY", "COLD HEARTHS", "COLD MIN", "CAST ENDS", "HANGS", "MISSED", "NO BLOOM", "IRON KG")
	for _, w := range []struct {
		by string
		rehearse.WaySum
	}{{"its plan", h.Planned}, {"the next hour", h.Heeded}} {
		line("%-16s %12d %9.0f %10d %6d %7d %9d %8.1f", w.by, w.Cold, w.ColdMin, w.Cast, w.Hangs, w.Missed, w.None, w.IronKg)
	}
	line("cold: below working heat for over half an hour with ore in it; cast as the program took it, the made-up furnaces know no carbon in iron; missed:")
	line("hung for ten minutes and neither look nor act told of it. On days with advice: %+.2f kg of iron a day; more by a tenth on %d, less on %d", h.Change, h.More, h.Less)
	return b.String()
}
