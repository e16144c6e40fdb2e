package words

import (
	"math"
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

// GasAt is the carbon gas at a height: how many of a hundred parts of it are CO and how
// many CO2, and above how many of CO the step of reduction there goes; what is not known
// is left out.
func GasAt(z figure.Gas) string {
	parts := func(co float64) string {
		if co < 1 {
			return "<1/99"
		}
		return fixed(co, 0) + "/" + fixed(100-math.Round(co), 0)
	}
	switch {
	case z.CO.Known && z.Needs.Known:
		needs, _, _ := strings.Cut(parts(z.Needs.Value), "/")
		return "CO/CO2 " + parts(z.CO.Value) + ", needs " + needs
	case z.CO.Known:
		return "CO/CO2 " + parts(z.CO.Value)
	case z.Needs.Known:
		return "needs CO/CO2 " + parts(z.Needs.Value)
	}
	return ""
}

// SlagIs is how stiff the slag is.
func SlagIs(paS float64) string { return "slag " + Stiffness(paS) }

// SlagWith is how stiff the slag would be with so much iron in it, with the unit
// or, where there is little room, without.
func SlagWith(p figure.SlagPoint, room int) string {
	s := fixed(p.Ferrous, 0) + " % FeO: " + Stiffness(p.Stiffness)
	if len(s) > room {
		s = strings.TrimSuffix(s, paS)
	}
	return s
}

// MeltsAt is when the slag is all molten.
func (u Units) MeltsAt(celsius float64) string {
	return "molten at about " + u.Coarse(celsius)
}

// InTheMiddle is how hot it is in the middle, where the wall is told beside it.
func (u Units) InTheMiddle(celsius float64) string {
	return "middle about " + u.Coarse(celsius)
}
