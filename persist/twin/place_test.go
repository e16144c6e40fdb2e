package twin

import (
	"os"
	"path/filepath"
	"testing"
)

// BenchmarkPlace times the two looks that every keeping takes: whether the paths
// of book and twin still lead to the open files.
func BenchmarkPlace(b *testing.B) {
	path := filepath.Join(b.TempDir(), "book.db")
	if err := os.WriteFile(path, []byte("as long as it should be"), 0o600); err != nil {
		b.Fatal(err)
	}
	f, err := OpenFile(path)
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	place := f.(osFile).Place
	for b.Loop() {
		if err := place.There(); err != nil {
			b.Fatal(err)
		}
		if err := place.ThereWith(23); err != nil {
			b.Fatal(err)
		}
	}
}
