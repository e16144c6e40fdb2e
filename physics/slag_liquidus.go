package physics

// fayaliteLiquidus is the melting line of FeO-SiO2 in contact with iron: mass share of SiO2 and C. Bowen & Schairer 1932, Am.
// J. Sci. 24:177, and Greig 1927 for the plateau (from memory, unverified). The last stretch is drawn straight from the
// eutectic to the plateau's edge.
var fayaliteLiquidus = [...]struct{ silica, celsius float64 }{{0, 1371}, {0.24, 1177}, {0.295, 1205}, {0.38, 1178}, {0.58, 1690}, {1, 1690}}

const (
	// lowestLiquidus is the lowest point of FeO-Al2O3-SiO2 in C: tridymite, iron cordierite and fayalite (Schairer & Yagi
	// 1952, from memory, unverified).
	lowestLiquidus = 1083.0

	// boundSilica is the silica that a kg of alumina binds in iron cordierite and its like, kg, so that it does not raise the
	// melting point as free silica does (fitted here: with it the three ternary points of TestLiquidusMeetsTheDiagram and
	// TestLiquidusOfAluminousSlags come within 40 K).
	boundSilica = 0.9

	liquidusSpread, liquidusWideSpread = 50.0, 100.0
)

// spinelLiquidus is where a slag melts whose last crystals are a spinel (hercynite), in C: not known better than this
// (assumed; hercynite itself melts far above, the slags that hold it have run in furnaces).
var spinelLiquidus = Band{P10: 1150, P50: 1250, P90: 1350}

// Liquidus estimates in K where the last crystals of the slag melt, with its spread. It is read from the FeO-SiO2 line at the
// share of silica that alumina does not bind, with MnO, MgO and CaO counted as FeO mole for mole; then lowered for Al2O3 (5 K
// per per cent, to 12), CaO (3, to 17) and alkali (4, to 5), and never below 1083 C. The slopes are fitted here to the ternary
// minima of the tests and to nothing else: the spread is 50 K, 100 K with 8 % and more of CaO or Al2O3, 5 % of MnO or MgO, or
// 45 % silica on that line. Where [Oxides.SpinelLast] it is 1150 to 1350 C, come to over a point of alumina, so that no hair's
// breadth of an assay makes a jump. Trust it least of all figures here.
func (o Oxides) Liquidus() Band {
	sum := o.Sum()
	if !(sum > 0) {
		return Band{}
	}
	x := o.freeSilica()
	alumina, lime, alkali := o.Al2O3/sum, o.CaO/sum, (o.Na2O+o.K2O)/sum
	celsius := meltingLine(x) - 500*min(alumina, 0.12) - 300*min(lime, 0.17) - 400*min(alkali, 0.05)
	wide := max(ramp(alumina, 0.06, 0.08), ramp(lime, 0.06, 0.08), ramp(o.MnO/sum, 0.04, 0.05), ramp(o.MgO/sum, 0.04, 0.05), ramp(x, 0.42, 0.45))
	mid, spread := max(celsius, lowestLiquidus), liquidusSpread+(liquidusWideSpread-liquidusSpread)*wide
	spinel := o.spinel()
	blend := func(c, s float64) float64 { return FromCelsius(c + (s-c)*spinel) }
	return Band{P10: blend(mid-spread, spinelLiquidus.P10), P50: blend(mid, spinelLiquidus.P50), P90: blend(mid+spread, spinelLiquidus.P90)}
}

// SpinelLast says that the last crystals of the slag are likely a spinel, so that where it melts is not known: above 13 %
// Al2O3, or (from 5 % Al2O3 on) below 1.5 SiO2 for each Al2O3. What more iron would do to such a slag is not known either.
func (o Oxides) SpinelLast() bool { return o.spinel() > 0 }

// spinel is how far a slag lies in the field of the spinels, 0 to 1.
func (o Oxides) spinel() float64 {
	sum := o.Sum()
	if !(sum > 0) || o.Al2O3 <= 0 {
		return 0
	}
	alumina := o.Al2O3 / sum
	return max(ramp(alumina, 0.13, 0.14), min(ramp(alumina, 0.04, 0.05), ramp(-o.SiO2/o.Al2O3, -1.5, -1.3)))
}

// freeSilica is the silica that alumina does not bind, as a share of it and what counts as FeO: where the slag stands on the
// line of FeO-SiO2. A slag without either stands at silica's end.
func (o Oxides) freeSilica() float64 {
	silica := max(0, o.SiO2-boundSilica*o.Al2O3)
	ferrous := o.ferrousTotal() + MolarMassFeO*(o.MnO/MolarMassMnO+o.MgO/MolarMassMgO+o.CaO/MolarMassCaO)
	if silica+ferrous > 0 {
		return silica / (silica + ferrous)
	}
	return 1
}

// meltingLine reads fayaliteLiquidus, C.
func meltingLine(x float64) float64 {
	for i := 1; i < len(fayaliteLiquidus); i++ {
		a, b := fayaliteLiquidus[i-1], fayaliteLiquidus[i]
		if x <= b.silica {
			return a.celsius + (b.celsius-a.celsius)*(x-a.silica)/(b.silica-a.silica)
		}
	}
	return fayaliteLiquidus[len(fayaliteLiquidus)-1].celsius
}

// ramp is 0 up to low, 1 from high on, and straight between.
func ramp(v, low, high float64) float64 { return min(1, max(0, (v-low)/(high-low))) }
