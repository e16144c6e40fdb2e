package learn_test

import (
	"testing"

	"chargehand/model/learn"
	"chargehand/model/shelf"
)

// What is told of a mix is what a later smelt on it is forecast by.
func TestWhatIsTold(t *testing.T) {
	h := learn.HistoryOf([]shelf.Summary{over(1, "reed", 4), over(2, "reed", 5), over(3, "heath", 2), over(4, "reed", 0)})
	if smelts, failures := h.Ends(); smelts != 4 || failures != 1 {
		t.Errorf("%d of %d failed", failures, smelts)
	}
	told := h.Told()
	if len(told) != 2 || told[0].Mix != "reed" || len(told[0].Yields) != 2 || !told[0].Few() {
		t.Fatalf("%+v", told)
	}
	if want := learn.Yield(h.About("9", day(9), "reed").Yields); told[0].Next != want {
		t.Errorf("told %+v, forecast %+v", told[0].Next, want)
	}
}
