package words

import (
	"fmt"
	"math"
	"strings"

	"chargehand/model/ahead"
	"chargehand/physics"
)

// The next hour.
const (
	AheadDoes = "tells what a few next charges and blasts would do in the next hour of a smelt"
	AheadOver = "the smelt is over: there is no next hour"
)

// AheadChoice is a choice in plain words.
func AheadChoice(n ahead.Name) string { return string(n) }

// AheadWhy is what an advice rests on.
func AheadWhy(a ahead.Advice) string {
	switch a.Why {
	case ahead.WhyCold:
		return "the hearth would be too cold for slag to run"
	case ahead.WhyStiff:
		return "the slag would hardly run"
	case ahead.WhyCast:
		return "the iron would run to cast iron"
	case ahead.WhySame:
		return "no difference worth acting on"
	case ahead.WhyWell:
		return "no difference worth acting on: hearth and slag stay as they should"
	case ahead.WhyUnseen:
		return "no difference worth acting on, by sums alone: look at the slag, and say so"
	case ahead.WhyDown:
		return "the ore has come down"
	case ahead.WhyNotDown:
		return "ore is still to come down, and the hearth stays warm"
	case ahead.WhyCools:
		return "the hearth goes cold while one waits"
	case ahead.WhyLost:
		return "the hearth is cold and hardly any ore has come down"
	}
	return "the model of the shaft says nothing of this smelt"
}

// AheadAdvice is the one line of it.
func AheadAdvice(a ahead.Advice) string {
	if a.Choice == "" {
		return AheadWhy(a)
	}
	return fmt.Sprintf("%s: %s; so in about %.0f of 10 furnaces", AheadChoice(a.Choice), AheadWhy(a), 10*a.Sure)
}

// AheadHead says of when it is and how many furnaces were asked.
func AheadHead(a ahead.Ahead, clock string) string {
	head := "the model's opinion of the next hour, from " + clock
	if a.Asked == 0 {
		return head
	}
	head = fmt.Sprintf("%s, in %d plausible furnaces", head, a.Asked)
	switch {
	case a.Seen <= -seenFrom:
		return fmt.Sprintf("%s; by what was seen the hearth is %.0f °C colder than by sums", head, -a.Seen)
	case a.Seen >= seenFrom:
		return fmt.Sprintf("%s; by what was seen the hearth is %.0f °C hotter than by sums", head, a.Seen)
	}
	return head
}

// seenFrom is from how many K on it is said by how much the signs move the hearth.
const seenFrom = 20

// AheadTable is a head and a line for each choice; with wide the heat of the hearth stands beside its shift.
func AheadTable(a ahead.Ahead, wide bool) []string {
	row := func(name, hearth, shift, runs, down, minutes, cold, cast string) string {
		if wide {
			name += strings.Repeat(" ", max(1, 15-len(name))) + hearth
			return fmt.Sprintf("%-32s %-14s %-12s %-12s %-9s %-5s %s", name, shift, runs, down, minutes, cold, cast)
		}
		return fmt.Sprintf("%-14s %-13s %-12s %-12s %-9s %-5s %s", name, shift, runs, down, minutes, cold, cast)
	}
	lines := []string{row("choice", "hearth then, °C", "hearth by, °C", "slag runs, %", "ore down, %", "minutes", "cold", "cast")}
	for _, o := range a.Outcomes {
		lines = append(lines, row(AheadChoice(o.Name), span(coarsely(o.Hearth), "%.0f"), span(o.Shift, "%+.0f"), span(o.Runs, "%.0f"), span(o.OreDown, "%.0f"), span(o.Minutes, "%.0f"),
			ofTen(o.Cold, a.Asked), ofTen(o.Cast, a.Asked)))
	}
	return lines
}

// Ahead tells the next hour as lines.
func (u Units) Ahead(a ahead.Ahead, clock string) string {
	lines := []string{AheadHead(a, clock)}
	if a.Known() {
		lines = append(lines, AheadTable(a, true)...)
	}
	return strings.Join(append(lines, AheadAdvice(a.Advice)), "\n") + "\n"
}

// coarsely is a temperature as well as the model knows it, to fifty degrees.
func coarsely(b physics.Band) physics.Band {
	const step = 50
	return physics.Band{P10: math.Round(b.P10/step) * step, P50: math.Round(b.P50/step) * step, P90: math.Round(b.P90/step) * step}
}

// span is the ends of a band.
func span(b physics.Band, form string) string {
	if b.IsZero() {
		return "-"
	}
	return fmt.Sprintf(form+" to "+form, b.P10, b.P90)
}

func ofTen(n, of int) string { return fmt.Sprintf("%d/%d", n, of) }
