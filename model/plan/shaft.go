package plan

import (
	"math"
	"strings"

	"chargehand/model/entry"
	"chargehand/physics"
)

// Air of the blast by the area of the hearth, l/min per cm2: what one school
// advises for a new furnace, and what smelts that gave a bloom have used.
var (
	// AdvisedBlast is Markewitz's rule (warehamforgeblog.blogspot.com, 2015/06): 840
	// to 1050 l/min for a bore of 30 cm, 1225 to 1530 for 36.
	AdvisedBlast = physics.Band{P10: 1.2, P50: 1.35, P90: 1.5}
	// UsedBlast is from published smelts: 0.80 (30 Nov 2016, Markewitz) to 2.9 (a 20 cm
	// bore at 900 l/min, the same; overview 2008 to 2022).
	UsedBlast = physics.Band{P10: 0.8, P50: 1.3, P90: 2.9}
)

// AirPerCharcoal is the metered air that a kg of charcoal took in published smelts,
// m3: 3.5 and 3.6 (30 Nov 2016; the Rockbridge recipe), 4.5 and 5.9 (30 Oct 2021),
// 5.3 (overview 2008 to 2022). All to CO it would take 3.8 to 4.1.
var AirPerCharcoal = physics.Band{P10: 3.5, P50: 4.5, P90: 5.9}

// UnmeteredPace is how many minutes a kg of charcoal lasts where nobody knows the
// blast: published means of whole smelts, 5.9, 6.3, 7.5, 7.7, 8.4, 8.8, 9.4, 15.1
// and 18.1 (Markewitz, overviews 2008 to 2022).
var UnmeteredPace = physics.Band{P10: 5.9, P50: 8.4, P90: 15.1}

// Shaft is what is reckoned of a furnace.
type Shaft struct {
	Litres  float64      // from the tuyere to the mark
	Below   float64      // litres from the floor to the tuyere
	Area    float64      // cm2 at the tuyere
	Advised physics.Band // l/min
	Used    physics.Band // l/min
	Guessed bool         // sizes are those of a starter, or not all given
}

// BlowerOf is the blast that a furnace's blower was last measured to give, l/min; zero
// where it was not.
func BlowerOf(f entry.Furnace) physics.Band {
	for i := len(f.Blower) - 1; i >= 0; i-- {
		if v := float64(f.Blower[i].Volume.Value); v > 0 {
			if off := f.Blower[i].PlusMinus; off.Positive() {
				return physics.LogNormal(v, float64(off.Value)/v/physics.Z90)
			}
			return Metered(v)
		}
	}
	return physics.Band{}
}

// Metered is a blast as a bag or a meter reads it, l/min: to some 10 % (assumed).
func Metered(lMin float64) physics.Band { return physics.LogNormal(lMin, 0.1) }

// bagTakes is the share of what a bag reads that is taken: cold and without burden it reads 5
// to 20 % high (assumed).
var bagTakes = physics.Band{P10: 0.80, P50: 0.875, P90: 0.95}

// Bag is the blast by the bag test, l/min: a bag of so many litres filled in these seconds.
// Its spread is that of the mean of the times, by Student's t (1.886 at two degrees of freedom
// for the 90th percentile, any table), and of what is taken of it; read is what the bag says.
// A hand at a watch is out by some 0.3 s (assumed) even where the times agree.
func Bag(litres float64, seconds [3]float64) (read float64, taken physics.Band) {
	const student, hand = 1.886, 0.3
	mean := (seconds[0] + seconds[1] + seconds[2]) / 3
	square := 0.0
	for _, s := range seconds {
		square += (s - mean) * (s - mean)
	}
	off := student * math.Max(math.Sqrt(square/2), hand) / math.Sqrt(3) / mean
	read = 60 * litres / mean
	half := math.Hypot(off, (bagTakes.P90-bagTakes.P10)/2/bagTakes.P50)
	mid := read * bagTakes.P50
	return read, physics.Band{P10: mid * (1 - half), P50: mid, P90: mid * (1 + half)}
}

// Sized tells whether a furnace's own bore and height are known.
func Sized(f entry.Furnace) bool { return (f.Bore.Known || len(f.Bores) > 0) && f.Stack.Known }

// ShaftOf reckons a furnace; what it does not say is as in the usual one: bore 25,
// 50 cm above the tuyere, 15 below (Markewitz, 30 Nov 2016).
func ShaftOf(f entry.Furnace) Shaft {
	bore, above, below := cm(f.Bore, 25), cm(f.Stack, 50), cm(f.TuyereBase, 15)
	s := Shaft{Guessed: f.Guessed || !Sized(f)}
	s.Litres = 1000 * volume(f, bore, above)
	at := bore
	if len(f.Bores) > 0 {
		at = float64(f.Bores[0].Bore)
	}
	s.Below = discLitres(at, below)
	s.Area = math.Pi / 4 * at * at
	s.Advised, s.Used = AdvisedBlast.Scale(s.Area), UsedBlast.Scale(s.Area)
	return s
}

// volume is that of the shaft above the tuyere in m3, as frusta one on the other.
func volume(f entry.Furnace, bore, above float64) float64 {
	between := func(low, high, height float64) float64 {
		return physics.Bore{Bottom: low / 100, Top: high / 100, Height: height / 100}.VolumeBelow(height / 100)
	}
	if len(f.Bores) == 0 {
		return between(bore, cm(f.BoreTop, bore), above)
	}
	sum, at, is := 0.0, 0.0, float64(f.Bores[0].Bore)
	for _, b := range f.Bores {
		to := min(float64(b.At), above)
		if to > at {
			sum += between(is, float64(b.Bore), to-at)
			at = to
		}
		is = float64(b.Bore)
	}
	if above > at {
		sum += between(is, is, above-at)
	}
	return sum
}

func discLitres(bore, height float64) float64 { return math.Pi / 4 * bore * bore * height / 1000 }

func cm(m entry.Maybe[entry.Centimetre], usual float64) float64 {
	if m.Known {
		return float64(m.Value)
	}
	return usual
}

// Fill is how much dry charcoal fills the furnace from its floor to the mark, kg.
func (s Shaft) Fill() float64 { return (s.Litres + s.Below) / 1000 * physics.DefaultCharcoalBulk }

// Pace is how many minutes a kg of dry charcoal lasts: by the blast in l/min, by
// what is advised for the bore where that is not known but the bore is, else by
// published smelts.
func (s Shaft) Pace(blast physics.Band) (minutes physics.Band, basis entry.Basis) {
	switch {
	case blast.P50 > 0:
		return AirPerCharcoal.Scale(1000).Over(blast), entry.BasisEstimated
	case !s.Guessed:
		return AirPerCharcoal.Scale(1000).Over(s.Advised), entry.BasisAssumed
	}
	return UnmeteredPace, entry.BasisGuessed
}

// ClayAndSand is the dry mix of the wall parted, kg: by its own recipe, else half of each with
// dung or straw between (1 : 1 : 1 by volume is common practice; dung weighs little). A recipe
// without sand takes none.
func (s Shaft) ClayAndSand(f entry.Furnace) (clay, sand physics.Band) {
	all := s.Clay(f)
	share := map[bool]float64{}
	for _, c := range f.Clay {
		what := strings.ToLower(c.What)
		if isSand := strings.Contains(what, "sand") || strings.Contains(what, "grog"); isSand || strings.Contains(what, "clay") || strings.Contains(what, "loam") {
			share[isSand] += float64(c.Share)
		}
	}
	if share[false]+share[true] <= 0 {
		share = map[bool]float64{false: 1, true: 1}
	}
	sum := share[false] + share[true]
	return all.Scale(share[false] / sum), all.Scale(share[true] / sum)
}

// Clay is how much dry mix the wall takes, kg, at 1.5 to 1.7 kg a litre (from
// memory), with a wall of 5 cm where none is said (common practice: 3 to 10) and
// the rim 10 cm over the mark. No published weight of a whole furnace was found, so
// that the band is wide.
func (s Shaft) Clay(f entry.Furnace) physics.Band {
	bore, wall := cm(f.Bore, 25), cm(f.Wall, 5)
	height := cm(f.Rim, cm(f.Stack, 50)+10) + cm(f.TuyereBase, 15)
	litres := discLitres(bore+2*wall, height) - discLitres(bore, height)
	if f.Wall.Known {
		return physics.LogNormal(1.6*litres, 0.15)
	}
	return physics.LogNormal(1.6*litres, 0.4)
}
