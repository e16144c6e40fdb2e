package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"chargehand/physics"
)

// The command assay.
const (
	AssayDoes  = "says what an assay of a slag or an ore means, and what is doubtful about it"
	AssayUsage = "slag|ore OXIDE=PERCENT..."
	FlagBasis  = "the `basis`, what the shares are of: dug, dried, roasted, ignited or normalised (to a sum of 100)"
	FlagLoss   = "loss on ignition, `percent`"
	FlagHeat   = "how hot the slag is, °`C`: says how it runs"

	SlagWord = "slag"
	OreWord  = "ore"
)

// AssayBases are the words for what shares are of.
var AssayBases = map[string]physics.Basis{
	"dug": physics.Dug, "dried": physics.Dried, "roasted": physics.Roasted, "ignited": physics.Ignited, "normalised": physics.Normalised,
}

// AssayWantsMaterial says what was missing.
const AssayWantsMaterial = "wants slag or ore and then shares in per cent, as: assay slag FeO=55 SiO2=28 Al2O3=6"

// BadOxide and the like say what is wrong with a share.
func BadOxide(name string) string {
	return fmt.Sprintf("%q is no substance of an assay: use %s", name, strings.Join(physics.AssayParts(), ", "))
}

func BadShare(s string) string {
	return fmt.Sprintf("%q is not OXIDE=PERCENT: write for example SiO2=25.3", s)
}

func OxideTwice(name string) string { return fmt.Sprintf("%s stands twice: keep one of them", name) }

func BadBasis(s string) string {
	return fmt.Sprintf("--basis %q is not known: use dug, dried, roasted, ignited or normalised", s)
}

func BadNumber(flag, s string) string {
	return fmt.Sprintf("--%s %q is not a number: write digits with a point, as 12.5", flag, s)
}

// AssayDoubt says what is doubtful, what it may mean and what to do.
func AssayDoubt(d physics.AssayDoubt) string {
	a, b := percent(d.Stated), percent(d.Other)
	switch d.Kind {
	case physics.NoShare:
		return fmt.Sprintf("%s %s cannot be a share of a mass: check the number", d.Part, a)
	case physics.IronImpossible:
		return fmt.Sprintf("iron %s cannot be: pure %s holds %s; check whether it is an oxide's share or a formula weight", a, d.Part, b)
	case physics.IronOrOxide:
		return fmt.Sprintf("is %s iron, or iron oxide? If oxide is meant the iron is %s: give Fe2O3 or FeO instead", a, b)
	case physics.IronNeedsMagnetite:
		return fmt.Sprintf("iron %s is more than the %s of hematite: true only of magnetite or scale; check the number", a, b)
	case physics.IronNeedsRoast:
		return fmt.Sprintf("iron %s is more than the %s of goethite, which raw bog ore is: true of roasted ore; check what the shares are of", a, b)
	case physics.IronDisagrees:
		return fmt.Sprintf("iron is stated as %s but its oxides hold %s: one of them is a slip; the oxides were taken", a, b)
	case physics.IronTheRestFerric:
		return fmt.Sprintf("iron is stated as %s, more than FeO holds: the rest was taken for %s Fe2O3", a, b)
	case physics.SumByDifference:
		return fmt.Sprintf("the sum is %s: was one column taken by difference? Then the sum checks nothing", a)
	case physics.SumNormalised:
		return fmt.Sprintf("the shares were made to add up (%s), so the sum checks nothing", a)
	case physics.SumLacksLoss:
		return fmt.Sprintf("the sum is %s: %s lacks, most likely the loss on ignition (water, carbon dioxide); give it with --loi", a, b)
	case physics.SumLacksOxygen:
		return fmt.Sprintf("the sum is %s: %s lacks, most likely because some of the FeO is Fe2O3", a, b)
	case physics.SumLacksOxides:
		return fmt.Sprintf("the sum is %s: %s lacks, most likely oxides that were not measured or not keyed", a, b)
	case physics.SumIronTwice:
		return fmt.Sprintf("the sum is %s: FeO and Fe2O3 hold the same iron, most likely it stands twice; keep one", a)
	case physics.SumOxygenCounted:
		return fmt.Sprintf("the sum is %s, with the oxygen that FeO takes up while the loss is found (%s without): most likely the iron is Fe2O3, or the loss was corrected already", a, b)
	case physics.SumFerric:
		return fmt.Sprintf("the sum is %s: %s too much, most likely because some of the Fe2O3 is FeO", a, b)
	case physics.SumTooMuch:
		return fmt.Sprintf("the sum is %s: %s too much; check the numbers and what they are of", a, b)
	case physics.LossUnknown:
		return fmt.Sprintf("the loss before the shares were made to add up is not known: iron %s is %s at a loss of 14 %%; give the loss with --loi", a, b)
	case physics.SilicaUnknown:
		return "silica is not given: without it nothing is said of melting or of iron to be had; give SiO2"
	case physics.SlagTakesAll:
		return fmt.Sprintf("this ore cannot pay its own slag: its silica and that of wall and ash (assumed) take %s iron even into a slag poor in iron, and it holds %s; mix it with a richer one", b, a)
	case physics.SpinelMeltsLast:
		return "so rich in alumina that a spinel melts last: where it is all molten is not known, nor what more iron would do"
	}
	return ""
}

// percent is a share; one that can be none is written as short as it goes.
func percent(v float64) string {
	if math.Abs(v) >= 1e4 {
		return strconv.FormatFloat(v, 'g', 4, 64) + " %"
	}
	return plain(v) + " %"
}

// AssaySays is an assay in plain lines; heat is nil where none was given.
func AssaySays(a physics.Assay, heat *physics.Band) []string {
	var said []string
	line := func(name, format string, args ...any) {
		said = append(said, fmt.Sprintf("%-17s ", name)+fmt.Sprintf(format, args...))
	}
	if iron, ok := a.Iron(); ok {
		line("iron", "%s", percent(iron))
	}
	if sum, ok := a.Sum(); ok {
		line("sum", "%s", percent(sum))
	}
	if index, ok := a.ReducibleIron(); ok {
		line("reducible iron", "%.2f (%.2f with MnO as iron); 1 is fayalite, less keeps free iron oxide", index, a.Oxides().ReducibleIronIndex())
	}
	if b, ok := a.Melts(); ok {
		low, mid, high := physics.ToCelsius(b.P10), physics.ToCelsius(b.P50), physics.ToCelsius(b.P90)
		if a.Oxides().SpinelLast() {
			line("all molten", "not known, %s to %s °C", Units{}.Coarse(low), Units{}.Coarse(high))
		} else {
			line("all molten", "%s", Units{}.About(low, mid, high))
		}
	}
	if heat != nil {
		if r, ok := a.Runs(*heat); ok {
			line("at that heat", "%s", Runs(r))
		}
	}
	if b, ok := a.IronToBeHad(); ok {
		wall := physics.SilicaTakes(physics.WallAndAshSilica)
		line("iron to be had", "%.1f kg from 100 kg (%.1f to %.1f), before wall and ash take theirs, %.0f to %.0f kg (assumed)", b.P50, b.P10, b.P90, wall.P10, wall.P90)
	}
	for _, d := range a.Doubts() {
		line("doubt", "%s", AssayDoubt(d))
	}
	return said
}

// Runs says how a slag runs, the likeliest first, with its chance.
func Runs(r physics.Running) string {
	word, chance := likeliest(r)
	return word + ": " + chance
}

// RunsSo is Runs among other words.
func RunsSo(r physics.Running) string {
	word, chance := likeliest(r)
	return word + " " + chance
}

func likeliest(r physics.Running) (word, chance string) {
	word, most := "runs", r.Runs
	if r.Creeps > most {
		word, most = "creeps", r.Creeps
	}
	if r.Not > most {
		word, most = doesNotRun, r.Not
	}
	return word, InTen(most)
}

const doesNotRun = "does not run"

// RunsWhole says all three chances.
func RunsWhole(r physics.Running) string {
	return fmt.Sprintf("%s (runs %.0f, creeps %.0f, does not run %.0f in 10)", Runs(r), 10*r.Runs, 10*r.Creeps, 10*r.Not)
}

// RunsShort says the likeliest in few letters, at most 15, and its chance.
func RunsShort(r physics.Running) (word, chance string) {
	if word, chance = likeliest(r); word == doesNotRun {
		word = "too stiff"
	}
	return "slag " + word, chance
}

// InTen says a chance as people do.
func InTen(chance float64) string {
	switch n := int(10*chance + 0.5); {
	case n <= 0:
		return "hardly ever"
	case n >= 10:
		return "almost surely"
	default:
		return fmt.Sprintf("about %d in 10", n)
	}
}
