//go:build linux && (amd64 || arm64)

package persist

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
	"unsafe"

	"golang.org/x/sys/unix"
)

// The gate stands between a second process and the system: each of its calls
// on the disk waits until the test has said whether the system may do it or what
// error comes instead. It is the system's own user
// notification of seccomp (seccomp(2), seccomp_unotify(2)), which needs no
// rights. What the library under the book does is met like our own calls.

// diskCall is one call that waits at the gate.
type diskCall struct {
	name    string
	path    string // the file or folder it is about
	changes bool   // what is on the disk; else it only reads
	notice  notice
}

// changingCalls and readingCalls are the calls on files that Go and bbolt make.
var changingCalls = map[int32]string{
	unix.SYS_WRITE: "write", unix.SYS_PWRITE64: "pwrite", unix.SYS_WRITEV: "writev", unix.SYS_PWRITEV: "pwritev",
	unix.SYS_FSYNC: "fsync", unix.SYS_FDATASYNC: "fdatasync", unix.SYS_FTRUNCATE: "ftruncate", unix.SYS_FALLOCATE: "fallocate",
	unix.SYS_TRUNCATE: "truncate", unix.SYS_OPENAT: "open", unix.SYS_RENAMEAT: "rename", unix.SYS_RENAMEAT2: "rename",
	unix.SYS_LINKAT: "link", unix.SYS_UNLINKAT: "unlink", unix.SYS_MKDIRAT: "mkdir",
}

var readingCalls = map[int32]string{
	unix.SYS_OPENAT: "open", unix.SYS_READ: "read", unix.SYS_PREAD64: "pread", unix.SYS_GETDENTS64: "getdents",
	unix.SYS_FSTAT: "fstat", statCall: "stat", unix.SYS_STATX: "statx", unix.SYS_FLOCK: "flock", unix.SYS_MMAP: "mmap",
}

// statCall is fstatat, which has another name on each kind of processor.
var statCall = map[string]int32{"amd64": 262, "arm64": 79}[runtime.GOARCH]

// notice and reply are struct seccomp_notif and seccomp_notif_resp of the
// system's <linux/seccomp.h>.
type notice struct {
	id    uint64
	pid   uint32
	flags uint32
	nr    int32
	arch  uint32
	ip    uint64
	args  [6]uint64
}

type reply struct {
	id    uint64
	val   int64
	err   int32
	flags uint32
}

// enterGate puts the process behind the gate, all of its threads.
func enterGate() error {
	arch := uint32(unix.AUDIT_ARCH_X86_64)
	if runtime.GOARCH == "arm64" {
		arch = unix.AUDIT_ARCH_AARCH64
	}
	const atNumber, atArch = 0, 4 // in struct seccomp_data
	load := func(at uint32) unix.SockFilter {
		return unix.SockFilter{Code: unix.BPF_LD | unix.BPF_W | unix.BPF_ABS, K: at}
	}
	give := func(k uint32) unix.SockFilter { return unix.SockFilter{Code: unix.BPF_RET | unix.BPF_K, K: k} }
	unless := func(k uint32) unix.SockFilter {
		return unix.SockFilter{Code: unix.BPF_JMP | unix.BPF_JEQ | unix.BPF_K, K: k, Jf: 1}
	}
	filter := []unix.SockFilter{load(atArch), {Code: unix.BPF_JMP | unix.BPF_JEQ | unix.BPF_K, K: arch, Jt: 1}, give(unix.SECCOMP_RET_ALLOW), load(atNumber)}
	for _, calls := range []map[int32]string{changingCalls, readingCalls} {
		for nr := range calls {
			filter = append(filter, unless(uint32(nr)), give(unix.SECCOMP_RET_USER_NOTIF))
		}
	}
	filter = append(filter, give(unix.SECCOMP_RET_ALLOW))
	program := unix.SockFprog{Len: uint16(len(filter)), Filter: &filter[0]}
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	if err := unix.Prctl(unix.PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0); err != nil {
		return err
	}
	_, _, errno := unix.RawSyscall(unix.SYS_SECCOMP, unix.SECCOMP_SET_MODE_FILTER,
		unix.SECCOMP_FILTER_FLAG_NEW_LISTENER|unix.SECCOMP_FILTER_FLAG_TSYNC|unix.SECCOMP_FILTER_FLAG_TSYNC_ESRCH, uintptr(unsafe.Pointer(&program)))
	if errno != 0 {
		return os.NewSyscallError("seccomp", errno)
	}
	return nil
}

// behindGate starts this test binary again as a second process, which calls
// enterGate, and asks judge about each of its calls on files in folder. It gives
// what the process wrote, and skips the test where the system has no gate.
func behindGate(t *testing.T, folder string, judge func(diskCall) syscall.Errno, env ...string) string {
	t.Helper()
	return heard(t, folder, judge, func(string) {}, env...)
}

// heard is behindGate that tells also what the process says, in its place among
// the calls.
func heard(t *testing.T, folder string, judge func(diskCall) syscall.Errno, hear func(string), env ...string) string {
	t.Helper()
	var out bytes.Buffer
	ctx, stop := context.WithTimeout(t.Context(), time.Minute) // far beyond what any takes that does not hang
	defer stop()
	cmd := exec.CommandContext(ctx, os.Args[0])
	// A call that waits is begun anew when a signal comes, and would be counted
	// twice: the runtime's own signals are put off.
	cmd.Env = append(append(os.Environ(), "GODEBUG=asyncpreemptoff=1"), env...)
	cmd.Stdout, cmd.Stderr = &out, &out
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	gate := gateOf(cmd.Process.Pid)
	if gate < 0 {
		cmd.Wait()
		t.Skipf("the system has no gate for calls (seccomp user notification): %s", strings.TrimSpace(out.String()))
	}
	defer unix.Close(gate)
	guard(t, gate, folder, judge, hear)
	if err := cmd.Wait(); err != nil {
		t.Errorf("the second process ended with %v:\n%s", err, &out)
	}
	return out.String()
}

// gateOf takes the gate out of the process, which cannot hand it over: its own
// calls wait already. -1 when it ends without one.
func gateOf(pid int) int {
	for ; ; time.Sleep(200 * time.Microsecond) {
		files, err := os.ReadDir(fmt.Sprintf("/proc/%d/fd", pid))
		if err != nil || len(files) == 0 {
			return -1
		}
		for _, f := range files {
			if to, _ := os.Readlink(fmt.Sprintf("/proc/%d/fd/%s", pid, f.Name())); to != "anon_inode:seccomp notify" {
				continue
			}
			process, err := unix.PidfdOpen(pid, 0)
			if err != nil {
				return -1
			}
			defer unix.Close(process)
			fd, err := strconv.Atoi(f.Name())
			if err != nil {
				return -1
			}
			gate, err := unix.PidfdGetfd(process, fd, 0)
			if err != nil {
				return -1
			}
			return gate
		}
	}
}

// guard answers calls until the second process has ended.
func guard(t *testing.T, gate int, folder string, judge func(diskCall) syscall.Errno, hear func(string)) {
	poll := []unix.PollFd{{Fd: int32(gate), Events: unix.POLLIN}}
	for {
		if _, err := unix.Poll(poll, -1); err == unix.EINTR {
			continue
		} else if err != nil {
			t.Fatal(err)
		}
		if poll[0].Revents&unix.POLLIN == 0 {
			return
		}
		var n notice
		if errno := gateCall(gate, unix.SECCOMP_IOCTL_NOTIF_RECV, unsafe.Pointer(&n)); errno != 0 {
			continue // it is gone again
		}
		r := reply{id: n.id, flags: unix.SECCOMP_USER_NOTIF_FLAG_CONTINUE}
		if c := n.diskCall(); strings.HasPrefix(c.path, folder) {
			if errno := judge(c); errno != 0 {
				r.err, r.flags = -int32(errno), 0
			}
		} else if n.nr == unix.SYS_WRITE && n.args[0] == 1 {
			hear(string(n.bytes(1, int(n.args[2]))))
		}
		_ = gateCall(gate, unix.SECCOMP_IOCTL_NOTIF_SEND, unsafe.Pointer(&r)) // whoever was killed meanwhile needs no answer
	}
}

func gateCall(gate int, request uintptr, arg unsafe.Pointer) syscall.Errno {
	_, _, errno := unix.Syscall(unix.SYS_IOCTL, uintptr(gate), request, uintptr(arg))
	return errno
}

// diskCall tells what a call is about.
func (n notice) diskCall() diskCall {
	c := diskCall{notice: n}
	if c.name, c.changes = changingCalls[n.nr]; !c.changes {
		c.name = readingCalls[n.nr]
	}
	switch n.nr {
	case unix.SYS_OPENAT:
		c.changes = n.args[2]&(unix.O_ACCMODE|unix.O_CREAT|unix.O_TRUNC) != unix.O_RDONLY
		c.path = n.text(1)
	case unix.SYS_TRUNCATE:
		c.path = n.text(0)
	case unix.SYS_RENAMEAT, unix.SYS_RENAMEAT2, unix.SYS_LINKAT:
		c.path = n.text(3)
	case unix.SYS_UNLINKAT, unix.SYS_MKDIRAT, unix.SYS_STATX, statCall:
		c.path = n.text(1)
	case unix.SYS_MMAP:
		c.path = n.file(4)
	default:
		c.path = n.file(0)
	}
	return c
}

// file is the path of an argument that is an open file.
func (n notice) file(arg int) string {
	path, _ := os.Readlink(fmt.Sprintf("/proc/%d/fd/%d", n.pid, int32(n.args[arg])))
	return path
}

// text reads an argument that is a path.
func (n notice) text(arg int) string {
	path, _, _ := bytes.Cut(n.bytes(arg, unix.PathMax), []byte{0})
	return string(path)
}

// bytes reads what an argument points to.
func (n notice) bytes(arg, most int) []byte {
	mem, err := os.Open(fmt.Sprintf("/proc/%d/mem", n.pid))
	if err != nil {
		return nil
	}
	defer mem.Close()
	b := make([]byte, most)
	read, _ := mem.ReadAt(b, int64(n.args[arg]))
	return b[:read]
}
