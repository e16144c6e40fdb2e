package persist

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"os"
)

// Pages of bbolt's file format, version 2, in the byte order of the machine: a
// header (id, kind, count of elements, pages that follow on), the elements, and
// what they point to, counted from the element. A bucket is an element of a leaf
// that names the first page of its tree, or, where that is 0, holds it itself.
const (
	atKind, atCount, atOverflow = 8, 10, 12
	kindBranch, kindLeaf        = 1, 2
	kindFree                    = 16
	elementBytes                = 16
	bucketElement               = 1  // the flag of a leaf's element
	bucketHeader                = 16 // before the page that a bucket holds itself
	atRoot, atFreelist          = 16, 32
	noFreelist                  = ^uint64(0)
	manyFree                    = 0xffff // then the count is the first number of the list
)

// pageWalk goes through the pages of a book without mapping the file.
type pageWalk struct {
	file                io.ReaderAt
	pageSize, highWater uint64
	seen                map[uint64]bool
}

// walkAtOpening bounds the files whose pages are walked whenever they are
// opened: up to here it takes some 10 ms. Larger ones are walked by check and
// rescue.
const walkAtOpening = 8 << 20

// soundIfSmall is soundPages for a file that is walked whenever it is opened.
func soundIfSmall(file *os.File) error {
	if info, err := file.Stat(); err != nil || info.Size() > walkAtOpening {
		return err
	}
	return soundPages(file.Name())
}

// soundPages tells whether every page that a book's newest state uses can be
// followed: bbolt trusts what pages say of each other, and one bad number can
// lead it in a circle or out of the file, which ends the program. What the lines
// say is for the chain to judge.
func soundPages(path string) error {
	if err := preflight(path); err != nil {
		return err
	}
	f, err := os.Open(path)
	if err != nil {
		return accessError(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return accessError(path, err)
	}
	meta, _ := newestMeta(f, info.Size())
	w := pageWalk{file: f, pageSize: uint64(meta.pageSize), highWater: meta.highWater, seen: map[uint64]bool{}}
	err = w.tree(meta.root)
	if err == nil && meta.freelist != noFreelist {
		err = w.free(meta.freelist)
	}
	if err != nil {
		return damaged(path, "is damaged ("+err.Error()+")")
	}
	return nil
}

// page reads a page with those that follow on, and marks them as seen.
func (w pageWalk) page(id uint64) ([]byte, error) {
	head := make([]byte, pageHeader)
	if id < 2 || id >= w.highWater {
		return nil, fmt.Errorf("page %d is named where there are %d", id, w.highWater)
	}
	if _, err := w.file.ReadAt(head, int64(id*w.pageSize)); err != nil {
		return nil, fmt.Errorf("page %d: %w", id, err)
	}
	more := uint64(binary.NativeEndian.Uint32(head[atOverflow:]))
	if binary.NativeEndian.Uint64(head) != id || id+more >= w.highWater {
		return nil, fmt.Errorf("page %d says that it is another", id)
	}
	for i := id; i <= id+more; i++ {
		if w.seen[i] {
			return nil, fmt.Errorf("page %d is used twice", i)
		}
		w.seen[i] = true
	}
	b := make([]byte, (more+1)*w.pageSize)
	if _, err := w.file.ReadAt(b, int64(id*w.pageSize)); err != nil {
		return nil, fmt.Errorf("page %d: %w", id, err)
	}
	return b, nil
}

// tree follows the tree that starts at a page.
func (w pageWalk) tree(id uint64) error {
	b, err := w.page(id)
	if err != nil {
		return err
	}
	if err := w.elements(b); err != nil {
		return fmt.Errorf("page %d: %w", id, err)
	}
	return nil
}

// elements follows what the elements of one page point to.
func (w pageWalk) elements(b []byte) error {
	order := binary.NativeEndian
	kind, count := order.Uint16(b[atKind:]), int(order.Uint16(b[atCount:]))
	if kind != kindBranch && kind != kindLeaf || pageHeader+count*elementBytes > len(b) || kind == kindBranch && count == 0 {
		return fmt.Errorf("it is of kind %d with %d elements", kind, count)
	}
	var before []byte
	for i := range count {
		at := pageHeader + i*elementBytes
		e := b[at : at+elementBytes]
		pos, key, value := order.Uint32(e), order.Uint32(e[4:]), uint32(0)
		if kind == kindLeaf {
			pos, key, value = order.Uint32(e[4:]), order.Uint32(e[8:]), order.Uint32(e[12:])
		}
		start := uint64(at) + uint64(pos)
		middle := start + uint64(key)
		end := middle + uint64(value)
		if end > uint64(len(b)) {
			return fmt.Errorf("element %d reaches beyond it", i)
		}
		if k := b[start:middle]; i > 0 && bytes.Compare(before, k) >= 0 {
			return fmt.Errorf("element %d is out of order", i)
		} else {
			before = k
		}
		var err error
		switch {
		case kind == kindBranch:
			err = w.tree(order.Uint64(e[8:]))
		case order.Uint32(e)&bucketElement != 0:
			err = w.bucket(b[middle:end])
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// bucket follows a bucket from the element that names it.
func (w pageWalk) bucket(b []byte) error {
	if len(b) < bucketHeader {
		return fmt.Errorf("a bucket of %d bytes", len(b))
	}
	if root := binary.NativeEndian.Uint64(b); root != 0 {
		return w.tree(root)
	}
	if len(b) < bucketHeader+pageHeader {
		return fmt.Errorf("a bucket of %d bytes", len(b))
	}
	return w.elements(b[bucketHeader:])
}

// free goes through the list of pages that are not in use.
func (w pageWalk) free(id uint64) error {
	b, err := w.page(id)
	if err != nil {
		return err
	}
	order := binary.NativeEndian
	count, list := uint64(order.Uint16(b[atCount:])), b[pageHeader:]
	if count == manyFree {
		count, list = order.Uint64(list), list[8:]
	}
	if order.Uint16(b[atKind:]) != kindFree || count > uint64(len(list)/8) {
		return fmt.Errorf("page %d is no list of free pages", id)
	}
	for i := range count {
		n := order.Uint64(list[i*8:])
		if n < 2 || n >= w.highWater || w.seen[n] {
			return fmt.Errorf("page %d is in use and called free", n)
		}
		w.seen[n] = true
	}
	return nil
}
