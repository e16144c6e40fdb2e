package zones

import (
	"math"

	"chargehand/model/truth"
	"chargehand/physics"
)

// second is the step in which the furnace goes on, s.
const second = 1.0

// airPerLitre is mol/s of air for each l/min at 15 C and one atmosphere.
const airPerLitre = 101325 / (physics.GasConstant * 288.15) / 60e3

// oxygenOfAir is a share of the moles.
const oxygenOfAir = 0.2095

// Furnace is the furnace at one moment. It goes on by Step and is worked on by the deeds of a crew. Not safe for use by several
// at a time.
type Furnace struct {
	Drawn
	number  int64
	seconds float64
	floor   float64 // m2 of the bore as it truly is
	lit     bool
	zone    [zoneCount]zone
	hearth  hearth
	luck
	day     day
	air     air
	top     gas // what leaves at the top
	charges int
	account account
}

// account is what went in and out since light: mol of carbon, oxygen and iron, kg of minerals, J.
type account struct{ in, out amounts }

type amounts struct{ carbon, oxygen, iron, mineral, heat float64 }

func (a *amounts) of(p *packet, heat float64) {
	a.carbon += p.carbon
	a.oxygen += p.oxygen + p.water
	a.iron += p.iron
	a.mineral += p.ash + p.silica + p.rest
	a.heat += heat
}

// New makes the furnace of a number with some mishaps, at light, still cold; noise as in Draw.
func New(number int64, noise float64, mishaps ...truth.Mishap) *Furnace {
	f := &Furnace{Drawn: Draw(number, noise), number: number, day: drawDay(number, mishaps), luck: newLuck(number)}
	bore := f.BoreCm / 100 * (1 + f.BoreOff)
	f.floor = math.Pi / 4 * bore * bore
	f.air = air{wander: 1, leaks: 1}
	over := f.Mark() - f.BurnHeight
	for i, h := range []float64{f.BurnHeight, f.ReducingShare * over, (1-f.ReducingShare)*over + 0.05} {
		z := &f.zone[i]
		z.height, z.area = h, math.Pi*bore*h
		z.faceJK = f.WallHeat * z.area * face
		z.wallJK = f.WallHeat * z.area * (f.WallCm/100 - face)
		z.wall = cold
	}
	f.hearth = hearth{kelvin: cold, packing: f.HearthHeat}
	return f
}

// Setting is how it is built and worked.
func (f *Furnace) Setting() truth.Setting { return f.Drawn.Setting }

// Mark is how high the charging mark truly stands above the tuyere, m.
func (f *Furnace) Mark() float64 { return f.StackCm / 100 * (1 + f.StackOff) }

// Seconds is the time since light, s.
func (f *Furnace) Seconds() float64 { return f.seconds }

// Preheat leaves wall and hearth as the wood fire did.
func (f *Furnace) Preheat() {
	before := f.heat()
	for i, k := range []float64{f.WallBelow, (f.WallBelow + f.WallAbove) / 2, f.WallAbove} {
		z := &f.zone[i]
		z.wall = k
		z.heat = z.faceJK * (k + 100 - cold) // the face a little hotter (assumed)
	}
	f.hearth.kelvin = f.WallBelow
	f.account.in.heat += f.heat() - before
}

// glows is how hot the fill and the wall's face have become on the embers when the blast comes on, from below, K (assumed).
var glows = [zoneCount]float64{1150, 750, 420}

// Fill lays charcoal on the embers up to a height above the tuyere, and gives how many kg as charged that took.
func (f *Furnace) Fill(height float64) (kg float64) {
	dry := f.floor * height * f.CharcoalBulk
	p := f.charcoal(dry, f.Moisture)
	f.charges++
	f.laid(p)
	f.sink()
	before := f.heat()
	for i := range f.zone {
		z := &f.zone[i]
		z.heat += math.Max(0, glows[i]-z.kelvin()) * z.capacity()
	}
	f.account.in.heat += f.heat() - before
	f.lit = true
	return dry * (1 + f.Moisture)
}

// charcoal is so many kg of it, dry.
func (f *Furnace) charcoal(dry, moisture float64) packet {
	vapour := math.Max(0, 1-f.Carbon-f.Ash)
	return packet{
		charge: f.charges, carbon: dry * f.Carbon / massC, ash: dry * f.Ash, vapour: dry * vapour,
		water: dry * moisture / massWater, bulk: f.CharcoalBulk * f.Carbon,
	}
}

func (f *Furnace) laid(p packet) {
	h := p.heat(cold)
	f.account.in.of(&p, h)
	f.zone[warming].lay(p, h)
}

// Charge lays some buckets of charcoal, each of so many kg as the crew takes it, and so many kg of ore by its scoops; and
// tells what that truly was.
func (f *Furnace) Charge(buckets, bucketKg, oreKg float64) truth.Charged {
	f.charges++
	wet := f.Moisture + f.day.now(truth.WetCharcoal, f.seconds)
	dry := buckets * bucketKg / 1.07 * f.BucketOff * math.Exp(f.BucketScatter*f.buckets.NormFloat64())
	if full := f.day.now(truth.ShortBuckets, f.seconds); full > 0 {
		dry *= full
	}
	ore := oreKg * math.Exp(f.ScoopScatter*f.scoops.NormFloat64())
	assay := f.OreIron + f.AssayOff + f.LotScatter*f.lots.NormFloat64() - f.day.now(truth.BadOre, f.seconds)
	assay = bound(assay, 0.15, 0.66)
	p := f.charcoal(dry, wet)
	c := truth.Charged{Charcoal: dry * (1 + wet), CharcoalDry: dry}
	if ore > 0 {
		dryOre := ore / (1 + f.OreMoisture)
		p.iron = dryOre * assay / physics.MolarMassFe
		p.oxygen = 1.5 * p.iron
		gangue := math.Max(0, dryOre-p.iron*physics.MolarMassFe-p.oxygen*massO)
		p.silica, p.rest = gangue*f.Silica, gangue*(1-f.Silica)
		p.water += (ore - dryOre) / massWater
		c.Ore, c.OreIron = ore, p.iron*physics.MolarMassFe
		f.hearth.ironIn += c.OreIron
	}
	if buckets > 0 {
		c.Bucket = c.Charcoal / buckets
	}
	f.laid(p)
	if f.flames.Float64() < f.TopOut {
		f.topOut = true
	}
	return c
}

// Step goes on by a second.
func (f *Furnace) Step() {
	f.happens(second)
	flow := f.air.flow(f) * airPerLitre
	usual := f.BlastPerArea * math.Pi / 4 * f.BoreCm * f.BoreCm * f.AirShare * airPerLitre
	f.zone[burning].height = f.BurnHeight * bound(math.Sqrt(flow/usual), 0.6, 1.4)
	f.zone[reducing].height = math.Max(0.05, f.BurnHeight+f.ReducingShare*(f.Mark()-f.BurnHeight)-f.zone[burning].height)
	g := gas{n2: flow * (1 - oxygenOfAir), o2: flow * oxygenOfAir, kelvin: cold}
	f.account.in.oxygen += 2 * g.o2 * second
	f.account.in.heat += g.heat() * second
	if f.lit {
		f.drips(&g, second)
		for i := range f.zone {
			g = f.zone[i].passes(g, &f.Drawn, f.floor, second, i != burning)
		}
	}
	out := &f.account.out
	out.carbon += (g.co + g.co2) * second
	out.oxygen += (2*g.o2 + g.co + 2*g.co2 + g.steam) * second
	out.heat += g.heat() * second
	f.top = g
	f.walls(second)
	f.warmsHearth(second)
	f.sink()
	f.seconds += second
	f.counts(second)
}

// sink fills each zone from the one above; what hangs does not.
func (f *Furnace) sink() {
	for i := burning; i < warming; i++ {
		if i == burning && f.hangs > 0 {
			continue
		}
		f.zone[i+1].sinkInto(&f.zone[i], f.floor*f.zone[i].height-f.zone[i].volume())
	}
}

// seen is the share of what the bare top of the burden glows that leaves the shaft (assumed).
const seen = 0.3

// walls takes the heat of the zones to each other and out.
func (f *Furnace) walls(dt float64) {
	loses := 1.0
	if f.day.now(truth.Crack, f.seconds) > 0 {
		loses = 1.25
	}
	for i := range f.zone {
		z := &f.zone[i]
		in := f.WallIn * z.area * (z.kelvin() - z.wall) * dt
		out := f.WallOut * loses * z.area * (z.wall - cold) * dt
		z.heat -= in
		z.wall += (in - out) / z.wallJK
		f.account.out.heat += out
		open := 1.0 // how much of its burden's top lies bare
		if i < warming {
			open = 1 - f.zone[i+1].full(f.floor)
		}
		if k := z.kelvin(); open > 0 && z.volume() > 0 {
			glow := seen * 5.67e-8 * f.floor * open * (math.Pow(k, 4) - math.Pow(cold, 4)) * dt
			z.heat -= glow
			f.account.out.heat += glow
		}
		if i > 0 {
			below := &f.zone[i-1]
			up := f.Glow * (below.kelvin() - z.kelvin()) * dt
			below.heat -= up
			z.heat += up
		}
	}
}

// heat is all there is in the furnace, J.
func (f *Furnace) heat() float64 {
	h := f.hearth.heat()
	for i := range f.zone {
		z := &f.zone[i]
		h += z.heat + z.wallJK*(z.wall-cold)
	}
	return h
}

// Unbalanced gives by how much, relative to what went in, the accounts of carbon, oxygen, iron, minerals and heat do not close:
// what went in, less what went out, less what is there. Heat is relative to what the carbon charged could give.
func (f *Furnace) Unbalanced() (carbon, oxygen, iron, mineral, heat float64) {
	is := f.hearth.amounts()
	is.heat = f.heat()
	for i := range f.zone {
		for j := range f.zone[i].packets {
			is.of(&f.zone[i].packets[j], 0)
		}
	}
	in, out := f.account.in, f.account.out
	off := func(in, out, is float64) float64 { return (in - out - is) / math.Max(in, 1) }
	return off(in.carbon, out.carbon, is.carbon), off(in.oxygen, out.oxygen, is.oxygen), off(in.iron, out.iron, is.iron),
		off(in.mineral, out.mineral, is.mineral), (in.heat - out.heat - is.heat) / math.Max(1, -formCO2*in.carbon)
}

func bound(v, low, high float64) float64 { return math.Max(low, math.Min(high, v)) }
