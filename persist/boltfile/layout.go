package boltfile

import (
	"os"
	"path/filepath"
)

const defaultBook = "book.db"

// BookFile is the bbolt file that a path of the user's means: the path itself,
// or book.db in it when it is a folder.
func BookFile(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return filepath.Join(path, defaultBook)
	}
	return path
}
