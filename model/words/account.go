package words

import (
	"fmt"
	"math"
	"strings"

	"chargehand/model/account"
)

// AccountDoes is the line of help of account.
const AccountDoes = "tells where every kilogram of iron of a smelt went, as far as weighings and assays can tell"

// The sides of an account.
const (
	AccountIn  = "in"
	AccountOut = "out"
)

// NotWeighedOrKeyed is something that a balance lacks altogether.
const NotWeighedOrKeyed = "weighed nowhere, or keyed nowhere"

// AccountFailed says that no account could be made, and what to do.
func AccountFailed(smelt string, err error) string {
	return fmt.Sprintf("no account of %s: %v; look through its weighings and assays for one that cannot be", smelt, err)
}

// placeWords name what went in and came out.
var placeWords = map[account.Place]string{
	account.Ore: "ore", account.SeedSlag: "seed slag", account.ReturnedSlag: "returned slag", account.FragmentsIn: "fragments charged",
	account.Flux: "flux", account.WallAndAsh: "wall and ash", account.Wall: "wall", account.Ash: "ash", account.Bloom: "bloom",
	account.FragmentsOut: "fragments", account.TapSlag: "tap slag", account.FurnaceSlag: "furnace slag", account.Slag: "slag",
}

// AccountPlace names what went in or came out.
func AccountPlace(p account.Place) string { return placeWords[p] }

var baseWords = map[account.Base]string{
	account.BloomMass: "bloom", account.BloomIron: "iron in the bloom", account.MetalGained: "iron in bloom and fragments, less fragments charged",
	account.MetalOut: "iron in bloom and fragments",
	account.OreDry:   "ore, dry", account.OreIron: "iron in the ore", account.AllIron: "iron in all that was charged",
	account.CharcoalDry: "charcoal, dry", account.SlagMass: "slag",
}

// AccountBase names what a yield counts or is counted on.
func AccountBase(b account.Base) string { return baseWords[b] }

// Account is the account in plain lines, in kg.
func Account(a account.Account) string {
	var b strings.Builder
	longest := 0.0
	for _, rows := range [][]account.Row{a.In, a.Out} {
		for _, r := range rows {
			longest = math.Max(longest, r.Iron.Value)
		}
	}
	fmt.Fprintf(&b, "%s: where the iron went\n", a.Name)
	for _, side := range []struct {
		head string
		rows []account.Row
	}{{AccountIn, a.In}, {AccountOut, a.Out}} {
		fmt.Fprintf(&b, "iron %s\n", side.head)
		for _, r := range side.rows {
			if r.Place != account.WallAndAsh && r.Place != account.Flux {
				fmt.Fprintf(&b, "  %-42s %-24s %-30s %s\n", AccountStream(r), AccountKg(r.Iron), AccountRests(r), ironBar(r.Iron, longest))
			}
		}
	}
	if o := a.Iron.Open; o.Known() {
		fmt.Fprintf(&b, "  %-42s %s\n", "not accounted for, may be minus", AccountKg(o))
	}
	for _, s := range AccountVerdict(a) {
		fmt.Fprintln(&b, s)
	}
	if f := a.Verdict.Firm; f != nil {
		fmt.Fprintf(&b, "what would firm it up most: %s\n", firmWords(*f))
	}
	for _, s := range AccountPassages(a) {
		fmt.Fprintln(&b, s)
	}
	if len(a.Yields) > 0 {
		fmt.Fprintln(&b, "yields, each with what it is counted on")
		for _, y := range a.Yields {
			fmt.Fprintf(&b, "  %s\n", AccountYield(y).Line())
		}
	}
	return strings.TrimRight(b.String(), "\n") + "\n"
}

// AccountStream is one row's name with its mass and its share of iron.
func AccountStream(r account.Row) string {
	s := placeWords[r.Place]
	if r.Name != "" {
		s += " (" + r.Name + ")"
	}
	share := "iron"
	if metallic(r.Place) {
		share = "metal"
	}
	switch {
	case r.Mass.Standing == account.Unknown:
		return s + ", not weighed"
	case r.Mass.Standing == account.Solved:
		return fmt.Sprintf("%s, not weighed, %.0f %% %s", s, 100*r.Share.Value, share)
	case r.Mass.Value == 0:
		return "no " + s
	}
	dry := ""
	if r.Place == account.Ore { // what went in damp weighed more
		dry = " dry"
	}
	return fmt.Sprintf("%s %s kg%s, %.0f %% %s", s, kgs(r.Mass.Value), dry, 100*r.Share.Value, share)
}

func metallic(p account.Place) bool {
	return p == account.Bloom || p == account.FragmentsIn || p == account.FragmentsOut
}

// AccountRests says what a row rests on, mass and share told apart.
func AccountRests(r account.Row) string {
	if r.Mass.Standing == account.Measured && r.Mass.Value == 0 {
		return ""
	}
	mass := map[account.Standing]string{account.Measured: "weighed", account.Assumed: "weight assumed", account.Solved: "solved for"}[r.Mass.Standing]
	if mass == "" {
		return "nothing known of it"
	}
	switch {
	case r.Share.Standing == account.Measured:
		return mass + ", assayed"
	case r.Mass.Standing == account.Assumed:
		return "weight and share assumed"
	}
	return mass + ", share assumed"
}

// ironBar is a bar of a row's iron; what its spread leaves open is drawn thin.
func ironBar(a account.Amount, longest float64) string {
	const width = 24
	if !a.Known() || !(longest > 0) {
		return ""
	}
	band := a.Band()
	cells := func(v float64) int { return max(0, min(2*width, int(math.Round(width*v/longest)))) }
	whole, all := cells(band.P10), cells(band.P90)
	return strings.Repeat("=", whole) + strings.Repeat("-", max(0, all-whole))
}

// AccountKg is kilograms with the 10th and 90th percentile.
func AccountKg(a account.Amount) string {
	if !a.Known() {
		return "unknown"
	}
	b := a.Band()
	s := kgs(a.Value) + " kg"
	if kgs(b.P10) != kgs(b.P90) {
		s += fmt.Sprintf(" (%s to %s)", kgs(b.P10), kgs(b.P90))
	}
	return s
}

// kgs is kilograms to a tenth; below one to a hundredth.
func kgs(v float64) string {
	if math.Abs(v) < 0.995 {
		return Number(v, 2)
	}
	return fmt.Sprintf("%.1f", v)
}

// AccountPassages are, a line each, carbon and mass, in and out; what is left went as gas.
func AccountPassages(a account.Account) (said []string) {
	add := func(format string, values ...any) { said = append(said, fmt.Sprintf(format, values...)) }
	if s := a.Silica; s.Open.Known() {
		add("silica: %s in, %s out, %s open", AccountKg(s.In), AccountKg(s.Out), AccountKg(s.Open))
	}
	if c := a.Carbon; c.In.Known() {
		if c.Out.Value > 0 {
			add("carbon: %s in with the charcoal, %s left over; the rest, %s, went as gas (not tested)", AccountKg(c.In), AccountKg(c.Out), AccountKg(c.Rest))
		} else {
			add("carbon: %s in with the charcoal, none weighed as left over: all went as gas (not tested)", AccountKg(c.In))
		}
	}
	m := a.Mass
	switch {
	case m.Rest.Known():
		add("mass without charcoal and wall: %s kg in, %s kg out, %s %%; the rest, %s kg, went as gas or was not weighed (not tested)",
			kgs(m.In.Value), kgs(m.Out.Value), wholePercent(m.Share.Value), kgs(m.Rest.Value))
	case m.In.Known():
		add("mass without charcoal and wall: %s kg in; not all that came out was weighed", kgs(m.In.Value))
	}
	if a.Oxygen.Known() && a.Oxygen.Value > 0 {
		add("oxygen that left as gas with the iron that became metal: %s, were the ore hematite", AccountKg(a.Oxygen))
	}
	if b := a.BloomSlag; b.Known {
		add("the bloom, hung in water: %s", SlagBand(b.Low, b.High))
	}
	return said
}

// Told is a figure in three parts, for a table or a line: what it is, how much, and of or on what.
type Told struct{ What, Is, Of string }

// Line is it in one line.
func (t Told) Line() string { return t.What + ": " + t.Is + " " + t.Of }

// MoreThanAll says of a share of iron that it cannot be, and what that means.
const (
	MoreThan       = "more than"
	MoreThanAll    = MoreThan + " the ore held"
	MoreThanAllWhy = "a figure is off or missing"
)

// AccountYield is one yield with its base: "bloom: 26 % of the ore, dry".
func AccountYield(y account.Yield) Told {
	what, base, b := baseWords[y.What], baseWords[y.Base], y.Band()
	switch {
	case y.What == account.CharcoalDry || y.What == account.SlagMass:
		return Told{what, kgs(y.Share.Value) + " kg", "a kg of " + base}
	case y.Beyond():
		return Told{what, MoreThan, "the " + base + ": " + MoreThanAllWhy}
	}
	of := "of the " + base
	if low, high := wholePercent(math.Max(0, b.P10)), wholePercent(b.P90); low != high {
		of += fmt.Sprintf(" (%s to %s)", low, high)
	}
	return Told{what, wholePercent(b.P50) + " %", of}
}
