package truth

import (
	"math"

	"chargehand/physics"
)

// hearth is what lies below the tuyere: one heat, with the slag, the bloom and bits of iron in it.
type hearth struct {
	kelvin  float64
	holds   float64 // J/K of packing and ground
	iron    float64 // mol in the slag
	oxygen  float64 // mol on it
	mineral float64 // kg of gangue, ash and wall in the slag
	silica  float64 // kg of that
	bloom   float64 // mol of iron come together
	bits    float64 // mol of iron beside it
	carbon  float64 // mol, of coal that fell in
	owes    float64 // mol of O that iron to be burned wants from the blast

	oreIn, oreDry float64 // kg of ore iron charged; kg of dry ore
	came          float64 // kg of it that has come down
	metal         float64 // kg of that that was metal when it came
	tapped        float64 // kg of slag
	coldSeconds   float64 // s below working heat with ore come down
	lostSeconds   float64 // s that slag stood at the tuyere
	arrives       float64 // share of metal in the iron that comes down, over the last minutes
}

func (h *hearth) begin(d *Drawn) { h.kelvin, h.holds = reference, d.HearthHeat }

func (h *hearth) capacity() float64 {
	return h.holds + capFe*(h.iron+h.bloom+h.bits) + capO*h.oxygen + capMineral*h.mineral + capC*h.carbon
}

func (h *hearth) bound() float64 {
	if h.iron <= 0 {
		return 0
	}
	return h.iron * oxideHeat(h.oxygen/h.iron)
}

func (h *hearth) heat() float64 { return (h.kelvin-reference)*h.capacity() + h.bound() }

func (h *hearth) warmTo(kelvin float64) { h.kelvin = kelvin }

func (h *hearth) warm(heat float64) { h.kelvin = reference + (heat-h.bound())/h.capacity() }

func (h *hearth) allIron() float64   { return h.iron + h.bloom + h.bits }
func (h *hearth) allOxygen() float64 { return h.oxygen }

// slag is what of it is slag, kg of each oxide; the gangue that is not silica as alumina and lime, two to one.
func (h *hearth) slag() physics.Oxides {
	other := math.Max(0, h.mineral-h.silica)
	feo, ferric := h.iron, 0.0
	if h.oxygen > h.iron { // some of it is still hematite
		ferric = math.Min(h.iron, 2*(h.oxygen-h.iron))
		feo = h.iron - ferric
	}
	return physics.Oxides{FeO: feo * physics.MolarMassFeO, Fe2O3: ferric / 2 * physics.MolarMassFe2O3, SiO2: h.silica, Al2O3: other * 2 / 3, CaO: other / 3}
}

// drips is the heat above which ore runs down between the charcoal as slag, and dripsFor the time constant in s of that
// just above it.
const drips, dripsFor = 1430.0, 240.0

// working is how far above the melting of its slag a hearth works well, and stuck how far below it iron does not come
// together any more, K.
const working, stuck = 20.0, 110.0

// plain is what share of the iron comes down as metal in an ordinary furnace: what the yield drawn is meant for (assumed).
// Of more or less only a root counts, so that neither stack nor blast steer the yield more than published smelts show.
const plain, rootOf = 0.35, 0.25

// bloomMetal is the metal in a bloom as it is weighed (published: 0.6 to 0.9).
const bloomMetal = 0.75

// falls lets what is molten, and what the burned charcoal held, come down into the hearth.
func (f *Furnace) falls(c *column, dt float64) {
	for i := range c.slices {
		s := &c.slices[i]
		if s.iron+s.mineral <= 0 || s.kelvin <= drips {
			continue
		}
		share := math.Min(1, (s.kelvin-drips)/100) / dripsFor * dt
		if i == 0 {
			share *= 3
		}
		f.arrive(s, math.Min(0.5, share))
	}
}

// arrive takes a share of the ore and ash of a slice down.
func (f *Furnace) arrive(s *slice, share float64) {
	h := &f.hearth
	before := s.heat() + h.heat()
	iron, oxygen, mineral, silica := s.iron*share, s.oxygen*share, s.mineral*share, s.silica*share
	s.iron, s.oxygen, s.mineral, s.silica, s.ore = s.iron-iron, s.oxygen-oxygen, s.mineral-mineral, s.silica-silica, s.ore*(1-share)
	kelvin := s.kelvin
	h.mineral, h.silica = h.mineral+mineral, h.silica+silica
	if iron > 0 {
		perIron := oxygen / iron
		metal := math.Max(0, 1-perIron)
		kg := iron * physics.MolarMassFe
		h.came += kg
		h.metal += kg * metal
		h.arrives += (metal - h.arrives) * math.Min(1, kg/1.5)
		gathers := f.gathers(metal)
		loose := math.Min(0.95, gathers/(1-f.Fragments)) - gathers
		if f.together() < 0.5 {
			gathers, loose = 0, gathers+loose
		}
		h.bloom, h.bits, h.iron = h.bloom+iron*gathers, h.bits+iron*loose, h.iron+iron*(1-gathers-loose)
		h.oxygen += oxygen
		// The slag's iron is wustite: what has more oxygen gives it to the coal it meets, what has less takes it from the blast.
		wants := h.iron - h.oxygen
		h.owes = wants
	}
	// The slice keeps its heat, the hearth gets that of what fell.
	s.kelvin = kelvin
	h.warm(before - s.heat())
}

// gathers is the share of the iron that comes down which joins the bloom.
func (f *Furnace) gathers(metal float64) float64 {
	ordinary := f.Yield * bloomMetal / math.Max(0.2, f.OreIron+f.AssayOff)
	q := math.Pow(math.Max(0.02, metal)/plain, rootOf)
	return math.Min(0.85, ordinary*math.Max(0.25, math.Min(1.3, q))*f.together())
}

// together is how well iron comes together by the heat of the hearth: 1 above working heat.
func (f *Furnace) together() float64 {
	over := f.hearth.kelvin - (f.Melts() - stuck)
	return math.Max(0.05, math.Min(1, over/(stuck+working)))
}

// Melts is where the slag of the hearth melts in this furnace, K; that of fayalite while there is too little.
func (f *Furnace) Melts() float64 {
	const fayalite, leastSlag = 1450.0, 0.5
	o := f.hearth.slag()
	if o.Sum() < leastSlag {
		return fayalite + f.LiquidusOff
	}
	if l := o.Liquidus(); !l.IsZero() {
		return math.Max(1360, math.Min(1560, l.P50)) + f.LiquidusOff
	}
	return fayalite + f.LiquidusOff
}

// scorch burns iron that falls before the tuyere with the blast's own oxygen. The heat goes into the blast: it burns in the
// fire, not in the bath.
func (h *hearth) scorch(in *stream, dt float64) {
	d := math.Min(h.owes*dt/60, in.o2*dt)
	if d <= 0 {
		return
	}
	before := h.heat() + in.heat()*dt
	in.o2 -= d / 2 / dt
	h.oxygen += d
	h.owes -= d
	in.kelvin = reference + (before-h.heat())/dt/in.capacity()
}

// step exchanges heat with the fire and the ground, and lets the coal at the tuyere reduce what is over wustite.
func (h *hearth) step(f *Furnace, dt float64) {
	for i := range f.side {
		c := &f.side[i]
		if len(c.slices) == 0 {
			continue
		}
		s := &c.slices[0]
		_, stands := c.lowest(0.08)
		if c.hangs > 0 {
			stands = math.Min(stands, 0.08*c.below())
		}
		q := f.HearthGain / 2 * math.Min(1, stands/0.08) * (s.kelvin - h.kelvin) * dt
		most := 0.2 * math.Abs(s.kelvin-h.kelvin) * math.Min(s.capacity(), h.capacity())
		q = math.Max(-most, math.Min(most, q))
		if cap := s.capacity(); cap > 0 {
			s.kelvin -= q / cap
			h.kelvin += q / h.capacity()
		}
		// Oxygen over wustite goes to the coal: C + O -> CO, the gas leaves with the heat of the slice.
		if over := h.oxygen - h.iron; over > 1e-9 && s.carbon > 1 {
			d := math.Min(over*dt/60/2, 0.01*s.carbon)
			before := h.heat() + s.heat()
			h.oxygen -= d
			s.carbon -= d
			gas := d * (heatCO + capCO*(h.kelvin-reference))
			f.account.CarbonOut += d
			f.account.OxygenOut += d
			f.account.HeatOut += gas
			h.warm(before - gas - s.heat())
		}
	}
	loss := f.HearthLoss * (h.kelvin - reference) * dt
	h.kelvin -= loss / h.capacity()
	f.account.HeatOut += loss
	if h.came > 0.5 && h.kelvin < f.Melts()-50 {
		h.coldSeconds += dt
	}
	if f.SlagBelow() < 0 {
		h.lostSeconds += dt
	}
}

// wears takes clay of the wall into the slag.
func (h *hearth) wears(f *Furnace, kg float64) {
	before := h.heat()
	h.mineral += kg
	h.silica += 0.7 * kg
	f.account.MineralIn += kg
	h.warm(before)
}

// SlagMass is the slag in the hearth, kg.
func (f *Furnace) SlagMass() float64 { return f.hearth.slag().Sum() }

// SlagBelow is how far the slag stands below the tuyere, m: in what it can fill of a hearth of its own width, at 3500 kg/m3.
func (f *Furnace) SlagBelow() float64 {
	const density = 3500.0
	area := math.Pi / 4 * f.bore * f.bore
	return f.TuyereBaseCm/100 - (f.SlagMass()/density+f.BloomIron()/7000)/(area*f.SlagVoid)
}

// Tap lets out what of the slag runs, and gives how many kg that was.
func (f *Furnace) Tap() float64 {
	h := &f.hearth
	share := 0.75 * math.Max(0, math.Min(1, (h.kelvin-(f.Melts()-80))/80))
	if share <= 0 || h.mineral <= 0 {
		return 0
	}
	before, kg := h.heat(), h.slag().Sum()*share
	kelvin := h.kelvin
	f.account.IronOut += h.iron * share
	f.account.OxygenOut += h.oxygen * share
	f.account.MineralOut += h.mineral * share
	for _, v := range []*float64{&h.iron, &h.oxygen, &h.mineral, &h.silica} {
		*v *= 1 - share
	}
	h.kelvin = kelvin
	f.account.HeatOut += before - h.heat()
	h.owes = math.Max(0, h.iron-h.oxygen)
	h.tapped += kg
	return kg
}

// BloomIron is the iron that has come together, kg.
func (f *Furnace) BloomIron() float64 { return f.hearth.bloom * physics.MolarMassFe }

// Bloom is what the bloom weighs as it is taken out, and the bits beside it, kg. In some furnaces it does not hang together
// when it comes to be pulled.
func (f *Furnace) Bloom() (bloom, bits float64) {
	bloom, bits = f.BloomIron()/bloomMetal, f.hearth.bits*physics.MolarMassFe/bloomMetal
	if f.apart < f.NoBloom || bloom < 0.3 {
		return 0, bloom + bits
	}
	return bloom, bits
}
