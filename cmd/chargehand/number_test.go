package main

import (
	"encoding/json"
	"math"
	"testing"

	"chargehand/model/entry"
)

// Twenty-nine buckets of 1.92 kg are 55.68 kg, whatever their sum in binary is;
// and a gram is never lost below a tonne.
func TestNumbersAreWrittenAsTheyAreMeant(t *testing.T) {
	sum := 0.0
	for range 29 {
		sum += 1.92
	}
	for v, want := range map[float64]string{sum: "55.68", 0: "0", 999.999: "999.999", -12.5: "-12.5", 1.0 / 3: "0.333333", 1e-7: "0.0000001", 36000: "36000"} {
		if got, err := json.Marshal(number(v)); err != nil || string(got) != want {
			t.Errorf("%v is written %s (%v), want %s", v, got, err, want)
		}
	}
	if got, _ := json.Marshal([]*number{pointer(entry.None[entry.Kilogram]()), pointer(entry.Some(entry.Kilogram(2)))}); string(got) != "[null,2]" {
		t.Errorf("got %s", got)
	}
	if _, err := json.Marshal(number(math.NaN())); err == nil {
		t.Error("what is no number is written")
	}
}
