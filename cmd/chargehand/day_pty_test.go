//go:build unix

package main

import (
	"strings"
	"syscall"
	"testing"
)

// A piece of the day on a true terminal, with the clock on the wall: slag shuts
// the tuyere, the warning stands near and far, and it stands still after the
// power failed and came back, as seen as it was.
func TestBlockedTuyereOnATerminal(t *testing.T) {
	if testing.Short() {
		t.Skip("not with -short: waits for the rules, which look every ten seconds")
	}
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.lights()
	s.Shows("carbon monoxide")
	s.Does("f", "fill: 1 bucket")
	s.Does("o", "main burn begins")
	s.Does("m", "main burn begins · kept")
	s.Does("b", "blast")
	s.Does("700\r", "blast, 700 l/min · kept")
	s.Does("c", "charge 1: 1 bucket")
	s.Does("l", "look at what")
	s.Does("c", "list closed, nothing done; charge 2: 1 bucket")
	s.Does("u", "crossed out: charge 2")
	s.Does("l", "look at what")
	s.Does("p", "peep is")
	s.Does("d", "peep: dark · kept")
	s.Shows("ACT", "tuyere blocked: peep dark, no blast goes in", "rod the tuyere, then look again; if it stays dark, tap")
	s.Does(" ", "rod the tuyere, then look again; if it stays dark, tap")
	s.Does(" ", "tuyere blocked: peep dark")
	s.Does("a", "seen: tuyere blocked · kept")
	before := s.allKept()
	s.Kill()

	again := openTerminal(t, dir, 120, 36)
	again.Shows("go on with")
	again.Does("g", "tuyere blocked: peep dark, no blast goes in")
	if strings.Contains(again.Screen(), "a seen") {
		t.Errorf("a warning that was seen asks again:\n%s", again.Screen())
	}
	again.Signal(syscall.SIGTERM)
	if code := again.Exit(); code != exitWell {
		t.Errorf("exit code %d", code)
	}
	entries := readSmelt(t, bookIn(dir), onlySmelt(t, dir))
	if len(entries) < before {
		t.Errorf("%d entries were called kept, %d are there", before, len(entries))
	}
	shows := shown(entries)
	if n := strings.Count(strings.Join(shows, "\n"), "raised tuyere blocked"); n != 1 {
		t.Errorf("the blocked tuyere was told %d times: %v", n, shows)
	}
}
