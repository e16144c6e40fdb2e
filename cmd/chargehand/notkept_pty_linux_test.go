package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/sys/unix"

	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/persist"
)

// The disk takes nothing more: what is keyed is counted as not kept, leaving asks,
// then offers another place; what was written there, on a disk that has room, comes
// back by rescue --take, and what was called kept is as it was.
func TestLeavingAFullDisk(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 100, 30)
	s.lights()
	s.Does("c", "no fill keyed", "✓") // kept, and asked about
	smelt := onlySmelt(t, dir)
	were := taps(readSmelt(t, bookIn(dir), smelt))
	s.disk(0)
	s.Does("t", "NOT KEPT") // a second c so soon would be taken for a leaning glove
	s.Press("n")
	s.Does("keyed on a full disk\r", "NOT KEPT")
	s.Does("vq", "leave "+smelt+" running")
	s.Does("y", "NOT kept yet", "write them elsewhere")
	s.Press("x")
	s.Shows("could NOT be kept", "another place?")
	s.Does("no/such/folder/x\r", "cannot write no/such/folder/x")
	s.disk(unix.RLIM_INFINITY)
	saved := filepath.Join(dir, "saved.jsonl")
	s.Press(saved + "\r")
	s.Until("where they are", func(screen string) bool {
		return strings.Contains(strings.Join(strings.Fields(screen), ""), "writtento")
	})
	if code := s.Exit(); code != exitFailed {
		t.Errorf("exit code %d", code)
	}
	kept := readSmelt(t, bookIn(dir), smelt)
	if taps(kept) != were {
		t.Errorf("%d taps are in the book, want the %d that were kept", taps(kept), were)
	}
	says(t, dir, "rescue", "--take", saved)
	b, err := persist.OpenReader(bookIn(dir), persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	names, _ := b.Streams()
	back, note := 0, false
	for _, n := range names {
		if n == smelt || n == entry.House {
			continue
		}
		es := readSmelt(t, bookIn(dir), n)
		back += taps(es)
		for _, e := range es {
			if text, is := e.Event.(entry.Note); is && text.Text == "keyed on a full disk" {
				note = true
			}
		}
	}
	if back != 1 || !note {
		text, _ := os.ReadFile(saved)
		t.Errorf("%d taps came back, the note %v, in %v:\n%s", back, note, names, text)
	}
}

// disk lets the program's files grow no further than so many bytes, as on a full
// disk.
func (s *terminal) disk(bytes uint64) {
	s.t.Helper()
	if err := unix.Prlimit(s.Pid(), unix.RLIMIT_FSIZE, &unix.Rlimit{Cur: bytes, Max: unix.RLIM_INFINITY}, nil); err != nil {
		s.t.Fatal(err)
	}
}

func taps(es []entry.Entry) (n int) {
	for _, e := range es {
		if e.Kind() == entry.KindTap {
			n++
		}
	}
	return n
}
