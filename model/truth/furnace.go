package truth

import (
	"math"

	"chargehand/physics"
)

// Second is the step in which the furnace goes on, s.
const Second = 1.0

// airPerLitre is mol/s of air for each l/min at 15 C and one atmosphere.
const airPerLitre = physics.StandardPressure / (physics.GasConstant * 288.15) / 60000

// Furnace is the furnace that answers, at one moment. It goes on by Step and is worked on by the deeds of a crew; what can
// be seen of it stands in signs.go. It is not safe for use by several at a time.
type Furnace struct {
	Drawn
	k    kinetic
	side [2]column // the tuyere side first
	hearth
	air
	causes
	mishap mishap

	number  int64
	seconds float64 // since light
	lit     bool    // the blast has gone through charcoal
	bore    float64 // m, as it is now at the tuyere
	account Account
}

// Account is what went in and out since the fire was made: mol, kg and J. The test of it is Furnace.Unbalanced.
type Account struct {
	CarbonIn, CarbonOut   float64 // mol
	OxygenIn, OxygenOut   float64 // mol of atoms
	IronIn, IronOut       float64 // mol
	MineralIn, MineralOut float64 // kg
	HeatIn, HeatOut       float64 // J
}

// New makes the furnace of a number with some mishaps, at light, still cold; noise as in Draw.
func New(number int64, noise float64, mishaps ...Mishap) *Furnace {
	d := Draw(number, noise)
	f := &Furnace{Drawn: d, number: number, causes: newCauses(number), mishap: drawMishaps(number, mishaps)}
	f.bore = d.BoreCm / 100 * (1 + d.BoreOff)
	f.air.wander, f.air.leaks, f.air.share = 1, 1, d.AirShare
	f.k = kinetic{
		burn: d.BurnLength, solution: d.SolutionLength, exchange: d.Exchange, stops: d.SolutionStops, mixing: d.Mixing,
		wallIn: d.WallInside, around: math.Pi * f.bore / 2,
	}
	f.k.wallHolds = d.WallHeat * f.k.around * ring * d.WallCm / 100
	half := math.Ln2 / (60 * d.ReductionMinutes)
	for t := 0.0; t <= tableMost; t += tableStep {
		f.k.reduction = append(f.k.reduction, half*math.Exp(-d.ReductionEnergy/physics.GasConstant*(1/math.Max(t, 300)-1/1273.15)))
	}
	for i := range f.side {
		f.side[i].area = math.Pi / 8 * f.bore * f.bore
		for r := range f.side[i].wall {
			f.side[i].wall[r] = reference
		}
	}
	f.hearth.begin(&d)
	return f
}

// Mark is how high the charging mark truly stands above the tuyere, m.
func (f *Furnace) Mark() float64 { return f.StackCm / 100 * (1 + f.StackOff) }

// Seconds is the time since light, s.
func (f *Furnace) Seconds() float64 { return f.seconds }

// Preheat leaves wall and hearth as the wood fire did.
func (f *Furnace) Preheat() {
	before := f.heat()
	for i := range f.side {
		for r := range f.side[i].wall {
			share := math.Min(1, (float64(r)+0.5)*ring/f.Mark())
			f.side[i].wall[r] = f.PreheatBottom + (f.PreheatTop-f.PreheatBottom)*share
		}
	}
	f.hearth.warmTo(f.PreheatBottom)
	f.account.HeatIn += f.heat() - before
}

// Embers are what is left of the wood fire, and the fill that has caught on them.
const embersKelvin, embersHeight = 1200.0, 0.12

// Fill lays charcoal on the embers up to a height above the tuyere, and gives how many kg as charged that took.
func (f *Furnace) Fill(height float64) (kg float64) {
	lay := func(height, kelvin float64) {
		for i := range f.side {
			c := &f.side[i]
			v := (height - c.height()) * c.area
			if v <= 0 {
				continue
			}
			s := f.charcoal(v * f.CharcoalBulk * (1 + f.Moisture))
			kg += v * f.CharcoalBulk * (1 + f.Moisture)
			if kelvin > reference {
				s.water, s.volatile = 0, 0
			}
			s.kelvin = kelvin
			f.book(&s)
			c.lay(s)
		}
	}
	lay(embersHeight, embersKelvin)
	lay(height, reference)
	return kg
}

// charcoal is so many kg of it as charged.
func (f *Furnace) charcoal(kg float64) slice { return f.charcoalOf(kg/(1+f.Moisture), f.Moisture) }

func (f *Furnace) charcoalOf(dry, moisture float64) slice {
	carbon := dry * f.Carbon / physics.MolarMassC
	return slice{
		carbon: carbon, laid: carbon, water: dry * moisture / physics.MolarMassH2O, volatile: dry * math.Max(0, 1-f.Carbon-f.Ash),
		mineral: dry * f.Ash, silica: dry * f.Ash * 0.3, fuel: dry / f.CharcoalBulk, kelvin: reference,
	}
}

// oreBulk is kg/m3 of the room that ore adds to the burden: lumps of some 3000, two thirds of them between the charcoal.
const oreBulk = 9000.0

// ore is so many kg of it as charged, with an iron share of its dry mass.
func (f *Furnace) ore(kg, iron float64) slice {
	dry := kg / (1 + f.OreMoisture)
	n := dry * iron / physics.MolarMassFe
	gangue := math.Max(0, dry-n*(physics.MolarMassFe+1.5*physics.MolarMassO))
	return slice{
		iron: n, oxygen: 1.5 * n, water: dry * f.OreMoisture / physics.MolarMassH2O,
		mineral: gangue, silica: gangue * f.Silica, ore: dry / oreBulk, kelvin: reference,
	}
}

func (f *Furnace) book(s *slice) {
	f.account.CarbonIn += s.carbon
	f.account.OxygenIn += s.oxygen + s.water
	f.account.IronIn += s.iron
	f.account.MineralIn += s.mineral
	f.account.HeatIn += s.heat()
}

// Charged is what a charge truly held.
type Charged struct {
	Charcoal, CharcoalDry, Ore, OreIron float64 // kg
	Bucket                              float64 // kg in a bucket, as a scale would have it
}

// Charge lays some buckets of charcoal, each of so many kg as the crew takes it, and so many kg of ore by its scoops; and
// tells what that truly was. It falls more on the side that stands lower.
func (f *Furnace) Charge(buckets, bucketKg, oreKg float64) Charged {
	wet := f.mishap.moisture(f.seconds)
	dry := buckets * bucketKg / 1.07 * f.BucketOff * f.mishap.filled(f.seconds) * math.Exp(f.BucketScatter*f.buckets.NormFloat64())
	kg := oreKg * math.Exp(f.ScoopScatter*f.scoops.NormFloat64())
	assay := f.OreIron + f.AssayOff + f.LotScatter*f.lots.NormFloat64() - f.mishap.poorer(f.seconds)
	assay = math.Max(0.15, math.Min(0.66, assay))
	whole := f.charcoalOf(dry, f.Moisture+wet)
	if kg > 0 {
		o := f.ore(kg, assay)
		whole.take(&o)
	}
	share := f.BurdenTuyereSide + f.SplitScatter*f.splits.NormFloat64()
	// What the two sides stand apart is evened out by what is thrown in, half of it by eye.
	apart := f.side[1].height() - f.side[0].height()
	if v := whole.volume(); v > 0 {
		share += 0.5 * apart * f.side[0].area / v
	}
	share = math.Max(0.15, math.Min(0.85, share))
	for i, p := range []slice{whole.part(share), whole.part(1 - share)} {
		f.book(&p)
		f.side[i].lay(p)
	}
	f.top.chargeFalls(f)
	c := Charged{Charcoal: dry * (1 + f.Moisture + wet), CharcoalDry: dry, Ore: kg, OreIron: whole.iron * physics.MolarMassFe}
	if buckets > 0 {
		c.Bucket = c.Charcoal / buckets
	}
	f.hearth.oreIn += c.OreIron
	f.hearth.oreDry += kg / (1 + f.OreMoisture)
	return c
}

// Step goes on by a second.
func (f *Furnace) Step() {
	f.happens(Second)
	eq := equilibria()
	flow := f.air.flow()
	if flow > 0 && len(f.side[0].slices)+len(f.side[1].slices) > 0 {
		f.lit = true
	}
	if f.lit {
		share := f.AirTuyereSide
		for i := range f.side {
			c := &f.side[i]
			n := flow * airPerLitre * share
			share = 1 - share
			in := stream{n2: 0.7905 * n, o2: 0.2095 * n, kelvin: reference}
			f.account.HeatIn += in.heat() * Second
			f.account.OxygenIn += 2 * in.o2 * Second
			f.hearth.scorch(&in, Second)
			c.sweep(&f.k, &eq, in, Second)
			c.merge()
			c.conduct(&f.k, Second)
			c.hollow()
			f.account.CarbonOut += (c.top.co + c.top.co2) * Second
			f.account.OxygenOut += (2*c.top.o2 + c.top.co + 2*c.top.co2 + c.top.steam) * Second
			f.account.HeatOut += c.top.heat() * Second
			f.falls(c, Second)
		}
		f.acrossSides(Second)
	}
	f.walls(Second)
	f.hearth.step(f, Second)
	f.seconds += Second
}

// walls lose heat to the air, and wear before the tuyere.
func (f *Furnace) walls(dt float64) {
	for i := range f.side {
		for r := range f.side[i].wall {
			q := f.WallOutside * f.mishap.cracked(f.seconds) * f.k.around * ring * (f.side[i].wall[r] - reference) * dt
			f.side[i].wall[r] -= q / f.k.wallHolds
			f.account.HeatOut += q
		}
	}
	if hot, _ := f.side[0].lowest(0.1); hot > 1400 && f.air.flow() > 0 {
		cm := f.WallWear * dt / 3600
		kg := cm / 100 * math.Pi * f.bore / 2 * 0.12 * 1600
		f.hearth.wears(f, kg)
		f.bore += cm / 100 / 2
	}
}

// acrossSides evens out the two sides at each height.
func (f *Furnace) acrossSides(dt float64) {
	a, b := &f.side[0], &f.side[1]
	z := 0.0
	for i := range a.slices {
		s := &a.slices[i]
		h := s.volume() / a.area
		o := b.at(z + h/2)
		z += h
		if o == nil {
			return
		}
		cs, co := s.capacity(), o.capacity()
		if cs <= 0 || co <= 0 {
			continue
		}
		q := f.SideMixing * f.bore * h * (s.kelvin - o.kelvin) * dt
		most := 0.2 * math.Abs(s.kelvin-o.kelvin) * math.Min(cs, co)
		q = math.Max(-most, math.Min(most, q))
		s.kelvin -= q / cs
		o.kelvin += q / co
	}
}

// heat is all there is in the furnace, J.
func (f *Furnace) heat() float64 {
	h := f.hearth.heat()
	for i := range f.side {
		for j := range f.side[i].slices {
			h += f.side[i].slices[j].heat()
		}
		for _, t := range f.side[i].wall {
			h += (t - reference) * f.k.wallHolds
		}
	}
	return h
}

// Unbalanced gives by how much, relative to what went in, the accounts of carbon, oxygen, iron, minerals and heat do not
// close: what went in, less what went out, less what is there.
func (f *Furnace) Unbalanced() (carbon, oxygen, iron, mineral, heat float64) {
	a := f.account
	c, o, fe, m := f.hearth.carbon, f.hearth.allOxygen(), f.hearth.allIron(), f.hearth.mineral
	for i := range f.side {
		for j := range f.side[i].slices {
			s := &f.side[i].slices[j]
			c, o, fe, m = c+s.carbon, o+s.oxygen+s.water, fe+s.iron, m+s.mineral
		}
	}
	off := func(in, out, there float64) float64 {
		if in == 0 {
			return 0
		}
		return (in - out - there) / math.Abs(in)
	}
	return off(a.CarbonIn, a.CarbonOut, c), off(a.OxygenIn, a.OxygenOut, o), off(a.IronIn, a.IronOut, fe), off(a.MineralIn, a.MineralOut, m), off(math.Abs(a.HeatIn)+math.Abs(a.HeatOut), 0, math.Abs(a.HeatIn)+math.Abs(a.HeatOut)-(a.HeatIn-a.HeatOut-f.heat()))
}
