//go:build unix

package main

import (
	"os"
	"time"

	"golang.org/x/sys/unix"
)

// keyboard is a terminal's input with its pastes marked.
type keyboard struct {
	*os.File
	marks pasteMarks
}

func keyboardOf(f *os.File) *keyboard { return &keyboard{File: f} }

// Read reads keys, and marks round those that are of a paste.
func (k *keyboard) Read(p []byte) (int, error) {
	room := len(p) - len(pasteBegins) - len(pasteEnds)
	if room < atOnce {
		return k.File.Read(p)
	}
	n, err := k.File.Read(p[:room])
	if n <= 0 || err != nil {
		return n, err
	}
	marked := k.marks.mark(p, n, time.Now(), func() bool { return k.comes(quiet) })
	if marked > n || k.marks.inside || n < room || !k.comes(0) {
		return marked, nil
	}
	// A read that is not full says that no key is cut at its end.
	more, err := k.File.Read(p[n:])
	return n + max(more, 0), err
}

// comes tells whether something is to be read within a time.
func (k *keyboard) comes(within time.Duration) bool {
	fds := []unix.PollFd{{Fd: int32(k.Fd()), Events: unix.POLLIN}}
	until := time.Now().Add(within)
	for {
		n, err := unix.Poll(fds, int(max(0, time.Until(until)).Milliseconds()))
		if err == unix.EINTR {
			continue
		}
		return err == nil && n > 0 && fds[0].Revents&unix.POLLIN != 0
	}
}
