//go:build !linux

package disk

import "os"

// Flush brings a file's bytes and length to the disk.
func Flush(f *os.File) error { return f.Sync() }
