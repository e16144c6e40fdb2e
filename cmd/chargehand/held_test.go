//go:build unix

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// While one window has the book, a second says so in one line, and so do the
// subcommands that need it; those that only read read. When the first is gone,
// however it went, all of them work.
func TestASecondWindow(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	log := filepath.Join(dir, "log.csv")
	if err := os.WriteFile(log, []byte("clock,event,charcoal_kg\n10:00,charge,1.8\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s := openTerminal(t, dir, 120, 36)
	s.lights()
	s.Does("c", "charge 1")
	s.allKept()
	id := onlySmelt(t, dir)
	for _, args := range [][]string{{"check"}, {"rescue"}, {"import", log}} {
		out, complaint, code := said(t, dir, args...)
		if code != exitFailed || !strings.Contains(complaint, bookIn(dir)+" is in use") || !strings.Contains(complaint, "another window") || strings.Count(complaint, "\n") != 1 {
			t.Errorf("%v of a held book: exit code %d, %s%s", args, code, out, complaint)
		}
	}
	second := openTerminal(t, dir, 120, 36)
	if code := second.Exit(); code != exitFailed || !strings.Contains(strings.ReplaceAll(second.Screen(), "\n", ""), "is in use") {
		t.Errorf("a second window: exit code %d\n%s", code, second.Screen())
	}
	for _, args := range [][]string{{"smelts"}, {"state", id}, {"export", id}} {
		if out := says(t, dir, args...); !strings.Contains(out, "charge") && !strings.Contains(out, id) {
			t.Errorf("%v of a held book: %s", args, out)
		}
	}
	s.Kill()
	third := openTerminal(t, dir, 120, 36)
	third.Shows("go on with", id)
	third.Kill()
	says(t, dir, "rescue")
	says(t, dir, "check")
}

// The book's folder is removed under the running program: it says so at once,
// the next key acts, and what the screen calls kept is found afterwards.
func TestFolderRemovedUnderTheScreen(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 160, 40)
	s.lights()
	s.Does("c", "charge 1")
	s.allKept()
	id := onlySmelt(t, dir)
	if err := os.RemoveAll(filepath.Dir(bookIn(dir))); err != nil {
		t.Fatal(err)
	}
	// What the program writes by itself may have met it before the key did, and the key puts
	// the line away: what points to the message stays until it was read.
	s.Does("s", "READ: 1 message")
	s.Press("vb")
	s.Until("the message in full", func(screen string) bool {
		return strings.Contains(strings.Join(strings.Fields(screen), " "), "a new book took over")
	})
	s.Does("vf", "c charge ")
	s.Does("c", "charge 2", "kept")
	n := claimed(s.Screen())
	s.Signal(os.Interrupt)
	if code := s.Exit(); code != exitWell {
		t.Errorf("exit code %d\n%s", code, s.Screen())
	}
	if left := strings.ReplaceAll(s.Screen(), "\n", ""); !strings.Contains(left, "took over") {
		t.Errorf("on leaving it says %s", left)
	}
	if entries := readSmelt(t, bookIn(dir), id); n < 3 || len(entries) < n {
		t.Errorf("the screen had said kept %d, %d are there", n, len(entries))
	}
	mended(t, dir)
	if entries := readSmelt(t, bookIn(dir), id); len(entries) < n {
		t.Errorf("afterwards %d of %d are there", len(entries), n)
	}
	says(t, dir, "check")
}
