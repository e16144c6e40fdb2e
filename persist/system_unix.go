//go:build !windows

package persist

import (
	"errors"
	"os"
	"syscall"
)

// isReadOnlySystem tells whether the whole file system is read-only.
func isReadOnlySystem(err error) bool { return errors.Is(err, syscall.EROFS) }

// abandon closes a file whose map could not be taken down. The map alone would
// keep the lock.
func abandon(f *os.File) error {
	_ = syscall.Flock(int(f.Fd()), syscall.LOCK_UN) // closing says what matters
	return f.Close()
}

// shareLock takes the lock of readers on an open file, which keeps writers out;
// false when a writer has it.
func shareLock(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_SH|syscall.LOCK_NB) == nil
}

// flushFolder brings new and renamed names of a folder to the disk.
func flushFolder(folder string) error {
	d, err := os.Open(folder)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}
