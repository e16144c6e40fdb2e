package rehearse

import (
	"slices"
	"testing"

	"chargehand/model/truth"
)

// What goes wrong of itself is told of the truth alone, from the first ore to the burn-down; a day of which nothing is told is a calm
// one, and is counted apart.
func TestADayThatGoesWrongIsNotCalm(t *testing.T) {
	calm := truth.Truth{PeepC: 1300, StackCm: 45, SlagCm: 8, ColdMin: 30}
	day := func(minutes int, so func(*truth.Truth)) *crew {
		c := newCrew(1, 1, nil)
		c.firstOre, c.burning = 600, 3600
		for m := 1; m <= 80; m++ {
			t := calm
			if m >= 20 && m < 20+minutes {
				so(&t)
			}
			c.trace = append(c.trace, traced{float64(60 * m), t})
		}
		return c
	}
	for name, c := range map[string]struct {
		day  *crew
		want []Amiss
	}{
		"nothing":                      {day(0, nil), nil},
		"slag at the tuyere":           {day(1, func(t *truth.Truth) { t.SlagCm = -0.1 }), []Amiss{SlagStood}},
		"a tuyere nearly shut":         {day(1, func(t *truth.Truth) { t.Shut = 0.8 }), []Amiss{Shut}},
		"a hearth cold for 31 min":     {day(60, func(t *truth.Truth) { t.ColdMin = 31 }), []Amiss{TooCold}},
		"a fire out for 10 min":        {day(10, func(t *truth.Truth) { t.PeepC = 900 }), []Amiss{FireOut}},
		"a fire out for 9 min":         {day(9, func(t *truth.Truth) { t.PeepC = 900 }), nil},
		"a bare shaft and a long hang": {day(12, func(t *truth.Truth) { t.StackCm, t.Hangs = 5, true }), []Amiss{Hung, Bare}},
	} {
		if got := c.day.amiss(); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
	early := day(0, nil)
	early.trace[4].Shut, early.trace[70].SlagCm = 1, -2 // before the ore, and in the burn-down
	if got := early.amiss(); len(got) > 0 {
		t.Errorf("before the ore and after: %v", got)
	}
	s := Total([]Case{{Number: 1}, {Number: 2, Looks: 2}, {Number: 3, Amiss: []Amiss{Shut, Hung}, Acts: 1}, {Number: 4, Amiss: []Amiss{Hung}, Looks: 1}}).Calm
	if s.Days != 4 || s.Quiet != 2 || s.Truly != 2 || s.TrulyQuiet != 1 || s.Amiss != 2 || s.AmissQuiet != 1 || s.By[Hung] != 2 || s.By[Shut] != 1 {
		t.Errorf("%+v", s)
	}
}
