package words

import (
	"fmt"
	"math"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/forge"
)

// How much of a bloom came how far, of what, and what it took.

// stepWord names a step of a chain.
func stepWord(b forge.Bench, s forge.Step) string {
	switch s.Form {
	case forge.OreStep:
		return "ore, dry"
	case forge.WorkedStep:
		if b.Pieces[s.At].Form == entry.BloomPiece {
			return "compacted"
		}
		return "worked"
	}
	return PieceKindShort(b.Pieces[s.At].Form)
}

// PieceKindShort is what a piece is, in one word.
func PieceKindShort(k entry.PieceKind) string {
	switch k {
	case entry.HalfPiece:
		return "half"
	case entry.Finished:
		return "finished"
	}
	return PieceKind(k)
}

// ChainBase is what the share of a step is of.
func ChainBase(b forge.Bench, steps []forge.Step, n int) string {
	if n == 0 {
		return ""
	}
	before := steps[n-1]
	if before.Form == forge.WorkedStep && b.Pieces[before.At].Form != entry.BloomPiece {
		return PieceKindShort(b.Pieces[before.At].Form)
	}
	return strings.TrimSuffix(stepWord(b, before), ", dry")
}

// ChainStep is one step of a chain: its name, and its share with what it is a share of.
func ChainStep(b forge.Bench, steps []forge.Step, n int) (name, of string) {
	s := steps[n]
	name = stepWord(b, s)
	if n == 0 {
		return name, ""
	}
	before := ChainBase(b, steps, n)
	switch {
	case s.Share == 0:
		return name, "not weighed"
	case s.Cut:
		return name, fmt.Sprintf("%.0f %% of %s, cut", 100*s.Share, before)
	case s.At >= 0 && s.Form == forge.MadeStep && b.Welded(s.At):
		return name, fmt.Sprintf("%.0f %% of %s, welded", 100*s.Share, before)
	}
	return name, fmt.Sprintf("%.0f %% of %s", 100*s.Share, before)
}

// OfOre says how much of the ore came so far.
func OfOre(share float64, ifAlike bool) string {
	said := fmt.Sprintf("%s %% of the ore, dry", shareOfOre(share))
	if ifAlike {
		said += ", if the rest goes alike"
	}
	return said
}

func shareOfOre(share float64) string {
	if share < 0.095 {
		return Number(100*share, 1)
	}
	return Number(100*share, 0)
}

// PerKg says a sum for each kilogram, and of how much of it that was keyed.
func PerKg(t forge.Taken, s forge.Sum) (keyed string) {
	if s.Keyed > 0.995*t.Sessions {
		return ""
	}
	return fmt.Sprintf("keyed in %.0f %% of the sessions", 100*s.Keyed/math.Max(t.Sessions, 1e-9))
}

// ChainOfOre is how much of the ore each step of a chain was, in one line.
func ChainOfOre(b forge.Bench, steps []forge.Step) string {
	var said []string
	for n, s := range steps {
		if n > 0 && s.OfOre > 0 && !s.Cut {
			name, _ := ChainStep(b, steps, n)
			said = append(said, name+" "+shareOfOre(s.OfOre)+" %")
		}
	}
	return strings.Join(said, ", ")
}

// ChainSaid is the last step to a piece and how much of the ore that is, in one line.
func ChainSaid(b forge.Bench, i int) string {
	steps := b.Chain(i)
	said := ""
	if n := len(steps) - 1; n > 0 && steps[n].Share > 0 {
		_, said = ChainStep(b, steps, n)
	}
	share, alike, known := b.OfOre(i)
	if known && len(steps) > 2 {
		said = joinedBy(said, "; ", OfOre(share, alike))
	}
	return said
}

// PieceEnded says how a piece left the house, not to whom.
func PieceEnded(e entry.PieceEnd) string { return pieceEnd(e) }

// PieceTook lists what the forge took for a kilogram of a piece: name, value and remark.
func (u Units) PieceTook(b forge.Bench, i int) (rows [][3]string) {
	t, kg := b.Taken(i), float64(b.Pieces[i].Mass.Value)
	if kg <= 0 {
		return nil
	}
	unit := u.Name("kg")
	add := func(name, each, whole string, s forge.Sum) {
		rows = append(rows, [3]string{name, each, joinedBy(whole, "; ", PerKg(t, s))})
	}
	of := " for " + u.Kg(b.Pieces[i].Mass.Value)
	for _, f := range t.Fuels {
		add(orElse(f.What, "fuel"), Number(f.Of/kg, 1)+" "+unit+" a "+unit, u.kg(f.Of)+of, f.Sum)
	}
	if t.Hours.Keyed > 0 {
		add("hours", ForgeHours(t.Hours.Of/u.Shown(kg, "kg"))+" a "+unit, ForgeHours(t.Hours.Of)+of, t.Hours)
	}
	if t.Heats > 0.5 {
		rows = append(rows, [3]string{"heats", Number(t.Heats, 0), ""})
	}
	for _, c := range t.Costs {
		add("cost", money(c.Of/u.Shown(kg, "kg"), c.Currency)+" a "+unit, money(c.Of, c.Currency)+of, c.Sum)
	}
	return rows
}
