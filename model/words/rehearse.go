package words

import (
	"fmt"
	"strings"
	"time"

	"chargehand/model/figure"
	"chargehand/model/rehearse"
	"chargehand/model/rule"
)

// Rehearsing.
const (
	RehearseDoes  = "rehearses a smelt on a furnace of the program's own, on the screen; unattended with --auto"
	FlagFurnaceNo = "the furnace's `number`: the same number gives the same furnace and day"
	FlagMishap    = "the `mishap` that goes wrong: none, by-chance, "
	FlagAuto      = "a scripted crew works through the day at full speed"
	FlagScore     = "rehearse this `number` of furnaces, each calmly and with each mishap alone, and score the program on them"
	FlagScores    = "with --score: the `file` that takes each rehearsal's score (JSON lines); what stands in it already is not done again"
	FlagNoise     = "with --score: the `factor` by which all that varies within a day is multiplied"
	FlagTruth     = "with --auto or --score: the made-up `furnace` that is true and answers: "
	RehearseTruth = "rehearse --truth wants --auto, or --score N: on the screen the furnace of columns answers"
	RehearseJSON  = "rehearse --json wants --auto, or --score N: a rehearsal on the screen prints nothing"
	FlagNextHour  = "with --score: also a calm day of a crew that goes by the advice of the next hour, held against its plan on the same furnace"
	NextHourWants = "rehearse --next-hour wants --score N: it holds the advice against the plan on N furnaces"
)

// Noticed is what nobody at the furnace could miss, as it stands in the book.
func Noticed(n rehearse.Notice) string {
	switch n {
	case rehearse.Slipped:
		return "a thump: what hung in the shaft came down"
	case rehearse.CrackOpened:
		return "a crack in the wall: flame licks out of it"
	case rehearse.BlowerLabours:
		return "the blower labours: its note sinks"
	case rehearse.BlowerStands:
		return "the blower stands still"
	case rehearse.BlowerRuns:
		return "the blower is mended and runs again"
	}
	return string(n)
}

// Mishap is a mishap in plain words.
func Mishap(m rehearse.Mishap) string { return strings.ReplaceAll(string(m), "-", " ") }

// BadMishap says which there are.
func BadMishap(s string) string {
	return fmt.Sprintf("--mishap %q is none: write none, by-chance, %s", s, MishapNames())
}

// AnswererNames lists the furnaces that can answer, BadAnswerer says so.
func AnswererNames() string {
	var all []string
	for _, a := range rehearse.Answerers() {
		all = append(all, string(a))
	}
	return strings.Join(all, ", ")
}

func BadAnswerer(s string) string {
	return fmt.Sprintf("--truth %q is no furnace of the program's own: write %s", s, AnswererNames())
}

// MishapNames lists those that can be chosen.
func MishapNames() string {
	var all []string
	for _, m := range rehearse.Mishaps() {
		all = append(all, string(m))
	}
	return strings.Join(all, ", ")
}

// BadFurnaceNumber, BadScore and BadNoise say what one looks like.
func BadFurnaceNumber(n int64) string {
	return fmt.Sprintf("--furnace-number %d is none: write a whole number from 1", n)
}

func BadScore(n int) string {
	return fmt.Sprintf("--score %d is no number of furnaces: write one from 1 to 10000", n)
}

func BadNoise(v float64) string {
	return fmt.Sprintf("--noise %g: write a number over 0, to 4; 1 is the noise as drawn", v)
}

// BadScoreLine says what is wrong with a file of scores.
func BadScoreLine(path string, line int) string {
	return fmt.Sprintf("%s, line %d is no score of a furnace: name another file", path, line)
}

// OtherScores says that the scores of a file are of something else.
func OtherScores(path string, line int) string {
	return fmt.Sprintf("%s, line %d is of another noise, another furnace of the program's or another version of its solver: name another file", path, line)
}

// AfterLightSaid is a moment on the clock of a rehearsal, as --at takes it.
func AfterLightSaid(at time.Duration) string { return "+" + at.Truncate(time.Second).String() }

// Rehearsed tells of a rehearsal that is over: what happened, what the program believed, what was so.
func Rehearsed(d rehearse.Day) string {
	var b strings.Builder
	line := func(form string, a ...any) { fmt.Fprintf(&b, form+"\n", a...) }
	line("furnace number %d: a rehearsal, nothing of it is real", d.Number)
	bloom := "no compact bloom"
	if d.BloomKg > 0 {
		bloom = fmt.Sprintf("a bloom of %.1f kg", d.BloomKg)
	}
	line("%s from %.0f kg of ore.", bloom, d.OreKg)
	if len(d.Mishaps) == 0 {
		line("Nothing was drawn to go wrong.")
	}
	for _, m := range d.Mishaps {
		line("%s", befallen(m))
	}
	if d.At > 0 {
		line("at %s the screen believed, and so it was:", AfterLightSaid(d.At))
	}
	for _, n := range rehearse.Judged {
		v, ok := d.True[n]
		if !ok {
			continue
		}
		believed := "not known"
		if f, known := d.Believed[n]; known {
			believed = fmt.Sprintf("%.0f to %.0f %s", f.P10, f.P90, figure.Table[n].Unit)
		}
		o := d.Inside[n]
		line("  %-18s %s; it was %.0f; over the day the band held it %d times of %d", strings.ReplaceAll(n.Key(), "_", " "), believed, v, o.In, o.Of)
	}
	for _, w := range d.Warnings {
		if w.Grade > rule.Note {
			title, _, _ := Units{}.Warning(w)
			line("  %s %s: %s", AfterLightSaid(w.Onset), w.Grade, title)
		}
	}
	return b.String()
}

func befallen(m rehearse.Befallen) string {
	if !m.Began {
		return fmt.Sprintf("%s: the day was over before.", Mishap(m.Name))
	}
	said := fmt.Sprintf("%s from %s", Mishap(m.Name), AfterLightSaid(m.At))
	if m.Harms {
		said += fmt.Sprintf(", harm by %s", AfterLightSaid(m.HarmAt))
	} else {
		said += ", no harm done"
	}
	if m.IsWarned {
		return said + fmt.Sprintf("; warned at %s (%s).", AfterLightSaid(m.Warned), m.Rule)
	}
	return said + "; no warning of it."
}

// ScoringSaid is how far a scoring is.
func ScoringSaid(n int64, of int) string {
	return fmt.Sprintf("rehearsed: furnace %d of %d", n, of)
}
