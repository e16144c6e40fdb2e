package rehearse

import "testing"

// Two days on one furnace that differ by luck alone are seldom called harm.
func TestHarmIsNotLuck(t *testing.T) {
	const furnaces = 12
	n := 0
	for k := int64(1); k <= furnaces; k++ {
		day, twin := newCrew(k, 1, nil), newCrew(k, 1, nil)
		day.f.OtherLuck(1)
		for _, c := range []*crew{day, twin} {
			if err := c.work(); err != nil {
				t.Fatal(err)
			}
		}
		if at, ok := harm(&day.course, &twin.course, day.mainBurn+7200, day.f.Mark()); ok {
			n++
			t.Logf("furnace %d: harm by luck at %.0f s", k, at)
		}
	}
	if n > furnaces/6 {
		t.Errorf("luck does harm on %d furnaces of %d", n, furnaces)
	}
}
