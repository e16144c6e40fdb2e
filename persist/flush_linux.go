package persist

import (
	"os"
	"syscall"
)

// flush brings a file's bytes and length to the disk.
func flush(f *os.File) error {
	for {
		if err := syscall.Fdatasync(int(f.Fd())); err != syscall.EINTR {
			return os.NewSyscallError("fdatasync", err)
		}
	}
}
