package disk

import (
	"errors"
	"os"
	"syscall"
)

// errWriteProtect is the system's ERROR_WRITE_PROTECT.
const errWriteProtect = syscall.Errno(19)

// IsReadOnlySystem tells whether the whole disk is write-protected.
func IsReadOnlySystem(err error) bool { return errors.Is(err, errWriteProtect) }

// Abandon closes a file whose map could not be taken down.
func Abandon(f *os.File) error { return f.Close() }

// ShareLock has nothing to do: Windows renames no file that another program has
// open.
func ShareLock(*os.File) bool { return true }

// Lock has nothing to do either: the book's own lock stands before it.
func Lock(*os.File) bool { return true }

// FlushFolder does nothing: a folder cannot be flushed on Windows, where the
// file system keeps its names in a journal of its own.
func FlushFolder(string) error { return nil }
