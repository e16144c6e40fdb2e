// Package logcsvtest gives tests the ten published logs of testdata/logs, each of which names its source at its head.
package logcsvtest

import (
	"os"
	"path/filepath"
	"testing"

	"chargehand/model/entry"
	"chargehand/persist/logcsv"
)

// Paths are the logs' files by their numbers, "03".
func Paths(t testing.TB) map[string]string {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(root(t), "testdata", "logs", "*.csv"))
	if err != nil || len(found) != 10 {
		t.Fatalf("%d published logs, want 10 (%v)", len(found), err)
	}
	paths := map[string]string{}
	for _, p := range found {
		paths[filepath.Base(p)[:2]] = p
	}
	return paths
}

// Read reads the log of a number.
func Read(t testing.TB, number string, opt logcsv.Options) []entry.Entry {
	t.Helper()
	path, ok := Paths(t)[number]
	if !ok {
		t.Fatalf("no published log has the number %q", number)
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }() // only read
	opt.Name = filepath.Base(path)
	entries, err := logcsv.Read(f, opt)
	if err != nil {
		t.Fatal(err)
	}
	return entries
}

// All reads all of them, by their numbers.
func All(t testing.TB, opt logcsv.Options) map[string][]entry.Entry {
	t.Helper()
	logs := map[string][]entry.Entry{}
	for number := range Paths(t) {
		logs[number] = Read(t, number, opt)
	}
	return logs
}

// root is the top of the module, above the package that is tested.
func root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	for ; err == nil; dir = filepath.Dir(dir) {
		if _, missing := os.Stat(filepath.Join(dir, "go.mod")); missing == nil {
			return dir
		}
		if dir == filepath.Dir(dir) {
			break
		}
	}
	t.Fatalf("no module above here (%v)", err)
	return ""
}
