package persist

import (
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/sys/unix"
)

// The stick with the book is taken away and another comes in its place, and later
// the first again: each time what is called kept is on the one that is there.
func TestAnotherStickInItsPlaceAndTheFirstAgain(t *testing.T) {
	onSmallDisk(t, func(t *testing.T, folder string) {
		path := filepath.Join(folder, "shelf", "book.db")
		b, a := open(t, path, Options{})
		keep(t, b, notes(beta, 1, 3)...)
		keep(t, b, notes(smelt, 1, 3)...)
		must(t, unix.Mount("none", folder, "tmpfs", 0, "size=1m"))
		keep(t, b, note(smelt, 4))
		for s, want := range map[string]int{smelt: 4} {
			if lines, err := twinLines(path, s); err != nil || len(lines) != want {
				t.Errorf("on the second stick %s has %d entries, %v", s, len(lines), err)
			}
		}
		must(t, unix.Unmount(folder, unix.MNT_DETACH))
		keep(t, b, note(smelt, 5))
		if n := strings.Count(strings.Join(a.noted(), "\n"), "took over"); n != 2 {
			t.Errorf("it says %q", a.noted())
		}
		shut(t, b)
		foundAgain(t, path, a)
		whole(t, path)
	})
}
