package zones

import (
	"math"

	"chargehand/model/truth"
	"chargehand/physics"
)

// hearth is all below the tuyere as one lump: packing, slag, iron and bits.
type hearth struct {
	kelvin               float64
	packing              float64 // J/K
	ferrous              float64 // mol of iron in slag, with as much oxygen
	silica, rest         float64 // kg
	bloom, bits          float64 // mol of iron come together, and beside it
	ironIn, came         float64 // kg of iron charged, and come down
	metal                float64 // share of metal in what comes down
	cold, flood, hotWork float64 // s
}

// slagSolid is kg/m3 of slag (published slags of 3300 to 3900; from memory).
const slagSolid = 3600.0

func (h *hearth) slagKg() float64 {
	return h.ferrous*(physics.MolarMassFe+massO) + h.silica + h.rest
}

func (h *hearth) capacity() float64 {
	return h.packing + h.ferrous*(heatFe+heatO) + heatMineral*(h.silica+h.rest) + heatFe*(h.bloom+h.bits)
}

func (h *hearth) heat() float64 { return h.ferrous*formOxide + h.capacity()*(h.kelvin-cold) }

func (h *hearth) amounts() amounts {
	return amounts{oxygen: h.ferrous, iron: h.ferrous + h.bloom + h.bits, mineral: h.silica + h.rest}
}

// meltingLine is where slag of iron and silica melts, by the share of silica, C: Bowen and Schairer 1932 (from memory,
// unverified), drawn straight between its corners.
var meltingLine = []struct{ silica, celsius float64 }{{0, 1371}, {0.24, 1177}, {0.295, 1205}, {0.38, 1178}, {0.45, 1500}, {0.6, 1690}, {1, 1713}}

// Melts is where the slag in the hearth melts, K: by the line, 4 K lower for each per cent of what is neither iron nor silica, to
// 15 (assumed). That of fayalite while there is none to speak of.
func (f *Furnace) Melts() float64 {
	h := &f.hearth
	iron := h.ferrous * (physics.MolarMassFe + massO)
	sum := iron + h.silica + h.rest
	if sum < 0.2 {
		return 1205 + 273.15 + f.MeltsOff
	}
	x := h.silica / (h.silica + iron)
	c := meltingLine[len(meltingLine)-1].celsius
	for i := 1; i < len(meltingLine); i++ {
		if a, b := meltingLine[i-1], meltingLine[i]; x <= b.silica {
			c = a.celsius + (b.celsius-a.celsius)*(x-a.silica)/(b.silica-a.silica)
			break
		}
	}
	return c - 400*math.Min(0.15, h.rest/sum) + 273.15 + f.MeltsOff
}

// SlagBelow is how far below the tuyere the slag stands, m; negative above it. Iron and bits take room too.
func (f *Furnace) SlagBelow() float64 {
	h := &f.hearth
	iron := (h.bloom + h.bits) * physics.MolarMassFe / 5000 // a spongy mass
	return f.TuyereBaseCm/100 - (h.slagKg()/slagSolid/f.SlagVoid+iron)/f.floor
}

// usualMetal is the share of metal in what comes down on an ordinary day, to which Yield belongs (assumed).
const usualMetal = 0.85

// Iron comes together in a hearth up to soft K colder than where its slag melts, and not at all from stiff K on (assumed: before
// the tuyere it is hotter than the lump).
const soft, stiff = 40.0, 140.0

// binds is kg of wustite that a kg of the ore's silica takes into slag before any iron is left over: what stands beside it where
// fayalite and silica melt together (Bowen and Schairer 1932, from memory, unverified).
const binds = 1.6

// drips lets ore run down out of the burning zone into the hearth. What oxygen is over wustite goes with the charcoal it
// touches, and some of the rest; of the metal, the blast burns what a smelt of this furnace loses.
func (f *Furnace) drips(g *gas, dt float64) {
	z, h := &f.zone[burning], &f.hearth
	kelvin, before := z.kelvin(), h.capacity()*(h.kelvin-cold)
	share := dt / (60 * f.DripMinutes)
	var down packet
	for i := range z.packets {
		p := &z.packets[i]
		if p.iron+p.ash+p.silica <= 0 {
			continue
		}
		off := packet{iron: p.iron * share, oxygen: p.oxygen * share, ash: p.ash * share, silica: p.silica * share, rest: p.rest * share}
		p.iron, p.oxygen, p.ash, p.silica, p.rest = p.iron-off.iron, p.oxygen-off.oxygen, p.ash-off.ash, p.silica-off.silica, p.rest-off.rest
		down.join(off)
	}
	z.heat -= down.heat(kelvin)
	over := math.Max(0, down.oxygen-down.iron)
	over += f.Touch * (down.oxygen - over)
	if over = math.Min(over, 0.5*z.carbon()); over > 0 {
		// CO of this oxygen joins the gas before the zone has its heat: what it binds is the zone's.
		z.burn(over)
		down.oxygen -= over
		z.heat += over * (formOxide + heatO*(kelvin-cold))
		z.heat += dt * g.heat()
		g.co += over / dt
		z.heat -= dt * g.heat()
	}
	if down.iron > 0 {
		h.metal = math.Max(0, 1-down.oxygen/down.iron)
		metal := h.metal * down.iron
		dryOre := down.iron * physics.MolarMassFe / bound(f.OreIron+f.AssayOff, 0.15, 0.66)
		keep := math.Min(metal, f.Yield*(1-f.BloomSlag)/(1-f.Fragments)*dryOre/physics.MolarMassFe*h.metal/usualMetal)
		keep = math.Max(0, math.Min(keep, down.iron-binds*down.silica/(physics.MolarMassFe+massO)))
		burns := math.Min(metal-keep, 1.6*g.o2*dt) // a mol of oxygen for two of iron, most of it left for charcoal
		z.heat += dt * g.heat()
		g.o2 -= burns / 2 / dt
		z.heat -= dt * g.heat()
		z.heat -= burns * (formOxide + heatO*(kelvin-cold))
		down.oxygen += burns
		kept := down.iron - math.Min(down.iron, down.oxygen)
		joins := bound((h.kelvin-f.Melts()+stiff)/(stiff-soft), 0, 1)
		bits := keep * (1 - (1-f.Fragments)*joins)
		bits = math.Min(kept, bits+math.Max(0, kept-keep))
		h.bits += bits
		h.bloom += kept - bits
		h.came += down.iron * physics.MolarMassFe
	}
	// What carries more oxygen than one for each iron, for lack of charcoal, keeps it: it stays behind in the zone.
	if spare := down.oxygen - down.iron; spare > 0 && len(z.packets) > 0 {
		z.packets[0].oxygen += spare
		z.heat += spare * (formOxide + heatO*(kelvin-cold))
		down.oxygen -= spare
	}
	h.ferrous += math.Min(down.oxygen, down.iron)
	h.silica += down.silica
	h.rest += down.rest + down.ash
	brings := down.capacity() * (kelvin - cold)
	h.kelvin = cold + (before+brings)/h.capacity()
}

// warmsHearth takes heat from the burning zone into the hearth and from there into the ground.
func (f *Furnace) warmsHearth(dt float64) {
	z, h := &f.zone[burning], &f.hearth
	in := f.HearthGain * (z.kelvin() - h.kelvin) * dt
	out := f.HearthLoss * (h.kelvin - cold) * dt
	z.heat -= in
	h.kelvin += (in - out) / h.capacity()
	f.account.out.heat += out
}

// counts takes down how long things were ill.
func (f *Furnace) counts(dt float64) {
	h := &f.hearth
	if h.came > 0.2 {
		h.hotWork += dt
		if h.kelvin < f.Melts() {
			h.cold += dt
		}
	}
	if f.SlagBelow() < 0 {
		h.flood += dt
	}
}

// tapLeaves is the share of the slag that a tap does not reach (assumed).
const tapLeaves = 0.3

// Tap opens the arch and lets slag run, if it does; the kg that ran.
func (f *Furnace) Tap() float64 {
	h := &f.hearth
	if h.kelvin < f.Melts()-20 {
		return 0
	}
	before, kg := h.heat(), h.slagKg()
	was := h.amounts()
	h.ferrous, h.silica, h.rest = h.ferrous*tapLeaves, h.silica*tapLeaves, h.rest*tapLeaves
	is, out := h.amounts(), &f.account.out
	out.oxygen += was.oxygen - is.oxygen
	out.iron += was.iron - is.iron
	out.mineral += was.mineral - is.mineral
	out.heat += before - h.heat()
	return kg - h.slagKg()
}

// Bloom takes the iron as it came together, with its slag, and the bits beside it, kg. It falls apart by the chance of the
// furnace, the more often the longer the hearth was too cold.
func (f *Furnace) Bloom() (bloom, bits float64) {
	h := &f.hearth
	bloom, bits = h.bloom*physics.MolarMassFe/(1-f.BloomSlag), h.bits*physics.MolarMassFe
	chance := f.NoBloom
	if h.hotWork > 0 {
		chance += 0.5 * math.Max(0, h.cold/h.hotWork-0.3)
	}
	if f.apart < chance || bloom < 0.1 {
		return 0, bloom + bits
	}
	return bloom, bits
}

// Look is the state as it truly is.
func (f *Furnace) Look() truth.Truth {
	h := &f.hearth
	t := truth.Truth{
		StackCm: 100 * f.Level(), HearthC: h.kelvin - 273.15, ColdMin: h.cold / 60, FloodMin: h.flood / 60, HungMin: f.hung / 60, Metal: h.metal,
		DownKg: h.came, PeepC: f.zone[burning].kelvin() - 273.15, TopC: f.top.kelvin - 273.15, Bloom: h.bloom * physics.MolarMassFe,
		AirLMin: f.air.flow(f), Shut: f.shut, SlagCm: 100 * f.SlagBelow(), OverC: h.kelvin - f.Melts(), Hangs: f.Hangs(), TopOut: f.topOut,
	}
	if h.ironIn > 0 {
		t.OreDown = 100 * h.came / h.ironIn
	}
	return t
}
