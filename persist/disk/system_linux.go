package disk

import (
	"errors"
	"os"
	"syscall"

	"golang.org/x/sys/unix"
)

// Flush brings a file's bytes and length to the disk.
func Flush(f *os.File) error {
	for {
		if err := syscall.Fdatasync(int(f.Fd())); err != syscall.EINTR {
			return os.NewSyscallError("fdatasync", err)
		}
	}
}

// follow tells whether a path leads to the file that was seen before, and how
// long what it leads to is. It does not ask for the file's times, as os.Stat
// does: the system would have to note a finer one with the next write, and that
// is felt in every keeping.
func follow(path string, was os.FileInfo) (same bool, size int64, err error) {
	var now unix.Statx_t
	err = unix.Statx(unix.AT_FDCWD, path, 0, unix.STATX_INO|unix.STATX_SIZE, &now)
	if errors.Is(err, unix.ENOSYS) || errors.Is(err, unix.EPERM) { // an old system, or one that allows only what it knows
		return followByTimes(path, was)
	}
	seen, ok := was.Sys().(*syscall.Stat_t)
	return err == nil && ok && seen.Ino == now.Ino && uint64(seen.Dev) == unix.Mkdev(now.Dev_major, now.Dev_minor), int64(now.Size), err
}
