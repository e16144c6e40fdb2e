package words

import (
	"maps"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/physics"
)

var (
	term   = regexp.MustCompile(`^(\d*) ?([A-Z][A-Za-z0-9()]*?)(?:\([slg]\))?$`)
	group  = regexp.MustCompile(`\(([A-Za-z0-9]+)\)(\d*)`)
	symbol = regexp.MustCompile(`([A-Z][a-z]?)(\d*)`)
)

// atoms counts those of one side of an equation, by their symbols.
func atoms(t *testing.T, side string) map[string]int {
	t.Helper()
	sum := map[string]int{}
	for _, part := range strings.Split(side, "+") {
		m := term.FindStringSubmatch(strings.TrimSpace(part))
		if m == nil {
			t.Fatalf("%q in %q is no formula", part, side)
		}
		formula := group.ReplaceAllStringFunc(m[2], func(s string) string {
			g := group.FindStringSubmatch(s)
			return strings.Repeat(g[1], orOne(g[2]))
		})
		if rest := symbol.ReplaceAllString(formula, ""); rest != "" {
			t.Fatalf("%q of %q is no symbol", rest, part)
		}
		for _, s := range symbol.FindAllStringSubmatch(formula, -1) {
			sum[s[1]] += orOne(m[1]) * orOne(s[2])
		}
	}
	return sum
}

func orOne(digits string) int {
	if n, err := strconv.Atoi(digits); err == nil {
		return n
	}
	return 1
}

// What is counted here by hand, so that the count itself is checked.
func TestAtomsAreCounted(t *testing.T) {
	for side, want := range map[string]map[string]int{
		"2 FeO(OH)":     {"Fe": 2, "O": 4, "H": 2},
		"Fe3O4 + 2 CO":  {"Fe": 3, "O": 6, "C": 2},
		"H2O(l)":        {"H": 2, "O": 1},
		"Fe2SiO4 + CO2": {"Fe": 2, "Si": 1, "O": 6, "C": 1},
	} {
		if got := atoms(t, side); !maps.Equal(got, want) {
			t.Errorf("%q holds %v, want %v", side, got, want)
		}
	}
}

// No atom is made or lost: the law of conservation of mass, which no table of
// this program can bend.
func TestReactionsAreBalanced(t *testing.T) {
	for p := figure.Drying; p <= figure.Burning; p++ {
		rs := Reactions(p)
		if len(rs) == 0 {
			t.Errorf("%s has no reaction", Process(p))
		}
		for _, r := range rs {
			if from, to := atoms(t, r.Full.From), atoms(t, r.Full.To); !maps.Equal(from, to) {
				t.Errorf("%s: %s holds %v, %s holds %v", Process(p), r.Full.From, from, r.Full.To, to)
			}
		}
	}
}

// A brief form names nothing that does not stand on the same side of the whole
// equation.
func TestBriefFormsSayNoMore(t *testing.T) {
	has := func(side, part string) bool {
		return strings.Contains(" "+strings.ReplaceAll(side, "(", " (")+" ", " "+strings.ReplaceAll(part, "(", " (")+" ")
	}
	for p := figure.Drying; p <= figure.Burning; p++ {
		for _, r := range Reactions(p) {
			for _, side := range [][2]string{{r.Brief.From, r.Full.From}, {r.Brief.To, r.Full.To}} {
				for _, part := range strings.Split(side[0], "+") {
					if part != "" && part != "(g)" && !has(side[1], part) {
						t.Errorf("%s: %q is not in %q", Process(p), part, side[1])
					}
				}
			}
		}
	}
}

func TestGasIsSaidAsFarAsItIsKnown(t *testing.T) {
	co, needs := physics.Band{P10: 75.8, P50: 86.2, P90: 92.6}, entry.Some(23.6)
	for want, gas := range map[string]figure.Gas{
		"": {}, "CO 76-93 %": {HasCO: true, CO: co}, "CO needs 24 %": {Needs: needs}, "CO 76-93 % needs 24": {HasCO: true, CO: co, Needs: needs},
	} {
		if got := GasShort(gas)[0]; got != want {
			t.Errorf("%+v: %q, want %q", gas, got, want)
		}
		if got := GasAt(gas); want != "" && !strings.Contains(got, OfCarbonGas) {
			t.Errorf("%q does not name its base", got)
		}
	}
}
