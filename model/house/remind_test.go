package house_test

import (
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
)

// A clamp wants a look in twenty minutes and its vents one every thirty, from ten on: no
// smelt is alight. What comes up stands until it is answered; answered, one is over and
// the other stands for its next time, however many have gone by.
func TestRemindersComeUpAndAreAnswered(t *testing.T) {
	ten := time.Date(2026, 5, 9, 10, 0, 0, 0, time.UTC)
	at := func(minutes float64) time.Time { return ten.Add(time.Duration(minutes * float64(time.Minute))) }
	rs := house.Reminded(nil, house.RemindIn(ten, 20, "clamp", false))
	rs = house.Reminded(rs, house.RemindIn(ten, 30, "vents", true))
	due := func(minutes float64) (words string, last time.Time) {
		for _, d := range house.DueAt(rs, at(minutes)) {
			words += d.Remind.Word + " "
			last = d.At
		}
		return words, last
	}
	for minutes, want := range map[float64]string{19.9: "", 20: "clamp ", 29: "clamp ", 30: "clamp vents ", 95: "clamp vents "} {
		if got, _ := due(minutes); got != want {
			t.Errorf("at minute %v: %q, want %q", minutes, got, want)
		}
	}
	if _, last := due(95); last != at(90) {
		t.Errorf("the vents came up last at %v", last)
	}
	rs = house.Reminded(rs, house.Answered(rs[0], at(96)))
	rs = house.Reminded(rs, house.Answered(rs[0], at(96)))
	for minutes, want := range map[float64]string{97: "", 119.9: "", 120: "vents ", 125: "vents "} {
		if got, _ := due(minutes); got != want {
			t.Errorf("answered, at minute %v: %q, want %q", minutes, got, want)
		}
	}
	rs = house.Reminded(rs, entry.Remind{Word: "vents", Ended: true})
	if len(rs) != 0 {
		t.Errorf("all ended, and there is %+v", rs)
	}
}

// Reminders are entries of the house: read back, the last of a word holds.
func TestRemindersAreReadBack(t *testing.T) {
	ten := time.Date(2026, 5, 9, 10, 0, 0, 0, time.UTC)
	es := []entry.Entry{
		{Event: house.RemindIn(ten, 20, "clamp", false)}, {Event: entry.Setting{Name: "background", Value: "dark"}},
		{Event: house.RemindIn(ten, 40, "Clamp", true)},
	}
	rs := house.Reminders(es)
	if len(rs) != 1 || !rs[0].At.Equal(ten.Add(40*time.Minute)) || rs[0].Every.Value != 40 {
		t.Errorf("%+v", rs)
	}
}
