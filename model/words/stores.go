package words

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/plan"
	"chargehand/physics"
)

// Stores and furnaces on the command line.
const (
	StoresDoes  = "lists what there is of ore, charcoal, wood and the rest, dry and as it lies; --from takes entries, --template shows how they are written"
	FurnaceDoes = "lists the furnaces in their versions, with volume and the blast that is advised; --from takes entries, --template shows how they are written"

	FlagFrom     = "a `file` of JSON lines to keep, all or none: {\"happened\",\"kind\",\"event\"}"
	FlagTemplate = "print an example line of each kind"

	FromOrTemplate = "give --from or --template, not both"

	StoresEmpty   = "Nothing here yet. Weigh three things: a bucket of charcoal, a scoop of ore, all the ore.\n(chargehand stores --template shows how to key them)\n"
	FurnacesEmpty = "No furnace here yet: chargehand furnace --template shows how one is keyed.\n"
)

// HouseTaken says how many entries were kept.
func HouseTaken(file string, n int) string { return fmt.Sprintf("%s: %s kept", file, EntriesOf(n)) }

// BadHouseLine says what is wrong with a line, and that nothing was kept.
func BadHouseLine(file string, line int, err any) string {
	return fmt.Sprintf("%s, line %d: %v; nothing was kept: --template shows how a line is written", file, line, err)
}

// TooManyLines says so.
func TooManyLines(most int) string { return fmt.Sprintf("more than %d lines: split the file", most) }

// NothingToTake says so.
func NothingToTake(file string) string {
	return fmt.Sprintf("%s holds no line to keep; --template shows how one is written", file)
}

// NotOfThisWing refuses a kind.
func NotOfThisWing(k entry.Kind, kinds string) string {
	return fmt.Sprintf("a %q is not kept here; kinds are %s", k, kinds)
}

// BadHappened refuses a time.
func BadHappened(s string) string {
	return fmt.Sprintf("%q is no time: write it as 2026-05-09T14:32:00+02:00, or leave it out for now", s)
}

// MoreIronThanCanBe refuses an assay for a lot.
func MoreIronThanCanBe(percent, most float64) string {
	return fmt.Sprintf("%.1f %% iron cannot be: no ore holds more than %.1f %%; is it iron oxide, or a formula weight? Write Fe2O3 for oxide", percent, most)
}

// StoresRow is a lot with the iron in it, where that is known.
type StoresRow struct {
	house.Lot
	Iron physics.Band
}

// Stores lists what there is.
func Stores(lots []StoresRow) string {
	if len(lots) == 0 {
		return StoresEmpty
	}
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "LOT\tWHAT\tCAME\tWENT\tLEFT, DRY\tAS IT LIES\tIRON")
	for _, l := range lots {
		lies, iron := "", ""
		if l.Left.Known() {
			lies = planned(l.Weight(l.Left.Kg), "kg")
		}
		if l.Iron.P50 > 0 {
			iron = planned(l.Iron.P50, "kg")
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\t%s\t%s\n", l.Name, LotMaterial(l.Of()), dryMass(l.Came), dryMass(l.Went), dryMass(l.Left), lies, iron)
	}
	w.Flush()
	for _, l := range lots {
		if kg, short := l.Short(); short {
			fmt.Fprintf(&b, "%s: %s more used than there was: count it again, or an entry is wrong\n", l.Name, planned(kg, "kg"))
		}
	}
	return b.String()
}

// LotMaterial names a material in plain words.
func LotMaterial(m entry.Material) string {
	if m == "" {
		return "not said"
	}
	return strings.ReplaceAll(string(m), "_", " ")
}

// dryMass is a mass with what is not known of it.
func dryMass(m house.Mass) string {
	switch {
	case m.More && m.Less:
		return "not known"
	case m.More && m.Kg == 0:
		return "some"
	case m.More:
		return "at least " + planned(m.Kg, "kg")
	case m.Less:
		return "at most " + planned(m.Kg, "kg")
	}
	if d := physics.Z90 * m.SD; d >= 0.05*m.Kg && d >= 0.05 {
		return planned(m.Kg, "") + " ±" + planned(d, "kg")
	}
	return planned(m.Kg, "kg")
}

// Furnaces lists furnaces with what is reckoned of them.
func Furnaces(all []house.Furnace) string {
	if len(all) == 0 {
		return FurnacesEmpty
	}
	var b strings.Builder
	for _, f := range all {
		last := f.Last().Furnace
		fmt.Fprintf(&b, "%s\n", last.Name)
		for _, v := range f.Versions {
			fmt.Fprintf(&b, "  %s  %-9s %s\n", v.From.Format("2006-01-02"), v.Why, FurnaceSizes(v.Furnace))
		}
		if n := len(f.Dryings); n > 0 {
			fmt.Fprintf(&b, "  days of drying keyed: %d, the last on %s\n", n, f.Dryings[n-1].At.Format("2006-01-02"))
		}
		if plan.Sized(last) {
			s := plan.ShaftOf(last)
			fmt.Fprintf(&b, "  holds %s from the tuyere to the mark; to fill it takes some %.0f measures of 1.8 kg\n", planned(s.Litres, "l"), s.Fill()/1.8)
			fmt.Fprintf(&b, "  blast: one school advises %.0f to %.0f l/min for this bore; good smelts used %.0f to %.0f\n", s.Advised.P10, s.Advised.P90, s.Used.P10, s.Used.P90)
		} else {
			fmt.Fprintf(&b, "  measure bore and height above the tuyere: then volume and blast can be reckoned\n")
		}
	}
	return b.String()
}

// FurnaceSizes are a furnace in figures, as far as they are known.
func FurnaceSizes(f entry.Furnace) string {
	var all []string
	say := func(name string, m entry.Maybe[entry.Centimetre]) {
		if m.Known {
			all = append(all, fmt.Sprintf("%s %g", name, float64(m.Value)))
		}
	}
	if len(f.Bores) > 0 { // as measured, in place of the one as built
		for _, b := range f.Bores {
			all = append(all, fmt.Sprintf("bore %g at %g", float64(b.Bore), float64(b.At)))
		}
	} else {
		say("bore", f.Bore)
		say("at the top", f.BoreTop)
	}
	say("mark", f.Stack)
	say("rim", f.Rim)
	say("floor", f.TuyereBase)
	say("wall", f.Wall)
	if f.ArchWide.Known && f.ArchHigh.Known {
		all = append(all, fmt.Sprintf("arch %g wide and %g high", float64(f.ArchWide.Value), float64(f.ArchHigh.Value)))
	} else {
		say("arch, wide", f.ArchWide)
		say("arch, high", f.ArchHigh)
	}
	if len(all) == 0 {
		return "no sizes"
	}
	return strings.Join(all, ", ") + " cm"
}
