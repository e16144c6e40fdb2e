package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/theme"
)

// desk is a root with a keyboard, a clock that stands until it is moved, and a
// book in memory that numbers entries as the real one does.
type desk struct {
	t      *testing.T
	m      Model
	at     entry.Stamp
	book   memory
	queue  []entry.Entry // handed over, not yet acknowledged
	hold   bool          // do not acknowledge
	stamps bool          // the book stamps what it takes, as the real one does
	quit   bool
}

// memory is a book in memory.
type memory map[string][]entry.Entry

func (b memory) Keep(es ...entry.Entry) {
	for _, e := range es {
		b.keep(e)
	}
}

// keep numbers an entry and points what it speaks of at its number.
func (b memory) keep(e entry.Entry) entry.Entry {
	kept := b[e.Stream]
	e.Seq = uint64(len(kept) + 1)
	e, lost := e.Resolve(func(local string) (uint64, bool) {
		for _, k := range kept {
			if k.Local == local {
				return k.Seq, true
			}
		}
		return 0, false
	})
	if lost != "" {
		panic("an entry speaks of one that is not in the book: " + lost)
	}
	b[e.Stream] = append(kept, e)
	return e
}

func (b memory) Smelts() ([]SmeltLine, error) {
	var ls []SmeltLine
	for id, es := range b {
		if id == entry.House {
			continue
		}
		last := es[len(es)-1]
		s := opened(id, es, false, entry.Stamp{Wall: last.Kept, Boot: last.Boot, Mono: last.Mono})
		ls = append(ls, SmeltLine{
			ID: id, Furnace: s.Light().Furnace.Name, Lit: s.Reading().Lit, Phase: s.Phase(), Charges: len(s.Reading().Charges),
			Practice: s.Light().Practice, Imported: s.Light().Imported, Invented: s.Light().Invented,
		})
	}
	slices.SortFunc(ls, func(a, b SmeltLine) int { return strings.Compare(b.ID, a.ID) })
	return ls, nil
}

func (b memory) Entries(id string) ([]entry.Entry, error) {
	es, ok := b[id]
	if !ok && id != entry.House {
		return nil, fmt.Errorf("no smelt %s", id)
	}
	return slices.Clone(es), nil
}

// noon of an invented day.
var noon = entry.Stamp{
	Wall: time.Date(2026, 5, 9, 12, 0, 0, 0, time.FixedZone("", 2*3600)), Boot: "boot-1", Mono: time.Hour,
}

func later(s entry.Stamp, d time.Duration) entry.Stamp {
	s.Wall, s.Mono = s.Wall.Add(d), s.Mono+d
	return s
}

func sit(t *testing.T) *desk {
	t.Helper()
	return sitAt(t, memory{}, noon, theme.Theme{})
}

func sitAt(t *testing.T, book memory, at entry.Stamp, th theme.Theme) *desk {
	t.Helper()
	uid := 0
	d := &desk{t: t, at: at, book: book}
	d.m = New(Config{
		Store: book, Theme: th, Start: at, Demo: inventedDemo,
		NewUID: func() string { uid++; return fmt.Sprintf("uid-%d", uid) },
	})
	d.send(tea.WindowSizeMsg{Width: 120, Height: 36})
	d.run(d.m.Init())
	return d
}

// send gives a message to the root and lets the book and the commands answer.
func (d *desk) send(msg tea.Msg) {
	d.t.Helper()
	m, es, cmd := d.m.Update(msg)
	d.m = m
	d.queue = append(d.queue, es...)
	if !d.hold {
		d.acknowledge()
	}
	d.run(cmd)
}

// acknowledge keeps all that waits.
func (d *desk) acknowledge() {
	d.t.Helper()
	if len(d.queue) == 0 {
		return
	}
	var kept []entry.Entry
	for _, e := range d.queue {
		if d.stamps {
			e.Kept, e.Boot, e.Mono = entry.Wall(d.at.Wall), d.at.Boot, d.at.Mono
		}
		kept = append(kept, d.book.keep(e))
	}
	d.queue = nil
	d.send(Kept{Entries: kept})
}

func (d *desk) run(cmd tea.Cmd) {
	d.t.Helper()
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.BatchMsg:
		for _, c := range msg {
			d.run(c)
		}
	case tea.QuitMsg:
		d.quit = true
	default:
		d.send(msg)
	}
}

// wait lets time pass, with a tick at its end.
func (d *desk) wait(by time.Duration) {
	d.t.Helper()
	d.at = later(d.at, by)
	d.send(Tick{At: d.at})
}

// named are the keys that are no characters.
var named = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"backspace": tea.KeyBackspace, "ctrl+c": tea.KeyCtrlC, "home": tea.KeyHome, "end": tea.KeyEnd,
	"pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "space": tea.KeySpace, "tab": tea.KeyTab,
}

func keyMsg(k string) tea.KeyMsg {
	switch t, ok := named[k]; {
	case ok && k == "space":
		return tea.KeyMsg{Type: t, Runes: []rune{' '}}
	case ok:
		return tea.KeyMsg{Type: t}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}

// press presses keys one after the other, half a second apart.
func (d *desk) press(keys ...string) {
	d.t.Helper()
	for _, k := range keys {
		d.at = later(d.at, 500*time.Millisecond)
		d.send(Pressed{Key: keyMsg(k), At: d.at})
	}
}

// fast presses keys so soon after each other.
func (d *desk) fast(gap time.Duration, keys ...string) {
	d.t.Helper()
	for _, k := range keys {
		d.at = later(d.at, gap)
		d.send(Pressed{Key: keyMsg(k), At: d.at})
	}
}

// write types a text, one key for each character.
func (d *desk) write(text string) {
	d.t.Helper()
	for _, c := range text {
		d.press(string(c))
	}
}

// practising is a desk with a practice smelt lit and the main burn begun.
func practising(t *testing.T) *desk {
	t.Helper()
	d := sit(t)
	d.press("p")
	d.press("o", "m", "y")
	return d
}

// acts are the events of the open smelt that a person made with a key of its
// own.
func (d *desk) acts() []entry.Event {
	var evs []entry.Event
	for _, e := range d.m.shown().Entries() {
		switch e.Kind() {
		case "", entry.KindKeys, entry.KindTestimony, entry.KindCaution:
		default:
			evs = append(evs, e.Event)
		}
	}
	return evs
}

// last is the last act.
func (d *desk) last() entry.Event {
	d.t.Helper()
	evs := d.acts()
	if len(evs) == 0 {
		d.t.Fatal("no act yet")
	}
	return evs[len(evs)-1]
}

// answers fails unless the answer holds a text.
func (d *desk) answers(text string) {
	d.t.Helper()
	if !strings.Contains(d.m.answer.text, text) {
		d.t.Errorf("answer %q, want it to say %q", d.m.answer.text, text)
	}
}

// screen is what is shown, without colours.
func (d *desk) screen() string {
	g := d.m.theme.Grid(d.m.w, d.m.h)
	d.m.paint(g)
	return g.String()
}

// shows fails unless the screen holds a text.
func (d *desk) shows(text string) {
	d.t.Helper()
	if !strings.Contains(d.screen(), text) {
		d.t.Errorf("the screen does not show %q:\n%s", text, d.screen())
	}
}

// inventedDemo is a small invented smelt to look at.
func inventedDemo() ([]entry.Entry, error) {
	s := Starters()[0]
	s.Furnace.Name = "Nowhere Mill"
	at := func(i int, after time.Duration, ev entry.Event) entry.Entry {
		return entry.Entry{
			Version: 1, Stream: "2026-01-01-nowheremill-a", Seq: uint64(i), Happened: noon.Wall.Add(after - 24*time.Hour),
			Event: ev,
		}
	}
	es := []entry.Entry{
		at(1, 0, entry.Light{UID: "demo", Furnace: s.Furnace, Measures: s.Measures, Recipe: s.Recipe, Invented: true, Imported: true}),
		at(2, time.Hour, entry.Fill{Parts: entry.Parts{{What: entry.Charcoal, Measure: "bucket", Count: entry.Some(entry.Count(4))}}}),
	}
	for i := range 5 {
		es = append(es, at(3+i, time.Hour+time.Duration(20+12*i)*time.Minute, entry.Charge{Parts: s.Recipe}))
	}
	return es, nil
}
