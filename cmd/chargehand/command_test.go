package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"chargehand/model/entry"
)

// today is an invented day on which the subcommands of the tests run.
var today = time.Date(2026, 5, 9, 12, 0, 0, 0, time.FixedZone("", 2*3600))

// place is a folder with a book, and the subcommands run on it in this process.
type place struct {
	t   *testing.T
	dir string
}

func newHouse(t *testing.T) place { return place{t, t.TempDir()} }

func (h place) book() string { return filepath.Join(h.dir, "book.db") }

// run runs a subcommand, which has to go well, and gives what it wrote.
func (h place) run(args ...string) string {
	h.t.Helper()
	var out, complaint bytes.Buffer
	code := run(append([]string{"--book", h.book()}, args...), world{
		out: &out, err: &complaint, getenv: func(string) string { return "" },
		clock: func() entry.Stamp { return entry.Stamp{Wall: today} },
	})
	if code != exitWell {
		h.t.Fatalf("%v gave %d: %s", args, code, complaint.String())
	}
	return out.String()
}

// imported imports a file and gives the name of the smelt.
func (h place) imported(file string, args ...string) string {
	h.t.Helper()
	var said struct{ Smelt string }
	h.decode(h.run(append([]string{"import", "--json", file}, args...)...), &said)
	return said.Smelt
}

// state is what state says of a smelt.
func (h place) state(args ...string) stateJSON {
	h.t.Helper()
	var s stateJSON
	h.decode(h.run(append([]string{"state", "--json"}, args...)...), &s)
	return s
}

// entries reads a smelt's entries as they stand in the book.
func (h place) entries(id string) []entry.Entry {
	h.t.Helper()
	return readSmelt(h.t, h.book(), id)
}

// readSmelt reads a smelt's entries as a second program does.
func readSmelt(t testing.TB, book, id string) []entry.Entry {
	t.Helper()
	r, err := reader(world{}, common{book: book})
	if err != nil {
		t.Fatal(err)
	}
	es, err := r.Entries(id)
	if err != nil {
		t.Fatal(err)
	}
	return es
}

func (h place) decode(text string, into any) {
	h.t.Helper()
	if err := json.Unmarshal([]byte(text), into); err != nil {
		h.t.Fatalf("%v in %s", err, text)
	}
}

// write puts a file into the folder.
func (h place) write(name, text string) string {
	h.t.Helper()
	path := filepath.Join(h.dir, name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		h.t.Fatal(err)
	}
	return path
}
