package rehearse

import (
	"math"
	"testing"
	"time"

	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/rule"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/model/truth"
	"chargehand/physics/shaft"
)

// noLooks is from how long after the first ore on nobody goes round the furnace any more, s: it is charged, dipped and weighed.
const noLooks = 1800.0

// The tuyere shuts while nobody looks. The pace tells that less air gets in: the level that is believed keeps to the burden that
// does not sink, and the hearth cools with it, on either furnace; and the person is told to go and look. The furnaces are others
// than those that scores go by.
func TestATuyereThatShutsWhileNobodyLooks(t *testing.T) {
	const from, to = 1001, 1006
	for _, by := range []Answerer{"columns", "zones"} {
		inside := map[figure.Name]Of{}
		cold, told := 0, 0
		for n := int64(from); n <= to; n++ {
			known, err := by.known()
			if err != nil {
				t.Fatal(err)
			}
			c := known.crew(n, 1, []truth.Mishap{truth.TuyereBlocked})
			if err := c.light(); err != nil {
				t.Fatal(err)
			}
			for c.over == 0 {
				c.second()
				if c.firstOre > 0 && c.now() > c.firstOre+noLooks {
					c.nextLook = math.Inf(1)
				}
			}
			d := Day{Number: n, Inside: inside, crew: c}
			s, v := session.Open(c.stream, c.entries), &solve.Solver{Grid: shaft.Coarse}
			end := seconds(c.over)
			if c.burning > 0 {
				end = seconds(c.burning)
			}
			shut := time.Duration(0)
			for at := seconds(c.firstOre).Truncate(every) + every; c.firstOre > 0 && at < end; at += every {
				is := c.at(at)
				d.hold(read(s, v, at), is)
				if shut == 0 && is.Shut > 0.6 {
					shut = at
				}
			}
			if shut == 0 || end-shut < time.Hour {
				continue
			}
			cold++
			for _, w := range s.AsOf(fold.All, end).Warnings() {
				if w.Grade > rule.Note && w.Onset > shut-every && w.Onset < shut+time.Hour {
					told++
					t.Logf("%s %d: shut at %v, told of at %v: %s", by, n, shut, w.Onset, w.Rule)
					break
				}
			}
		}
		t.Logf("%s: inside the bands %v; shut for over an hour on %d days, told within one on %d", by, inside, cold, told)
		if cold < 3 || told < cold-1 {
			t.Errorf("%s: told on %d of %d days", by, told, cold)
		}
		for n, least := range map[figure.Name]float64{figure.StackHeight: 0.6, figure.HearthTemperature: 0.7} {
			if o := inside[n]; float64(o.In) < least*float64(o.Of) {
				t.Errorf("%s: %s held %d of %d", by, n.Key(), o.In, o.Of)
			}
		}
	}
}
