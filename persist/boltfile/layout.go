package boltfile

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

const (
	defaultBook = "book.db"
	takeOverExt = ".takeover-"
)

// BookFile is the bbolt file that a path of the user's means: the path itself,
// or book.db in it when it is a folder.
func BookFile(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return filepath.Join(path, defaultBook)
	}
	return path
}

// TakeOverFile is the name of the small book that takes over from one that
// could not be flushed; number counts from 1.
func TakeOverFile(path string, number int) string { return path + takeOverExt + strconv.Itoa(number) }

// TakeOvers lists the small books beside a book, in the order of their making.
// Those already set aside are not among them.
func TakeOvers(path string) []string {
	files, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return nil // whoever opens the book next says why
	}
	var numbers []int
	for _, f := range files {
		digits, ok := strings.CutPrefix(f.Name(), filepath.Base(path)+takeOverExt)
		if n, err := strconv.Atoi(digits); ok && err == nil && n > 0 {
			numbers = append(numbers, n)
		}
	}
	slices.Sort(numbers)
	names := make([]string, len(numbers))
	for i, n := range numbers {
		names[i] = TakeOverFile(path, n)
	}
	return names
}
