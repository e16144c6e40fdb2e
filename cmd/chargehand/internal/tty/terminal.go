//go:build unix

// Package tty is a pseudo-terminal for tests: a program on it, keys pressed, and the
// picture that a person would see, as an emulator draws it. It knows nothing of the program.
package tty

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
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

// Terminal is a program on a pseudo-terminal that answers no query, as seen through an
// emulator.
type Terminal struct {
	t      testing.TB
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

// Patience is how long a test waits for what has to come. It is no measure of
// anything: benchmarks measure.
const Patience = time.Minute

// Open starts a program in a terminal of so many columns and rows. It is ended with the test.
func Open(t testing.TB, cmd *exec.Cmd, columns, rows int) *Terminal {
	t.Helper()
	s := &Terminal{
		t: t, ended: make(chan error, 1), news: make(chan struct{}, 1), gone: make(chan struct{}),
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

// watch draws what the program writes until the terminal is gone.
func (s *Terminal) watch() {
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
func (s *Terminal) close() {
	_ = s.cmd.Process.Kill()
	_ = s.master.Close()
	<-s.gone
	if answers, ok := s.picture.InputPipe().(io.Closer); ok {
		_ = answers.Close()
	}
}

// Screen is the picture as text.
func (s *Terminal) Screen() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.picture.String()
}

// Written is every byte that the program wrote.
func (s *Terminal) Written() []byte {
	s.mu.Lock()
	defer s.mu.Unlock()
	return bytes.Clone(s.written.Bytes())
}

// Resize gives the terminal other columns and rows, as a person does with a window.
func (s *Terminal) Resize(columns, rows int) {
	s.t.Helper()
	s.mu.Lock()
	s.picture.Resize(columns, rows)
	s.mu.Unlock()
	if err := pty.Setsize(s.master, &pty.Winsize{Cols: uint16(columns), Rows: uint16(rows)}); err != nil {
		s.t.Fatal(err)
	}
}

// HangUp takes the terminal away from the program.
func (s *Terminal) HangUp() { s.master.Close() }

// Pid is the number of the program's process.
func (s *Terminal) Pid() int { return s.cmd.Process.Pid }

// WriteString types keys, from any goroutine.
func (s *Terminal) WriteString(keys string) (int, error) { return s.master.WriteString(keys) }

// Press types keys, as the bytes that a terminal sends for them.
func (s *Terminal) Press(keys string) {
	s.t.Helper()
	if _, err := s.WriteString(keys); err != nil {
		s.t.Fatalf("pressing %q: %v", keys, err)
	}
}

// Until waits for a picture.
func (s *Terminal) Until(what string, fits func(screen string) bool) {
	s.t.Helper()
	end := time.After(Patience)
	for {
		if fits(s.Screen()) {
			return
		}
		select {
		case <-s.news:
		case <-s.gone:
			if !fits(s.Screen()) {
				s.t.Fatalf("the program ended before there was %s:\n%s", what, s.Screen())
			}
		case <-end:
			s.t.Fatalf("no %s on the screen:\n%s", what, s.Screen())
		}
	}
}

// Shows waits until all of some texts are on the screen.
func (s *Terminal) Shows(texts ...string) {
	s.t.Helper()
	s.Until(strings.Join(texts, ", "), func(screen string) bool {
		for _, text := range texts {
			if !strings.Contains(screen, text) {
				return false
			}
		}
		return true
	})
}

// Does presses keys and waits for what they lead to.
func (s *Terminal) Does(keys string, texts ...string) {
	s.t.Helper()
	s.Press(keys)
	s.Shows(texts...)
}

// Drained waits until the program has read all that was typed: what comes behind an escape
// in one read is no key of its own but the end of it.
func (s *Terminal) Drained() {
	s.t.Helper()
	for end := time.Now().Add(Patience); ; time.Sleep(5 * time.Millisecond) {
		switch n, err := s.unread(); {
		case err != nil:
			s.t.Fatal(err)
		case n == 0:
			return
		case time.Now().After(end):
			s.t.Fatalf("%d bytes were not read:\n%s", n, s.Screen())
		}
	}
}

// Signal sends the program a signal.
func (s *Terminal) Signal(sig os.Signal) {
	s.t.Helper()
	if err := s.cmd.Process.Signal(sig); err != nil {
		s.t.Fatal(err)
	}
}

// Exit waits for the end of the program and of what it wrote, and gives its exit
// code, -1 when a signal ended it.
func (s *Terminal) Exit() int {
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
	case <-time.After(Patience):
		s.t.Fatalf("the program did not end:\n%s", s.Screen())
	}
	return 0
}

// Kill ends the program as a power cut does.
func (s *Terminal) Kill() {
	s.t.Helper()
	s.Signal(syscall.SIGKILL)
	s.Exit()
}

// Restored checks that the terminal was left as it was found.
func (s *Terminal) Restored() {
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
