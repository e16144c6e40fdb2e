package logs_test

import (
	"errors"
	"strings"
	"testing"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/desk"
	"chargehand/tui/logs"
	"chargehand/tui/screen"
)

// files are a folder in memory with one sheet in it.
type files struct {
	kept  []entry.Mapping
	as    []screen.TakenAs
	fails error
}

func (f *files) Folder(path string) (screen.Folder, error) {
	if path == "/above" {
		return screen.Folder{Path: "/above", Files: []screen.LogFile{{Name: "here", Path: "/above/here", Folder: true}}}, nil
	}
	return screen.Folder{Path: "/above/here", Above: "/above", Files: []screen.LogFile{{Name: "theirs.csv", Path: "/above/here/theirs.csv", Bytes: 1200}}}, nil
}

func (f *files) Open(path string) (screen.Sheet, error) {
	if !strings.HasSuffix(path, "theirs.csv") {
		return screen.Sheet{}, errors.New(path + " is not there")
	}
	return screen.Sheet{
		Name: "theirs.csv", Heads: []string{"Time", "Coal", "Ore lb", "Moon"}, Rows: [][]string{{"10:00", "4", "2", "full"}, {"10:12", "4", "3"}},
		Read: func(m entry.Mapping) screen.LogRead {
			if err := columns.Check(m.Columns); err != nil {
				return screen.LogRead{Err: err}
			}
			return screen.LogRead{Table: columns.Table{Rows: 2, Left: []string{"Moon"}, Timeless: []int{9}, Shown: []columns.Row{{Line: 2, Ours: []columns.Cell{{Column: "clock", Text: "10:00"}, {Column: "event", Text: "charge"}, {Column: "ore_kg", Text: "0.907"}}}}}}
		},
		Take: func(m entry.Mapping, as screen.TakenAs) (string, int, error) {
			f.kept, f.as = append(f.kept, m), append(f.as, as)
			return "2026-05-09-meadow-a", 12, f.fails
		},
	}, nil
}

// person sits at the screen alone.
type person struct {
	t    *testing.T
	s    screen.Screen
	sh   *screen.Shared
	ask  screen.Dialog
	said []string
	went screen.ID
	kept []entry.Event
}

func sit(t *testing.T, f *files, mappings map[string]entry.Mapping) *person {
	p := &person{t: t, s: logs.New(f), sh: &screen.Shared{W: 80, H: 24}}
	p.sh.House = func() house.State { return house.State{Mappings: mappings} }
	s, e := p.s.(screen.Enterer).Entered(p.sh, nil)
	p.s = s
	p.does(e)
	return p
}

func (p *person) does(e screen.Effect) {
	for _, one := range screen.Flat(e) {
		switch one := one.(type) {
		case screen.Run:
			next, e, taken := p.s.(screen.Receiver).Receive(p.sh, one.Cmd())
			if !taken {
				p.t.Fatal("what came back is nobody's")
			}
			p.s = next
			p.does(e)
		case screen.Put:
			p.s = one.Screen
		case screen.Ask:
			p.ask = one.Dialog
		case screen.Refuse:
			p.said = append(p.said, string(one))
		case screen.Say:
			p.said = append(p.said, one(p.sh))
		case screen.Go:
			p.went = one.To
		case screen.House:
			for _, a := range one {
				p.kept = append(p.kept, a.Event)
			}
		}
	}
}

func (p *person) press(keys ...string) {
	p.t.Helper()
	for _, k := range keys {
		pressed := screen.Pressed{Key: desk.KeyMsg(k)}
		var e screen.Effect
		if p.ask != nil {
			p.ask, e = p.ask.Update(p.sh, pressed)
		} else {
			p.s, e = p.s.Update(p.sh, pressed)
		}
		p.does(e)
	}
}

func (p *person) shows(words ...string) {
	p.t.Helper()
	g := p.sh.Theme.Grid(p.sh.W, p.sh.H)
	p.s.Paint(g, p.sh)
	for _, w := range words {
		if !strings.Contains(g.String(), w) {
			p.t.Errorf("%q is not shown:\n%s", w, g.String())
		}
	}
}

func (p *person) answers(word string) {
	p.t.Helper()
	if len(p.said) == 0 || !strings.Contains(p.said[len(p.said)-1], word) {
		p.t.Errorf("it says %q, not %q", p.said, word)
	}
}

// A file is opened, its columns are shown as guessed, put right, and kept by one key with
// what the file lacks.
func TestALogIsTakenIn(t *testing.T) {
	f := &files{}
	p := sit(t, f, nil)
	p.shows("theirs.csv", "1 kB")
	p.press("left")
	p.shows("here/", "folder")
	p.press("left")
	p.answers("no folder above")
	p.press("enter", "k")
	p.answers("enter opens a file first")
	p.press("enter")
	p.shows("2 rows", "time of day", "charcoal, kg", "ore, lb", "by its name", "not guessed", "line 2  10:00", "line 9 has no time", "not read: Moon")
	p.press("down", "enter", "h", "p") // charcoal, weighed; in pounds
	p.shows("charcoal, lb", "as you said")
	p.press("down", "enter", "h", "p")
	p.answers("Coal was that and is not read now")
	p.press("enter", "o", "p", "up", "enter", "h", "p", "z")
	p.answers("none")
	if len(f.kept) != 0 {
		t.Fatal("kept before anybody said so")
	}
	p.press("k", "m", "enter", "x", "enter")
	p.answers("2026-05-09")
	p.press("backspace", "enter", "t", "h", "enter")
	if p.went != screen.Shelf || len(f.kept) != 1 || f.as[0].Furnace != "m" || !f.as[0].Day.IsZero() {
		t.Fatalf("%v %+v %+v", p.went, f.kept, f.as)
	}
	m := f.kept[0]
	if len(m.Columns) != 3 || m.Columns["Coal"] != (entry.Mapped{Ours: "charcoal", Unit: "lb"}) || !m.BlankIsNone || m.Name != "th" {
		t.Errorf("%+v", m)
	}
	if len(p.kept) != 1 || p.kept[0].(entry.Mapping).Name != "th" {
		t.Errorf("the columns are kept as %+v", p.kept)
	}
	p.answers("taken in, 12 entries")
}

// Columns kept of an earlier log are taken for a like one, and without a time nothing is
// kept.
func TestColumnsAsKept(t *testing.T) {
	f := &files{}
	p := sit(t, f, map[string]entry.Mapping{"theirs": {Name: "theirs", Columns: map[string]entry.Mapped{"time": {Ours: "clock"}, "Coal": {Ours: "measures"}}}})
	p.press("enter")
	p.shows("buckets of charcoal", "as last time")
	p.press("x")
	p.shows("No column is the time yet")
	p.press("k")
	p.answers("nothing kept: No column is the time yet")
	p.press("enter", "t", "m") // minutes from the start
	p.shows("minutes from start")
	p.press("k", "enter", "enter", "9", ":", "3", "0", "enter", "1", ".", "8", "enter", "enter")
	if len(f.as) != 1 || f.as[0].Begin != 570 || len(f.as[0].Measures) != 1 || float64(f.as[0].Measures[0].Mass.Value) != 1.8 {
		t.Errorf("%+v", f.as)
	}
	if f.kept[0].Name != "theirs" {
		t.Errorf("%+v", f.kept)
	}
}

// A file that cannot be read, and one that cannot be kept, are told, and the screen stays.
func TestALogThatIsRefused(t *testing.T) {
	f := &files{fails: errors.New("it is in the book already")}
	p := sit(t, f, nil)
	p.press("p", "n", "o", "enter")
	p.answers("no is not there")
	p.press("enter", "k", "enter", "enter", "enter")
	p.answers("it is in the book already")
	if p.went != "" || len(p.kept) != 0 {
		t.Error("it went on")
	}
	p.shows("time of day")
	s, back := p.s.(screen.Backer).Back()
	if p.s = s; !back {
		t.Error("no way back to the folder")
	}
	p.shows("theirs.csv")
}
