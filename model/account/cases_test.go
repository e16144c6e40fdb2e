package account

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// The heat exchanger with bypass of Narasimhan and Jordache 2000, chapter 1:
// 1 -> 2+3, 2 -> 4, 3 -> 5, 4+5 -> 6; every measurement of variance 1.
func bypass(measured ...int) Problem {
	p := Problem{Balances: []Balance{
		{"1", []Term{{1, []int{0}}, {-1, []int{1}}, {-1, []int{2}}}},
		{"2", []Term{{1, []int{1}}, {-1, []int{3}}}},
		{"3", []Term{{1, []int{2}}, {-1, []int{4}}}},
		{"4", []Term{{1, []int{3}}, {1, []int{4}}, {-1, []int{5}}}},
	}}
	for _, v := range []float64{101.91, 64.45, 34.65, 64.20, 36.44, 98.88} {
		p.Quantities = append(p.Quantities, Quantity{Value: v, SD: 1, Standing: Unknown})
	}
	for _, m := range measured {
		p.Quantities[m-1].Standing = Measured
	}
	return p
}

// caseRows are the rows of one worked case.
func caseRows(t *testing.T, name string) []map[string]string {
	t.Helper()
	var own []map[string]string
	for _, r := range table(t, "cases.csv") {
		if r["case"] == name {
			own = append(own, r)
		}
	}
	if len(own) == 0 {
		t.Fatalf("no case %s", name)
	}
	return own
}

// first is the number at the head of a cell: "10.2704 (b 3.9250)".
func first(t *testing.T, cell string) float64 {
	t.Helper()
	return num(t, strings.Fields(cell)[0])
}

// checkBypass compares a solved bypass with the rows of its case.
func checkBypass(t *testing.T, name string, s Solution) {
	t.Helper()
	for _, r := range caseRows(t, name) {
		what := fmt.Sprint(name, " ", r["quantity"], " ", r["item"])
		want := first(t, r["computed"])
		stream := func() int { return int(num(t, r["item"])) - 1 }
		size := func() float64 {
			_, b, _ := strings.Cut(r["computed"], "(b ")
			return num(t, strings.TrimSuffix(b, ")"))
		}
		switch r["quantity"] {
		case "reconciled", "unmeasured":
			near(t, what, s.Value[stream()], want, 6e-5)
			if p := r["printed"]; p != "" {
				near(t, what+" printed", s.Value[stream()], first(t, p), 0.0051)
			}
		case "gamma":
			near(t, what, s.Misfit, want, 6e-5)
		case "redundancy":
			near(t, what, float64(s.Redundancy), want, 0)
		case "z_measurement":
			c, _ := ofStream(s, stream())
			near(t, what, c.Z, want, 6e-5)
		case "glr_T_bias":
			c, _ := ofStream(s, stream())
			near(t, what, c.Strength(), want, 6e-5)
			near(t, what+" size", c.Size, size(), 6e-5)
		case "glr_T_leak":
			c, _ := ofLeak(s, stream())
			near(t, what, c.Strength(), want, 6e-5)
			near(t, what+" size", c.Size, size(), 6e-5)
		case "z_node": // for one balance by itself: below
		default:
			t.Fatalf("%s: not compared", what)
		}
	}
}

func TestBypass(t *testing.T) {
	all := bypass(1, 2, 3, 4, 5, 6)
	s := solved(t, all)
	checkBypass(t, "NJ-bypass", s)
	if !s.Explained() { // 6.4075 is below 9.488, chi squared of 4 degrees at 0.95
		t.Error("no error, yet it is called open")
	}

	for _, c := range []struct {
		name     string
		measured []int
	}{
		{"NJ-bypass-measured-1256", []int{1, 2, 5, 6}}, {"NJ-bypass-measured-156", []int{1, 5, 6}},
		{"NJ-bypass-measured-12", []int{1, 2}}, {"NJ-bypass-measured-12456", []int{1, 2, 4, 5, 6}},
	} {
		checkBypass(t, c.name, solved(t, bypass(c.measured...)))
	}
}

// Stream 2 reads 4 too high. Among the measurements it is found; a leak at node
// 2 fits better still, though there is none, so both must be told.
func TestBypassWithError(t *testing.T) {
	p := bypass(1, 2, 3, 4, 5, 6)
	p.Quantities[1].Value += 4
	s := solved(t, p)
	checkBypass(t, "NJ-bypass-bias2", s)
	if s.Explained() { // 16.6742 is above 9.488
		t.Error("the error is not found")
	}
	for _, c := range s.Suspects {
		if c.Leak < 0 {
			if c.Quantity != 1 {
				t.Errorf("stream %d is named first", c.Quantity+1)
			}
			break
		}
	}
	if s.Suspects[0].Leak != 1 || s.Suspects[1].Quantity != 1 {
		t.Errorf("first two are %+v and %+v, want the leak at node 2 and stream 2", s.Suspects[0], s.Suspects[1])
	}
	p.Quantities[1].Standing = Unknown
	checkBypass(t, "NJ-bypass-elim2", solved(t, p))
}

// A reconciled quantity that nothing checks keeps its value and its spread, one
// that the balances do not reach is said to be blind.
func TestNothingReaches(t *testing.T) {
	s := solved(t, bypass(1, 5, 6))
	if _, ok := ofStream(s, 4); ok {
		t.Error("stream 5 is checked by nothing, yet it is a suspect")
	}
	near(t, "spread of stream 5", s.SD(4), 1, 1e-12)
	s = solved(t, bypass(1, 6))
	for j, want := range []bool{false, true, true, true, true, false} {
		if s.Blind[j] != want {
			t.Errorf("stream %d: blind is %v, want %v", j+1, s.Blind[j], want)
		}
	}
	near(t, "checks", float64(s.Redundancy), 1, 0)
}

// VDI 2048 part 1, annex A: correlated measurements, and one in no balance.
func TestVDI2048(t *testing.T) {
	for _, c := range []struct {
		name           string
		misfit         float64
		feed, pressure float64 // correlations
		explained      bool
	}{
		{"VDI2048-nocorr", 3.0602, 0, 0, true},
		{"VDI2048-corr-wide", 2.5370, 0.2, 0.4, true},
		{"VDI2048-corr-narrow", 20.3096, 0.2, 0.4, false},
	} {
		rows := caseRows(t, c.name)
		var p Problem
		place := map[string]int{}
		const z95 = 1.96 // VDI 2048 has half-widths of 95 %
		for _, r := range rows {
			if r["quantity"] == "reconciled" {
				place[r["item"]] = len(p.Quantities)
				p.Quantities = append(p.Quantities, Quantity{
					Name: r["item"], Value: num(t, r["input"]), SD: num(t, r["uncertainty"]) / z95, Standing: Measured,
				})
			}
		}
		in := func(times float64, names ...string) (terms []Term) {
			for _, n := range names {
				terms = append(terms, Term{times, []int{place[n]}})
			}
			return terms
		}
		sum := func(parts ...[]Term) (all []Term) {
			for _, p := range parts {
				all = append(all, p...)
			}
			return all
		}
		p.Balances = []Balance{
			{"feed", sum(in(1, "mFDKEL", "mFDKELL"), in(-1, "mSPL", "mSPLL"), in(0.4, "mV"))},
			{"pressure", sum(in(1, "mSPL", "mSPLL"), in(-1, "mV", "mHK", "mA7", "mA6", "mA5"))},
			{"drain", sum(in(1, "mA7", "mA6", "mA5"), in(-1, "mHDNK"))},
		}
		p.Correlations = []Correlation{{place["mFDKEL"], place["mFDKELL"], c.feed}, {place["mSPL"], place["mSPLL"], c.pressure}}
		s := solved(t, p)
		near(t, c.name+" misfit", s.Misfit, c.misfit, 6e-5)
		if s.Redundancy != 3 || s.Explained() != c.explained {
			t.Errorf("%s: %d checks, explained %v", c.name, s.Redundancy, s.Explained())
		}
		for _, r := range rows {
			j, ok := place[r["item"]]
			if !ok {
				continue
			}
			value, half, both := strings.Cut(r["computed"], " +- ")
			switch {
			case r["quantity"] == "halfwidth95":
				near(t, c.name+" ± "+r["item"], z95*s.SD(j), num(t, r["computed"]), 6e-6)
				near(t, c.name+" printed ± "+r["item"], z95*s.SD(j), num(t, r["printed"]), 6e-6)
			case both:
				near(t, c.name+" ± "+r["item"], z95*s.SD(j), num(t, half), 6e-5)
				fallthrough
			default:
				near(t, c.name+" "+r["item"], s.Value[j], num(t, value), 6e-5)
				if r["printed"] != "" {
					near(t, c.name+" printed "+r["item"], s.Value[j], num(t, r["printed"]), 1e-4)
				}
			}
		}
		if _, ok := ofStream(s, place["mD"]); ok {
			t.Errorf("%s: mD is in no balance, yet it is a suspect", c.name)
		}
		if !c.explained { // z = 4.503 for both of them: they cannot be told apart (computed)
			a, _ := ofStream(s, place["mFDKEL"])
			b, _ := ofStream(s, place["mFDKELL"])
			near(t, "z of mFDKEL", math.Abs(a.Z), 4.503, 6e-4)
			if a.Group != 0 || b.Group != 0 {
				t.Errorf("mFDKEL is in group %d, mFDKELL in %d, want both first", a.Group, b.Group)
			}
		}
	}
}

// A splitter of 2.50 into 1.15 and 1.25, each +-0.196 of 95 % (computed).
func TestSmallest(t *testing.T) {
	p := Problem{Balances: []Balance{{"split", []Term{{1, []int{0}}, {-1, []int{1}}, {-1, []int{2}}}}}}
	for _, v := range []float64{2.5, 1.15, 1.25} {
		p.Quantities = append(p.Quantities, Quantity{Value: v, SD: 0.1, Standing: Measured})
	}
	s := solved(t, p)
	for j, want := range []float64{2.4667, 1.1833, 1.2833} {
		near(t, "splitter", s.Value[j], want, 6e-5)
		near(t, "splitter ±", 1.96*s.SD(j), 0.16, 6e-4)
	}
	near(t, "misfit", s.Misfit, 0.3333, 6e-5)
}

// element is one assayed thing of a separation: feed, concentrates, tail.
type element []float64

// separation is a unit of feed and what becomes of it: the parts are unknown
// masses, the assays measured with a relative spread.
func separation(rel float64, elements ...element) Problem {
	parts := len(elements[0]) - 1
	p := Problem{Quantities: []Quantity{{Name: "feed", Value: 1, Standing: Measured}}}
	whole := Balance{Name: "mass", Terms: []Term{{1, []int{0}}}}
	for i := range parts {
		p.Quantities = append(p.Quantities, Quantity{Value: 1 / float64(parts), Standing: Unknown})
		whole.Terms = append(whole.Terms, Term{-1, []int{i + 1}})
	}
	p.Balances = []Balance{whole}
	for _, e := range elements {
		b := Balance{}
		for i, a := range e {
			sign := -1.0
			if i == 0 {
				sign = 1
			}
			b.Terms = append(b.Terms, Term{sign, []int{i, len(p.Quantities)}})
			p.Quantities = append(p.Quantities, Quantity{Value: a, SD: rel * a, Standing: Measured})
		}
		p.Balances = append(p.Balances, b)
	}
	return p
}

// The two- and three-product formulas of mineral processing are the balances of
// masses times assays without anything to check.
func TestProducts(t *testing.T) {
	for _, r := range append(caseRows(t, "two-product"), caseRows(t, "three-product")...) {
		part := map[string]int{"con1": 1, "con2": 2, "tail": 3}
		elements := []element{{3, 50, 2, 0.2}, {6, 8, 55, 0.5}} // lead, zinc
		if r["case"] == "two-product" {
			e := element{}
			for _, cell := range strings.Fields(r["input"]) {
				_, v, _ := strings.Cut(cell, "=")
				e = append(e, num(t, v))
			}
			elements = []element{e}
			part[r["item"]] = 1
		}
		item := r["item"]
		if r["case"] == "three-product" && r["quantity"] != "yield_pct" {
			item = r["quantity"]
		}
		j, ok := part[item]
		if !ok {
			j, ok = part[r["quantity"]]
		}
		if !ok {
			t.Fatalf("%v: which product", r)
		}
		s := solved(t, separation(0.05, elements...))
		if s.Redundancy != 0 {
			t.Errorf("%v: %d checks, want none", r, s.Redundancy)
		}
		near(t, "yield "+r["item"], 100*s.Value[j], num(t, r["computed"]), 6e-4)
	}
}

// Six elements of one concentrator, 5 % relative: iterated least squares of
// masses times assays. The optimum was computed independently.
func TestConcentrator(t *testing.T) {
	s := solved(t, separation(0.05,
		element{21.90, 43.00, 6.77}, element{3.46, 5.50, 1.76}, element{58.00, 25.10, 75.30},
		element{0.11, 0.12, 0.09}, element{0.36, 0.38, 0.34}, element{4.91, 9.24, 2.07}))
	near(t, "concentrate", s.Value[1], 0.412993, 1e-6)
	near(t, "misfit", s.Misfit, 2.9199, 1e-4)
	near(t, "checks", float64(s.Redundancy), 5, 0)
	want := [][3]float64{
		{21.8011, 43.1575, 6.7756}, {3.3578, 5.6067, 1.7755}, {55.8718, 25.2646, 77.4057},
		{0.1047, 0.1226, 0.0921}, {0.3577, 0.3811, 0.3412}, {4.9828, 9.1336, 2.0624},
	}
	for e, adjusted := range want {
		for i, w := range adjusted {
			near(t, fmt.Sprintf("element %d assay %d", e, i), s.Value[3+3*e+i], w, 6e-5)
		}
	}
}

// A known quantity never falls below nought, what is solved for may, and a
// limit that pulls the wrong way is let go.
func TestLimits(t *testing.T) {
	p := Problem{
		Quantities: []Quantity{
			{Name: "in", Value: 10, SD: 1, Standing: Measured}, {Name: "out", Value: 13, SD: 1, Standing: Measured},
			{Name: "crumbs", Value: 0.2, SD: 1, Standing: Measured},
		},
		Balances: []Balance{{"", []Term{{1, []int{0}}, {-1, []int{1}}, {-1, []int{2}}}}},
	}
	s := solved(t, p)
	for j, want := range []float64{11.5, 11.5, 0} { // the two others share the 3 kg
		near(t, p.Quantities[j].Name, s.Value[j], want, 1e-9)
	}
	if !s.Limited || s.Redundancy != 1 {
		t.Errorf("limited %v, %d checks", s.Limited, s.Redundancy)
	}
	near(t, "misfit is that without limits", s.Misfit, 3.2*3.2/3, 1e-9)

	p.Quantities[2].Standing = Unknown
	s = solved(t, p)
	near(t, "crumbs solved for", s.Value[2], -3, 1e-9)
}

func TestBadProblems(t *testing.T) {
	good := bypass(1, 2, 3, 4, 5, 6)
	for name, spoil := range map[string]func(*Problem){
		"not a number":     func(p *Problem) { p.Quantities[0].Value = math.NaN() },
		"negative spread":  func(p *Problem) { p.Quantities[0].SD = -1 },
		"no such quantity": func(p *Problem) { p.Balances[0].Terms[0].Of = []int{9} },
		"correlation of 2": func(p *Problem) { p.Correlations = []Correlation{{0, 1, 2}} },
		"contradictory":    func(p *Problem) { p.Correlations = []Correlation{{0, 1, 1}, {1, 2, 1}, {0, 2, -1}} },
	} {
		p := bypass(1, 2, 3, 4, 5, 6)
		spoil(&p)
		if _, err := p.Solve(); err == nil {
			t.Errorf("%s: solved", name)
		}
	}
	if _, err := good.Solve(); err != nil {
		t.Error(err)
	}
}
