package persist

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"

	"golang.org/x/sys/unix"
)

// inside says that this process is the second one of a test.
const inside = "PERSIST_TEST_INSIDE"

// inOwnSpace runs the rest of a test in a second process in name spaces of its
// own, where it may mount (as uid 0), or is bound by the rights of files whoever
// runs the tests (as any other uid). Neither needs rights, where the system lets
// users have name spaces.
func inOwnSpace(t *testing.T, uid int, run func(t *testing.T, folder string)) {
	t.Helper()
	if folder := os.Getenv(inside); folder != "" {
		run(t, folder)
		return
	}
	cmd := exec.Command(os.Args[0], "-test.v", "-test.run=^"+t.Name()+"$")
	cmd.Env = append(os.Environ(), inside+"="+t.TempDir())
	cmd.SysProcAttr = &syscall.SysProcAttr{Cloneflags: syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{ContainerID: uid, HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{ContainerID: uid, HostID: os.Getgid(), Size: 1}}}
	out, err := cmd.CombinedOutput()
	switch {
	case errors.Is(err, syscall.EPERM), errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EINVAL):
		t.Skipf("the system gives no name space: %v", err)
	case strings.Contains(string(out), "--- SKIP"):
		t.Skipf("%s", out)
	case err != nil || !strings.Contains(string(out), "--- PASS: "+t.Name()):
		t.Errorf("%v\n%s", err, out)
	}
}

// smallDisk is how many bytes onSmallDisk has.
const smallDisk = 2 << 20

// onSmallDisk runs the rest of a test on a small file system in memory.
func onSmallDisk(t *testing.T, run func(t *testing.T, folder string)) {
	t.Helper()
	inOwnSpace(t, 0, func(t *testing.T, folder string) {
		if err := unix.Mount("none", folder, "tmpfs", 0, fmt.Sprintf("size=%d", smallDisk)); err != nil {
			t.Skipf("the system mounts nothing: %v", err)
		}
		run(t, folder)
	})
}
