package rehearse

import (
	"math"
	"math/rand/v2"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/solve"
	"chargehand/model/truth"
)

// What the crew takes for true of any furnace.
const (
	bucketKg, scoopKg = 1.8, 0.5
	freeboardCm       = 8.0
	// preheats is how long the wood fire burns, and fillsTo how much of the stack the fill takes, before the blast.
	preheats, fillsTo = 75 * 60.0, 0.9
	// leastOre and mostOre are scoops of ore a charge, from the first to the last; one more each few charges.
	leastOre, mostOre, oreEach = 2, 4, 4
	// burnsDown is how long the burn-down lasts (published: 27 to 35 minutes), longest how long a crew goes on at all.
	burnsDown, longest = 31 * 60.0, 12 * 3600.0
	// slow is how long a bucket may burn before ore until the crew raises the blast (published: from 14 minutes on).
	slow = 15 * 60.0
	// answers is how long the crew takes to answer a sign; weighs how often it puts a bucket on the scale, dips how often it
	// dips (assumed).
	answers, weighs, dips = 90.0, 100 * 60.0, 50 * 60.0
)

// crew works on a furnace and keys what it does and sees.
type crew struct {
	f       furnace
	by      answerer // what it is
	number  int64
	mishaps []truth.Mishap
	chosen  bool    // the mishaps were chosen, not by chance
	until   float64 // s, when a person goes on with it; 0 for never
	journal
	late, looks, scales *rand.Rand

	recipe     int     // scoops of ore in the next charge
	charges    int     // that held charcoal
	withOre    int     // of them
	ore        float64 // kg so far, as the scoops have it
	lastCharge float64
	ready      float64 // s, when there was room for the next; 0 while there is none
	waits      float64 // s that it will then take
	eye        float64 // m, by how much the next charge misses the mark
	setLMin    float64 // the blast as set
	keyedLMin  float64 // as it was keyed last; 0 for never
	raised     int
	peep       string
	nextLook   float64
	nextDip    float64
	nextScale  float64
	rounds     int
	todo       []deed
	lastOre    bool
	cracked    bool // the crack in the wall was seen
	heeds      bool // goes by the advice of the next hour
	spared     int  // charges that still go without ore by it
	advised    int  // how often there was one
	outcome
}

// deed is something the crew is about to do.
type deed struct {
	at float64
	do func()
}

// outcome is what was true and is needed for scores.
type outcome struct {
	firstOre, over float64
	chargesAt      []float64
	keyedAt        []float64 // of the charges that were keyed
	forgotten      int
	coal           float64 // kg of charcoal that truly went in
	course
	bloom, bits float64
}

// course is how a day went in truth.
type course struct {
	mainBurn float64 // s, when it began; 0 while it has not
	burning  float64 // s, when the burn-down began
	trace    []traced
}

// traced is the truth at a minute.
type traced struct {
	seconds float64
	truth.Truth
}

// newCrew works on the usual furnace that answers.
func newCrew(number int64, noise float64, mishaps []truth.Mishap) *crew {
	return answerers[0].crew(number, noise, mishaps)
}

func (a answerer) crew(number int64, noise float64, mishaps []truth.Mishap) *crew {
	return &crew{chosen: true,
		f: a.build(number, noise, mishaps), by: a, number: number, mishaps: mishaps, journal: journal{stream: Stream(number)},
		late: truth.Stream(number, "crew late"), looks: truth.Stream(number, "crew looks"), scales: truth.Stream(number, "crew scales"),
	}
}

// work goes through the whole day.
func (c *crew) work() error {
	if err := c.light(); err != nil {
		return err
	}
	for c.over == 0 {
		c.second()
	}
	return nil
}

// second goes on by one, with what the crew does in it.
func (c *crew) second() {
	switch {
	case c.mainBurn > 0:
		c.step()
		c.tend()
	case c.now() >= preheats:
		c.fill()
	default:
		c.step()
	}
}

func (c *crew) now() float64 { return c.f.Seconds() }

// step lets a second pass, and notes the truth each minute.
func (c *crew) step() {
	c.f.Step()
	if s := c.now(); math.Mod(s, 60) == 0 {
		c.trace = append(c.trace, traced{s, c.f.Look()})
	}
}

// light makes the fire: the furnace as the crew has measured it, sealed directly after.
func (c *crew) light() error {
	d := c.f.Setting
	cm := func(v float64) entry.Maybe[entry.Centimetre] { return entry.Some(entry.Centimetre(math.Round(v))) }
	light := entry.Light{
		UID: c.stream, Rehearsal: true, Undated: true, Solver: solve.Version,
		Furnace: entry.Furnace{
			Name: "rehearsal", Bore: cm(d.BoreCm), Stack: cm(d.StackCm), Rim: cm(math.Round(d.StackCm) + freeboardCm), TuyereBase: cm(d.TuyereBaseCm),
			Wall: cm(d.WallCm), TuyereBore: entry.Some(entry.Millimetre(22)), Practice: entry.SlagTap,
		},
		Measures: []entry.Measure{
			{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(bucketKg)), Guessed: true},
			{Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(scoopKg))},
		},
		Lots: []entry.Lot{
			{Name: "ore", What: entry.Ore, Iron: entry.Some(entry.Share(math.Round(100*d.OreIron) / 100)), Moisture: entry.Some(entry.Share(math.Round(100*d.OreMoisture) / 100))},
			{Name: "charcoal", What: entry.Charcoal},
		},
		Recipe: c.next(),
	}
	seal, err := seal(c.by, c.number, c.mishaps, c.until, c.chosen)
	if err != nil {
		return err
	}
	c.key(0, light)
	c.key(0, seal)
	c.key(20, entry.PhaseSet{Phase: entry.Preheat})
	return nil
}

// fill fills the shaft on the embers and turns the blast on.
func (c *crew) fill() {
	c.f.Preheat()
	kg := c.f.Fill(fillsTo * c.f.Mark())
	c.coal = kg
	n := math.Round(2*kg/(bucketKg*c.f.BucketOff)) / 2
	c.key(c.now(), entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(n))}}})
	c.step()
	c.blast(math.Round(c.f.BlastPerArea*math.Pi/4*c.f.BoreCm*c.f.BoreCm/10) * 10)
	c.f.MainBurn()
	c.mainBurn, c.lastCharge = c.now(), c.now()
	c.after(60, func() { c.key(c.now(), entry.Look{At: entry.AtTopGas, Sees: entry.TopGasAlight}) })
	c.aim()
	c.nextLook, c.nextDip, c.nextScale = c.now()+600, c.now()+dips, c.now()+weighs*(0.2+c.scales.Float64())
}

// blast sets the blast and keys it: a volume where there is a meter, else the mark on the gate.
func (c *crew) blast(lMin float64) {
	c.setLMin = lMin
	c.f.SetBlast(lMin)
	if reads, ok := c.f.MeterReads(); ok {
		c.keyBlast(reads)
		return
	}
	c.key(c.now(), entry.Blast{State: entry.BlastOn, Gate: string(rune('3' + c.raised))})
}

func (c *crew) keyBlast(lMin float64) {
	c.keyedLMin = math.Max(0, math.Round(lMin))
	c.key(c.now(), entry.Blast{Volume: entry.Some(entry.LitrePerMinute(c.keyedLMin))})
}

// after does something so many s from now.
func (c *crew) after(seconds float64, do func()) {
	c.todo = append(c.todo, deed{c.now() + seconds, do})
}

// later keys something so many s from now.
func (c *crew) later(seconds float64, ev entry.Event) {
	c.after(seconds, func() { c.key(c.now(), ev) })
}

// tend is what the crew does in a second.
func (c *crew) tend() {
	now := c.now()
	for i := 0; i < len(c.todo); i++ {
		if c.todo[i].at <= now {
			do := c.todo[i].do
			c.todo = slices.Delete(c.todo, i, i+1)
			do()
			i--
		}
	}
	switch {
	case c.burning > 0 && now >= c.burning+burnsDown, c.burning == 0 && now > longest:
		c.pull()
		return
	case c.burning > 0:
		return
	}
	c.charging()
	if now >= c.nextLook {
		c.nextLook = now + 60*c.f.LookEvery*(0.7+0.6*c.looks.Float64())
		c.round()
	}
	if now >= c.nextDip {
		c.nextDip = now + dips*(0.8+0.4*c.looks.Float64())
		below := math.Round(c.f.StackCm) + freeboardCm - 100*c.f.Dip()
		c.key(now, entry.Dip{BelowRim: entry.Some(entry.Centimetre(math.Round(math.Max(0, below))))})
	}
}

// pull takes the bloom out, weighs it and opens the seal.
func (c *crew) pull() {
	c.bloom, c.bits = c.f.Bloom()
	c.f.SetBlast(0)
	c.key(c.now(), entry.Extract{From: "top", None: c.bloom == 0})
	at := c.now() + 20*60
	if c.bloom > 0 {
		c.key(at, entry.Weigh{What: entry.WeighBloom, Mass: entry.Kilogram(math.Round(10*c.bloom) / 10), State: entry.Cold})
	}
	c.key(at+30, entry.PhaseSet{Phase: entry.Closed})
	c.key(at+60, entry.Opened{})
	c.over = c.now()
}
