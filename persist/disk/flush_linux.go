package disk

import (
	"os"
	"syscall"
)

// Flush brings a file's bytes and length to the disk.
func Flush(f *os.File) error {
	for {
		if err := syscall.Fdatasync(int(f.Fd())); err != syscall.EINTR {
			return os.NewSyscallError("fdatasync", err)
		}
	}
}
