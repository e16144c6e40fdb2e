// Package logs is the screen on which a log that somebody else kept is taken in: a file is
// chosen, what its columns are is guessed and put right, what was read is shown, and
// nothing is kept before a key of its own.
package logs

import (
	"maps"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/tui/draw"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Screen shows a folder, or the columns of a file that was opened.
type Screen struct {
	logs   screen.LogFiles
	asked  int  // what was asked for last
	reads  bool // and is not there yet
	folder screen.Folder
	at     int // the file at the keys
	open   *opened
}

// opened is a file with what its columns are.
type opened struct {
	sheet   screen.Sheet
	mapping entry.Mapping // the columns read, by their names
	why     []columns.Why // what each column's meaning rests on
	said    []bool        // and whether somebody said it
	at      int           // the column at the keys
	read    screen.LogRead
	known   bool // read is of this mapping
}

// Keys are the keys of the screen.
type Keys struct {
	screen.MoveKeys
	Open, Path, Above, NotRead, Blanks, Keep key.Binding
}

// Map are those keys. Enter opens a file, and on a column asks what it is.
var Map = Keys{
	MoveKeys: screen.Move,
	Open:     screen.Bind(words.DoOpenLog, "enter"),
	Keep:     screen.Bind(words.DoKeepLog, "k"),
	NotRead:  screen.Bind(words.DoNotRead, "x"),
	Blanks:   screen.Bind(words.DoBlanks, "z"),
	Path:     screen.Bind(words.DoTypePath, "p"),
	Above:    screen.Bind(words.DoFolderAbove, "left"),
}

// All of them, the weightiest first.
func (k Keys) All() []key.Binding {
	return append([]key.Binding{k.Open, k.Keep, k.NotRead, k.Blanks, k.Path, k.Above}, k.MoveKeys.All()...)
}

// New shows the folder of the program's start.
func New(logs screen.LogFiles) Screen { return Screen{logs: logs} }

func (Screen) ID() screen.ID       { return screen.Logs }
func (Screen) Keys() screen.KeyMap { return Map }

// Beside the fire it stands.
func (Screen) Beside() {}

// Listed where files can be read.
func (s Screen) Listed(*screen.Shared) string {
	if s.logs == nil {
		return ""
	}
	return words.DoLogs
}

// Hints are what can be done.
func (s Screen) Hints(*screen.Shared) []draw.KeyHint {
	k := Map
	hs := []draw.KeyHint{screen.Short(k.Open, words.ShortOpenLog), screen.Short(k.Path, words.ShortTypePath), screen.Short(k.Above, words.ShortFolderAbove)}
	if s.open != nil {
		hs = []draw.KeyHint{screen.Short(k.Keep, words.ShortKeepLog), screen.Short(k.Open, words.ShortWhatColumn), screen.Short(k.NotRead, words.ShortNotRead), screen.Short(k.Blanks, words.ShortBlanks)}
	}
	return append(hs, screen.Hints(k.Up, k.Down, screen.Global.Back, screen.Global.Views)...)
}

// Entered reads the folder anew, unless a file is open.
func (s Screen) Entered(*screen.Shared, any) (screen.Screen, screen.Effect) {
	if s.open != nil || s.logs == nil {
		return s, nil
	}
	return s.lists(s.folder.Path)
}

// Back goes from a file to the folder.
func (s Screen) Back() (screen.Screen, bool) {
	if s.open == nil {
		return s, false
	}
	s.open = nil
	return s, true
}

// What comes back from beside the screen.
type (
	listed struct {
		asked  int
		folder screen.Folder
		err    error
	}
	sheetRead struct {
		asked int
		sheet screen.Sheet
		err   error
	}
	rowsRead struct {
		asked int
		read  screen.LogRead
	}
	taken struct {
		smelt   string
		entries int
		err     error
		mapping entry.Mapping
	}
)

func (s Screen) lists(path string) (Screen, screen.Effect) {
	s.asked++
	s.reads = true
	logs, n := s.logs, s.asked
	return s, screen.Run{Cmd: func() tea.Msg {
		f, err := logs.Folder(path)
		return listed{n, f, err}
	}}
}

func (s Screen) opens(path string) (Screen, screen.Effect) {
	s.asked++
	s.reads = true
	logs, n := s.logs, s.asked
	return s, screen.Run{Cmd: func() tea.Msg {
		sheet, err := logs.Open(path)
		return sheetRead{n, sheet, err}
	}}
}

// rereads reads the open file by its mapping as it now is.
func (s Screen) rereads() (Screen, screen.Effect) {
	s.asked++
	o := *s.open
	o.known, s.open = false, &o
	n, read, mapping := s.asked, o.sheet.Read, o.mapping
	return s, screen.Run{Cmd: func() tea.Msg { return rowsRead{n, read(mapping)} }}
}

// Receive takes what was asked for, unless something else was asked since.
func (s Screen) Receive(sh *screen.Shared, msg tea.Msg) (screen.Screen, screen.Effect, bool) {
	switch msg := msg.(type) {
	case listed:
		if msg.asked != s.asked {
			return s, nil, true
		}
		s.reads = false
		if msg.err != nil {
			return s, screen.Refuse(msg.err.Error()), true
		}
		if msg.folder.Path != s.folder.Path {
			s.at = 0
		}
		s.folder = msg.folder
		return s, nil, true
	case sheetRead:
		if msg.asked != s.asked {
			return s, nil, true
		}
		s.reads = false
		if msg.err != nil {
			return s, screen.Refuse(msg.err.Error()), true
		}
		s.open = begun(sh, msg.sheet)
		next, e := s.rereads()
		return next, e, true
	case rowsRead:
		if msg.asked == s.asked && s.open != nil {
			o := *s.open
			o.read, o.known = msg.read, true
			s.open = &o
		}
		return s, nil, true
	case taken:
		s.reads = false
		if msg.err != nil {
			return s, screen.Refuse(msg.err.Error()), true
		}
		s.open = nil
		var kept screen.Each
		if msg.mapping.Name != "" {
			kept = append(kept, screen.House{{Event: msg.mapping}})
		}
		return s, append(kept, screen.Go{To: screen.Shelf}, screen.Said(words.LogTaken(msg.smelt, msg.entries))), true
	}
	return s, nil, false
}

// begun is a sheet with its columns as kept from a like one, else as guessed.
func begun(sh *screen.Shared, sheet screen.Sheet) *opened {
	o := &opened{sheet: sheet, why: make([]columns.Why, len(sheet.Heads)), said: make([]bool, len(sheet.Heads))}
	if sh.House != nil {
		if kept, ok := columns.Kept(sheet.Heads, sh.House().Mappings); ok {
			o.mapping = entry.Mapping{Name: kept.Name, BlankIsNone: kept.BlankIsNone, Columns: map[string]entry.Mapped{}}
			for i := range o.why {
				o.why[i] = columns.AsKept
			}
			for theirs, to := range kept.Columns {
				i := slices.IndexFunc(sheet.Heads, func(h string) bool { return strings.EqualFold(h, theirs) })
				o.mapping.Columns[sheet.Heads[i]] = to
			}
			return o
		}
	}
	gs := columns.Guesses(sheet.Heads, sheet.Rows, sheet.DecimalComma)
	o.mapping.Columns = columns.Mapping(sheet.Heads, gs)
	for i, g := range gs {
		o.why[i] = g.Why
	}
	return o
}

// Update takes a key.
func (s Screen) Update(sh *screen.Shared, p screen.Pressed) (screen.Screen, screen.Effect) {
	t := screen.TypedOf(p.Key)
	if s.open != nil {
		return s.column(sh, t)
	}
	if to, ok := Map.Moved(t, s.at, len(s.folder.Files), fileRows(sh)); ok {
		s.at = max(to, 0)
		return s, nil
	}
	switch k := Map; {
	case key.Matches(t, k.Path):
		return s, s.path()
	case key.Matches(t, k.Above) && s.folder.Above == "":
		return s, screen.Refuse(words.NothingAbove)
	case key.Matches(t, k.Above):
		return s.lists(s.folder.Above)
	case key.Matches(t, k.Keep, k.NotRead, k.Blanks):
		return s, screen.Refuse(words.OpenALogFirst)
	case !key.Matches(t, k.Open):
		return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
	case len(s.folder.Files) == 0:
		return s, screen.Refuse(words.NoLogHere)
	}
	f := s.folder.Files[min(s.at, len(s.folder.Files)-1)]
	if f.Folder {
		return s.lists(f.Path)
	}
	return s.opens(f.Path)
}

// path asks for a file by its path.
func (s Screen) path() screen.Effect {
	return screen.AskWords(words.PathOfLog, "", func(path string) screen.Effect {
		next, e := s.opens(path)
		return screen.Each{screen.Put{Screen: next}, e}
	})
}

// column takes a key while the columns of a file are shown.
func (s Screen) column(sh *screen.Shared, t screen.Typed) (screen.Screen, screen.Effect) {
	o := *s.open
	n := len(o.sheet.Heads)
	if to, ok := Map.Moved(t, o.at, n, columnRows(sh)); ok {
		o.at = max(to, 0)
		s.open = &o
		return s, nil
	}
	switch k := Map; {
	case key.Matches(t, k.Open):
		return s, s.meaning()
	case key.Matches(t, k.NotRead):
		next, e := s.set(entry.Mapped{})
		return next, e
	case key.Matches(t, k.Blanks):
		o.mapping.BlankIsNone = !o.mapping.BlankIsNone
		s.open = &o
		next, e := s.rereads()
		return next, screen.Each{e, screen.Said(words.BlanksAre(o.mapping.BlankIsNone))}
	case key.Matches(t, k.Keep):
		return s, s.keeps()
	case key.Matches(t, k.Path, k.Above):
		return s, screen.Refuse(words.LeaveLogFirst)
	}
	return s, screen.Refuse(words.NoAct(screen.KeyLabel(string(t))))
}

// meaning asks what the column at the keys is, and in which unit.
func (s Screen) meaning() screen.Effect {
	all := columns.All()
	head := s.open.sheet.Heads[s.open.at]
	return screen.Choose(words.WhatIsColumn(head), screen.Lettered('v', len(all)+1, func(i int) (string, func(*screen.Shared) screen.Effect) {
		if i == len(all) {
			return words.NotReadLine, func(*screen.Shared) screen.Effect { return s.puts(entry.Mapped{}) }
		}
		c := all[i]
		return words.ColumnIs(c.Name), func(*screen.Shared) screen.Effect {
			if len(c.Units) == 1 {
				return s.puts(entry.Mapped{Ours: string(c.Name), Unit: c.Units[0].Name})
			}
			return screen.Choose(words.InWhichUnit(head), screen.Lettered('v', len(c.Units), func(j int) (string, func(*screen.Shared) screen.Effect) {
				u := c.Units[j].Name
				return words.ColumnUnit(c.Name, u), func(*screen.Shared) screen.Effect {
					return s.puts(entry.Mapped{Ours: string(c.Name), Unit: u})
				}
			})...)
		}
	})...)
}

// puts sets the meaning from a list.
func (s Screen) puts(to entry.Mapped) screen.Effect {
	next, e := s.set(to)
	return screen.Each{screen.Put{Screen: next}, e}
}

// set sets what the column at the keys is; another column that was the same is not read
// any more, but that there may be several notes.
func (s Screen) set(to entry.Mapped) (Screen, screen.Effect) {
	o := *s.open
	o.mapping.Columns, o.said = maps.Clone(o.mapping.Columns), slices.Clone(o.said)
	head := o.sheet.Heads[o.at]
	told := words.ColumnSet(head, columns.Meaning(to.Ours), to.Unit)
	for i, other := range o.sheet.Heads {
		was, ok := o.mapping.Columns[other]
		if i != o.at && ok && was.Ours == to.Ours && to.Ours != "" && to.Ours != string(columns.Note) {
			delete(o.mapping.Columns, other)
			o.said[i] = true
			told = words.Both(told, words.ColumnGivesWay(other))
		}
	}
	if delete(o.mapping.Columns, head); to.Ours != "" {
		o.mapping.Columns[head] = to
	}
	o.said[o.at] = true
	s.open = &o
	s, e := s.rereads()
	return s, screen.Each{e, screen.Said(told)}
}
