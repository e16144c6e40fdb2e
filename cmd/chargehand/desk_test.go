package main

import (
	"slices"
	"sync"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/persist"
	"chargehand/tui"
)

// desk is a person at the keys: the root model, a clock that stands until it is
// moved, and a book on the disk. It has no terminal.
type desk struct {
	t     testing.TB
	path  string // of the book
	model tui.Model
	book  *persist.Book
	acks  chan persist.Ack

	mu sync.Mutex // the book's writer reads the clock too
	at entry.Stamp
}

// sit opens the program on a book, at a time.
func sit(t testing.TB, path string, at entry.Stamp) *desk {
	t.Helper()
	d := &desk{t: t, path: path, at: at}
	d.open()
	return d
}

func (d *desk) open() {
	d.t.Helper()
	acks := make(chan persist.Ack, 1024)
	book, err := persist.Open(d.path, persist.Options{
		Clock: d.clock, Summarise: shelf.Of, Acked: func(a persist.Ack) { acks <- a },
	})
	if err != nil {
		d.t.Fatal(err)
	}
	d.t.Cleanup(func() { _ = book.Close() })
	d.book, d.acks = book, acks
	d.model = tui.New(tui.Config{Store: shelfStore{book}, Start: d.clock(), NewUID: newUID})
	d.send(tea.WindowSizeMsg{Width: 120, Height: 36})
	d.run(d.model.Init())
}

// leave ends the program as a hang-up does, and closes the book.
func (d *desk) leave() {
	d.t.Helper()
	d.send(tui.Leave{})
	if err := d.book.Close(); err != nil {
		d.t.Fatal(err)
	}
}

// reboot ends the program; the machine starts anew, and the program on it.
func (d *desk) reboot(boot string) {
	d.t.Helper()
	d.leave()
	d.mu.Lock()
	d.at.Boot, d.at.Mono = boot, time.Minute
	d.mu.Unlock()
	d.open()
}

func (d *desk) clock() entry.Stamp {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.at
}

// wait lets time pass to a time of the day, and the program look at the clock.
func (d *desk) wait(until time.Time) {
	d.t.Helper()
	d.mu.Lock()
	by := until.Sub(d.at.Wall)
	d.at.Wall, d.at.Mono = until, d.at.Mono+by
	d.mu.Unlock()
	if by < 0 {
		d.t.Fatalf("%v is over", until)
	}
	d.send(tui.Tick{At: d.clock()})
}

// press presses named keys, one after the other.
func (d *desk) press(keys ...string) {
	d.t.Helper()
	for _, k := range keys {
		d.send(tui.Pressed{Key: keyOf(k), At: d.clock()})
	}
}

// write presses a key for each letter.
func (d *desk) write(text string) {
	d.t.Helper()
	for _, r := range text {
		d.press(string(r))
	}
}

// send gives a message to the root, the entries that it leads to to the book,
// and what the book says about them to the root again.
func (d *desk) send(msg tea.Msg) {
	d.t.Helper()
	next, entries, cmd := d.model.Update(msg)
	d.model = next
	if len(entries) > 0 {
		d.book.Keep(entries...)
		for left := len(entries); left > 0; {
			select {
			case a := <-d.acks:
				if a.Err != nil {
					d.t.Fatal(a.Err)
				}
				left -= len(a.Entries)
				d.send(keptOf(a))
			case <-time.After(20 * time.Second):
				d.t.Fatalf("%d entries were never kept", left)
			}
		}
	}
	d.run(cmd)
}

// run does what a message leads to outside the root.
func (d *desk) run(cmd tea.Cmd) {
	d.t.Helper()
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil, tea.QuitMsg:
	case tea.BatchMsg:
		for _, c := range msg {
			d.run(c)
		}
	default:
		d.send(msg)
	}
}

// smelt is the only smelt in the book.
func (d *desk) smelt() []entry.Entry {
	d.t.Helper()
	streams, err := d.book.Streams()
	if err != nil {
		d.t.Fatal(err)
	}
	streams = slices.DeleteFunc(streams, func(s string) bool { return s == entry.House })
	if len(streams) != 1 {
		d.t.Fatalf("the book holds the smelts %v, want one", streams)
	}
	entries, err := d.book.Entries(streams[0])
	if err != nil {
		d.t.Fatal(err)
	}
	return entries
}

// keyOf is the press of a named key.
func keyOf(name string) tea.KeyMsg {
	for _, k := range []tea.KeyType{tea.KeyEnter, tea.KeyEsc, tea.KeyUp, tea.KeyDown, tea.KeyLeft, tea.KeyRight} {
		if m := (tea.KeyMsg{Type: k}); m.String() == name {
			return m
		}
	}
	if name == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}
