package persist

import (
	"errors"
	"os"
	"syscall"
)

// errWriteProtect is the system's ERROR_WRITE_PROTECT.
const errWriteProtect = syscall.Errno(19)

// isReadOnlySystem tells whether the whole disk is write-protected.
func isReadOnlySystem(err error) bool { return errors.Is(err, errWriteProtect) }

// abandon closes a file whose map could not be taken down.
func abandon(f *os.File) error { return f.Close() }

// shareLock has nothing to do: Windows renames no file that another program has
// open.
func shareLock(*os.File) bool { return true }

// flushFolder does nothing: a folder cannot be flushed on Windows, where the
// file system keeps its names in a journal of its own.
func flushFolder(string) error { return nil }
