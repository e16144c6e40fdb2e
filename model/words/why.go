package words

import (
	"fmt"
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/rehearse"
	otherwise "chargehand/model/why"
	"chargehand/physics"
)

// Why is a whole smelt asked what one thing otherwise would have changed.
const (
	WhyIsOpinion = "the model's opinion"
	WhyNothing   = "None of it would have made a difference worth telling: by the model's opinion the hearth was hot enough and the ore came down."
	WhyAlike     = "no difference"
)

// WhyChoice is what is otherwise, in plain words.
func WhyChoice(c otherwise.Choice) string {
	switch c.Name {
	case otherwise.AsWas:
		return "as it was"
	case otherwise.MoreBlast:
		return fmt.Sprintf("more blast, by %.0f %%", 100*otherwise.ByBlast)
	case otherwise.LessBlast:
		return fmt.Sprintf("less blast, by %.0f %%", 100*(1-1/(1+otherwise.ByBlast)))
	case otherwise.LessOre:
		return "a fifth less ore a charge"
	case otherwise.MoreOre:
		return "a fifth more ore a charge"
	case otherwise.EvenOre:
		return "same ore in every charge"
	case otherwise.LaterOre:
		return "first ore two buckets later"
	case otherwise.NeverOff:
		return fmt.Sprintf("blast not off for %s", minutes(c.Off))
	case otherwise.LongerBurn:
		return fmt.Sprintf("pulled %s later", minutes(otherwise.Longer))
	case otherwise.WetCharcoal:
		return "charcoal a tenth wetter"
	case otherwise.PoorOre:
		return fmt.Sprintf("ore of %.0f points less iron", 100*otherwise.ByIron)
	}
	return string(c.Name)
}

func minutes(d time.Duration) string { return fmt.Sprintf("%.0f min", d.Minutes()) }

// WhyWithout is a rehearsal without something that went wrong in it.
func WhyWithout(m rehearse.Mishap) string { return "without: " + Mishap(m) }

// WhyHead says of what the figures are.
func WhyHead(asked int) string {
	if asked == 0 {
		return WhyIsOpinion
	}
	return fmt.Sprintf("%s: the same inputs in %d furnaces that are plausible, one thing otherwise", WhyIsOpinion, asked)
}

// WhyHours are hours too cold, WhyLeft is ore not come down: of the smelt as it was, and what is otherwise.
func WhyHours(b physics.Band) string {
	return fmt.Sprintf("%.1f h (%.1f to %.1f)", b.P50, b.P10, b.P90)
}

func WhyLeft(b physics.Band) string {
	return fmt.Sprintf("%.0f %% (%.0f to %.0f)", b.P50, b.P10, b.P90)
}

// WhyHoursBy and WhyLeftBy are by how much it is otherwise.
func WhyHoursBy(b physics.Band) string { return by(b, 1) }

func WhyLeftBy(b physics.Band) string { return by(b, 0) }

// by is a change with its band, a bare nothing for none.
func by(b physics.Band, decimals int) string {
	if signed(b.P10, decimals) == "0" && signed(b.P90, decimals) == "0" {
		return "0"
	}
	return fmt.Sprintf("%s (%s to %s)", signed(b.P50, decimals), signed(b.P10, decimals), signed(b.P90, decimals))
}

// signed is a number with its sign, none at nothing.
func signed(v float64, decimals int) string {
	s := fixed(math.Abs(v), decimals)
	switch {
	case s == fixed(0, decimals):
		return "0"
	case v < 0:
		return "-" + s
	}
	return "+" + s
}

// WhyHearthBy is by how much the hearth would have been hotter on the mean.
func (u Units) WhyHearthBy(b physics.Band) string {
	return signed(u.Shown(100+b.P50, "°C")-u.Shown(100, "°C"), 0)
}

// WhySure says in how many of the furnaces it is better or worse.
func WhySure(o otherwise.Outcome, asked int) string {
	switch {
	case o.Better > 0 && o.Better >= o.Worse:
		return fmt.Sprintf("better in %d of %d", o.Better, asked)
	case o.Worse > 0:
		return fmt.Sprintf("worse in %d of %d", o.Worse, asked)
	}
	return WhyAlike
}

// WhyAgainst says what published smelts have against it.
func WhyAgainst(t otherwise.Trend) string {
	which := map[otherwise.Quantity]string{otherwise.OreToCharcoal: "the more ore on their charcoal", otherwise.Air: "the more air", otherwise.Interval: "the longer from charge to charge"}[t.With]
	how := "the less bloom an ore"
	if t.Rank > 0 {
		how = "the more bloom an ore"
	}
	said := fmt.Sprintf("but of %d published smelts: %s, %s (rank correlation %.2f", t.Smelts, which, how, t.Rank)
	if t.ByChance() {
		said += ", which may be chance"
	}
	return said + ")"
}

// WhyCounted says what is counted.
func (u Units) WhyCounted() string {
	return fmt.Sprintf("Counted are hours from the first ore on in which the hearth was below %s, too cold for slag to run, and the share of the ore that had not come down when the bloom was pulled; in brackets 10 to 90 of 100. With another blast the charges follow each other as it burns. Nothing is said of kilograms: the model foretells nothing of those of published smelts.",
		u.Value(physics.SlagFreezes, "°C", 0))
}

// WhyTrulyCounted says what a rehearsal's own furnace tells.
const WhyTrulyCounted = "Beside it stands what the furnace of this rehearsal would truly have done, from where you took over: every charge as long after there was room for it as you took."

// WhyTruly is that in few words.
func (u Units) WhyTruly(t, was rehearse.Truly) (hours, left, bloom string) {
	hours, left, bloom = signed(t.Cold-was.Cold, 1), signed(t.Left-was.Left, 0), "no bloom"
	if t == was {
		hours, left = fmt.Sprintf("%.1f h", t.Cold), fmt.Sprintf("%.0f %%", t.Left)
	}
	switch {
	case t.Lost:
		bloom = "lost"
	case t.Bloom > 0:
		bloom = u.Kg(entry.Kilogram(t.Bloom))
	}
	return hours, left, bloom
}

// WhyTrulyLine is it in a line.
func (u Units) WhyTrulyLine(t, was rehearse.Truly) string {
	hours, left, bloom := u.WhyTruly(t, was)
	if t == was {
		return fmt.Sprintf("in truth %s cold, %s of the ore left, %s", hours, left, bloom)
	}
	return fmt.Sprintf("in truth %s h cold, %s %% ore left, %s", hours, left, bloom)
}
