package words

import (
	"fmt"
	"math"
	"strings"

	"chargehand/model/account"
)

// AccountVerdict says how well it closes, no further than what is known twice.
func AccountVerdict(a account.Account) []string {
	v := a.Verdict
	var said []string
	for _, m := range v.Minus {
		said = append(said, minusWords(m))
	}
	switch v.Kind {
	case account.NothingWeighed:
		return append(said, "nothing to balance: neither what went in nor what came out was weighed")
	case account.NothingToCheck:
		return append(said, "nothing to check against; "+soughtWords(v.Sought)+together(a))
	case account.Closes:
		said = append(said, openWords(a, false)+", no more than weighing and assays explain")
		if v.Redundancy == 1 {
			said = append(said, "one balance: nothing here can say which figure is off")
		}
	case account.Open:
		said = append(said, openWords(a, true)+", more than weighing explains; "+wouldClose(v.Ifs))
		if len(v.Ifs) > 1 {
			said = append(said, "one balance: each of these alone would do it, and nothing here can say which")
		}
	case account.Doubtful:
		said = append(said, openWords(a, true)+", more than weighing explains")
		for i, g := range v.Suspects {
			lead := "likeliest"
			if i > 0 {
				lead = "else"
			}
			said = append(said, fmt.Sprintf("%s, %s if just one figure is wrong: %s", lead, tenths(g.Odds), ifsWords(g.Ifs)))
		}
	}
	if v.Rough {
		said = append(said, "the figures contradict each other so far that nothing can be fitted to them: rows are as weighed")
	}
	if len(v.Sought) > 0 {
		said = append(said, soughtWords(v.Sought))
	}
	return said
}

// openWords says by how much the balances that were tested are open; of two that
// do not close together, those that are off by more than their own spread.
func openWords(a account.Account, off bool) string {
	var parts []string
	for _, all := range []bool{false, true} {
		for _, c := range []struct {
			of   string
			open account.Amount
		}{{"iron", a.Iron.Open}, {"silica", a.Silica.Open}} {
			if !c.open.Known() || !all && !beyond(c.open) {
				continue
			}
			how := " is open by "
			if off {
				how = " does not close by "
			}
			parts = append(parts, c.of+how+kgs(math.Abs(c.open.Value))+" kg")
		}
		if len(parts) > 0 {
			return strings.Join(parts, ", ")
		}
	}
	return "iron and silica, each solved for the same figure, differ" // then neither is open by itself
}

// beyond tells whether an amount lies off nought by more than nine in ten do.
func beyond(a account.Amount) bool { return a.Below() || a.Band().P10 > 0 }

// wouldClose says what it would close with.
func wouldClose(ifs []account.If) string {
	if len(ifs) == 0 {
		return "no figure alone would close it"
	}
	return "it would close if " + ifsWords(ifs)
}

// soughtWords says what was solved for.
func soughtWords(sought []account.Sought) string {
	var parts, blind []string
	for _, s := range sought {
		name := placeName(s.Part)
		if !s.Amount.Known() {
			blind = append(blind, name)
			continue
		}
		unit := ""
		if s.Figure == account.SilicaOf {
			unit = " of silica"
		}
		verb := "was"
		if s.Place == account.WallAndAsh {
			verb = "were"
		}
		parts = append(parts, fmt.Sprintf("%s %s solved for: %s%s", name, verb, AccountKg(s.Amount), unit))
	}
	if len(blind) > 0 {
		word := "was"
		if len(blind) > 1 {
			word = "were"
		}
		parts = append(parts, fmt.Sprintf("%s %s not weighed and cannot be told", listed(blind, "and"), word))
	}
	return strings.Join(parts, "; ")
}

// together says how much iron is in all that was not weighed and cannot be told
// apart.
func together(a account.Account) string {
	out := 0.0
	for _, r := range a.Out {
		if r.Iron.Known() {
			out += r.Iron.Value
		}
	}
	blind := 0
	for _, s := range a.Verdict.Sought {
		if !s.Amount.Known() {
			blind++
		}
	}
	if blind < 2 || !a.Iron.In.Known() {
		return ""
	}
	return fmt.Sprintf("; together they hold what is left of the iron, about %s kg", kgs(a.Iron.In.Value-out))
}

// firmWords says what to weigh or have assayed.
func firmWords(p account.Part) string {
	switch {
	case p.Figure == account.MassOf:
		return "weighing the " + placeName(p)
	case metallic(p.Place):
		return "the density of the " + placeName(p) + ", weighed in air and, soaked, in water"
	case p.Figure == account.IronOf:
		return "an assay of the " + placeName(p)
	}
	return "an assay of the " + placeName(p) + " for silica"
}

// minusWords says what came out below nought, as it is.
func minusWords(m account.Minus) string {
	how := "no more than weighing and assays explain"
	if m.Beyond {
		how = "more than weighing and assays explain"
	}
	if m.More {
		return fmt.Sprintf("%s kg more iron came out than went in, %s", kgs(m.Amount.Value), how)
	}
	what := "which cannot be: something that went in was not keyed, or a figure is off"
	if m.Place == account.WallAndAsh {
		what = "and a wall gives no less than nothing: the samples may not belong together"
	}
	return fmt.Sprintf("%s comes out at %s kg, %s; %s", placeName(m.Part), kgs(m.Amount.Value), how, what)
}

// ifsWords lists figures with the value that would close the account.
func ifsWords(ifs []account.If) string {
	var parts []string
	for _, f := range ifs {
		parts = append(parts, ifWords(f))
	}
	if len(parts) == 0 {
		return "none of the figures alone"
	}
	return listed(parts, "or")
}

func ifWords(f account.If) string {
	of := "iron"
	if f.Figure == account.SilicaOf {
		of = "silica"
	}
	switch {
	case f.Leak && f.Would > 0:
		return fmt.Sprintf("%s kg of %s came out that was not weighed", kgs(f.Would), of)
	case f.Leak:
		return fmt.Sprintf("%s kg of %s went in that was not keyed", kgs(-f.Would), of)
	}
	assumed := ""
	if f.Assumed {
		assumed = ", assumed"
	}
	name := placeName(f.Part)
	if f.Place == account.Wall && f.Figure == account.MassOf {
		return fmt.Sprintf("the wall had lost %s kg (not %s%s)", kgs(f.Would), kgs(f.Is), assumed)
	}
	if f.Figure == account.MassOf && !f.CannotBe {
		return fmt.Sprintf("%s were %s kg (not %s%s)", name, kgs(f.Would), kgs(f.Is), assumed)
	}
	if f.Figure == account.IronOf && metallic(f.Place) {
		of = "metal"
	}
	if f.CannotBe {
		is := "held other than " + wholePercent(f.Is) + " % " + of
		if f.InKg() {
			is = "were other than " + kgs(f.Is) + " kg"
		}
		return name + " " + is + ", and another figure were off too"
	}
	if f.InKg() {
		return fmt.Sprintf("ash brought %s kg of silica (not %s%s)", kgs(f.Would), kgs(f.Is), assumed)
	}
	return fmt.Sprintf("%s held %s %% %s (not %s%s)", name, wholePercent(f.Would), of, wholePercent(f.Is), assumed)
}

func wholePercent(share float64) string { return Number(100*share, 0) }

func placeName(p account.Part) string {
	s := placeWords[p.Place]
	if p.Name != "" {
		s += " (" + p.Name + ")"
	}
	return s
}

// tenths says a chance as people do.
func tenths(p float64) string {
	n := int(math.Round(10 * p))
	switch {
	case n >= 10:
		return "more than 9 in 10"
	case n < 1:
		return "less than 1 in 10"
	}
	return fmt.Sprintf("about %d in 10", n)
}

func listed(parts []string, and string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " " + and + " " + parts[len(parts)-1]
}
