package words

import (
	"fmt"
	"strings"
	"time"

	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/plan"
	"chargehand/model/session"
)

// The card of what came of a smelt that is over.
const (
	ResultHead     = "the result"
	ResultBloom    = "bloom"
	ResultYield    = "yield"
	ResultCharcoal = "charcoal"
	ResultSlag     = "slag"
	ResultHours    = "hours"
	ResultForetold = "foretold"
	ResultIron     = "iron"
	ResultNextTime = "next time"

	ResultNone          = "none, no compact bloom"
	ResultNotWeighed    = "not known: weigh the bloom"
	ResultAfterBloom    = "after the bloom is weighed"
	ResultSlagUnweighed = "not known: weigh it"
	ResultNever         = "not known: not weighed"
	ResultFarNone       = "no bloom"
	ResultFarWeigh      = "weigh it"
	ResultFarNever      = "not weighed"
	ResultNoOre         = "no ore went in"
	ResultNothing       = "nothing: ore not all weighed"
)

// ResultPart is one line of the card: what is known of it, or what to weigh, and
// on what it is counted.
type ResultPart struct {
	Name, Says, Base string
	Far              string // the bloom's in a few words, for large letters
	Known            bool
	Spare            bool // left out where there is too little room
	SpareBase        bool // its base says least
}

// Result are the lines of the card. The two texts say what is still to be weighed of
// the ore and of the charcoal, "" where all is.
func Result(u Units, o session.Outcome, ore, charcoal string) []ResultPart {
	return []ResultPart{
		resultBloom(u, o), resultYield(u, o, ore), resultCharcoal(u, o, charcoal), resultSlag(u, o), resultHours(o), resultForetold(u, o),
	}
}

func resultBloom(u Units, o session.Outcome) ResultPart {
	p := ResultPart{Name: ResultBloom, Says: unweighedBloom(o), Far: ResultFarNever}
	switch {
	case o.Bloom.Positive():
		p.Says, p.Far, p.Known = u.Kg(o.Bloom.Value)+", "+resultState(o.State), u.Kg(o.Bloom.Value), true
	case o.None:
		p.Says, p.Far, p.Known = ResultNone, ResultFarNone, true
	case !o.Never:
		p.Far = ResultFarWeigh
	}
	return p
}

// resultState says in which state the bloom was weighed.
func resultState(s entry.PieceState) string {
	if s == "" {
		return "hot or cold not said"
	}
	return "weighed " + string(s)
}

func resultYield(u Units, o session.Outcome, toWeigh string) ResultPart {
	p := ResultPart{Name: ResultYield}
	share, known := o.Yield()
	switch {
	case known:
		p.Says, p.Known = wholePercent(share)+" % of the ore, dry", true
		p.Base = "of " + u.Kg(entry.Kilogram(o.OreDry.P50))
		if o.OreDry.Basis == figure.Guessed {
			p.Base += ", guessed"
		}
	case !o.OreDry.Known():
		p.Says = toWeigh
	case o.OreDry.P50 <= 0:
		p.Says = ResultNoOre
	case o.None:
		p.Says, p.Known = "none", true
		p.Base = "of " + u.Kg(entry.Kilogram(o.OreDry.P50)) + " ore, dry"
	default:
		p.Says = afterBloom(o)
	}
	return p
}

// unweighedBloom asks for the weight of the bloom, unless it was said that it will not be
// weighed.
func unweighedBloom(o session.Outcome) string {
	if o.Never {
		return ResultNever
	}
	return ResultNotWeighed
}

// afterBloom says of what is counted on the bloom that it waits for it.
func afterBloom(o session.Outcome) string {
	if o.Never {
		return ResultNever
	}
	return ResultAfterBloom
}

func resultCharcoal(u Units, o session.Outcome, toWeigh string) ResultPart {
	p := ResultPart{Name: ResultCharcoal}
	if _, known := o.Burnt(); !known {
		p.Says = toWeigh
		return p
	}
	mass := u.Kg(entry.Kilogram(o.Charcoal.P50))
	base := mass + " as charged, with fill"
	if o.Left > 0 {
		base = strings.TrimSuffix(mass, " "+u.Name("kg")) + " less " + u.Kg(o.Left) + " left, as charged"
	}
	if o.Charcoal.Basis == figure.Guessed {
		base += ", guessed"
	}
	per, known := o.CharcoalPerBloom()
	switch {
	case known && !o.CharcoalDry.Unknown && o.CharcoalDry.Kg > 0: // as the account counts it
		p.Says, p.Base, p.Known = fmt.Sprintf("%.1f %s dry per %[2]s of bloom", per*o.CharcoalDry.Kg/o.Charcoal.P50, u.Name("kg")), base, true
	case known:
		p.Says, p.Base, p.Known = fmt.Sprintf("%.1f %s per %[2]s of bloom", per, u.Name("kg")), base, true
	case o.None:
		p.Says, p.Base, p.Known = "for no bloom", base, true
	default:
		p.Says, p.Base = afterBloom(o), base
	}
	return p
}

func resultSlag(u Units, o session.Outcome) ResultPart {
	p := ResultPart{Name: ResultSlag, Says: ResultSlagUnweighed, Spare: true, SpareBase: true}
	if !o.Slag.Known {
		switch {
		case o.Tapped > 0 && o.SlagNever:
			p.Says, p.Known = u.Kg(o.Tapped)+" tapped", true
		case o.Tapped > 0:
			p.Says, p.Known = u.Kg(o.Tapped)+" tapped; weigh the rest", true
		case o.SlagNever:
			p.Says = ResultNever
		}
		return p
	}
	all := o.Slag.Value + o.Tapped
	p.Says, p.Known = u.Kg(all)+" weighed", true
	if o.Bloom.Positive() {
		p.Base = fmt.Sprintf("%.1f %s per %[2]s of bloom", float64(all/o.Bloom.Value), u.Name("kg"))
	}
	return p
}

// ResultIronOf is the yield of iron, with what it is counted on and what that rests on.
func ResultIronOf(y account.Yield) ResultPart {
	if y.Beyond() {
		return ResultPart{Name: ResultIron, Says: MoreThanAll, Known: true, Base: MoreThanAllWhy}
	}
	b := y.Band()
	p := ResultPart{Name: ResultIron, Says: wholePercent(b.P50) + " % of the iron in the ore", Known: true, SpareBase: true}
	p.Base = "between " + wholePercent(b.P10) + " and " + wholePercent(b.P90) + " %"
	if y.Share.Standing != account.Measured {
		p.Base += ", not all assayed"
	}
	return p
}

// ResultLesson is the line kept for next time, or where one is kept.
func ResultLesson(text string) ResultPart {
	if text == "" {
		return ResultPart{Name: ResultNextTime, Says: "nothing kept yet: v c, then n", Spare: true}
	}
	return ResultPart{Name: ResultNextTime, Says: text, Known: true}
}

func resultHours(o session.Outcome) ResultPart {
	until := "from light until closed"
	if o.Extracted {
		until = "from light until taken out"
	}
	return ResultPart{Name: ResultHours, Says: Lasted(o.Lasted.Truncate(time.Minute)), Base: until, Known: true, SpareBase: true}
}

func resultForetold(u Units, o session.Outcome) ResultPart {
	p := ResultPart{Name: ResultForetold, Says: ResultNothing}
	f := o.Foretold
	if !f.Known() {
		return p
	}
	p.Known, p.Base = true, OrNone(o.Chance)
	p.Says = Apart(f, u.Range(f.P10, f.P90, "kg", 1)) + ", "
	switch {
	case o.Bloom.Positive():
		p.Says += against(float64(o.Bloom.Value), f)
	case o.None:
		p.Says += "but none"
	case o.Never:
		p.Says += "never weighed"
	default:
		p.Says += "weigh it"
	}
	return p
}

// against says how what was weighed stands against what was foretold.
func against(kg float64, f figure.Figure) string {
	switch {
	case kg < f.P10:
		return "came less"
	case kg > f.P90:
		return "came more"
	}
	return "so it came"
}

// Promised says of the plan that a smelt was lit by what it promised, each beside what came:
// "ore 20 kg: 19.5 kg went in". There is none without a plan. Masses are dry on both sides.
func Promised(u Units, taken *entry.PlanTaken, o session.Outcome) (said []string) {
	if taken == nil {
		return nil
	}
	promised := func(name string) (entry.Estimate, bool) {
		e, ok := taken.Promised[name]
		return e, ok && e.P50.Known
	}
	mass := func(name, word string, kg float64, known bool) {
		e, ok := promised(name)
		if !ok {
			return
		}
		came := "not all that went in was weighed"
		if known {
			came = u.Kg(entry.Kilogram(kg)) + " went in"
		}
		said = append(said, word+" "+u.Kg(entry.Kilogram(e.P50.Value))+": "+came)
	}
	mass(plan.PromisedOre, "dry ore", o.OreDry.P50, o.OreDry.Known())
	mass(plan.PromisedCharcoal, "dry charcoal", o.CharcoalDry.Kg, !o.CharcoalDry.Unknown && o.CharcoalDry.Kg > 0)
	if e, ok := promised(plan.PromisedHours); ok {
		hours := Number(float64(e.P50.Value), 1)
		if e.P10.Known && e.P90.Known {
			hours = Number(float64(e.P10.Value), 1) + " to " + Number(float64(e.P90.Value), 1)
		}
		said = append(said, hours+" h: it took "+Lasted(o.Lasted.Truncate(time.Minute)))
	}
	if e, ok := promised(plan.PromisedChance); ok {
		said = append(said, "chance of what was wanted "+strings.TrimPrefix(NIn10(float64(e.P50.Value)), "about "))
	}
	return said
}

// PromisedLine is all that a plan promised in one line.
func PromisedLine(said []string) string { return "planned " + strings.Join(said, "; ") }
