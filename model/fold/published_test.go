package fold_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"chargehand/model/fold"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
)

// The pace of an interval over that of the three before it, in the published logs of testdata (sources in their heads), beside the
// spread that the level takes: Student's t with three degrees of freedom and a scale of 0.13.
func TestThePaceHasTails(t *testing.T) {
	var over []float64
	for _, entries := range logcsvtest.All(t, logcsv.Options{Stream: "s", UID: "u"}) {
		s := fold.Fold(entries, fold.All, fold.End(entries))
		cs := s.Charges
		kg := func(i int) float64 { return cs[i].Charcoal.Dry.Kg }
		for i := 3; i+1 < len(cs); i++ {
			was, is := (cs[i].At - cs[i-3].At).Hours(), (cs[i+1].At - cs[i].At).Hours()
			if was <= 0 || is <= 2./60 || kg(i) <= 0 || kg(i+1) <= 0 {
				continue
			}
			over = append(over, kg(i+1)/is/((kg(i)+kg(i-1)+kg(i-2))/was))
		}
	}
	slices.Sort(over)
	taken := distuv.StudentsT{Mu: 1, Sigma: 0.13, Nu: 3}
	for _, c := range []struct{ share, far float64 }{{0.02, 0.2}, {0.1, 0.1}, {0.25, 0.06}, {0.5, 0.06}, {0.75, 0.06}, {0.9, 0.25}} {
		found, want := stat.Quantile(c.share, stat.Empirical, over, nil), taken.Quantile(c.share)
		t.Logf("%.0f of 100 of %d intervals below %.2f; taken %.2f", 100*c.share, len(over), found, want)
		if math.Abs(found-want) > c.far {
			t.Errorf("%.0f of 100 intervals lie below %.2f, taken %.2f", 100*c.share, found, want)
		}
	}
}
