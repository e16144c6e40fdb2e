// Package desk is a root with a keyboard, a clock that stands until it is moved, and
// a book in memory, for tests of the screens. Only tests import it.
package desk

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/tui"
	"chargehand/tui/fire"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// Desk is a root with a keyboard, a clock that stands until it is moved, and a
// book in memory that numbers entries as the real one does.
type Desk struct {
	T      *testing.T
	M      tui.Model
	At     entry.Stamp
	Book   Memory
	Queue  []entry.Entry // handed over, not yet acknowledged
	Hold   bool          // do not acknowledge
	Stamps bool          // the book stamps what it takes, as the real one does
	Quit   bool
	Rang   int // how often the bell sounded
	Rounds int // how many answers from the background in a row are waited for; 0 is all of them
	round  int
}

// Memory is a book in Memory.
type Memory map[string][]entry.Entry

func (b Memory) Keep(es ...entry.Entry) {
	for _, e := range es {
		b.keep(e)
	}
}

// keep numbers an entry and points what it speaks of at its number.
func (b Memory) keep(e entry.Entry) entry.Entry {
	kept := b[e.Stream]
	e.Seq = 1
	if n := len(kept); n > 0 {
		e.Seq = kept[n-1].Seq + 1
	}
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

func (b Memory) Smelts() ([]shelf.Summary, error) {
	var ls []shelf.Summary
	for id, es := range b {
		if id == entry.House {
			continue
		}
		ls = append(ls, shelf.Of(id, es))
	}
	slices.SortFunc(ls, func(a, b shelf.Summary) int { return strings.Compare(b.ID, a.ID) })
	return ls, nil
}

func (b Memory) Entries(id string) (kept []entry.Entry, lost []entry.Gap, err error) {
	es, ok := b[id]
	if !ok && id != entry.House {
		return nil, nil, fmt.Errorf("no smelt %s", id)
	}
	seq := uint64(0)
	for _, e := range es {
		if e.Seq > seq+1 {
			lost = append(lost, entry.Gap{After: seq, Before: e.Seq})
		}
		seq = e.Seq
	}
	return slices.Clone(es), lost, nil
}

// Noon of an invented day.
var Noon = entry.Stamp{
	Wall: time.Date(2026, 5, 9, 12, 0, 0, 0, time.FixedZone("", 2*3600)), Boot: "boot-1", Mono: time.Hour,
}

func Later(s entry.Stamp, d time.Duration) entry.Stamp {
	s.Wall, s.Mono = s.Wall.Add(d), s.Mono+d
	return s
}

func Sit(t *testing.T) *Desk {
	t.Helper()
	return SitAt(t, Memory{}, Noon, theme.Theme{})
}

func SitAt(t *testing.T, book Memory, at entry.Stamp, th theme.Theme) *Desk {
	t.Helper()
	return SitWith(t, book, at, th, func(*tui.Config) {})
}

// SitWith is the same with something else in what the program hands in.
func SitWith(t *testing.T, book Memory, at entry.Stamp, th theme.Theme, with func(*tui.Config)) *Desk {
	t.Helper()
	uid := 0
	d := &Desk{T: t, At: at, Book: book}
	cfg := tui.Config{
		Store: book, Theme: th, Start: at, Demo: InventedDemo,
		Ring:   func() { d.Rang++ },
		NewUID: func() string { uid++; return fmt.Sprintf("%016x", uid) },
	}
	with(&cfg)
	d.M = tui.New(cfg)
	d.Send(tea.WindowSizeMsg{Width: 120, Height: 36})
	d.Run(d.M.Init())
	return d
}

// Send gives a message to the root and lets the book and the commands answer.
func (d *Desk) Send(msg tea.Msg) {
	d.T.Helper()
	m, es, cmd := d.M.Update(msg)
	d.M = m
	d.Queue = append(d.Queue, es...)
	if !d.Hold {
		d.Acknowledge()
	}
	d.Run(cmd)
}

// Acknowledge keeps all that waits.
func (d *Desk) Acknowledge() {
	d.T.Helper()
	if len(d.Queue) == 0 {
		return
	}
	var kept []entry.Entry
	for _, e := range d.Queue {
		if d.Stamps {
			e.Kept, e.Boot, e.Mono = entry.Wall(d.At.Wall), d.At.Boot, d.At.Mono
		}
		kept = append(kept, d.Book.keep(e))
	}
	d.Queue = nil
	d.Send(tui.Kept{Entries: kept})
}

func (d *Desk) Run(cmd tea.Cmd) {
	d.T.Helper()
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.BatchMsg:
		for _, c := range msg {
			d.Run(c)
		}
	case tea.QuitMsg:
		d.Quit = true
	default:
		if d.Rounds > 0 && d.round == d.Rounds {
			return
		}
		d.round++
		d.Send(msg)
		d.round--
	}
}

// Wait lets time pass, with a tick at its end.
func (d *Desk) Wait(by time.Duration) {
	d.T.Helper()
	d.At = Later(d.At, by)
	d.Send(tui.Tick{At: d.At})
}

// Named are the keys that are no characters.
var Named = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"backspace": tea.KeyBackspace, "ctrl+c": tea.KeyCtrlC, "home": tea.KeyHome, "end": tea.KeyEnd,
	"pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "space": tea.KeySpace, "tab": tea.KeyTab, "f2": tea.KeyF2,
}

func KeyMsg(k string) tea.KeyMsg {
	switch t, ok := Named[k]; {
	case ok && k == "space":
		return tea.KeyMsg{Type: t, Runes: []rune{' '}}
	case ok:
		return tea.KeyMsg{Type: t}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}

// Press presses keys one after the other, half a second apart.
func (d *Desk) Press(keys ...string) {
	d.T.Helper()
	for _, k := range keys {
		d.At = Later(d.At, 500*time.Millisecond)
		d.Send(tui.Pressed{Key: KeyMsg(k), At: d.At})
	}
}

// Fast presses keys so soon after each other.
func (d *Desk) Fast(gap time.Duration, keys ...string) {
	d.T.Helper()
	for _, k := range keys {
		d.At = Later(d.At, gap)
		d.Send(tui.Pressed{Key: KeyMsg(k), At: d.At})
	}
}

// Script presses the keys of a script: one for each character, enter for a line break, by name what stands in angle brackets.
func (d *Desk) Script(script string) {
	d.T.Helper()
	for script != "" {
		if name, rest, named := strings.Cut(script, ">"); named && script[0] == '<' {
			d.Press(name[1:])
			script = rest
			continue
		}
		c, size := utf8.DecodeRuneInString(script)
		script = script[size:]
		if c == '\n' {
			d.Press("enter")
			continue
		}
		d.Press(string(c))
	}
}

// Write types a text, one key for each character.
func (d *Desk) Write(text string) {
	d.T.Helper()
	for _, c := range text {
		d.Press(string(c))
	}
}

// Practising is a desk with a practice smelt lit and the main burn begun.
func Practising(t *testing.T) *Desk {
	t.Helper()
	d := Sit(t)
	d.Press("p")
	d.Press("o", "m")
	return d
}

// Acts are the events of the open smelt that a person made with a key of its
// own.
func (d *Desk) Acts() []entry.Event {
	var evs []entry.Event
	for _, e := range d.M.Shared().Smelt.Entries() {
		switch e.Kind() {
		case "", entry.KindKeys, entry.KindTestimony, entry.KindCaution:
		default:
			evs = append(evs, e.Event)
		}
	}
	return evs
}

// Last is the last act.
func (d *Desk) Last() entry.Event {
	d.T.Helper()
	evs := d.Acts()
	if len(evs) == 0 {
		d.T.Fatal("no act yet")
	}
	return evs[len(evs)-1]
}

// Answers fails unless the answer holds a text.
func (d *Desk) Answers(text string) {
	d.T.Helper()
	if said, _ := d.M.Answer(); !strings.Contains(said, text) {
		d.T.Errorf("answer %q, want it to say %q", said, text)
	}
}

// Picture is what is shown, without colours.
func (d *Desk) Picture() string { return d.M.Picture() }

// Shows fails unless the screen holds a text.
func (d *Desk) Shows(text string) {
	d.T.Helper()
	if !strings.Contains(d.Picture(), text) {
		d.T.Errorf("the screen does not show %q:\n%s", text, d.Picture())
	}
}

// Far tells whether Fire shows its far view.
func (d *Desk) Far() bool { return d.M.Screen(screen.Fire).(fire.Screen).IsFar() }

// InventedDemo is a small invented smelt to look at.
func InventedDemo() ([]entry.Entry, error) {
	s := screen.Starters()[0]
	s.Furnace.Name = "Nowhere Mill"
	at := func(i int, after time.Duration, ev entry.Event) entry.Entry {
		return entry.Entry{
			Version: 1, Stream: "2026-01-01-nowheremill-a", Seq: uint64(i), Happened: Noon.Wall.Add(after - 24*time.Hour),
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
