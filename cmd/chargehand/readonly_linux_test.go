package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A book that its owner may only read: what reads it goes on, what writes says
// in one line what is wrong and what to do.
func TestReadOnlyHome(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	log := filepath.Join(dir, "log.csv")
	if err := os.WriteFile(log, []byte("clock,event,charcoal_kg\n10:00,charge,1.8\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	says(t, dir, "import", log, "--date", "2026-05-09")
	id := onlySmelt(t, dir)
	if err := os.Chmod(bookIn(dir), 0o400); err != nil {
		t.Fatal(err)
	}
	// As a user whom rights bind, whoever runs the tests.
	bound := func(args ...string) (string, string, int) {
		cmd := binaryCommand(t, dir, args...)
		var out, complaint strings.Builder
		cmd.Stdout, cmd.Stderr = &out, &complaint
		cmd.SysProcAttr = &syscall.SysProcAttr{Cloneflags: syscall.CLONE_NEWUSER,
			UidMappings: []syscall.SysProcIDMap{{ContainerID: 1000, HostID: os.Getuid(), Size: 1}},
			GidMappings: []syscall.SysProcIDMap{{ContainerID: 1000, HostID: os.Getgid(), Size: 1}}}
		if err := cmd.Run(); errors.Is(err, syscall.EPERM) || errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EINVAL) {
			t.Skipf("the system gives no name space: %v", err)
		}
		return out.String(), complaint.String(), cmd.ProcessState.ExitCode()
	}
	for _, args := range [][]string{{"smelts"}, {"state", id}, {"export", id}, {"check"}} {
		if out, complaint, code := bound(args...); code != exitWell || out == "" {
			t.Errorf("%v: exit code %d, %s", args, code, complaint)
		}
	}
	for _, args := range [][]string{{"import", log, "--date", "2026-05-10"}} {
		_, complaint, code := bound(args...)
		if code != exitFailed || !strings.Contains(complaint, bookIn(dir)) || !strings.Contains(complaint, "give yourself the right") || strings.Count(complaint, "\n") != 1 {
			t.Errorf("%v: exit code %d, %s", args, code, complaint)
		}
	}
}
