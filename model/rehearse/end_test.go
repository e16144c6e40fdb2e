package rehearse

import (
	"testing"

	"chargehand/model/truth"
)

// The bloom is weighed at every end. That answers nothing: wet charcoal and short buckets
// are found by weighing a measure.
func TestWeighingTheBloomAnswersNoMishap(t *testing.T) {
	for _, m := range []truth.Mishap{truth.WetCharcoal, truth.ShortBuckets} {
		d, err := EndOf(lives(t, 11, []truth.Mishap{m}).entries)
		if err != nil {
			t.Fatal(err)
		}
		if len(d.Befell) != 1 {
			t.Fatalf("%s: %d mishaps befell", m, len(d.Befell))
		}
		if b := d.Befell[0]; b.Act != nil {
			t.Errorf("%s: answered by %+v, though nobody weighed a measure or changed the charge", m, b.Act)
		}
	}
}
