package words

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/house"
)

func TestLeftOfALot(t *testing.T) {
	damp := entry.Lot{Name: "pond", Moisture: entry.Some(entry.Share(0.1))}
	for _, c := range []struct {
		left house.Mass
		want string
	}{
		{house.Mass{Kg: 30}, "33 kg (30 kg dry)"},
		{house.Mass{Kg: 5, More: true}, "at least 5.5 kg (5 kg dry)"},
		{house.Mass{Kg: 5, Less: true}, "at most 5.5 kg (5 kg dry)"},
		{house.Mass{More: true, Less: true}, "not known: count it"},
		{house.Mass{Kg: -2.73}, "3 kg more used than there was: count it again, or an entry is wrong"},
	} {
		if got := (Units{}).Left(house.Lot{Lot: damp, Left: c.left}); got != c.want {
			t.Errorf("%+v: %q, want %q", c.left, got, c.want)
		}
	}
}
