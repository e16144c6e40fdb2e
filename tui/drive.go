package tui

import (
	"sync/atomic"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/rehearse"
	"chargehand/model/rule"
	"chargehand/model/solve"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// drive is the clock of a rehearsal and the furnace that answers, for the program. The clock goes by whole seconds. Keys are
// stamped with the next one and act at once; when it has come the root ticks, and the furnace goes on by it. What follows depends on the
// second of each key and on no pace: all that is slow (the solver) is waited for.
type drive struct {
	live   *rehearse.Live
	stream string // the smelt that the furnace is of
	at     float64
	solver solve.Solver

	pace   int // in paces
	held   bool
	slowed bool
	seen   map[raised]bool // warnings that slowed it down

	gen   int // of the beats that are on their way
	last  time.Time
	owed  float64                 // s that have not gone by yet
	shown atomic.Pointer[instant] // for what plays beside it
}

// instant is where the clock stood at a moment of the hand's.
type instant struct {
	at   float64
	real time.Time
}

// plays is a clock that runs as a hand's does, for a replay.
func (d *drive) plays() entry.Stamp {
	i := d.shown.Load()
	return rehearse.Moment(i.at + time.Since(i.real).Seconds())
}

// stands notes where the clock stands.
func (d *drive) stands() { d.shown.Store(&instant{d.at + 1, time.Now()}) }

// raised is a warning by rule and onset.
type raised struct {
	rule  rule.ID
	onset time.Duration
}

// beat lets the clock of a rehearsal go on.
type beat struct {
	gen int
	at  time.Time
}

// A beat takes no longer than busy, so that keys and frames come between; what it did not do in longest is let be.
const (
	beats   = 50 * time.Millisecond
	busy    = 35 * time.Millisecond
	longest = 250 * time.Millisecond
)

// Rehearsal makes the root run on the clock of a rehearsal that stands so many s after light, held or not. The filter is for
// its keys.
func Rehearsal(m Model, store Store, seconds float64, held bool) (program tea.Model, filter func(tea.Model, tea.Msg) tea.Msg) {
	d := &drive{at: seconds, pace: usualPace, held: held, seen: map[raised]bool{}, last: time.Now()}
	p := newRehearsal(m, store, d)
	began, stamp := time.Now(), Filter(d.next)
	byHand := func(k Pressed) Pressed {
		k.Hand = entry.Stamp{Wall: time.Now(), Boot: "hand", Mono: time.Since(began)}
		return k
	}
	return p, func(m tea.Model, msg tea.Msg) tea.Msg {
		switch k := stamp(m, msg).(type) {
		case Pressed:
			return byHand(k)
		case Burst:
			for i := range k {
				k[i] = byHand(k[i])
			}
			return k
		default:
			return k
		}
	}
}

func newRehearsal(m Model, store Store, d *drive) *driven {
	p := &driven{program: program{model: m, store: store}, drive: d}
	p.program.clock = d.plays
	d.stands()
	return p
}

// next is the stamp of what is keyed now.
func (d *drive) next() entry.Stamp { return rehearse.Moment(d.at + 1) }

// driven is the program of a rehearsal.
type driven struct {
	program
	*drive
}

// Init begins the clock.
func (p *driven) Init() tea.Cmd { return tea.Batch(p.model.Init(), p.beats()) }

// speed is how many seconds go by in one of the hand.
func (p *driven) speed() float64 {
	switch {
	case p.live != nil && p.live.Pulled() && !p.live.Over() && p.model.calm():
		return float64(paces[len(paces)-1]) // what is left is to cool
	case p.slowed, !p.model.calm(), p.model.cautioned():
		return 1
	}
	return float64(paces[p.pace])
}

// beats is the next beat; none while the clock is held.
func (p *driven) beats() tea.Cmd {
	p.gen++
	if p.held {
		return nil
	}
	gen := p.gen
	wait := min(max(time.Duration(float64(time.Second)/p.speed()), beats), time.Second)
	return tea.Tick(wait, func(at time.Time) tea.Msg { return beat{gen, at} })
}

// Update hands on what the root makes of a message, and lets the furnace take part.
func (p *driven) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	var cmd tea.Cmd
	if took, ok := p.sets(msg); ok {
		return p, took
	}
	switch msg := msg.(type) {
	case Gathered: // the next second has it act
		if !p.held {
			p.comes = false
			return p, nil
		}
		cmd = p.acts(msg)
	case beat:
		if msg.gen != p.gen {
			return p, nil
		}
		cmd = p.goesOn(msg.at)
		p.waits = false
	default:
		was := p.speed()
		cmd = p.acts(msg)
		if p.speed() != was {
			p.last = time.Now()
			cmd = tea.Batch(cmd, p.beats())
		}
	}
	p.says()
	cmd = tea.Batch(cmd, p.after(msg))
	return p, cmd
}

// sets takes the keys of the pace.
func (p *driven) sets(msg tea.Msg) (tea.Cmd, bool) {
	k, ok := msg.(Pressed)
	if !ok || !p.model.calm() {
		return nil, false
	}
	t := screen.TypedOf(k.Key)
	switch {
	case key.Matches(t, paceKeys.Hold) && p.slowed && !p.held:
		p.slowed = false
	case key.Matches(t, paceKeys.Hold):
		p.held = !p.held
	case key.Matches(t, paceKeys.Slower):
		p.held, p.slowed, p.pace = false, false, max(p.pace-1, 0)
	case key.Matches(t, paceKeys.Faster):
		if !p.slowed && !p.held {
			p.pace = min(p.pace+1, len(paces)-1)
		}
		p.held, p.slowed = false, false
	default:
		return nil, false
	}
	p.last, p.owed = time.Now(), 0
	p.model = p.model.hasRead() // as any other key has
	p.says()
	return p.beats(), true
}

// says marks every screen with what the clock does.
func (p *driven) says() {
	said := words.TagPractice
	if p.live != nil && !p.live.Over() {
		said = words.Rehearsing(paces[p.pace], p.held, p.slowed, p.model.cautioned(), p.tells(p.live.Asks()))
	}
	p.model = p.model.pacedAs(said)
}

// goesOn lets the seconds pass that are owed.
func (p *driven) goesOn(now time.Time) tea.Cmd {
	speed := p.speed()
	p.owed += speed * min(max(now.Sub(p.last), 0), max(longest, time.Duration(1.5*float64(time.Second)/speed))).Seconds()
	p.last = now
	var cmds []tea.Cmd
	began := time.Now()
	if !p.model.running.Is() && !p.model.looked.Is() { // not read yet
		p.owed = 0
	}
	for p.owed >= 1-1e-3 {
		p.owed--
		cmds = append(cmds, p.second())
		if p.speed() != speed || time.Since(began) > busy {
			p.owed = 0
		}
	}
	return tea.Batch(append(cmds, p.beats())...)
}

// second is one second of the rehearsal: of the root, whose keys it had, then of the furnace.
func (p *driven) second() tea.Cmd {
	var cmds []tea.Cmd
	cmds = append(cmds, p.acts(Tick{At: p.next()}))
	p.at++
	p.stands()
	if p.live != nil {
		for _, h := range p.live.Step() {
			h.Notice = p.tells(h.Notice)
			cmds = append(cmds, p.passes(happened{h}))
			if !p.live.Pulled() {
				p.slowed = true
			}
		}
		p.solves()
	}
	for _, w := range p.model.running.Standing() {
		if r := (raised{w.Rule, w.Onset}); w.Grade > rule.Note && !p.seen[r] {
			p.seen[r] = true
			p.slowed = p.slowed || p.live != nil && !p.live.Pulled()
		}
	}
	return tea.Batch(cmds...)
}

// tells is what is told of a notice: that all the ore is in only until somebody has keyed it. It is told at every room for a
// bucket until then: who missed it once would charge charcoal for ever.
func (p *driven) tells(n rehearse.Notice) rehearse.Notice {
	if n == rehearse.OreIsIn && p.model.running.Reading().LastOre {
		return rehearse.RoomForBucket
	}
	return n
}

// acts hands a message to the root, what it kept to the furnace, and what it looks at back as it is seen.
func (p *driven) acts(msg tea.Msg) tea.Cmd {
	cmds := []tea.Cmd{p.passes(msg)}
	for len(p.model.asked) > 0 {
		ask := p.model.asked[0]
		p.model.asked = p.model.asked[1:]
		s := saw{why: rehearse.NotAsked}
		if p.live != nil {
			s.event, s.why = p.live.See(ask)
		}
		cmds = append(cmds, p.passes(s))
		p.answered()
	}
	p.solves()
	return tea.Batch(cmds...)
}

// answered goes back to the pace once somebody has done or looked at something, unless a charge is due.
func (p *driven) answered() {
	if p.slowed && (p.live == nil || p.live.Asks() == "") {
		p.slowed, p.last = false, time.Now()
	}
}

// passes hands a message to the root, what it made of it to the book and the furnace.
func (p *driven) passes(msg tea.Msg) tea.Cmd {
	p.model.full = p.live != nil && p.live.Full()
	m, entries, cmd := p.model.Update(msg)
	p.model = m
	if len(entries) > 0 {
		p.store.Keep(entries...)
	}
	p.follows()
	for _, e := range entries {
		if p.live == nil || e.Stream != p.stream || e.Screen == rehearse.Answers {
			continue
		}
		p.live.Take(e)
		if entry.IsAct(e.Event) {
			p.answered()
		}
	}
	return cmd
}

// follows has the furnace be that of the smelt at work.
func (p *driven) follows() {
	id := p.model.running.ID()
	if id == p.stream || id == "" {
		return
	}
	p.stream = id
	live, err := rehearse.Resume(p.model.running.Entries())
	if p.live = live; err != nil {
		p.live = nil
		p.model = p.model.refuse(words.NoFurnaceAnswers(id, err.Error()))
		return
	}
	p.at = live.Seconds()
	p.stands()
}

// solves waits for the solver: what the screens say of a second must not hang on how fast it is.
func (p *driven) solves() {
	for range 4 {
		j, due := p.model.running.Job()
		if !due {
			return
		}
		p.model = p.model.solved(solved{firstFire, j.Run(&p.solver)})
	}
}
