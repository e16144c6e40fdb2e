//go:build unix

package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// terminal is the built program on a pseudo-terminal that answers no query, as
// seen through an emulator.
type terminal struct {
	t      testing.TB
	dir    string // home of the person
	cmd    *exec.Cmd
	master *os.File
	before *term.State
	ended  chan error    // what Wait said
	news   chan struct{} // the picture has changed; holds at most one
	gone   chan struct{} // the program has closed the terminal

	mu      sync.Mutex
	picture *vt.Emulator
	written bytes.Buffer // every byte the program wrote
}

// patience is how long a test waits for what has to come. It is no measure of
// anything: benchmarks measure.
const patience = time.Minute

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

// open starts a program in a terminal.
func open(t testing.TB, cmd *exec.Cmd, dir string, columns, rows int) *terminal {
	t.Helper()
	s := &terminal{
		t: t, dir: dir, ended: make(chan error, 1), news: make(chan struct{}, 1), gone: make(chan struct{}),
		picture: vt.NewEmulator(columns, rows),
	}
	go io.Copy(io.Discard, s.picture) // what the emulator would answer
	s.cmd = cmd
	master, slave, err := pty.Open()
	if err != nil {
		t.Fatal(err)
	}
	s.master = master
	if err := pty.Setsize(master, &pty.Winsize{Cols: uint16(columns), Rows: uint16(rows)}); err != nil {
		t.Fatal(err)
	}
	if s.before, err = term.GetState(slave.Fd()); err != nil {
		t.Fatal(err)
	}
	s.cmd.Stdin, s.cmd.Stdout, s.cmd.Stderr = slave, slave, slave
	s.cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	if err := s.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	slave.Close()
	go s.watch()
	go func() { s.ended <- s.cmd.Wait() }()
	t.Cleanup(s.close)
	return s
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

// watch draws what the program writes until the terminal is gone.
func (s *terminal) watch() {
	defer close(s.gone)
	buf := make([]byte, 1<<16)
	for {
		n, err := s.master.Read(buf)
		s.mu.Lock()
		s.written.Write(buf[:n])
		_, _ = s.picture.Write(buf[:n])
		s.mu.Unlock()
		select {
		case s.news <- struct{}{}:
		default:
		}
		if err != nil {
			return
		}
	}
}

// close ends whatever is left when the test is over.
func (s *terminal) close() {
	_ = s.cmd.Process.Kill()
	_ = s.master.Close()
	<-s.gone
	if answers, ok := s.picture.InputPipe().(io.Closer); ok {
		_ = answers.Close()
	}
	if races, _ := filepath.Glob(filepath.Join(s.dir, "race.*")); len(races) > 0 {
		text, _ := os.ReadFile(races[0])
		s.t.Errorf("a race in the program:\n%s", text)
	}
}

// screen is the picture as text.
func (s *terminal) screen() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.picture.String()
}

// press types keys, as the bytes that a terminal sends for them.
func (s *terminal) press(keys string) {
	s.t.Helper()
	if _, err := s.master.WriteString(keys); err != nil {
		s.t.Fatalf("pressing %q: %v", keys, err)
	}
}

// until waits for a picture.
func (s *terminal) until(what string, fits func(screen string) bool) {
	s.t.Helper()
	end := time.After(patience)
	for {
		if fits(s.screen()) {
			return
		}
		select {
		case <-s.news:
		case <-s.gone:
			if !fits(s.screen()) {
				s.t.Fatalf("the program ended before there was %s:\n%s", what, s.screen())
			}
		case <-end:
			s.t.Fatalf("no %s on the screen:\n%s", what, s.screen())
		}
	}
}

// shows waits until all of some texts are on the screen.
func (s *terminal) shows(texts ...string) {
	s.t.Helper()
	s.until(strings.Join(texts, ", "), func(screen string) bool {
		for _, text := range texts {
			if !strings.Contains(screen, text) {
				return false
			}
		}
		return true
	})
}

// does presses keys and waits for what they lead to.
func (s *terminal) does(keys string, texts ...string) {
	s.t.Helper()
	s.press(keys)
	s.shows(texts...)
}

// drained waits until the program has read all that was typed: what comes behind an escape
// in one read is no key of its own but the end of it.
func (s *terminal) drained() {
	s.t.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(5 * time.Millisecond) {
		switch n, err := s.unread(); {
		case err != nil:
			s.t.Fatal(err)
		case n == 0:
			return
		case time.Now().After(end):
			s.t.Fatalf("%d bytes were not read:\n%s", n, s.screen())
		}
	}
}

// signal sends the program a signal.
func (s *terminal) signal(sig os.Signal) {
	s.t.Helper()
	if err := s.cmd.Process.Signal(sig); err != nil {
		s.t.Fatal(err)
	}
}

// exit waits for the end of the program and of what it wrote, and gives its exit
// code, -1 when a signal ended it.
func (s *terminal) exit() int {
	s.t.Helper()
	select {
	case err := <-s.ended:
		s.ended <- err
		<-s.gone
		var failed *exec.ExitError
		if err != nil && !errors.As(err, &failed) {
			s.t.Fatal(err)
		}
		return s.cmd.ProcessState.ExitCode()
	case <-time.After(patience):
		s.t.Fatalf("the program did not end:\n%s", s.screen())
	}
	return 0
}

// kill ends the program as a power cut does.
func (s *terminal) kill() {
	s.t.Helper()
	s.signal(syscall.SIGKILL)
	s.exit()
}

// restored checks that the terminal was left as it was found.
func (s *terminal) restored() {
	s.t.Helper()
	<-s.gone
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.picture.IsAltScreen() || s.picture.CursorHidden() {
		s.t.Errorf("alternate screen %v, cursor hidden %v", s.picture.IsAltScreen(), s.picture.CursorHidden())
	}
	if now, err := term.GetState(s.master.Fd()); err != nil || !reflect.DeepEqual(now, s.before) {
		s.t.Errorf("the terminal's modes are %+v, were %+v (%v)", now, s.before, err)
	}
}
