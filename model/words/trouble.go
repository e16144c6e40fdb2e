package words

import (
	"fmt"
	"strings"
)

// Troubles of the book: what is said of its files when one is missing, damaged,
// closed to us, full, or goes away while the program runs. Each says what
// happened, what it means, and what to do. What becomes of single entries stands in
// trouble_entry.go, what was put right in trouble_mended.go, what check finds in
// trouble_found.go.

// What is wrong with a file, and what to do about it; put together by Trouble.
const (
	FileMissing   = "is not there"
	FileMissingDo = "name another with --book, or start the program to make it"
	FileClosed    = "cannot be written or read"
	FileClosedDo  = "give yourself the right to write it, or name another with --book"
	FileHeld      = "is in use: the program is probably running in another window"
	FileHeldDo    = "go on there, or close it first; chargehand watch shows it beside that one"
	FileNewerDo   = "it is open for reading only: use the newer version to write in it"
	FileDamagedDo = "it was not touched: chargehand rescue rebuilds it from its twins and what can be read of it, and keeps it under another name"
	FileNoFile    = "is no regular file but a folder, a device, a pipe or a socket"
	FileNoFileDo  = "it was not touched: name the book with --book"
	NoRegularFile = "it is no regular file but a folder, a device, a pipe or a socket"
	FileEmpty     = "is empty"
	FileHead      = "has a damaged head"
	FileForeign   = "is not a book of this program"
	NoSchema      = "there is no schema in it"
	BadSum        = "what it says of itself was changed"
)

// Trouble is a file, what is wrong with it, and what to do.
func Trouble(path, what, do string) string { return path + " " + what + "; " + do }

// FileDamaged says how it was noticed.
func FileDamaged(why any) string { return fmt.Sprintf("is damaged (%v)", why) }

// FileCut says how much of a file is left.
func FileCut(there int64, need uint64) string {
	return fmt.Sprintf("was cut off: %d of %d bytes are there", there, need)
}

// FileForeignFor says why a file is none of ours.
func FileForeignFor(why error) string { return FileForeign + " (" + why.Error() + ")" }

// BadSchema says what stood for the book's form.
func BadSchema(got string) string { return fmt.Sprintf("its schema is %q", got) }

// NoBucket says which part of a book is missing.
func NoBucket(name []byte) string { return fmt.Sprintf("bucket %q is missing", name) }

// FileNewer says that only a newer version writes this book.
func FileNewer(schema, known int) string {
	return fmt.Sprintf("was written by a newer version of this program (schema %d, this one knows %d)", schema, known)
}

// FileNotOpened is for what the system says and no other word fits.
func FileNotOpened(path string, err error) error {
	return fmt.Errorf("%s could not be opened: %w; look after the disk, or name another with --book", path, err)
}

// FileNotClosed says what a failed closing means.
func FileNotClosed(path string, err error) error {
	return fmt.Errorf("%s could not be closed properly (%w); what was called kept is in it: look after the disk", path, err)
}

// Why a path leads no longer to the file that is open.
const (
	GoneRemoved  = "it was removed or renamed, or its folder was"
	GoneReplaced = "another file is in its place"
	GoneFolder   = "its folder is gone"
	GoneDo       = "put it or its folder back, or see that a new one can be made there"
)

// GoneLength says that somebody else wrote in a file, or cut it.
func GoneLength(now, written int64) string {
	return fmt.Sprintf("it has %d bytes where %d were written", now, written)
}

// FileGone says that a file was removed, replaced or changed while it was open.
func FileGone(why string) string { return fmt.Sprintf("is not as it was left (%s)", why) }

// AnotherBook is a book with another uid.
const AnotherBook = "another book"

// Stranger and StrangerDo say that another file is where the book was.
func Stranger(why string) string {
	return fmt.Sprintf("is another file now (%s), and is left alone", why)
}

const StrangerDo = "put the folder back that was there"

// NotFlushed and NotFlushedDo say that the disk did not take what was written.
func NotFlushed(err error) string { return fmt.Sprintf("could not be flushed to the disk (%v)", err) }

const NotFlushedDo = "look after the disk"

// TwinsOfAnother says whose twins stand where the book's should.
func TwinsOfAnother(folder string) string {
	return folder + " holds the twins of another book; they are left alone"
}

// TwinsRenamed says that the twins have a folder of a new name, and which
// streams of the old one are not this book's.
func TwinsRenamed(old, folder string, left []string) string {
	said := fmt.Sprintf("the twins are in %s now, copied out of %s, which books that differ in their ending shared", folder, old)
	if len(left) > 0 {
		said += fmt.Sprintf("; what is not this book's stays there untouched: %s (chargehand rescue --take FILE takes such a file in)", strings.Join(left, ", "))
	}
	return said
}

// FileExists and OwnFile say why a file is not written.
func FileExists(path string) string {
	return path + " is there already and was left alone: name another, or add --replace"
}

func OwnFile(path string) string {
	return path + " belongs to the book and is never written over: name another file"
}
