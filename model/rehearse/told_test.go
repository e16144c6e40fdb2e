package rehearse

import (
	"testing"

	"chargehand/model/truth"
)

// A blower that dies is told by what is keyed on nearly every day that it does harm, and two days that differ by luck alone are
// told apart on few: of some eight kinds of signs one in twenty each.
func TestWhatIsKeyedTellsDaysApart(t *testing.T) {
	if testing.Short() {
		t.Skip("not with -short: thirty days")
	}
	const furnaces = 10
	told, harms, apart := 0, 0, 0
	for n := int64(1101); n <= 1100+furnaces; n++ {
		calm, other, dies := newCrew(n, 1, nil), newCrew(n, 1, nil), newCrew(n, 1, []truth.Mishap{truth.BlowerDying})
		other.f.OtherLuck(1)
		for _, c := range []*crew{calm, other, dies} {
			if err := c.work(); err != nil {
				t.Fatal(err)
			}
		}
		at, _ := dies.f.Befalls(truth.BlowerDying)
		if h, ok := harm(&dies.course, &calm.course, at, dies.f.Mark()); ok && h < dies.burning {
			harms++
			if !dies.untold(calm, Befallen{At: seconds(at), HarmAt: seconds(h)}) {
				told++
			}
		}
		from := calm.mainBurn + 7200
		if !other.untold(calm, Befallen{At: seconds(from), HarmAt: seconds(from + 3600)}) {
			apart++
		}
		if !calm.untold(calm, Befallen{At: seconds(calm.mainBurn), HarmAt: seconds(calm.over)}) {
			t.Errorf("furnace %d: a day is told from itself", n)
		}
	}
	t.Logf("told %d of %d; told apart by luck %d of %d", told, harms, apart, furnaces)
	if harms == 0 || 3*told < 2*harms {
		t.Errorf("of %d blowers that died %d were told", harms, told)
	}
	if 2*apart > furnaces {
		t.Errorf("of %d pairs of days that differ by luck alone %d were told apart", furnaces, apart)
	}
}
