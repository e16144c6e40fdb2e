// Package picture is the geometry of the shaft as it is drawn: to scale in
// height, in centimetres above the tuyere, with no cell and no pixel in it.
// Screens paint it on cells and reports as SVG, so both show the same furnace.
package picture

import (
	"math"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/physics"
)

// Heat is how strongly a height glows, in steps that survive sixteen colours
// and become patterns where there is no colour.
type Heat int

// The steps, cold to white.
const (
	Cold   Heat = iota // no glow
	Dull               // below about 650 C: dark to the eye by day
	Red                // to about 900 C
	Orange             // to about 1150 C
	Yellow             // to about 1300 C
	White              // above
)

// Slice is one layer of the burden: where it stands, what it is, how it glows.
type Slice struct {
	Top, Bottom float64 // cm above the tuyere
	Charge      int     // number of the charge, 0 for the fill
	OreTop      float64 // the ore lies on its charcoal from here down to OreBottom; equal when there is none
	OreBottom   float64
}

// Label is what is to be said beside a height.
type Label struct{ figure.Zone }

// At is the height it stands at, in cm above the tuyere.
func (l Label) At() float64 { return (l.Top + l.Bottom) / 2 }

// Picture is the shaft at one moment.
type Picture struct {
	Top, Floor     float64 // cm: what is drawn, from above the mark (or the rim) down to the floor of the hearth
	Mark           float64 // cm: the charging mark
	Arch           float64 // cm: the crown of the arch; at Floor when its height is not known
	Burden         float64 // cm: the top of the burden; 0 when unknown
	BurdenKnown    bool
	Sunk           bool    // the burden has burned down to the tuyere: what stands below it is not known
	Bore           float64 // cm at the tuyere
	BoreTop        float64 // cm at the charging mark
	Usual          bool    // the bore or the stack was not given: it is drawn as a usual one
	Angle          float64 // degrees downwards
	TuyereRight    bool
	BlastOn        bool
	Slices         []Slice             // from the top
	Labels         []Label             // from the top
	Heats          []Glow              // from the top, covering the burden
	Bath           float64             // cm: top of the slag bath, below the tuyere; equal to Floor when none is known
	NoLevel        figure.LevelMissing // what the height of the bath would need
	Bloom          float64             // cm: height of the bloom; 0 when none is known
	Stale          bool                // the zones are being worked out anew
	Doubted        bool                // they rest on a blast whose meter is not believed
	BeyondReadings bool                // the model has a place hotter than any that was read in such a furnace

	Hearth  physics.Band       // how hot the hearth is, C; zero until solved
	Melts   physics.Band       // when the slag in it is all molten, C; zero where not known
	Stiff   figure.Figure      // Pa s, how stiff the slag is; not known without Melts
	Poorer  []figure.SlagPoint // and would be with other shares of iron
	Running physics.Running    // how it runs, as chances
}

// Glow is a stretch of the shaft that glows alike.
type Glow struct {
	Top, Bottom float64
	Heat        Heat // in the middle
	Wall        Heat // at the wall side; the same while it is not known
}

// HeatAt is the glow at a height.
func (p Picture) HeatAt(cm float64) Heat {
	for _, g := range p.Heats {
		if cm <= g.Top && cm >= g.Bottom {
			return g.Heat
		}
	}
	return Cold
}

// From draws a reading. The furnace gives the frame; what it does not tell is
// drawn at the size of a usual shaft, and the screen says so.
func From(r *figure.Reading) Picture {
	f := r.Light.Furnace
	p := Picture{
		Mark: sized(f.Stack, usualStack), Floor: -sized(f.TuyereBase, usualBase),
		Bore: sized(f.Bore, usualBore), Usual: !f.Stack.Positive() || !f.Bore.Positive(),
		Angle: float64(f.TuyereAngle.Or(0)), TuyereRight: f.TuyereRight,
		BlastOn: !r.BlastOff && !r.Phase.Over() && (r.Blast != entry.Blast{}),
	}
	p.BoreTop = sized(f.BoreTop, entry.Centimetre(p.Bore))
	p.Arch = p.Floor + float64(f.ArchHigh.Or(0))
	p.Top = max(float64(f.Rim.Or(0)), p.Mark+4)
	if h := r.Figure(figure.StackHeight); h.Known() {
		p.Burden, p.BurdenKnown = h.P50, true
		p.Top = max(p.Top, h.P50+2)
	}
	p.Bath, p.Bloom = p.Floor, bloomHeight(r.Figure(figure.BloomSoFar), p.Bore)
	p.Stale = r.Solver == figure.Resolving
	p.BeyondReadings = r.Solver != figure.Unsolved && r.BeyondReadings()
	p.Doubted = r.Solver != figure.Unsolved && r.MeterDoubted()
	if h := r.Figure(figure.HearthTemperature); h.Known() {
		p.Hearth = h.Band
	}
	if m, v := r.Figure(figure.SlagMelts), r.Figure(figure.SlagStiffness); m.Known() && v.Known() {
		p.Running = r.Running
		p.Melts, p.Stiff, p.Poorer = m.Band, v, r.Poorer
	}
	p.NoLevel = r.SlagLevelMissing()
	if below := r.Figure(figure.SlagBelowTuyere); below.Known() {
		p.Bath = max(p.Floor, -below.P50)
	}
	if r.Phase.Over() {
		p.Bloom = 0 // it is out
	}
	for _, l := range r.Layers {
		p.Slices = append(p.Slices, slice(l))
	}
	p.Sunk = p.BurdenKnown && len(p.Slices) == 0 && !r.Phase.Over()
	for _, z := range r.Zones {
		p.Labels = append(p.Labels, Label{z})
		p.Heats = append(p.Heats, Glow{
			Top: z.Top, Bottom: z.Bottom, Heat: HeatOf(z.Degrees), Wall: HeatOf(float64(z.WallSide.Or(entry.Celsius(z.Degrees)))),
		})
	}
	return p
}

// Sizes of a usual short shaft, where the furnace's own were not given: stack
// 50 cm above a tuyere 15 cm above the base, in a bore of 28 cm (published
// smelts of 2016 and 2021 in testdata).
const (
	usualStack entry.Centimetre = 50
	usualBase  entry.Centimetre = 15
	usualBore  entry.Centimetre = 28
)

// sized is a size that can be drawn: the furnace's own or the usual one.
func sized(own entry.Maybe[entry.Centimetre], usual entry.Centimetre) float64 {
	if own.Positive() {
		return float64(own.Value)
	}
	return float64(usual)
}

// How a bloom lies: over about half of the hearth's width, and as dense as
// spongy iron with slag in it (from memory, unverified: 4 to 5 kg/l).
const (
	bloomWidth = 0.6
	bloomKgL   = 4.5
)

// bloomHeight is how high a bloom stands in a hearth of a bore in cm, in cm.
func bloomHeight(kg figure.Figure, bore float64) float64 {
	if !kg.Known() {
		return 0
	}
	across := bloomWidth * bore
	return kg.P50 / bloomKgL * 1000 / (math.Pi / 4 * across * across)
}

// BoreAt is the bore at a height, in cm: straight from the tuyere to the mark,
// the same above and below.
func (p Picture) BoreAt(cm float64) float64 {
	share := min(max(cm/p.Mark, 0), 1)
	return p.Bore + share*(p.BoreTop-p.Bore)
}

// SliceAt is the layer that stands at a height.
func (p Picture) SliceAt(cm float64) (Slice, bool) {
	for _, s := range p.Slices {
		if cm <= s.Top && cm > s.Bottom {
			return s, true
		}
	}
	return Slice{}, false
}

// HeatOf is the glow of a temperature in degrees Celsius. The limits are the
// usual colours of hot iron in shade (common practice).
func HeatOf(c float64) Heat {
	switch {
	case c < 200:
		return Cold
	case c < 650:
		return Dull
	case c < 900:
		return Red
	case c < 1150:
		return Orange
	case c < 1300:
		return Yellow
	}
	return White
}

// What a litre of each weighs as it is poured, in kg: roasted ore crushed to
// peas and nuts (from memory, unverified), and charcoal as broken for the
// furnace (0.2 to 0.25 is common practice).
const (
	oreKgL      = 1.4
	charcoalKgL = 0.24
)

// slice draws a layer: the ore of a charge lies on its charcoal, which lies
// below, and takes the share of the layer's height that its volume has of the
// charge, as each is poured.
func slice(l figure.Layer) Slice {
	s := Slice{Top: l.Top, Bottom: l.Bottom, Charge: l.Charge, OreTop: l.Top, OreBottom: l.Top}
	if !l.Ore.Known() || l.Ore.P50 <= 0 {
		return s
	}
	share := 0.2
	if l.Charcoal.Known() && l.Charcoal.P50 > 0 {
		ore := l.Ore.P50 / oreKgL
		share = ore / (ore + l.Charcoal.P50/charcoalKgL)
	}
	s.OreBottom = l.Top - share*(l.Top-l.Bottom)
	return s
}
