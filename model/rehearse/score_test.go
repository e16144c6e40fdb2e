package rehearse

import (
	"testing"

	"chargehand/model/truth"
)

// Three furnaces with each mishap, and one of the other kind: the program warns of those that its signs show at once and that do
// harm, the blower and the tuyere; scores of all and of more furnaces come from the command (rehearse --score).
func TestFurnacesByEightMishaps(t *testing.T) {
	for _, by := range []struct {
		answerer Answerer
		furnaces int64
	}{{Columns, 3}, {Zones, 1}} {
		var all []Case
		for n := int64(1); n <= by.furnaces; n++ {
			cases, err := Score(n, 1, by.answerer, Mishaps())
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, cases...)
		}
		s := Total(all)
		if s.Furnaces != int(by.furnaces) || s.Calm.Days != int(by.furnaces) || len(s.Mishaps) != len(Mishaps()) || s.NextHour != nil {
			t.Fatalf("%s: %d furnaces, %d calm days, %d mishaps", by.answerer, s.Furnaces, s.Calm.Days, len(s.Mishaps))
		}
		for _, m := range s.Mishaps {
			t.Logf("%s: %+v", by.answerer, m)
			if m.Name == truth.BlowerDying && m.Harms == 0 || (m.Name == truth.BlowerDying || m.Name == truth.TuyereBlocked) && m.Loud < m.Harms {
				t.Errorf("%s: %s does harm %d times, warned of %d times aloud", by.answerer, m.Name, m.Harms, m.Loud)
			}
		}
		t.Logf("%s, calm: %+v; inside %v", by.answerer, s.Calm, s.Counts)
	}
}

// A day of a crew that goes by the next hour is the planned one until there is advice; it stands beside the calm days and not
// among them.
func TestGoingByTheNextHour(t *testing.T) {
	const number = 1
	planned, err := Run(number, nil, Options{})
	if err != nil {
		t.Fatal(err)
	}
	heeds, err := ScoreHeeding(number, 1, Columns)
	if err != nil {
		t.Fatal(err)
	}
	is := planned.score(1)
	if !heeds.Heeds || heeds.Advised == 0 && heeds.Course != is.Course || heeds.Advised > 0 && heeds.Course == is.Course {
		t.Errorf("%+v by the plan, %+v with %d times advice", is.Course, heeds.Course, heeds.Advised)
	}
	if s := Total([]Case{is, heeds}); s.Calm.Days != 1 || s.NextHour == nil || s.NextHour.Furnaces != 1 || s.NextHour.Planned.IronKg != is.IronKg {
		t.Errorf("%+v", s)
	}
}

// Days are counted for what they were: cold over half an hour, cast, hung and missed, more or less iron by a tenth.
func TestTheNextHourAgainstThePlan(t *testing.T) {
	day := func(number int64, heeds bool, advised int, c Course) Case {
		return Case{Number: number, Heeds: heeds, Advised: advised, Course: c, BloomKg: c.IronKg}
	}
	got := heedSum([]Case{
		day(1, false, 0, Course{ColdMin: 31, IronKg: 2, Hangs: 2, Missed: 1}), day(1, true, 2, Course{ColdMin: 30, IronKg: 3, Hangs: 1}),
		day(2, false, 0, Course{IronKg: 2, Cast: true}), day(2, true, 1, Course{IronKg: 1.5}),
		day(3, false, 0, Course{IronKg: 4}), day(3, true, 0, Course{IronKg: 4}),
		{Number: 3, Mishap: truth.Crack, Course: Course{ColdMin: 300}}, // neither
		day(9, true, 4, Course{IronKg: 9}),                             // no planned day to hold it against
	})
	want := HeedSum{
		Furnaces: 3, Advised: 2, Advice: 3, More: 1, Less: 1, Change: 0.25,
		Planned: WaySum{Cold: 1, ColdMin: 31, Cast: 1, Hangs: 2, Missed: 1, IronKg: 8}, Heeded: WaySum{ColdMin: 30, Hangs: 1, IronKg: 8.5},
	}
	if got == nil || *got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if heedSum(nil) != nil {
		t.Error("a sum of no days")
	}
}
