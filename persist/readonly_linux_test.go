package persist

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/sys/unix"

	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

const nobody = 1000 // a uid that rights bind

// bound makes files and folders under a path readable only, or writable again.
func bound(t *testing.T, folder string, file, dir os.FileMode) {
	t.Helper()
	must(t, os.Chmod(folder, 0o700))
	must(t, filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			err = os.Chmod(path, file)
		}
		return err
	}))
	must(t, os.Chmod(twin.Folder(filepath.Join(folder, "book.db")), dir))
	must(t, os.Chmod(folder, dir))
}

// refusedToWrite fails unless opening to write says that it may not, where, and
// what to do, and all that reads still does.
func refusedToWrite(t *testing.T, path string, a *acks) {
	t.Helper()
	_, err := Open(path, Options{})
	if !errors.Is(err, disk.ErrReadOnlyFile) || !strings.Contains(err.Error(), path) || !strings.Contains(err.Error(), "give yourself the right") || strings.Contains(err.Error(), "\n") {
		t.Errorf("opening says %v", err)
	}
	r, err := OpenReader(path, Options{Summarise: counted})
	must(t, err)
	for s, want := range a.kept {
		same(t, r, s, want)
	}
	if sums, err := r.Summaries(); err != nil || len(sums) != 2 || r.trouble != nil {
		t.Errorf("%v, %v, %v", sums, err, r.trouble)
	}
	whole(t, path)
}

func TestReadOnlyForReal(t *testing.T) {
	inOwnSpace(t, nobody, func(t *testing.T, folder string) {
		path := filepath.Join(folder, "book.db")
		a := filledBook(t, path)
		for name, c := range map[string]struct{ file, dir os.FileMode }{"files": {0o400, 0o700}, "files and folders": {0o400, 0o500}} {
			bound(t, folder, c.file, c.dir)
			refusedToWrite(t, path, a)
			if t.Failed() {
				t.Fatal(name)
			}
		}
		bound(t, folder, 0o600, 0o700)
		b, _ := open(t, path, Options{})
		keep(t, b, note(smelt, 1000))
	})
}

func TestReadOnlySystem(t *testing.T) {
	inOwnSpace(t, 0, func(t *testing.T, folder string) {
		path := filepath.Join(folder, "book.db")
		a := filledBook(t, path)
		err := unix.Mount(folder, folder, "", unix.MS_BIND, "")
		if err == nil {
			err = unix.Mount("", folder, "", unix.MS_BIND|unix.MS_REMOUNT|unix.MS_RDONLY, "")
		}
		if err != nil {
			t.Skipf("the system mounts nothing: %v", err)
		}
		refusedToWrite(t, path, a)
		if _, err := Rescue(path, Options{}); !errors.Is(err, disk.ErrReadOnlyFile) || !strings.Contains(err.Error(), path) {
			t.Errorf("rescue says %v", err)
		}
		if _, err := Open(filepath.Join(folder, "new", "book.db"), Options{}); !errors.Is(err, disk.ErrReadOnlyFile) {
			t.Errorf("making a book says %v", err)
		}
	})
}

// A book that may not even be read: its twins are.
func TestUnreadableBookIsReadFromItsTwins(t *testing.T) {
	inOwnSpace(t, nobody, func(t *testing.T, folder string) {
		path := filepath.Join(folder, "book.db")
		a := filledBook(t, path)
		must(t, os.Chmod(path, 0))
		r, err := OpenReader(path, Options{Summarise: counted})
		must(t, err)
		for s, want := range a.kept {
			same(t, r, s, want)
		}
		if !errors.Is(r.trouble, disk.ErrReadOnlyFile) {
			t.Errorf("the trouble is %v", r.trouble)
		}
		if _, err := Check(path, Options{}); !errors.Is(err, disk.ErrReadOnlyFile) || !strings.Contains(err.Error(), path) {
			t.Errorf("check says %v", err)
		}
		if _, err := Rescue(path, Options{}); !errors.Is(err, disk.ErrReadOnlyFile) || !strings.Contains(err.Error(), path) {
			t.Errorf("rescue says %v", err)
		}
	})
}

// A twin that may not be written is written anew; where no new file may
// be made either, entries are held until one may.
func TestReadOnlyTwinWithAWritableBook(t *testing.T) {
	inOwnSpace(t, nobody, func(t *testing.T, folder string) {
		for _, folderToo := range []bool{false, true} {
			path := filepath.Join(folder, map[bool]string{false: "a", true: "b"}[folderToo], "book.db")
			b, a := open(t, path, Options{})
			keep(t, b, notes(smelt, 1, 3)...)
			shut(t, b)
			b, second := open(t, path, Options{})
			second.kept[smelt] = a.kept[smelt]
			must(t, os.Chmod(twinOf(path, smelt), 0o400))
			if folderToo {
				must(t, os.Chmod(twin.Folder(path), 0o500))
				b.Keep(note(smelt, 4), note(beta, 4))
				k := second.until(t, "not kept", func(k Ack) bool { return isNotKept(k) && k.Waiting == 2 })
				if !strings.Contains(k.Err.Error(), twin.Folder(path)) || !strings.Contains(k.Err.Error(), "give yourself the right") || strings.Contains(k.Err.Error(), "\n") {
					t.Errorf("it says %v", k.Err)
				}
				must(t, os.Chmod(twin.Folder(path), 0o700))
				second.until(t, "kept", func(k Ack) bool { return k.Err == nil && k.Waiting == 0 })
			}
			keep(t, b, notes(smelt, 5, 6)...)
			shut(t, b)
			foundAgain(t, path, second)
			whole(t, path)
		}
	})
}
