package twin

import (
	"bytes"
	"cmp"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// uidFile holds the uid of the book that a folder of twins belongs to. It is
// locked while the book is open for writing.
const uidFile = "book"

// Folder is the folder of the twins of a book's file: the file's full name and
// ".twins". Another book's may stand there; then it is a numbered one.
func Folder(file string) string { return numbered(file, 1) }

func numbered(file string, n int) string {
	if n > 1 {
		return file + suffix + "-" + strconv.Itoa(n)
	}
	return file + suffix
}

// oldFolder is what the folder was called before: without the file's ending, so
// that books that differ in the ending alone shared it.
func oldFolder(file string) string { return strings.TrimSuffix(file, filepath.Ext(file)) + suffix }

// UID is the uid of the book that a folder belongs to; empty where it does not
// say.
func UID(folder string) string {
	f, err := disk.Open(filepath.Join(folder, uidFile))
	if err != nil {
		return ""
	}
	defer f.Close()
	b := make([]byte, 64)
	n, _ := f.Read(b)
	return string(bytes.TrimSpace(b[:n]))
}

// Find gives the folder of a book's twins to read from. Without the book's uid,
// because it cannot be read, that of whoever writes it now, or the newest.
func Find(file, uid string) string {
	best, when := "", time.Time{}
	for n := 1; ; n++ {
		folder := numbered(file, n)
		info, err := os.Stat(folder)
		if err != nil {
			break
		}
		switch its := UID(folder); {
		case uid != "" && (its == uid || its == ""), uid == "" && locked(folder):
			return folder
		case uid == "" && info.ModTime().After(when):
			best, when = folder, info.ModTime()
		}
	}
	if old := oldFolder(file); best == "" && disk.Exists(old) && UID(old) == "" {
		return old
	}
	return cmp.Or(best, Folder(file))
}

// locked tells whether somebody writes to a folder.
func locked(folder string) bool {
	f, err := disk.Open(filepath.Join(folder, uidFile))
	if err != nil {
		return false
	}
	defer f.Close()
	return !disk.ShareLock(f)
}

// Claim finds or makes the folder of a book's twins, and locks it until it is
// released. Twins of another book are left alone. From a folder of the old name
// it takes the streams that go on from what the book holds (ours); all where that
// cannot be read (nil).
func Claim(file, uid string, ours func(stream string) [][]byte) (folder string, release func(), said []string, err error) {
	release = func() {}
	for n := 1; ; n++ {
		folder = numbered(file, n)
		its := UID(folder)
		if its == "" || its == uid {
			break
		}
		said = append(said, words.TwinsOfAnother(folder))
	}
	old := oldFolder(file)
	if old != folder && !disk.Exists(folder) && disk.Exists(old) && UID(old) == "" {
		left, err := takeFrom(old, folder, ours)
		if err != nil {
			return folder, release, said, err
		}
		said = append(said, words.TwinsRenamed(old, folder, left))
	}
	if err := disk.MakeFolder(folder); err != nil {
		return folder, release, said, err
	}
	lock, err := lockFolder(folder, uid)
	if lock != nil {
		release = func() { lock.Close() }
	}
	return folder, release, said, err
}

func lockFolder(folder, uid string) (*os.File, error) {
	name := filepath.Join(folder, uidFile)
	if err := disk.Regular(name); err != nil && !errors.Is(err, os.ErrNotExist) {
		return nil, err
	}
	f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o600)
	if errors.Is(err, syscall.ENOSPC) {
		return nil, nil // what is keyed says so soon enough
	}
	if err != nil {
		return nil, err
	}
	for tries := 0; !disk.Lock(f); tries++ { // a program that is being started holds what its parent does, for a moment
		if tries == 50 {
			f.Close()
			return nil, disk.Held(folder)
		}
		time.Sleep(10 * time.Millisecond)
	}
	if UID(folder) != uid {
		if _, err = f.WriteString(uid + "\n"); err != nil || disk.Flush(f) != nil {
			_ = f.Truncate(0) // one that says nothing is taken for the book's own, and written the next time
		}
	}
	return f, nil
}

// takeFrom takes a book's own twins out of a folder of the old name, and names
// the streams that stay there.
func takeFrom(old, folder string, ours func(string) [][]byte) (left []string, err error) {
	sizes, err := Sizes(old)
	if err != nil {
		return nil, err
	}
	for stream := range sizes {
		text := Read(old, stream).Lines
		own := text
		if ours != nil {
			own = ours(stream)
		}
		switch same := SamePrefix(own, text); {
		case same == len(own) && len(own) > 0:
			if err := Write(folder, stream, text, true); err != nil {
				return nil, err
			}
		case same < len(text) || len(own) == 0:
			left = append(left, stream)
		}
	}
	slices.Sort(left)
	return left, nil
}
