//go:build !linux

package persist

import "os"

// flush brings a file's bytes and length to the disk.
func flush(f *os.File) error { return f.Sync() }
