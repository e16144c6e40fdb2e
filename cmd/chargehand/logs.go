package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/disk"
	"chargehand/persist/logcsv"
	"chargehand/persist/mapcsv"
	"chargehand/tui"
	"chargehand/tui/screen"
)

// fileLogs are the logs of other people on this machine, as the screen takes them.
type fileLogs struct {
	w    world
	book *persist.Book
}

// mostFiles is how many files of a folder are shown.
const mostFiles = 2000

// Folder lists what of a folder may be a log, or can be gone to: folders first, then files
// as a spreadsheet saves a table; hidden ones are left out.
func (l fileLogs) Folder(path string) (screen.Folder, error) {
	if path == "" {
		path = "."
	}
	path, err := filepath.Abs(path)
	if err != nil {
		return screen.Folder{}, errors.New(words.CannotRead(path, err))
	}
	list, err := os.ReadDir(path)
	if err != nil {
		return screen.Folder{}, errors.New(words.CannotRead(path, err))
	}
	f := screen.Folder{Path: path}
	if above := filepath.Dir(path); above != path {
		f.Above = above
	}
	for _, one := range list {
		name := one.Name()
		at := screen.LogFile{Name: name, Path: filepath.Join(path, name)}
		info, err := os.Stat(at.Path) // what a link leads to
		if err != nil || strings.HasPrefix(name, ".") || len(f.Files) == mostFiles {
			continue
		}
		at.Folder, at.Bytes, at.Changed = info.IsDir(), info.Size(), info.ModTime()
		if at.Folder || info.Mode().IsRegular() && slices.Contains([]string{".csv", ".tsv", ".txt"}, strings.ToLower(filepath.Ext(name))) {
			f.Files = append(f.Files, at)
		}
	}
	slices.SortStableFunc(f.Files, func(a, b screen.LogFile) int {
		switch {
		case a.Folder && !b.Folder:
			return -1
		case b.Folder && !a.Folder:
			return 1
		}
		return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
	})
	return f, nil
}

// Open reads a file whole; what is read of it and kept is what was read now.
func (l fileLogs) Open(path string) (screen.Sheet, error) {
	if rest, home := strings.CutPrefix(path, "~/"); home {
		path = filepath.Join(l.w.getenv("HOME"), rest)
	}
	f, err := disk.Open(path)
	if err != nil {
		return screen.Sheet{}, errors.New(words.CannotRead(path, err))
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, logcsv.MaxFile+1))
	if err != nil {
		return screen.Sheet{}, errors.New(words.CannotRead(path, err))
	}
	name := filepath.Base(path)
	sheet, err := mapcsv.Look(bytes.NewReader(text), name)
	if err != nil {
		return screen.Sheet{}, err
	}
	read := func(m entry.Mapping, begin int) (mapcsv.Table, error) {
		if err := columns.Check(m.Columns); err != nil {
			return mapcsv.Table{}, err
		}
		return mapcsv.Read(bytes.NewReader(text), name, m.Columns, mapcsv.Options{Begin: begin, BlankIsNone: m.BlankIsNone})
	}
	return screen.Sheet{
		Name: name, Heads: sheet.Heads, Rows: sheet.Rows, DecimalComma: sheet.DecimalComma,
		Read: func(m entry.Mapping) screen.LogRead {
			t, err := read(m, 0)
			if err != nil {
				return screen.LogRead{Err: err}
			}
			es, err := logcsv.Read(bytes.NewReader(t.CSV), logcsv.Options{Name: name})
			if err != nil {
				return screen.LogRead{Table: t.Table, Err: err}
			}
			return screen.LogRead{Table: t.Table, Smelt: shelf.Of(name, es)}
		},
		Take: func(m entry.Mapping, as screen.TakenAs) (string, int, error) {
			t, err := read(m, as.Begin)
			if err != nil {
				return "", 0, err
			}
			return takeLog(l.w, l.book, bytes.NewReader(t.CSV), name, as)
		},
	}, nil
}

// takeLog keeps a log of ours whole, or not at all.
func takeLog(w world, book *persist.Book, in io.Reader, name string, as screen.TakenAs) (string, int, error) {
	built, err := furnaceOf(as.Furnace, book, w.clock().Wall)
	if err != nil {
		return "", 0, err
	}
	opt := logcsv.Options{Name: name, Date: as.Day, Furnace: built, Measures: as.Measures, UID: newUID(), Imported: w.clock().Wall, Location: w.clock().Wall.Location()}
	opt.Stream = "unnamed" // the file says the day, and the day names the smelt
	entries, err := logcsv.Read(in, opt)
	if err != nil {
		return "", 0, err
	}
	streams, err := book.Streams()
	if err != nil {
		return "", 0, err
	}
	id := tui.SmeltID(dayOf(entries), built.Name, streams)
	for i := range entries {
		entries[i].Stream = id
	}
	kept, err := book.Import(id, entries)
	return id, len(kept), err
}
