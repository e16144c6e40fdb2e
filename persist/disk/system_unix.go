//go:build !windows

package disk

import (
	"errors"
	"os"
	"syscall"
)

// IsReadOnlySystem tells whether the whole file system is read-only.
func IsReadOnlySystem(err error) bool { return errors.Is(err, syscall.EROFS) }

// Abandon closes a file whose map could not be taken down. The map alone would
// keep the lock.
func Abandon(f *os.File) error {
	_ = syscall.Flock(int(f.Fd()), syscall.LOCK_UN) // closing says what matters
	return f.Close()
}

// ShareLock takes the lock of readers on an open file, which keeps writers out;
// false when a writer has it.
func ShareLock(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_SH|syscall.LOCK_NB) == nil
}

// Lock takes the lock of the one writer on an open file; false when somebody has
// it.
func Lock(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}

// FlushFolder brings new and renamed names of a folder to the disk.
func FlushFolder(folder string) error {
	d, err := os.Open(folder)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}
