package rehearse

import (
	"flag"
	"math"
	"testing"
)

var heeded = flag.Int64("heeded", 2, "so many furnaces worked by the plan alone and by the advice of the next hour")
var heededBy = flag.String("answers", string(Columns), "the furnace that answers in it")

// A crew that goes by the advice of the next hour against one that goes by its plan, on the same furnaces: what it comes to is
// printed; nothing that is said of it may be no number.
//
//	go test ./model/rehearse -run AgainstAFixedPlan -v -heeded 12 -answers zones
func TestAgainstAFixedPlan(t *testing.T) {
	var sum Fixed
	for n := int64(1); n <= *heeded; n++ {
		f, err := AgainstAFixedPlan(n, Answerer(*heededBy))
		if err != nil {
			t.Fatal(err)
		}
		if math.IsNaN(f.ColdHeeded+f.BloomHeeded) || f.Advised == 0 && (f.ColdMin != f.ColdHeeded || f.Bloom != f.BloomHeeded) {
			t.Errorf("%+v", f)
		}
		t.Logf("%+v", f)
		sum.Advised, sum.ColdMin, sum.ColdHeeded, sum.Bloom, sum.BloomHeeded = sum.Advised+f.Advised, sum.ColdMin+f.ColdMin, sum.ColdHeeded+f.ColdHeeded, sum.Bloom+f.Bloom, sum.BloomHeeded+f.BloomHeeded
	}
	t.Logf("%d furnaces: advice %d times, cold %.0f min by the plan and %.0f heeded, iron %.1f kg and %.1f", *heeded, sum.Advised, sum.ColdMin, sum.ColdHeeded, sum.Bloom, sum.BloomHeeded)
}
