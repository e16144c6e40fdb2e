package tui

import (
	"maps"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/tui/theme"
)

// Model is the root: it keeps what the screens share, routes keys to the open
// dialog or the active screen, makes entries of what they lead to, and puts
// acknowledgements in their place. It is a value and its Update is pure.
type Model struct {
	cfg      Config
	w, h     int
	theme    theme.Theme
	now      entry.Stamp
	ticked   entry.Stamp     // the last look at both clocks
	by       string          // initials, until a smelt knows better
	running  session.Session // the smelt at work
	looked   session.Session // another one, looked at
	house    int             // entries of the house that this run kept
	starters []Starter
	stand    stand // the shelf, as far as it was read
	ledger   ledger
	batch    batch
	guard    guard
	screens  map[screenID]screen
	active   screenID
	behind   []screenID // the way back
	dialog   dialog
	answer   answer
	told     []string // what the book said of itself, until the next key
	careful  string   // the caution that is shown
	chem     bool     // the shaft is shown as chemistry
	locked   lock
	leaving  bool   // as soon as all is kept
	version  uint64 // of what is shown
}

// stand is what was read of the shelf.
type stand struct {
	lines []SmeltLine
	known bool
	err   error
	demo  []entry.Entry
	shown *SmeltLine // the demo's line
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
		cfg.Starters = Starters()
	}
	m := Model{
		cfg: cfg, theme: cfg.Theme, now: cfg.Start, ticked: cfg.Start, ledger: newLedger(cfg.Start),
		active: startScreen, screens: map[screenID]screen{}, starters: cfg.Starters,
	}
	for _, s := range []screen{start{}, newLightForm(cfg.Starters, cfg.Theme.Units), fire{}, journal{}, shelf{}, help{}, replay{}} {
		m.screens[s.name()] = s
	}
	return m
}

// Init reads the settings, the shelf, and the demo to look at.
func (m Model) Init() tea.Cmd { return tea.Batch(m.readHouse(), m.readShelf(), m.readDemo()) }

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
	case Tick:
		return m.tick(msg.At)
	case Frame:
		m = m.frame(msg.At)
	case Kept:
		return m.kept(msg)
	case shelfRead:
		return m.shelfRead(msg)
	case houseRead:
		m = m.houseRead(msg)
	case smeltRead:
		m, out := m.smeltRead(msg)
		return m, out, nil
	case solved:
		m = m.solved(msg)
	case startersRead:
		m = m.offered(msg)
	case failed:
		m = m.refuse(words.CommandFailed(msg.err.Error()))
	case Leave:
		m, out := m.flush()
		return m, out, tea.Quit
	default:
		m.version--
	}
	return m, nil, nil
}

// handful is how many different keys one read may bring that a hand has typed.
// Some terminals send a paste as keys.
const handful = 6

// burst is keys that came in one read, each in its turn.
func (m Model) burst(keys Burst) (Model, []entry.Entry, tea.Cmd) {
	different := map[string]bool{}
	for _, k := range keys {
		different[k.Key.String()] = true
	}
	if len(different) > handful && !m.typing() {
		var out []entry.Entry
		for _, k := range keys {
			next, es := m.note(k, true)
			m, out = next, append(out, es...)
		}
		return m.refuse(words.PasteIgnored), out, nil
	}
	var out []entry.Entry
	var cmds []tea.Cmd
	for _, k := range keys {
		next, es, cmd := m.press(k)
		m, out, cmds = next, append(out, es...), append(cmds, cmd)
	}
	return m, out, tea.Batch(cmds...)
}

// press is one key: guarded, then taken by the dialog, by the keys of every
// screen, or by the screen itself.
func (m Model) press(k Pressed) (Model, []entry.Entry, tea.Cmd) {
	m.now, m.leaving, m.told = k.At, false, nil
	t, typing := typedOf(k.Key), m.typing()
	g, glove := m.guard.leans(press{t, k.At, typing, m.repeats(t)})
	m.guard = g
	if m.locked.is() {
		return m.held(k, t)
	}
	switch {
	case glove != meant:
		return m.leanedOn(k, t, glove)
	case k.Key.Paste && !typing:
		m, out := m.note(k, true)
		return m.refuse(words.PasteIgnored), out, nil
	}
	before := m.dialog
	m.careful = ""
	m, st := m.route(k, t, typing)
	return m.take(st, k, before != nil && m.dialog == nil)
}

// route hands a key to whom it is for.
func (m Model) route(k Pressed, t typed, typing bool) (Model, step) {
	var st step
	sh := m.shared()
	switch {
	case key.Matches(t, global.Leave):
		return m, leave(sh)
	case m.dialog != nil:
		m.dialog, st = m.dialog.update(sh, k)
		return m, st
	case key.Matches(t, global.Back):
		return m, step{back: true}
	case !typing && key.Matches(t, global.Views):
		return m, views(sh)
	case !typing && key.Matches(t, global.Far):
		return m, step{far: true}
	case m.active != helpScreen && (key.Matches(t, global.HelpTyping) || !typing && key.Matches(t, global.Help)):
		return m, step{to: helpScreen}
	case key.Matches(t, global.Help, global.HelpTyping) && !typing:
		return m, step{back: true}
	}
	next, st := m.screens[m.active].update(sh, k)
	m.screens = maps.Clone(m.screens)
	m.screens[m.active] = next
	return m, st
}

// typing tells whether keys are text just now.
func (m Model) typing() bool {
	if m.dialog != nil {
		return m.dialog.typing()
	}
	s, ok := m.screens[m.active].(interface{ typing() bool })
	return ok && s.typing()
}

// repeats tells whether a key may come as fast as a hand can.
func (m Model) repeats(t typed) bool {
	switch {
	case key.Matches(t, global.Back):
		return true
	case m.typing():
		return !key.Matches(t, fieldMap.Done)
	case m.dialog != nil:
		return key.Matches(t, move.Up, move.Down)
	}
	return key.Matches(t, m.screens[m.active].keys().repeating()...)
}

// refuse answers that nothing was done, and why.
func (m Model) refuse(why string) Model {
	m.answer = answer{text: why, refused: true}
	return m
}
