package words

import (
	"testing"

	"chargehand/model/forecast"
)

func TestEveryDoubtHasItsWords(t *testing.T) {
	said := map[string]bool{}
	for d := range forecast.Doubts {
		w := Doubt(d)
		if w == "" || said[w] {
			t.Errorf("%v is said as %q", d, w)
		}
		said[w] = true
	}
}
