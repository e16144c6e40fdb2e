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
	s.shows("practise")
	s.does("r", "your initials")
	s.does("\x1b[6~\r", "are guesses")
	s.does("y", "since it was lit", "carbon monoxide")
	s.does("f", "fill: 1 bucket")
	s.does("o", "main burn begins")
	s.does("m", "main burn begins · kept")
	s.does("b", "blast")
	s.does("700\r", "blast, 700 l/min · kept")
	s.does("c", "charge 1: 1 bucket")
	s.does("l", "look at what")
	s.does("c", "list closed, nothing done; charge 2: 1 bucket")
	s.does("u", "crossed out: charge 2")
	s.does("l", "look at what")
	s.does("p", "peep is")
	s.does("d", "peep: dark · kept")
	s.shows("ACT", "tuyere blocked: peep dark, no blast goes in", "rod the tuyere, then look again; if it stays dark, tap")
	s.does(" ", "rod the tuyere, then look again; if it stays dark, tap")
	s.does(" ", "tuyere blocked: peep dark")
	s.does("a", "seen: tuyere blocked · kept")
	before := s.allKept()
	s.kill()

	again := openTerminal(t, dir, 120, 36)
	again.shows("go on with")
	again.does("g", "tuyere blocked: peep dark, no blast goes in")
	if strings.Contains(again.screen(), "a seen") {
		t.Errorf("a warning that was seen asks again:\n%s", again.screen())
	}
	again.signal(syscall.SIGTERM)
	if code := again.exit(); code != exitWell {
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
