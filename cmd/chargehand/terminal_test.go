//go:build unix

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"chargehand/cmd/chargehand/internal/tty"
)

// terminal is the built program on a pseudo-terminal.
type terminal struct {
	*tty.Terminal
	t testing.TB
}

// openTerminal starts the program in a person's home, in a terminal of so many
// columns and rows.
func openTerminal(t testing.TB, dir string, columns, rows int, args ...string) *terminal {
	t.Helper()
	return open(t, binaryCommand(t, dir, args...), dir, columns, rows)
}

// openWithClock is that with keys that move the clock on.
func openWithClock(t testing.TB, dir string, columns, rows int, args ...string) *terminal {
	t.Helper()
	path, err := binaryWithClock()
	if err != nil {
		t.Fatal(err)
	}
	cmd := binaryCommand(t, dir, args...)
	cmd.Path, cmd.Args[0] = path, path
	return open(t, cmd, dir, columns, rows)
}

// The keys that move it on; see clock_keys.go.
const (
	tenSeconds = "\x1b[15~" // F5
	aMinute    = "\x1b[17~" // F6
	tenMinutes = "\x1b[18~" // F7
	anHour     = "\x1b[19~" // F8
	clockIsSet = "\x1b[20~" // F9
)

// open starts a program in a person's home, in a terminal.
func open(t testing.TB, cmd *exec.Cmd, dir string, columns, rows int) *terminal {
	t.Helper()
	t.Cleanup(func() {
		if races, _ := filepath.Glob(filepath.Join(dir, "race.*")); len(races) > 0 {
			text, _ := os.ReadFile(races[0])
			t.Errorf("a race in the program:\n%s", text)
		}
	})
	return &terminal{tty.Open(t, cmd, columns, rows), t}
}

// lights lights a fire from the start screen, with nothing told of the furnace: page down goes
// to the form's end, and y takes its guesses.
func (s *terminal) lights() {
	s.t.Helper()
	s.Shows("practise")
	s.Does("r", "light the fire", "your initials")
	s.Does("\x1b[6~\r", "are guesses")
	s.Does("y", "the fire is lit", "since it was lit")
}

// binaryCommand is the built program with nothing in its environment but a plain
// terminal and a home.
func binaryCommand(t testing.TB, dir string, args ...string) *exec.Cmd {
	cmd := exec.Command(built(t), args...)
	cmd.Dir = dir
	cmd.Env = []string{
		"TERM=xterm-256color", "HOME=" + dir, "XDG_DATA_HOME=" + dir, "TZ=UTC",
		"GORACE=halt_on_error=1 atexit_sleep_ms=0 log_path=" + filepath.Join(dir, "race"),
	}
	return cmd
}
