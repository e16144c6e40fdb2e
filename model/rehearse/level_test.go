package rehearse

import (
	"testing"

	"chargehand/model/figure"
	"chargehand/model/session"
)

// The band of the level holds about eight in ten however much varies within a day, on furnaces that its figures were not fitted
// on: a smelt shows by its intervals and dips how uneven it is. Of bands that go by the usual day alone with half of the noise nine
// in ten are held, with double of it fewer than two in three.
func TestTheLevelKnowsHowUnevenASmeltIs(t *testing.T) {
	if testing.Short() {
		t.Skip("not with -short: seventy-two days")
	}
	const furnaces = 12
	for _, by := range Answerers() {
		a, err := by.known()
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct{ noise, least, most float64 }{{0.5, 0.72, 0.95}, {1, 0.72, 0.95}, {2, 0.68, 0.88}} {
			var o Of
			for n := int64(1101); n <= 1100+furnaces; n++ {
				o = o.and(levels(t, a.crew(n, c.noise, nil)))
			}
			held := float64(o.In) / float64(o.Of)
			t.Logf("%s, noise %g: held %d of %d (%.0f %%)", by, c.noise, o.In, o.Of, 100*held)
			if held < c.least || held > c.most {
				t.Errorf("%s, noise %g: the level's band held %.0f %%", by, c.noise, 100*held)
			}
		}
	}
}

func (o Of) and(p Of) Of { return Of{o.In + p.In, o.Of + p.Of} }

// levels counts how many of the level's bands of a calm day held the truth, of every ten minutes with ore.
func levels(t *testing.T, c *crew) Of {
	t.Helper()
	if err := c.work(); err != nil {
		t.Fatal(err)
	}
	d := Day{Inside: map[figure.Name]Of{}}
	s := session.Open(c.stream, c.entries)
	for at := seconds(c.firstOre).Truncate(every) + every; c.firstOre > 0 && at < seconds(c.burning); at += every {
		known := s.KnownAt(at)
		d.count(figure.StackHeight, s.AsOf(known, at).Reading().Figure(figure.StackHeight), c.at(at).StackCm)
	}
	return d.Inside[figure.StackHeight]
}
