package persist

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// astray makes a book in a folder of its own, with two smelts and the house in
// it, the second smelt not in use.
func astray(t *testing.T, opt Options) (path string, b *Book, a *acks) {
	t.Helper()
	path = placeOf(t, "shelf")
	b, first := open(t, path, Options{})
	keep(t, b, notes(beta, 1, 5)...)
	keep(t, b, notes(smelt, 1, 3)...)
	shut(t, b)
	b, a = open(t, path, opt)
	for s, es := range first.kept {
		a.kept[s] = slices.Clone(es)
	}
	keep(t, b, note(smelt, 4))
	return path, b, a
}

// removed removes a folder in which the writer may be laying a summary just now.
func removed(t *testing.T, folder string) {
	t.Helper()
	err := os.RemoveAll(folder)
	for try := 0; err != nil && try < 100; try++ {
		time.Sleep(time.Millisecond)
		err = os.RemoveAll(folder)
	}
	must(t, err)
}

// foundAgain fails unless all that was called kept is at the path: in the twins at
// once, in the book once it was opened anew.
func foundAgain(t *testing.T, path string, a *acks) {
	t.Helper()
	if disk.Exists(twin.Folder(path)) {
		for s, want := range a.kept {
			lines, err := twinLines(path, s)
			if err != nil || len(lines) != len(want) {
				t.Errorf("the twin of %s has %d of %d entries, %v", s, len(lines), len(want), err)
			}
		}
	}
	b, _ := open(t, path, Options{})
	for s, want := range a.kept {
		same(t, b, s, want)
	}
	shut(t, b)
}

// Whatever is done to the files while the program runs: what is called kept is
// found at the path afterwards, and the taking over is told once.
func TestFilesThatGoAstrayWhileTheProgramRuns(t *testing.T) {
	copied := func(t *testing.T, path string) string {
		var err error
		for range 100 { // the writer may be laying a summary just now
			to := filepath.Join(t.TempDir(), "copy")
			if err = os.CopyFS(to, os.DirFS(filepath.Dir(path))); err == nil {
				return to
			}
		}
		t.Fatal(err)
		return ""
	}
	for name, c := range map[string]struct {
		harm func(t *testing.T, path string)
		says string
	}{
		"twin removed": {func(t *testing.T, path string) { must(t, os.Remove(twinOf(path, smelt))) }, "was written anew"},
		"twin replaced, as by an editor": {func(t *testing.T, path string) {
			text := read(t, twinOf(path, smelt))
			must(t, os.Remove(twinOf(path, smelt)))
			write(t, twinOf(path, smelt), append(text, '\n'))
		}, "was written anew"},
		"twin cut":    {func(t *testing.T, path string) { must(t, os.Truncate(twinOf(path, smelt), 20)) }, "was written anew"},
		"twins gone":  {func(t *testing.T, path string) { removed(t, twin.Folder(path)) }, "was written anew"},
		"book gone":   {func(t *testing.T, path string) { must(t, os.Remove(path)) }, "took over"},
		"all removed": {func(t *testing.T, path string) { removed(t, filepath.Dir(path)) }, "took over"},
		"files removed": {func(t *testing.T, path string) {
			removed(t, twin.Folder(path))
			must(t, os.Remove(path))
		}, "took over"},
		"folder renamed": {func(t *testing.T, path string) { must(t, os.Rename(filepath.Dir(path), filepath.Dir(path)+"-2")) }, "took over"},
		"an empty folder in its place": {func(t *testing.T, path string) {
			must(t, os.Rename(filepath.Dir(path), filepath.Dir(path)+"-2"))
			must(t, os.Mkdir(filepath.Dir(path), 0o700))
		}, "took over"},
		"its own copy in its place": {func(t *testing.T, path string) {
			from := copied(t, path)
			must(t, os.Rename(filepath.Dir(path), filepath.Dir(path)+"-2"))
			must(t, os.Rename(from, filepath.Dir(path)))
		}, "took over"},
	} {
		t.Run(name, func(t *testing.T) {
			path, b, a := astray(t, Options{idle: time.Millisecond})
			c.harm(t, path)
			keep(t, b, note(smelt, 5))
			if said := strings.Join(a.noted(), "\n"); strings.Count(said, c.says) != 1 || strings.Contains(said, "took over") != (c.says == "took over") {
				t.Errorf("it says %q", said)
			}
			keep(t, b, notes(smelt, 6, 7)...)
			keep(t, b, note("2026-07-01-reedhollow-c", 8))
			for s, want := range a.kept {
				same(t, b, s, want)
			}
			shut(t, b)
			for _, k := range a.list() {
				if isNotKept(k) {
					t.Errorf("it said %v", k.Err)
				}
			}
			foundAgain(t, path, a)
		})
	}
}

// It happens while nothing is keyed: closing notices, and what was kept before
// is written again.
func TestFolderRemovedWhileNothingIsKeyed(t *testing.T) {
	path, b, a := astray(t, Options{})
	removed(t, filepath.Dir(path))
	shut(t, b)
	foundAgain(t, path, a)
}

// It happens again to the book that took over.
func TestFolderRemovedTwice(t *testing.T) {
	path, b, a := astray(t, Options{idle: time.Millisecond})
	for n := range 3 {
		removed(t, filepath.Dir(path))
		keep(t, b, note(smelt, 10+n))
		keep(t, b, note(beta, 20+n))
	}
	shut(t, b)
	foundAgain(t, path, a)
}

// What is not in use is brought over in a pause, before anybody closes the book.
func TestStreamsNotInUseAreBroughtOverInAPause(t *testing.T) {
	path, b, a := astray(t, Options{idle: time.Millisecond})
	removed(t, filepath.Dir(path))
	keep(t, b, note(smelt, 5))
	for end := time.Now().Add(10 * time.Second); ; time.Sleep(time.Millisecond) {
		lines, _ := twinLines(path, beta)
		if len(lines) == len(a.kept[beta]) {
			break
		}
		if time.Now().After(end) {
			t.Fatalf("%d of %d entries", len(lines), len(a.kept[beta]))
		}
	}
	shut(t, b)
	foundAgain(t, path, a)
}

// Another book comes to stand at the path: it is left alone, entries are held
// and said not to be kept, and are kept when the folder is back.
func TestAnotherBookInItsPlace(t *testing.T) {
	path, b, a := astray(t, Options{retryEvery: time.Hour}) // while the folders change places nothing is tried
	folder := filepath.Dir(path)
	must(t, os.Rename(folder, folder+"-2"))
	other, theirs := open(t, path, Options{})
	keep(t, other, notes(smelt, 1, 9)...)
	shut(t, other)
	before := read(t, path)
	b.Keep(note(smelt, 5))
	k := a.until(t, "one not kept", func(k Ack) bool { return isNotKept(k) && k.Waiting == 1 })
	if said := k.Err.Error(); !strings.Contains(said, path) || !strings.Contains(said, "another book") || strings.Contains(said, "\n") {
		t.Errorf("it says %q", said)
	}
	if string(read(t, path)) != string(before) || disk.Exists(path+disk.AsideExt+"1") {
		t.Error("the other book was touched")
	}
	if _, err := keepNow(b, note(entry.House, 1)); err == nil {
		t.Error("an entry of a stream that both have is called kept")
	}
	foundAgain(t, path, theirs)
	removed(t, folder)
	must(t, os.Rename(folder+"-2", folder))
	b.Keep(note(smelt, 6))
	a.until(t, "kept", func(k Ack) bool { return k.Err == nil && k.Waiting == 0 && k.Entries[0].Seq == 5 })
	shut(t, b)
	foundAgain(t, path, a)
}

// No folder can be made: entries are held until one can.
func TestFolderThatCannotBeMadeAnew(t *testing.T) {
	path, b, a := astray(t, Options{})
	folder := filepath.Dir(path)
	removed(t, folder)
	write(t, folder, nil) // a file in its place
	b.Keep(note(smelt, 5))
	k := a.until(t, "one not kept", func(k Ack) bool { return isNotKept(k) && k.Waiting == 1 })
	if said := k.Err.Error(); !strings.Contains(said, path) || strings.Contains(said, "\n") {
		t.Errorf("it says %q", said)
	}
	must(t, os.Remove(folder))
	a.until(t, "kept", func(k Ack) bool { return k.Err == nil && k.Waiting == 0 && k.Entries[0].Seq == 5 })
	shut(t, b)
	foundAgain(t, path, a)
}

// At the end nothing can be written again: closing says what that means.
func TestClosingSaysThatTheFolderIsGone(t *testing.T) {
	path, b, _ := astray(t, Options{closeTries: 1})
	folder := filepath.Dir(path)
	must(t, os.Rename(folder, folder+"-2"))
	write(t, folder, nil)
	err := b.Close()
	if err == nil || !strings.Contains(err.Error(), path) || strings.Contains(err.Error(), "\n") {
		t.Errorf("closing says %v", err)
	}
	must(t, os.Remove(folder))
}
