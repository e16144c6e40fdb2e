package rule

import (
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/grow"
	"chargehand/model/solve"
)

// never is when something happened that has not.
const never = -1 << 62

// sight is the last look at one place, and when.
type sight struct {
	word string
	at   time.Duration
}

// moment is what the rules see at one point of the grid: nothing that happened
// later.
type moment struct {
	at   time.Duration
	c    *fold.Timeline
	last time.Duration // when the last line happened

	history []solve.Sample // what the shaft solver saw, if it was asked

	// How much of the timeline lies behind: how many of each.
	lines, charges, blasts, dips, weighings, samples int

	phase       entry.Phase
	paused      bool
	lastOre     bool
	firstOre    time.Duration
	recipe      entry.Recipe
	done        int // charges since the recipe
	plans       []plan
	stores      stores
	paces       grow.List[interval]
	pacing      pacing
	seen        []seen // warnings that a person has acknowledged
	peep, flame sight
	sound, slag sight
	topGas      sight
	stiff       int                        // times in a row that the slag was seen stiff
	weak, cool  int                        // and the blast heard weak, the fire seen orange or red
	fire        entry.Maybe[entry.Celsius] // last temperature in the peep
	fireAt      time.Duration
	top         entry.Maybe[entry.Celsius] // last temperature read of the top gas
	topAt       time.Duration
	slagWeighed bool          // slag of this smelt was weighed
	slagFrom    time.Duration // since when there is slag enough to see, as the solver has it
	fill        time.Duration
	blastOn     time.Duration // when the blast last came on again
	blastSet    time.Duration // when it last became another
	rod, tap    time.Duration
	poke, jump  time.Duration
	jumped      entry.ClockJump
	presses     []pressed
	factor      meterFactor
	damp        damp
	oreSince    string // of which lot the ore is, where the plan had another
	holes       []hole // in the wall
	cracks      []hole // not patched
	replanned   bool   // the rest of the day was planned anew
}

func newMoment(about *fold.About) *moment {
	unseen := sight{at: never}
	c := fold.NewTimeline(about)
	return &moment{
		c: &c, phase: entry.Preheat, recipe: entry.Recipe{Next: c.Light.Recipe}, stores: newStores(c.Light.Lots),
		peep: unseen, flame: unseen, sound: unseen, slag: unseen, topGas: unseen,
		firstOre: never, slagFrom: never, fireAt: never, topAt: never, damp: damp{at: never}, fill: never, blastOn: never, blastSet: never, rod: never, tap: never, poke: never, jump: never,
	}
}

// clone is a copy that may go on beside this one.
func (m *moment) clone() *moment {
	o := *m
	c := m.c.Clone()
	o.c = &c
	o.plans, o.seen = slices.Clip(o.plans), slices.Clip(o.seen)
	o.presses = slices.Clone(o.presses)
	o.holes, o.cracks = slices.Clip(o.holes), slices.Clip(o.cracks)
	o.stores.lots, o.stores.left = slices.Clone(o.stores.lots), slices.Clone(o.stores.left)
	o.pacing = o.pacing.clone()
	return &o
}

// advance goes on to a later moment, past the lines that have happened by then; it
// tells how many those are.
func (m *moment) advance(at time.Duration, lines []fold.Line) int {
	m.at = at
	n := 0
	for n < len(lines) && lines[n].At <= at {
		l := lines[n]
		n++
		m.last = l.At
		m.c.Take(l)
		m.take(l)
		m.phase = m.c.Phase
	}
	m.lines += n
	m.dips, m.weighings = len(m.c.Dips), len(m.c.Weighings)
	for m.samples < len(m.history) && m.history[m.samples].At <= at {
		if g := m.history[m.samples]; m.slagFrom == never && g.Slag >= leastBath {
			m.slagFrom = g.At
		}
		m.samples++
	}
	for m.paces.Len() < len(m.c.Charges) {
		m.paces.Append(m.pace(m.paces.Len()))
	}
	return n
}

// take lets one line happen.
func (m *moment) take(l fold.Line) {
	m.pacing.take(m.c, l)
	m.stores.name(entry.LotsIn(l.Event)...)
	switch ev := l.Event.(type) {
	case entry.Acknowledge:
		m.seen = append(m.seen, seen{l.At, ev})
	case entry.Fill:
		m.fill = l.At
		m.stores.use(m.c, ev.Parts, l.At)
	case entry.Charge:
		m.charge(l, ev)
	case entry.Recipe:
		m.oreOf(ev)
		m.recipe, m.done = ev, 0
	case entry.AgainFromHere:
		m.recipe, m.done, m.replanned = ev.Recipe(), 0, true
	case entry.Blast:
		m.blow(l.At)
		m.press(l.At, ev)
	case entry.Pause:
		m.paused = true
	case entry.Resume:
		m.paused = false
	case entry.LastOre:
		m.lastOre = true
	case entry.Rod:
		m.rod = l.At
	case entry.Tap:
		m.tap = l.At
		m.slagWeighed = m.slagWeighed || ev.Mass.Positive()
	case entry.Poke:
		m.poke = l.At
	case entry.Look:
		m.look(l.At, ev)
	case entry.Temperature:
		if ev.Where == entry.WherePeep {
			m.fire, m.fireAt = entry.Some(ev.Degrees), l.At
		}
		if ev.Where == entry.WhereTop {
			m.top, m.topAt = entry.Some(ev.Degrees), l.At
		}
	case entry.LotStored:
		m.stores.tell(ev.Lot)
	case entry.Weigh:
		if ev.What == entry.WeighLot && !ev.Closed {
			m.stores.weigh(ev)
		}
		m.slagWeighed = m.slagWeighed || ev.What == entry.WeighSlag && ev.Mass > 0
		m.dampens(l.At, ev)
	case entry.WallSeen:
		m.wall(l.At, ev)
	case entry.ClockJump:
		if ev.ByMs != 0 { // a clock that a person put right was not set
			m.jump, m.jumped = l.At, ev
		}
	}
}

// charge lets a charge happen: of charcoal, or of ore on its own.
func (m *moment) charge(l fold.Line, ev entry.Charge) {
	m.stores.use(m.c, ev.Parts, l.At)
	if m.firstOre == never && ev.Parts.Holds(entry.Ore) {
		m.firstOre = l.At
	}
	if m.charges < len(m.c.Charges) && m.c.Charges[m.charges].Seq == l.Seq() {
		m.plans = append(m.plans, m.planned(l.At))
		m.charges++
		m.done++
		m.factor.judge(m.c, m.charges)
	}
}

func (m *moment) blow(at time.Duration) {
	before, _ := m.blast()
	wasOff := m.off()
	m.blasts++
	now, _ := m.blast()
	if wasOff && !m.off() {
		m.blastOn = at
	}
	if wasOff != m.off() || otherBlast(before, now) {
		m.blastSet = at
	}
}

func (m *moment) look(at time.Duration, ev entry.Look) {
	seen := sight{ev.Sees, at}
	switch ev.At {
	case entry.AtPeep:
		m.peep = seen
		m.cool = inARow(m.cool, ev.Sees == entry.PeepOrange || ev.Sees == entry.PeepRed)
	case entry.AtFlame:
		m.flame = seen
	case entry.AtSound:
		m.sound = seen
		m.weak = inARow(m.weak, ev.Sees == entry.SoundWeak)
	case entry.AtSlag:
		m.slagSeen(seen)
	case entry.AtTopGas:
		m.topGas = seen
	}
}

// inARow counts once more what is so again.
func inARow(times int, again bool) int {
	if !again {
		return 0
	}
	return times + 1
}

// blast is the blast as last observed, and whether it ever was.
func (m *moment) blast() (fold.Blast, bool) {
	if m.blasts == 0 {
		return fold.Blast{}, false
	}
	return m.c.Blast[m.blasts-1], true
}

// off tells whether the blast is known to be off.
func (m *moment) off() bool {
	b, ok := m.blast()
	return ok && b.Off
}

// charging tells whether charges go in: the main burn, with ore or without.
func (m *moment) charging() bool { return m.phase == entry.MainBurn || m.phase == entry.OreOff }

// lastCharge is when charcoal was last charged.
func (m *moment) lastCharge() time.Duration {
	if m.charges == 0 {
		return never
	}
	return m.c.Charges[m.charges-1].At
}

// within tells whether something happened no longer ago than so much.
func (m *moment) within(at, d time.Duration) bool { return at != never && m.at-at < d }

// stale is how long a sign stands when nobody says more of it: by then two
// charges have gone in and it tells of another fire (common practice).
const stale = 30 * time.Minute

// stands tells whether a sight says one of these words, not long ago and with
// none of the remedies taken since.
func (m *moment) stands(s sight, remedy time.Duration, words ...string) bool {
	return m.standsFor(stale, s, remedy, words...)
}

// standsFor is stands for a sight that stands for another time.
func (m *moment) standsFor(long time.Duration, s sight, remedy time.Duration, words ...string) bool {
	if !m.within(s.at, long) || remedy >= s.at {
		return false
	}
	for _, w := range words {
		if s.word == w {
			return true
		}
	}
	return false
}
