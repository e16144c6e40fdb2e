package truth

import (
	"go/build"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Every field has one row, every row its percentiles in order and a source that says what it is.
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
	if n := reflect.TypeFor[Drawn]().NumField(); n != len(Table) {
		t.Errorf("%d fields, %d rows", n, len(Table))
	}
}

// What is drawn has the percentiles of its row, on some thousands of furnaces.
func TestDrawnAsTheTableSays(t *testing.T) {
	const n = 4000
	for _, r := range Table {
		vs := make([]float64, n)
		for i := range vs {
			vs[i] = r.at(Stream(int64(i), "drawn "+r.Name).NormFloat64())
		}
		slices.Sort(vs)
		for _, q := range []struct{ share, want float64 }{{0.1, r.P10}, {0.5, r.P50}, {0.9, r.P90}} {
			got := vs[int(q.share*n)]
			if math.Abs(got-q.want) > 0.12*(r.P90-r.P10) {
				t.Errorf("%s: %g at %g, the table says %g", r.Name, got, q.share, q.want)
			}
		}
	}
}

// The same number draws the same furnace; noise changes only what varies within a day.
func TestDrawIsTheNumbers(t *testing.T) {
	a, b, c := Draw(7, 1), Draw(7, 1), Draw(7, 2)
	if a != b {
		t.Error("one number, two furnaces")
	}
	if a == Draw(8, 1) {
		t.Error("two numbers, one furnace")
	}
	for _, r := range Table {
		if is, was := r.Of(c), r.Of(a); r.Noise != (is != was) {
			t.Errorf("%s: %g, with double the noise %g", r.Name, was, is)
		}
	}
}

// The furnace that answers is not the adviser's model: nothing of the solver is in it.
func TestNothingOfTheSolverIsInIt(t *testing.T) {
	pkg, err := build.ImportDir(".", 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range pkg.Imports {
		if strings.HasPrefix(p, "chargehand/") && p != "chargehand/physics" {
			t.Errorf("imports %s", p)
		}
	}
}
