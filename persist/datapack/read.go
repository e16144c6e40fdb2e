package datapack

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/solve"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/twin"
)

// Package is what was read of a folder.
type Package struct {
	Journal persist.Journal // the smelt
	Book    string          // uid of the book that it is from; "" when it does not say
	House   []entry.Entry   // what of that book's house the smelt leans on
	Doubts  []string        // where a table does not say what the entries do
}

// mostBytes bounds a file of a package: the figures of a week each minute have a
// tenth of it.
const mostBytes = 512 << 20

// Error says what is wrong with a package, and where.
type Error struct{ File, What string }

func (e *Error) Error() string { return words.BadPackage(e.File, e.What) }

// Read reads a package from its folder. A package that is not whole is refused with an
// *[Error], a line of a journal that is not with a *[persist.LineError]; that a table
// was changed is a doubt only, as the smelt does not come from it.
func Read(folder fs.FS) (Package, error) {
	text, err := readFile(folder, descriptorFile)
	if err != nil {
		return Package{}, err
	}
	var d descriptor
	if err := json.Unmarshal(text, &d); err != nil {
		return Package{}, &Error{descriptorFile, err.Error()}
	}
	if len(d.Resources) == 0 {
		return Package{}, &Error{descriptorFile, words.PackageEmpty}
	}
	p := Package{Book: d.Book}
	found := map[string][]byte{}
	for _, r := range d.Resources {
		if !local(r.Path) {
			return Package{}, &Error{descriptorFile, words.PackagePath(r.Path)}
		}
		text, err := readFile(folder, r.Path)
		if err != nil {
			return Package{}, err
		}
		found[r.Path] = text
		if sum := sha256.Sum256(text); r.Hash != "" && r.Hash != "sha256:"+hex.EncodeToString(sum[:]) {
			p.Doubts = append(p.Doubts, words.PackageChanged(r.Path))
		}
	}
	src := Source{Stream: d.Stream}
	if src.Lines, err = linesOf(found, entriesTable+".csv", true); err != nil {
		return Package{}, err
	}
	if src.House, err = linesOf(found, houseEntriesTable+".csv", false); err != nil {
		return Package{}, err
	}
	if p.Journal, err = persist.ReadJSON(bytes.NewReader(twin.Joined(src.Lines))); err != nil {
		return Package{}, err
	}
	src.Stream = p.Journal.Stream
	for i, line := range src.House {
		e, err := entry.Decode(line)
		if err == nil && e.Event != nil {
			err = entry.CheckKept(e.Event)
		}
		if err == nil && e.Stream != entry.House {
			err = errors.New(words.LineOfAnother(e.Stream, entry.House))
		}
		if err != nil {
			return Package{}, &Error{houseEntriesTable + ".csv", words.PackageRow(i+2, err)}
		}
		p.House = append(p.House, e)
	}
	p.Doubts = append(p.Doubts, differences(src, found, d.Solver)...)
	return p, nil
}

// local tells whether a path may be followed: one inside the folder that is not hidden.
func local(p string) bool {
	return p != "" && fs.ValidPath(p) && path.Clean(p) == p && !strings.Contains(p, "\\") &&
		!slices.ContainsFunc(strings.Split(p, "/"), func(part string) bool { return strings.HasPrefix(part, ".") })
}

func readFile(folder fs.FS, name string) ([]byte, error) {
	f, err := folder.Open(name)
	if err != nil {
		return nil, &Error{name, words.PackageNoFile}
	}
	defer f.Close()
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() {
		return nil, &Error{name, words.PackageNoFile}
	}
	text, err := io.ReadAll(io.LimitReader(f, mostBytes+1))
	switch {
	case err != nil:
		return nil, &Error{name, err.Error()}
	case len(text) > mostBytes:
		return nil, &Error{name, words.JournalLong(mostBytes)}
	}
	return text, nil
}

// linesOf reads the stored lines of a table of entries.
func linesOf(found map[string][]byte, name string, must bool) ([][]byte, error) {
	text, is := found[name]
	if !is {
		if must {
			return nil, &Error{name, words.PackageNoFile}
		}
		return nil, nil
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		return nil, &Error{name, err.Error()}
	}
	if len(rows) == 0 {
		return nil, &Error{name, words.PackageNoColumn(lineField)}
	}
	col := slices.Index(rows[0], lineField)
	if col < 0 {
		return nil, &Error{name, words.PackageNoColumn(lineField)}
	}
	var lines [][]byte
	for _, row := range rows[1:] {
		lines = append(lines, []byte(row[col]))
	}
	return lines, nil
}

// differences are the first row of each table that does not say what follows from the
// entries. Figures, warnings and the account are those of a version of the solver:
// of another version they may differ, and are not compared.
func differences(src Source, found map[string][]byte, solver string) (doubts []string) {
	all, err := tables(src)
	if err != nil {
		return []string{err.Error()}
	}
	if solver != solve.Version {
		doubts = append(doubts, words.PackageSolver(solver, solve.Version))
	}
	for _, t := range all {
		if solver != solve.Version && t.Name != entriesTable && t.Name != houseEntriesTable && t.Name != "lots" {
			continue
		}
		text, is := found[t.File()]
		if !is {
			doubts = append(doubts, words.PackageLacks(t.File()))
			continue
		}
		rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
		if err != nil {
			doubts = append(doubts, fmt.Sprintf("%s: %v", t.File(), err))
			continue
		}
		lacks := 0
		if len(rows) > 0 {
			if earlier := len(t.Fields) - t.Added; len(rows[0]) == earlier {
				lacks = t.Added
			}
			rows = rows[1:]
		}
		if len(rows) == len(t.Rows)-t.AddedRows {
			t.Rows = t.Rows[:len(rows)]
		}
		for i := range max(len(rows), len(t.Rows)) {
			var has, should []string
			if i < len(rows) {
				has = rows[i]
			}
			if i < len(t.Rows) {
				should = t.Rows[i][:len(t.Fields)-lacks]
			}
			if !sameRow(t, has, should) {
				doubts = append(doubts, words.PackageDiffers(t.File(), i+2, firstOff(t, has, should)))
				break
			}
		}
	}
	return doubts
}

// sameRow tells whether two rows say the same. In which words an entry is told changes with
// the program; what it says stands in its line.
func sameRow(t Table, has, should []string) bool {
	if len(has) != len(should) {
		return false
	}
	for i := range has {
		if has[i] != should[i] && t.Fields[i].Name != saysField {
			return false
		}
	}
	return true
}

// firstOff names the first column in which two rows differ, and what each says.
func firstOff(t Table, has, should []string) string {
	if has == nil || should == nil {
		return words.PackageRowCount
	}
	for i, f := range t.Fields {
		if i < len(has) && i < len(should) && has[i] != should[i] && f.Name != saysField {
			return fmt.Sprintf("%s is %q, by the entries %q", f.Name, has[i], should[i])
		}
	}
	return words.PackageRowCount
}
