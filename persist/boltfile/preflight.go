package boltfile

import (
	"encoding/binary"
	"hash/fnv"
	"io"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// The meta page of bbolt's file format, version 2: a page header, then the
// fields below in the byte order of the machine. Two of them stand at the
// start of the file, written in turn.
const (
	pageHeader  = 16
	metaMagic   = 0xED0CDAED
	metaVersion = 2
	// Offsets within the meta, after the page header.
	atVersion, atPageSize, atHighWater, atTxID, atChecksum = 4, 8, 40, 48, 56
	metaBytes                                              = 64
	// Pages are powers of two between these.
	minPage, maxPage = 1 << 10, 1 << 24
)

// preflight reads the meta pages without mapping the file and refuses a file
// that bbolt would take for whole and then fault on: reading a mapped page that
// the file no longer reaches to ends the program. It tells whether only one of the
// two heads is whole: then the last commit may be missing.
func preflight(path string) (oneHead bool, err error) {
	f, err := disk.Open(path)
	if err != nil {
		return false, disk.AccessError(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return false, disk.AccessError(path, err)
	}
	switch {
	case info.Size() == 0:
		return false, disk.Damaged(path, words.FileEmpty)
	}
	newest, heads, known := newestMeta(f, info.Size())
	switch {
	case newest.pageSize != 0:
		if need := newest.highWater * uint64(newest.pageSize); need > uint64(info.Size()) {
			return false, disk.Damaged(path, words.FileCut(info.Size(), need))
		}
		return heads < 2, nil
	case known:
		return false, disk.Damaged(path, words.FileHead)
	default:
		return false, disk.Damaged(path, words.FileForeign)
	}
}

type metaPage struct {
	pageSize        uint32
	root, freelist  uint64 // pages
	highWater, txID uint64
}

// newestMeta finds the valid meta page of the latest transaction, and tells
// whether anything looked like a meta page of bbolt at all.
func newestMeta(f io.ReaderAt, size int64) (newest metaPage, heads int, known bool) {
	at := []int64{0}
	for p := int64(minPage); p <= maxPage && p < size; p <<= 1 {
		at = append(at, p)
	}
	for _, pos := range at {
		m, magic, ok := readMeta(f, pos)
		known = known || magic
		if ok = ok && (pos == 0 || pos == int64(m.pageSize)); ok {
			heads++
		}
		if ok && (newest.pageSize == 0 || m.txID > newest.txID) {
			newest = m
		}
	}
	return newest, heads, known
}

func readMeta(f io.ReaderAt, pos int64) (m metaPage, magic, ok bool) {
	b := make([]byte, metaBytes)
	if n, _ := f.ReadAt(b, pos+pageHeader); n < len(b) {
		return m, false, false
	}
	order := binary.NativeEndian
	if order.Uint32(b) != metaMagic {
		return m, false, false
	}
	sum := fnv.New64a()
	sum.Write(b[:atChecksum])
	if order.Uint32(b[atVersion:]) != metaVersion || order.Uint64(b[atChecksum:]) != sum.Sum64() {
		return m, true, false
	}
	m = metaPage{pageSize: order.Uint32(b[atPageSize:]), root: order.Uint64(b[atRoot:]), freelist: order.Uint64(b[atFreelist:]), highWater: order.Uint64(b[atHighWater:]), txID: order.Uint64(b[atTxID:])}
	return m, true, m.pageSize >= minPage && m.pageSize <= maxPage
}

// IsBook tells whether a file looks like a bbolt file, whole or not.
func IsBook(path string) bool {
	f, err := disk.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return false
	}
	_, _, known := newestMeta(f, info.Size())
	return known
}
