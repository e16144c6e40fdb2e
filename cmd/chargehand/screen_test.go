package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/persist"
)

// An entry that the book will never take is told to the screen as refused.
func TestRefusedIsNotKept(t *testing.T) {
	acks := make(chan persist.Ack, 1)
	book, err := persist.Open(filepath.Join(t.TempDir(), "book.db"), persist.Options{Acked: func(a persist.Ack) { acks <- a }})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	book.Keep(entry.Entry{Stream: "not a name!", Event: entry.Rod{}})
	k := keptOf(<-acks)
	if len(k.Entries) != 0 || len(k.Refused) != 1 || !errors.As(k.Err, new(*persist.RefusedError)) {
		t.Errorf("the screen is told %+v", k)
	}
}

// The folder goes while the program runs: the screen is told at once, and the
// entry is kept.
func TestTakeOverIsToldToTheScreen(t *testing.T) {
	acks := make(chan persist.Ack, 16)
	path := filepath.Join(t.TempDir(), "shelf", "book.db")
	book, err := persist.Open(path, persist.Options{Acked: func(a persist.Ack) { acks <- a }})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	if err := os.RemoveAll(filepath.Dir(path)); err != nil {
		t.Fatal(err)
	}
	book.Keep(entry.Entry{Stream: "2026-05-09-reedhollow-a", Event: entry.Rod{}})
	var told []string
	for {
		k := keptOf(<-acks)
		if k.Err != nil {
			t.Fatal(k.Err)
		}
		told = append(told, k.Told...)
		if len(k.Entries) == 1 {
			break
		}
	}
	if len(told) == 0 || !strings.Contains(told[0], "took over") || !strings.Contains(told[0], path) {
		t.Errorf("the screen is told %q", told)
	}
}

// A terminal that goes while it is read ends the screen as a hang-up does: nothing failed.
func TestATerminalThatGoesIsNoFailure(t *testing.T) {
	gone := fmt.Errorf("error reading input: %w", &os.PathError{Op: "read", Path: "/dev/pts/1", Err: syscall.EIO})
	if err := ending(fmt.Errorf("%w: %w", tea.ErrProgramKilled, gone)); err != nil {
		t.Errorf("it is told as %v", err)
	}
	if err := ending(fmt.Errorf("%w: %w", tea.ErrProgramKilled, os.ErrClosed)); err == nil {
		t.Error("another failure is not told")
	}
}
