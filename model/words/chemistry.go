package words

import (
	"strings"

	"chargehand/model/figure"
)

// Equation is a reaction as chemistry writes it, one side and the other; Brief
// is what matters of it where there is room for a few letters. A side of a brief
// one may be left out.
type Equation struct{ From, To string }

// Reaction is an equation with its brief form.
type Reaction struct{ Full, Brief Equation }

var gasAgain = Reaction{Equation{"C + CO2", "2 CO"}, Equation{"C", "CO"}}

// reactions are what goes on at a height, the one that names it first. Wustite
// is written FeO, though it holds a little less iron than that.
var reactions = [...][]Reaction{
	figure.Drying:      {{Equation{"H2O(l)", "H2O(g)"}, Equation{"H2O(l)", "(g)"}}},
	figure.Roasting:    {{Equation{"2 FeOOH", "Fe2O3 + H2O"}, Equation{"FeOOH", "Fe2O3"}}},
	figure.RedToBlack:  {{Equation{"3 Fe2O3 + CO", "2 Fe3O4 + CO2"}, Equation{"Fe2O3", "Fe3O4"}}},
	figure.LosesOxygen: {{Equation{"Fe3O4 + CO", "3 FeO + CO2"}, Equation{"Fe3O4", "FeO"}}},
	figure.IronForms:   {{Equation{"FeO + CO", "Fe + CO2"}, Equation{"FeO", "Fe"}}, gasAgain},
	figure.SlagRuns:    {{Equation{"2 FeO + SiO2", "Fe2SiO4"}, Equation{"", "Fe2SiO4"}}, gasAgain},
	figure.Burning:     {{Equation{"C + O2", "CO2"}, Equation{"C+O2", "CO2"}}, gasAgain},
	figure.Heating:     {gasAgain},
}

// Reactions are what goes on at a height of the shaft, the one that names it
// first.
func Reactions(p figure.Process) []Reaction { return reactions[p] }

// GasAt is the carbon gas at a height: how many of a hundred parts of it are CO, from the
// least to the most that they may be, and above how many of CO the step of reduction there
// goes; what is not known is left out.
func GasAt(z figure.Gas) string { return gasAt(z, " % "+OfCarbonGas) }

// GasShort is the same in fewer words, the longest first, where there is little room.
func GasShort(z figure.Gas) []string { return []string{gasAt(z, " %"), gasAt(z, "")} }

func gasAt(z figure.Gas, of string) string {
	parts := func(co float64) string {
		if co < 1 {
			return "<1"
		}
		return fixed(co, 0)
	}
	needs := ""
	if z.Needs.Known {
		needs = "needs " + parts(z.Needs.Value)
	}
	if !z.HasCO {
		if needs == "" {
			return ""
		}
		return "CO " + needs + of
	}
	low, high := parts(z.CO.P10), parts(z.CO.P90)
	if low != high {
		low += "-" + high
	}
	return strings.TrimSuffix("CO "+low+of+" "+needs, " ") // short enough for the column
}

// SlagIs is how stiff the slag is, with its ends, and SlagIsShort the same where there is
// little room.
func SlagIs(stiff figure.Figure) string {
	switch {
	case stiff.Wide():
		return "slag: how stiff " + FarApart
	case stiff.P10 >= frozen || stiff.P90 < frozen:
		return "slag " + SlagIsShort(stiff)
	}
	return "slag " + strings.TrimSuffix(Stiffness(stiff.P10), paS) + " Pa s, or it " + Stiffness(stiff.P90)
}

// SlagIsShort is a range, or in words.
func SlagIsShort(stiff figure.Figure) string {
	switch {
	case stiff.Wide():
		return "slag " + NotKnownOnly
	case stiff.P90 >= frozen:
		return Stiffness(stiff.P90)
	}
	return plain(Rough(stiff.P10)) + " to " + Stiffness(stiff.P90)
}

// SlagWith is how stiff the slag would be with so much iron in it, with the unit
// or, where there is little room, without.
func SlagWith(p figure.SlagPoint, room int) string {
	s := fixed(p.Ferrous, 0) + " % FeO: " + Stiffness(p.Stiffness)
	if len(s) > room {
		s = strings.TrimSuffix(s, paS)
	}
	return s
}

// MeltsAt is when the slag is all molten, in a temperature with its spread.
func MeltsAt(temperature string) string { return "molten at about " + temperature }

// MeltsShort is the same where there is little room.
func MeltsShort(temperature string) string { return "melts " + temperature }

// InTheMiddle is how hot it is in the middle, where the wall is told beside it.
func InTheMiddle(temperature string) string { return "middle about " + temperature }

// MiddleShort is the same where there is little room.
func MiddleShort(temperature string) string { return "middle " + temperature }
