package figure

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

// Zones are a stated simple guess until a solver feeds them: the one published
// row of six readings up a furnace wall (Markewitz, data sheet of 30 Oct 2021,
// row A), stretched to this burden. The row of 13:55, a quarter of an hour after
// the fill, stands for a furnace just filled, that of 15:21 for a warm one; in
// between the guess goes from one to the other. The heights of the readings are
// not given there; they are taken at every 10 cm from the tuyere of a 50 cm
// stack. The cold of fresh charcoal at the top and the heat of the blast side
// are put in as round figures (common practice: top gas 150 to 500 C, white heat
// before the tuyere).
type knot struct{ at, cold, warm float64 } // share of the burden's height; C just filled, C warm

var row = []knot{
	{0, 1250, 1350}, {0.04, 1170, 1300}, {0.2, 930, 1190}, {0.4, 780, 1190}, {0.6, 550, 1000}, {0.8, 320, 905}, {0.9, 200, 600}, {1, 90, 200},
}

// warming is the time between the two rows.
const warming = 86 * time.Minute

// guess is the temperature in C at a height, as a share of the burden's height,
// so long after the fill.
func guess(share float64, since time.Duration) float64 {
	warmth := min(1, max(0, float64(since)/float64(warming)))
	at := func(k knot) float64 { return k.cold + warmth*(k.warm-k.cold) }
	for i := 1; i < len(row); i++ {
		if a, b := row[i-1], row[i]; share <= b.at {
			return at(a) + (at(b)-at(a))*(share-a.at)/(b.at-a.at)
		}
	}
	return at(row[len(row)-1])
}

// limits are the temperatures in C from which on each process goes, coldest
// first. Water leaves to 100 C and a little above in lumps; goethite gives off
// its water at 250 to 350 C, bog ore from 200 C; the oxide steps follow the
// Fe-C-O boundaries with their triple point near 570 C; slag near fayalite runs
// from about 1180 C (all in the published tables this package's tests name).
var limits = []struct {
	from float64
	what Process
}{
	{0, Drying}, {150, Roasting}, {400, RedToBlack}, {570, LosesOxygen}, {800, IronForms}, {1180, SlagRuns},
}

// burningBores is how far up from the tuyere charcoal burns, in bores: the
// raceway of the model, 0.15 m in a bore of 28 cm.
const burningBores = 0.54

// sweep is the height of one sample in cm when looking for the zones' limits.
const sweep = 0.5

// zones cuts the burden where one process gives way to the next.
func zones(s fold.State) []Zone {
	since, filled := sinceFill(s)
	bore, ok := fold.ShaftBore(s.Light.Furnace)
	height := 100 * s.Level.Height
	if !filled || !ok || !s.HasLevel || height < sweep || s.Phase == entry.Extracted || s.Phase == entry.Closed {
		return nil
	}
	burning := min(height, 100*burningBores*bore.Bottom)
	var zs []Zone
	for cm := height; cm > 0; cm -= sweep {
		what := processAt(guess(cm/height, since))
		if cm <= burning {
			what = Burning
		}
		if n := len(zs); n == 0 || zs[n-1].What != what {
			zs = append(zs, Zone{What: what, Top: cm, Basis: Guessed})
		}
		zs[len(zs)-1].Bottom = max(0, cm-sweep)
	}
	for i, z := range zs {
		zs[i].Degrees = guess((z.Top+z.Bottom)/2/height, since)
		zs[i].Spread = guessSpread(zs[i].Degrees)
		zs[i].Gas.Needs = z.What.LeastCO(zs[i].Degrees)
	}
	return zs
}

// guessOff is how far the guess may be off, K: as two rows of probes in one
// furnace were apart (460 K, the same data sheet, row B), half to either side.
const guessOff = 230

// guessSpread is the band about a guess in Celsius; charcoal in air gets no hotter
// than its flame.
func guessSpread(c float64) physics.Band {
	return physics.Band{P10: math.Max(20, c-guessOff), P50: c, P90: math.Max(c, math.Min(c+guessOff, hottest))}
}

// hottest is the hottest that is drawn of a charcoal fire in blown air, Celsius
// (common practice: white heat).
const hottest = 1500

func processAt(c float64) Process {
	what := Drying
	for _, l := range limits {
		if c >= l.from {
			what = l.what
		}
	}
	return what
}

// sinceFill is how long charcoal has been burning in the shaft.
func sinceFill(s fold.State) (time.Duration, bool) {
	for l := range s.Lines.All() {
		switch l.Event.(type) {
		case entry.Fill, entry.Charge:
			return s.At - l.At, true
		}
	}
	return 0, false
}

// oreZones says of what lies below the first ore only that it gets hot: there is
// no ore in it to roast, to reduce or to melt. Once the first charge with ore has
// burned away, ore has been everywhere.
func (r *Reading) oreZones(zs []Zone) []Zone {
	from := r.firstOre()
	var out []Zone
	for _, z := range zs {
		if z.What == Drying || z.What == Burning || z.Bottom >= from {
			out = append(out, z)
			continue
		}
		if z.Top > from {
			above := z
			above.Bottom, z.Top = from, from
			out = append(out, above)
		}
		z.What, z.Gas.Needs = Heating, entry.None[float64]()
		if n := len(out); n > 0 && out[n-1].What == Heating {
			z = out[n-1].joined(z)
			out = out[:n-1]
		}
		out = append(out, z)
	}
	return out
}

// joined is two zones of the same kind as one; each counts by its height.
func (z Zone) joined(below Zone) Zone {
	a, b := z.Top-z.Bottom, below.Top-below.Bottom
	mean := func(x, y float64) float64 { return (a*x + b*y) / (a + b) }
	z.Degrees = mean(z.Degrees, below.Degrees)
	z.Spread = physics.Band{P10: mean(z.Spread.P10, below.Spread.P10), P50: z.Degrees, P90: mean(z.Spread.P90, below.Spread.P90)}
	if z.WallSide.Known && below.WallSide.Known {
		z.WallSide.Value = entry.Celsius(mean(float64(z.WallSide.Value), float64(below.WallSide.Value)))
		z.WallSpread = physics.Band{P10: mean(z.WallSpread.P10, below.WallSpread.P10), P50: float64(z.WallSide.Value), P90: mean(z.WallSpread.P90, below.WallSpread.P90)}
	}
	if z.Gas.HasCO && below.Gas.HasCO {
		co, under := z.Gas.CO, below.Gas.CO
		z.Gas.CO = physics.Band{P10: mean(co.P10, under.P10), P50: mean(co.P50, under.P50), P90: mean(co.P90, under.P90)}
	}
	z.Bottom, z.Basis = below.Bottom, z.Basis.Weaker(below.Basis)
	return z
}

// firstOre is how far down ore has come, in cm above the tuyere: to the
// underside of the first charge that holds any while that stands in the shaft,
// then to the bottom.
func (r *Reading) firstOre() float64 {
	for _, c := range r.Charges {
		if c.Ore.Known() && c.Ore.P50 == 0 {
			continue
		}
		for _, l := range r.Layers {
			if l.Charge == c.Number {
				return l.Bottom
			}
		}
		return 0
	}
	if ore := r.Figures[OreCharged]; ore.Known() && ore.P50 == 0 {
		return math.Inf(1)
	}
	return 0
}
