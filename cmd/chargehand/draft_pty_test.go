//go:build unix

package main

import (
	"strings"
	"testing"

	"chargehand/model/entry"
)

// The program is killed with a note, a number and the rows of the form half typed: each
// comes back where it is typed, says since when, and goes on.
func TestKilledHalfTyped(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	again := func(s *terminal) *terminal {
		s.killedAtRest()
		return openTerminal(t, dir, 80, 24)
	}
	s := openTerminal(t, dir, 80, 24)
	s.Shows("practise")
	s.Does("r", "your initials")
	s.Press("\x1b[B")
	s.Does("Sedge End", "Sedge End")
	s = again(s)
	s.Shows("practise")
	s.Does("r", "Sedge End", "half typed", "go on, or x")
	s.Press("\x1b[6~")
	s.Does("\r", "light with them")
	s.Does("y", "since it was lit")

	s.Does("n", "? note")
	s.Does("the wind turned to", "turned to")
	s = again(s)
	s.Shows("go on with")
	s.Does("g", "half typed", `note "the wind turned to"`)
	s.Does("n", "the wind turned to", "go on, or x")
	s.Does(" the west\r", "note: the wind turned to the west")

	s.Does("b", "? blast")
	s.Does("72", "72")
	s = again(s)
	s.Does("g", "half typed")
	s.Does("b", "half typed", "enter takes it")
	s.Does("\r", "72 l/min", "kept")
	s.killedAtRest()
	entries := readSmelt(t, bookIn(dir), onlySmelt(t, dir))
	var note, blast bool
	for _, e := range entries {
		note = note || e.Event == entry.Event(entry.Note{Text: "the wind turned to the west"})
		b, is := e.Event.(entry.Blast)
		blast = blast || is && b.Volume.Value == 72
	}
	if !note || !blast || entries[0].Event.(entry.Light).Furnace.Name != "Sedge End" {
		t.Errorf("note %v, blast %v, %+v", note, blast, entries[0].Event)
	}
	s = openTerminal(t, dir, 80, 24)
	s.Does("g", "this is ")
	s.Does("n", "? note")
	if screen := s.Screen(); strings.Contains(screen, "half typed") {
		t.Errorf("what was kept comes back:\n%s", screen)
	}
	s.killedAtRest()
	says(t, dir, "check")
}
