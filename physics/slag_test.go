package physics

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// oxidesFrom reads "FeO 70.51 SiO2 29.49" of slag.csv.
func oxidesFrom(tb testing.TB, text string) (o Oxides) {
	tb.Helper()
	fields := map[string]*float64{"SiO2": &o.SiO2, "TiO2": &o.TiO2, "Al2O3": &o.Al2O3, "FeO": &o.FeO, "MnO": &o.MnO,
		"MgO": &o.MgO, "CaO": &o.CaO, "Na2O": &o.Na2O, "K2O": &o.K2O, "P2O5": &o.P2O5}
	words := strings.Fields(strings.TrimSuffix(text, " wt%"))
	for i := 0; i+1 < len(words); i += 2 {
		v, err := strconv.ParseFloat(words[i+1], 64)
		if err != nil || fields[words[i]] == nil {
			tb.Fatalf("composition %q", text)
		}
		*fields[words[i]] = v
	}
	return o
}

// Viscosity, density and indices of the six slags of slag.csv (computed by another program from the same published
// coefficients), and the authors' worked example of Giordano, Russell & Dingwell 2008.
func TestSlagAgainstTable(t *testing.T) {
	atC := regexp.MustCompile(`at ([0-9]+) C$`)
	counts := map[string]int{}
	for _, row := range referenceRows(t, "slag.csv") {
		var got, tolerance float64
		want := referenceNumber(t, strings.Split(row["value"], "-")[0])
		var kelvin float64
		if m := atC.FindStringSubmatch(row["unit"]); m != nil {
			kelvin = FromCelsius(referenceNumber(t, m[1]))
		}
		q := row["quantity"]
		switch {
		case row["table"] == "viscosity" && strings.HasPrefix(q, "Urbain modified"):
			got, tolerance = oxidesFrom(t, row["composition_wt%"]).Viscosity(kelvin).P50, 2e-3
			counts["urbain"]++
		case row["table"] == "viscosity" && strings.HasPrefix(q, "GRD 2008"):
			got, tolerance = oxidesFrom(t, row["composition_wt%"]).ClayMeltViscosity(kelvin, 0), 2e-2
			counts["grd"]++
		case row["table"] == "density":
			got, tolerance = oxidesFrom(t, row["composition_wt%"]).Density(kelvin)/1000, 1e-3
			counts["density"]++
		case row["table"] == "index" && strings.HasPrefix(q, "RII"):
			got, tolerance = oxidesFrom(t, row["composition_wt%"]).ReducibleIronIndex(), 2e-3
			counts["rii"]++
		case row["table"] == "index" && strings.HasPrefix(q, "Kv"):
			got, tolerance = oxidesFrom(t, row["composition_wt%"]).ViscosityIndex(), 1e-4
			counts["kv"]++
		case row["table"] == "viscosity_published_example":
			basalt := Oxides{SiO2: 50.42, TiO2: 1.53, Al2O3: 15.13, FeO: 9.81, MgO: 7.76, CaO: 11.35, Na2O: 2.83, K2O: 0.14}
			water := 0.0
			if strings.Contains(q, "H2O") {
				water = 0.01
			}
			got, tolerance = math.Log10(basalt.ClayMeltViscosity(FromCelsius(1200), water)), 5e-4
			counts["example"]++
		default:
			continue
		}
		if math.Abs(got-want) > tolerance*math.Abs(want)+1e-12 {
			t.Errorf("%s, %s %s: %.5g, table %.5g", row["table"], q, row["unit"], got, want)
		}
	}
	for what, least := range map[string]int{"urbain": 30, "grd": 30, "density": 6, "rii": 6, "kv": 6, "example": 2} {
		if counts[what] < least {
			t.Errorf("%s: %d rows checked, want %d", what, counts[what], least)
		}
	}
}

// Melting points of FeO-SiO2 (slag.csv; Bowen & Schairer 1932 and Greig 1927, from memory), met exactly; the CaO-FeO-SiO2
// minimum (Bowen, Schairer & Posnjak 1933, from memory) within the stated spread.
func TestLiquidusMeetsTheDiagram(t *testing.T) {
	checked := 0
	for _, row := range referenceRows(t, "slag.csv") {
		if row["table"] != "FeO-SiO2" {
			continue
		}
		o := oxidesFrom(t, row["composition_wt%"])
		o.FeO = 100 - o.SiO2
		checked++
		if got, want := ToCelsius(o.Liquidus().P50), referenceNumber(t, row["value"]); math.Abs(got-want) > 1 {
			t.Errorf("%s: %.1f C, published %.0f", row["quantity"], got, want)
		}
	}
	if checked != 5 {
		t.Errorf("%d points checked", checked)
	}
	lime := Oxides{CaO: 17, FeO: 45, SiO2: 38}.Liquidus()
	if c := FromCelsius(1093); c < lime.P10 || c > lime.P90 {
		t.Errorf("lime minimum 1093 C lies outside %.0f to %.0f C", ToCelsius(lime.P10), ToCelsius(lime.P90))
	}
}

// The three lowest points of FeO-Al2O3-SiO2 (Schairer & Yagi 1952, Am. J. Sci., Bowen volume, p. 471; temperatures as in
// slag.csv, compositions too from memory, unverified): the estimate gives 1121, 1119 and 1162 C, within its spread of each. An
// older study ("Equilibrium studies in the system FeO-Al2O3-SiO2", its abstract read; Snow & McCaughey 1942, J. Am. Ceram.
// Soc. 25:151 from memory) has the lowest point at 45 FeO, 42 SiO2, 13 Al2O3 and 970 C, give or take 20; it knew no iron
// cordierite, and the estimate, 1175 C there, does not meet it.
func TestLiquidusOfAluminousSlags(t *testing.T) {
	for _, c := range []struct {
		slag      Oxides
		published float64
	}{
		{Oxides{FeO: 48.5, SiO2: 40, Al2O3: 11.5}, 1083},
		{Oxides{FeO: 47, SiO2: 40, Al2O3: 13}, 1088},
		{Oxides{FeO: 64, SiO2: 25, Al2O3: 11}, 1148},
	} {
		b := c.slag.Liquidus()
		t.Logf("%+v: %.0f C (%.0f to %.0f), published %.0f", c.slag, ToCelsius(b.P50), ToCelsius(b.P10), ToCelsius(b.P90), c.published)
		if k := FromCelsius(c.published); k < b.P10 || k > b.P90 || math.Abs(b.P50-k) > 40 {
			t.Errorf("%+v: %.0f C, published %.0f", c.slag, ToCelsius(b.P50), c.published)
		}
	}
}

// The skin of a Wealden bloom (report by Tim Smith on a smelt of Owen Bush, Wealden Iron Research Group: SiO2 6.94, Al2O3
// 19.19) and its tap slag (21.23, 14.57) lie in the spinels' field: 1150 to 1350 C and no more is known. A slag of this
// trade's usual make does not, nor one with a trace of alumina and no silica.
func TestSpinelsMeltLast(t *testing.T) {
	for _, o := range []Oxides{
		{SiO2: 6.94, Al2O3: 19.19, Fe2O3: 17.86, FeO: 40.61, CaO: 8.80, MnO: 0.09},
		{SiO2: 21.23, Al2O3: 14.57, Fe2O3: 15.72, FeO: 37.29, CaO: 8.73, MnO: 0.10},
		{SiO2: 12, Al2O3: 10, FeO: 78},
	} {
		b := o.Liquidus()
		if !o.SpinelLast() || math.Abs(ToCelsius(b.P10)-1150) > 0.5 || math.Abs(ToCelsius(b.P90)-1350) > 0.5 {
			t.Errorf("%+v: %v, %.0f to %.0f C", o, o.SpinelLast(), ToCelsius(b.P10), ToCelsius(b.P90))
		}
	}
	for _, o := range []Oxides{{SiO2: 25, Al2O3: 6, FeO: 65, CaO: 4}, {FeO: 99, Al2O3: 1}, {}} {
		if o.SpinelLast() {
			t.Errorf("%+v counts as a spinel's", o)
		}
	}
}

// A hair's breadth of an assay makes no jump: alumina from none to a fifth, in steps of a hundredth of a per cent, over slags
// rich and poor in silica.
func TestLiquidusIsContinuousInAlumina(t *testing.T) {
	for _, silica := range []float64{0, 5, 15, 25, 35, 45} {
		before := Band{}
		for a := 0.0; a < 20; a += 0.01 {
			b := Oxides{SiO2: silica, Al2O3: a, FeO: 100 - silica - a}.Liquidus()
			if b.P50 < FromCelsius(lowestLiquidus) || !(b.P10 <= b.P50 && b.P50 <= b.P90) {
				t.Fatalf("%g SiO2, %.2f Al2O3: %+v", silica, a, b)
			}
			for i, d := range []float64{b.P10 - before.P10, b.P50 - before.P50, b.P90 - before.P90} {
				if a > 0 && math.Abs(d) > 6 {
					t.Errorf("%g SiO2: at %.2f Al2O3 percentile %d jumps by %.1f K", silica, a, i, d)
				}
			}
			before = b
		}
	}
}

// Little of what the line does not know keeps the spread at 50 K; much of it takes it to 100.
func TestLiquidusKnowsWhatItDoesNotKnow(t *testing.T) {
	spread := func(o Oxides) float64 { b := o.Liquidus(); return b.P90 - b.P50 }
	base := Oxides{SiO2: 28, FeO: 65, Al2O3: 4, CaO: 3}
	if got := spread(base); math.Abs(got-50) > 1e-9 {
		t.Errorf("usual slag: %.0f K", got)
	}
	for name, o := range map[string]Oxides{"manganese": {MnO: 6}, "magnesia": {MgO: 6}, "lime": {CaO: 6}, "alumina": {Al2O3: 5}} {
		if got := spread(base.Plus(o)); math.Abs(got-100) > 1e-9 {
			t.Errorf("%s: %.0f K", name, got)
		}
	}
}

// Chances of running add up, rise with the heat, and follow both bands: by hand, 50 K over a liquidus of 1177 C known to 50 K
// (10 to 90 %, sd 39) and a heat known to 50 K the chance of running is that of 50/55 standard deviations, 0.82.
func TestRunning(t *testing.T) {
	eutectic := Oxides{SiO2: 24, FeO: 76}
	heat := func(c float64) Band {
		return Band{P10: FromCelsius(c - 50), P50: FromCelsius(c), P90: FromCelsius(c + 50)}
	}
	before := Running{}
	for c := 900.0; c < 1500; c += 20 {
		r := eutectic.Running(heat(c))
		if math.Abs(r.Runs+r.Creeps+r.Not-1) > 1e-12 || r.Runs < before.Runs || r.Creeps < 0 {
			t.Errorf("%g C: %+v", c, r)
		}
		before = r
	}
	if r := eutectic.Running(heat(1227)); math.Abs(r.Runs-0.818) > 0.002 {
		t.Errorf("50 K over: %+v", r)
	}
	if r := (Oxides{}).Running(heat(1200)); r != (Running{}) {
		t.Errorf("no slag: %+v", r)
	}
}

// Molten fayalite at 1250-1300 C: 0.05-0.15 Pa s measured (Shiraishi et al. 1978; order of magnitude from memory).
func TestFayaliteViscosity(t *testing.T) {
	fayalite := Oxides{FeO: 70.51, SiO2: 29.49}
	for _, c := range []float64{1250, 1300} {
		if eta := fayalite.Viscosity(FromCelsius(c)); eta.P50 < 0.05 || eta.P50 > 0.15 {
			t.Errorf("%g C: %.3f Pa s", c, eta.P50)
		}
	}
}

// Why a slag with too little iron is stiff: from fayalite towards silica every step is stiffer at one temperature; hotter is
// thinner; crystals thicken (Sauder, quoted 2006: more silica makes it sticky steeply).
func TestSlagPoorInIronIsStiff(t *testing.T) {
	kelvin := FromCelsius(1250)
	before := 0.0
	for _, feo := range []float64{76, 70, 62, 55, 48, 40} {
		o := Oxides{FeO: feo, SiO2: 94 - feo, Al2O3: 6}
		eta := o.Stiffness(kelvin)
		if !(eta.P50 > before) || !(eta.P10 < eta.P50 && eta.P50 < eta.P90) {
			t.Errorf("%g %% FeO: %+v after %.3f", feo, eta, before)
		}
		if hotter := o.Stiffness(kelvin + 50).P50; !(hotter < eta.P50) {
			t.Errorf("%g %% FeO: %.3f Pa s when hotter, %.3f before", feo, hotter, eta.P50)
		}
		before = eta.P50
	}
}

// Ten kilograms of fayalite, 3884 kg/m3, on a 30 cm hearth half full of fines stand 7.3 cm deep (arithmetic).
func TestBathDepth(t *testing.T) {
	o := Oxides{FeO: 7.051, SiO2: 2.949}
	got, err := o.BathDepth(FromCelsius(1250), 0.30, 0.5)
	must(t, err)
	if want := 10 / 3884.0 / (math.Pi / 4 * 0.09 * 0.5); math.Abs(got-want) > 2e-4 {
		t.Errorf("%.4f m, want %.4f", got, want)
	}
	if _, err := o.BathDepth(1500, 0, 0.5); err == nil {
		t.Error("a hearth without width was taken")
	}
}

// Fayalite is 2 FeO SiO2: 70.51 % FeO (slag.csv). Made poorer and richer again it is the same slag, and ferric iron counts
// by its iron: 100 kg Fe2O3 hold the iron of 89.98 kg FeO (molar masses).
func TestIronOfASlag(t *testing.T) {
	fayalite := Oxides{FeO: 7.051, SiO2: 2.949}
	if got := fayalite.FerrousShare(); math.Abs(got-0.7051) > 1e-9 {
		t.Errorf("%.4f", got)
	}
	poor := fayalite.WithFerrous(0.4)
	if math.Abs(poor.Sum()-10) > 1e-9 || math.Abs(poor.FeO-4) > 1e-9 {
		t.Errorf("made poorer: %+v", poor)
	}
	if back := poor.WithFerrous(0.7051); math.Abs(back.FeO-fayalite.FeO) > 1e-9 || math.Abs(back.SiO2-fayalite.SiO2) > 1e-9 {
		t.Errorf("and richer again: %+v", back)
	}
	if got := (Oxides{Fe2O3: 100, SiO2: 89.98}).FerrousShare(); math.Abs(got-0.5) > 1e-4 {
		t.Errorf("ferric: %.4f", got)
	}
	if got := (Oxides{FeO: 3}).WithFerrous(0.5); got != (Oxides{FeO: 3}) {
		t.Errorf("nothing but iron: %+v", got)
	}
	if (Oxides{}).FerrousShare() != 0 {
		t.Error("no slag has iron in it")
	}
}
