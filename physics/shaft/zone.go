package shaft

import (
	"math"

	"chargehand/physics"
)

// Zone is what goes on in a layer, from the top down.
type Zone int

// The zones. A layer is in the lowest one that fits, as charcoal sees it: what burns is burning whatever else it does.
const (
	ZoneCold      Zone = iota // nothing happens yet
	ZoneDrying                // water leaves
	ZoneRoasting              // the ore's own water leaves, or its calcite's gas; charcoal gives off the last of its volatiles
	ZoneHematite              // Fe2O3 turning to Fe3O4
	ZoneMagnetite             // Fe3O4 turning to FeO
	ZoneWustite               // FeO turning to iron
	ZoneSlag                  // slag runs, iron gathers
	ZoneBurning               // oxygen meets charcoal before the tuyere
)

// Zone names what goes on in the layer. Without ore it goes by what temperature would do to ore.
func (l Layer) Zone() Zone {
	const freshAir = 0.005 // share of oxygen in the gas that still burns charcoal
	ore := l.Ore.Sum() - l.Ore.Metal
	bearing := ore > 1e-4
	switch {
	case l.O2 > freshAir && l.Middle > physics.ZeroCelsius+700:
		return ZoneBurning
	case l.Middle > runningLow:
		return ZoneSlag
	case l.Water > 1e-3*l.Carbon && l.Middle > physics.ZeroCelsius+60:
		return ZoneDrying
	case bearing && l.Ore.Goethite > 0.05*ore && l.Middle > goethiteLow-50:
		return ZoneRoasting
	case bearing && l.Ore.Hematite > 0.3*ore && l.Middle > physics.ZeroCelsius+300:
		return ZoneHematite
	case bearing && l.Ore.Magnetite > 0.3*ore && l.Middle > physics.ZeroCelsius+400:
		return ZoneMagnetite
	case bearing && l.Middle > physics.ZeroCelsius+570:
		return ZoneWustite
	case l.Middle < physics.ZeroCelsius+60:
		return ZoneCold
	case bearing:
		return ZoneRoasting
	case l.Middle > physics.ZeroCelsius+900:
		return ZoneWustite
	case l.Middle > physics.ZeroCelsius+570:
		return ZoneMagnetite
	case l.Middle > physics.ZeroCelsius+300:
		return ZoneHematite
	case l.Middle > physics.ZeroCelsius+110:
		return ZoneRoasting
	}
	return ZoneDrying
}

// How far a temperature of the shaft may be off, K: what 29 published probes in two furnaces read beside the model at the same
// place (TestReportReadings prints them all). Higher up they lie from 252 K under it to 197 over it, ten to ninety in a hundred;
// rounded. Below zoneLow there are ten, of five moments in two fires: 75 K under it, and 127 K apart. Of one more fire eight in ten
// are then expected from 289 under to 138 over it, by Student's t for as many as there are moments, since probes of one moment say
// the same of a fire (TestTheBandOfTheFire). The model gives one mean across the bore, the blast comes from one side, and two rows
// of probes in one furnace read up to 460 K apart (30 Oct 2021).
const (
	zoneUp, zoneDown   = 140.0, 290.0
	shaftUp, shaftDown = 200.0, 250.0
	zoneLow            = 0.20 // m above the tuyere
)

// Of the hearth itself one reading was published, and that is met by what was fitted to it. It is as uncertain as the fire over it, and
// by what hearth_k and hearth_lump do over their ranges (TestReportReadings).
const hearthUp, hearthDown = 40.0, 70.0

// The hottest place of a furnace of this kind was read between these, C: 1350 to 1450 under the tuyere (Passy-les-Tours 2014,
// passylestours.fr), near 1350 where a probe failed at 800 l/min in a bore of 25 cm (DARC 9 Oct 2011, darkcompanyca.blogspot.com
// 2011/10).
const HottestReadLow, HottestReadHigh = 1350.0, 1450.0

// BeyondReadings tells whether a temperature of the model in K is hotter than any that was read in a furnace of this kind. At
// blasts over 2 l/min per cm2, and over a stack that has burned low, the model gives such ones in the middle
// (TestReportHeatBalance says where their heat goes, TestReportHighBlast what could take more of it; nothing published tells which of
// it does): there it is a guess.
func BeyondReadings(kelvin float64) bool { return kelvin > physics.ZeroCelsius+HottestReadHigh }

// TemperatureBand gives the band in K about a temperature of the model at a height in m: fixed spreads, not an ensemble. The band
// never crosses the air's temperature. Of a temperature beyond all readings it goes down to the least hot of the hottest places
// that were read.
func TemperatureBand(kelvin, height, air float64) physics.Band {
	if height >= zoneLow {
		return bandOf(kelvin, shaftDown, shaftUp, air)
	}
	return bandOf(kelvin, zoneDown, zoneUp, air)
}

// HearthBand gives the band in K about a temperature of the hearth.
func HearthBand(kelvin, air float64) physics.Band {
	down, up := HearthOwn()
	return bandOf(kelvin, math.Hypot(zoneDown, down), math.Hypot(zoneUp, up), air)
}

// HearthOwn gives how far, K down and up, the hearth may be off beside the fire over it.
func HearthOwn() (down, up float64) { return hearthDown, hearthUp }

func bandOf(kelvin, down, up, air float64) physics.Band {
	if BeyondReadings(kelvin) {
		down = math.Max(down, kelvin-(physics.ZeroCelsius+HottestReadLow))
	}
	return physics.Band{P10: math.Min(kelvin, math.Max(air, kelvin-down)), P50: kelvin, P90: kelvin + up}
}
