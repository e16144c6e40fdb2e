package account

// balances is a smelt put as a problem, with what stands where in it.
type balances struct {
	smelt   Smelt
	problem Problem
	of      []Part         // what each quantity is
	mass    map[place]int  // of each stream
	iron    []int          // of each assay; -1 for none
	silica  []int          // of each assay; -1 for none
	terms   map[place]line // of each stream
	lost    int            // the silica of wall and ash where it is sought; -1 for none
	tested  [2]bool        // iron, silica
}

// place is a stream of a smelt: in or out, and which.
type place struct {
	out bool
	i   int
}

// line is a stream's iron and silica.
type line struct{ iron, silica []Term }

// Part says which figure of a smelt a quantity is: a mass, or a share in it.
type Part struct {
	Place Place
	Name  string // of the lot
	Figure
}

// Figure is a mass or one of the shares; of wall and ash of unknown mass, and of
// ash, silica is in kg.
type Figure int

// What of a stream a figure is.
const (
	MassOf Figure = iota
	IronOf
	SilicaOf
)

var figureWords = [...]string{"mass", "iron", "silica"}

// String names the figure for JSON.
func (f Figure) String() string { return figureWords[f] }

// InKg tells whether the figure is in kg; else it is a share.
func (p Part) InKg() bool {
	return p.Figure == MassOf || p.Figure == SilicaOf && (p.Place == WallAndAsh || p.Place == Ash)
}

// The balances of a smelt.
const (
	ironBalance = iota
	silicaBalance
)

// balance puts a smelt as a problem. Iron that the wall brings is left out: a
// few per cent of a kilogram or two.
func balance(s Smelt) balances {
	b := balances{smelt: s, mass: map[place]int{}, terms: map[place]line{}, lost: -1}
	b.tested[ironBalance] = len(s.In) > 0 && len(s.Out) > 0
	b.tested[silicaBalance] = b.tested[ironBalance] && s.silicaKnown()
	b.iron, b.silica = make([]int, len(s.Assays)), make([]int, len(s.Assays))
	for i := range s.Assays {
		b.iron[i], b.silica[i] = -1, -1
	}
	for i, st := range s.In {
		b.stream(place{false, i}, st)
	}
	for i, st := range s.Out {
		b.stream(place{true, i}, st)
	}
	b.problem.Balances = []Balance{{Name: "iron"}}
	if b.tested[silicaBalance] {
		b.problem.Balances = append(b.problem.Balances, Balance{Name: "silica"})
		b.wallAndAsh()
	}
	b.each(func(p place, _ Stream) {
		sign := 1.0
		if p.out {
			sign = -1
		}
		for k, ts := range [][]Term{b.terms[p].iron, b.terms[p].silica} {
			if k < len(b.problem.Balances) {
				for _, t := range ts {
					b.problem.Balances[k].Terms = append(b.problem.Balances[k].Terms, Term{sign * t.Times, t.Of})
				}
			}
		}
	})
	return b
}

// silicaKnown tells whether there is a silica balance: of all ore, and of what
// slag is made of.
func (s Smelt) silicaKnown() bool {
	ore := false
	for _, st := range s.In {
		if st.Place == Ore {
			if !s.Assays[st.Of].Silica.Known() {
				return false
			}
			ore = true
		}
	}
	return ore && s.OwnSlag >= 0 && s.Assays[s.OwnSlag].Silica.Known()
}

// each goes through the streams, in before out.
func (b *balances) each(do func(place, Stream)) {
	for i, st := range b.smelt.In {
		do(place{false, i}, st)
	}
	for i, st := range b.smelt.Out {
		do(place{true, i}, st)
	}
}

// quantity adds one and gives its place.
func (b *balances) quantity(p Part, a Amount) int {
	b.of = append(b.of, p)
	b.problem.Quantities = append(b.problem.Quantities, Quantity{Value: a.Value, SD: a.SD, Standing: a.Standing})
	return len(b.of) - 1
}

// share is the place of an assay's share, added when it is first met.
func (b *balances) share(have []int, of int, p Part, a Amount) int {
	if have[of] < 0 {
		have[of] = b.quantity(p, a)
	}
	return have[of]
}

// shared tells whether several streams are of one make: the slag of one smelt.
func (b *balances) shared(of int) bool {
	n := 0
	b.each(func(_ place, st Stream) {
		if st.Of == of {
			n++
		}
	})
	return n > 1
}

// stream adds a stream's mass and shares and makes its terms.
func (b *balances) stream(p place, st Stream) {
	m := b.quantity(Part{st.Place, st.Name, MassOf}, st.Mass)
	b.mass[p] = m
	assay := b.smelt.Assays[st.Of]
	of := Part{st.Place, st.Name, MassOf}
	if b.shared(st.Of) {
		of = Part{Slag, "", MassOf}
	}
	as := func(f Figure) Part { return Part{of.Place, of.Name, f} }
	var l line
	if st.Place != Flux { // taken to hold no iron
		fe := b.share(b.iron, st.Of, as(IronOf), assay.Iron)
		l.iron = []Term{{1, []int{m, fe}}}
	}
	if b.tested[silicaBalance] {
		switch st.Place {
		case Bloom, FragmentsOut, FragmentsIn: // what is not metal is slag
			own := b.smelt.Assays[b.smelt.OwnSlag]
			si := b.share(b.silica, b.smelt.OwnSlag, Part{Slag, "", SilicaOf}, own.Silica)
			l.silica = []Term{{1, []int{m, si}}, {-1, []int{m, b.iron[st.Of], si}}}
		default:
			if assay.Silica.Known() {
				si := b.share(b.silica, st.Of, as(SilicaOf), assay.Silica)
				l.silica = []Term{{1, []int{m, si}}}
			}
		}
	}
	b.terms[p] = l
}

// wallAndAsh adds what wall, ash and flux of unknown make bring of silica: one
// unknown, or the wall as weighed with the ash beside it.
func (b *balances) wallAndAsh() {
	silica := &b.problem.Balances[silicaBalance]
	if !b.smelt.Wall.Known() || b.fluxUnknown() {
		b.lost = b.quantity(Part{WallAndAsh, "", SilicaOf}, Amount{})
		silica.Terms = append(silica.Terms, Term{1, []int{b.lost}})
		return
	}
	wall := b.quantity(Part{Wall, "", MassOf}, b.smelt.Wall)
	clay := b.quantity(Part{Wall, "", SilicaOf}, wallSilica)
	silica.Terms = append(silica.Terms, Term{1, []int{wall, clay}})
	if b.smelt.Charcoal.Known() {
		ash := b.smelt.Charcoal.of(b.smelt.AshShare).of(ashSilica)
		ash.Standing = Assumed
		silica.Terms = append(silica.Terms, Term{1, []int{b.quantity(Part{Ash, "", SilicaOf}, ash)}})
	}
}

func (b *balances) fluxUnknown() bool {
	for _, st := range b.smelt.In {
		if st.Place == Flux && !(st.Mass.Known() && b.smelt.Assays[st.Of].Silica.Known()) {
			return true
		}
	}
	return false
}

// raw is what terms come to by what was measured and assumed; not known when a
// quantity in them is not.
func (b *balances) raw(terms []Term) Amount {
	x := make([]float64, len(b.of))
	for j, q := range b.problem.Quantities {
		x[j] = q.Value
	}
	sum, variance := Weighed(0, 0), 0.0
	for _, t := range terms {
		sum.Value += t.at(x)
		for _, j := range t.Of {
			sum.Standing = min(sum.Standing, b.problem.Quantities[j].Standing)
		}
	}
	if !sum.Known() {
		return Amount{}
	}
	for j, q := range b.problem.Quantities {
		var slope float64
		for _, t := range terms {
			slope += t.slope(x, j)
		}
		variance += slope * slope * q.SD * q.SD
	}
	sum.SD = sqrt(variance)
	return sum
}
