package boltfile

import (
	"hash/fnv"
	"io"
	"os"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// head is a meta page of bbolt's file format, version 2: a page header, then
// fields in the byte order of the machine with a sum over them. Two of them stand
// at the start of the file, written in turn.
type head struct {
	size           uint64 // of a page, in bytes: a power of two between the two below
	root, freelist uint64 // pages
	pages          uint64 // how many the file has
	commit         uint64
}

const (
	minPage, maxPage = 1 << 10, 1 << 24
	headMagic        = 0xED0CDAED
	headVersion      = 2
	headBytes        = 64
	headSum          = 56 // where the sum over what comes before stands
)

// headAt reads the head that stands at a place, and tells whether it is whole or
// at least looks like one.
func headAt(f io.ReaderAt, at int64) (h head, whole, known bool) {
	b := make([]byte, headBytes)
	if _, err := f.ReadAt(b, at+pageHeader); err != nil || native.Uint32(b) != headMagic {
		return h, false, false
	}
	sum := fnv.New64a()
	sum.Write(b[:headSum])
	h = head{size: uint64(native.Uint32(b[8:])), root: native.Uint64(b[16:]), freelist: native.Uint64(b[32:]), pages: native.Uint64(b[40:]), commit: native.Uint64(b[48:])}
	whole = native.Uint32(b[4:]) == headVersion && native.Uint64(b[headSum:]) == sum.Sum64() && h.size >= minPage && h.size <= maxPage
	return h, whole, true
}

// newestHead gives the head of the latest commit without mapping the file. It
// refuses one that bbolt would take for whole and then fault on: reading a mapped
// page that the file no longer reaches to ends the program. When nobody writes to it
// now (held), one damaged head is enough, for then the last commit may be missing.
func newestHead(path string, held bool) (newest head, err error) {
	f, err := disk.Open(path)
	if err != nil {
		return newest, disk.AccessError(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return newest, disk.AccessError(path, err)
	}
	newest, whole, known := headAt(f, 0)
	at := os.Getpagesize()
	if whole {
		at = int(newest.size)
	}
	second, wholeToo, knownToo := headAt(f, int64(at))
	if wholeToo && (!whole || second.commit > newest.commit) {
		newest = second
	}
	need := newest.pages * newest.size
	switch {
	case info.Size() == 0:
		err = disk.Damaged(path, words.FileEmpty)
	case !known && !knownToo:
		err = disk.Damaged(path, words.FileForeign)
	case !whole && !wholeToo, held && !(whole && wholeToo):
		err = disk.Damaged(path, words.FileHead)
	case need > uint64(info.Size()):
		err = disk.Damaged(path, words.FileCut(info.Size(), need))
	}
	return newest, err
}
