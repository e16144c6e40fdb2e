//go:build linux

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
)

// wire is the built program on a pseudo-terminal without an emulator, which
// would take its share of the processor.
type wire struct {
	b       *testing.B
	cmd     *exec.Cmd
	master  *os.File
	started time.Time
	came    chan arrival
	log     []arrival // what came since skip
	text    []byte    // the same in one piece
}

// arrival is what one read brought, and when.
type arrival struct {
	at    time.Time
	bytes []byte
}

func openWire(b *testing.B, dir string, columns, rows uint16) *wire {
	b.Helper()
	return wired(b, binaryCommand(b, dir), columns, rows)
}

// bareProgram builds the least program of the same libraries once.
var bareProgram = sync.OnceValues(func() (string, error) {
	if _, err := binary(); err != nil { // makes the folder
		return "", err
	}
	path := filepath.Join(leftovers, "bare")
	if out, err := exec.Command("go", "build", "-o", path, "./testdata/bare").CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return path, nil
})

// bareWire is the least program of the same libraries on the same terminal.
func bareWire(b *testing.B, columns, rows uint16) *wire {
	b.Helper()
	path, err := bareProgram()
	if err != nil {
		b.Fatal(err)
	}
	cmd := exec.Command(path, filepath.Join(b.TempDir(), "bare.db"))
	cmd.Env = append(os.Environ(), "TERM=xterm-256color")
	return wired(b, cmd, columns, rows)
}

func wired(b *testing.B, cmd *exec.Cmd, columns, rows uint16) *wire {
	b.Helper()
	w := &wire{b: b, cmd: cmd, came: make(chan arrival, 1<<16)}
	master, slave, err := pty.Open()
	if err != nil {
		b.Fatal(err)
	}
	defer slave.Close()
	if err := pty.Setsize(master, &pty.Winsize{Cols: columns, Rows: rows}); err != nil {
		b.Fatal(err)
	}
	w.master, w.cmd.Stdin, w.cmd.Stdout, w.cmd.Stderr = master, slave, slave, slave
	w.cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	w.started = time.Now()
	if err := w.cmd.Start(); err != nil {
		b.Fatal(err)
	}
	go w.read()
	return w
}

func (w *wire) read() {
	defer close(w.came)
	buf := make([]byte, 1<<16)
	for {
		n, err := w.master.Read(buf)
		if n > 0 {
			w.came <- arrival{time.Now(), bytes.Clone(buf[:n])}
		}
		if err != nil {
			return
		}
	}
}

// until gives when a text had arrived, of what came since skip.
func (w *wire) until(text string) time.Time {
	w.b.Helper()
	for {
		if i := bytes.Index(w.text, []byte(text)); i >= 0 {
			end := 0
			for _, a := range w.log {
				if end += len(a.bytes); end >= i+len(text) {
					return a.at
				}
			}
		}
		a, ok := <-w.came
		if !ok {
			w.b.Fatalf("%q never came: %q", text, w.text)
		}
		w.text, w.log = append(w.text, a.bytes...), append(w.log, a)
	}
}

// skip forgets what has come until now.
func (w *wire) skip() {
	w.text, w.log = nil, nil
	for len(w.came) > 0 {
		<-w.came
	}
}

func (w *wire) press(keys string) {
	w.b.Helper()
	if _, err := w.master.WriteString(keys); err != nil {
		w.b.Fatal(err)
	}
}

func (w *wire) end() {
	_ = w.cmd.Process.Signal(syscall.SIGTERM)
	_ = w.cmd.Wait()
	_ = w.master.Close()
}
