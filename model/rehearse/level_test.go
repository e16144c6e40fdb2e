package rehearse

import (
	"testing"

	"chargehand/model/figure"
	"chargehand/model/session"
)

// The bands of the level and of the next charge hold about eight in ten however much varies within a day, on furnaces that their
// figures were not fitted on: a smelt shows by its intervals and dips how uneven it is. Of bands of the level that go by the usual
// day alone with half of the noise nine in ten are held, with double of it fewer than two in three.
func TestBandsKnowHowUnevenASmeltIs(t *testing.T) {
	if testing.Short() {
		t.Skip("not with -short: seventy-two days")
	}
	const furnaces = 12
	for _, by := range Answerers() {
		a, err := by.known()
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct{ noise, least, most float64 }{{0.5, 0.72, 0.95}, {1, 0.72, 0.95}, {2, 0.72, 0.88}} {
			var level, next Of
			for n := int64(1101); n <= 1100+furnaces; n++ {
				d := held(t, a.crew(n, c.noise, nil))
				level, next = level.and(d.Inside[figure.StackHeight]), next.and(d.Inside[figure.NextCharge])
			}
			t.Logf("%s, noise %g: the level's held %d of %d, that of the next charge %d of %d", by, c.noise, level.In, level.Of, next.In, next.Of)
			if s := level.share(); s < c.least || s > c.most {
				t.Errorf("%s, noise %g: the level's band held %.0f %%", by, c.noise, 100*s)
			}
			if s := next.share(); s < 0.70 || s > 0.90 {
				t.Errorf("%s, noise %g: the band of the next charge held %.0f %%", by, c.noise, 100*s)
			}
		}
	}
}

func (o Of) and(p Of) Of { return Of{o.In + p.In, o.Of + p.Of} }

func (o Of) share() float64 { return float64(o.In) / float64(o.Of) }

// held counts how many bands of a calm day held the truth: of the level every ten minutes with ore, of the next charge at each.
func held(t *testing.T, c *crew) Day {
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
	for i := range c.keyedAt {
		d.due(s, c, i)
	}
	return d
}
