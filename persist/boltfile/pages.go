package boltfile

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"io"

	"chargehand/model/words"
)

// Pages of bbolt's file format, version 2, in the byte order of the machine: a
// header (id, kind, count of elements, pages that go on), the elements, and what
// they point to, counted from the element. A bucket is an element of a leaf
// that names the first page of its tree, or, where that is 0, holds it itself.
const (
	pageHeader                  = 16
	atKind, atCount, atOverflow = 8, 10, 12
	kindBranch, kindLeaf        = 1, 2
	kindFree                    = 16
	elementBytes                = 16
	bucketElement               = 1  // the flag of a leaf's element
	bucketHeader                = 16 // before the page that a bucket holds itself
	noFreelist                  = ^uint64(0)
	manyFree                    = 0xffff // then the count is the first number of the list
)

var native = binary.NativeEndian

// errPage is a page that bbolt has not written so. Which of its numbers is wrong helps
// nobody: the book is made anew from its twins.
var errPage = errors.New(words.PageBad)

// walk follows the pages of one state of a book without its map. bbolt trusts what
// they say of each other, and one bad number can lead it in a circle or out of the
// file, which ends the program. What the lines say is for the chain to judge.
type walk struct {
	file  io.ReaderAt
	root  uint64          // the first page of the tree of its buckets
	size  uint64          // of a page
	pages uint64          // how many there are
	seen  map[uint64]bool // in use, or called free
}

// found is given what stands in the leaves of a tree, in order.
type found func(key, value []byte, bucket bool) error

// sound follows all that bbolt follows when it opens a book and looks a stream up;
// with whole also what the streams hold. It gives the names of the buckets, and what
// stands in meta.
func (w *walk) sound(freelist uint64, whole bool) (said map[string]string, err error) {
	w.seen, said = map[uint64]bool{}, map[string]string{}
	if err := w.free(freelist); err != nil {
		return nil, err
	}
	var deeper found
	deeper = func(_, value []byte, bucket bool) error {
		if bucket {
			return w.bucket(value, deeper)
		}
		return nil
	}
	return said, w.tree(w.root, func(name, value []byte, bucket bool) error {
		said[string(name)] = ""
		switch {
		case !bucket: // its mark was changed: bbolt would take it for a value
			return errPage
		case bytes.Equal(name, bucketMeta):
			return w.bucket(value, func(key, value []byte, _ bool) error {
				said[string(key)] = string(value)
				return nil
			})
		case bytes.Equal(name, bucketStreams):
			return w.bucket(value, func(_, value []byte, bucket bool) error {
				if !bucket {
					return errPage
				}
				if whole || native.Uint64(value) == 0 {
					return w.bucket(value, deeper)
				}
				return nil
			})
		}
		return w.bucket(value, deeper)
	})
}

// in follows one of the first buckets.
func (w *walk) in(first []byte, f found) error {
	w.seen = map[uint64]bool{}
	err := errors.New(words.NoBucket(first))
	bad := w.tree(w.root, func(name, value []byte, _ bool) error {
		if bytes.Equal(name, first) {
			err = w.bucket(value, f)
		}
		return nil
	})
	return cmp.Or(bad, err)
}

// page reads a page with those that go on from it. Each is there once.
func (w *walk) page(id uint64) ([]byte, error) {
	if id < 2 || id >= w.pages {
		return nil, words.InPage(id, errPage)
	}
	b := make([]byte, w.size)
	if _, err := w.file.ReadAt(b, int64(id*w.size)); err != nil {
		return nil, words.InPage(id, err)
	}
	more := uint64(native.Uint32(b[atOverflow:]))
	if native.Uint64(b) != id || id+more >= w.pages {
		return nil, words.InPage(id, errPage)
	}
	for i := id; i <= id+more; i++ {
		if w.seen[i] {
			return nil, words.InPage(i, errPage) // it is used twice
		}
		w.seen[i] = true
	}
	if more > 0 {
		b = make([]byte, (more+1)*w.size)
		if _, err := w.file.ReadAt(b, int64(id*w.size)); err != nil {
			return nil, words.InPage(id, err)
		}
	}
	return b, nil
}

// bucket follows a bucket from the element that names it.
func (w *walk) bucket(b []byte, f found) error {
	if root := native.Uint64(b); root != 0 {
		return w.tree(root, f)
	}
	return w.elements(b[bucketHeader:], new([]byte), f)
}

// tree follows the tree that starts at a page.
func (w *walk) tree(id uint64, f found) error { return w.branch(id, new([]byte), f) }

// branch follows a part of a tree; last is the key before, or that of the branch
// which leads here.
func (w *walk) branch(id uint64, last *[]byte, f found) error {
	b, err := w.page(id)
	if err != nil {
		return err
	}
	if err := w.elements(b, last, f); err != nil {
		return words.InPage(id, err)
	}
	return nil
}

// elements follows what the elements of one page point to.
func (w *walk) elements(b []byte, last *[]byte, f found) error {
	kind, count := native.Uint16(b[atKind:]), int(native.Uint16(b[atCount:]))
	if kind != kindBranch && kind != kindLeaf || pageHeader+count*elementBytes > len(b) || kind == kindBranch && count == 0 {
		return errPage
	}
	for i := range count {
		at := pageHeader + i*elementBytes
		e := b[at : at+elementBytes]
		pos, key, value := native.Uint32(e), native.Uint32(e[4:]), uint32(0)
		if kind == kindLeaf {
			pos, key, value = native.Uint32(e[4:]), native.Uint32(e[8:]), native.Uint32(e[12:])
		}
		start := uint64(at) + uint64(pos)
		middle := start + uint64(key)
		end := middle + uint64(value)
		if end > uint64(len(b)) {
			return errPage
		}
		if c := bytes.Compare(*last, b[start:middle]); c > 0 || c == 0 && i > 0 {
			return errPage
		}
		*last = b[start:middle]
		inner := b[middle:end]
		bucket := kind == kindLeaf && native.Uint32(e)&bucketElement != 0
		var err error
		switch {
		case kind == kindBranch:
			err = w.branch(native.Uint64(e[8:]), last, f)
		case bucket && (len(inner) < bucketHeader || native.Uint64(inner) == 0 && len(inner) < bucketHeader+pageHeader):
			err = errPage
		default:
			err = f(*last, inner, bucket)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// free goes through the list of pages that are not in use.
func (w *walk) free(list uint64) error {
	if list == noFreelist {
		return nil
	}
	b, err := w.page(list)
	if err != nil {
		return err
	}
	count, ids := uint64(native.Uint16(b[atCount:])), b[pageHeader:]
	if count == manyFree {
		count, ids = native.Uint64(ids), ids[8:]
	}
	if native.Uint16(b[atKind:]) != kindFree || count > uint64(len(ids)/8) {
		return words.InPage(list, errPage)
	}
	for i := range count {
		n := native.Uint64(ids[i*8:])
		if n < 2 || n >= w.pages || w.seen[n] {
			return words.InPage(n, errPage)
		}
		w.seen[n] = true
	}
	return nil
}
