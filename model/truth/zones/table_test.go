package zones

import (
	"go/ast"
	"go/build"
	"go/parser"
	"go/token"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"chargehand/model/truth"
)

// Every field has one row, every row its percentiles in order and a source that says what it is; every mishap has its row.
func TestEveryNumberHasItsRow(t *testing.T) {
	var d Drawn
	seen := map[*float64]string{}
	source := regexp.MustCompile(`^(published: .*\b(1[89]|20)\d\d\b|assumed: \w)`)
	for _, r := range Table {
		if was, twice := seen[r.field(&d)]; twice {
			t.Errorf("%s and %s are one field", r.Name, was)
		}
		seen[r.field(&d)] = r.Name
		if !(r.Least <= r.P10 && r.P10 <= r.P50 && r.P50 <= r.P90 && r.P90 <= r.Most) || r.Log && r.P10 <= 0 {
			t.Errorf("%s: %g, %g, %g in %g to %g", r.Name, r.P10, r.P50, r.P90, r.Least, r.Most)
		}
		if !source.MatchString(r.Source) || r.Meaning == "" || r.Unit == "" {
			t.Errorf("%s: %q, %q, %q", r.Name, r.Source, r.Meaning, r.Unit)
		}
	}
	if n := reflect.TypeFor[Drawn]().NumField() - 1 + reflect.TypeFor[truth.Setting]().NumField(); n != len(Table) {
		t.Errorf("%d fields, %d rows", n, len(Table))
	}
	for i, m := range truth.Mishaps() {
		if len(MishapTable) != len(truth.Mishaps()) || MishapTable[i].What != m || !source.MatchString(MishapTable[i].Source) {
			t.Errorf("no row of its own for %s", m)
		}
	}
}

// What is drawn has the percentiles of its row.
func TestDrawnAsTheTableSays(t *testing.T) {
	const n = 4000
	for _, r := range Table {
		vs := make([]float64, n)
		for i := range vs {
			vs[i] = r.at(stream(int64(i), "drawn "+r.Name).NormFloat64())
		}
		slices.Sort(vs)
		for _, q := range []struct{ share, want float64 }{{0.1, r.P10}, {0.5, r.P50}, {0.9, r.P90}} {
			if got := vs[int(q.share*n)]; math.Abs(got-q.want) > 0.12*(r.P90-r.P10) {
				t.Errorf("%s: %g at %g, the table says %g", r.Name, got, q.share, q.want)
			}
		}
	}
	a, c := Draw(7, 1), Draw(7, 2)
	for _, r := range Table {
		if is, was := r.Of(c), r.Of(a); r.Noise != (is != was) {
			t.Errorf("%s: %g, with double the noise %g", r.Name, was, is)
		}
	}
}

// ofTruth is all that this furnace may have of the other: words, no physics.
var ofTruth = []string{
	"Setting", "Truth", "Charged", "Mishap", "Stream",
	"WetCharcoal", "BlowerDying", "TuyereBlocked", "Bridge", "Crack", "BadOre", "ShortBuckets", "ForgottenKey",
}

// Nothing of the solver is in it, and of the other furnace only words.
func TestNothingOfTheOthersIsInIt(t *testing.T) {
	pkg, err := build.ImportDir(".", 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range pkg.Imports {
		if strings.HasPrefix(p, "chargehand/") && p != "chargehand/physics" && p != "chargehand/model/truth" {
			t.Errorf("imports %s", p)
		}
	}
	files, used := token.NewFileSet(), 0
	for _, name := range pkg.GoFiles {
		src, err := parser.ParseFile(files, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(src, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := s.X.(*ast.Ident); ok && x.Name == "truth" {
					if used++; !slices.Contains(ofTruth, s.Sel.Name) {
						t.Errorf("%s uses truth.%s", name, s.Sel.Name)
					}
				}
			}
			return true
		})
	}
	if used == 0 {
		t.Error("nothing of the other furnace was looked at")
	}
}
