//go:build unix

package main

import (
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"chargehand/model/entry"
)

// aPage is a page of an ordinary text: 5,600 characters in lines, as a terminal that does
// not mark a paste sends it.
func aPage() string {
	const line = "It was cold, so the crew cut and split dry oak first; at ten the clay cup\rrang, and all of us ate.\r"
	return strings.Repeat(line, 57)[:5600]
}

// A page that a terminal sends as if it were typed acts nowhere, is said, and the next key
// acts as ever. In a field it is text.
func TestAnUnmarkedPasteActsNowhere(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.lights()
	s.Does("f", "fill: 1 bucket")
	s.Does(aPage(), "pasted text")
	s.Does("c", "charge 1")
	s.Does("n", "? note")
	s.Does(aPage(), "It was cold")
	s.Does("\r", "note: It was cold")
	s.allKept()
	s.killedAtRest()
	var acts []entry.Kind
	for _, e := range readSmelt(t, bookIn(dir), onlySmelt(t, dir)) {
		if e.Event != nil && entry.IsAct(e.Event) {
			acts = append(acts, e.Kind())
		}
	}
	if want := []entry.Kind{entry.KindFill, entry.KindCharge, entry.KindNote}; !slices.Equal(acts, want) {
		t.Errorf("the acts are %v, want %v", acts, want)
	}
}

// What a hand types into a program that stands still for two seconds comes in one read, and
// every key of it acts.
func TestKeysOfAStallAct(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.lights()
	s.Does("f", "fill: 1 bucket")
	s.Signal(syscall.SIGSTOP)
	for _, k := range strings.Split("c s s s b 7 2 0 \r c s s s n w e t \r t c s d r p f u c s s s", " ") {
		s.Press(k)
		time.Sleep(time.Second / 15)
	}
	s.Signal(syscall.SIGCONT)
	s.Shows("charge 4") // a caution may cover the figures
	s.allKept()
	s.killedAtRest()
	acts := map[entry.Kind]int{}
	for _, e := range readSmelt(t, bookIn(dir), onlySmelt(t, dir)) {
		acts[e.Kind()]++
		if b, is := e.Event.(entry.Blast); is && b.Volume.Value != 720 {
			t.Errorf("a blast of %v", b.Volume)
		}
	}
	for kind, n := range map[entry.Kind]int{entry.KindBlast: 1, entry.KindNote: 1, entry.KindTap: 1, entry.KindRod: 1, entry.KindPoke: 1, entry.KindStrike: 1} {
		if acts[kind] != n {
			t.Errorf("%d of %s, want %d: %v", acts[kind], kind, n, acts)
		}
	}
}
