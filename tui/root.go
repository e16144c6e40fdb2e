package tui

import (
	"maps"

	"github.com/charmbracelet/bubbles/spinner"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Model is the root: it keeps what the screens share, routes keys to the open
// dialog or the active screen, does what they ask for, makes entries of it, and
// puts acknowledgements in their place. It is a value and its Update is pure.
type Model struct {
	cfg     Config
	w, h    int
	theme   theme.Theme
	units   modelwords.Units
	version uint64      // of what is shown
	now     entry.Stamp // of this message
	ticked  entry.Stamp // the last look at both clocks
	by      string      // initials, until a smelt knows better

	screens map[screen.ID]screen.Screen
	order   []screen.ID // in which they are listed
	active  screen.ID
	behind  []screen.ID // the way back

	fires     // the smelts that are open
	household // the house, and the smelts that are over
	reading   // the reads of the book under way

	locked   lock
	guard    guard
	run      run   // of a key that comes quickly
	batch    batch // of keys that are no acts
	asking         // what is asked
	drafting       // what was left half typed
	answer   answer
	careful  string // the caution that is shown
	chem     bool   // the shaft is shown as chemistry

	ledger  ledger            // what is on its way to the book
	follows map[string]follow // what is done once an entry is kept, by its own name
	reports                   // of the book, of itself
	leaving bool              // as soon as all is kept

	heard rule.Heard // what the bell sounds for
	bell  rule.Bell  // what has sounded of what one asked to be reminded of

	practice // what a rehearsal adds
	watched  // how it stands with what another program keeps
}

// answer is what the last key did, and the entries it is about.
type answer struct {
	text    string
	refused bool
	about   []string // by their own names
}

// New is the program at its start screen.
func New(cfg Config) Model {
	if cfg.Starters == nil {
		cfg.Starters = screen.Starters()
	}
	m := Model{
		cfg: cfg, theme: cfg.Theme, now: cfg.Start, ticked: cfg.Start, ledger: newLedger(cfg.Start),
		screens: map[screen.ID]screen.Screen{},
		reading: reading{reads: 1, spinner: spinner.New(spinner.WithSpinner(spinner.Line))}, household: household{accounts: new(screen.Accounts)},
	}
	m.active = m.outside()
	for _, s := range rooms(cfg) {
		m.order = append(m.order, s.ID())
		m.screens[s.ID()] = s
	}
	return m.rehoused()
}

// Init reads the settings, the shelf, and the demo to look at.
func (m Model) Init() tea.Cmd {
	return tea.Batch(m.readHouse(), m.readShelf(), m.readDemo(), m.readRehearsal(), m.readWatched())
}

// Update takes a message. The entries are to be handed to the book, in order.
func (m Model) Update(msg tea.Msg) (Model, []entry.Entry, tea.Cmd) {
	m.version++
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
	case Pressed:
		return m.press(msg)
	case Burst:
		return m.burst(msg)
	case Gathered:
		return m.settle()
	case Tick:
		m, out, first := m.settle()
		m, es, then := m.tick(msg.At)
		return m, append(out, es...), tea.Batch(first, then)
	case Frame:
		m = m.frame(msg.At)
	case spinner.TickMsg:
		return m.spin(msg)
	case Kept:
		return m.kept(msg)
	case shelfRead:
		return m.shelfRead(msg)
	case weekRead:
		return m.weekRead(msg)
	case houseRead:
		m = m.houseRead(msg)
	case smeltRead:
		return m.smeltRead(msg)
	case solved:
		m = m.solved(msg)
	case news:
		return m.newsRead(msg)
	case failed:
		m.reads = max(m.reads-1, 0)
		m = m.refuse(words.CommandFailed(msg.err.Error()))
	case saw:
		return m.saw(msg)
	case happened:
		return m.happened(msg)
	case Leave:
		m, out, _ := m.settle()
		m, es := m.flush()
		m, half := m.drafted()
		return m, append(append(out, es...), half...), tea.Quit
	default:
		return m.passed(msg)
	}
	return m, nil, nil
}

// passed hands a message to the screen that asked for what brought it.
func (m Model) passed(msg tea.Msg) (Model, []entry.Entry, tea.Cmd) {
	for _, id := range m.order {
		r, ok := m.screens[id].(screen.Receiver)
		if !ok {
			continue
		}
		next, e, taken := r.Receive(m.Shared(), msg)
		if taken {
			return m.With(next).perform(e, "")
		}
	}
	m.version-- // nobody's
	return m, nil, nil
}

// With is the root with a screen as it is given.
func (m Model) With(s screen.Screen) Model {
	m.screens = maps.Clone(m.screens)
	m.screens[s.ID()] = s
	return m
}

// refuse answers that nothing was done, and why.
func (m Model) refuse(why string) Model {
	m.answer = answer{text: why, refused: true}
	return m
}
