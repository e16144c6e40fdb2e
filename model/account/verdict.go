package account

import "math"

// Kind is how far the account reaches.
type Kind int

// From nothing to several checks.
const (
	NothingWeighed Kind = iota // nothing to balance
	NothingToCheck             // everything there is went into solving for what was not known
	Closes                     // off by no more than weighing and assays explain
	Open                       // off by more; one check, so nothing can say which figure it is
	Doubtful                   // off by more; several checks, so some are likelier than others
)

var kindWords = [...]string{"nothing weighed", "nothing to check", "closes", "open", "doubtful"}

// String names the kind for JSON.
func (k Kind) String() string { return kindWords[k] }

// Verdict says how well the account closes and what that allows to be said.
type Verdict struct {
	Kind       Kind
	Redundancy int        // figures that are checked twice, as independent checks
	Rough      bool       // the figures contradict each other so far that nothing could be fitted to them
	Sought     []Sought   // what was not known
	Ifs        []If       // with one check: what it would close with, each by itself
	Suspects   []Suspects // with several: what may be wrong, the likeliest first
	Minus      []Minus    // what came out less than nothing
	Firm       *Part      // what it would help most to weigh or have assayed; nil when nothing is assumed or lacks
}

// Sought is something that was solved for.
type Sought struct {
	Part
	Amount Amount // kg; not known when the balances do not reach it
}

// If is a figure with which the account would close, everything else as it is.
type If struct {
	Part
	Is, Would float64 // kg, or a share
	Assumed   bool    // the figure was assumed, not measured
	CannotBe  bool    // Would is none that there can be: it is doubted all the same, and another figure with it
	Leak      bool    // no figure: Would kg of iron or silica that came out and were weighed nowhere; below nought, went in and were keyed nowhere
}

// Suspects are figures whose errors leave the same trace, with the odds of the
// group if just one figure of all is wrong.
type Suspects struct {
	Ifs  []If
	Odds float64 // 0 to 1
}

// Minus is something that came out below nought, which cannot be. It is told as
// it is.
type Minus struct {
	Part
	Amount Amount // kg
	Beyond bool   // further than its spread explains
	More   bool   // not a stream: more iron came out than went in
}

// least is the least below nought worth a word, kg.
const least = 0.005

// leastOdds is how likely a group has to be to be told at all.
const leastOdds = 0.05

// verdict counts what is checked before it says anything.
func (b *balances) verdict(s Solution, a Account) Verdict {
	v := Verdict{Redundancy: s.Redundancy, Kind: Closes, Rough: s.Rough}
	for j, q := range b.problem.Quantities {
		if !q.unknown() {
			continue
		}
		sought := Sought{Part: b.of[j]}
		if !s.Blind[j] {
			sought.Amount = Amount{s.Value[j], s.SD(j), Solved}
			if s.Value[j] < -least {
				v.Minus = append(v.Minus, Minus{Part: b.of[j], Amount: sought.Amount, Beyond: sought.Amount.Below()})
			}
		}
		v.Sought = append(v.Sought, sought)
	}
	if open := a.Iron.Open; open.Known() && open.Value < -least {
		v.Minus = append(v.Minus, Minus{More: true, Amount: open.times(-1), Beyond: open.Below()})
	}
	v.Firm = b.firm()
	switch {
	case s.Redundancy == 0:
		v.Kind = NothingToCheck
	case s.Explained():
	case s.Redundancy == 1:
		v.Kind = Open
		v.Ifs = b.ifs()
	default:
		v.Kind = Doubtful
		v.Suspects = b.doubted(s)
	}
	return v
}

// firm is what would help most: the first mass that nobody weighed, else the
// assumed figure that makes the iron balance the wider.
func (b *balances) firm() *Part {
	for j, q := range b.problem.Quantities {
		if q.unknown() && b.of[j].Figure == MassOf {
			return &b.of[j]
		}
	}
	x := make([]float64, len(b.of))
	for j, q := range b.problem.Quantities {
		x[j] = q.Value
	}
	best, widest := -1, 0.0
	for j, q := range b.problem.Quantities {
		if q.Standing != Assumed {
			continue
		}
		var slope float64
		for _, t := range b.problem.Balances[ironBalance].Terms {
			slope += t.slope(x, j)
		}
		if w := math.Abs(slope) * q.SD; w > widest {
			best, widest = j, w
		}
	}
	if best < 0 {
		return nil
	}
	return &b.of[best]
}

// ifs are the figures that would each close the account by themselves, those
// that can be; the measured ones before the assumed.
func (b *balances) ifs() []If {
	var all []If
	for _, standing := range []Standing{Measured, Assumed} {
		for j, q := range b.problem.Quantities {
			if q.Standing != standing || !q.known() {
				continue
			}
			if f, ok := b.freed(j); ok {
				all = append(all, f)
			}
		}
	}
	return all
}

// freed is what a figure comes to when everything else is held for true, and
// whether it can be that.
func (b *balances) freed(j int) (If, bool) {
	p := b.problem
	p.Quantities = append([]Quantity(nil), p.Quantities...)
	p.Quantities[j].Standing = Unknown
	s, err := p.Solve()
	if err != nil || s.Blind[j] {
		return If{}, false
	}
	f := If{Part: b.of[j], Is: b.problem.Quantities[j].Value, Would: s.Value[j], Assumed: b.problem.Quantities[j].Standing == Assumed}
	return f, b.of[j].canBe(f.Would)
}

// canBe tells whether a figure can have a value.
func (p Part) canBe(v float64) bool { return v >= 0 && v <= p.most() && finite(v) }

// most is the highest that a figure can be: no ore is richer in iron than
// magnetite, no slag than wustite.
func (p Part) most() float64 {
	switch {
	case p.Figure == MassOf:
		return math.Inf(1)
	case p.Figure != IronOf:
		return 1
	}
	switch p.Place {
	case Ore:
		return richestOre
	case Bloom, FragmentsIn, FragmentsOut:
		return 1
	}
	return richestSlag
}

// doubted are the groups of suspects worth telling.
func (b *balances) doubted(s Solution) []Suspects {
	var all []Suspects
	for _, c := range s.Suspects {
		if c.Odds < leastOdds {
			continue
		}
		for len(all) <= c.Group {
			all = append(all, Suspects{})
		}
		g := &all[c.Group]
		g.Odds = c.Odds
		if c.Leak >= 0 {
			figure := IronOf
			if c.Leak == silicaBalance {
				figure = SilicaOf
			}
			g.Ifs = append(g.Ifs, If{Part: Part{Figure: figure}, Would: c.Size, Leak: true})
			continue
		}
		if f, ok := b.freed(c.Quantity); ok {
			g.Ifs = append(g.Ifs, f)
		} else { // it is doubted all the same: its error would have to be of this size
			q := b.problem.Quantities[c.Quantity]
			would := q.Value - c.Size
			g.Ifs = append(g.Ifs, If{Part: b.of[c.Quantity], Is: q.Value, Would: would, CannotBe: !b.of[c.Quantity].canBe(would)})
		}
	}
	return all
}
