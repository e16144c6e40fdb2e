package report

import (
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/model/words"
)

// Strip is the day on one line: its phases, the charges as bars (the minutes since
// the one before up, the ore down), taps and warnings.
type Strip struct {
	Phases   []Span
	Charges  []Bar
	Taps     []Tick
	Warnings []Flag
	Hours    []Tick
	Says     string
}

// Span is a phase, from where to where it is drawn.
type Span struct {
	Phase    string
	From, To float64
	Row      int // phases take turns on two rows, so that their names have room
}

// Bar is a charge.
type Bar struct {
	X, Up, Down float64 // how far the minutes go up, and the ore down
	Says        string
}

// Flag is a warning on the strip.
type Flag struct {
	X     float64
	Grade int // 0 for a note, 1 for a look, 2 for an act
	Says  string
}

// The strip's drawing: its line, and how far its bars go.
const (
	stripLine = 110.0
	stripUp   = 60.0
	stripDown = 40.0
)

// strip draws the day.
func strip(c course) Strip {
	var p Plot
	p.X = Axis{To: max(c.over.Span.Hours(), 1e-3)}
	s := Strip{Hours: hours(c, p.x)}
	for i, t := range c.over.Turns {
		until := c.over.Span
		if i+1 < len(c.over.Turns) {
			until = c.over.Turns[i+1].At
		}
		if until > t.At {
			s.Phases = append(s.Phases, Span{words.Phase(t.Phase), p.x(t.At.Hours()), p.x(until.Hours()), len(s.Phases) % 2})
		}
	}
	charges := c.end.Reading().Charges
	most, ore := 0.0, 0.0
	for _, ch := range charges {
		most = max(most, ch.Minutes)
		if ch.Ore.Known() {
			ore = max(ore, ch.Ore.P50)
		}
	}
	for _, ch := range charges {
		b := Bar{X: p.x(ch.At.Hours()), Says: clock(c.end, ch.At) + " " + words.Units{}.ChargeLine(ch.Number, ch.Parts, some(ch.Charcoal), some(ch.Ore))}
		if most > 0 {
			b.Up = stripUp * ch.Minutes / most
		}
		if ore > 0 && ch.Ore.Known() {
			b.Down = stripDown * ch.Ore.P50 / ore
		}
		s.Charges = append(s.Charges, b)
	}
	for _, at := range c.over.Taps {
		s.Taps = append(s.Taps, Tick{p.x(at.Hours()), clock(c.end, at)})
	}
	for _, w := range c.end.Warnings() {
		title, _, _ := words.Units{}.Warning(w)
		s.Warnings = append(s.Warnings, Flag{p.x(w.Onset.Hours()), grade(w.Grade), clock(c.end, w.Onset) + " " + words.Grade(w.Grade) + " " + title})
	}
	s.Says = words.ReportStrip(len(charges), len(s.Taps), len(s.Warnings), c.over.Span)
	return s
}

func grade(g rule.Grade) int {
	switch g {
	case rule.Act:
		return 2
	case rule.Look:
		return 1
	}
	return 0
}

// some is the middle of a figure as a mass, where it is known.
func some(f figure.Figure) entry.Maybe[entry.Kilogram] {
	if !f.Known() {
		return entry.Maybe[entry.Kilogram]{}
	}
	return entry.Some(entry.Kilogram(f.P50))
}
