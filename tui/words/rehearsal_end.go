package words

import (
	"fmt"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rehearse"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
)

// The screen of a rehearsal and of its end.
const (
	DoRehearsal     = "rehearsal: hold it, begin another, see how it went"
	DoGoOnHere      = "go on"
	DoSameAgain     = "the same again"
	DoAnotherNumber = "another furnace"
	DoMishaps       = "choose what goes wrong"
	DoWalkBack      = "back on the line"
	DoWalkOn        = "on on the line"
	DoLeaveIt       = "leave the rehearsal"

	StillSealed     = "sealed until the end"
	SealOpened      = "opened: what was sealed at lighting"
	SealOpenedShort = "opened"
	BeingOpened     = "the seal is being opened ..."
	NotInRehearsal  = "stores, furnace and plan are of your own smelts: leave the rehearsal for them"
	MishapNone      = "nothing at all"
	NothingIsKept   = "nothing of this is kept with your smelts"

	EndBloomCaption = "bloom, cold, loose slag off"
	EndToldCaption  = "mishaps the screen told of"
	LaneHappened    = "what happened"
	LaneTrue        = "hearth, true"
	LaneBelieved    = "believed"
	LaneReckoned    = "hearth, reckoned"
	LaneDid         = "what you did"
	LaneCharges     = "charges, acts"
	NothingBefell   = "nothing went wrong of itself"
)

// RehearsalIs says what a rehearsal is, a paragraph each.
var RehearsalIs = []string{
	"A rehearsal is a smelt on a furnace of the program's own, with the same screens and keys. How it burns and what goes wrong in it was drawn from its number and sealed when it was lit; nothing of it is kept with your smelts.",
	"At the fire l looks: peep, sound, slag, flame; i dips; t taps. The furnace answers what is seen. Its clock runs a minute in a second and slows down by itself when something happens; F2 holds it, F3 and F4 make it slower and faster.",
	"o l says that the last ore is in, o b that the burn-down begins, o o takes the bloom out. Then the seal is opened. Closing it earlier (o k) gives it up and opens the seal too.",
}

// FurnaceNumber names a rehearsal's furnace.
func FurnaceNumber(n int64) string { return fmt.Sprintf("furnace number %d", n) }

// EndBloom is what came of a rehearsal, large, and what that is of the ore, with what the screen expected at the last ore.
func EndBloom(u modelwords.Units, d rehearse.End) (large, under string) {
	switch {
	case d.BloomKg > 0:
		large = strings.ToUpper(u.Value(d.BloomKg, "kg", 1))
		if d.OreKg > 0 {
			under = fmt.Sprintf("%.0f %% of %s ore as charged", 100*d.BloomKg/d.OreKg, u.Value(d.OreKg, "kg", 1))
		}
	case d.NoBloom:
		large, under = "NO BLOOM", fmt.Sprintf("%s ore went in", u.Value(d.OreKg, "kg", 1))
	default:
		large, under = "GIVEN UP", fmt.Sprintf("%s ore was in", u.Value(d.OreKg, "kg", 1))
	}
	if d.Said.P90 >= 0.5 { // else nothing was in that it could be of
		under += fmt.Sprintf("; foretold %.0f to %s", u.Shown(d.Said.P10, "kg"), u.Value(d.Said.P90, "kg", 0))
	}
	return large, under
}

// EndTold is of how many mishaps the screen told, large, and how soon.
func EndTold(d rehearse.End) (large, under string) {
	if len(d.Befell) == 0 {
		looks, acts := graded(d.Warnings)
		return "CALM", fmt.Sprintf("nothing went wrong of itself; the screen said LOOK %d times, ACT %d", looks, acts)
	}
	var after, not []string
	for _, b := range d.Befell {
		if b.IsWarned {
			after = append(after, fmt.Sprintf("%.0f", (b.Warned-b.At).Minutes()))
		} else {
			not = append(not, "the "+mishapNoun(b.Name))
		}
	}
	if len(after) > 0 {
		under = "after " + listed(after) + " min"
	}
	if len(not) > 0 {
		under = strings.TrimPrefix(under+"; not of "+listed(not), "; ")
	}
	return fmt.Sprintf("%d OF %d", len(after), len(d.Befell)), under
}

func graded(ws []rule.Warning) (looks, acts int) {
	for _, w := range ws {
		if w.Grade == rule.Act {
			acts++
		} else {
			looks++
		}
	}
	return looks, acts
}

func listed(all []string) string {
	if n := len(all); n > 1 {
		return strings.Join(all[:n-1], ", ") + " and " + all[n-1]
	}
	return strings.Join(all, "")
}

// GradeTag is a grade as a tag.
func GradeTag(g rule.Grade) string { return strings.ToUpper(g.String()) }

// AboutDegrees is a hearth's heat to ten degrees.
func AboutDegrees(u modelwords.Units, c float64) string {
	return u.Value(float64(int(c/10+0.5)*10), "°C", 0)
}

// BefellAt is a mishap on the line.
func BefellAt(b rehearse.Answered, lit time.Time) string {
	return modelwords.Mishap(b.Name) + " " + lit.Add(b.At).Format(modelwords.Clock)
}

// NothingToldOf says that no warning came of a mishap.
func NothingToldOf(m rehearse.Mishap) string { return "nothing of the " + mishapNoun(m) }

// ActAt is an act on the line, with how long after the mishap it came.
func ActAt(what string, a rehearse.Act) string {
	if a.Since < 0 {
		return what
	}
	return fmt.Sprintf("%s, %.0f min on", what, a.Since.Minutes())
}

// Walked tells of a moment on the line.
func Walked(u modelwords.Units, d rehearse.End, at time.Duration, was, believed float64) string {
	said := d.Lit.Add(at).Format(modelwords.Clock) + "  "
	if was > 0 {
		said += "hearth " + AboutDegrees(u, was)
	}
	if believed > 0 {
		said += ", believed " + AboutDegrees(u, believed)
	}
	for _, b := range d.Befell {
		switch at {
		case b.At:
			said += "; " + modelwords.Mishap(b.Name) + " begins"
		case b.HarmAt:
			if b.Harms {
				said += "; the " + mishapNoun(b.Name) + " has done harm"
			}
		}
	}
	for _, w := range d.Warnings {
		if w.Onset == at {
			title, _, _ := u.Warning(w)
			said += "; " + GradeTag(w.Grade) + " " + title
		}
	}
	for _, a := range d.Acts {
		if a.At == at {
			said += "; you: " + u.Event(a.Event)
		}
	}
	return said
}

// ThreeSentences are what the rehearsal has to teach: of each mishap whether it was told of, answered and did harm, those that
// did harm first; then of the fire.
func ThreeSentences(u modelwords.Units, d rehearse.End) []string {
	var said []string
	for _, harms := range []bool{true, false} {
		for _, b := range d.Befell {
			if b.Harms == harms && len(said) < 3 {
				said = append(said, ofMishap(d, b))
			}
		}
	}
	rest := []string{ofHearth(d), ofScreen(d), ofCharges(d)}
	for _, s := range rest {
		if s != "" && len(said) < 3 {
			said = append(said, s)
		}
	}
	return said
}

func ofMishap(d rehearse.End, b rehearse.Answered) string {
	when := d.Lit.Add(b.At).Format(modelwords.Clock)
	said := "Nobody answered the " + mishapNoun(b.Name) + " of " + when
	if b.Act != nil {
		said = fmt.Sprintf("You %s %.0f minutes after the %s at %s", answered(b.Act), (b.ActAt - b.At).Minutes(), modelwords.Mishap(b.Name), when)
	}
	switch {
	case !b.IsWarned:
		said += ", and no warning told of it"
	case b.Act != nil && b.ActAt < b.Warned:
		said += ", before any warning"
	case b.Act != nil:
		said += fmt.Sprintf(", %.0f after the screen told of it", (b.ActAt - b.Warned).Minutes())
	default:
		said += fmt.Sprintf(", of which the screen told %.0f minutes on", (b.Warned - b.At).Minutes())
	}
	switch {
	case !b.Harms:
		return said + ": no harm came of it."
	case b.IsWarned && b.HarmAt > b.Warned:
		return said + fmt.Sprintf(": harm was done by %s, %.0f minutes after the warning.", d.Lit.Add(b.HarmAt).Format(modelwords.Clock), (b.HarmAt-b.Warned).Minutes())
	}
	return said + fmt.Sprintf(": harm was done by %s.", d.Lit.Add(b.HarmAt).Format(modelwords.Clock))
}

// answered is what was done about a mishap.
func answered(ev entry.Event) string {
	switch ev.(type) {
	case entry.Rod:
		return "rodded"
	case entry.Poke:
		return "poked"
	case entry.Weigh:
		return "weighed a bucket"
	case entry.Recipe:
		return "changed the charge"
	case entry.Blast:
		return "set the blast"
	case entry.Pause:
		return "stopped"
	case entry.Charge:
		return "entered a charge late"
	case entry.OreHeld:
		return "held the ore"
	}
	return "saw to the wall"
}

func ofHearth(d rehearse.End) string {
	switch m := d.Cold.Minutes(); {
	case len(d.True) == 0:
		return "The fire never got so far that anything could be said of it."
	case d.OreKg == 0:
		return "No ore was in yet: there was nothing to lose, and nothing to gain."
	case m < 1:
		return "The hearth was never below working heat with ore in it."
	case d.Looked == 0:
		return fmt.Sprintf("The hearth was below working heat for %.0f minutes with ore in it, and nobody looked into the peep.", m)
	default:
		return fmt.Sprintf("The hearth was below working heat for %.0f minutes with ore in it.", m)
	}
}

func ofScreen(d rehearse.End) string {
	if d.Held.Of == 0 {
		return ""
	}
	return fmt.Sprintf("From the first ore to the burn-down the screen's band held the true heat of the hearth %d of %d times.", d.Held.In, d.Held.Of)
}

func ofCharges(d rehearse.End) string {
	if len(d.Charges) < 3 {
		return ""
	}
	longest, before := time.Duration(0), time.Duration(0)
	for i, c := range d.Charges[1:] {
		if gap := c.At - d.Charges[i].At; gap > longest {
			longest, before = gap, c.At
		}
	}
	return fmt.Sprintf("Of %d charges the longest wait was %.0f minutes, before that of %s.", len(d.Charges), longest.Minutes(), d.Lit.Add(before).Format(modelwords.Clock))
}

// mishapNoun is a mishap as a thing that one speaks of.
func mishapNoun(m rehearse.Mishap) string {
	switch modelwords.Mishap(m) {
	case "blower dying":
		return "dying blower"
	case "tuyere blocked":
		return "blocked tuyere"
	}
	return modelwords.Mishap(m)
}
