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

// heads finds the whole head of the latest commit without mapping the file, counts
// those that are whole, and tells whether anything looked like one at all.
func heads(f io.ReaderAt, length int64) (newest head, whole int, known bool) {
	for at := int64(0); at < min(length, maxPage+1); at = max(minPage, at<<1) {
		b := make([]byte, headBytes)
		if _, err := f.ReadAt(b, at+pageHeader); err != nil || native.Uint32(b) != headMagic {
			continue
		}
		known = true
		sum := fnv.New64a()
		sum.Write(b[:headSum])
		h := head{size: uint64(native.Uint32(b[8:])), root: native.Uint64(b[16:]), freelist: native.Uint64(b[32:]), pages: native.Uint64(b[40:]), commit: native.Uint64(b[48:])}
		if native.Uint32(b[4:]) != headVersion || native.Uint64(b[headSum:]) != sum.Sum64() || at != 0 && at != int64(h.size) || h.size < minPage || h.size > maxPage {
			continue
		}
		if whole++; whole == 1 || h.commit > newest.commit {
			newest = h
		}
	}
	return newest, whole, known
}

// newestHead refuses a file that bbolt would take for whole and then fault on:
// reading a mapped page that the file no longer reaches to ends the program. It tells
// whether only one of the two heads is whole: then the last commit may be missing.
func newestHead(path string) (newest head, one bool, err error) {
	f, err := disk.Open(path)
	if err != nil {
		return newest, false, disk.AccessError(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return newest, false, disk.AccessError(path, err)
	}
	newest, whole, known := heads(f, info.Size())
	need := newest.pages * newest.size
	switch {
	case info.Size() == 0:
		err = disk.Damaged(path, words.FileEmpty)
	case whole == 0 && known:
		err = disk.Damaged(path, words.FileHead)
	case whole == 0:
		err = disk.Damaged(path, words.FileForeign)
	case need > uint64(info.Size()):
		err = disk.Damaged(path, words.FileCut(info.Size(), need))
	}
	return newest, whole < 2, err
}

// IsBook tells whether a file looks like a bbolt file, whole or not.
func IsBook(path string) bool {
	if disk.Regular(path) != nil {
		return false
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	_, _, known := heads(f, maxPage)
	return known
}
