package words

import (
	"fmt"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/forge"
)

// What tests found in a piece, and what is odd about it.

// Tested is a test with its place and what it showed.
func Tested(t entry.PieceTested) string {
	said := t.Test + ": " + t.Result
	if t.Place != "" {
		said += ", at " + t.Place
		if strings.Trim(t.Place, "0123456789.,") == "" {
			said += " cm"
		}
	}
	return joinedBy(said, ", ", t.Note)
}

// classWords are the classes of metal.
var classWords = [...]string{forge.Soft: "soft", forge.Low: "low in carbon", forge.Steely: "steely", forge.Hard: "hard steel", forge.NearCast: "near cast iron"}

// MetalFound is what the tests of a piece found, and how many they were.
func MetalFound(f forge.Found) string {
	switch {
	case f.Tests == 0:
		return "not tested"
	case !f.Known:
		return many(f.Tests, "test") + ", no class from so few"
	case f.Low == f.High:
		return classWords[f.Low] + ", " + many(f.Tests, "test")
	}
	return classWords[f.Low] + " to " + classWords[f.High] + ", " + many(f.Tests, "test")
}

// signCauses are the likely causes of what a hammer shows (common practice).
var signCauses = map[string]string{
	forge.Crumbles:   "full of slag, too hot, or near cast iron. Lower heat, gentle blows, all faces by turns; spark a corner.",
	forge.CracksCold: "phosphorus likely in iron of bog ore. Work it hot only; where it must bend in use take another piece.",
	forge.CracksHot:  "mostly slag, or a cold weld. Weld the crack shut at a full heat before drawing on.",
}

// SignCause says what a sign of the hammer likely comes of, and what to do.
func SignCause(sign string) string { return sign + ": " + signCauses[sign] }

// SlagBand says how much of a piece is slag.
func SlagBand(low, high float64) string {
	return fmt.Sprintf("slag %.0f to %.0f %% of it by its density: pores hide the rest", 100*low, 100*high)
}

// Remark says what is odd about a piece.
func (u Units) Remark(r forge.Remark) string {
	switch r.Kind {
	case forge.MassGrew:
		return "it grew from " + u.kg(r.Against) + " to " + u.kg(r.Said) + ": weigh it again, or an entry is wrong"
	case forge.HoldsMore:
		return "what was made of it weighed " + u.kg(r.Said) + ", and it " + u.kg(r.Against)
	case forge.DenserThanIron:
		return denser(r.Said)
	}
	return u.printed(r.Printed)
}

func denser(kgM3 float64) string {
	return fmt.Sprintf("%.1f g/cm³ is denser than iron, 7.87: size and mass do not belong together", kgM3/1000)
}

// printed says what is wrong with a figure in print, and names its sum or its base.
func (u Units) printed(p forge.PrintedOff) string {
	of := orElse(p.Of, "that")
	switch {
	case p.Loss:
		return "a loss of " + u.Value(p.Said, "kg", 3) + " in print: the masses differ by " + u.Value(p.Is, "kg", 3)
	case p.IsLost:
		return fmt.Sprintf("%.0f %% in print is what was lost: %.0f %% of the %s is left", p.Said, p.Is, of)
	}
	return fmt.Sprintf("%.0f %% in print: of the %s it is %.0f %%, so of what, %s", p.Said, of, p.Is, u.kg(p.Base))
}
