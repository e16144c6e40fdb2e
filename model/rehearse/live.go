package rehearse

import (
	"errors"
	"math"
	"math/rand/v2"
	"time"

	"chargehand/model/entry"
	"chargehand/model/truth"
)

// Answers is where an entry was taken down that the furnace itself made: what was seen of it when somebody looked, and what
// nobody could miss (entry.Entry.Screen).
const Answers = "rehearsal"

// Live is a smelt on the furnace that answers, worked by a person: Step lets a second pass, Take hands it what was keyed, See
// what is looked at. Whatever it is follows from the entries of the smelt, in their order, and from nothing else: Resume finds
// it again. Not safe for use by several at a time.
type Live struct {
	f        furnace
	number   int64
	mishaps  []truth.Mishap
	eyes     *rand.Rand
	bucketKg float64 // what the crew takes a bucket and a scoop to hold
	scoopKg  float64

	filled, blown, pulled, over bool
	ore                         float64 // kg charged, as the scoops have it
	charges                     int
	weighed                     float64 // kg of a bucket of the last charge, as a scale would have it
	next                        float64 // kg of ore in the charge last made
	eye                         float64 // m, by how much an eye misses the mark until the next charge
	room                        bool    // there is room for a bucket, and it was told
	since                       float64 // s, when that was
	helps                       float64 // s, when a helper who forgets to key charges; 0 for never
	told                        map[Notice]bool
	hung                        bool
	coming                      []due              // what is sure to come
	lasts                       map[Mishap]float64 // s, until when each mishap has gone on so far
	was                         map[was]int
	course
	bloom, bits float64
	handed      float64 // s, when the scripted crew handed over
	alone       bool    // it never did
}

// due is an answer of the furnace that comes at a second.
type due struct {
	at float64
	h  Happened
}

// was is an answer that stands in the book already.
type was struct {
	at   time.Duration
	kind entry.Kind
}

// Moment of a rehearsal is so many s since light: wall and boot clock are its own.
func Moment(seconds float64) entry.Stamp {
	at := time.Duration(seconds * float64(time.Second))
	return entry.Stamp{Wall: begins.Add(at), Boot: boot, Mono: time.Hour + at}
}

const boot = "rehearsal"

// SecondsOf is how long after light an entry of a rehearsal was taken down, s.
func SecondsOf(e entry.Entry) float64 { return (e.Mono - time.Hour).Seconds() }

// Beginning is how a rehearsal for a person begins.
type Beginning struct {
	Number  int64
	Mishaps []Mishap
	Chosen  bool   // by somebody, not by chance: the seal names them
	Stream  string // the smelt's name
	// UnderWay lets the scripted crew work until an hour into the main burn and until ore is in, so that there is something to
	// lose, and leaves its plan for the rest of the day;
	// else the person begins with the wood fire just lit.
	UnderWay bool
}

// Begin gives the entries with which a rehearsal begins: light, the seal directly after it, and what the crew did until a person
// goes on.
func Begin(b Beginning) ([]entry.Entry, error) {
	c := newCrew(b.Number, 1, b.Mishaps)
	c.chosen, c.stream = b.Chosen, b.Stream
	c.until = wood
	if b.UnderWay {
		until, err := takenOver(b)
		if err != nil {
			return nil, err
		}
		c.until = until
	}
	if err := c.light(); err != nil {
		return nil, err
	}
	for !c.hasHandedOver() {
		c.second()
	}
	if b.UnderWay {
		c.key(c.now(), c.rest())
	}
	return c.entries, nil
}

// wood is when the wood fire burns, and underWay how long into the main burn a newcomer takes over at the earliest, s.
const wood, underWay = 30.0, 3600.0

// takenOver is when a newcomer takes over, s since light: an hour after the crew keyed its first charge, with which the main burn
// begins in the book, but not before it charged ore.
func takenOver(b Beginning) (float64, error) {
	c := newCrew(b.Number, 1, b.Mishaps)
	if err := c.light(); err != nil {
		return 0, err
	}
	first := 0.0
	for c.over == 0 {
		if c.second(); first == 0 && len(c.keyedAt) > 0 {
			first = c.now()
		}
		if first > 0 && c.now() >= first+underWay && c.firstOre > 0 {
			break
		}
	}
	if c.firstOre == 0 { // it never got hot enough
		return first + underWay, nil
	}
	return c.now(), nil
}

// hasHandedOver tells whether a crew that works until a person takes over has come so far, and has nothing in its hands.
func (c *crew) hasHandedOver() bool { return c.now() >= c.until && len(c.todo) == 0 || c.over > 0 }

// rest is the crew's plan for the ore that is left: a scoop more each few charges, charcoal over the last.
func (c *crew) rest() entry.Recipe {
	scoops, in := max(c.recipe, leastOre), c.withOre%oreEach
	was := c.recipe
	defer func() { c.recipe = was }()
	step := func(n, scoops int) entry.RecipeStep {
		c.recipe = scoops
		return entry.RecipeStep{Charges: n, Parts: c.next()}
	}
	var ramp []entry.RecipeStep
	if c.withOre == 0 && was == 0 {
		ramp = append(ramp, step(1, 0))
	}
	for left := c.f.OreKg - c.ore; left > 0; {
		n := max(1, oreEach-in)
		if scoops >= mostOre {
			n = 1 << 10
		}
		n = min(n, int(math.Ceil(left/(scoopKg*float64(scoops)))))
		ramp = append(ramp, step(n, scoops))
		left, in, scoops = left-scoopKg*float64(n*scoops), 0, min(scoops+1, mostOre)
	}
	ramp = append(ramp, step(1, 0))
	return entry.Recipe{Next: ramp[0].Parts, Ramp: ramp}
}

// Resume goes to where the entries of a smelt lead: the seal is drawn from again, the crew works anew until it hands over, and
// what was keyed since then is done over. An error when there is no seal of this program's furnace in them.
func Resume(entries []entry.Entry) (*Live, error) { return relive(entries, nil) }

// begun is a rehearsal at the moment at which the scripted crew hands over, on a furnace with other mishaps where they are given.
func begun(entries []entry.Entry, otherwise *[]truth.Mishap) (*Live, error) {
	if len(entries) < 2 {
		return nil, errors.New("it has no seal")
	}
	seal, ok := entries[1].Event.(entry.Sealed)
	if !ok {
		return nil, errors.New("it has no seal")
	}
	by, err := sealedBy(seal.Truth)
	if err != nil {
		return nil, err
	}
	s, err := unseal(seal)
	if err != nil {
		return nil, err
	}
	ms := s.Mishaps
	if otherwise != nil {
		ms = *otherwise
	}
	c := by.crew(seal.Number, 1, ms)
	c.stream, c.until = entries[0].Stream, s.Crew
	if s.Crew == 0 {
		c.until = math.MaxFloat64 // the crew worked alone to the end
	}
	if err := c.light(); err != nil {
		return nil, err
	}
	for !c.hasHandedOver() {
		c.second()
	}
	l := &Live{
		handed: c.now(), alone: s.Crew == 0,
		f: c.f, number: seal.Number, mishaps: ms, eyes: truth.Stream(seal.Number, "eyes"), bucketKg: bucketKg, scoopKg: scoopKg,
		filled: c.mainBurn > 0, blown: c.mainBurn > 0, ore: c.ore, charges: c.charges, next: scoopKg * float64(c.recipe),
		pulled: c.over > 0, over: c.over > 0, bloom: c.bloom, bits: c.bits, told: map[Notice]bool{}, lasts: map[Mishap]float64{}, was: map[was]int{}, course: c.course,
	}
	l.aim()
	return l, nil
}

// relive is Resume, on a furnace with other mishaps where they are given.
func relive(entries []entry.Entry, otherwise *[]truth.Mishap) (*Live, error) {
	l, err := begun(entries, otherwise)
	if err != nil {
		return nil, err
	}
	handed, last := l.handed, 0.0
	for _, e := range entries {
		at := SecondsOf(e)
		last = max(last, at)
		if at <= handed {
			continue
		}
		for !l.over && l.f.Seconds() < at-1 {
			l.step()
		}
		if e.Screen == Answers {
			l.was[was{e.Mono, e.Kind()}]++
			l.redo(e.Event)
			continue
		}
		l.Take(e)
	}
	for k := range l.was { // of what stands in the book only the last second's can come once more
		if k.at < time.Hour+time.Duration(last*float64(time.Second)) {
			delete(l.was, k)
		}
	}
	return l, nil
}

// Seconds is how far the furnace has gone on since light, s. What is keyed now is stamped with the second after it, and the
// furnace has it before that second passes.
func (l *Live) Seconds() float64 { return l.f.Seconds() }

// Now is the stamp of what is keyed now.
func (l *Live) Now() entry.Stamp { return Moment(l.f.Seconds() + 1) }

// Over tells whether the seal is opened.
func (l *Live) Over() bool { return l.over }

// Pulled tells whether the bloom is out, or it was given up: what is left is weighing and opening.
func (l *Live) Pulled() bool { return l.pulled }

// Asks is what the furnace waits for, empty for nothing: a bucket, one with no ore left for it, or that the bloom is pulled.
func (l *Live) Asks() Notice {
	switch {
	case l.pulled || l.over:
		return ""
	case l.room:
		return l.roomFor()
	case l.burning > 0 && l.f.Seconds() >= l.burning+burnsDown:
		return BurnedDown
	}
	return ""
}

// Room tells whether there is room for a bucket under the mark, as somebody at the rim sees it.
func (l *Live) Room() bool { return l.room }

// Full tells whether a bucket would stand over the rim.
func (l *Live) Full() bool {
	return l.filled && l.f.Level()+l.bucket() > l.f.Mark()+freeboardCm/100
}

// aim settles how far the eye misses the mark at the next charge.
func (l *Live) aim() { l.eye = l.f.MarkScatter / 100 * l.eyes.NormFloat64() }

// Step lets a second pass and gives what nobody at the furnace could miss in it, but for what stands in the book already.
func (l *Live) Step() []Happened {
	all := l.step()
	fresh := all[:0]
	for _, h := range all {
		k := was{l.mono(), h.kind()}
		if l.was[k] > 0 {
			l.was[k]--
			continue
		}
		fresh = append(fresh, h)
	}
	return fresh
}

func (l *Live) mono() time.Duration { return Moment(l.f.Seconds()).Mono }
